// Edits of rules and limits, with their words for the history; and when a value may stand as a rule, or only as an override.
import { isLooser, type LimitState, limitStates } from "../../../../checks/index.ts";
import { type Plan, withInserted, withRemoved, withValue } from "../../../../plan/index.ts";
import {
  printFull,
  type Shown,
  type System,
  signOf,
  type UnitName,
  unitFor,
} from "../../../../units/index.ts";
import type { DataEdit } from "../changes.ts";

/** In which unit a limit is kept, and as what its numbers are shown; a unit of its own per something is never converted. */
export function quantityOf({
  unit,
  per,
}: Pick<LimitState, "unit" | "per">): { keptIn: UnitName; shown: Shown } | null {
  if (per !== undefined) return null;
  const kinds: Partial<Record<LimitState["unit"], { keptIn: UnitName; shown: Shown }>> = {
    pct: { keptIn: "%", shown: "percent" },
    mm: { keptIn: "mm", shown: "smallLength" },
    m: { keptIn: "m", shown: "length" },
    kN: { keptIn: "kN", shown: "load" },
    "kN/m": { keptIn: "kN/m", shown: "lineLoad" },
    "kN/mm": { keptIn: "kN/mm", shown: "stiffness" },
    kPa: { keptIn: "kPa", shown: "groundPressure" },
    MPa: { keptIn: "MPa", shown: "stress" },
    kNm: { keptIn: "kN m", shown: "moment" },
    t: { keptIn: "t", shown: "mass" },
    deg: { keptIn: "deg", shown: "angle" },
    s: { keptIn: "s", shown: "instant" },
    min: { keptIn: "min", shown: "duration" },
    "m/s": { keptIn: "m/s", shown: "windSpeed" },
  };
  return kinds[unit] ?? null;
}

/** The sign of the unit in which a limit is shown; "" for a plain number. */
export function unitSign(form: Pick<LimitState, "unit" | "per">, system: System): string {
  const quantity = quantityOf(form);
  if (quantity === null) return form.per ?? "";
  return signOf(quantity.shown, system);
}

/** A value of a limit with its unit, as it is read. */
export function valueWords(form: Pick<LimitState, "unit" | "per">, value: number, system: System): string {
  const quantity = quantityOf(form);
  const full =
    quantity === null ? String(value) : printFull(value, quantity.keptIn, unitFor(quantity.shown, system));
  const number = full.length > 7 ? String(Number(Number(full).toPrecision(5))) : full;
  const sign = unitSign(form, system);
  return sign === "" ? number : `${number} ${sign}`;
}

/** The same with the way it limits: "at most 75 %". */
export const limitWords = (
  form: Pick<LimitState, "unit" | "per" | "least">,
  value: number,
  system: System,
): string => `${form.least ? "at least" : "at most"} ${valueWords(form, value, system)}`;

/** Switches a ready-made rule on or off. */
export function ruleSwitched(plan: Plan, id: string): DataEdit {
  const at = plan.limits.use.indexOf(id);
  return at < 0
    ? {
        label: `Use rule ${id}`,
        change: (draft) => withInserted(draft, ["limits", "use"], draft.limits.use.length, id),
      }
    : { label: `No longer use rule ${id}`, change: (draft) => withRemoved(draft, ["limits", "use"], at) };
}

/** What else limits a name: without the plan's own limit and without its override. */
export function restOf(plan: Plan, name: string): LimitState {
  const { limits } = plan;
  const rest: Plan = {
    ...plan,
    limits: {
      use: limits.use,
      rules: limits.rules.filter(({ id }) => id !== name),
      overrides: limits.overrides.filter(({ limit }) => limit !== name),
    },
  };
  const state = limitStates(rest).find((one) => one.name === name);
  if (state === undefined) throw new Error(`No check knows a limit '${name}': name one of limitNames.`);
  return state;
}

/** Whether a value can only stand as an override: what else limits is stricter. */
export function needsOverride(plan: Plan, name: string, value: number): boolean {
  const rest = restOf(plan, name);
  return rest.governs !== null && isLooser(rest, value, rest.governs.value);
}

/** A limit of the plan's own, with where its value is from and who chose it. */
export interface OwnLimit {
  readonly value: number;
  readonly source: string;
  readonly chosenBy: string;
}

/** Why a limit cannot be set as typed; "" when it can. */
export function problemOf(own: { value: number | null; source: string; chosenBy: string }): string {
  if (own.value === null) return "Type the value first.";
  if (own.source.trim() === "") return 'Say where the value is from; "from memory" is an honest answer.';
  if (own.chosenBy.trim() === "") return "Say who chose the value.";
  return "";
}

/** Sets a limit: as a rule of the plan where it is as strict as what else limits, else as an override. */
export function limitSet(plan: Plan, name: string, own: OwnLimit, system: System): DataEdit {
  const rest = restOf(plan, name);
  const words = valueWords(rest, own.value, system);
  if (needsOverride(plan, name, own.value)) {
    const at = plan.limits.overrides.findIndex(({ limit }) => limit === name);
    const entry = { limit: name, value: own.value, source: own.source.trim(), chosenBy: own.chosenBy.trim() };
    return {
      label: `${name}: override ${words}, looser than ${rest.governs?.chosenBy ?? "nothing"}`,
      change: (draft) => put(draft, "overrides", at, entry),
    };
  }
  const at = plan.limits.rules.findIndex(({ id }) => id === name);
  const entry = {
    id: name,
    value: own.value,
    unit: rest.unit,
    source: own.source.trim(),
    chosenBy: own.chosenBy.trim(),
  };
  return { label: `${name}: own limit ${words}`, change: (draft) => put(draft, "rules", at, entry) };
}

function put(draft: Plan, list: "rules" | "overrides", at: number, entry: object): Plan {
  return at < 0
    ? withInserted(draft, ["limits", list], draft.limits[list].length, entry)
    : withValue(draft, ["limits", list, at], entry);
}

/** Takes the plan's own limit or its override away; null where there is none. */
export function limitTaken(plan: Plan, name: string, list: "rules" | "overrides"): DataEdit | null {
  const at =
    list === "rules"
      ? plan.limits.rules.findIndex(({ id }) => id === name)
      : plan.limits.overrides.findIndex(({ limit }) => limit === name);
  if (at < 0) return null;
  const what = list === "rules" ? "own limit" : "override";
  return {
    label: `${name}: take the ${what} away`,
    change: (draft) => withRemoved(draft, ["limits", list], at),
  };
}

/** Where the plan gives a limit in another unit than that in which it is read; "" where not. */
export function unitProblem(plan: Plan, state: Pick<LimitState, "name" | "unit" | "per">): string {
  const own = plan.limits.rules.find(({ id }) => id === state.name);
  if (own === undefined || own.unit === state.unit) return "";
  return `The plan gives it in ${own.unit}, but it is read in ${state.per ?? state.unit}. Set it again.`;
}
