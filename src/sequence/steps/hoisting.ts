// take load, trial lift, hoist up, hoist down, land, bring over: motions of the hooks.

import { crossing } from "../search.ts";
import type { Happening, Pose, SetContext, Situation } from "../types.ts";
import { carriedLow, leftBelow } from "./carried.ts";
import { type Found, happening, hookForce, type MotionOf, type Probe, slackOf, withCrane } from "./kind.ts";
import { readingOff } from "./reading.ts";

const TOLERANCE = 1e-9;

function raised(s: Situation, id: string, up: number): Situation {
  return withCrane(s, id, (c) => ({ tautAt: c.tautAt + up }));
}

/** Share of a named support in a pose, N. */
function share(ctx: SetContext, pose: Pose, name: string): number {
  const i = ctx.supports.findIndex((x) => x.name === name);
  return i < 0 ? 0 : pose.shares[i];
}

export const takeLoad: MotionOf<"take load"> = {
  find: (ctx, step, start, probe) => {
    const crane = start.cranes.find((c) => c.id === step.crane);
    if (!crane?.hooked)
      return {
        ends: [0, 0],
        happenings: [
          happening("out of order", step.crane, `${step.crane} is not hooked up: it cannot take load`),
        ],
      };
    const happenings: Happening[] = [];
    if (start.lashed.length > 0)
      happenings.push(
        happening(
          "out of order",
          step.crane,
          `lashings ${start.lashed.join(", ")} are on while ${step.crane} takes load`,
        ),
      );
    // A line that carries already is not let out first: its take-up goes on from where it stands.
    const taut = Math.max(0, slackOf(probe(start), step.crane));
    const at = (h: number) => raised(start, step.crane, taut + h);
    const heightCap = step.heightCap_mm / 1000;
    const loadCap = step.loadCap_kN * 1000;
    // Negative until the end is reached.
    const goal = (h: number): number => {
      const pose = probe(at(h));
      if (pose.solution.status !== "solved") return Number.NaN;
      if ("load_kN" in step.until) return hookForce(ctx, pose, step.crane) - step.until.load_kN * 1000;
      if ("frees" in step.until) return 1e-6 - share(ctx, pose, step.until.frees);
      return h - step.until.height_mm / 1000;
    };
    const over = (h: number) => hookForce(ctx, probe(at(h)), step.crane) - loadCap;
    let height = firstCrossing(goal, heightCap);
    if (height === null) {
      height = heightCap;
      happenings.push(
        happening(
          "cap reached",
          step.crane,
          `the height cap of ${step.heightCap_mm} mm comes before the stated end`,
          {
            value: heightCap,
            limit: heightCap,
            unit: "m",
            progress: 1,
          },
        ),
      );
    }
    // A stated load within the cap is reached before the cap is.
    const within = "load_kN" in step.until && step.until.load_kN <= step.loadCap_kN;
    if (!within && over(height) > loadCap * 1e-9) {
      const capped = firstCrossing(over, height) ?? height;
      height = capped;
      happenings.push(
        happening(
          "cap reached",
          step.crane,
          `the load cap of ${step.loadCap_kN} kN comes before the stated end`,
          {
            value: loadCap,
            limit: loadCap,
            unit: "N",
            progress: 1,
          },
        ),
      );
    }
    return { ends: [taut, height], happenings };
  },
  // The line is taken in to just taut at once: no load changes by it.
  at: (_ctx, step, start, ends, progress) =>
    progress === 0 ? start : raised(start, step.crane, ends[0] + progress * ends[1]),
};

/** First h in (0, top] at which g becomes positive, by growing strides and a root search; null if it never does. */
function firstCrossing(g: (h: number) => number, top: number): number | null {
  let a = 0;
  let ga = g(0);
  if (ga >= 0) return 0;
  for (let k = 1; k <= 24; k++) {
    const b = (top * k) / 24;
    const gb = g(b);
    if (!(gb < 0)) return crossing(g, a, b, ga, gb, TOLERANCE * top);
    a = b;
    ga = gb;
  }
  return null;
}

