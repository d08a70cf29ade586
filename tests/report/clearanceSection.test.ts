// The section on clearances: what it prints is what the Result has, and a pair that keeps its distance is printed once.

import { expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { sections } from "../../src/report/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { scenario, upTo } from "../sequence/plans.ts";

test("least distances step by step, with their limits", () => {
  const plan = scenario("demo", (p) => {
    p.sets[0].steps = upTo(p, "first-roll");
    p.limits.overrides.push({ limit: "clearance tail swing", value: 8, source: "test", chosenBy: "test" });
  });
  const [set] = solvePlan(plan).sets;
  const section = sections.find((s) => s.name === "clearance");
  if (section === undefined) throw new Error("no such section");
  const work = section.begin(prepareContext(plan, set.setId), set);
  while (work.next());
  const [table] = work.tables();
  const rows = table.rows.filter(([, pair]) => pair === "tail swing of near-crane to front");
  // It stands still in the first two steps, and comes nearer in the third.
  expect(rows.map(([step]) => step)).toEqual(["1 lash-down", "3 first-roll"]);
  const c = set.clearances?.list.find((one) => one.step === 2 && one.subject === rows[1][1]);
  if (c === undefined) throw new Error("no such pair");
  const [, , least, , within, limit, short] = rows[1];
  expect([least, within, limit, short]).toEqual([
    c.distance.toFixed(3),
    c.within.toFixed(3),
    "8.000",
    (8 - c.distance).toFixed(3),
  ]);
  expect(table.rows.every((row) => row.length === table.head.length)).toBe(true);
});
