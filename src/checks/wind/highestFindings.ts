// Wind limits of steps against the highest wind that was found for each, and its trace.

import type { SetContext } from "../../sequence/index.ts";
import type { MeasureMaker } from "../measure.ts";
import { solved } from "../trace.ts";
import type { Finding } from "../types.ts";
import { wayWords } from "./air.ts";
import { seekerOf, type WindSeeker } from "./seek.ts";
import { findingOfStep, limitMeasures, recordLimit } from "./stepLimits.ts";
import { goTable } from "./table.ts";
import type { StepWind } from "./types.ts";

const CURE = "a wind limit no higher than that, or more in hand at what governs";

/**
 * The wind limits of steps against the highest wind at a pose, for their traces: where the highest wind of a step is
 * lowest, it is that of the step.
 */
export function highestWinds(makers: readonly MeasureMaker[]): MeasureMaker {
  return (ctx) => {
    let seeker: WindSeeker | null = null;
    return limitMeasures(ctx, { check: "highest wind", cure: CURE }, (step) => ({
      read: (pose, rec) => {
        seeker ??= seekerOf(ctx, makers);
        const { governs } = seeker.at([pose]);
        recordLimit(rec, ctx, step);
        if (governs.what === "table") goTable(ctx, rec);
        else
          solved(
            rec,
            "V_no",
            governs.reading,
            "m/s",
            `least wind, as the site's instrument shows it, that brings ${governs.what} of ${governs.subject} to its limit at this pose`,
          );
        rec?.ends("V_step", "V_no");
        return { value: step.V, limit: governs.reading, source: governs.source, where: governs.what };
      },
    }));
  };
}

/** A stop for every step whose stated limit is above the highest wind found. */
export function highestFindings(ctx: SetContext, steps: readonly StepWind[]): Finding[] {
  return steps.flatMap(({ step, stated, governs }): Finding[] => {
    if (stated === null || stated <= governs.reading * (1 + 1e-3)) return [];
    const { id } = ctx.set.steps[step];
    const way = governs.toward === null ? "" : ` blowing ${wayWords(governs.toward)}`;
    return [
      findingOfStep(ctx.set, step, {
        level: "stop",
        check: "highest wind",
        worst: { step, progress: governs.progress },
        value: stated,
        limit: governs.reading,
        unit: "m/s",
        use: governs.reading > 0 ? stated / governs.reading : Number.POSITIVE_INFINITY,
        source: governs.source,
        chosenBy: "",
        words: `highest wind of ${id}: its limit of ${stated.toFixed(1)} is above ${governs.reading.toFixed(1)} m/s${way}, at which ${governs.what} of ${governs.subject} is at its limit`,
        cure: CURE,
      }),
    ];
  });
}