export const trialLift: MotionOf<"trial lift"> = {
  find: (ctx, step, start, probe) => {
    const happenings: Happening[] = [];
    if (!start.cranes.some((c) => c.id === step.crane && c.hooked))
      return { ends: [0], happenings: hoistFound(start, [step.crane]).happenings };
    const cap = step.loadCap_kN === undefined ? Number.POSITIVE_INFINITY : step.loadCap_kN * 1000;
    const over = (h: number) => hookForce(ctx, probe(raised(start, step.crane, h)), step.crane) - cap;
    let height = step.height_mm / 1000;
    if (Number.isFinite(cap) && over(height) > 0) {
      height = firstCrossing(over, height) ?? height;
      const words = `the load cap of ${step.loadCap_kN} kN comes before the height`;
      happenings.push(
        happening("cap reached", step.crane, words, { value: cap, limit: cap, unit: "N", progress: 1 }),
      );
    }
    happenings.push(...readingOff(ctx, step, probe(raised(start, step.crane, height))));
    return { ends: [height], happenings };
  },
  at: (_ctx, step, start, ends, progress) => raised(start, step.crane, progress * ends[0]),
};

/** Heights of hooks that start together, each at its own speed, until the last one is there. */
function hoist(
  step: { hooks: { crane: string; height_mm: number; speed_factor?: number | undefined }[] },
  start: Situation,
  sign: number,
  progress: number,
): Situation {
  const speed = (h: { speed_factor?: number | undefined }) => h.speed_factor ?? 1;
  const longest = Math.max(...step.hooks.map((h) => h.height_mm / speed(h)));
  let s = start;
  for (const h of step.hooks)
    s = raised(s, h.crane, (sign * Math.min(h.height_mm, progress * longest * speed(h))) / 1000);
  return s;
}

function hoistFound(start: Situation, cranes: string[]): Found {
  return {
    ends: [],
    happenings: cranes
      .filter((id) => !start.cranes.some((c) => c.id === id && c.hooked))
      .map((id) => happening("out of order", id, `${id} is not hooked up: it cannot hoist`)),
  };
}

function hoistMarks(step: { hooks: { height_mm: number; speed_factor?: number | undefined }[] }): number[] {
  const times = step.hooks.map((h) => h.height_mm / (h.speed_factor ?? 1));
  const longest = Math.max(...times);
  return times.filter((t) => t < longest).map((t) => t / longest);
}

export const hoistUp: MotionOf<"hoist up"> = {
  find: (_ctx, step, start) =>
    hoistFound(
      start,
      step.hooks.map((h) => h.crane),
    ),
  at: (_ctx, step, start, _ends, progress) => hoist(step, start, 1, progress),
  marks: (step) => hoistMarks(step),
};

export const hoistDown: MotionOf<"hoist down"> = {
  find: (_ctx, step, start) =>
    hoistFound(
      start,
      step.hooks.map((h) => h.crane),
    ),
  at: (_ctx, step, start, _ends, progress) => hoist(step, start, -1, progress),
  marks: (step) => hoistMarks(step),
};

export const bringOver: MotionOf<"bring over"> = {
  find: (ctx, step, start, probe) => {
    const happenings: Happening[] = [];
    const pose = probe(start);
    const carries = ctx.supports.some((s, i) => s.what === "bunk" && pose.forces[i] > 0);
    if (!carries && pose.solution.status === "solved")
      happenings.push(
        ...leftBelow(ctx, start, pose, step.dx_m),
        ...carriedLow(ctx, start, pose, step.dx_m, step.dy_m),
      );
    ctx.supports.forEach((s, i) => {
      if (s.what === "bunk" && pose.forces[i] > 0)
        happenings.push(
          happening("out of order", s.of, `${s.name} still carries ${(pose.forces[i] / 1000).toFixed(1)} kN`),
        );
    });
    return { ends: [], happenings };
  },
  at: (ctx, step, start, _ends, progress) => {
    const dx = step.dx_m * progress;
    const dy = step.dy_m * progress;
    const rearEnd = start.rearEnd + dx;
    const tolerance = (step.tolerance_mm ?? 50) / 1000;
    const soles = ctx.set.soleStations_m;
    const { nearBearing_m, farBearing_m } = ctx.plan.site;
    const off = soles
      ? Math.max(
          Math.abs(rearEnd + soles.near - nearBearing_m),
          Math.abs(rearEnd + soles.far + start.heat.strain * (soles.far - soles.near) - farBearing_m),
        )
      : Number.POSITIVE_INFINITY;
    return {
      ...start,
      rearEnd,
      across: start.across + dy,
      plane: { ...start.plane, chainage: start.plane.chainage + dx },
      trains: start.trains.map((t) => ({
        ...t,
        deckAt: t.deckAt - dx,
        gone: [t.gone[0], t.gone[1] - dy] as [number, number],
      })),
      cranes: start.cranes.map((c) => (c.hooked ? { ...c, tip: [c.tip[0] + dx, c.tip[1] + dy] } : c)),
      overSeats: progress === 1 && (soles ? off <= tolerance : withinSet(ctx, rearEnd)),
    };
  },
};

