// Old against new: what a change of the plan does to the loads of a step, and which findings come and go with it.
import type { Before } from "./answered.ts";
import type { Finding, Result, SetResult } from "./types.ts";

/** Load of one support of a set before and after; N, NaN where it is not there. */
export interface LoadChange {
  support: string;
  kind: string;
  /** Share of the set's weight at the end of the step. */
  atEnd: { before: number; after: number };
  /** The greatest share at any stored pose of the step. */
  most: { before: number; after: number };
}

/** What differs. */
export interface Change {
  /** True when the step is in both results; else there are no loads. */
  known: boolean;
  loads: LoadChange[];
  gained: Finding[];
  lost: Finding[];
}

/** The step of a result at a place, found again in another one by the names of set and step. */
function sameStep(result: Result, other: SetResult | undefined, step: number): [SetResult, number] | null {
  const id = other?.steps[step]?.step.id;
  const set = result.sets.find(({ setId }) => setId === other?.setId);
  const index = set?.steps.findIndex((one) => one.step.id === id) ?? -1;
  return set === undefined || index < 0 || set.steps[index].count === 0 ? null : [set, index];
}

/** Share of a support at the end of a step and at most within it, N. */
function sharesIn(set: SetResult, index: number, support: string): { atEnd: number; most: number } {
  const j = set.supports.findIndex(({ name, band }) => band && name === support);
  const { first, count, solved } = set.steps[index];
  if (j < 0) return { atEnd: Number.NaN, most: Number.NaN };
  const at = (i: number) => set.shares[i * set.supports.length + j];
  let most = at(first);
  for (let i = first + 1; i < first + count; i++) if (!(at(i) <= most)) most = at(i);
  return { atEnd: solved ? at(first + count - 1) : Number.NaN, most };
}

/** Findings of one check of one subject in one step are the same finding, whatever their numbers. */
function keyOf(result: Result, { check, set, subject, from }: Finding): string {
  const step = result.sets.find(({ setId }) => setId === set)?.steps[from?.step ?? -1]?.step.id;
  return JSON.stringify([check, set, subject, step ?? ""]);
}

/** Findings of a result that another one does not have. */
function beyond(result: Result, other: Result): Finding[] {
  const known = new Set(other.findings.map((finding) => keyOf(other, finding)));
  return result.findings.filter((finding) => !known.has(keyOf(result, finding)));
}

/**
 * Compares a result with the one before, at a step of the new one. Pure. Loads are those of stored poses, the end and the
 * greatest, and never read off between two of them. Findings whose checks are still to be made are in neither list.
 */
export function compareResults(
  before: Pick<Before, "result">,
  after: Result,
  place: { set: number; step: number },
): Change {
  const own = after.sets[place.set];
  const there = sameStep(before.result, own, place.step);
  const here = own?.steps[place.step]?.count ? own : undefined;
  const loads: LoadChange[] = [];
  if (there !== null && here !== undefined) {
    const [set, index] = there;
    const bands = [...here.supports, ...set.supports].filter(({ band }) => band);
    for (const [support, kind] of new Map(bands.map(({ name, kind }) => [name, kind]))) {
      const [old, now] = [sharesIn(set, index, support), sharesIn(here, place.step, support)];
      loads.push({
        support,
        kind,
        atEnd: { before: old.atEnd, after: now.atEnd },
        most: { before: old.most, after: now.most },
      });
    }
  }
  return {
    known: there !== null && here !== undefined,
    loads,
    gained: beyond(after, before.result),
    lost: beyond(before.result, after),
  };
}
