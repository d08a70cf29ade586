// The rule set in force: ready-made rules, this plan's own limits and overrides; the lowest governs and is named.

import type { Plan } from "../plan/index.ts";
import { clearanceLimits } from "./clearance/limits.ts";
import { craneLimits } from "./cranes/limits.ts";
import { girderLimits } from "./girders/limits.ts";
import { groundLimits } from "./ground/limits.ts";
import { landingLimits } from "./landing/limits.ts";
import type { AreaLimits, Limit, ReadyRule, StandingLimit } from "./limitForm.ts";
import { riggingLimits } from "./rigging/limits.ts";
import { setLimits } from "./setLimits.ts";
import { transporterLimits } from "./transporters/limits.ts";
import { windLimits } from "./wind/limits.ts";

export type { Limit };

const areas: AreaLimits[] = [
  craneLimits,
  riggingLimits,
  transporterLimits,
  groundLimits,
  windLimits,
  landingLimits,
  clearanceLimits,
  girderLimits,
  setLimits,
];

/** Ready-made rules by id, chosen in a plan's `limits.use`. */
export const readyRules: Record<string, ReadyRule> = Object.assign({}, ...areas.map((a) => a.ready));

/** Limits that stand when nobody chose another one; every use of them says so. */
const defaults: Record<string, StandingLimit> = Object.assign({}, ...areas.map((a) => a.standing));

/** Names of all limits that a plan may set by id in `limits.rules` or override. */
export const limitNames = [
  ...new Set([
    ...Object.keys(defaults),
    ...areas.flatMap((a) => a.open ?? []),
    ...Object.values(readyRules).flatMap((r) => [r.limit, ...(r.also ?? []).map((a) => a.limit)]),
  ]),
];

/** Ids in a plan's limits that no rule or limit has. */
export function unknownLimits(plan: Plan): string[] {
  return [
    ...plan.limits.use.filter((id) => !(id in readyRules)),
    ...plan.limits.rules.map((r) => r.id).filter((id) => !limitNames.includes(id)),
    ...plan.limits.overrides.map((o) => o.limit).filter((id) => !limitNames.includes(id)),
  ];
}

/**
 * The limit of a name in force: the lowest of the ready-made and the plan's own; an override replaces it. Null when
 * nobody set it and no default stands. `least` picks the highest instead, for values that must stay above.
 */
export function limitOf(plan: Plan, name: string, least = false): Limit | null {
  const override = plan.limits.overrides.find((o) => o.limit === name);
  if (override) return { value: override.value, source: override.source, chosenBy: override.chosenBy };
  const found: Limit[] = [];
  for (const id of plan.limits.use) {
    const rule = readyRules[id];
    const set = [rule, ...(rule?.also ?? [])].find((one) => one?.limit === name);
    if (rule && set) {
      const means = rule.means === undefined ? {} : { means: rule.means };
      found.push({ value: set.value, source: rule.source, chosenBy: `rule ${id}`, ...means });
    }
  }
  for (const r of plan.limits.rules)
    if (r.id === name) found.push({ value: r.value, source: r.source, chosenBy: r.chosenBy });
  if (found.length > 0)
    return found.reduce((a, b) => ((least ? b.value > a.value : b.value < a.value) ? b : a));
  const standing = defaults[name];
  return standing ? { ...standing, chosenBy: "default" } : null;
}

/** The rule set in words, for exports. */
export function ruleSetWords(plan: Plan): string {
  const parts = [...plan.limits.use];
  for (const r of plan.limits.rules) parts.push(`${r.id} ${r.value} ${r.unit}`);
  for (const o of plan.limits.overrides) parts.push(`override ${o.limit} ${o.value}`);
  return parts.length > 0 ? parts.join(", ") : "no rule chosen: defaults only";
}
