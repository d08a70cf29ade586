// The reactions as CSV: its shape after RFC 4180, its units and names, harmless text, and its description beside it.
import { describe, expect, test } from "vitest";
import { hookLoadOf, solvePlan } from "../../src/checks/index.ts";
import { byId } from "../../src/plan/index.ts";
import {
  columnsOf,
  contextsOf,
  csvMetadata,
  fixed,
  harmless,
  metadataNameOf,
  reactionsCsv,
  rowsOf,
  rowsOfAll,
  withoutNumbers,
} from "../../src/report/index.ts";
import { poseAt, prepareContext } from "../../src/sequence/index.ts";
import { parseCsv, recompute } from "../tools/recompute.mjs";
import { goodSteps, smallPlan } from "./plans.ts";

const plan = smallPlan(goodSteps());
const result = solvePlan(plan);
const contexts = contextsOf(result, plan);
const csv = reactionsCsv(result, plan, contexts);
const rows = parseCsv(csv);
const set = result.sets[0];

describe("the file", () => {
  test("has one header row, rows of one width and CRLF at every end (RFC 4180, section 2)", () => {
    const unquoted = csv.replace(/"(?:[^"]|"")*"/g, '""');
    expect(unquoted.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    expect(csv.endsWith("\r\n")).toBe(true);
    const widths = new Set(
      unquoted
        .trimEnd()
        .split("\r\n")
        .map((line) => line.split(",").length),
    );
    expect([...widths]).toEqual([columnsOf().length]);
  });

  test("has a row for every stored pose and every support that is part of it", () => {
    let expected = 0;
    for (const force of set.forces) if (!Number.isNaN(force)) expected++;
    expect(expected).toBeGreaterThan(100);
    expect(rows.length).toBe(expected);
    const ends = set.steps.flatMap((step) => [step.first, step.first + step.count - 1]);
    for (const p of ends) expect(rows.some((r) => r.pose === String(p + 1))).toBe(true);
  });

  test("holds in every number cell a plain number, in every column its unit in the name", () => {
    for (const column of columnsOf()) {
      if (column.unit !== "") expect(column.name.endsWith(`_${column.unit}`), column.name).toBe(true);
      if (column.kind === "text" || column.kind === "user text") continue;
      const form = column.kind === "ratio" ? /^-?\d+(\.\d+)?(e-\d+)?$/ : /^-?\d+(\.\d+)?$/;
      for (const r of rows) if (r[column.name] !== "") expect(r[column.name], column.name).toMatch(form);
    }
  });

  test("holds forces to 1e-6 kN: half of that is the most that a cell is off", () => {
    const sparse = rows.filter((r) => r.what === "bunk" || r.what === "bearing");
    expect(sparse.length).toBeGreaterThan(100);
    for (const r of sparse) {
      const j = set.supports.findIndex((s) => `${s.name}` === r.support);
      const force = set.forces[(Number(r.pose) - 1) * set.supports.length + j];
      expect(Math.abs(1000 * Number(r.load_kN) - force)).toBeLessThanOrEqual(0.5e-3 + 1e-9);
    }
  });

  test("ends with plan, hash, rules, solver and caution on every row", () => {
    const names = columnsOf().map((column) => column.name);
    const last = ["plan_title", "plan_revision", "plan_hash", "rule_set", "solver_version", "caution"];
    expect(names.slice(-6)).toEqual(last);
    for (const r of rows) {
      expect(r.plan_hash).toMatch(/^[0-9a-f]{64}$/);
      expect(r.caution).toMatch(/not a substitute for a licensed engineer/);
      expect(r.caution).toMatch(/^Invented data\./);
    }
  });

  test("tells the hook's load apart from the net load on its picks", () => {
    const hooks = rows.filter((r) => r.what === "hoist" && Number(r.net_hook_kN) > 1);
    expect(hooks.length).toBeGreaterThan(3);
    // Rigging 1.2 t, block 1.6 t, 8 parts of rope of 3.2 kg/m: more than 2.8 t and, 40 m of rope at most, less than 4 t.
    for (const r of hooks) {
      const more = Number(r.load_kN) - Number(r.net_hook_kN);
      expect(more).toBeGreaterThan(2.8 * 9.80665);
      expect(more).toBeLessThan(4 * 9.80665);
    }
  });

  test("holds the hook's load as the checks judge it", () => {
    const ctx = prepareContext(plan, "S1");
    let compared = 0;
    for (const r of rowsOfAll(result, plan, contexts)) {
      if (r.support.what !== "hoist") continue;
      const judged = hookLoadOf(ctx, r.pose, byId(plan.cranes, r.support.of));
      // Both add the same five terms: only the order of additions may differ, 1e-12 of the sum.
      expect(Math.abs(r.load - (judged?.gross ?? Number.NaN))).toBeLessThanOrEqual(1e-12 * r.load);
      compared++;
    }
    expect(compared).toBeGreaterThan(10);
  });

  test("is the same for a pose solved anew as for the stored one", () => {
    const ctx = contexts.get(set.setId);
    if (ctx === undefined) throw new Error("no context");
    for (let p = 0; p < set.count; p += 7) {
      const pose = poseAt(ctx, set.steps[set.step[p]], set.progress[p]);
      const stored = rowsOf(result, plan, set, pose, p).map((r) => [r.support.name, r.net, r.share]);
      const anew = rowsOf(result, plan, set, pose, null).map((r) => [r.support.name, r.net, r.share]);
      expect(anew).toEqual(stored);
    }
  });
});

