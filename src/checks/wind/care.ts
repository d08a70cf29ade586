// Wind limits of steps from which on great caution is asked for: the highest of a set against the table.

import type { Plan } from "../../plan/index.ts";
import { dataMeasure } from "../dataMeasure.ts";
import type { DataMeasure } from "../measure.ts";
import { constant, field, trace } from "../trace.ts";
import { gustOverReading, SPEED } from "./air.ts";
import { goTable } from "./table.ts";

/** The highest wind limit of each set, with the steps whose limits ask for caution. */
export function careMeasures(plan: Plan): DataMeasure[] {
  const { reading, limit } = goTable({ plan }).caution;
  return plan.sets.flatMap((set, k) => {
    const limits = set.steps.flatMap(({ id, windLimit_m_per_s: V }, i) =>
      V === undefined ? [] : [{ id, V, i }],
    );
    if (limits.length === 0) return [];
    const careful = limits.filter(({ V }) => V > reading * (1 + 1e-9)).map(({ id }) => id);
    return [
      dataMeasure(
        {
          level: "note",
          check: "wind limit",
          set: set.id,
          subject: "set",
          unit: "m/s",
          factor: 1,
          words: () =>
            `steps with a wind limit above ${reading.toFixed(1)} m/s, from where on great caution is asked for: ${careful.join(", ")}`,
          cure: "let somebody watch the instrument throughout, or lower the limits",
        },
        (rec) => {
          const names = limits.map(({ id, V, i }) => {
            const path = `sets[${k}].steps[${i}].windLimit_m_per_s`;
            field(rec, `V_${i + 1}`, V, `wind limit of ${id}`, path, V, SPEED);
            return `V_${i + 1}`;
          });
          const most = Math.max(...limits.map(({ V }) => V));
          const value = trace(
            rec,
            "V",
            most,
            `max(${names.join(", ")})`,
            "m/s",
            "highest wind limit of its steps",
          );
          gustOverReading(plan, rec);
          const stated = `${limit.source} (${limit.chosenBy})`;
          constant(rec, "V_c", limit.value, "m/s", "3-s gust from which on caution is asked for", stated);
          trace(rec, "V_a", reading, "V_c/G_3s", "m/s", "the same as the site's instrument shows it");
          rec?.ends("V", "V_a");
          return { value, limit: reading };
        },
        limit,
      ),
    ];
  });
}
