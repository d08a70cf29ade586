// Slings and hook heights proposed so that the hung set is in the plane of its seats before it lands: crossfall by
// slings of unequal length at each pick, grade by the height of one hook against the other; verified by solving anew.

import { eliminate } from "../../numeric/index.ts";
import { byId, hookName, type Plan } from "../../plan/index.ts";
import {
  type Pose,
  runSet,
  type SetContext,
  type SetRun,
  type Situation,
  solvePose,
} from "../../sequence/index.ts";
import { type BearingGap, gapsOf } from "./attitude.ts";

/** One pick with its slings as proposed. */
export interface PickSlings {
  crane: string;
  hook: string;
  /** By girder: how much longer than the rigging's own length, m, as they are and as proposed. */
  now: Record<string, number>;
  longer: Record<string, number>;
}

export interface SlingProposal {
  /** The pose that was looked at: where the step begins in which the set lands. */
  step: number;
  picks: PickSlings[];
  /** The hook to be hoisted against the other one before the landing, and by how much, m; negative is down. */
  hook: string;
  raise: number;
  /** Gaps at the bearings: as planned, and with the proposal in a new run of the whole plan, hook raised there. */
  before: BearingGap[];
  after: BearingGap[];
  /** Load of every line before and after, N, as `far crane line L`. */
  lines: { name: string; before: number; after: number }[];
}

/** Lengths are proposed in whole steps of this, m: what can be made and measured. */
const STEP = 0.001;
const PASSES = 6;

/**
 * The proposal for a set that hangs from two hooks before it lands; why there is none, in words, where it does not.
 * The plan's slings are changed by equal parts on both sides, so that the height of the hooks stays.
 */
export function proposeSlings(ctx: SetContext, run: Pick<SetRun, "steps">): SlingProposal | string {
  const first = hungStart(ctx, run);
  if (first === null)
    return "no step begins with the set over its seats, hung from two hooks alone, and ends with it landed";
  const { situation, step } = first;
  const before = gapsOf(first) ?? [];
  const [a, b] = ctx.set.picks;
  const far = a.at_m > b.at_m ? a : b;
  const unknown = unknownsOf(ctx, before);
  const x = unknown.map(() => 0);
  let pose = first;
  for (let pass = 0; pass < PASSES; pass++) {
    const here = errorsOf(unknown, pose);
    if (here === null) return "with other slings the set would not hang clear of its seats there";
    if (Math.max(...here.map(Math.abs)) < 1e-6) break;
    const J: number[] = [];
    for (let r = 0; r < here.length; r++) for (let c = 0; c < here.length; c++) J.push(0);
    for (let c = 0; c < x.length; c++) {
      const moved = [...x];
      moved[c] += 0.005;
      const there = errorsOf(unknown, posed(ctx, unknown, moved, situation, step, far.crane));
      if (there === null) return "with other slings the set would not hang clear of its seats there";
      there.forEach((e, r) => {
        J[r * x.length + c] = (e - here[r]) / 0.005;
      });
    }
    const d = here.map((e) => -e);
    if (!eliminate(J, d, x.length)) return "its slings do not change how it hangs";
    d.forEach((by, i) => {
      x[i] += by;
    });
    pose = posed(ctx, unknown, x, situation, step, far.crane);
  }
  const whole = x.map((v) => Math.round(v / STEP) * STEP);
  const plan = planWith(ctx, unknown, whole);
  const changed = contextOf(ctx, plan);
  const again = hungStart(changed, runSet(changed, [], { coarse: true }));
  const raise = whole[unknown.length - 1];
  const raised =
    again === null ? null : solvePose(changed, lifted(again.situation, far.crane, raise), again.step, 0);
  const after = raised === null ? null : gapsOf(raised);
  if (raised === null || after === null) return "put into the plan, the slings leave it no landing";
  return {
    step,
    picks: ctx.set.picks.map((pick, i) => ({
      crane: pick.crane,
      hook: hookName(byId(ctx.plan.cranes, pick.crane)),
      now: metres(pick.slingLonger_mm),
      longer: metres(changed.set.picks[i].slingLonger_mm),
    })),
    hook: hookName(byId(ctx.plan.cranes, far.crane)),
    raise,
    before,
    after,
    lines: ctx.supports.flatMap((support, j) =>
      support.what === "line" && !Number.isNaN(first.forces[j])
        ? [{ name: support.name, before: first.forces[j], after: raised.forces[j] }]
        : [],
    ),
  };
}

