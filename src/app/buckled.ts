// The stage that was buckled where the cursor stands, if there is one.
import type { AppState } from "./state.ts";
import type { BucklingStage } from "./types.ts";

/** The stage at the very place of the cursor; of two at one place the first. Null when none was looked at there. */
export function stageAt({
  result,
  bucklings,
  cursor,
}: Pick<AppState, "result" | "bucklings" | "cursor">): BucklingStage | null {
  const set = result?.sets[cursor.set];
  const stages = set === undefined ? undefined : bucklings[set.setId]?.stages;
  return stages?.find(({ step, progress }) => step === cursor.step && progress === cursor.progress) ?? null;
}

/** The least factor of all stages; null where none has one. */
export function leastStage(stages: readonly BucklingStage[]): BucklingStage | null {
  let least: BucklingStage | null = null;
  for (const stage of stages)
    if (stage.factor !== null && stage.factor < (least?.factor ?? Number.POSITIVE_INFINITY)) least = stage;
  return least;
}
