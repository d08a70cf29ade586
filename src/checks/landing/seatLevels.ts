// Seats as they were built against their design: each for itself, and the plane that the landed set takes on them.

import { leanOf, levelOf } from "../../mechanics/index.ts";
import type { Plan, Seat } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import type { Limit } from "../limitForm.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, METRE, MM, type Recorder, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { found } from "./found.ts";
import { type Landed, landedAsDesigned, landedOn, topsOf } from "./landed.ts";

const CHECK = "seat level";
const PLANE = "bearing plane";
const cure = "shims, or grinding and a new bed, so that the bearing stands at its design level";

/** How far a seat with its shims lies above its design level, m; null where it was not surveyed. */
export function seatOff(rec: Recorder | null, plan: Plan, seat: Seat): number | null {
  if (seat.asBuilt_m === null) return null;
  const path = `site.seats[${plan.site.seats.indexOf(seat)}]`;
  field(rec, "z_b", seat.asBuilt_m, "seat as built", `${path}.asBuilt_m`, seat.asBuilt_m, METRE);
  field(rec, "z_d", seat.design_m, "seat as designed", `${path}.design_m`, seat.design_m, METRE);
  if (seat.shims_mm === undefined)
    return trace(rec, "dz", seat.asBuilt_m - seat.design_m, "z_b - z_d", "m", "seat above its design level");
  const shims = seat.shims_mm / 1000;
  field(rec, "h", shims, "shims on the seat", `${path}.shims_mm`, seat.shims_mm, MM);
  return trace(
    rec,
    "dz",
    seat.asBuilt_m + shims - seat.design_m,
    "z_b + h - z_d",
    "m",
    "seat with its shims above its design level",
  );
}

const nameOf = (seat: Seat) =>
  `${seat.line} ${seat.girder}${seat.set === undefined ? "" : ` of ${seat.set}`}`;

/** Surveyed seats that are off their design level by more than the limit. */
export function seatFindings(plan: Plan): Finding[] {
  const limit = limitOf(plan, CHECK);
  if (limit === null) return [];
  return plan.site.seats.flatMap((seat) => {
    const off = seatOff(null, plan, seat);
    // Differences of levels of some hundred metres carry the rounding of those.
    if (off === null || Math.abs(off) * 1000 <= limit.value + 1e-6) return [];
    const mm = off * 1000;
    return [
      found(
        "",
        null,
        {
          level: "caution",
          check: CHECK,
          subject: nameOf(seat),
          value: Math.abs(mm),
          unit: "mm",
          use: Math.abs(mm) / limit.value,
          words: `seat ${nameOf(seat)} stands ${Math.abs(mm).toFixed(1)} mm ${mm > 0 ? "above" : "below"} its design level${seat.shims_mm === undefined ? "" : `, ${seat.shims_mm} mm of shims included`}`,
          cure,
        },
        limit,
      ),
    ];
  });
}

/** The same for one seat, with its trace. */
export function seatMeasures(ctx: SetContext): Measure[] {
  const { plan } = ctx;
  const limit = limitOf(plan, CHECK);
  if (limit === null) return [];
  return plan.site.seats.map((seat) =>
    measure(
      {
        check: CHECK,
        subject: nameOf(seat),
        kind: `${seat.line} bearings`,
        level: "caution",
        unit: "mm",
        factor: 1000,
        watched: false,
        cure,
        ...traced(ctx, (_pose, rec): Reading => {
          const off = seatOff(rec, plan, seat);
          if (off === null) return NOT_HERE;
          const value = trace(rec, "off", Math.abs(off), "abs(dz)", "m", "off its design level");
          return { value, limit: limitInMetres(rec, limit) };
        }),
      },
      limit,
    ),
  );
}

/** A limit in mm as metres, written down as the limit of a reading whose value is `off`. */
export function limitInMetres(rec: Recorder | null, limit: Limit): number {
  constant(rec, "allowed", limit.value / 1000, "m", "allowed", `${limit.source} (${limit.chosenBy})`);
  rec?.ends("off", "allowed");
  return limit.value / 1000;
}

/** Lean and level of the landed set against those on the designed bearings, as tangents. */
export function offPlane(stands: Landed, asDesigned: Landed): { lean: number; level: number } {
  return {
    lean: leanOf(stands.solution) - leanOf(asDesigned.solution),
    level: levelOf(stands.solution) - levelOf(asDesigned.solution),
  };
}

/** The landed set leans, or stands out of level, against the bearings as they were designed. */
export function planeFindings(ctx: SetContext): Finding[] {
  const limit = limitOf(ctx.plan, PLANE);
  const [stands, asDesigned] = [landedOn(ctx, topsOf(ctx, "it stands")), landedAsDesigned(ctx)];
  if (limit === null || stands === null || asDesigned === null) return [];
  const off = offPlane(stands, asDesigned);
  return (["lean", "level"] as const).flatMap((which) => {
    const value = 100 * Math.abs(off[which]);
    if (value <= limit.value * (1 + 1e-9)) return [];
    return [
      found(
        ctx.set.id,
        null,
        {
          level: "caution",
          check: PLANE,
          subject: which,
          value,
          unit: "%",
          use: value / limit.value,
          words: `on its bearings as they stand, the ${which} of the landed set is ${value.toFixed(2)} % off that on the designed ones`,
          cure: "shims below the low bearings before the set is landed",
        },
        limit,
      ),
    ];
  });
}
