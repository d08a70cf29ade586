// What a Result gets after its first answer: envelopes of the girders, which poses are backed, and the way back of every
// step, with their findings.

import type { Plan } from "../plan/index.ts";
import { prepareContext, type SetContext } from "../sequence/index.ts";
import { backedOf } from "./backed.ts";
import { envelopesOf } from "./envelope.ts";
import { checkList } from "./list.ts";
import type { CheckList } from "./measure.ts";
import { inOrder } from "./measureFindings.ts";
import type { Finding, Result, SetResult } from "./types.ts";
import { waysBackOf } from "./wayBack.ts";

export interface CompleteOptions {
  /** What to add; all when left out. */
  backed?: boolean;
  waysBack?: boolean;
  envelopes?: boolean;
  /** Which checks are made of it; all when left out. */
  checks?: Pick<CheckList, "backedChecks" | "wayBackChecks">;
  /** Prepared contexts by set id, used instead of new ones. */
  contexts?: ReadonlyMap<string, SetContext>;
  /** Told what is being worked out, and steps done of how many; returning false ends the work. */
  onStep?: (words: string, set: string, done: number, of: number) => boolean;
}

/**
 * A new Result with what is asked for added to every set, and the findings that follow; null when it was broken off.
 * What a set has already is not worked out again. Pure: the given Result stays as it is.
 */
export function completeResult(plan: Plan, result: Result, options: CompleteOptions = {}): Result | null {
  const {
    backed = true,
    waysBack = true,
    envelopes = true,
    checks = checkList,
    onStep = () => true,
  } = options;
  const found: Finding[] = [];
  const sets: SetResult[] = [];
  for (const set of result.sets) {
    const ctx = options.contexts?.get(set.setId) ?? prepareContext(plan, set.setId);
    let whole = set;
    if (envelopes && set.envelopes === undefined) {
      const told = (done: number, of: number) => onStep("moments of the girders", set.setId, done, of);
      const part = envelopesOf(ctx, set, told);
      if (part === null) return null;
      whole = { ...whole, envelopes: part };
    }
    if (backed && set.backed === undefined) {
      const told = (done: number, of: number) => onStep("losing hooks and groups", set.setId, done, of);
      const part = backedOf(ctx, set, told);
      if (part === null) return null;
      whole = { ...whole, backed: part };
      found.push(...checks.backedChecks.flatMap((check) => check(ctx, set, part)));
    }
    if (waysBack && set.waysBack === undefined) {
      const told = (done: number, of: number) => onStep("trying the ways back", set.setId, done, of);
      const part = waysBackOf(ctx, set, told);
      if (part === null) return null;
      whole = { ...whole, waysBack: part };
      found.push(...checks.wayBackChecks.flatMap((check) => check(ctx, set, part)));
    }
    sets.push(whole);
  }
  const findings = inOrder([...result.findings, ...found]);
  return { ...result, sets, findings, worst: findings.length > 0 ? findings[0].level : null };
}
