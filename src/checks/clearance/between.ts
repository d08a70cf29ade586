// What two bodies are apart at least between two looks. Along a fixed direction, points that go straight are furthest out at
// one of both ends, so that the gap along it is least at an end; what the points depart from their straight lines comes off.

import { convexDistance, newGap, reach } from "../../numeric/index.ts";
import type { SetContext, Situation } from "../../sequence/index.ts";
import {
  newPlaced,
  type Placed,
  placeBodies,
  type SweptBodies,
  shapeMoves,
  sweptBodies,
} from "../../shape/index.ts";
import type { Look } from "./look.ts";
import type { ClearancePair } from "./pairs.ts";

/** The time between two looks, and how far the points of every group depart in it from straight lines, m. */
export interface Span {
  a: Look;
  b: Look;
  depart: Float64Array;
  /** Twice what the shape was found to depart in the middle of the span that this one is half of; null for none. */
  known: Float64Array | null;
  halves: [Span, Span] | null;
}

const spare = new WeakMap<SetContext, Placed>();

/**
 * A span. Commanded motion curves one way only between two looks (where it turns a corner, there is a stored pose), so that
 * it departs from the straight line at most twice as far as in the middle; the solved shape goes one way, or by `known`.
 */
export function spanOf(
  ctx: SetContext,
  a: Look,
  b: Look,
  middle: Situation,
  known: Float64Array | null,
): Span {
  const { groups } = sweptBodies(ctx);
  const depart = new Float64Array(groups.length);
  const change = new Float64Array(a.shape.length);
  const mean = new Float64Array(a.shape.length);
  for (let i = 0; i < change.length; i++) {
    change[i] = b.shape[i] - a.shape[i];
    mean[i] = (a.shape[i] + b.shape[i]) / 2;
  }
  shapeMoves(ctx, change, depart);
  if (known !== null) for (let g = 0; g < depart.length; g++) depart[g] = Math.min(depart[g], known[g]);
  let placed = spare.get(ctx);
  if (placed === undefined) {
    placed = newPlaced(ctx);
    spare.set(ctx, placed);
  }
  placeBodies(ctx, middle, mean, placed);
  const { moving } = sweptBodies(ctx);
  for (let g = 0; g < moving; g++) {
    const { first, points } = groups[g];
    let most = 0;
    for (let i = 3 * first; i < 3 * (first + points); i += 3) {
      const x = placed.xyz[i] - (a.xyz[i] + b.xyz[i]) / 2;
      const y = placed.xyz[i + 1] - (a.xyz[i + 1] + b.xyz[i + 1]) / 2;
      const z = placed.xyz[i + 2] - (a.xyz[i + 2] + b.xyz[i + 2]) / 2;
      most = Math.max(most, x * x + y * y + z * z);
    }
    depart[g] += 2 * Math.sqrt(most);
  }
  return { a, b, depart, known: null, halves: null };
}

const gap = newGap();

/** A distance (m) that a pair does not come below within a span; `enough` ends the search for a better one. */
export function leastBetween(ctx: SetContext, span: Span, pair: ClearancePair, enough: number): number {
  const swept = sweptBodies(ctx);
  const { firstBody } = swept;
  const off = span.depart[pair.a] + span.depart[pair.b];
  const whole = boxesBetween(span.a.around, span.b.around, pair.a, pair.b) - off;
  if (whole >= enough) return whole;
  let least = Number.POSITIVE_INFINITY;
  for (let i = firstBody[pair.a]; i < firstBody[pair.a + 1]; i++)
    for (let j = firstBody[pair.b]; j < firstBody[pair.b + 1]; j++) {
      let bound = boxesBetween(span.a.boxes, span.b.boxes, i, j) - off;
      if (bound < enough) bound = Math.max(bound, planesBetween(swept, span, i, j, enough + off) - off);
      if (bound < least) least = bound;
      if (least < enough) return least;
    }
  return least;
}

function boxesBetween(a: Float64Array, b: Float64Array, i: number, j: number): number {
  let square = 0;
  for (let k = 0; k < 3; k++) {
    const p = 6 * i + k;
    const q = 6 * j + k;
    const ahead = Math.min(a[q] - a[p + 3], b[q] - b[p + 3]);
    const behind = Math.min(a[p] - a[q + 3], b[p] - b[q + 3]);
    const g = Math.max(ahead, behind);
    if (g > 0) square += g * g;
  }
  return square > 0 ? Math.sqrt(square) : Number.NEGATIVE_INFINITY;
}

/** The gap along the normal of either end, at both ends. */
function planesBetween(
  { bodies }: SweptBodies,
  { a, b }: Span,
  i: number,
  j: number,
  enough: number,
): number {
  const [one, other] = [bodies[i], bodies[j]];
  const along = (look: Look): number => {
    const [x, y, z] = gap.normal;
    return -reach(other, look.xyz, -x, -y, -z) - reach(one, look.xyz, x, y, z);
  };
  convexDistance(one, a.xyz, other, a.xyz, gap, enough);
  const first = Math.min(along(a), along(b));
  if (first >= enough) return first;
  convexDistance(one, b.xyz, other, b.xyz, gap, enough);
  return Math.max(first, Math.min(along(a), along(b)));
}
