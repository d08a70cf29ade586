// Seats as they were built against their design: each for itself, and the plane that the landed set takes on them.

import { leanOf, levelOf } from "../../mechanics/index.ts";
import type { Plan, Seat } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { dataMeasure } from "../dataMeasure.ts";
import type { Limit } from "../limitForm.ts";
import { limitOf } from "../limits.ts";
import { type DataMeasure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, METRE, MM, type Recorder, solved, trace } from "../trace.ts";
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

/** Surveyed seats against their design level: how far each is off it. */
export function seatMeasures(plan: Plan): DataMeasure[] {
  const limit = limitOf(plan, CHECK);
  if (limit === null) return [];
  return plan.site.seats.map((seat) =>
    dataMeasure(
      {
        check: CHECK,
        set: "",
        subject: nameOf(seat),
        unit: "mm",
        factor: 1000,
        words: ({ value }) =>
          `seat ${nameOf(seat)} stands ${(1000 * value).toFixed(1)} mm ${(seatOff(null, plan, seat) ?? 0) > 0 ? "above" : "below"} its design level${seat.shims_mm === undefined ? "" : `, ${seat.shims_mm} mm of shims included`}`,
        cure,
      },
      (rec): Reading => {
        const off = seatOff(rec, plan, seat);
        if (off === null) return NOT_HERE;
        const value = trace(rec, "off", Math.abs(off), "abs(dz)", "m", "off its design level");
        return { value, limit: limitInMetres(rec, limit) };
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

/** How far the landed set leans, or stands out of level, against the bearings as they were designed. */
export function planeMeasures(ctx: SetContext): DataMeasure[] {
  const limit = limitOf(ctx.plan, PLANE);
  const [stands, asDesigned] = [landedOn(ctx, topsOf(ctx, "it stands")), landedAsDesigned(ctx)];
  if (limit === null || stands === null || asDesigned === null) return [];
  const off = offPlane(stands, asDesigned);
  return (["lean", "level"] as const).map((which) =>
    dataMeasure(
      {
        check: PLANE,
        set: ctx.set.id,
        subject: which,
        unit: "%",
        factor: 100,
        digits: 2,
        words: ({ value }) =>
          `on its bearings as they stand, the ${which} of the landed set is ${(100 * value).toFixed(2)} % off that on the designed ones`,
        cure: "shims below the low bearings before the set is landed",
      },
      (rec): Reading => {
        const turn = which === "lean" ? leanOf : levelOf;
        solved(rec, "t", turn(stands.solution), "1", `${which} of the set on its bearings as they stand`);
        solved(rec, "t_d", turn(asDesigned.solution), "1", `${which} of the set on the designed bearings`);
        const value = trace(rec, "off", Math.abs(off[which]), "abs(t - t_d)", "1", "off the designed one");
        constant(rec, "p", limit.value, "%", "allowed", `${limit.source} (${limit.chosenBy})`);
        const allowed = trace(rec, "allowed", limit.value / 100, "p/100", "1", "allowed");
        rec?.ends("off", "allowed");
        return { value, limit: allowed };
      },
      limit,
    ),
  );
}
