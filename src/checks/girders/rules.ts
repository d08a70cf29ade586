// The rule sets for the strength of girders: which of them a plan chose, and what each allows of a nominal strength.

import type { Plan } from "../../plan/index.ts";
import { type Limit, limitOf } from "../limits.ts";
import { constant, type Recorder, trace } from "../trace.ts";
import { aashtoStrength } from "./aashtoFlexure.ts";
import type { Steel } from "./aiscClass.ts";
import { aiscStrength } from "./aiscFlexure.ts";
import type { FlangeSection } from "./section.ts";
import type { Strength } from "./strength.ts";

/** What is judged: bending; yielding and crippling of a web under a point load; a stiffener as a column. */
export type Part = "bending" | "yielding" | "crippling" | "column";

/** How a rule set goes from a nominal to an allowed strength: over a safety factor, or times a resistance factor. */
interface Factors {
  kind: "Omega" | "phi";
  values: Record<Part, number>;
  source: string;
}

/** A rule set with the load factor in force. */
export interface GirderRules {
  id: string;
  /** Symbol of what it allows, as 'M_asd'. */
  short: "asd" | "lrfd" | "aashto";
  source: string;
  chosenBy: string;
  load: Limit;
  factors: Factors;
  strength: (rec: Recorder | null, s: FlangeSection, m: Steel, L_b: number) => Strength;
}

/** Id of the rule set that stands when a plan chose none. */
export const standingRules = "aisc360-asd";

const sets: Record<
  string,
  Pick<GirderRules, "short" | "strength" | "factors" | "source"> & { limit: string }
> = {
  "aisc360-asd": {
    short: "asd",
    limit: "AISC ASD load factor",
    source: "ANSI/AISC 360-22, allowable strength design",
    strength: aiscStrength,
    factors: {
      kind: "Omega",
      values: { bending: 1.67, yielding: 1.5, crippling: 2, column: 1.67 },
      source: "ANSI/AISC 360-22 F1, J10.2, J10.3, E1",
    },
  },
  "aisc360-lrfd": {
    short: "lrfd",
    limit: "AISC LRFD load factor",
    source: "ANSI/AISC 360-22, load and resistance factor design",
    strength: aiscStrength,
    factors: {
      kind: "phi",
      values: { bending: 0.9, yielding: 1, crippling: 0.75, column: 0.9 },
      source: "ANSI/AISC 360-22 F1, J10.2, J10.3, E1",
    },
  },
  "aashto-construction": {
    short: "aashto",
    limit: "AASHTO load factor",
    source: "AASHTO LRFD 6.10.3.2 with 6.10.8.2 and 6.10.1.9 (from memory)",
    strength: aashtoStrength,
    factors: {
      kind: "phi",
      values: { bending: 1, yielding: 1, crippling: 0.8, column: 0.95 },
      source: "AASHTO LRFD 6.5.4.2 (from memory)",
    },
  },
};

/** Ids of the rule sets for girders, as `limits.use` names them. */
export const girderRuleIds: readonly string[] = Object.keys(sets);

/** The rule sets in force: those that the plan chose, or the standing one, which says that nobody chose it. */
export function girderRules(plan: Plan): GirderRules[] {
  const chosen = plan.limits.use.filter((id) => id in sets);
  const ids = chosen.length > 0 ? [...new Set(chosen)] : [standingRules];
  return ids.map((id) => {
    const { limit, ...rest } = sets[id];
    const load = limitOf(plan, limit, true);
    if (load === null) throw new RangeError(`girderRules: no load factor '${limit}'; mend its default`);
    const chosenBy =
      chosen.length > 0 ? `rule ${id}` : `default: no rule set for girders was chosen, ${id} stands`;
    return { id, chosenBy, load, ...rest, source: sourceWords(rest.source, load) };
  });
}

const sourceWords = (source: string, { value, source: of, chosenBy }: Limit): string =>
  value === 1 ? source : `${source}; load factor ${value}: ${of} (${chosenBy})`;

/** The least of some symbols as a formula. */
export const leastOf = (symbols: readonly string[]): string =>
  symbols.length > 1 ? `min(${symbols.join(", ")})` : symbols[0];

/**
 * The lowest of what all rule sets allow of a force's strength, N, written down as `R_a` or `P_a`; `nominal` gives the
 * nominal strength by one of them, as `R_n` or `P_n`.
 */
export function lowestAllowed(
  rec: Recorder | null,
  rules: readonly GirderRules[],
  part: Exclude<Part, "bending">,
  letter: "R" | "P",
  nominal: (rec: Recorder | null, by: GirderRules["short"]) => number,
): { limit: number; by: GirderRules } {
  let limit = Number.POSITIVE_INFINITY;
  let by = rules[0];
  for (const one of rules) {
    const own = rec === null ? null : rec.part();
    const symbol = own === null ? "" : `${letter}_${one.short}`;
    const value = allowed(own, one, part, nominal(own, one.short), letter === "R" ? "R_n" : "P_n", symbol);
    if (rec !== null && own !== null) rec.take(own, symbol);
    if (value < limit) {
      limit = value;
      by = one;
    }
  }
  if (rec !== null) {
    const formula = leastOf(rules.map((one) => `${letter}_${one.short}`));
    trace(rec, `${letter}_a`, limit, formula, "N", "lowest of what is allowed under the loads as they are");
  }
  return { limit, by };
}

/**
 * What a rule set allows of a nominal strength, under the loads as they are: M_n / (Omega gamma) or phi M_n / gamma.
 * `nominal` is the symbol of the nominal strength, `symbol` that of the result.
 */
export function allowed(
  rec: Recorder | null,
  rules: GirderRules,
  part: Part,
  value: number,
  nominal: "M_n" | "R_n" | "P_n",
  symbol: string,
): number {
  const { kind, values, source } = rules.factors;
  const factor = values[part];
  const gamma = rules.load.value;
  const result = kind === "Omega" ? value / (factor * gamma) : (factor * value) / gamma;
  if (rec === null) return result;
  constant(rec, kind, factor, "1", kind === "Omega" ? "safety factor" : "resistance factor", source);
  constant(rec, "gamma", gamma, "1", "load factor", `${rules.load.source} (${rules.load.chosenBy})`);
  return trace(
    rec,
    symbol,
    result,
    kind === "Omega" ? `${nominal}/(Omega*gamma)` : `phi*${nominal}/gamma`,
    nominal === "M_n" ? "N m" : "N",
    `allowed by ${rules.id}`,
    rules.source,
  );
}
