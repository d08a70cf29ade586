// Value and limit of a finding in the chosen units; the sentence of a finding stays in those of the plan.
import { isUnit, type Kind, print, type Shown, type System, toSI, units } from "../units/index.ts";
import type { Finding } from "./types.ts";

/** Value, limit and use of a finding as they are read; '' for a number that it does not have. */
export interface FindingNumbers {
  value: string;
  limit: string;
  use: string;
}

/** How a quantity of each kind is shown; ratios and angles read the same in every system. */
const shownAs: Readonly<Partial<Record<Kind, Shown>>> = {
  force: "load",
  mass: "mass",
  length: "length",
  pressure: "groundPressure",
  moment: "moment",
  lineLoad: "lineLoad",
  lineMass: "lineMass",
  stiffness: "stiffness",
  speed: "windSpeed",
};

/** Significant digits of a number whose unit has no form of its own. */
const plainDigits = 4;

/** A number of a finding with its unit, in the chosen system where that is one that is converted. */
function numberIn(value: number, unit: string, system: System): string {
  const shown = isUnit(unit) ? shownAs[units[unit].kind] : undefined;
  if (isUnit(unit) && shown !== undefined) {
    const small = unit === "mm" ? "smallLength" : shown;
    return print(toSI(value, unit), small, system);
  }
  const number = String(Number(value.toPrecision(plainDigits)));
  // A ratio, or a count whose subject says of what.
  return unit === "" || unit === "1" ? number : `${number} ${unit}`;
}

/** The numbers of a finding in the chosen units; null for one without a value. */
export function findingNumbers(
  finding: Pick<Finding, "value" | "limit" | "unit" | "use">,
  system: System,
): FindingNumbers | null {
  const { value, limit, unit, use } = finding;
  if (value === null || !Number.isFinite(value)) return null;
  const known = limit !== null && Number.isFinite(limit);
  return {
    value: numberIn(value, unit, system),
    limit: known ? numberIn(limit, unit, system) : "",
    use: use === null || !Number.isFinite(use) ? "" : print(use, "percent", system),
  };
}

/** Whether a sentence holds numbers in units other than those that were chosen: it then says so. */
export function inPlanUnits(words: string, system: System): boolean {
  if (system === "SI") return false;
  return (system === "US" ? /\d (kN|kNm|mm|m|t|kPa|MPa|bar)\b/ : /\d kNm?\b/).test(words);
}
