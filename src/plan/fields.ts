// What stands at any place of a plan, told from the reader of the file alone: words, unit, bounds, choices, description.
import * as z from "zod/mini";
import type { Shown, UnitName } from "../units/index.ts";
import { valueAt } from "./edit.ts";
import { entryWords, type FieldUnit, fieldWords, unitOfName } from "./fieldWords.ts";
import { type PlanPath, printPath } from "./reading/planError.ts";
import { type Referred, referenceAt } from "./references.ts";
import { planSchema } from "./schema.ts";

type Schema = z.core.$ZodTypes;

/**
 * How a field is edited. `group`: named fields; `either`: one of several groups; `pair`: a fixed number of entries;
 * `record`: entries by name; `fixed`: a word that cannot be otherwise.
 */
export type FieldIs =
  | "number"
  | "whole"
  | "text"
  | "flag"
  | "choice"
  | "fixed"
  | "list"
  | "record"
  | "group"
  | "either"
  | "pair";

/** One field of the plan. */
export interface Field {
  readonly path: PlanPath;
  /** As the file has it. */
  readonly name: string;
  readonly words: string;
  readonly is: FieldIs;
  /** Unit in which the file keeps a number; null for a plain number and for all that is no number. */
  readonly unit: UnitName | null;
  readonly shown: Shown | null;
  /** What a plain number is; "" for one with a unit and for all that is no number. */
  readonly plain: "" | "a plain number" | "a count" | "in the unit named beside it";
  /** Bounds of a number in the file's unit, of a text's length, of a list's entries; null for none. */
  readonly least: number | null;
  readonly most: number | null;
  readonly choices: readonly string[];
  readonly optional: boolean;
  /** The file may say null: not known yet. */
  readonly nullable: boolean;
  /** What the format says of it; "" for nothing beyond its name. */
  readonly says: string;
  /** What it names, for fields that hold the name of something else. */
  readonly refers: Referred | null;
}

interface Found {
  readonly schema: Schema;
  readonly optional: boolean;
  readonly nullable: boolean;
  readonly says: string;
}

/** A reader without `optional` and `nullable` around it, and what these say. */
function found(schema: Schema): Found {
  let [inner, optional, nullable, says] = [schema, false, false, ""];
  for (;;) {
    says = z.globalRegistry.get(inner)?.description ?? says;
    const def = inner._zod.def;
    if (def.type !== "optional" && def.type !== "nullable") break;
    if (def.type === "optional") optional = true;
    else nullable = true;
    inner = def.innerType as Schema;
  }
  return { schema: inner, optional, nullable, says };
}

const shapeOf = (schema: Schema): Record<string, Schema> | null =>
  schema._zod.def.type === "object" ? (schema._zod.def.shape as Record<string, Schema>) : null;

/** The word that a reader of an object fixes for a field, such as "roll" for `do`. */
function fixedWords(schema: Schema): [string, unknown][] {
  return Object.entries(shapeOf(schema) ?? {}).flatMap(([key, field]) =>
    field._zod.def.type === "literal" ? [[key, field._zod.def.values[0]] as [string, unknown]] : [],
  );
}

/** Of the options of a union, those that the value at hand can be; all of them where there is no value. */
function optionsFor(options: readonly Schema[], value: unknown): readonly Schema[] {
  if (typeof value !== "object" || value === null) return options;
  const fitting = options.filter((option) => {
    const shape = shapeOf(option) ?? {};
    const fixed = fixedWords(option);
    if (fixed.length > 0) return fixed.every(([key, word]) => valueAt(value, [key]) === word);
    return Object.keys(value).some((key) => Object.hasOwn(shape, key));
  });
  return fitting.length > 0 ? fitting : options;
}

/** The readers that may stand at a path. Several where a union leaves the choice and no plan tells. */
function readersAt(path: PlanPath, plan: unknown): Found[] {
  let here = [found(planSchema as unknown as Schema)];
  path.forEach((part, i) => {
    const value = plan === undefined ? undefined : valueAt(plan, path.slice(0, i));
    const next = here.flatMap(({ schema }) => inside(schema, part, value));
    // Options of a union share most of their fields: each reader is followed once.
    here = next.filter((one, j) => next.findIndex((other) => other.schema === one.schema) === j);
  });
  return here;
}

