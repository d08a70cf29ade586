// Before a hook comes off a landed set: what must be in and counted, bolts in the splices, webs plumb.

import { rowAt, rowDisplacement } from "../../mechanics/index.ts";
import {
  bearingsOf,
  byId,
  hookName,
  type Plan,
  type PlanSet,
  type Step,
  type StepOf,
} from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { findingAt, notSet } from "../finding.ts";
import { leanHeldBy, leanWords } from "../lean.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, NUMBER, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { landed } from "./loads.ts";

const KINDS = ["blocks", "braces", "bolts"] as const;
const source =
  "the plan's own steps; that blocks, bracing and bolts are in before a crane lets go: NCHRP Synthesis 345";
const cure =
  "name it in the unhook step's release, count it in a brace or hold before, and keep the hook on until it is met";

/**
 * How many of a counted part are in by the steps before one: the last count of that name, with its place within the
 * set; 0 and '' where none is counted.
 */
export function countedBefore(
  steps: readonly Step[],
  index: number,
  what: string,
): { count: number; path: string } {
  let last = { count: 0, path: "" };
  for (const [i, step] of steps.slice(0, index).entries()) {
    const [items, list] =
      step.do === "brace"
        ? [step.items, "items"]
        : [step.do === "hold" ? (step.counted ?? []) : [], "counted"];
    for (const [j, item] of items.entries())
      if (item.what === what) last = { count: item.count, path: `steps[${i}].${list}[${j}].count` };
  }
  return last;
}

/** Unhooks of a run that begin with the set on its bearings, with the pose in which they do. */
function releases(ctx: SetContext, run: SetRun, stored: readonly Pose[]) {
  return run.steps.flatMap((s) => {
    const pose = s.count > 0 ? stored[s.first] : undefined;
    if (s.step.do !== "unhook" || pose === undefined || !landed(ctx, pose)) return [];
    return [{ index: s.index, step: s.step, pose }];
  });
}

/** Conditions of release that are not met or not named. */
export function releaseFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return releases(ctx, run, stored).flatMap(({ index, step, pose }) => {
    const hook = hookName(byId(ctx.plan.cranes, step.crane));
    const at = { step: index, progress: 0 };
    const say = (level: Finding["level"], subject: string, words: string, numbers: Partial<Finding> = {}) =>
      findingAt(ctx.set.id, at, {
        level,
        check: "release condition",
        subject: `${hook}: ${subject}`,
        source,
        words,
        cure,
        ...numbers,
      });
    const lean = leanWords(ctx, leanHeldBy(pose));
    return [
      ...unnamed(ctx.set, step).map((kinds) =>
        say(
          "caution",
          kinds,
          `no ${kinds} are named that must be in before ${hook} comes off; lean: ${lean}`,
        ),
      ),
      ...(step.release ?? []).flatMap(({ what, least }) => {
        const { count } = countedBefore(ctx.set.steps, index, what);
        if (count >= least) return [];
        const words = `${count} of ${what} are counted in before ${hook} comes off, at least ${least} must be; lean: ${lean}`;
        return [say("stop", what, words, { value: count, limit: least, unit: "1" })];
      }),
      ...blocksShort(ctx.plan, ctx.set, step).map((words) => say("caution", "blocks", words)),
      ...(step.windLimit_m_per_s === undefined
        ? [say("note", "wind limit", `no wind limit is stated while ${hook} comes off`)]
        : []),
    ];
  });
}

/** Whether a pose is the beginning of a step in which a hook comes off the landed set. */
const letsGo = (ctx: SetContext, pose: Pose): boolean =>
  ctx.set.steps[pose.step]?.do === "unhook" && pose.progress === 0 && landed(ctx, pose);

const NOT_LETTING_GO: Reading = {
  ...NOT_HERE,
  why: "no hook comes off the landed set here: it is read at the beginning of the step that does it",
};

/** Counts that a release asks for against what is counted in before, with their trace, where the hook comes off. */
export function releaseMeasures(ctx: SetContext): Measure[] {
  const { plan, set } = ctx;
  const asked = new Map<string, { crane: string; what: string }>();
  for (const step of set.steps)
    if (step.do === "unhook")
      for (const { what } of step.release ?? [])
        asked.set(`${step.crane}:${what}`, { crane: step.crane, what });
  const at = `sets[${plan.sets.indexOf(set)}]`;
  return [...asked.values()].map(({ crane, what }) =>
    measure(
      {
        check: "release condition",
        subject: `${hookName(byId(plan.cranes, crane))}: ${what}`,
        kind: "",
        sense: "least",
        unit: "1",
        factor: 1,
        digits: 0,
        watched: false,
        cure,
        ...traced(ctx, (pose, rec): Reading => {
          const step = set.steps[pose.step];
          if (!letsGo(ctx, pose) || step.do !== "unhook" || step.crane !== crane) return NOT_LETTING_GO;
          const i = (step.release ?? []).findIndex((r) => r.what === what);
          const least = step.release?.[i]?.least;
          if (least === undefined) return { ...NOT_HERE, why: `this step does not ask for ${what}` };
          const { count, path } = countedBefore(set.steps, pose.step, what);
          if (path === "") constant(rec, "n", 0, "1", `${what} counted in`, "no step before counts any");
          else field(rec, "n", count, `${what} counted in`, `${at}.${path}`, count, NUMBER);
          const wanted = `${at}.steps[${pose.step}].release[${i}].least`;
          field(rec, "n_a", least, "wanted before the hook comes off", wanted, least, NUMBER);
          rec?.ends("n", "n_a");
          return { value: count, limit: least };
        }),
      },
      { source, chosenBy: "plan" },
    ),
  );
}

