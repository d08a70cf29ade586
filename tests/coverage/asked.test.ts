// What is asked for or shown and no check computes: rows of the table of coverage whose place in the plan is told of when it
// is blank, or whose words stand where the table says.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkList, limitNames, limitOf, readyRules, solvePlan } from "../../src/checks/index.ts";
import { type Plan, readPlan } from "../../src/plan/index.ts";
import { coverageText, originOf } from "../../src/report/index.ts";
import { onlyStands, readScenario } from "./plans.ts";

/** What the data of the demonstration plan leave open, as subjects with their words. */
const open = (change: (plan: Plan) => void): string =>
  checkList.planChecks
    .flatMap((find) => find(readScenario("demo", change)))
    .map((f) => `${f.subject} / ${f.words}`)
    .join("\n");
const people = (plan: Plan) => plan.people ?? { roles: [], channels: [] };
const hold = (plan: Plan) => {
  const found = plan.sets[0].steps.find((s) => s.id === "brief");
  if (found?.do !== "hold") throw new Error("no hold");
  return found;
};
/** A field of one step made blank, and what must be said then and not before. */
const blank = (field: "minutes" | "voice" | "channel" | "releasedBy" | "evidence") => {
  const said = new RegExp(`sets\\[0\\]\\.steps ${field} / .*: brief$`, "m");
  expect(open(() => {})).not.toMatch(said);
  expect(
    open((plan) => Object.assign(hold(plan), { [field]: field === "minutes" ? undefined : " " })),
  ).toMatch(said);
};
const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
const demo = () => readFileSync(new URL("../../scenarios/demo.json", import.meta.url), "utf8");

test("a rehearsal is a hold: without its evidence it is an open item", () => blank("evidence"));
test("a hold point that nobody releases is an open item", () => blank("releasedBy"));
test("a step without minutes is an open item", () => blank("minutes"));
test("a step without a voice that commands is an open item", () => blank("voice"));

test("channels, their tests and the channel of each step are asked for", () => {
  blank("channel");
  const none = open((plan) => Object.assign(people(plan), { channels: [{ name: "1", uses: "crane" }] }));
  expect(none).toMatch(/people\.channels: no channel of the transporter crews/);
  const tests = ["1", "2", "both"].map((channel) => ({
    channel,
    date: "2026-05-06",
    by: "somebody",
    result: "good",
  }));
  expect(open((plan) => Object.assign(people(plan), { tests }))).not.toContain("people.tests");
  expect(open((plan) => Object.assign(people(plan), { tests: tests.slice(1) }))).toMatch(
    /is recorded of channel 1$/m,
  );
});

test("a plan without a word that stops all is told", () => {
  expect(open(() => {})).not.toContain("people.stopWord");
  expect(open((plan) => Object.assign(people(plan), { stopWord: "" }))).toContain("people.stopWord");
});

test("steps that name no zone to keep empty are told", () => {
  expect(open(() => {})).not.toContain("steps exclusion");
  const bare = open((plan) => {
    for (const s of plan.sets[0].steps.slice(0, 2)) s.exclusion = "";
  });
  expect(bare).toMatch(/steps exclusion .*: lash-down, brief/);
});

test("a road below without its state by step is told", () => {
  expect(open(() => {})).not.toContain("site.below.states");
  const unsaid = open((plan) => Object.assign(plan.site.below ?? {}, { states: undefined }));
  expect(unsaid).toContain("the road below is shut");
});

test("the plan takes who sealed the drawings in its notes, and readings by set and step", () => {
  const plan = JSON.parse(demo());
  plan.header.notes = "sealed by nobody (invented)";
  const entry = {
    set: "set-1",
    step: "landing",
    at: "14:00",
    by: "surveyor",
    readings: [{ what: "far L", height_mm: 2 }],
  };
  plan.record = [entry];
  const read = readPlan(JSON.stringify(plan));
  expect(read.ok && [read.plan.header.notes, read.plan.record]).toEqual([plan.header.notes, [entry]]);
  delete plan.record[0].step;
  expect(readPlan(JSON.stringify(plan)).ok).toBe(false);
});

test("local codes, owners and labour law: the README says that they govern, and each standing limit that it is a default", () => {
  expect(readme).toMatch(/Local codes, the owner's specification and labour law govern/);
  const plan = readScenario("demo", (p) => {
    p.limits = { use: [], rules: [], overrides: [] };
  });
  const standing = limitNames.flatMap((name) => limitOf(plan, name) ?? []);
  expect(standing.length).toBeGreaterThan(20);
  expect(new Set(standing.map((limit) => limit.chosenBy))).toEqual(new Set(["default"]));
});

test("every limit says where its value is from, and what was not read is said to be from memory", () => {
  const plan = readScenario("demo");
  const sources = [
    ...limitNames.flatMap((name) => limitOf(plan, name)?.source ?? []),
    ...Object.values(readyRules).map((rule) => rule.source),
  ];
  expect(sources.filter((source) => source.trim() === "")).toEqual([]);
  expect(sources.some((source) => source.includes("from memory"))).toBe(true);
});

test("invented data is named with every number that leaves the program", () => {
  const plan = readScenario("one-girder", (p) => onlyStands(p));
  const result = solvePlan(plan);
  expect(originOf(result, plan).caution).toMatch(/^Invented data\. /);
  expect(originOf(result, { ...plan, invented: false }).caution).not.toContain("Invented");
  for (const crane of plan.cranes) expect(crane.chart.invented).toBe(true);
});

test("that motion counts only by named allowances is printed with the coverage", () => {
  expect(coverageText()).toMatch(/Results are quasi-static unless stated/);
  expect(limitOf(readScenario("demo"), "acceleration along")?.source).toMatch(/at a start or stop/);
});