function inside(schema: Schema, part: string | number, value: unknown): Found[] {
  const def = schema._zod.def;
  switch (def.type) {
    case "array":
      return typeof part === "number" ? [found(def.element as Schema)] : [];
    case "tuple": {
      const item = def.items[Number(part)] as Schema | undefined;
      return item === undefined ? [] : [found(item)];
    }
    case "record":
      return [found(def.valueType as Schema)];
    case "object": {
      const field = (def.shape as Record<string, Schema>)[part];
      return field === undefined ? [] : [found(field)];
    }
    case "union":
      return optionsFor(def.options as Schema[], value).flatMap((option) => inside(option, part, value));
    default:
      return [];
  }
}

interface Bounds {
  least: number | null;
  most: number | null;
  whole: boolean;
}

function boundsOf(schema: Schema): Bounds {
  const bounds: Bounds = { least: null, most: null, whole: "format" in schema._zod.def };
  for (const { _zod } of schema._zod.def.checks ?? []) {
    const def = _zod.def as z.core.$ZodChecks["_zod"]["def"];
    if (def.check === "greater_than") bounds.least = Number(def.value);
    else if (def.check === "less_than") bounds.most = Number(def.value);
    else if (def.check === "min_length") bounds.least = def.minimum;
    else if (def.check === "max_length") bounds.most = def.maximum;
  }
  return bounds;
}

const isOf: Readonly<Record<string, FieldIs>> = {
  string: "text",
  boolean: "flag",
  enum: "choice",
  literal: "fixed",
  array: "list",
  record: "record",
  object: "group",
  union: "either",
  tuple: "pair",
};

/** The last name on a path, and the name of the field around it. */
function namesOn(path: PlanPath): [string, string] {
  const texts = path.filter((part) => typeof part === "string");
  return [texts[texts.length - 1] ?? "", texts[texts.length - 2] ?? ""];
}

/** The unit of a number: its own, or that of the nearest field around it that has one. */
function unitAt(path: PlanPath): FieldUnit | null {
  const last = path[path.length - 1];
  const list = path[path.length - 2];
  if (typeof last === "number") {
    // An entry of a pair in a list (camber) has the list's name two steps further out.
    const name = typeof list === "number" ? String(path[path.length - 3]) : String(list);
    const own = entryWords(name, last).unit;
    if (own !== undefined) return own;
  }
  for (let i = path.length - 1; i >= 0; i--) {
    const part = path[i];
    if (typeof part !== "string") continue;
    const { unit } = unitOfName(part);
    if (unit !== null) return unit;
    // Only names of records, bands and pairs hand down the unit of the field around them.
    if (i < path.length - 3) break;
  }
  return null;
}

/** An entry of a list or a record is called after what it is in. */
function wordsOf(path: PlanPath, inRecord: boolean, inPair: boolean): string {
  const last = path[path.length - 1];
  const [name, around] = namesOn(path);
  if (inPair) {
    const list = path[path.length - 2];
    return entryWords(typeof list === "number" ? name : String(list), Number(last)).words;
  }
  if (inRecord || typeof last === "number") return String(typeof last === "number" ? last + 1 : last);
  return fieldWords(name, around);
}

/** What stands at a path, or null where the format knows no such place. With a plan, unions are told by what stands there. */
export function fieldOf(path: PlanPath, plan?: unknown): Field | null {
  const at = readersAt(path, plan);
  if (at.length === 0) return null;
  const { schema, optional, nullable, says } = at[0];
  const def = schema._zod.def;
  const around = path.length === 0 ? null : readersAt(path.slice(0, -1), plan)[0];
  const aroundType = around?.schema._zod.def.type;
  const { least, most, whole } = boundsOf(schema);
  const number = def.type === "number";
  const unit = number && !whole ? unitAt(path) : null;
  const aroundShape = around === null ? null : shapeOf(around.schema);
  const name = String(path[path.length - 1] ?? "");
  const unitBeside = aroundShape !== null && "unit" in aroundShape && name !== "unit";
  const override = name === "value" && aroundShape !== null && "limit" in aroundShape;
  return {
    path,
    name,
    words: path.length === 0 ? "plan" : wordsOf(path, aroundType === "record", aroundType === "tuple"),
    is: number ? (whole ? "whole" : "number") : (isOf[def.type] ?? "text"),
    unit: unit?.unit ?? null,
    shown: unit?.shown ?? null,
    plain:
      !number || unit !== null
        ? ""
        : whole
          ? "a count"
          : unitBeside || override
            ? "in the unit named beside it"
            : "a plain number",
    least,
    most,
    choices: choicesOf(schema),
    optional,
    nullable,
    says,
    refers: refersAt(path, aroundType),
  };
}

