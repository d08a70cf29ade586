// Wind limits of steps against the highest wind that was found for each.

import type { SetContext } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import type { Finding } from "../types.ts";
import { wayWords } from "./air.ts";
import type { StepWind } from "./types.ts";

/** A stop for every step whose stated limit is above the highest wind found. */
export function highestFindings(ctx: SetContext, steps: readonly StepWind[]): Finding[] {
  return steps.flatMap(({ step, stated, governs }): Finding[] => {
    if (stated === null || stated <= governs.reading * (1 + 1e-3)) return [];
    const { id } = ctx.set.steps[step];
    const way = governs.toward === null ? "" : ` blowing ${wayWords(governs.toward)}`;
    return [
      finding({
        id: `highest wind:${ctx.set.id}:${id}`,
        level: "stop",
        check: "highest wind",
        set: ctx.set.id,
        subject: id,
        from: { step, progress: 0 },
        to: { step, progress: 1 },
        worst: { step, progress: governs.progress },
        value: stated,
        limit: governs.reading,
        unit: "m/s",
        use: governs.reading > 0 ? stated / governs.reading : Number.POSITIVE_INFINITY,
        source: governs.source,
        chosenBy: "",
        words: `highest wind of ${id}: its limit of ${stated.toFixed(1)} is above ${governs.reading.toFixed(1)} m/s${way}, at which ${governs.what} of ${governs.subject} is at its limit`,
        cure: "a wind limit no higher than that, or more in hand at what governs",
      }),
    ];
  });
}
