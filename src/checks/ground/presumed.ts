// Presumptive bearing values: where a plan gives the ground a soil class and no allowable pressure, what stands in for it.

import { hookName, type Plan } from "../../plan/index.ts";
import { dataMeasure } from "../dataMeasure.ts";
import type { DataMeasure } from "../measure.ts";
import { allowableAt, type GroundWords, recordAllowable } from "./allowable.ts";

/** Every stand-in of a plan: below cranes at their place, along their ways, and on the path. */
export function presumedMeasures(plan: Plan): DataMeasure[] {
  const { site } = plan;
  return [
    ...plan.cranes.map((one, i) => presumed(`cranes[${i}]`, one, `ground below ${hookName(one)}`)),
    ...(site.craneGround ?? []).map((one, i) =>
      presumed(`site.craneGround[${i}]`, one, `ground '${one.name}'`),
    ),
    ...site.path.points.map((one, i) =>
      presumed(`site.path.points[${i}]`, one, `path at chainage ${one.chainage_m} m`),
    ),
  ].flat();
}

function presumed(path: string, ground: GroundWords, words: string): DataMeasure[] {
  const allowable = allowableAt(path, ground);
  if (allowable === null || allowable.path !== null) return [];
  return [
    dataMeasure(
      {
        check: "presumptive bearing",
        set: "",
        subject: path,
        unit: "kPa",
        factor: 1e-3,
        words: ({ value }) =>
          `${words}: no allowable pressure is given, and ${(value / 1000).toFixed(1)} kPa stands in for its soil class`,
        cure: "an allowable pressure from this site's own investigation",
      },
      (rec) => {
        recordAllowable(rec, allowable);
        rec?.ends("q_a", null);
        return { value: allowable.value, limit: Number.NaN };
      },
      allowable,
    ),
  ];
}
