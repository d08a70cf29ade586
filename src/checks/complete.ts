// What a Result gets after its first answer: envelopes of the girders, which poses are backed, and the way back of every
// step, with their findings.

import type { Plan } from "../plan/index.ts";
import { prepareContext, type SetContext } from "../sequence/index.ts";
import { backedInTurn } from "./backed.ts";
import { envelopesInTurn } from "./envelope.ts";
import { checkList } from "./list.ts";
import type { CheckList } from "./measure.ts";
import { inOrder } from "./measureFindings.ts";
import type { Done, InTurn } from "./turns.ts";
import type { Finding, Result, SetResult } from "./types.ts";
import { waysBackInTurn } from "./wayBack.ts";

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

/** What is being worked out, of which set, and how far it is. */
export interface Completed extends Done {
  words: string;
  set: string;
}

/**
 * A new Result with what is asked for added to every set, and the findings that follow; null when it was broken off.
 * What a set has already is not worked out again. Pure: the given Result stays as it is.
 */
export function completeResult(plan: Plan, result: Result, options: CompleteOptions = {}): Result | null {
  const { onStep = () => true } = options;
  const work = completeInTurn(plan, result, options);
  for (let next = work.next(); ; next = work.next()) {
    if (next.done) return next.value;
    const { words, set, done, of } = next.value;
    if (!onStep(words, set, done, of)) return null;
  }
}

/** The same, resting after each piece of the work. */
export function* completeInTurn(
  plan: Plan,
  result: Result,
  options: Omit<CompleteOptions, "onStep"> = {},
): Generator<Completed, Result> {
  const { backed = true, waysBack = true, envelopes = true, checks = checkList } = options;
  const found: Finding[] = [];
  const sets: SetResult[] = [];
  for (const set of result.sets) {
    const ctx = options.contexts?.get(set.setId) ?? prepareContext(plan, set.setId);
    let whole = set;
    if (envelopes && set.envelopes === undefined)
      whole = {
        ...whole,
        envelopes: yield* named("moments of the girders", set.setId, envelopesInTurn(ctx, set)),
      };
    if (backed && set.backed === undefined) {
      const part = yield* named("losing hooks and groups", set.setId, backedInTurn(ctx, set));
      whole = { ...whole, backed: part };
      found.push(...checks.backedChecks.flatMap((check) => check(ctx, set, part)));
    }
    if (waysBack && set.waysBack === undefined) {
      const part = yield* named("trying the ways back", set.setId, waysBackInTurn(ctx, set));
      whole = { ...whole, waysBack: part };
      found.push(...checks.wayBackChecks.flatMap((check) => check(ctx, set, part)));
    }
    sets.push(whole);
  }
  const findings = inOrder([...result.findings, ...found]);
  return { ...result, sets, findings, worst: findings.length > 0 ? findings[0].level : null };
}

/** Work in turns that says what it is. */
function* named<T>(words: string, set: string, work: InTurn<T>): Generator<Completed, T> {
  for (let next = work.next(); ; next = work.next()) {
    if (next.done) return next.value;
    yield { words, set, ...next.value };
  }
}
