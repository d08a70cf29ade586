// Bunks: whether each can follow the slope between its deck and the girder on it.
//
// A fixed bunk is taken as an even bed of the plan's bunk stiffness over its length: a slope s between deck and soffit
// shifts its load by s k b^2 / (12 F), and from b/6 on its edge is free (middle-third rule, elastic bed that cannot pull).
// A rocking or a turning bunk follows the slope up to what its maker says. Turning about the vertical is needed only where
// a path is curved in plan, which a plan cannot have yet.

import { camberAt, rowAt, rowDisplacement } from "../../mechanics/index.ts";
import type { Bunk, Transporter } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading, useOf } from "../measure.ts";
import { measureFindings } from "../measureFindings.ts";
import { constant, field, MM, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { at, makers, pathOf, trains } from "./trains.ts";

/** Half the length over which the slope of a camber, straight between its points, is taken, m. */
const HALF = 0.25;

/** Slope of a girder's soffit along at a station against a deck, as a tangent, rising forward positive. */
export function slopeOver(pose: Pose, deck: number, girder: number, x: number): number {
  const { model, contact } = pose.solution;
  const g = model.girders[girder];
  const [from, to] = [Math.max(g.from, x - HALF), Math.min(g.to, x + HALF)];
  const camber = (camberAt(model, girder, to) - camberAt(model, girder, from)) / (to - from);
  const level = contact.a[model.modes.length + 3 * deck + 2];
  return camber + level - rowDisplacement(pose.solution, rowAt(model, girder, x, "y"));
}

/** The bunk of a transporter on which most is used, by a use of slope (tangent without sign) and force (N). */
function worstBunk(
  ctx: SetContext,
  pose: Pose,
  t: Transporter,
  use: (bunk: Bunk, slope: number, force: number) => number,
): { use: number; slope: number; force: number; bunk: number; girder: string } | null {
  const { devices, contact, model, layout } = pose.solution;
  const deck = layout.trains.findIndex((one) => one.name === t.id);
  let worst: ReturnType<typeof worstBunk> = null;
  for (let j = 0; j < devices.length; j++) {
    const d = devices[j];
    if (d.kind !== "bunk" || d.of !== deck || !(contact.F[j] > 0)) continue;
    const bunk = t.bunks.findIndex((b) => Math.abs(layout.trains[deck].at + b.at_m - d.x) < 1e-9);
    const girder = model.girders.findIndex((g) => g.name === d.part);
    const slope = slopeOver(pose, deck, girder, d.x);
    const force = pose.forces[at(ctx, d.name)];
    const used = use(t.bunks[bunk], Math.abs(slope), force);
    if (!Number.isNaN(used) && (worst === null || used > worst.use))
      worst = { use: used, slope, force, bunk, girder: d.part };
  }
  return worst;
}

/** Loads of fixed bunks off their middle, and slopes of rocking and turning ones. */
export function bunkSlopes(ctx: SetContext): Measure[] {
  return trains(ctx).flatMap((t) => {
    const path = pathOf(ctx, t);
    const out: Measure[] = [];
    const common = { subject: t.id, kind: `${t.kind} train`, level: "caution" as const, watched: false };
    const k = t.bunkStiffness_kN_per_mm * 1e6;
    if (t.bunks.some((b) => b.kind === "fixed" && b.length_mm !== undefined))
      out.push(
        measure({
          ...common,
          check: "bunk edge",
          unit: "mm",
          factor: 1000,
          digits: 0,
          source:
            "statics of an even bed: an edge of a fixed bunk is free once its load is b/6 off the middle",
          chosenBy: "statics",
          cure: "a rocking bunk, packing tapered to the soffit, or the deck levelled to its slope",
          ...traced(ctx, (pose, rec): Reading => {
            const worst = worstBunk(ctx, pose, t, (bunk, slope, F) => {
              if (bunk.kind !== "fixed" || bunk.length_mm === undefined) return Number.NaN;
              return (slope * k * (bunk.length_mm / 1000)) / (2 * F);
            });
            if (worst === null) return NOT_HERE;
            const { slope, force, bunk, girder } = worst;
            const mm = t.bunks[bunk].length_mm ?? 0;
            const b = mm / 1000;
            const words = `slope of girder ${girder} against the deck at bunk ${bunk + 1}`;
            solved(rec, "s", slope, "1", words);
            solved(rec, "F", force, "N", `force of that bunk`);
            if (rec !== null) {
              constant(
                rec,
                "k_kN_mm",
                t.bunkStiffness_kN_per_mm,
                "kN/mm",
                "stiffness of a bunk",
                `${path}.bunkStiffness_kN_per_mm`,
              );
              field(rec, "b", b, "length of the bunk", `${path}.bunks[${bunk}].length_mm`, mm, MM);
            }
            trace(rec, "k", k, "k_kN_mm*1e6", "N/m", "stiffness of a bunk");
            const value = (Math.abs(slope) * k * b * b) / (12 * force);
            trace(rec, "e", value, "abs(s)*k*b^2/(12*F)", "m", "load off the middle while both edges press");
            const limit = trace(rec, "e_a", b / 6, "b/6", "m", "edge of the middle third");
            rec?.ends("e", "e_a");
            return { value, limit, where: whereOf("fixed", bunk, girder, slope) };
          }),
        }),
      );
    if (t.bunks.some((b) => b.kind !== "fixed" && b.rocks_pct !== undefined))
      out.push(
        measure(
          {
            ...common,
            check: "bunk rocking",
            unit: "% slope",
            factor: 100,
            digits: 2,
            cure: "packing tapered to the soffit, or the deck levelled to its slope",
            ...traced(ctx, (pose, rec): Reading => {
              const worst = worstBunk(ctx, pose, t, ({ kind, rocks_pct }, slope) =>
                kind === "fixed" || rocks_pct === undefined
                  ? Number.NaN
                  : (slope * 100) / Math.max(rocks_pct, 1e-9),
              );
              if (worst === null) return NOT_HERE;
              const { slope, bunk, girder } = worst;
              const { kind, rocks_pct = 0 } = t.bunks[bunk];
              solved(
                rec,
                "s_0",
                slope,
                "1",
                `slope of girder ${girder} against the deck at bunk ${bunk + 1}`,
              );
              const value = trace(rec, "s", Math.abs(slope), "abs(s_0)", "1", "its size");
              constant(
                rec,
                "s_pct",
                rocks_pct,
                "%",
                "slope that the bunk follows",
                `${path}.bunks[${bunk}].rocks_pct`,
              );
              const limit = trace(
                rec,
                "s_a",
                rocks_pct / 100,
                "s_pct/100",
                "1",
                "slope that the bunk follows",
              );
              rec?.ends("s", "s_a");
              return { value, limit, where: whereOf(kind, bunk, girder, slope) };
            }),
          },
          makers(t),
        ),
      );
    return out;
  });
}

const whereOf = (kind: Bunk["kind"], bunk: number, girder: string, slope: number): string =>
  `${kind} bunk ${bunk + 1}, girder ${girder} ${slope >= 0 ? "rises" : "falls"} forward by ${Math.abs(slope * 100).toFixed(2)} % against the deck`;

/** Findings of measures that are too costly for every pose of a search: over the stored poses of a run. */
export function overRun(
  make: (ctx: SetContext) => Measure[],
): (ctx: SetContext, run: SetRun, stored: readonly Pose[]) => Finding[] {
  return (ctx, run, stored) =>
    make(ctx).flatMap((m) => {
      const readings = stored.map((pose) => m.read(pose));
      const use = Float64Array.from(readings, (r) => useOf(m, r));
      return measureFindings(ctx, run, m, (i) => readings[i], use);
    });
}