function choicesOf(schema: Schema): readonly string[] {
  const def = schema._zod.def;
  if (def.type === "enum") return Object.values(def.entries).map(String);
  if (def.type === "literal") return def.values.map(String);
  return def.type === "union" ? (def.options as Schema[]).map(optionName) : [];
}

function refersAt(path: PlanPath, aroundType: string | undefined): Referred | null {
  if (aroundType === "record") return null;
  return referenceAt(path)?.to ?? null;
}

/** What an option of a union is called: its fixed word, or the field that only it has. */
function optionName(option: Schema): string {
  const fixed = fixedWords(option);
  if (fixed.length > 0) return String(fixed[0][1]);
  return fieldWords(Object.keys(shapeOf(option) ?? {})[0] ?? "", "");
}

/**
 * The fields inside a group, an option of an either, or a pair, in the order of the format; of an either without a value all
 * fields of its first option. Lists and records have none: their entries are what the plan holds.
 */
export function fieldsIn(path: PlanPath, plan?: unknown): Field[] {
  const keys = new Set<string | number>();
  for (const { schema } of readersAt(path, plan)) {
    const def = schema._zod.def;
    const options =
      def.type === "union" ? optionsFor(def.options as Schema[], valueAt(plan, path)) : [schema];
    if (def.type === "tuple") for (const i of def.items.keys()) keys.add(i);
    else for (const key of Object.keys(shapeOf(options[0]) ?? {})) keys.add(key);
    break;
  }
  return [...keys].flatMap((key) => fieldOf([...path, key], plan) ?? []);
}

/** Which option of an either stands at a path, as one of its choices; "" for none. */
export function optionAt(path: PlanPath, plan: unknown): string {
  const value = valueAt(plan, path);
  if (typeof value !== "object" || value === null) return "";
  const { schema } = readersAt(path, plan)[0];
  const def = schema._zod.def;
  if (def.type !== "union") return "";
  const fitting = optionsFor(def.options as Schema[], value);
  return fitting.length === def.options.length ? "" : optionName(fitting[0]);
}

/** A fresh entry of what a reader reads: what must be typed is null, what may be blank is blank; nothing is invented. */
function blankFor(schema: Schema, option?: string): unknown {
  const { schema: bare, nullable } = found(schema);
  if (nullable) return null;
  const def = bare._zod.def;
  switch (def.type) {
    case "string":
      return "";
    case "boolean":
      return false;
    case "literal":
      return def.values[0];
    case "array":
      return [];
    case "record":
      return {};
    case "tuple":
      return def.items.map((item) => blankFor(item as Schema));
    case "object":
      return Object.fromEntries(
        Object.entries(def.shape as Record<string, Schema>)
          .filter(([, field]) => !found(field).optional)
          .map(([key, field]) => [key, blankFor(field)]),
      );
    case "union": {
      const options = def.options as Schema[];
      return blankFor(options.find((one) => optionName(one) === option) ?? options[0]);
    }
    default:
      return null;
  }
}

/**
 * A fresh value for a path: groups with all that they must hold, where numbers and choices that only a person can give are
 * null, which the reader names as missing.
 * @param option for an either, which of its choices
 * @throws {RangeError} where the format knows no such place
 */
export function blankAt(path: PlanPath, plan?: unknown, option?: string): unknown {
  const [at] = readersAt(path, plan);
  if (at === undefined) throw new RangeError(`blankAt: found no place ${printPath(path)} in the format.`);
  return blankFor(at.schema, option);
}
