// A finding of the spread read again: its corner is followed to its place once more, and its check made for that corner.

import type { Pose, SetContext } from "../../sequence/index.ts";
import { checkList } from "../list.ts";
import type { Measure } from "../measure.ts";
import type { Finding, SetResult } from "../types.ts";
import { atCorner } from "./apply.ts";
import { feltIn } from "./felt.ts";
import { cornerWords, inSpread } from "./findings.ts";
import { follow } from "./follow.ts";

/** A check made for a corner, with the pose of that corner at the place of a finding. */
export interface AtFinding {
  /** Name of the corner as it is felt in the step. */
  corner: string;
  measure: Measure;
  pose: Pose;
}

/**
 * The check and the pose of a finding of the spread; null where the set has no spread, or the finding none of its corners,
 * or where no check of a pose gave it. The finding names its corner as it is felt in its step; of several that are felt
 * alike and came there by other ways, the one is taken whose number is the finding's.
 */
export function atFinding(ctx: SetContext, set: SetResult, finding: Finding): AtFinding | null {
  const { worst, subject, value } = finding;
  const run = worst === null ? undefined : set.steps[worst.step];
  if (worst === null || run === undefined || set.spread === undefined) return null;
  const check = finding.check.slice(inSpread.length);
  const best = { ...set, steps: set.steps.slice(0, worst.step + 1) };
  let nearest: AtFinding | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const corner of set.spread.corners) {
    const felt = feltIn(ctx.plan, corner, run.step, run.start).name;
    if (!finding.words.endsWith(cornerWords(felt))) continue;
    const way = atCorner(ctx, corner, new Map());
    const measures = checkList.makers
      .flatMap((make) => make(way.ctx))
      .filter((m) => m.check === check && m.subject === subject);
    if (measures.length === 0) return null;
    const noted = { happening: () => {}, lost: () => {} };
    follow({ ...way, corner }, best, new Map(), {
      ...noted,
      pose: (i, pose, wind) => {
        if (wind !== 1 || set.step[i] !== worst.step || set.progress[i] !== worst.progress) return;
        for (const measure of measures) {
          const off = Math.abs(measure.read(pose).value * measure.factor - (value ?? Number.NaN));
          if (!(off < least)) continue;
          least = off;
          nearest = { corner: felt, measure, pose };
        }
      },
    });
  }
  return nearest;
}
