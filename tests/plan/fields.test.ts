// Every place of the format and of every bundled plan has a field with words, and every number a unit or a stated plain kind.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  blankAt,
  checkPlan,
  type Field,
  fieldOf,
  fieldsIn,
  optionAt,
  type Plan,
  type PlanPath,
  planJsonSchema,
  readPlan,
  valueAt,
  withInserted,
} from "../../src/plan/index.ts";
import { units } from "../../src/units/index.ts";
import { samplePlan } from "./sample.ts";

/** What is wrong with a field as a form needs it; "" for nothing. */
function lacks(field: Field | null): string {
  if (field === null) return "no field";
  if (field.words.trim() === "" || /_/.test(field.words)) return `words "${field.words}"`;
  const number = field.is === "number" || field.is === "whole";
  if (!number) return field.unit === null && field.plain === "" ? "" : "a unit for what is no number";
  if (field.least === null || field.most === null) return "a number without bounds";
  if ((field.unit === null) === (field.plain === "")) return "neither unit nor plain number";
  return (field.unit === null) === (field.shown === null) ? "" : "a unit that is not shown";
}

/** Paths of all single values in data. */
function leaves(data: unknown, path: PlanPath = []): PlanPath[] {
  if (typeof data !== "object" || data === null) return [path];
  const parts = Array.isArray(data) ? [...data.keys()] : Object.keys(data);
  return parts.flatMap((part) => leaves(valueAt(data, [part]), [...path, part]));
}

const scenarios = readdirSync("scenarios").filter((file) => file.endsWith(".json"));

describe("bundled plans", () => {
  test("there are five", () => expect(scenarios).toHaveLength(5));

  test.each(scenarios)("every leaf of %s", (file) => {
    const read = readPlan(readFileSync(`scenarios/${file}`, "utf8"));
    if (!read.ok) throw new Error(`${file} is no plan`);
    const bad = leaves(read.plan).flatMap((path) => {
      const field = fieldOf(path, read.plan);
      const value = valueAt(read.plan, path);
      const lack = lacks(field);
      if (lack !== "" || field === null) return [`${path.join(".")}: ${lack}`];
      if (
        typeof value === "number" &&
        field.is !== "fixed" &&
        (value < (field.least ?? 0) || value > (field.most ?? 0))
      )
        return [`${path.join(".")}: ${value} outside of ${field.least} to ${field.most}`];
      if (field.is === "choice" && !field.choices.includes(String(value)))
        return [`${path.join(".")}: ${value}`];
      return [];
    });
    expect(bad).toEqual([]);
  });
});

interface JsonSchema {
  $ref?: string;
  type?: string;
  properties?: Record<string, JsonSchema>;
  required?: string[];
  items?: JsonSchema;
  prefixItems?: JsonSchema[];
  additionalProperties?: JsonSchema | false;
  propertyNames?: unknown;
  anyOf?: JsonSchema[];
  oneOf?: JsonSchema[];
  minimum?: number;
  description?: string;
  $defs?: Record<string, JsonSchema>;
}

/** Every place of the published JSON Schema, which zod itself writes: a second way through the same format. */
function schemaPlaces(top: JsonSchema): { path: PlanPath; leaf: boolean; optional: boolean; says: string }[] {
  const out: { path: PlanPath; leaf: boolean; optional: boolean; says: string }[] = [];
  const walk = (schema: JsonSchema, path: PlanPath, optional: boolean): void => {
    const it = schema.$ref === undefined ? schema : (top.$defs?.[schema.$ref.split("/").pop() ?? ""] ?? {});
    const options = (it.anyOf ?? it.oneOf ?? []).filter((one) => one.type !== "null");
    const inner = it.properties ?? {};
    out.push({
      path,
      optional,
      leaf:
        options.length === 0 &&
        it.properties === undefined &&
        it.items === undefined &&
        it.type !== "array" &&
        it.type !== "object",
      says: schema.description ?? "",
    });
    for (const one of options) walk(one, path, optional);
    for (const [key, field] of Object.entries(inner)) {
      walk(field, [...path, key], !(it.required ?? []).includes(key));
    }
    if (it.items !== undefined) walk(it.items, [...path, 0], false);
    for (const [i, item] of (it.prefixItems ?? []).entries()) walk(item, [...path, i], false);
    if (it.type === "object" && it.properties === undefined && typeof it.additionalProperties === "object")
      walk(it.additionalProperties, [...path, "a name"], false);
  };
  walk(top, [], false);
  return out;
}

