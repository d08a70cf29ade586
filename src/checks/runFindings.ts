// Findings of the run itself: supports that carry or not at the end of a step, and what the motions met on their way.

import { hookName, supportNames } from "../plan/index.ts";
import type { Happening, SetContext, SetRun, StepRun } from "../sequence/index.ts";
import type { RunCheck } from "./measure.ts";
import type { Finding } from "./types.ts";

/** A support counts as carrying from this share of the set's weight on. */
export const CARRIES = 1e-4;

/** At the end of every step: supports that carry and are meant to be free, and the other way round. */
export function endFindings(ctx: SetContext, run: SetRun): Finding[] {
  return run.steps.flatMap((s) => carryFindings(ctx, s, sharesAtEnd(run, s), run.weight));
}

/** What the motions of all steps met on their way. */
export function happeningFindings(ctx: SetContext, run: SetRun): Finding[] {
  return run.steps.flatMap((s) => s.happenings.map((h) => happeningFinding(ctx, s.index, h)));
}

/** Checks over a run that cost next to nothing and say something of every step by itself. */
export const quickRunChecks: ReadonlySet<RunCheck> = new Set([endFindings, happeningFindings]);

/** Shares of the supports at the end of a solved step, N; empty when it was not solved. */
export function sharesAtEnd(run: SetRun, s: StepRun): Float64Array {
  const m = run.supports.length;
  const last = s.first + s.count - 1;
  return s.solved && s.count > 0 ? run.shares.subarray(last * m, (last + 1) * m) : new Float64Array(0);
}

/** At the end of a step, with these shares (N): supports meant to carry that are free, and the other way round. */
export function carryFindings(ctx: SetContext, s: StepRun, shares: Float64Array, weight: number): Finding[] {
  if (shares.length === 0) return [];
  const names = supportNames(ctx.plan, ctx.set);
  const out: Finding[] = [];
  ctx.supports.forEach((support, j) => {
    if (!support.band || !names.includes(support.name)) return;
    const share = shares[j];
    const carries = share > CARRIES * weight;
    const meant = s.step.carries.includes(support.name);
    if (carries === meant) return;
    const check = meant ? "meant to carry" : "meant to be free";
    out.push({
      id: `${check}:${ctx.set.id}:${support.name}:${s.index}`,
      level: "stop",
      check,
      set: ctx.set.id,
      subject: support.name,
      from: { step: s.index, progress: 1 },
      to: { step: s.index, progress: 1 },
      worst: { step: s.index, progress: 1 },
      value: share / 1000,
      limit: (CARRIES * weight) / 1000,
      unit: "kN",
      use: null,
      source: `the step's own list of supports that carry at its end; a support carries from ${CARRIES * 100} % of the set's weight on`,
      chosenBy: "plan",
      words: meant
        ? `${support.name} is meant to carry at the end of this step, but its share is ${(share / 1000).toFixed(1)} kN`
        : `${support.name} is meant to be free at the end of this step, but carries ${(share / 1000).toFixed(1)} kN`,
      cure: meant
        ? "stop the step earlier, pack or jack this support up, or say that it is meant to be free"
        : "go on until it is free, or say that it is meant to carry",
    });
  });
  return out;
}

const cures: Record<string, string> = {
  "cap reached": "raise the cap only with the lift plan's leave, or end the step at a lower load or height",
  "end not reached": "state an end that the motion can reach",
  "out of order": "put the steps in the order in which they can be done",
  "not clear": "end the step sooner, make room, or choose another way out",
  "not provable": "give the missing ground in site.path, or choose another way out",
  "reading off": "stop, weigh again, and find which of ledger and take-off is wrong before going on",
  "count not met": "go on only when all are in and counted",
  rest: "put the set on packing, stops or bearings before it is left",
  "length change": "leave one end free to move along, or wait for an even temperature",
  "missing data": "give the value with its source",
  "no equilibrium": "give the set the support that holds this motion before the step begins",
};

/** Names of what the quick checks over a run find. */
export const quickRunNames: readonly string[] = ["meant to carry", "meant to be free", ...Object.keys(cures)];

/** What a motion met on its way, as a finding. */
export function happeningFinding(ctx: SetContext, step: number, h: Happening): Finding {
  const length = h.unit === "m";
  const factor = h.unit === "N" ? 1e-3 : 1;
  const place = { step, progress: h.progress };
  const crane = ctx.plan.cranes.find((c) => c.id === h.subject);
  return {
    id: `${h.kind}:${ctx.set.id}:${h.subject}:${step}:${h.words}`,
    level: h.level ?? "stop",
    check: h.kind,
    set: ctx.set.id,
    subject: crane ? hookName(crane) : h.subject,
    from: place,
    to: place,
    worst: place,
    value: h.value === null ? null : h.value * factor,
    limit: h.limit === null ? null : h.limit * factor,
    unit: length ? "m" : h.unit === "N" ? "kN" : h.unit,
    use: null,
    source: "the plan's own steps and the statics of this pose",
    chosenBy: "plan",
    words: h.words,
    cure: cures[h.kind],
  };
}
