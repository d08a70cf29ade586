// The table of reactions: rows of a solved pose of the demonstration plan, in the picture's order; finer supports folded.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Result, SetResult } from "../../src/app/index.ts";
import {
  filtered,
  groupsOf,
  highestUse,
  kindOf,
  noFilter,
  tableOf,
  whereOf,
} from "../../src/places/index.ts";
import { stripMeasures, usesHere } from "../../src/places/plan/uses.ts";
import { readPlan } from "../../src/plan/index.ts";
import { prepareContext, solvePose, startSituation } from "../../src/sequence/index.ts";
import { madeUpFinding, madeUpResult, madeUpSet } from "./madeUp.ts";

const read = readPlan(readFileSync(new URL("../../scenarios/demo.json", import.meta.url), "utf8"));
if (!read.ok) throw new Error("scenarios/demo.json cannot be read");
const { plan } = read;
const context = prepareContext(plan, plan.sets[0].id);
const pose = solvePose(context, startSituation(context), 0, 0);
const made = madeUpResult();
const set: SetResult = {
  ...made.sets[0],
  setId: context.set.id,
  supports: context.supports,
  steps: made.sets[0].steps.map((step, i) => ({ ...step, step: context.set.steps[i] })),
  weight: context.model.mass * context.gravity,
  strips: [],
};
const none = new Map();
const result: Result = { ...made, sets: [set] };

test("bands at the start: the trains carry the whole set, cranes and bearings are no part of it", () => {
  const { bands } = tableOf(result, plan, set, 0, pose, none);
  const sum = bands.reduce((all, { share }) => all + (Number.isFinite(share) ? share : 0), 0);
  // Nothing else touches the set: what the slopes turn sideways is below 1e-4 of the weight.
  expect(sum / set.weight).toBeCloseTo(1, 4);
  const by = new Map(bands.map((row) => [row.name, row]));
  expect(by.get("far crane")?.load).toBeNaN();
  expect(by.get("near L")?.share).toBeNaN();
  const left = by.get("rear left");
  expect(left?.load).toBeGreaterThan(left?.share ?? Number.NaN);
  expect(bands[0].kind).toBe("front train");
  expect(bands.at(-1)?.kind).toBe("rear train");
});

test("cylinders are folded by their oil group, with the least and the greatest load", () => {
  const { folds } = tableOf(result, plan, set, 0, pose, none);
  for (const transporter of plan.transporters) {
    for (const group of transporter.groups) {
      const fold = folds.find(({ name }) => name === `${group.name}: cylinders`);
      expect(fold?.rows.length, group.name).toBe(group.wheels.length);
      const loads = fold?.rows.map(({ load }) => load) ?? [];
      expect(fold?.least).toBe(Math.min(...loads));
      expect(fold?.most).toBe(Math.max(...loads));
    }
  }
});

test("without a pose every number is missing", () => {
  const { bands, folds } = tableOf(result, plan, set, 0, null, none);
  expect(bands.length).toBeGreaterThan(8);
  for (const row of bands) expect([row.share, row.load]).toEqual([Number.NaN, Number.NaN]);
  expect(folds).toEqual([]);
});

test("the highest use in a step names its limit", () => {
  expect(highestUse(madeUpSet(), 1, "far crane")).toEqual({ use: 0.9, check: "line lean" });
  expect(highestUse(madeUpSet(), 0, "far crane")).toEqual({ use: Number.NaN, check: "" });
});

test("the use at the cursor is the share of its limit that the solved load takes, named by its check", () => {
  const uses = usesHere(stripMeasures(context), pose);
  const { bands } = tableOf(result, plan, set, 0, pose, uses);
  let judged = 0;
  for (const transporter of plan.transporters) {
    for (const group of transporter.groups) {
      const row = bands.find(({ name }) => name === group.name);
      if (row === undefined || !Number.isFinite(row.load)) continue;
      // A group may carry the maker's load of an axle-line side on each of its wheels; the load felt has its decks in it.
      const allowed = (transporter.allowedSide_kN ?? Number.NaN) * 1000 * group.wheels.length;
      expect(row.here.check, group.name).toBe("group load");
      expect(row.here.use, group.name).toBeCloseTo(row.load / allowed, 9);
      judged++;
    }
  }
  expect(judged).toBeGreaterThan(3);
  // A crane that holds nothing has no use.
  expect(bands.find(({ name }) => name === "far crane")?.here).toEqual({ use: Number.NaN, check: "" });
});

test("findings stand by level, the worst first; those without a place are open items", () => {
  const findings = [
    madeUpFinding({ id: "n", level: "note" }),
    madeUpFinding({ id: "late", worst: { step: 2, progress: 0 } }),
    madeUpFinding({ id: "early", worst: { step: 0, progress: 0 } }),
    madeUpFinding({ id: "open", set: "", from: null, to: null, worst: null, level: "caution" }),
  ];
  const { groups, open } = groupsOf(findings);
  expect(groups.map(({ level, findings: all }) => [level, ...all.map(({ id }) => id)])).toEqual([
    ["stop", "early", "late"],
    ["note", "n"],
  ]);
  expect(open.map(({ id }) => id)).toEqual(["open"]);
  expect(whereOf(made, findings[1])).toMatch(/^step 3 at 0 %, .+/);
  expect(whereOf(made, findings[3])).toBe("whole plan");
});

test("the list is filtered by level, by kind and by words, all of which must occur", () => {
  const findings = [
    madeUpFinding({ id: "limit", check: "group load", words: "group load of rear left: 226.4 kN" }),
    madeUpFinding({ id: "fall", check: "unbacked", level: "note", words: "with far crane lost, it tips" }),
    madeUpFinding({ id: "back", check: "no way back", level: "note", words: "past the point of no return" }),
    madeUpFinding({ id: "corner", check: "in the spread: group load", level: "caution", words: "rear left" }),
  ];
  expect(findings.map(kindOf)).toEqual(["run", "backed", "way back", "spread"]);
  const ids = (part: Partial<typeof noFilter>) =>
    filtered(findings, { ...noFilter, ...part }).map(({ id }) => id);
  expect(ids({})).toEqual(["limit", "fall", "back", "corner"]);
  expect(ids({ without: ["note"] })).toEqual(["limit", "corner"]);
  expect(ids({ kind: "spread" })).toEqual(["corner"]);
  expect(ids({ words: "LEFT rear" })).toEqual(["limit", "corner"]);
  expect(ids({ words: "rear tips" })).toEqual([]);
});