/** Without stated soles: both bearing lines lie under the set. */
function withinSet(ctx: SetContext, rearEnd: number): boolean {
  const { nearBearing_m, farBearing_m } = ctx.plan.site;
  return nearBearing_m >= rearEnd && farBearing_m <= rearEnd + ctx.length;
}

/** Rounds after the last stage, for a hook that the set came back to while another gave up its load. */
const ROUNDS = 3;

/** The stages of a landing: which hook lowers to which load, in order. */
export function landStages(step: { order: string[]; stages_kN?: number[] | undefined; until_kN: number }) {
  const last = Array.from({ length: ROUNDS }, () => step.until_kN);
  const loads = [...(step.stages_kN ?? []).filter((l) => l > step.until_kN), ...last];
  return loads.flatMap((load) => step.order.map((crane) => ({ crane, load: load * 1000 })));
}

export const land: MotionOf<"land"> = {
  find: (ctx, step, start, probe) => {
    const happenings: Happening[] = [];
    if (!start.overSeats)
      happenings.push(
        happening("out of order", "set", "the set does not stand over its seats: it cannot land"),
      );
    const ends: number[] = [];
    let s = start;
    for (const stage of landStages(step)) {
      const down = lowerTo(ctx, s, stage.crane, stage.load, probe);
      if (down === null) {
        happenings.push(
          happening(
            "end not reached",
            stage.crane,
            `${stage.crane} does not come down to ${stage.load / 1000} kN within 5 m`,
          ),
        );
        break;
      }
      ends.push(down);
      s = raised(s, stage.crane, -down);
    }
    return { ends, happenings };
  },
  at: (_ctx, step, start, ends, progress) => {
    const total = ends.reduce((a, b) => a + b, 0);
    let left = progress * total;
    let s = start;
    landStages(step).forEach((stage, i) => {
      if (i >= ends.length) return;
      const part = progress === 1 ? ends[i] : Math.min(left, ends[i]);
      left -= part;
      if (part > 0) s = raised(s, stage.crane, -part);
    });
    return s;
  },
  marks: (_step, ends) => {
    const total = ends.reduce((a, b) => a + b, 0);
    const out: number[] = [];
    let sum = 0;
    for (const e of ends) {
      sum += e;
      if (sum > 0 && sum < total) out.push(sum / total);
    }
    return out;
  },
};

/** How far a hook must come down until it carries no more than `load`, m; 0 when it does already, null if never. */
function lowerTo(ctx: SetContext, s: Situation, crane: string, load: number, probe: Probe): number | null {
  const g = (h: number) => {
    const pose = probe(raised(s, crane, -h));
    if (pose.solution.status !== "solved") return Number.NaN;
    // Down to nothing means down to slack, which the line's own gap tells; the force alone is flat from there on.
    return load === 0 ? slackOf(pose, crane) : load - hookForce(ctx, pose, crane);
  };
  let a = 0;
  let ga = g(0);
  if (ga >= 0) return 0;
  for (let stride = 0.004; a < 5; stride = Math.min(stride * 1.5, 0.1)) {
    const b = a + stride;
    const gb = g(b);
    if (!(gb < 0)) return crossing(g, a, b, ga, gb, TOLERANCE);
    a = b;
    ga = gb;
  }
  return null;
}
