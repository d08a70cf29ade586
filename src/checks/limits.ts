// The rule set in force: ready-made rules, this plan's own limits and overrides; the lowest governs and is named.

import type { Plan } from "../plan/index.ts";
import { clearanceLimits } from "./clearance/limits.ts";
import { craneLimits } from "./cranes/limits.ts";
import { girderLimits } from "./girders/limits.ts";
import { groundLimits } from "./ground/limits.ts";
import { landingLimits } from "./landing/limits.ts";
import type { AreaLimits, Limit, ReadyRule, StandingLimit } from "./limitForm.ts";
import { type LimitForm, limitTable } from "./limitTable.ts";
import { riggingLimits } from "./rigging/limits.ts";
import { setLimits } from "./setLimits.ts";
import { transporterLimits } from "./transporters/limits.ts";
import { windLimits } from "./wind/limits.ts";

export type { Limit };

const byArea: Readonly<Record<string, AreaLimits>> = {
  cranes: craneLimits,
  rigging: riggingLimits,
  transporters: transporterLimits,
  ground: groundLimits,
  wind: windLimits,
  landing: landingLimits,
  clearances: clearanceLimits,
  girders: girderLimits,
  "the set as a whole": setLimits,
};
const areas = Object.values(byArea);

/** Ready-made rules by id, chosen in a plan's `limits.use`. */
export const readyRules: Readonly<Record<string, ReadyRule>> = Object.assign(
  {},
  ...areas.map((a) => a.ready),
);

/** Limits that stand when nobody chose another one; every use of them says so. */
const defaults: Record<string, StandingLimit> = Object.assign({}, ...areas.map((a) => a.standing));

const namesIn = (area: AreaLimits): string[] => [
  ...Object.keys(area.standing),
  ...(area.open ?? []),
  ...Object.values(area.ready).flatMap((r) => [r.limit, ...(r.also ?? []).map((a) => a.limit)]),
];

/** Names of all limits that a plan may set by id in `limits.rules` or override. */
export const limitNames = [...new Set(areas.flatMap(namesIn))];

/** Ids in a plan's limits that no rule or limit has. */
export function unknownLimits(plan: Plan): string[] {
  return [
    ...plan.limits.use.filter((id) => !(id in readyRules)),
    ...plan.limits.rules.map((r) => r.id).filter((id) => !limitNames.includes(id)),
    ...plan.limits.overrides.map((o) => o.limit).filter((id) => !limitNames.includes(id)),
  ];
}

/** The value that stands when nobody chose another one; null for none. */
function standingOf(name: string): Limit | null {
  const standing = defaults[name];
  return standing === undefined ? null : { ...standing, chosenBy: "default" };
}

/** What a plan chose for a limit, without its override: by ready-made rules first, then by its own. */
function chosenOf({ limits }: Plan, name: string): Limit[] {
  const found: Limit[] = [];
  for (const id of limits.use) {
    const rule = readyRules[id];
    const set = [rule, ...(rule?.also ?? [])].find((one) => one?.limit === name);
    if (rule && set) {
      const means = rule.means === undefined ? {} : { means: rule.means };
      found.push({ value: set.value, source: rule.source, chosenBy: `rule ${id}`, ...means });
    }
  }
  for (const { id, value, source, chosenBy } of limits.rules)
    if (id === name) found.push({ value, source, chosenBy });
  return found;
}

function overrideOf({ limits }: Plan, name: string): Limit | null {
  const override = limits.overrides.find((o) => o.limit === name);
  if (override === undefined) return null;
  return { value: override.value, source: override.source, chosenBy: override.chosenBy };
}

/** What governs among what was chosen and what stands, before any override. */
function strictest(name: string, chosen: readonly Limit[], least: boolean): Limit | null {
  const standing = standingOf(name);
  const all = limitTable[name]?.firm && standing !== null ? [standing, ...chosen] : chosen;
  if (all.length === 0) return standing;
  return all.reduce((a, b) => ((least ? b.value > a.value : b.value < a.value) ? b : a));
}

/**
 * The limit of a name in force: the strictest of the ready-made and the plan's own; an override replaces it. Null when
 * nobody set it and no default stands. `least` says that the higher value is the stricter one, else the lower is.
 */
export function limitOf(plan: Plan, name: string, least = limitTable[name]?.least === true): Limit | null {
  return overrideOf(plan, name) ?? strictest(name, chosenOf(plan, name), least);
}

/** One limit as a plan has it: all that was said of it, and what governs. */
export interface LimitState extends LimitForm {
  readonly name: string;
  /** Which checks it belongs to, in words. */
  readonly area: string;
  readonly standing: Limit | null;
  readonly chosen: readonly Limit[];
  readonly override: Limit | null;
  /** What would govern without the override; null while it is not set. */
  readonly without: Limit | null;
  /** What governs; null while it is not set. */
  readonly governs: Limit | null;
}

/** Whether one value of a limit is looser than another. */
export const isLooser = ({ least }: LimitForm, value: number, than: number): boolean =>
  least ? value < than : value > than;

/** Every limit that the checks know, by area, as a plan has it. */
export function limitStates(plan: Plan): LimitState[] {
  const seen = new Set<string>();
  return Object.entries(byArea).flatMap(([area, limits]) =>
    namesIn(limits).flatMap((name): LimitState[] => {
      if (seen.has(name)) return [];
      seen.add(name);
      const form = limitTable[name];
      const chosen = chosenOf(plan, name);
      const override = overrideOf(plan, name);
      const without = strictest(name, chosen, form.least === true);
      const governs = override ?? without;
      return [{ ...form, name, area, standing: standingOf(name), chosen, override, without, governs }];
    }),
  );
}

/** The rule set in words, for exports. */
export function ruleSetWords(plan: Plan): string {
  const parts = [...plan.limits.use];
  for (const r of plan.limits.rules) parts.push(`${r.id} ${r.value} ${r.unit}`);
  for (const o of plan.limits.overrides) parts.push(`override ${o.limit} ${o.value}`);
  return parts.length > 0 ? parts.join(", ") : "no rule chosen: defaults only";
}
