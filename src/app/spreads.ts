// The spread of every set, asked for one set after another once a plan is solved; none of it for a plan that is gone.
import { bestName, bestRun, cornerName, inSpread } from "../checks/index.ts";
import type { SolverClient } from "./client.ts";
import type { AppState, CornersAsked, HeldSpread } from "./state.ts";
import type { Finding, Plan, SetResult, SpreadResult } from "./types.ts";

/** What the screen does with spreads as they come. */
export interface SpreadKeeper {
  /** False when nobody waits for them any more. */
  wanted: () => boolean;
  /** Corners run of how many, of the set that is being worked out. */
  told: (set: string, done: number, of: number) => void;
  keep: (held: HeldSpread) => void;
  /** All are there or it was told to stop; or why not. */
  ended: (words: string) => void;
}

/** Works out the spread of the given sets that have steps, in turn; told to stop, it leaves those not yet begun. */
export async function spreadSets(
  client: SolverClient,
  plan: Plan,
  sets: readonly SetResult[],
  asked: CornersAsked,
  keeper: SpreadKeeper,
): Promise<void> {
  try {
    for (const set of sets.filter(({ count }) => count > 0)) {
      const told = (done: number, of: number) => keeper.told(set.setId, done, of);
      const held = await client.spread(plan, set, asked, told);
      if (held === null || !keeper.wanted()) return;
      keeper.keep(held);
      if (held.spread.done < held.of) break;
    }
    keeper.ended("");
  } catch (error) {
    if (keeper.wanted()) keeper.ended(error instanceof Error ? error.message : String(error));
  }
}

/** Which of two spreads of one set is shown: the newer one, unless it was broken off before it covered as much. */
export function wider(before: HeldSpread | undefined, now: HeldSpread): HeldSpread {
  if (before === undefined || now.spread.done === now.of) return now;
  return now.spread.done >= before.spread.done ? now : before;
}

/** Index of the stored pose at a place, or -1: low and high are known there and nowhere between. */
export function storedAt(
  set: Pick<SetResult, "steps" | "progress">,
  place: { step: number; progress: number },
): number {
  const step = set.steps[place.step];
  if (step === undefined) return -1;
  for (let i = step.first; i < step.first + step.count; i++) if (set.progress[i] === place.progress) return i;
  return -1;
}

/** Index of the stored pose of the step that is nearest to a place; -1 for a step without any. */
export function nearestStored(
  set: Pick<SetResult, "steps" | "progress">,
  place: { step: number; progress: number },
): number {
  const step = set.steps[place.step];
  if (step === undefined) return -1;
  let best = -1;
  for (let i = step.first; i < step.first + step.count; i++) {
    const away = Math.abs(set.progress[i] - place.progress);
    if (best < 0 || away < Math.abs(set.progress[best] - place.progress)) best = i;
  }
  return best;
}

/** A corner in words, as it is felt in the step of a stored pose. */
export function cornerWords(
  plan: Plan,
  set: Pick<SetResult, "steps" | "step">,
  spread: Pick<SpreadResult, "corners">,
  corner: number,
  pose: number,
): string {
  return corner === bestRun ? bestName : cornerName(plan, set, spread.corners, corner, set.step[pose]);
}

/** Whether only some corner of what is uncertain has this finding, and not the best run. */
export function isOfSpread(finding: Pick<Finding, "check">): boolean {
  return finding.check.startsWith(inSpread);
}

/** Every finding: those of the result, and those that the spreads, the search for buckling and tables bring. */
export function allFindings({
  result,
  spreads,
  bucklings,
  tables,
}: Pick<AppState, "result" | "spreads" | "bucklings" | "tables">): Finding[] {
  return [
    ...(result?.findings ?? []),
    ...Object.values(spreads).flatMap(({ spread }) => spread.findings),
    ...Object.values(bucklings).flatMap((buckling) => buckling.findings),
    ...Object.values(tables).flatMap((held) => held.findings),
  ];
}
