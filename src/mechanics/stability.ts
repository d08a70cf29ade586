// Does it stand? Stiffness of the active devices over the stiffness-free motions, and the name of what can move.

import { symmetricEigen } from "../numeric/index.ts";
import type { Condensed } from "./contact.ts";

/** Length by which rotations are scaled, m. */
const ROTATION_LENGTH = 10;
/** Least over greatest eigenvalue that still counts as held. */
const HELD = 1e-8;
/** A stiffness of this share of the loads per metre holds, however hard other supports are. */
const STEADY = 1e-4;

/** A motion without (or with negative) stiffness. */
export interface Mechanism {
  /** Amplitudes over the motions, in the scaled units. */
  shape: Float64Array;
  ratio: number;
}

/**
 * Looks for a motion that the active devices do not hold: M = G_a^T diag(k) G_a with rotations divided by 10 m.
 * Decks marked idle (they carry nothing) are left out.
 */
export function findMechanism(
  p: Condensed,
  active: Uint8Array,
  ownModes: number,
  rotation: (q: number) => boolean,
  idleDeck: (deck: number) => boolean,
): Mechanism | null {
  const kept: number[] = [];
  for (let q = 0; q < p.N; q++) {
    if (q >= ownModes && idleDeck(Math.floor((q - ownModes) / 3))) continue;
    kept.push(q);
  }
  const n = kept.length;
  const M = new Float64Array(n * n);
  for (let j = 0; j < p.m; j++) {
    if (!active[j]) continue;
    for (let a = 0; a < n; a++) {
      const ga = p.G[j * p.N + kept[a]] / (rotation(kept[a]) ? ROTATION_LENGTH : 1);
      if (ga === 0) continue;
      for (let b = 0; b < n; b++) {
        const gb = p.G[j * p.N + kept[b]] / (rotation(kept[b]) ? ROTATION_LENGTH : 1);
        M[a * n + b] += p.k[j] * ga * gb;
      }
    }
  }
  const eigen = symmetricEigen(M, n);
  const greatest = Math.abs(eigen.values[n - 1]);
  const ratio = greatest > 0 ? eigen.values[0] / greatest : 0;
  let heaviest = 0;
  for (let a = 0; a < n; a++) heaviest = Math.max(heaviest, Math.abs(p.load[kept[a]]));
  if (n === 0 || ratio >= HELD || eigen.values[0] > STEADY * heaviest) return null;
  // Of several free motions the loads choose the one they drive; without loads on any it is the softest.
  const driven = new Float64Array(n);
  for (let v = 0; v < n && (v === 0 || eigen.values[v] < HELD * greatest); v++) {
    let work = 0;
    for (let a = 0; a < n; a++)
      work += (eigen.vectors[v * n + a] * p.load[kept[a]]) / (rotation(kept[a]) ? ROTATION_LENGTH : 1);
    for (let a = 0; a < n; a++) driven[a] += work * eigen.vectors[v * n + a];
  }
  let most = 0;
  for (let a = 0; a < n; a++) most = Math.max(most, Math.abs(driven[a]));
  const shape = new Float64Array(p.N);
  for (let a = 0; a < n; a++) shape[kept[a]] = most > 1e-9 * heaviest ? driven[a] : eigen.vectors[a];
  return { shape, ratio };
}

/** Puts a mechanism into words: the motions that dominate it. */
export function nameMechanism(shape: Float64Array, ownNames: string[], trainNames: string[]): string {
  const own = ownNames.length;
  const deckWords = ["moves up or down", "leans (roll free)", "tips end up (pitch free)"];
  const parts: { size: number; words: string }[] = [];
  for (let q = 0; q < shape.length; q++) {
    const size = Math.abs(shape[q]);
    if (q < own) parts.push({ size, words: ownNames[q] });
    else
      parts.push({
        size,
        words: `transporter ${trainNames[Math.floor((q - own) / 3)]} ${deckWords[(q - own) % 3]}`,
      });
  }
  parts.sort((a, b) => b.size - a.size);
  return parts
    .filter((x) => x.size > 0.3 * parts[0].size)
    .slice(0, 3)
    .map((x) => x.words)
    .join("; ");
}
