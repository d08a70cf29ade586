// The set in its final place with nothing on it but its bearings: solved on any levels of them, without running its steps.

import { type Solution, solveStatics } from "../../mechanics/index.ts";
import { type Bearing, bearingsOf, bearingTop, type PlanSet } from "../../plan/index.ts";
import {
  type DatumPlane,
  idealise,
  type SetContext,
  type Situation,
  startSituation,
} from "../../sequence/index.ts";

/** A set at rest on its bearings. */
export interface Landed {
  bearings: Bearing[];
  /** Elevation of every bearing's top, m. */
  tops: readonly number[];
  situation: Situation;
  solution: Solution;
  /** Force of every bearing, N. */
  forces: number[];
}

const chainageOf = ({ plan: { site } }: SetContext, b: Bearing) =>
  b.line === "near" ? site.nearBearing_m : site.farBearing_m;
const acrossOf = ({ set }: SetContext, b: Bearing) => set.girders.find((g) => g.line === b.girder)?.y_m ?? 0;

/** Elevations of the tops of a set's bearings, m: as they stand (survey and shims) or as designed. */
export function topsOf(ctx: SetContext, as: "it stands" | "designed"): number[] {
  return bearingsOf(ctx.plan, ctx.set).map((b) => bearingTop(ctx.plan, ctx.set, b, as));
}

/** The plane nearest to the tops of the bearings; with bearings under a single girder it does not fall to a side. */
export function bearingPlane(ctx: SetContext, tops: readonly number[]): DatumPlane {
  const bearings = bearingsOf(ctx.plan, ctx.set);
  const n = bearings.length;
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / n;
  const xs = bearings.map((b) => chainageOf(ctx, b));
  const ys = bearings.map((b) => acrossOf(ctx, b));
  const [x0, y0, z0] = [mean(xs), mean(ys), mean(tops)];
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const [x, y, z] = [xs[i] - x0, ys[i] - y0, tops[i] - z0];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * z;
    yz += y * z;
  }
  const det = xx * yy - xy * xy;
  const flat = !(det > 1e-9 * xx * xx);
  const grade = flat ? (xx > 0 ? xz / xx : 0) : (xz * yy - yz * xy) / det;
  const across = flat ? 0 : (yz * xx - xz * xy) / det;
  return { chainage: x0, elevation: z0 - across * y0, grade, crossfall: -across };
}

/** y of a set's axis in its final place, m: from where it starts and what its steps bring it across. */
export function placeAcross(set: PlanSet): number {
  return set.steps.reduce((y, s) => y + (s.do === "bring over" ? s.dy_m : 0), set.start.y_m ?? 0);
}

/**
 * The set on its bearings with their tops at these elevations (m), in the order of `bearingsOf`; null where the plan
 * does not say which stations come to lie on the bearing lines, or where the bearings do not hold the set.
 */
export function landedOn(ctx: SetContext, tops: readonly number[]): Landed | null {
  const bearings = bearingsOf(ctx.plan, ctx.set);
  const soles = ctx.set.soleStations_m;
  if (soles === undefined || bearings.length === 0) return null;
  const start = startSituation(ctx);
  const situation: Situation = {
    ...start,
    rearEnd: ctx.plan.site.nearBearing_m - soles.near,
    across: placeAcross(ctx.set),
    plane: bearingPlane(ctx, topsOf(ctx, "designed")),
    trains: start.trains.map((t) => ({ ...t, under: false })),
    overSeats: true,
  };
  const state = idealise(ctx, situation);
  const stands = topsOf(ctx, "it stands");
  const moved = (state.bearings ?? []).map((b, i) => ({ ...b, seat: b.seat + (tops[i] - stands[i]) }));
  const solution = solveStatics({ ...state, bearings: moved }, { model: ctx.model });
  if (solution.status !== "solved") return null;
  const forces = bearings.map(() => 0);
  solution.devices.forEach((d, j) => {
    if (d.kind === "bearing") forces[d.of] = solution.contact.F[j];
  });
  return { bearings, tops, situation, solution, forces };
}

const designed = new WeakMap<SetContext, Landed | null>();

/** The set on its bearings as they were designed, worked out once for a context. */
export function landedAsDesigned(ctx: SetContext): Landed | null {
  let known = designed.get(ctx);
  if (known === undefined) {
    known = landedOn(ctx, topsOf(ctx, "designed"));
    designed.set(ctx, known);
  }
  return known;
}
