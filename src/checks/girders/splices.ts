// Field splices: moment and shear at every stored pose against what the joint can carry as it is bolted then.

import { diagramsOf, momentAt, shearAt } from "../../mechanics/index.ts";
import type { Splice } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, measure, type Reading } from "../measure.ts";
import type { CheckName } from "../names.ts";
import { constant, type FieldUnit, field, KN, KNM, NUMBER, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { girdersOf, setPath } from "./data.ts";

/** A joint with some of its bolts counts in proportion to them. */
const PROPORTION =
  "common practice, no source: in proportion to the holes filled with bolts and pins; groups of bolts of even spacing";

interface Quantity {
  check: CheckName;
  symbol: "M" | "V";
  field: "moment_kNm" | "shear_kN";
  unit: string;
  stated: FieldUnit;
  si: string;
  /** Without sign, the greater of both sides. */
  at: (pose: Pose, girder: number, x: number) => number;
}

const moment: Quantity = {
  check: "splice moment",
  symbol: "M",
  field: "moment_kNm",
  unit: "kNm",
  stated: KNM,
  si: "N m",
  at: (pose, girder, x) => {
    const d = diagramsOf(pose.solution);
    return Math.max(Math.abs(momentAt(d, girder, x, -1)), Math.abs(momentAt(d, girder, x, 1)));
  },
};

const shear: Quantity = {
  check: "splice shear",
  symbol: "V",
  field: "shear_kN",
  unit: "kN",
  stated: KN,
  si: "N",
  at: (pose, girder, x) => {
    const d = diagramsOf(pose.solution);
    return Math.max(Math.abs(shearAt(d, girder, x, -1)), Math.abs(shearAt(d, girder, x, 1)));
  },
};

/** Name of a splice as the subject of a check. */
export const spliceName = (s: Splice): string => `splice ${s.girder} at ${s.at_m} m`;

/** Moment and shear of every splice whose capacity the plan states. */
export function splices(ctx: SetContext): Measure[] {
  const girders = girdersOf(ctx);
  return ctx.set.splices.flatMap((splice, i) => {
    const index = girders.find((g) => g.line === splice.girder)?.index ?? -1;
    const path = `${setPath(ctx)}.splices[${i}]`;
    return [moment, shear].flatMap((q) => {
      const stated = splice[q.field];
      if (stated === undefined || index < 0) return [];
      return [
        measure({
          check: q.check,
          subject: spliceName(splice),
          kind: "",
          unit: q.unit,
          digits: 0,
          strip: true,
          watched: false,
          source: `capacity of the full joint in the plan${splice.boltedFraction === undefined ? "" : `, times ${splice.boltedFraction}: ${PROPORTION}`}`,
          chosenBy: "plan",
          cure: "more bolts before this step, or supports that bend the girder less at the splice",
          ...traced(ctx, (pose, rec): Reading => {
            const value = solved(
              rec,
              q.symbol,
              q.at(pose, index, splice.at_m),
              q.si,
              `${q.symbol === "M" ? "moment" : "shear"} at the splice, without sign, greater of both sides`,
            );
            const limit = capacity(rec, q, splice, stated, path);
            rec?.ends(q.symbol, q.symbol === "M" ? "M_s" : "V_s");
            return { value, limit };
          }),
        }),
      ];
    });
  });
}

/** What the joint can carry with the bolts that are in, N m or N. */
function capacity(rec: Recorder | null, q: Quantity, splice: Splice, stated: number, path: string): number {
  const full = q.symbol === "M" ? "M_full" : "V_full";
  const whole = field(
    rec,
    full,
    stated * 1000,
    "capacity of the full joint",
    `${path}.${q.field}`,
    stated,
    q.stated,
  );
  const given = splice.boltedFraction;
  const f =
    given === undefined
      ? constant(rec, "f_b", 1, "1", "holes filled", `${path}.boltedFraction is blank: all of them`)
      : field(rec, "f_b", given, "holes filled with bolts and pins", `${path}.boltedFraction`, given, NUMBER);
  const formula = q.symbol === "M" ? "f_b*M_full" : "f_b*V_full";
  const symbol = q.symbol === "M" ? "M_s" : "V_s";
  return trace(rec, symbol, f * whole, formula, q.si, "capacity as bolted", PROPORTION);
}
