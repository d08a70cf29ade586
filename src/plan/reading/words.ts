// The reader of the plan (zod) put into words: what a place may hold, which fields it knows; and its issues as errors.
import * as z from "zod/mini";
import { valueAt } from "../edit.ts";
import { listOf, nearest, type PlanError, type PlanPath, printFound, printPath } from "./planError.ts";

type Schema = z.core.$ZodTypes;
type Issue = z.core.$ZodIssue;

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Without `optional` and `nullable` around it. */
function bare(schema: Schema): Schema {
  const def = schema._zod.def;
  return def.type === "optional" || def.type === "nullable" ? bare(def.innerType as Schema) : schema;
}

/** Fields of an object reader; of a union, those of the option that the data's fields fit best. */
function shapeFor(schema: Schema, value: unknown): Record<string, Schema> | null {
  const def = bare(schema)._zod.def;
  if (def.type === "object") return def.shape as Record<string, Schema>;
  if (def.type !== "union") return null;
  if (!isRecord(value)) return null;
  const options: Record<string, Schema>[] = (def.options as Schema[]).flatMap((o) => {
    const shape = shapeFor(o, undefined);
    return shape === null ? [] : [shape];
  });
  const hit = options.find((shape) =>
    Object.entries(shape).every(([key, field]) => {
      const d = field._zod.def;
      return d.type !== "literal" || (d.values as unknown[]).includes(value[key]);
    }),
  );
  return hit ?? null;
}

/** The reader that stands at a path, following the data where a union leaves the choice. */
export function schemaAt(root: Schema, data: unknown, path: PlanPath): Schema | null {
  let schema: Schema | null = root;
  for (let i = 0; i < path.length; i++) {
    if (schema === null) return null;
    const def: Schema["_zod"]["def"] = bare(schema)._zod.def;
    const part = path[i];
    if (def.type === "array") schema = def.element as Schema;
    else if (def.type === "tuple") schema = (def.items[Number(part)] as Schema | undefined) ?? null;
    else if (def.type === "record") schema = def.valueType as Schema;
    else {
      const shape: Record<string, Schema> | null = shapeFor(schema, valueAt(data, path.slice(0, i)));
      schema = shape?.[part] ?? null;
    }
  }
  return schema;
}

/** Bounds of a number or of a text's length, as the reader's own checks hold them. */
function boundsOf(schema: Schema): { low?: number; high?: number; whole: boolean; form?: string } {
  const bounds: ReturnType<typeof boundsOf> = { whole: "format" in schema._zod.def };
  for (const { _zod } of schema._zod.def.checks ?? []) {
    const def = _zod.def as z.core.$ZodChecks["_zod"]["def"];
    if (def.check === "greater_than") bounds.low = Number(def.value);
    else if (def.check === "less_than") bounds.high = Number(def.value);
    else if (def.check === "min_length") bounds.low = def.minimum;
    else if (def.check === "max_length") bounds.high = def.maximum;
    else if (def.check === "string_format") bounds.form = z.globalRegistry.get(schema)?.description;
  }
  return bounds;
}

/** What a reader allows, in words. */
export function inWords(schema: Schema): string {
  const def = schema._zod.def;
  switch (def.type) {
    case "optional":
      return inWords(def.innerType as Schema);
    case "nullable":
      return `${inWords(def.innerType as Schema)}, or null`;
    case "number": {
      const { low, high, whole } = boundsOf(schema);
      const kind = whole ? "a whole number" : "a number";
      return low === undefined ? kind : `${kind} from ${low} to ${high}`;
    }
    case "string": {
      const { low, high, form } = boundsOf(schema);
      return form ?? `a text of ${low ?? 0} to ${high} signs`;
    }
    case "boolean":
      return "true or false";
    case "literal":
      return (def.values as unknown[]).map((v) => JSON.stringify(v)).join(" or ");
    case "enum":
      return `one of ${listOf(
        Object.values(def.entries).map((v) => JSON.stringify(v)),
        "or",
      )}`;
    case "array":
      return "a list [...]";
    case "tuple":
      return `a list of ${def.items.length} values, each ${inWords(def.items[0] as Schema)}`;
    case "record":
      return `an object of names, each with ${inWords(def.valueType as Schema)}`;
    case "object": {
      const known = Object.entries(def.shape as Record<string, Schema>);
      const must = known.filter(([, s]) => s._zod.def.type !== "optional").map(([key]) => key);
      return `an object with ${listOf(must)}`;
    }
    case "union": {
      const options = def.options as Schema[];
      return `one of: ${options.map(inWords).join("; ")}`;
    }
    default:
      return "another kind of value";
  }
}

/** The unit that the last name on a path carries: `mm` for `web_mm[1]`; empty for none. */
function unitOf(path: PlanPath): string {
  const name = [...path].reverse().find((part) => typeof part === "string");
  const hit = /^[a-z]+[A-Za-z]*_(.+)$/.exec(String(name ?? ""));
  return hit === null ? "" : hit[1].replace(/_per_/g, "/").replace(/_/g, " ");
}

