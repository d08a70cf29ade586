// Which part of its rated load a crane may use: every rule in force, by how many hooks carry; the lowest governs.

import type { Plan } from "../../plan/index.ts";
import { type Limit, limitOf } from "../limits.ts";

/** One rule as a part of the rated load, with the formula of that part over the rule's own value `u` (in percent). */
interface Part {
  limit: Limit;
  part: number;
  symbol: string;
  formula: string;
  words: string;
}

/** What governs while some number of hooks carries. */
export interface Governing {
  /** Part of the rated load that may hang on a hook. */
  part: number;
  limit: Limit;
  /** Every rule in force then, for a trace. */
  parts: readonly Part[];
}

const whole: Limit = { value: 100, source: "maker's load chart", chosenBy: "plan" };

/** Name of the limit on capacity above the share for a number of cranes. */
function aboveShare(cranes: number): string {
  if (cranes === 2) return "capacity above share";
  return cranes === 3 ? "capacity above share of three" : "capacity above share of four";
}

function partsOf(plan: Plan, carrying: number): Part[] {
  const out: Part[] = [];
  const add = (
    limit: Limit | null,
    part: (value: number) => number,
    rest: Pick<Part, "symbol" | "formula" | "words">,
  ) => {
    if (limit !== null) out.push({ limit, part: part(limit.value), ...rest });
  };
  const percent = (value: number) => value / 100;
  add(limitOf(plan, "chart use") ?? whole, percent, {
    symbol: "u_chart",
    formula: "u_chart/100",
    words: "part of the rated load",
  });
  add(limitOf(plan, "capacity over pick", true), (value) => 100 / value, {
    symbol: "u_pick",
    formula: "100/u_pick",
    words: "capacity over the actual pick",
  });
  if (carrying < 2) return out;
  add(limitOf(plan, "tandem use"), percent, {
    symbol: "u_both",
    formula: "u_both/100",
    words: "part of it while more than one hook carries",
  });
  // A plan that asks for a margin of two cranes alone has that margin for more of them too.
  const shares = [limitOf(plan, aboveShare(carrying), true), limitOf(plan, "capacity above share", true)];
  add(shares.find((one) => one !== null) ?? null, (value) => 1 / (1 + value / 100), {
    symbol: "a_share",
    formula: "1/(1 + a_share/100)",
    words: "above the share of a hook",
  });
  return out;
}

/** Most hooks that are told apart: four or more have one rule. */
const MOST = 4;

/** Prepares what governs, by how many hooks carry part of the set. */
export function hookRules(plan: Plan): (carrying: number) => Governing {
  const made = Array.from({ length: MOST + 1 }, (_, carrying): Governing => {
    const parts = partsOf(plan, carrying);
    const least = parts.reduce((a, b) => (b.part < a.part ? b : a));
    return { part: least.part, limit: least.limit, parts };
  });
  return (carrying) => made[Math.min(carrying, MOST)];
}
