// The highest wind in which each step of a solved set passes, on demand: step by step, with the findings that follow.

import type { SetContext } from "../../sequence/index.ts";
import { checkList } from "../list.ts";
import type { CheckList } from "../measure.ts";
import { inOrder } from "../measureFindings.ts";
import type { Result, SetResult, SetWindLimits } from "../types.ts";
import { seekerOf } from "./seek.ts";
import type { StepWind } from "./types.ts";

/** A search under way: one step at each `next`, so that whoever runs it can look up between them. */
export interface WindSearch {
  done: () => number;
  of: number;
  /** Looks at the next step; false when there was none left. */
  next: () => boolean;
  result: () => SetWindLimits;
}

/** The part of a solved set that the search needs. */
export type RunSet = Pick<SetResult, "steps" | "progress">;

/** Prepares to search the steps of a solved set. Pure: the same run gives the same answer. */
export function windOver(ctx: SetContext, set: RunSet, checks: CheckList = checkList): WindSearch {
  const seeker = seekerOf(ctx, checks.makers);
  const steps = set.steps.filter((step) => step.count > 0);
  const found: StepWind[] = [];
  return {
    done: () => found.length,
    of: steps.length,
    next: () => {
      const step = steps[found.length];
      if (step === undefined) return false;
      found.push(seeker.over(step, set.progress.subarray(step.first, step.first + step.count)));
      return true;
    },
    result: () => ({
      steps: [...found],
      of: steps.length,
      findings: checks.highestChecks.flatMap((check) => check(ctx, found)),
    }),
  };
}

/** The whole search at once; null when `onProgress` broke it off. */
export function runWind(
  ctx: SetContext,
  set: RunSet,
  onProgress: (done: number, of: number) => boolean = () => true,
  checks: CheckList = checkList,
): SetWindLimits | null {
  const search = windOver(ctx, set, checks);
  while (search.next()) if (!onProgress(search.done(), search.of)) return null;
  return search.result();
}

/** A new Result with the highest winds of one set and the findings that follow. Pure: the given Result stays as it is. */
export function withWind(result: Result, setId: string, wind: SetWindLimits): Result {
  const sets = result.sets.map((set) => (set.setId === setId ? { ...set, wind } : set));
  const old = new Set(result.sets.find((set) => set.setId === setId)?.wind?.findings.map((f) => f.id));
  const findings = inOrder([...result.findings.filter((f) => !old.has(f.id)), ...wind.findings]);
  return { ...result, sets, findings, worst: findings.length > 0 ? findings[0].level : null };
}
