// A change faster than the crew can follow: load handed over per metre rolled, per 10 mm hoisted or jacked, per minute.

import { byId, type Step } from "../plan/index.ts";
import { type Pose, type SetContext, type SetRun, type StepRun, situationAt } from "../sequence/index.ts";
import { type Limit, limitOf } from "./limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "./measure.ts";
import type { CheckName } from "./names.ts";
import { constant, field, Recorder, solved, trace } from "./trace.ts";
import { traced } from "./traced.ts";
import type { Finding } from "./types.ts";

/** How the travel of a step is counted: along the ground, by the hooks, or by the oil. */
type Travel = "rolled" | "hoisted" | "jacked";

const travels: { [K in Step["do"]]?: Travel } = {
  roll: "rolled",
  "roll together": "rolled",
  "bring over": "rolled",
  "take load": "hoisted",
  "trial lift": "hoisted",
  "hoist up": "hoisted",
  "hoist down": "hoisted",
  land: "hoisted",
  unhook: "hoisted",
  "jack up": "jacked",
  "jack down": "jacked",
  level: "jacked",
};

/** Length over which a change is counted, m, with its limit and words. */
const windows = {
  rolled: { length: 1, limit: "change per metre", words: "within a metre rolled" },
  hoisted: { length: 0.01, limit: "change per 10 mm", words: "within 10 mm hoisted" },
  jacked: { length: 0.01, limit: "change per 10 mm", words: "within 10 mm jacked" },
} as const;

/** What is looked at of a stored pose. */
type Stored = Pick<Pose, "progress" | "situation" | "shares">;

/** Travel between two poses of a step, m: the furthest that any of its parts moves. */
function between(kind: Travel, a: Stored, b: Stored): number {
  const [s, t] = [a.situation, b.situation];
  if (kind === "rolled") return Math.hypot(t.rearEnd - s.rearEnd, t.across - s.across);
  if (kind === "hoisted")
    return Math.max(0, ...s.cranes.map((c, i) => Math.abs(t.cranes[i].tautAt - c.tautAt)));
  return Math.max(0, ...Object.keys(s.groupLift).map((g) => Math.abs(t.groupLift[g] - s.groupLift[g])));
}

/** The greatest change of one support's share over a window of travel. */
export interface Change {
  support: string;
  /** N over the window's length, and where it begins and ends among the poses. */
  change: number;
  from: number;
  to: number;
  /** The support's shares there, N, and the travel between, m. */
  shares: [number, number];
  gone: number;
}

/** The greatest change of a band's share within one window of travel (m), over the poses of one step; null without travel. */
export function greatestChange(
  ctx: SetContext,
  poses: readonly Stored[],
  window: number,
  travel: (a: Stored, b: Stored) => number,
): Change | null {
  let greatest: Change | null = null;
  for (let i = 0; i + 1 < poses.length; i++) {
    let gone = 0;
    let j = i;
    while (j + 1 < poses.length && gone < window) {
      gone += travel(poses[j], poses[j + 1]);
      j++;
    }
    if (!(gone > 0)) continue;
    ctx.supports.forEach((support, k) => {
      if (!support.band) return;
      const shares: Change["shares"] = [poses[i].shares[k], poses[j].shares[k]];
      const change = (Math.abs(shares[1] - shares[0]) * window) / Math.max(gone, window);
      if (!greatest || change > greatest.change)
        greatest = { support: support.name, change, from: i, to: j, shares, gone };
    });
  }
  return greatest;
}

/** Speed of a step, m per minute: by the plan's minutes, or that of its fastest machine with the fields that state them. */
interface Pace {
  speed: number;
  planned: boolean;
  stated: { path: string; value: number }[];
}

