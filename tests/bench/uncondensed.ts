// The problem of a pose without condensation, as banded matrices: what a solver would factorise anew for every pose.

import type { Solution } from "../../src/mechanics/index.ts";
import { type Banded, banded, bandedAdd } from "../../src/numeric/index.ts";

/** New places of the unknowns: every node `per` of them, every deck three, in the order of their stations. */
function placed(
  s: Solution,
  per: number,
): { node: (i: number) => number; deck: (i: number) => number; n: number } {
  const { model, layout } = s;
  const items = [
    ...Array.from(model.nodeX, (x, i) => ({ x, i, deck: false })),
    ...layout.trains.map((t, i) => ({ x: t.at, i, deck: true })),
  ].sort((a, b) => a.x - b.x || a.i - b.i);
  const nodes: number[] = [];
  const decks: number[] = [];
  let n = 0;
  for (const { i, deck } of items) {
    (deck ? decks : nodes)[i] = n;
    n += deck ? 3 : per;
  }
  return { node: (i) => nodes[i], deck: (i) => decks[i], n };
}

/** Entries [row, column, value] of the set's matrix and of all active devices in the new places. */
function entries(s: Solution, per: number): { list: [number, number, number][]; n: number } {
  const { model, devices, contact } = s;
  const place = placed(s, per);
  // Of six unknowns of a node (u, v, w and three turns) the vertical problem has the third, fourth and fifth.
  const dof = (q: number) => place.node(Math.floor(q / 3)) + (per === 6 ? 2 : 0) + (q % 3);
  const list: [number, number, number][] = [];
  const { n, band, a } = model.matrix;
  for (let i = 0; i < n; i++)
    for (let j = Math.max(0, i - band); j <= i; j++) {
      const value = a[i * (band + 1) + j - i + band];
      if (value !== 0) list.push([dof(i), dof(j), value]);
    }
  devices.forEach((d, j) => {
    if (contact.active[j] === 0) return;
    const row = new Map<number, number>();
    const put = (at: number, value: number) => row.set(at, (row.get(at) ?? 0) + value);
    d.rows.forEach((r, i) => {
      r.dofs.forEach((q, k) => {
        put(dof(q), d.factors[i] * r.coefficients[k]);
      });
    });
    d.decks.forEach((deck, i) => {
      for (let q = 0; q < 3; q++) put(place.deck(deck) + q, d.deckFactors[3 * i + q]);
    });
    for (const [p, x] of row) for (const [q, y] of row) if (p >= q) list.push([p, q, d.stiffness * x * y]);
  });
  return { list, n: place.n };
}

function assembled(list: readonly [number, number, number][], n: number): Banded {
  let band = 1;
  for (const [i, j] of list) band = Math.max(band, Math.abs(i - j));
  const m = banded(n, band);
  for (const [i, j, value] of list) bandedAdd(m, i, j, value);
  return m;
}

/** The vertical problem with decks and all active supports as springs. */
export function withSupports(s: Solution): Banded {
  const { list, n } = entries(s, 3);
  return assembled(list, n);
}

/** The same as a space frame of six unknowns per node; bars and bending in plan of a stiffness of about the same size. */
export function frameSize(s: Solution): Banded {
  const { list, n } = entries(s, 6);
  const { model } = s;
  const place = placed(s, 6);
  for (const girder of model.girders)
    for (const e of girder.elements) {
      const [p, q] = [place.node(e.node1), place.node(e.node2)];
      const L = e.length;
      const c = e.EI / 10 / L ** 3;
      const beam: [number, number][] = [
        [p + 1, 1],
        [p + 5, L / 2],
        [q + 1, -1],
        [q + 5, L / 2],
      ];
      for (const [i, x] of beam) for (const [j, y] of beam) if (i >= j) list.push([i, j, 12 * c * x * y]);
      for (const [i, j, v] of [
        [p, p, 1],
        [q, q, 1],
        [q, p, -1],
        [p + 5, p + 5, 1e-2],
        [q + 5, q + 5, 1e-2],
        [q + 5, p + 5, -1e-2],
      ])
        list.push([Math.max(i, j), Math.min(i, j), (v * e.EI) / L]);
    }
  // The plan is held at every node by a little: only size and band count here.
  for (let i = 0; i < model.nodeX.length; i++)
    for (const q of [0, 1, 5]) list.push([place.node(i) + q, place.node(i) + q, 1e6]);
  return assembled(list, n);
}
