// A landing as it goes: which bearing touches when, and what hooks and bearings carry stage by stage.

import { bearingName, bearingsOf, byId, hookName } from "../../plan/index.ts";
import {
  landStages,
  type Pose,
  poseAt,
  type SetContext,
  type SetRun,
  type StepRun,
} from "../../sequence/index.ts";
import { findingAt } from "../finding.ts";
import { type LeanHold, leanHeldBy } from "../lean.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";

/** A bearing at one moment: what it carries, N, and how far its sole is above it, m; 0 where it carries. */
export interface BearingNow {
  name: string;
  load: number;
  gap: number;
}

/** The end of a stage of a `land` step. */
export interface LandStage {
  words: string;
  progress: number;
  /** Net loads of the hooks, N. */
  hooks: { name: string; load: number }[];
  bearings: BearingNow[];
  lean: LeanHold;
}

/** When a bearing first carries: step, progress, and what is left on the hooks then, N. Null where it never does. */
export interface Touch {
  bearing: string;
  at: { step: number; progress: number; hooks: number } | null;
}

/** One `land` step of a run. */
export interface Landing {
  step: number;
  stages: LandStage[];
}

/** A stage in which a hook comes down by less than this, m, is none: it was slack already. */
const MOVES = 1e-5;

const hooksOf = (ctx: SetContext) =>
  ctx.supports.flatMap((s, i) => (s.what === "hoist" ? [{ name: s.name, i }] : []));

/** Load of every hook, N, in the order of `hooks`, from a row of the forces of all supports. */
const loadsOf = (hooks: readonly { i: number }[], forces: ArrayLike<number>, row = 0): number[] =>
  hooks.map(({ i }) => Math.max(0, forces[row + i] || 0));

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

/** Bearings at a solved pose. */
export function bearingsNow(ctx: SetContext, pose: Pose): BearingNow[] {
  const { devices, contact } = pose.solution;
  return bearingsOf(ctx.plan, ctx.set).map((b) => {
    const name = bearingName(b);
    const j = devices.findIndex((d) => d.kind === "bearing" && d.name === `bearing ${name}`);
    if (j < 0) return { name, load: Number.NaN, gap: Number.NaN };
    const load = contact.F[j];
    return { name, load, gap: load > 0 ? 0 : contact.v[j] - devices[j].datum };
  });
}

/** Every `land` step of a run that was solved, stage by stage; stages in which no hook moves are left out. */
export function landingsOf(ctx: SetContext, run: SetRun): Landing[] {
  return run.steps.flatMap((s) =>
    s.solved && s.step.do === "land" ? [{ step: s.index, stages: stagesOf(ctx, s) }] : [],
  );
}

function stagesOf(ctx: SetContext, run: StepRun): LandStage[] {
  const { step } = run;
  if (step.do !== "land") return [];
  const hooks = hooksOf(ctx);
  const total = sum(run.ends);
  const at = (words: string, progress: number): LandStage => {
    const pose = poseAt(ctx, run, progress);
    const loads = loadsOf(hooks, pose.forces);
    return {
      words,
      progress,
      hooks: hooks.map(({ name }, k) => ({ name, load: loads[k] })),
      bearings: bearingsNow(ctx, pose),
      lean: leanHeldBy(pose),
    };
  };
  const out = [at("start", 0)];
  let moved = 0;
  landStages(step).forEach((stage, i) => {
    const down = run.ends[i] ?? 0;
    moved += down;
    if (down < MOVES) return;
    const who = hookName(byId(ctx.plan.cranes, stage.crane));
    const progress = total > 0 ? moved / total : 1;
    out.push(
      at(
        `${who} down ${(down * 1000).toFixed(1)} mm, to ${(stage.load / 1000).toFixed(0)} kN`,
        Math.min(1, progress),
      ),
    );
  });
  return out;
}

/** The order in which the bearings of a run first carry; those that never do stand last. */
export function touchesOf(ctx: SetContext, run: SetRun): Touch[] {
  const m = run.supports.length;
  const hooks = hooksOf(ctx);
  const list = bearingsOf(ctx.plan, ctx.set).map((b): Touch & { place: number } => {
    const bearing = bearingName(b);
    const column = ctx.supportIndex.get(`bearing ${bearing}`) ?? -1;
    for (let p = 0; p < run.count; p++)
      if (run.forces[p * m + column] > 0) {
        const left = sum(loadsOf(hooks, run.forces, p * m));
        return { bearing, at: { step: run.step[p], progress: run.progress[p], hooks: left }, place: p };
      }
    return { bearing, at: null, place: Number.POSITIVE_INFINITY };
  });
  return list.sort((a, b) => a.place - b.place).map(({ bearing, at }) => ({ bearing, at }));
}

