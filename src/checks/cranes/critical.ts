// Critical lifts: what the rules that a plan chose call so, and what that asks for. A part of the rated load is judged crane
// by crane; more than one crane makes a lift critical whatever it weighs.

import { hookName, type Plan } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { limitOf, readyRules } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { chartsOf, cranesOf, hookReader, hooksCarrying } from "./hookLoad.ts";
import { recordGross, recordRatedLoad } from "./hookTrace.ts";
import { CRITICAL } from "./limits.ts";
import { recordReach } from "./reach.ts";

/** Rules that look at each crane of a shared lift only, and those that call every shared lift critical. */
const SHARED_ONLY: readonly string[] = ["bc-14-1"];
const ANY_SHARED: readonly string[] = ["osha-1926-751", "em-385-1-1-16"];

interface Rule {
  value: number;
  source: string;
  chosenBy: string;
  means: string;
  id: string;
}

/** The rules on critical lifts that a plan chose, its own among them; an override stands for all. */
function chosen(plan: Plan): Rule[] {
  const override = plan.limits.overrides.find((one) => one.limit === CRITICAL);
  const own = { means: "a critical lift by the plan's own rule", id: "" };
  if (override) return [{ ...override, ...own }];
  const ready = plan.limits.use.flatMap((id): Rule[] => {
    const rule = readyRules[id];
    if (rule?.limit !== CRITICAL) return [];
    return [{ ...rule, means: rule.means ?? "", chosenBy: `rule ${id}`, id }];
  });
  const stated = plan.limits.rules.filter((one) => one.id === CRITICAL);
  return [...ready, ...stated.map((one) => ({ ...one, ...own }))];
}

/** The lowest of some rules, with what all of them mean. */
function lowest(rules: readonly Rule[]): Rule | null {
  if (rules.length === 0) return null;
  const least = rules.reduce((a, b) => (b.value < a.value ? b : a));
  const equal = rules.filter((one) => one.value === least.value);
  const all = (of: (rule: Rule) => string) => equal.map(of).join("; ");
  return {
    ...least,
    source: all((one) => one.source),
    chosenBy: all((one) => one.chosenBy),
    means: all((one) => one.means),
  };
}

/** Hook load against the part of the rated load above which a chosen rule calls the lift critical. */
export function criticalUses(ctx: SetContext): Measure[] {
  const rules = chosen(ctx.plan);
  const limit = limitOf(ctx.plan, CRITICAL);
  if (limit === null) return [];
  const alone = lowest(rules.filter((one) => !SHARED_ONLY.includes(one.id)));
  const shared = lowest(rules);
  const carrying = hooksCarrying(ctx);
  return cranesOf(ctx).map((crane) => {
    const hooked = hookReader(ctx, crane);
    const charts = chartsOf(ctx, crane);
    return measure(
      {
        check: "critical lift",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        level: "caution",
        cure: "make the plan that the rule asks for, or use a bigger crane or a smaller radius",
        ...traced(ctx, (pose, rec): Reading => {
          const hook = hooked(pose);
          const rule = carrying(pose) > 1 ? shared : alone;
          if (hook === null || rule === null) return NOT_HERE;
          const chart = charts(pose.step);
          const rated = chart.ratedAt(hook.reach.radius);
          if (rated === null) return NOT_HERE;
          const value = hook.load.gross;
          const allowed = (rule.value / 100) * rated;
          if (rec !== null) {
            recordGross(rec, ctx, crane, pose, hook.load);
            recordReach(rec, ctx, crane, pose, hook.reach);
            recordRatedLoad(rec, rated, `${chart.path}, boom ${crane.boomLength_m} m`, hook.reach.radius);
            constant(rec, "u_c", rule.value, "%", "part above which a lift is critical", rule.source);
            trace(rec, "F_c", allowed, "u_c/100*F_rated", "N", "above this the lift is critical");
            rec.ends("F", "F_c");
          }
          return {
            value,
            limit: allowed,
            source: rule.source,
            chosenBy: rule.chosenBy,
            get where() {
              return `${((100 * value) / rated).toFixed(0)} % of the rated load: ${rule.means}`;
            },
          };
        }),
      },
      limit,
    );
  });
}

const sharing = "have the plan made and directed as the rule asks, and say so in the plan";

/** How many hooks carry the set together, where a chosen rule calls every shared lift critical. */
export function hooksSharing(ctx: SetContext): Measure[] {
  const rule = lowest(anyShared(ctx.plan));
  if (rule === null) return [];
  const carrying = hooksCarrying(ctx);
  return [
    measure(
      {
        check: "critical lift",
        subject: "set",
        kind: "",
        level: "note",
        unit: "hooks",
        factor: 1,
        digits: 0,
        watched: false,
        cure: sharing,
        ...traced(ctx, (pose, rec): Reading => {
          const value = carrying(pose);
          if (value < 2) return { ...NOT_HERE, why: "no two hooks carry the set together here" };
          solved(rec, "n", value, "1", "hooks that carry part of the set");
          constant(
            rec,
            "n_a",
            1,
            "1",
            "more hooks make the lift critical",
            `${rule.source} (${rule.chosenBy})`,
          );
          rec?.ends("n", "n_a");
          return { value, limit: 1 };
        }),
      },
      rule,
    ),
  ];
}

const anyShared = (plan: Plan): Rule[] => chosen(plan).filter((one) => ANY_SHARED.includes(one.id));

/** A note for every unbroken stretch in which more than one hook carries, by each rule that calls this critical. */
export function sharedLifts(ctx: SetContext, _run: SetRun, stored: readonly Pose[]): Finding[] {
  const rules = anyShared(ctx.plan);
  if (rules.length === 0) return [];
  const carrying = hooksCarrying(ctx);
  const out: Finding[] = [];
  for (let i = 0; i < stored.length; i++) {
    if (carrying(stored[i]) < 2) continue;
    let end = i;
    while (end + 1 < stored.length && carrying(stored[end + 1]) > 1) end++;
    const at = (k: number) => ({ step: stored[k].step, progress: stored[k].progress });
    for (const rule of rules)
      out.push(
        finding({
          id: `critical lift:${ctx.set.id}:${rule.id}:${stored[i].step}:${stored[i].progress}`,
          level: "note",
          check: "critical lift",
          set: ctx.set.id,
          subject: "set",
          from: at(i),
          to: at(end),
          worst: at(i),
          value: carrying(stored[i]),
          limit: 1,
          unit: "hooks",
          source: rule.source,
          chosenBy: rule.chosenBy,
          words: `${carrying(stored[i])} cranes carry the set together: ${rule.means}`,
          cure: sharing,
        }),
      );
    i = end;
  }
  return out;
}
