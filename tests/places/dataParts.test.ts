// Everything in a plan can be edited: the way to every single value of the bundled plans ends at a cell that is typed.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { planParts } from "../../src/app/index.ts";
import { columnsOf, sheetCells } from "../../src/places/plan/data/cells.ts";
import { sectionsOf, wayTo } from "../../src/places/plan/data/parts.ts";
import {
  blankAt,
  type Plan,
  type PlanPath,
  readPlan,
  valueAt,
  withInserted,
  withValue,
} from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";

function scenario(name: string): Plan {
  const read = readPlan(readFileSync(`scenarios/${name}.json`, "utf8"));
  if (!read.ok) throw new Error(`${name} is no plan`);
  return read.plan;
}

function leaves(data: unknown, path: PlanPath = []): PlanPath[] {
  if (typeof data !== "object" || data === null) return [path];
  const parts = Array.isArray(data) ? [...data.keys()] : Object.keys(data);
  return parts.flatMap((part) => leaves(valueAt(data, [part]), [...path, part]));
}

/** Sheets that can be reached by opening cells, from the sections of all parts on, and the cells that are typed in them. */
function reachable(plan: Plan): { sheets: Set<string>; typed: Set<string> } {
  const sheets = new Set<string>();
  const typed = new Set<string>();
  const queue: PlanPath[] = planParts.flatMap((part) =>
    plan.sets.flatMap((_, i) => sectionsOf(part, plan, i).map((section) => section.path)),
  );
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const key = JSON.stringify(next);
    if (sheets.has(key)) continue;
    sheets.add(key);
    for (const cell of sheetCells(next, plan)) {
      if (cell.opens) queue.push(cell.path);
      else typed.add(JSON.stringify(cell.path));
    }
  }
  return { sheets, typed };
}

/** Values that no sheet reaches, and values to which the way from an error does not lead, by their path. */
function unreached(plan: Plan): string[] {
  const { sheets, typed } = reachable(plan);
  const kinds = new Set<string>();
  return leaves(plan).flatMap((path) => {
    // A list of words is one cell; so a value may be typed in the cell of what holds it.
    const cell = [path, path.slice(0, -1)].find((one) => typed.has(JSON.stringify(one)));
    if (cell === undefined) return [`${path.join(".")}: no cell`];
    // The way is the same for all entries of a list but for their number: one of each kind is walked.
    const kind = path.map((part) => (typeof part === "number" ? "*" : part)).join(".");
    if (kinds.has(kind)) return [];
    kinds.add(kind);
    const way = wayTo(path, plan, planParts);
    if (way === null || way.cell === null) return [`${path.join(".")}: no way`];
    if (way.cell.join() !== cell.join()) return [`${path.join(".")}: the way leads to ${way.cell.join(".")}`];
    return sheets.has(JSON.stringify(way.sheet))
      ? []
      : [`${path.join(".")}: ${way.sheet.join(".")} is not opened`];
  });
}

describe("every single value has a cell", () => {
  test.each(["demo", "machine-faults", "one-girder"])("%s", (name) => {
    expect(unreached(scenario(name)).slice(0, 20)).toEqual([]);
  });
  test("a plan that uses every part of the format", () => {
    expect(unreached(samplePlan()).slice(0, 20)).toEqual([]);
  });
  test("a way back's own steps and a second set", () => {
    const plan = samplePlan();
    const two = withInserted(plan, ["sets"], 1, { ...plan.sets[0], id: "S2" });
    expect(unreached(two).slice(0, 20)).toEqual([]);
  });
});

describe("what is not set can be set", () => {
  test("an optional group stands in its sheet as a cell that opens, and typed once it is there", () => {
    const plan = scenario("one-girder");
    const path = ["cranes", 0, "mat"];
    const bare = withValue(plan, path, undefined);
    expect(wayTo(path, bare, planParts)?.cell).toEqual(path);
    const set = withValue(plan, path, blankAt(path, plan));
    expect(wayTo([...path, "length_m"], set, planParts)?.cell).toEqual([...path, "length_m"]);
  });
  test("a place that the format does not know has no way", () => {
    expect(wayTo(["sets", 7, "id"], samplePlan(), planParts)).toBeNull();
  });
});

describe("columns", () => {
  test("bands and plates lie flat, with what they are in words", () => {
    const words = columnsOf(["sets", 0, "girders", 0, "pieces"], samplePlan()).map((one) => one.words);
    expect(words).toEqual([
      "from",
      "to",
      "top flange width",
      "top flange thickness",
      "web height",
      "web thickness",
      "bottom flange width",
      "bottom flange thickness",
      "yield stress",
      "weld leg",
      "mark",
    ]);
    const ledger = columnsOf(["sets", 0, "ledger"], samplePlan()).map((one) => one.words);
    expect(ledger).toEqual(["item", "covers", "mass low", "mass best", "mass high", "source", "date"]);
  });
  test("steps have the columns common to all and open the rest", () => {
    const words = columnsOf(["sets", 0, "steps"], samplePlan()).map((one) => one.words);
    expect(words).toContain("carries");
    expect(words[words.length - 1]).toBe("all of it");
  });
});
