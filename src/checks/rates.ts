// A change faster than the crew can follow: load handed over per metre rolled, per 10 mm hoisted or jacked, per minute.

import { byId, type Step } from "../plan/index.ts";
import type { Pose, SetContext, SetRun, StepRun } from "../sequence/index.ts";
import { limitOf } from "./limits.ts";
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

/** Travel between two poses of a step, m: the furthest that any of its parts moves. */
function between(kind: Travel, a: Pose, b: Pose): number {
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
}

/** The greatest change of a band's share within one window of travel (m), over the poses of one step; null without travel. */
export function greatestChange(
  ctx: SetContext,
  poses: readonly Pose[],
  window: number,
  travel: (a: Pose, b: Pose) => number,
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
      const change = (Math.abs(poses[j].shares[k] - poses[i].shares[k]) * window) / Math.max(gone, window);
      if (!greatest || change > greatest.change) greatest = { support: support.name, change, from: i, to: j };
    });
  }
  return greatest;
}

/** Speed of a step, m per minute, and whether the plan's minutes or the machine at full speed give it; null when unknown. */
function speedOf(
  ctx: SetContext,
  step: Step,
  kind: Travel,
  total: number,
): { speed: number; planned: boolean } | null {
  if (step.minutes !== undefined && step.minutes > 0) return { speed: total / step.minutes, planned: true };
  const { plan, set } = ctx;
  let speeds: (number | undefined)[] = [];
  if (kind === "rolled" && step.do !== "bring over")
    speeds = set.onTransporters.map((t) => byId(plan.transporters, t.transporter).speed_m_per_min);
  if (kind === "hoisted") {
    const hoists =
      step.do === "land"
        ? step.order
        : step.do === "hoist up" || step.do === "hoist down"
          ? step.hooks.map((h) => h.crane)
          : "crane" in step
            ? [step.crane]
            : [];
    speeds = hoists.map((id) => byId(plan.cranes, id).hoistSpeed_m_per_min);
  }
  const known = speeds.filter((s) => s !== undefined);
  return known.length > 0 ? { speed: Math.max(...known), planned: false } : null;
}

/** Changes of a step over travel and over time, each beyond its limit (in percent of the set's weight). */
function ofStep(ctx: SetContext, run: SetRun, s: StepRun, poses: readonly Pose[]): Finding[] {
  const kind = travels[s.step.do];
  if (!kind || poses.length < 2) return [];
  const window = windows[kind];
  const travel = (a: Pose, b: Pose) => between(kind, a, b);
  const found = greatestChange(ctx, poses, window.length, travel);
  if (!found) return [];
  const out: Finding[] = [];
  const say = (
    limit: string,
    value: number,
    unit: string,
    level: Finding["level"],
    words: string,
    cure: string,
  ) => {
    const rule = limitOf(ctx.plan, limit);
    const allowed = rule ? (rule.value / 100) * run.weight : Number.POSITIVE_INFINITY;
    if (!rule || !(value > allowed * (1 + 1e-9))) return;
    const at = (i: number) => ({ step: s.index, progress: poses[i].progress });
    out.push({
      id: `${limit}:${ctx.set.id}:${found.support}:${s.index}`,
      level,
      check: limit,
      set: ctx.set.id,
      subject: found.support,
      from: at(found.from),
      to: at(found.to),
      worst: at(found.to),
      value: value / 1000,
      limit: allowed / 1000,
      unit,
      use: value / allowed,
      source: `${rule.source}; ${rule.value} % of the set's weight`,
      chosenBy: rule.chosenBy,
      words: `${found.support} changes by ${(value / 1000).toFixed(1)} ${unit} ${words}; ${(allowed / 1000).toFixed(1)} can be followed`,
      cure,
    });
  };
  const softer =
    "a softer line, smaller steps with a reading between them, or another way to hand the load over";
  say(window.limit, found.change, "kN", "caution", window.words, softer);
  let total = 0;
  for (let i = 1; i < poses.length; i++) total += travel(poses[i - 1], poses[i]);
  const pace = speedOf(ctx, s.step, kind, total);
  const perMinute = limitOf(ctx.plan, "change per minute");
  if (pace && perMinute) {
    const perMetre = found.change / window.length;
    const slow = ((perMinute.value / 100) * run.weight) / perMetre;
    say(
      "change per minute",
      perMetre * pace.speed,
      "kN/min",
      pace.planned ? "caution" : "note",
      pace.planned ? "at the pace of the step's minutes" : "with the machine at full speed",
      `go no faster than ${(slow * 1000).toFixed(0)} mm/min here${pace.planned ? ", or give the step more minutes" : ", and state the step's minutes"}`,
    );
  }
  return out;
}

/** What changes too fast, step by step, from neighbouring stored poses. */
export function rateFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return run.steps.flatMap((s) => ofStep(ctx, run, s, stored.slice(s.first, s.first + s.count)));
}
