// One look at a pose: where all bodies are, the boxes around them, and the distance of a pair.

import { convexDistance, newGap } from "../../numeric/index.ts";
import type { Pose, SetContext, Situation } from "../../sequence/index.ts";
import { newPlaced, type Placed, placeBodies, type SweptBodies, sweptBodies } from "../../shape/index.ts";
import type { ClearancePair } from "./pairs.ts";

export interface Look extends Placed {
  progress: number;
  situation: Situation;
  pose: Pose;
  shape: Float64Array;
  /** Per body: least and greatest x, y, z with its thickness. */
  boxes: Float64Array;
  /** Per group: the same. */
  around: Float64Array;
}

/** A look at a situation with a solved shape. */
export function lookAt(
  ctx: SetContext,
  progress: number,
  situation: Situation,
  pose: Pose,
  shape: Float64Array,
): Look {
  const placed = newPlaced(ctx);
  placeBodies(ctx, situation, shape, placed);
  const swept = sweptBodies(ctx);
  const { xyz, there } = placed;
  const boxes = boxesOf(swept, xyz);
  return { xyz, there, progress, situation, pose, shape, boxes, around: aroundOf(swept, boxes) };
}

function aroundOf({ groups, firstBody }: SweptBodies, boxes: Float64Array): Float64Array {
  const out = new Float64Array(6 * groups.length);
  for (let g = 0; g < groups.length; g++)
    for (let k = 0; k < 3; k++) {
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (let b = firstBody[g]; b < firstBody[g + 1]; b++) {
        low = Math.min(low, boxes[6 * b + k]);
        high = Math.max(high, boxes[6 * b + 3 + k]);
      }
      out[6 * g + k] = low;
      out[6 * g + 3 + k] = high;
    }
  return out;
}

function boxesOf({ bodies }: SweptBodies, xyz: Float64Array): Float64Array {
  const out = new Float64Array(6 * bodies.length);
  for (let b = 0; b < bodies.length; b++) {
    const { first, count, radius, disc } = bodies[b];
    for (let k = 0; k < 3; k++) {
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (let i = first; i < first + count; i++) {
        const x = xyz[3 * i + k];
        if (x < low) low = x;
        if (x > high) high = x;
      }
      const thick = radius + (k < 2 ? disc : 0);
      out[6 * b + k] = low - thick;
      out[6 * b + 3 + k] = high + thick;
    }
  }
  return out;
}

/** The least distance of a pair that was found so far, with both bodies by their places among all bodies. */
export interface Least {
  distance: number;
  bodyA: number;
  bodyB: number;
  progress: number;
  points: [[number, number, number], [number, number, number]];
}

export const newLeast = (): Least => ({
  distance: Number.POSITIVE_INFINITY,
  bodyA: -1,
  bodyB: -1,
  progress: Number.NaN,
  points: [
    [Number.NaN, Number.NaN, Number.NaN],
    [Number.NaN, Number.NaN, Number.NaN],
  ],
});

const gap = newGap();

/** Takes the distance of a pair at a look where it is less than the least so far. */
export function takeDistance(ctx: SetContext, look: Look, pair: ClearancePair, least: Least): void {
  const swept = sweptBodies(ctx);
  const { firstBody } = swept;
  if (boxGap(look.around, pair.a, pair.b) >= least.distance) return;
  // The two bodies nearest so far come first: what is beyond them is then left out quickly.
  if (least.bodyA >= 0) takeBodies(swept, look, least.bodyA, least.bodyB, least);
  for (let i = firstBody[pair.a]; i < firstBody[pair.a + 1]; i++)
    for (let j = firstBody[pair.b]; j < firstBody[pair.b + 1]; j++)
      if (boxGap(look.boxes, i, j) < least.distance) takeBodies(swept, look, i, j, least);
}

function takeBodies({ bodies }: SweptBodies, look: Look, i: number, j: number, least: Least): void {
  const d = convexDistance(bodies[i], look.xyz, bodies[j], look.xyz, gap, least.distance);
  if (!gap.exact || !(d < least.distance)) return;
  least.distance = d;
  least.bodyA = i;
  least.bodyB = j;
  least.progress = look.progress;
  for (let k = 0; k < 3; k++) {
    least.points[0][k] = gap.a[k];
    least.points[1][k] = gap.b[k];
  }
}

/** What a pair is apart at least by the boxes around both groups, m; -Infinity where these meet. */
export const roughGap = (look: Look, { a, b }: ClearancePair): number => boxGap(look.around, a, b);

/** What two boxes are apart at least, m; -Infinity where they meet. */
function boxGap(boxes: Float64Array, i: number, j: number): number {
  let square = 0;
  for (let k = 0; k < 3; k++) {
    const g = Math.max(boxes[6 * j + k] - boxes[6 * i + 3 + k], boxes[6 * i + k] - boxes[6 * j + 3 + k]);
    if (g > 0) square += g * g;
  }
  return square > 0 ? Math.sqrt(square) : Number.NEGATIVE_INFINITY;
}
