// hold, rest, brace: nothing is commanded to move; oil leaks, ground sinks and temperature act as long as it stands.

import { byId } from "../../plan/index.ts";
import { heatOf } from "../heat.ts";
import type { Happening, SetContext, Situation } from "../types.ts";
import { happening, type MotionOf, type Probe } from "./kind.ts";

type Standing = Parameters<MotionOf<"hold">["find"]>[1] | Parameters<MotionOf<"rest">["find"]>[1];

/** Hours, strain and curvature at the end of the step; nothing when nothing acts. */
function acting(
  ctx: SetContext,
  step: Standing,
  start: Situation,
): { ends: number[]; happenings: Happening[] } {
  const leaking = start.trains.filter((t) => t.under && leakOf(ctx, t.id) > 0).map((t) => t.id);
  const hours = (step.minutes ?? 0) / 60;
  const heat = heatOf(ctx.set, step.temperature_C ?? 0, step.topWarmer_C ?? 0);
  const sinks = Object.values(step.settlement_mm ?? {}).some((mm) => mm > 0);
  const happenings: Happening[] = [];
  if (leaking.length > 0 && step.minutes === undefined)
    happenings.push(
      happening("missing data", leaking[0], "its oil leaks, but the step does not say how long it stands", {
        level: "caution",
      }),
    );
  if (heat.strain !== 0) happenings.push(lengthChange(ctx, step, heat.strain));
  const moves = (leaking.length > 0 && hours > 0) || sinks || heat.strain !== 0 || heat.bow !== 0;
  return { ends: moves ? [hours, heat.strain, heat.bow] : [], happenings };
}

/** In plan the set is taken rigid, so that what holds it along is told of its change of length and not loaded by it. */
function lengthChange(ctx: SetContext, step: Standing, strain: number): Happening {
  const soles = ctx.set.soleStations_m;
  const length = soles ? soles.far - soles.near : ctx.length;
  const change = strain * length;
  const words =
    `the set ${change > 0 ? "grows" : "shrinks"} by ${Math.abs(change * 1000).toFixed(1)} mm over ` +
    `${length.toFixed(1)} m while its temperature changes by ${step.temperature_C} C; force from holding it is not solved`;
  return happening("length change", "set", words, {
    level: "note",
    value: Math.abs(change),
    unit: "m",
    progress: 1,
  });
}

function leakOf(ctx: SetContext, transporter: string): number {
  return byId(ctx.plan.transporters, transporter).leak_mm_per_h ?? 0;
}

function stood(
  ctx: SetContext,
  step: Standing,
  start: Situation,
  ends: number[],
  progress: number,
): Situation {
  if (ends.length === 0 || progress === 0) return start;
  const [hours, strain, bow] = ends;
  const groupLift = { ...start.groupLift };
  for (const t of start.trains)
    if (t.under)
      for (const g of byId(ctx.plan.transporters, t.id).groups)
        groupLift[g.name] -= (progress * hours * leakOf(ctx, t.id)) / 1000;
  const sunk = { ...start.sunk };
  for (const [support, mm] of Object.entries(step.settlement_mm ?? {}))
    sunk[support] = (sunk[support] ?? 0) + (progress * mm) / 1000;
  const heat = { strain: start.heat.strain + progress * strain, bow: start.heat.bow + progress * bow };
  return { ...start, groupLift, sunk, heat };
}

/** A support counts as carrying from this share of the set's weight on. */
const CARRIES = 1e-3;

/** What holds a group up when its oil does not. */
const MECHANICAL = /\b(packing|packs?|stops?|stands?|stools?|blocks?|locks?|cribbing)\b/i;

/** A set left alone must not hang on hooks nor stand on oil alone, and has a wind limit. */
function restFindings(ctx: SetContext, step: Standing, start: Situation, probe: Probe): Happening[] {
  if (step.do !== "rest") return [];
  const out: Happening[] = [];
  const pose = probe(start);
  const least = CARRIES * ctx.model.mass * ctx.gravity;
  const held = (step.on ?? []).some((what) => MECHANICAL.test(what));
  const onOil: string[] = [];
  let oil = 0;
  ctx.supports.forEach((support, i) => {
    const share = pose.shares[i];
    if (!support.band || !(share > least)) return;
    const kN = (share / 1000).toFixed(1);
    if (support.what === "hoist")
      out.push(
        happening("rest", support.of, `${support.name} carries ${kN} kN while the set is left at rest`, {
          value: share,
          limit: least,
          unit: "N",
        }),
      );
    else if (support.what === "group" && !held) {
      onOil.push(support.name);
      oil += share;
    }
  });
  if (onOil.length > 0)
    out.push(
      happening(
        "rest",
        "set",
        `the set rests on oil alone: ${onOil.join(", ")} carry ${(oil / 1000).toFixed(1)} kN`,
        {
          value: oil,
          limit: least,
          unit: "N",
        },
      ),
    );
  if (step.windLimit_m_per_s === undefined)
    out.push(
      happening("missing data", "set", "no wind limit is stated for a set left at rest", {
        level: "caution",
      }),
    );
  return out;
}

function find(ctx: SetContext, step: Standing, start: Situation, probe: Probe) {
  const { ends, happenings } = acting(ctx, step, start);
  return { ends, happenings: [...happenings, ...restFindings(ctx, step, start, probe)] };
}

export const hold: MotionOf<"hold"> = { find, at: stood };
export const rest: MotionOf<"rest"> = { find, at: stood };

/** Blocks, pins, frames put in and counted. */
export const brace: MotionOf<"brace"> = {
  find: (_ctx, step) => ({
    ends: [],
    happenings: step.items
      .filter((item) => item.count < item.of)
      .map((item) =>
        happening("count not met", item.what, `${item.count} of ${item.of} ${item.what} are in`, {
          value: item.count,
          limit: item.of,
          unit: item.what,
          progress: 1,
        }),
      ),
  }),
  at: (_ctx, _step, start) => start,
};
