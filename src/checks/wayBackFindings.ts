// Findings of the ways back: steps past the point of no return, and stated ways back that fail.

import type { SetContext } from "../sequence/index.ts";
import type { Finding, SetResult, WayBack } from "./types.ts";

/** A note for every step past the point of no return, a stop for every stated way back that fails. */
export function wayBackFindings(ctx: SetContext, set: SetResult, ways: readonly WayBack[]): Finding[] {
  return ways.flatMap((way): Finding[] => {
    const run = set.steps[way.step];
    const bad = way.from.find((f) => !f.ok);
    if (!run.solved || bad === undefined || way.source === "proposed") return [];
    const stated = way.source === "plan";
    const at = { step: way.step, progress: bad.progress };
    const part = `${(bad.progress * 100).toFixed(0)} %`;
    return [
      {
        id: `way back:${ctx.set.id}:${run.step.id}`,
        level: stated ? "stop" : "note",
        check: stated ? "way back" : "no way back",
        set: ctx.set.id,
        subject: run.step.id,
        from: at,
        to: { step: way.step, progress: 1 },
        worst: at,
        value: null,
        limit: null,
        unit: "",
        use: null,
        source:
          "the way back is run like any step: no stop of its own, and forces within 0.5 % of the weight at its end",
        chosenBy: "default",
        words: stated
          ? `the stated way back fails from ${part} of the step: ${bad.words}`
          : `past the point of no return from ${part} of the step on: ${bad.words}`,
        cure: stated
          ? "state a way back that ends where the step began"
          : "state a way back, or go on only when everything for the rest of the way is ready",
      },
    ];
  });
}
