// What if one axle line is lost: a tyre, a hose, a cylinder. Its oil is shut off, and the rest of its group takes its load.

import { type LineGroups, worstLineLost } from "../../mechanics/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE } from "../measure.ts";
import { field, KN, solved } from "../trace.ts";
import { traced } from "../traced.ts";
import { at, deckOf, makers, pathOf, trains } from "./trains.ts";

/** Greatest axle-line load with any one line of a transporter lost: a note, since no step plans it. A lost group is told by what is backed. */
export function linesLost(ctx: SetContext): Measure[] {
  return trains(ctx).map((t) => {
    const groupOf = (wheel: string) => t.groups.findIndex((g) => g.wheels.includes(wheel));
    const lines: LineGroups = Array.from(
      { length: t.lines },
      (_, i) => [groupOf(`${i + 1}L`), groupOf(`${i + 1}R`)] as const,
    );
    const count = t.groups.map((g) => g.wheels.length);
    const groups = t.groups.map((g) => at(ctx, `group ${g.name}`));
    const force = new Float64Array(groups.length);
    const path = `${pathOf(ctx, t)}.allowedLine_kN`;
    return measure(
      {
        check: "line lost",
        subject: t.id,
        kind: `${t.kind} train`,
        level: "note",
        watched: false,
        cure: "one axle line more in the group, or less load on it; with a line lost, stop and set the load down before going on",
        ...traced(ctx, (pose, rec) => {
          if (deckOf(pose, t.id) < 0) return NOT_HERE;
          for (let g = 0; g < groups.length; g++) force[g] = pose.forces[groups[g]] / count[g];
          const worst = worstLineLost(lines, force, count);
          if (worst === null) return NOT_HERE;
          const { load, lost, line } = worst;
          if (rec !== null) {
            const words = `load of axle line ${line + 1} of ${t.id} with line ${lost + 1} lost, by equal oil in what is left of its groups`;
            solved(rec, "F", load, "N", words);
            field(rec, "F_a", t.allowedLine_kN * 1000, "allowed per axle line", path, t.allowedLine_kN, KN);
            rec.ends("F", "F_a");
          }
          return {
            value: load,
            limit: t.allowedLine_kN * 1000,
            get where() {
              return `axle line ${line + 1} with line ${lost + 1} lost`;
            },
          };
        }),
      },
      makers(t),
    );
  });
}
