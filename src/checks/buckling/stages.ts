// Linear buckling of a run, on demand: at the state in which each step leaves the set, and where its girders are bent most.

import { bucklingOf, diagramsOf, greatestIn, type Solution } from "../../mechanics/index.ts";
import { type Pose, poseAt, type SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { inOrder } from "../measureFindings.ts";
import type { BucklingStage, Finding, Result, SetBuckling, SetResult, StagesAsked } from "../types.ts";
import { bucklingCure } from "./measure.ts";

/** A search under way: one pose at each `next`, so that whoever runs it can look up between them. */
export interface Buckling {
  done: () => number;
  of: number;
  /** Looks at the next pose; false when there was none left. */
  next: () => boolean;
  result: () => SetBuckling;
}

/** The part of a solved set that the search needs. */
export type RunSet = Pick<
  SetResult,
  "setId" | "steps" | "step" | "progress" | "count" | "supports" | "forces"
>;

/** Prepares to buckle the poses of a solved set. Pure: the same run gives the same answer. */
export function bucklingOver(ctx: SetContext, set: RunSet, asked: StagesAsked): Buckling {
  const places = placesOf(ctx, set, asked);
  const stages: BucklingStage[] = [];
  return {
    done: () => stages.length,
    of: places.length,
    next: () => {
      const place = places[stages.length];
      if (place === undefined) return false;
      stages.push(stageAt(ctx, set, place, stages));
      return true;
    },
    result: () => ({ asked, stages: [...stages], of: places.length, findings: findingsOf(ctx, stages) }),
  };
}

/** The whole search at once; null when `onProgress` broke it off. */
export function runBuckling(
  ctx: SetContext,
  set: RunSet,
  asked: StagesAsked,
  onProgress: (done: number, of: number) => boolean = () => true,
): SetBuckling | null {
  const search = bucklingOver(ctx, set, asked);
  while (search.next()) if (!onProgress(search.done(), search.of)) return null;
  return search.result();
}

/** A new Result with the buckling of one set and the findings that follow. Pure: the given Result stays as it is. */
export function withBuckling(result: Result, setId: string, buckling: SetBuckling): Result {
  const sets = result.sets.map((set) => (set.setId === setId ? { ...set, buckling } : set));
  const old = new Set(result.sets.find((set) => set.setId === setId)?.buckling?.findings.map((f) => f.id));
  const findings = inOrder([...result.findings.filter((f) => !old.has(f.id)), ...buckling.findings]);
  return { ...result, sets, findings, worst: findings.length > 0 ? findings[0].level : null };
}

interface Place {
  pose: number;
  why: BucklingStage["why"];
}

function placesOf(ctx: SetContext, set: RunSet, asked: StagesAsked): Place[] {
  const places: Place[] = [];
  for (const run of set.steps) {
    if (run.count === 0) continue;
    const last = run.first + run.count - 1;
    if (run.index === 0) places.push({ pose: run.first, why: "rest" });
    if (asked === "stages") {
      const most = bentMost(ctx, set, run.first, last);
      if (most !== null && most !== run.first && most !== last) places.push({ pose: most, why: "bent most" });
    }
    if (run.solved) places.push({ pose: last, why: "rest" });
  }
  return places;
}

/** Stored pose of a step with the greatest moment of any girder, by size; null when none has numbers. */
function bentMost(ctx: SetContext, set: RunSet, first: number, last: number): number | null {
  let most = 0;
  let found: number | null = null;
  for (let i = first; i <= last; i++) {
    const size = Math.abs(momentOf(poseOf(ctx, set, i).solution) ?? 0);
    // A first pose of the step that is bent as much stands for all of them.
    if (size > most * (1 + 1e-6)) {
      most = size;
      found = i;
    }
  }
  return found;
}

function poseOf(ctx: SetContext, set: RunSet, i: number): Pose {
  return poseAt(ctx, set.steps[set.step[i]], set.progress[i]);
}

/** Greatest moment of any girder of a pose by size, with its sign. */
function momentOf(s: Solution): number | null {
  if (s.status !== "solved") return null;
  const d = diagramsOf(s);
  let moment = 0;
  s.model.girders.forEach((g, i) => {
    const { most, least } = greatestIn(d, i, g.from, g.to);
    for (const M of [most.M, least.M]) if (Math.abs(M) > Math.abs(moment)) moment = M;
  });
  return moment;
}

function stageAt(
  ctx: SetContext,
  set: RunSet,
  { pose: index, why }: Place,
  before: readonly BucklingStage[],
): BucklingStage {
  const { solution } = poseOf(ctx, set, index);
  const place = { step: set.step[index], progress: set.progress[index], why };
  const moment = momentOf(solution);
  if (moment === null)
    return { ...place, factor: null, moment, shape: [], reference: solution.model.axisHeight };
  const last = before.at(-1);
  const known = last === undefined ? -1 : indexOf(set, last);
  // Where no force and no turn has changed since the last stage, nothing has.
  if (last !== undefined && known >= 0 && sameForces(set, known, index)) return { ...last, ...place };
  const found = bucklingOf(solution);
  return {
    ...place,
    factor: found?.factor ?? null,
    moment,
    shape: found?.shape ?? [],
    reference: found?.reference ?? solution.model.axisHeight,
  };
}

function indexOf(set: RunSet, stage: BucklingStage): number {
  const run = set.steps[stage.step];
  for (let i = run.first; i < run.first + run.count; i++) if (set.progress[i] === stage.progress) return i;
  return -1;
}

function sameForces(set: RunSet, a: number, b: number): boolean {
  const n = set.supports.length;
  for (let j = 0; j < n; j++) if (!Object.is(set.forces[a * n + j], set.forces[b * n + j])) return false;
  return true;
}

/** One finding for every unbroken row of stages below the limit. */
function findingsOf(ctx: SetContext, stages: readonly BucklingStage[]): Finding[] {
  const limit = limitOf(ctx.plan, "buckling factor", true);
  if (limit === null) return [];
  const beyond = (stage: BucklingStage | undefined) =>
    stage?.factor != null && stage.factor < limit.value * (1 - 1e-9);
  const out: Finding[] = [];
  for (let i = 0; i < stages.length; i++) {
    if (!beyond(stages[i])) continue;
    let end = i;
    let worst = i;
    const factor = (k: number) => stages[k].factor ?? Number.POSITIVE_INFINITY;
    while (beyond(stages[end + 1])) {
      end++;
      if (factor(end) < factor(worst)) worst = end;
    }
    const when = ({ step, progress }: BucklingStage) => ({ step, progress });
    const value = factor(worst);
    out.push({
      id: `buckling:${ctx.set.id}:${stages[i].step}:${stages[i].progress}`,
      level: "stop",
      check: "buckling",
      set: ctx.set.id,
      subject: "set",
      from: when(stages[i]),
      to: when(stages[end]),
      worst: when(stages[worst]),
      value,
      limit: limit.value,
      unit: "times its loads",
      use: value > 0 ? limit.value / value : Number.POSITIVE_INFINITY,
      source: limit.source,
      chosenBy: limit.chosenBy,
      words: `buckling of the set: at ${value.toFixed(2)} times its loads it buckles, below ${limit.value.toFixed(2)}`,
      cure: bucklingCure,
    });
    i = end;
  }
  return out;
}