function numberMend(path: PlanPath): string {
  const unit = unitOf(path);
  return unit === ""
    ? "Correct the number."
    : `Correct the number; its unit is ${unit}, as the field's name says.`;
}

function unknownFields(root: Schema, data: unknown, path: PlanPath, keys: readonly string[]): PlanError[] {
  const schema = schemaAt(root, data, path);
  const shape = schema === null ? null : shapeFor(schema, valueAt(data, path));
  const known = shape === null ? [] : Object.keys(shape);
  return keys.map((key) => {
    const near = nearest(
      key,
      known.filter((k) => !Object.hasOwn(valueAt(data, path) as object, k)),
    );
    return {
      path: printPath([...path, key]),
      found: `the unknown field ${printFound(key)}`,
      allowed: `here the fields ${listOf(known)}`,
      mend: near === null ? "Take the field out, or correct its name." : `Did you mean "${near}"?`,
    };
  });
}

function missing(schema: Schema | null, path: PlanPath): PlanError {
  return {
    path: printPath(path),
    found: "nothing",
    allowed: schema === null ? "a value" : inWords(schema),
    mend: `Add the field "${String(path[path.length - 1])}".`,
  };
}

/** One issue of the reader as errors with their place, what was found, what is allowed and how to mend it. */
export function issueErrors(root: Schema, data: unknown, issue: Issue, base: PlanPath = []): PlanError[] {
  const path: PlanPath = [...base, ...issue.path.map((p) => (typeof p === "symbol" ? String(p) : p))];
  if (issue.code === "unrecognized_keys") return unknownFields(root, data, path, issue.keys);
  const value = valueAt(data, path);
  const schema = schemaAt(root, data, path);
  if (issue.code === "invalid_union" && issue.discriminator !== undefined) {
    const words = "options" in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];
    const near = typeof value === "string" ? nearest(value, words) : null;
    return [
      {
        path: printPath(path),
        found: printFound(value),
        allowed: `one of ${words.map((w) => JSON.stringify(w)).join(", ")}`,
        mend: near === null ? "Choose one of these words." : `Did you mean "${near}"?`,
      },
    ];
  }
  if (value === undefined) return [missing(schema, path)];
  const allowed = schema === null ? "another value" : inWords(schema);
  const error = { path: printPath(path), found: printFound(value), allowed };
  if (issue.code === "invalid_union") {
    const fitting = bestOption(issue.errors, value);
    if (fitting !== null) return fitting.flatMap((inner) => optionErrors(schema, value, inner, path));
    return [{ ...error, mend: "Give exactly one of these." }];
  }
  if (issue.code === "too_big" || issue.code === "too_small") {
    if (typeof value === "number") return [{ ...error, mend: numberMend(path) }];
    if (Array.isArray(value)) {
      const few = issue.code === "too_small";
      const bound = few ? `at least ${issue.minimum} entries` : `at most ${issue.maximum} entries`;
      return [{ ...error, allowed: bound, mend: few ? "Add what is missing." : "Shorten the list." }];
    }
    const mend = issue.code === "too_small" ? "Write a name there." : "Shorten the text.";
    return [{ ...error, mend }];
  }
  if (issue.code === "invalid_value") {
    const words = issue.values.map(String);
    const near = typeof value === "string" ? nearest(value, words) : null;
    return [{ ...error, mend: near === null ? "Choose an allowed value." : `Did you mean "${near}"?` }];
  }
  if (issue.code === "invalid_type" && issue.expected === "number") {
    return [
      {
        ...error,
        mend: typeof value === "string" ? "Write a number, without quotes or unit." : numberMend(path),
      },
    ];
  }
  return [{ ...error, mend: "Write what is allowed there." }];
}

/** The option of a union whose own fields are all there, so that its inner faults are what matters. */
function bestOption(errors: readonly Issue[][], value: unknown): Issue[] | null {
  if (!isRecord(value)) return null;
  const near = errors.filter((list) =>
    list.every((issue) => {
      if (issue.code === "unrecognized_keys" || issue.path.length === 0) return false;
      return valueAt(value, issue.path as PlanPath) !== undefined;
    }),
  );
  return near.length === 1 ? near[0] : null;
}

function optionErrors(union: Schema | null, value: unknown, issue: Issue, path: PlanPath): PlanError[] {
  const def = union === null ? null : bare(union)._zod.def;
  const options = def !== null && def.type === "union" ? (def.options as Schema[]) : [];
  const option = options.find((o) => schemaAt(o, value, issue.path as PlanPath) !== null);
  if (option === undefined) return [];
  return issueErrors(option, value, issue).map((error) => ({
    ...error,
    path: printPath([...path, ...(issue.path as PlanPath)]),
  }));
}
