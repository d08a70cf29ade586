// Weights of a set beside one another: the take-off by what it counts, and each line of the ledger against it.
import { type PlanSet, type TakeOff, takeOff } from "../../../../plan/index.ts";

/** The take-off of a draft, or a sentence where the draft does not let it be weighed. */
export function weighed(set: PlanSet): { ok: true; takeOff: TakeOff } | { ok: false; words: string } {
  try {
    const it = takeOff(set);
    if (Number.isFinite(it.mass)) return { ok: true, takeOff: it };
  } catch {
    // What is missing stands at its own cell as an error.
  }
  return {
    ok: false,
    words: "The set cannot be weighed while sizes, stations or girders are missing or wrong.",
  };
}

/** What a sum of the take-off counts. */
export type Counted = "plates" | "stiffeners and welds" | "splices" | "cross-frames" | "attachments";

const words: readonly Counted[] = [
  "plates",
  "stiffeners and welds",
  "splices",
  "cross-frames",
  "attachments",
];

/** Masses (kg) by what they count, those that the set has; they add up to the whole. */
export function sumsOf({ lines }: TakeOff): { counted: Counted; mass: number; lines: number }[] {
  const kindOf = (line: TakeOff["lines"][number]): Counted =>
    line.kind !== "girders"
      ? line.kind
      : line.item.endsWith(": stiffeners and welds")
        ? "stiffeners and welds"
        : "plates";
  return words.flatMap((counted) => {
    const own = lines.filter((line) => kindOf(line) === counted);
    if (own.length === 0) return [];
    return [{ counted, mass: own.reduce((sum, { mass }) => sum + mass, 0), lines: own.length }];
  });
}

/** A line of the ledger judged: masses in kg, the take-off's part from the best value as a fraction of it. */
export interface LedgerRow {
  readonly item: string;
  readonly covers: string;
  readonly low: number;
  readonly best: number;
  readonly high: number;
  readonly source: string;
  readonly date: string;
  /** What the take-off finds for what the line covers; null where it says no such thing. */
  readonly takeOff: number | null;
  readonly apart: number | null;
  readonly is: "inside" | "below" | "above" | "not compared";
}

/** The lines of the ledger in the order of the plan. The check of weights allows from low to high, both included. */
export function ledgerRows(set: PlanSet, it: TakeOff): LedgerRow[] {
  return it.ledger.map(({ item, low, best, high, source, takeOff: own }, i) => ({
    item,
    covers: set.ledger[i].covers ?? "",
    low,
    best,
    high,
    source,
    date: set.ledger[i].date ?? "",
    takeOff: own,
    apart: own === null || best === 0 ? null : own / best - 1,
    is: own === null ? "not compared" : own < low ? "below" : own > high ? "above" : "inside",
  }));
}

/**
 * The ledger's mass of the whole set (kg): its line for the whole, else the sum of the lines that cover every part which
 * the set has. `parts` that no line covers leave it unknown.
 */
export function ledgerSum(
  set: PlanSet,
  it: TakeOff,
): { low: number; best: number; high: number; by: "whole" | "parts" } | { missing: string[] } {
  const whole = set.ledger.find((line) => line.covers === "whole set");
  const kg = ({ low, best, high }: { low: number; best: number; high: number }) => ({
    low: low * 1000,
    best: best * 1000,
    high: high * 1000,
  });
  if (whole !== undefined) return { ...kg(whole.mass_t), by: "whole" };
  const kinds = [...new Set<string>(it.lines.map(({ kind }) => kind))];
  const missing = kinds.filter((kind) => !set.ledger.some(({ covers }) => covers === kind));
  if (missing.length > 0) return { missing };
  const sum = { low: 0, best: 0, high: 0 };
  for (const { covers, mass_t } of set.ledger) {
    if (covers === undefined || !kinds.includes(covers)) continue;
    sum.low += mass_t.low;
    sum.best += mass_t.best;
    sum.high += mass_t.high;
  }
  return { ...kg(sum), by: "parts" };
}
