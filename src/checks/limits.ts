// The rule set in force: ready-made rules, this plan's own limits and overrides; the lowest governs and is named.

import type { Plan } from "../plan/index.ts";

/** A limit with where it comes from. */
export interface Limit {
  value: number;
  source: string;
  chosenBy: string;
}

interface ReadyRule {
  /** Limit that it sets and its value in that limit's unit. */
  limit: string;
  value: number;
  source: string;
}

/** Ready-made rules by id, chosen in a plan's `limits.use`. */
export const readyRules: Record<string, ReadyRule> = {
  "tandem-75": {
    limit: "tandem use",
    value: 75,
    source:
      "75 % of rated capacity while more than one crane carries: owners' common practice, no single source; 29 CFR 1926.751 calls a lift above 75 % or by more than one crane critical (as quoted on published rigging-safety pages)",
  },
  "share-plus-20": {
    limit: "capacity above share",
    value: 20,
    source:
      "Queensland Mobile crane Code of Practice 2006 (PN11180), 14.3.2: at least 20 % above the calculated share for two cranes",
  },
  "aisc360-asd": {
    limit: "AISC ASD load factor",
    value: 1,
    source: "ANSI/AISC 360-22, allowable strength: loads as they are",
  },
  "aisc360-lrfd": {
    limit: "AISC LRFD load factor",
    value: 1.4,
    source: "ANSI/AISC 360-22 with ASCE 7 2.3.1 combination 1, dead load alone: 1.4 (from memory)",
  },
  "aashto-construction": {
    limit: "AASHTO load factor",
    value: 1.4,
    source: "AASHTO LRFD 3.4.2.1: 1.4 on dead load of primary steel during construction (from memory)",
  },
};

/** Limits that stand when nobody chose another one; every use of them says so. */
const defaults: Record<string, { value: number; source: string }> = {
  "chart use": { value: 100, source: "maker's load chart: never above the rated load" },
  "tipping ratio": { value: 1.5, source: "common practice, no source" },
  "stroke use": { value: 95, source: "common practice, no source: 5 % of the stroke kept in hand" },
  "left-right": { value: 25, source: "common practice, no source" },
  "line lean": { value: 3, source: "common practice, no source" },
  "set lean": { value: 2, source: "common practice, no source" },
  "set level": { value: 2, source: "common practice, no source" },
  "fall at loss": {
    value: 150,
    source:
      "common practice, no source: mm that a set may fall when a hook is lost before something catches it",
  },
  "lean stiffness": {
    value: 1.5,
    source:
      "common practice, no source: kNm per radian of lean and kN of the set's weight; a centre of gravity 30 mm off then leans the set by 2 %",
  },
  swing: {
    value: 100,
    source: "common practice, no source: mm that a set may swing when its last support on the ground frees",
  },
  "change per metre": { value: 10, source: "common practice, no source" },
  "change per 10 mm": { value: 10, source: "common practice, no source" },
  "change per minute": { value: 25, source: "common practice, no source" },
  "tilt growth": {
    value: 1.2,
    source:
      "common practice, no source: beyond it the loads from side to side, which are shown for the first tilt, are a fifth short",
  },
  "buckling factor": {
    value: 1 / 0.7,
    source:
      "AASHTO LRFD 6.10.3.4.2 (from memory): erection moments at most 0.70 of those at which the girders buckle; applied here to the factor on all loads",
  },
  "AISC ASD load factor": { value: 1, source: readyRules["aisc360-asd"].source },
  "AISC LRFD load factor": { value: 1.4, source: readyRules["aisc360-lrfd"].source },
  "AASHTO load factor": { value: 1.4, source: readyRules["aashto-construction"].source },
  "stiffener distance": {
    value: 150,
    source:
      "common practice, no source: mm from the middle of a point load within which a full-depth stiffener takes it",
  },
  "girder slenderness": {
    value: 80,
    source:
      "NCHRP Synthesis 345, chapter 7: unsupported length over flange width of 80 to 90 or less preferred",
  },
  "girder slenderness stop": {
    value: 90,
    source:
      "NCHRP Synthesis 345, chapter 7: unsupported length over flange width of 80 to 90 or less preferred",
  },
  "field piece slenderness": {
    value: 85,
    source: "AASHTO LRFD C6.10.2.2: flange at least 1/85 as wide as a field piece is long (from memory)",
  },
  "two-girder set": {
    value: 70,
    source:
      "AASHTO LRFD 6.10.3.4.2: moments of a two-girder set at most 70 % of those at which it buckles as one (from memory)",
  },
  "mass per metre low": {
    value: 1.5,
    source:
      "common practice, no source: two-girder sets of 60 to 75 m weigh 1.5 to 3 t/m, about 2.4 with everything on",
  },
  "mass per metre high": {
    value: 3,
    source:
      "common practice, no source: two-girder sets of 60 to 75 m weigh 1.5 to 3 t/m, about 2.4 with everything on",
  },
};

/** Names of all limits that a plan may set by id in `limits.rules` or override. */
export const limitNames = [
  ...new Set([...Object.keys(defaults), ...Object.values(readyRules).map((r) => r.limit)]),
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
    if (rule && rule.limit === name)
      found.push({ value: rule.value, source: rule.source, chosenBy: `rule ${id}` });
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