/** Bearings that touch when little is left on the hooks, or not at all; and a landing that begins at the other end. */
export function landingFindings(ctx: SetContext, run: SetRun): Finding[] {
  const landing = run.steps.find((s) => s.solved && s.step.do === "land");
  if (landing === undefined || landing.step.do !== "land") return [];
  const touches = touchesOf(ctx, run);
  return [...lateContacts(ctx, run, landing, touches), ...otherEnd(ctx, landing.step.order[0], touches)];
}

const cure = "shim this seat, so that it takes its part while the hooks still hold the set";

function lateContacts(ctx: SetContext, run: SetRun, landing: StepRun, touches: Touch[]): Finding[] {
  const limit = limitOf(ctx.plan, "late contact", true);
  if (limit === null) return [];
  return touches.flatMap(({ bearing, at }) => {
    const meant = landing.step.carries.includes(bearing);
    if (at === null)
      return meant
        ? [
            findingAt(
              ctx.set.id,
              { step: landing.index, progress: 1 },
              {
                level: "caution",
                check: "late contact",
                subject: bearing,
                words: `bearing ${bearing} is meant to carry, but stays free`,
                cure,
                source: limit.source,
                chosenBy: limit.chosenBy,
              },
            ),
          ]
        : [];
    const left = (100 * at.hooks) / run.weight;
    if (left >= limit.value) return [];
    return [
      findingAt(
        ctx.set.id,
        { step: at.step, progress: at.progress },
        {
          level: "caution",
          check: "late contact",
          subject: bearing,
          value: left,
          unit: "% of W on hooks",
          use: left > 0 ? limit.value / left : Number.POSITIVE_INFINITY,
          words: `bearing ${bearing} begins to carry only when ${left.toFixed(1)} % of the set's weight is left on the hooks: the others hold nearly all of it until then`,
          cure,
        },
        limit,
      ),
    ];
  });
}

/** What is left on the hooks where each bearing begins to carry, with its trace. */
export function lateMeasures(ctx: SetContext, run: SetRun): Measure[] {
  const limit = limitOf(ctx.plan, "late contact", true);
  if (limit === null) return [];
  const hooks = hooksOf(ctx);
  return touchesOf(ctx, run).map(({ bearing, at }) =>
    measure(
      {
        check: "late contact",
        subject: bearing,
        kind: `${bearing.split(" ")[0]} bearings`,
        level: "caution",
        sense: "least",
        unit: "% of W on hooks",
        factor: 100,
        digits: 1,
        watched: false,
        cure,
        ...traced(ctx, (pose, rec): Reading => {
          if (at === null) return { ...NOT_HERE, why: "this bearing never begins to carry" };
          if (pose.step !== at.step || Math.abs(pose.progress - at.progress) > 1e-9)
            return {
              ...NOT_HERE,
              why: `this bearing begins to carry in step ${at.step + 1} at progress ${at.progress}`,
            };
          const loads = loadsOf(hooks, pose.forces);
          const value = sum(loads) / run.weight;
          if (rec !== null) {
            const names = loads.map((load, k) => {
              solved(rec, `H_${k + 1}`, load, "N", `load on ${hooks[k].name}`);
              return `H_${k + 1}`;
            });
            solved(rec, "W", run.weight, "N", "weight of the set");
            trace(rec, "h", value, `(${names.join(" + ")})/W`, "1", "part of the weight left on the hooks");
            constant(rec, "h_pct", limit.value, "%", "least part", `${limit.source} (${limit.chosenBy})`);
            trace(rec, "h_a", limit.value / 100, "h_pct/100", "1", "least part");
            rec.ends("h", "h_a");
          }
          return { value, limit: limit.value / 100 };
        }),
      },
      limit,
    ),
  );
}

/** The first hook in the stated order lowers the end at which it holds: that end should touch first. */
function otherEnd(ctx: SetContext, crane: string, touches: Touch[]): Finding[] {
  const pick = ctx.set.picks.find((p) => p.crane === crane);
  const soles = ctx.set.soleStations_m;
  const first = touches[0];
  if (pick === undefined || soles === undefined || first === undefined || first.at === null) return [];
  const line = Math.abs(pick.at_m - soles.near) < Math.abs(pick.at_m - soles.far) ? "near" : "far";
  const touched = first.bearing.split(" ")[0];
  if (touched === line) return [];
  return [
    findingAt(
      ctx.set.id,
      { step: first.at.step, progress: first.at.progress },
      {
        level: "caution",
        check: "landing order",
        subject: first.bearing,
        source: "the stated order of the landing: its first crane lowers first",
        words: `bearing ${first.bearing} touches first, but the landing is to begin at the ${line} end, which ${hookName(byId(ctx.plan.cranes, crane))} lowers`,
        cure: `bring the ${line} end lower before the landing, or state the other order`,
      },
    ),
  ];
}
