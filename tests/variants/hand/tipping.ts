// Hand tipping on two trains: moments of the weight about every side of the polygon of group centroids, and of bunks.

import type { Plan } from "../../../src/plan/index.ts";
import { pathAt, type Train, trainOf } from "./levers.ts";
import type { Weight } from "./weights.ts";

type Point = readonly [x: number, y: number];

/** Middle of the wheels of a group below the set. */
function centroid(plan: Plan, id: Train, wheels: readonly string[]): Point {
  const t = trainOf(plan, id);
  const deck = plan.sets[0].onTransporters.find((on) => on.transporter === id)?.deckAt_m ?? Number.NaN;
  const at = wheels.map((wheel): Point => {
    const line = Number(wheel.slice(0, -1));
    return [deck + (line - (t.lines + 1) / 2) * t.pitch_m, (wheel.endsWith("L") ? 1 : -1) * (t.gauge_m / 2)];
  });
  return [at.reduce((s, p) => s + p[0], 0) / at.length, at.reduce((s, p) => s + p[1], 0) / at.length];
}

/** Distance of a point to the left of the line from a to b, m. */
function leftOf(a: Point, b: Point, p: Point): number {
  return (
    ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / Math.hypot(b[0] - a[0], b[1] - a[1])
  );
}

/** Least ratio of stabilising to overturning moment about the sides of the points' polygon; the slope pushes left. */
function least(points: Point[], w: Weight, crossfall: number, arm: number): number {
  let ratio = Number.POSITIVE_INFINITY;
  for (const a of points)
    for (const b of points) {
      // A side of the polygon has every other point on its left.
      if (a === b || points.some((p) => leftOf(a, b, p) < -1e-9)) continue;
      let [hold, turn] = [0, 0];
      for (const l of w.lumps) {
        const d = leftOf(a, b, [l.x, l.y]);
        if (d > 0) hold += l.w * d;
        else turn -= l.w * d;
      }
      const across = (b[0] - a[0]) / Math.hypot(b[0] - a[0], b[1] - a[1]);
      const push = w.W * crossfall * across * arm;
      if (push < 0) turn -= push;
      ratio = Math.min(ratio, hold / turn);
    }
  return ratio;
}

/** The governing moment ratio of the set on both trains with its rear end at a chainage. */
export function tippingRatio(plan: Plan, w: Weight, rearEnd: number): number {
  const trains: Train[] = ["rear", "front"];
  const groups = trains.flatMap((id) => trainOf(plan, id).groups.map((g) => centroid(plan, id, g.wheels)));
  const bunks = plan.sets[0].onTransporters.flatMap((on) =>
    plan.sets[0].girders.map((g): Point => [on.deckAt_m, g.y_m]),
  );
  const c = trains.reduce((s, id) => {
    const deck = plan.sets[0].onTransporters.find((on) => on.transporter === id)?.deckAt_m ?? 0;
    return s + pathAt(plan, rearEnd + deck).crossfall / 2;
  }, 0);
  const high = w.z + trainOf(plan, "rear").bunkHeight_m;
  return Math.min(least(groups, w, c, high), least(bunks, w, c, w.z));
}