/** Speed of a step; null when unknown. */
function speedOf(ctx: SetContext, { step, index }: StepRun, kind: Travel, total: number): Pace | null {
  const { plan, set } = ctx;
  if (step.minutes !== undefined && step.minutes > 0) {
    const path = `sets[${plan.sets.indexOf(set)}].steps[${index}].minutes`;
    return { speed: total / step.minutes, planned: true, stated: [{ path, value: step.minutes }] };
  }
  const stated: Pace["stated"] = [];
  const add = (path: string, value: number | undefined) => {
    if (value !== undefined) stated.push({ path, value });
  };
  if (kind === "rolled" && step.do !== "bring over")
    for (const on of set.onTransporters) {
      const machine = byId(plan.transporters, on.transporter);
      add(`transporters[${plan.transporters.indexOf(machine)}].speed_m_per_min`, machine.speed_m_per_min);
    }
  if (kind === "hoisted") {
    const hoists =
      step.do === "land"
        ? step.order
        : step.do === "hoist up" || step.do === "hoist down"
          ? step.hooks.map((h) => h.crane)
          : "crane" in step
            ? [step.crane]
            : [];
    for (const id of hoists) {
      const crane = byId(plan.cranes, id);
      add(`cranes[${plan.cranes.indexOf(crane)}].hoistSpeed_m_per_min`, crane.hoistSpeed_m_per_min);
    }
  }
  return stated.length > 0
    ? { speed: Math.max(...stated.map((s) => s.value)), planned: false, stated }
    : null;
}

/** One of the two rates of a step against its limit. */
interface Rate {
  rule: Limit;
  check: CheckName;
  change: Change;
  /** Where the change begins and ends. */
  at: { from: number; to: number };
  /** N within the window, or N per minute. */
  value: number;
  allowed: number;
  unit: string;
  level: Finding["level"];
  words: string;
  cure: string;
  window: number;
  /** Travel of the whole step, m, and its speed, for the change per minute. */
  total: number;
  pace: Pace | null;
}

/** The rates of a step, of its greatest change over travel: over a window, and over time where its speed is known. */
function ratesOf(ctx: SetContext, run: SetRun, s: StepRun, poses: readonly Stored[]): Rate[] {
  const kind = travels[s.step.do];
  if (!kind || poses.length < 2) return [];
  const { length: window, limit, words } = windows[kind];
  const travel = (a: Stored, b: Stored) => between(kind, a, b);
  const change = greatestChange(ctx, poses, window, travel);
  if (!change) return [];
  let total = 0;
  for (let i = 1; i < poses.length; i++) total += travel(poses[i - 1], poses[i]);
  const at = { from: poses[change.from].progress, to: poses[change.to].progress };
  const out: Rate[] = [];
  const rule = limitOf(ctx.plan, limit);
  if (rule)
    out.push({
      ...{ rule, change, at, window, total, words },
      check: limit,
      value: change.change,
      allowed: (rule.value / 100) * run.weight,
      unit: "kN",
      level: "caution",
      cure: "a softer line, smaller steps with a reading between them, or another way to hand the load over",
      pace: null,
    });
  const pace = speedOf(ctx, s, kind, total);
  const perMinute = limitOf(ctx.plan, "change per minute");
  if (pace && perMinute) {
    const { planned } = pace;
    const perMetre = change.change / window;
    const allowed = (perMinute.value / 100) * run.weight;
    out.push({
      ...{ rule: perMinute, change, at, window, total, allowed, pace },
      check: "change per minute",
      value: perMetre * pace.speed,
      unit: "kN/min",
      level: planned ? "caution" : "note",
      words: planned ? "at the pace of the step's minutes" : "with the machine at full speed",
      cure: `go no faster than ${((allowed / perMetre) * 1000).toFixed(0)} mm/min here${planned ? ", or give the step more minutes" : ", and state the step's minutes"}`,
    });
  }
  return out;
}

const sourceOf = (rule: Limit) => `${rule.source}; ${rule.value} % of the set's weight`;

function findingOf(ctx: SetContext, s: StepRun, rate: Rate): Finding[] {
  const { rule, check, change, value, allowed, unit } = rate;
  if (!(value > allowed * (1 + 1e-9))) return [];
  const at = (progress: number) => ({ step: s.index, progress });
  return [
    {
      id: `${check}:${ctx.set.id}:${change.support}:${s.index}`,
      level: rate.level,
      check,
      set: ctx.set.id,
      subject: change.support,
      from: at(rate.at.from),
      to: at(rate.at.to),
      worst: at(rate.at.to),
      value: value / 1000,
      limit: allowed / 1000,
      unit,
      use: value / allowed,
      source: sourceOf(rule),
      chosenBy: rule.chosenBy,
      words: `${change.support} changes by ${(value / 1000).toFixed(1)} ${unit} ${rate.words}; ${(allowed / 1000).toFixed(1)} can be followed`,
      cure: rate.cure,
    },
  ];
}

/** What changes too fast, step by step, from neighbouring stored poses. */
export function rateFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return run.steps.flatMap((s) =>
    ratesOf(ctx, run, s, stored.slice(s.first, s.first + s.count)).flatMap((rate) => findingOf(ctx, s, rate)),
  );
}