describe("the whole format", () => {
  const places = schemaPlaces(planJsonSchema() as JsonSchema);

  test("has many hundred places, optional ones among them", () => {
    expect(places.filter((one) => one.leaf).length).toBeGreaterThan(800);
    expect(places.filter((one) => one.optional).length).toBeGreaterThan(200);
  });

  test("each has a field with words, units and its description", () => {
    const bad = places.flatMap(({ path, says }) => {
      const field = fieldOf(path);
      const lack = lacks(field);
      const silent = says !== "" && field?.says === "" ? "its description is lost" : "";
      return lack + silent === "" ? [] : [`${path.join(".")}: ${lack} ${silent}`];
    });
    expect(bad).toEqual([]);
  });

  test("each is among the fields of what is around it, so that a form reaches it", () => {
    const bad = places.flatMap(({ path }) => {
      const last = path[path.length - 1];
      const around = path.slice(0, -1);
      if (path.length === 0 || ["list", "record"].includes(fieldOf(around)?.is ?? "")) return [];
      const step = around.findLastIndex((part) => part === "steps" || part === "wayBack");
      // Fields of a step depend on its action, and of an either on which of its forms stands there.
      if (step >= 0 || fieldOf(around)?.is === "either") return [];
      return fieldsIn(around).some((field) => field.name === String(last)) ? [] : [path.join(".")];
    });
    expect(bad).toEqual([]);
  });

  test("units are of a kind that typing knows", () => {
    for (const { path } of places) {
      const unit = fieldOf(path)?.unit ?? null;
      if (unit !== null) expect(Object.hasOwn(units, unit)).toBe(true);
    }
  });
});

describe("single fields", () => {
  test.each<[PlanPath, Partial<Field>]>([
    [["cranes", 0, "mass_t"], { words: "mass", unit: "t", least: 1, most: 10000, is: "number" }],
    [["rigging", 0, "hookPinHeight_m"], { words: "hook pin height", unit: "m", shown: "length" }],
    [["transporters", 0, "lines"], { is: "whole", plain: "a count", unit: null }],
    [["sets", 0, "girders", 0, "camber_mm", 0, 0], { words: "station", unit: "m" }],
    [["sets", 0, "girders", 0, "camber_mm", 0, 1], { words: "rise", unit: "mm" }],
    [["sets", 0, "girders", 0, "pieces", 0, "web_mm", 1], { words: "thickness", unit: "mm" }],
    [["sets", 0, "ledger", 0, "mass_t", "low"], { words: "low", unit: "t" }],
    [["sets", 0, "onTransporters", 0, "packing_mm", "L"], { words: "L", unit: "mm", is: "number" }],
    [["site", "seats", 0, "asBuilt_m"], { words: "elevation as built", nullable: true, optional: false }],
    [["spread", "friction", 0], { words: "low", plain: "a plain number" }],
    [["spread", "weight_pct", 1], { words: "high", unit: "%" }],
    [["limits", "rules", 0, "value"], { plain: "in the unit named beside it" }],
    [["sets", 0, "picks", 0, "crane"], { refers: "crane", is: "text" }],
    [["sets", 0, "steps", 0, "carries", 0], { refers: "support" }],
    [["site", "bearings", 0, "holds"], { is: "choice", choices: ["fixed", "guided", "free"] }],
    [["site", "temperature_C"], { optional: true, unit: "C" }],
  ])("%j", (path, want) => {
    expect(fieldOf(path, samplePlan())).toMatchObject(want);
  });

  test("places that the format does not know have no field", () => {
    expect(fieldOf(["cranes", 0, "colour"])).toBeNull();
    expect(fieldOf(["cranes", "first"])).toBeNull();
    expect(fieldOf(["spread", "friction", 2])).toBeNull();
  });

  test("the fields of a step are those of its action", () => {
    const plan = samplePlan();
    const names = (i: number) => fieldsIn(["sets", 0, "steps", i], plan).map((field) => field.name);
    const at = (action: string) => plan.sets[0].steps.findIndex((step) => step.do === action);
    expect(names(at("roll"))).toContain("distance_m");
    expect(names(at("roll"))).not.toContain("cranes");
    expect(names(at("roll together"))).toContain("cranes");
    const until = ["sets", 0, "steps", at("take load"), "until"];
    expect(optionAt(until, plan)).toBe("load");
    expect(fieldOf(until)?.choices).toEqual(["load", "height", "until it frees"]);
    expect(fieldsIn(until, plan).map((field) => field.words)).toEqual(["load"]);
  });
});

describe("fresh entries", () => {
  test("hold every field that must be there and invent nothing", () => {
    expect(blankAt(["site", "seats", 0])).toEqual({
      line: null,
      girder: "",
      design_m: null,
      asBuilt_m: null,
      source: "",
      date: "",
    });
    expect(blankAt(["sets", 0, "steps", 0], undefined, "roll")).toEqual({
      id: "",
      do: "roll",
      distance_m: null,
      carries: [],
    });
  });

  test("what they lack is told by the reader, and nothing is called unknown", () => {
    const plan: Plan = samplePlan();
    for (const list of [
      ["cranes"],
      ["transporters"],
      ["rigging"],
      ["site", "bearings"],
      ["sets", 0, "picks"],
    ]) {
      const read = checkPlan(withInserted(plan, list, 0, blankAt([...list, 0])));
      if (read.ok) throw new Error(`a blank entry of ${list.join(".")} passed`);
      expect(read.errors.filter((error) => /unknown field/.test(error.found))).toEqual([]);
      expect(read.errors.some((error) => error.found === "null" || error.found === '""')).toBe(true);
    }
  });
});