/** Kinds of conditions that a step does not name, in one phrase; none when it names all. Bolts are asked of splices. */
function unnamed(set: PlanSet, step: StepOf<"unhook">): string[] {
  const asked = KINDS.filter((kind) => kind !== "bolts" || set.splices.length > 0);
  const kinds = asked.filter((kind) => !(step.release ?? []).some((r) => r.kind === kind));
  return kinds.length === 0 ? [] : [kinds.join(", ")];
}

/** Blocks are wanted at every bearing. */
function blocksShort(plan: Plan, set: PlanSet, step: StepOf<"unhook">): string[] {
  const named = (step.release ?? []).filter((r) => r.kind === "blocks");
  const least = named.reduce((sum, r) => sum + r.least, 0);
  const bearings = bearingsOf(plan, set).length;
  return named.length === 0 || least >= bearings
    ? []
    : [`blocks are asked for at ${least} places, but the set lies on ${bearings} bearings`];
}

const fillMore = "fill more holes with bolts and pins while the hooks still hold the set";
const spliceName = (s: PlanSet["splices"][number]) => `${s.girder} at ${s.at_m} m`;

/** Holes filled in every splice, with their trace, where a hook comes off the landed set. */
export function boltMeasures(ctx: SetContext): Measure[] {
  const { plan, set } = ctx;
  const limit = limitOf(plan, "bolted fraction", true);
  if (limit === null) return [];
  return set.splices.flatMap((s, i) => {
    const filled = s.boltedFraction;
    if (filled === undefined) return [];
    const path = `sets[${plan.sets.indexOf(set)}].splices[${i}].boltedFraction`;
    return measure(
      {
        check: "bolted fraction",
        subject: spliceName(s),
        kind: "",
        level: "caution",
        sense: "least",
        unit: "1",
        factor: 1,
        digits: 2,
        watched: false,
        cure: fillMore,
        ...traced(ctx, (pose, rec): Reading => {
          if (!letsGo(ctx, pose)) return NOT_LETTING_GO;
          field(rec, "f", filled, "part of the holes that is filled", path, filled, NUMBER);
          constant(rec, "f_a", limit.value, "1", "least part", `${limit.source} (${limit.chosenBy})`);
          rec?.ends("f", "f_a");
          return { value: filled, limit: limit.value };
        }),
      },
      limit,
    );
  });
}

/** Splices with fewer holes filled than the limit when the first hook comes off a landed set. */
export function boltFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const limit = limitOf(ctx.plan, "bolted fraction", true);
  const [first] = releases(ctx, run, stored);
  if (limit === null || first === undefined) return [];
  return ctx.set.splices.flatMap((s) => {
    const filled = s.boltedFraction;
    if (filled === undefined || filled >= limit.value * (1 - 1e-9)) return [];
    return [
      findingAt(
        ctx.set.id,
        { step: first.index, progress: 0 },
        {
          level: "caution",
          check: "bolted fraction",
          subject: spliceName(s),
          value: filled,
          unit: "1",
          use: limit.value / filled,
          words: `splice of ${s.girder} at ${s.at_m} m has ${(100 * filled).toFixed(0)} % of its holes filled when the hooks let go`,
          cure: fillMore,
        },
        limit,
      ),
    ];
  });
}

/**
 * How far a girder's web leans from plumb at its soles, as a tangent, > 0 with its top to the right: webs are taken
 * square to the line through the soffits of the unstressed set.
 */
export function webLean(ctx: SetContext, pose: Pose, girder: number): number {
  const soles = ctx.set.soleStations_m;
  const { from, to } = ctx.model.girders[girder];
  const stations = soles === undefined ? [from, to] : [soles.near, soles.far];
  let worst = 0;
  for (const s of stations) {
    const lean =
      rowDisplacement(pose.solution, rowAt(ctx.model, girder, s, "x")) - pose.situation.plane.crossfall;
    if (Math.abs(lean) > Math.abs(worst)) worst = lean;
  }
  return worst;
}

/** Webs out of plumb while the set lies on its bearings; the owner's limit. */
export function webPlumb(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "web plumb");
  if (limit === null) return [];
  return ctx.model.girders.map((g, i) =>
    measure(
      {
        check: "web plumb",
        subject: `girder ${g.name}`,
        kind: "",
        unit: "%",
        factor: 100,
        digits: 2,
        watched: false,
        cure: "shims below the low bearing, or blocks and bracing that bring the web upright, before the hooks let go",
        ...traced(ctx, (pose, rec): Reading => {
          if (!landed(ctx, pose)) return NOT_HERE;
          const lean = solved(
            rec,
            "t",
            webLean(ctx, pose, i),
            "1",
            `lean of the web of ${g.name} at its soles`,
          );
          const value = trace(rec, "off", Math.abs(lean), "abs(t)", "1", "out of plumb");
          constant(rec, "allowed", limit.value / 100, "1", "allowed", `${limit.source} (${limit.chosenBy})`);
          rec?.ends("off", "allowed");
          return {
            value,
            limit: limit.value / 100,
            where: lean > 0 ? "top to the right" : "top to the left",
          };
        }),
      },
      limit,
    ),
  );
}

/** Nobody said how plumb the webs must be. */
export function plumbOpen(plan: Plan): Finding[] {
  const lands = plan.sets.some((set) => set.steps.some((s) => s.do === "land"));
  if (!lands || limitOf(plan, "web plumb") !== null) return [];
  return [
    notSet(
      "",
      "web plumb",
      "web plumb: nobody set how far webs may be out of plumb before the hooks let go; it is not judged",
      "take it from the owner's specification, as a rule 'web plumb' in limits.rules",
    ),
  ];
}