/** What a run keeps of the stored poses of one step. */
function storedIn(ctx: SetContext, run: SetRun, s: StepRun): Stored[] {
  const m = run.supports.length;
  return Array.from({ length: s.count }, (_, i) => {
    const p = s.first + i;
    const progress = run.progress[p];
    const shares = run.shares.slice(p * m, (p + 1) * m);
    return { progress, situation: situationAt(ctx, s, progress), shares };
  });
}

/** The rates of every support, each where the greatest change of its step ends. */
export function rateMeasures(ctx: SetContext, run: SetRun): Measure[] {
  return (["change per metre", "change per 10 mm", "change per minute"] as const).flatMap((check) => {
    const rule = limitOf(ctx.plan, check);
    if (rule === null) return [];
    return ctx.supports.flatMap((support) => {
      if (!support.band) return [];
      return measure(
        {
          check,
          subject: support.name,
          kind: "",
          level: "caution",
          unit: check === "change per minute" ? "kN/min" : "kN",
          watched: false,
          cure: "smaller or slower steps with a reading between them",
          ...traced(ctx, (pose, rec): Reading => {
            const s = run.steps[pose.step];
            const rate = ratesOf(ctx, run, s, storedIn(ctx, run, s)).find((one) => one.check === check);
            if (rate === undefined)
              return { ...NOT_HERE, why: "this step has no such travel, or no known speed" };
            const { change, at } = rate;
            if (change.support !== support.name || Math.abs(pose.progress - at.to) > 1e-9) {
              const why = `the greatest change of this step is that of ${change.support} and ends at progress ${at.to}`;
              return { ...NOT_HERE, why };
            }
            if (rec !== null) recordRate(rec, run, rate);
            return { value: rate.value, limit: rate.allowed };
          }),
        },
        { source: sourceOf(rule), chosenBy: rule.chosenBy },
      );
    });
  });
}

const MINUTE = { unit: "min", si: "min", change: "" } as const;
const SPEED = { unit: "m/min", si: "m/min", change: "" } as const;

/** Writes a rate down: the two shares, each at its own pose, the travel between them, and the speed. */
function recordRate(rec: Recorder, run: SetRun, rate: Rate): void {
  const { change, rule, window, pace, at } = rate;
  const { support } = change;
  const before = new Recorder({ ...rec.place, progress: at.from });
  solved(before, "S_1", change.shares[0], "N", `part of the weight on ${support} where the change begins`);
  rec.take(before, "S_1");
  solved(rec, "S_2", change.shares[1], "N", `part of the weight on ${support} where the change ends`);
  solved(rec, "d", change.gone, "m", "travel between the two poses");
  constant(
    rec,
    "d_w",
    window,
    "m",
    "travel within which a change is counted",
    `the limit itself: ${rule.source}`,
  );
  trace(rec, "dS", change.change, "abs(S_2 - S_1)*d_w/max(d, d_w)", "N", "change within that travel");
  if (pace !== null) recordPace(rec, rate, pace);
  constant(rec, "p", rule.value, "%", "part of the set's weight", `${rule.source} (${rule.chosenBy})`);
  solved(rec, "W", run.weight, "N", "weight of the set");
  trace(
    rec,
    "dS_a",
    rate.allowed,
    "p/100*W",
    rate.unit === "kN" ? "N" : "N/min",
    "change that can be followed",
  );
  rec.ends(pace === null ? "dS" : "dS_min", "dS_a");
}

function recordPace(rec: Recorder, rate: Rate, { speed, planned, stated }: Pace): void {
  if (planned) {
    solved(rec, "D", rate.total, "m", "travel of the whole step");
    field(rec, "t", stated[0].value, "minutes of the step", stated[0].path, stated[0].value, MINUTE);
    trace(rec, "v", speed, "D/t", "m/min", "speed by the step's minutes");
  } else {
    const names = stated.map(({ path, value }, i) => {
      field(rec, `v_${i + 1}`, value, "full speed of a machine", path, value, SPEED);
      return `v_${i + 1}`;
    });
    trace(rec, "v", speed, `max(${names.join(", ")})`, "m/min", "speed of the fastest machine of the step");
  }
  trace(rec, "dS_min", rate.value, "dS/d_w*v", "N/min", "change per minute");
}