describe("text from a user", () => {
  test.each(["=1+1", "+1", "-1", "@x", "\tx", "\rx"])("%j gets an apostrophe before it", (text) => {
    expect(harmless(text)).toBe(`'${text}`);
  });
  test.each(["", "rear left", "1-2", "a=b"])("%j stays", (text) => {
    expect(harmless(text)).toBe(text);
  });
  test("is made harmless in the file, and negative numbers are left alone", () => {
    expect(rows.some((r) => r.step === "'=roll")).toBe(true);
    expect(rows[0].plan_title).toBe(`'${plan.header.title}`);
    expect(rows.some((r) => /^-\d/.test(r.y_m))).toBe(true);
    expect(rows.every((r) => !r.y_m.startsWith("'"))).toBe(true);
  });
  test("a number never loses its sign or gains an exponent", () => {
    expect(fixed(-0.00000049, 6)).toBe("0.000000");
    expect(fixed(1e20, 0)).toBe("100000000000000000000");
    expect(() => fixed(1e21, 0)).toThrow(/below 1e21/);
    expect(fixed(Number.NaN, 2)).toBe("");
  });
});

test("the metadata describe every column in order (W3C, Metadata Vocabulary for Tabular Data)", () => {
  expect(metadataNameOf("out.csv")).toBe("out.csv-metadata.json");
  const metadata = JSON.parse(csvMetadata(result, plan, "out.csv"));
  expect(metadata.url).toBe("out.csv");
  expect(metadata["@context"][0]).toBe("http://www.w3.org/ns/csvw");
  const header = csv.slice(0, csv.indexOf("\r\n")).split(",");
  const { columns, primaryKey } = metadata.tableSchema as {
    columns: { name: string; titles: string }[];
    primaryKey: string[];
  };
  expect(columns.map((column) => column.titles)).toEqual(header);
  expect(new Set(header).size).toBe(header.length);
  const keys = rows.map((r) => JSON.stringify(primaryKey.map((name) => r[name])));
  expect(new Set(keys).size).toBe(rows.length);
});

describe("equilibrium summed from the file alone", () => {
  test("holds at every pose, on a path with grade and crossfall", () => {
    const found = recompute(csv, plan);
    expect(found.poses).toBe(set.count - withoutNumbers(set).length);
    expect(found.poses).toBeGreaterThan(30);
    expect(rows.some((r) => Number(r.grade_pct) !== 0 && Number(r.crossfall_pct) !== 0)).toBe(true);
    expect(found.faults.slice(0, 3)).toEqual([]);
  });

  test.each([
    ["load_kN", "bunk", /weight|CG|deck/],
    ["net_hook_kN", "hoist", /weight|lines/],
    ["side_y_kN", "bunk", /across/],
    ["station_m", "bunk", /CG/],
    ["load_kN", "cylinder", /deck|group/],
    ["share_kN", "group", /shares|tare/],
  ])("a wrong %s of a %s is found", (column, what, words) => {
    const head = columnsOf().map((c) => c.name);
    const lines = csv.split("\r\n");
    const c = head.indexOf(column);
    const n = lines.findIndex((line) => {
      const cells = line.split(",");
      return cells[head.indexOf("what")] === what && Math.abs(Number(cells[c])) > 0.01;
    });
    const cells = lines[n].split(",");
    cells[c] = String(Number(cells[c]) + 0.001);
    lines[n] = cells.join(",");
    const found = recompute(lines.join("\r\n"), plan);
    expect(found.faults.length).toBeGreaterThan(0);
    expect(found.faults[0]).toMatch(words);
  });
});