const metres = (longer_mm: Readonly<Record<string, number>> | undefined): Record<string, number> =>
  Object.fromEntries(Object.entries(longer_mm ?? {}).map(([girder, by]) => [girder, by / 1000]));

/** The start of the first step in which the set comes to touch its bearings; null where none begins hung from two hooks. */
function hungStart(ctx: SetContext, run: Pick<SetRun, "steps">): Pose | null {
  if (ctx.set.picks.length !== 2) return null;
  for (const step of run.steps) {
    if (!step.solved || step.step.do !== "land") continue;
    const pose = solvePose(ctx, step.start, step.index, 0);
    if (gapsOf(pose) !== null) return pose;
  }
  return null;
}

/** What can be changed: slings at a pick with girders on two sides, by the bearing line that is nearer; last, one hook's height. */
interface Unknown {
  /** Index of the pick; -1 for the height of the far hook. */
  pick: number;
  line: "near" | "far" | "both";
}

function unknownsOf(ctx: SetContext, gaps: readonly BearingGap[]): Unknown[] {
  const { picks, girders } = ctx.set;
  const two = (line: "near" | "far") => gaps.filter((g) => g.line === line).length > 1;
  const order = picks.map((_, i) => i).sort((i, j) => picks[i].at_m - picks[j].at_m);
  const out: Unknown[] = [];
  (["near", "far"] as const).forEach((line, k) => {
    const pick = order[k];
    const held = picks[pick].girders?.length ?? girders.length;
    if (two(line) && held > 1) out.push({ pick, line });
  });
  return [...out, { pick: -1, line: "both" }];
}

/** How far out of plane, m: left less right of each line that can be changed, then far less near. Null while it touches. */
function errorsOf(unknown: readonly Unknown[], pose: Pose): number[] | null {
  const gaps = gapsOf(pose);
  if (gaps === null) return null;
  const y = (girder: string) => pose.state.girders.find((g) => g.name === girder)?.y ?? 0;
  const mean = (line: "near" | "far") => {
    const own = gaps.filter((g) => g.line === line);
    return own.reduce((sum, g) => sum + g.gap / own.length, 0);
  };
  return unknown.map(({ line }) => {
    if (line === "both") return mean("far") - mean("near");
    const own = gaps.filter((g) => g.line === line).sort((p, q) => y(q.girder) - y(p.girder));
    return own[0].gap - own[own.length - 1].gap;
  });
}

/** The plan with slings longer on the left by these differences (m), equal parts on both sides. */
function planWith(ctx: SetContext, unknown: readonly Unknown[], x: readonly number[]): Plan {
  const { set } = ctx;
  const picks = set.picks.map((pick, i) => {
    const k = unknown.findIndex((u) => u.pick === i);
    if (k < 0 || x[k] === 0) return pick;
    const held = set.girders.filter((g) => pick.girders?.includes(g.line) ?? true);
    const ys = held.map((g) => g.y_m);
    const [left, right] = [Math.max(...ys), Math.min(...ys)];
    const longer = held.map((g) => {
      const share = (g.y_m - (left + right) / 2) / (left - right);
      return [g.line, (pick.slingLonger_mm?.[g.line] ?? 0) + 1000 * x[k] * share] as const;
    });
    return { ...pick, slingLonger_mm: Object.fromEntries(longer) };
  });
  return { ...ctx.plan, sets: ctx.plan.sets.map((one) => (one === set ? { ...set, picks } : one)) };
}

/** The context of a plan that differs in rigging alone: the set's own model stays. */
function contextOf(ctx: SetContext, plan: Plan): SetContext {
  return { ...ctx, plan, set: plan.sets[ctx.plan.sets.indexOf(ctx.set)] };
}

const lifted = (s: Situation, crane: string, by: number): Situation => ({
  ...s,
  cranes: s.cranes.map((c) => (c.id === crane ? { ...c, tautAt: c.tautAt + by } : c)),
});

/** The pose of a situation with other slings, and the far hook at another height. */
function posed(
  ctx: SetContext,
  unknown: readonly Unknown[],
  x: readonly number[],
  situation: Situation,
  step: number,
  crane: string,
): Pose {
  const changed = contextOf(ctx, planWith(ctx, unknown, x));
  return solvePose(changed, lifted(situation, crane, x[unknown.length - 1]), step, 0);
}
