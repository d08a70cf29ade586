// The spread of every set, asked for one set after another once a plan is solved; none of it for a plan that is gone.
import type { SolverClient } from "./client.ts";
import type { Plan, Result, SetResult, SpreadResult } from "./types.ts";

/** What the screen does with spreads as they come. */
export interface SpreadKeeper {
  /** False when nobody waits for them any more. */
  wanted: () => boolean;
  /** Corners run of how many, of the set that is being worked out. */
  told: (done: number, of: number) => void;
  keep: (spread: SpreadResult) => void;
  /** All are there, or why not. */
  ended: (words: string) => void;
}

/** Works out the spread of every set that has steps, the set with index `first` before the others. */
export async function spreadSets(
  client: SolverClient,
  plan: Plan,
  result: Result,
  first: number,
  keeper: SpreadKeeper,
): Promise<void> {
  const sets: SetResult[] = result.sets.filter((set) => set.count > 0);
  const order = [...sets.filter((set) => set === result.sets[first]), ...sets];
  try {
    for (const set of new Set(order)) {
      const spread = await client.spread(plan, set, keeper.told);
      if (spread === null || !keeper.wanted()) return;
      keeper.keep(spread);
    }
    keeper.ended("");
  } catch (error) {
    if (keeper.wanted()) keeper.ended(error instanceof Error ? error.message : String(error));
  }
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
