// A corner put to work: the prepared set with its masses, and the changes in every State.

import {
  prepareSet,
  type SetModel,
  type State,
  type StateHoist,
  type StateTrain,
} from "../../mechanics/index.ts";
import type { SetContext, StateChange } from "../../sequence/index.ts";
import { pressureAt, windOf } from "../wind/air.ts";
import type { Corner } from "./corner.ts";
import { withMasses } from "./masses.ts";

/** Prepared sets by weight and CG: the set is factorised once for each of them, and for nothing else. */
export type Models = Map<string, SetModel>;

/** A corner put to work on a set. */
export interface AtCorner {
  /** The context in which its steps are solved. */
  ctx: SetContext;
  /** Says that from now on two hooks or more carry (or no longer do), so that one of them hangs high. */
  together: (carry: boolean) => void;
  /** Says what part of the corner's wind blows from now on: 0 is calm. */
  gust: (part: number) => void;
}

/** Puts a corner to work. Throws RangeError when its masses cannot be had. */
export function atCorner(ctx: SetContext, corner: Corner, models: Models): AtCorner {
  const now = { together: false, gust: 1 };
  const { friction } = corner;
  const plan =
    friction === null
      ? ctx.plan
      : {
          ...ctx.plan,
          transporters: ctx.plan.transporters.map((t) => ({ ...t, bunkFriction: friction })),
        };
  const model = modelOf(ctx, corner, models);
  const change = changeOf(ctx, corner, now);
  return {
    ctx: { ...ctx, plan, model, change },
    together: (carry) => {
      now.together = carry;
    },
    gust: (part) => {
      now.gust = part;
    },
  };
}

function modelOf(ctx: SetContext, c: Corner, models: Models): SetModel {
  if (c.weight_pct === 0 && c.cgAlong_m === 0 && c.cgAcross_m === 0) return ctx.model;
  const key = `${c.weight_pct} ${c.cgAlong_m} ${c.cgAcross_m}`;
  let model = models.get(key);
  if (!model) {
    model = prepareSet(withMasses(ctx.model, 1 + c.weight_pct / 100, c.cgAlong_m, c.cgAcross_m));
    models.set(key, model);
  }
  return model;
}

function changeOf(ctx: SetContext, c: Corner, now: { together: boolean; gust: number }): StateChange {
  const cranes = 1 + c.cranes_pct / 100;
  const trains = 1 + c.trains_pct / 100;
  const down = c.settlement.mm / 1000;
  const up = c.mismatch.mm / 1000;
  const settles = (name: string) => c.settlement.under === name;
  const hoist = (h: StateHoist): StateHoist => {
    const high = up !== 0 && now.together && h.name === c.mismatch.crane && h.mode === "takeUp";
    return {
      ...h,
      stiffness: h.stiffness * cranes,
      ...(high ? { takeUp: (h.takeUp ?? 0) + up } : {}),
    };
  };
  return (state, step) => {
    const changed: State = { ...state };
    if (trains !== 1) changed.trains = (state.trains ?? []).map((t) => stiffer(t, trains));
    if (cranes !== 1 || up !== 0) changed.hoists = (state.hoists ?? []).map(hoist);
    if (down !== 0) {
      changed.ground = Object.fromEntries(
        Object.entries(state.ground ?? {}).map(([wheel, level]) => [
          wheel,
          settles(wheel.slice(0, wheel.lastIndexOf(":"))) ? level - down : level,
        ]),
      );
      changed.bearings = (state.bearings ?? []).map((b) =>
        settles(b.name) ? { ...b, seat: b.seat - down } : b,
      );
    }
    const wind = c.wind * now.gust === 0 ? null : windIn(ctx, c.wind * now.gust, step);
    if (wind) changed.wind = wind;
    return changed;
  };
}

function stiffer(t: StateTrain, factor: number): StateTrain {
  return { ...t, cylinderStiffness: t.cylinderStiffness * factor };
}

/** Wind at a part of the pressure that the step's limit brings; a step without a wind limit has none. */
function windIn(ctx: SetContext, part: number, step: number): State["wind"] | null {
  const limit = ctx.set.steps[step]?.windLimit_m_per_s ?? 0;
  if (limit === 0) return null;
  return windOf(ctx, pressureAt(ctx.plan, limit) * Math.abs(part), part > 0 ? "+y" : "-y");
}
