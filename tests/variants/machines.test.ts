// Charts and stiffness lower than thought, picks at another place: the findings against hand statics, as in the masses.

import { expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { judge } from "./hand/judge.ts";
import { tellsOf } from "./told.ts";
import { day } from "./variants.ts";

tellsOf("chart lowered", { "hook load": 20 });
tellsOf("stiffness lowered", { "cap reached": 5 });
tellsOf("pick moved", { "cap reached": 3, "meant to carry": 9, "chart left": 3 });

test("the day itself asks for nothing; with a chart that is too low it does, and neither answers for the other", () => {
  const whole = day();
  const low = day((plan) => {
    for (const crane of plan.cranes) for (const row of crane.chart.rows) row.rated_t *= 0.5;
  });
  const [ofWhole, ofLow] = [solvePlan(whole), solvePlan(low)];
  expect(judge(whole, ofWhole).asked.size).toBe(0);
  expect(judge(whole, ofWhole).wrong).toEqual([]);
  expect(judge(low, ofLow).wrong).toEqual([]);
  expect(judge(low, ofWhole).wrong).not.toEqual([]);
  expect(judge(whole, ofLow).wrong).not.toEqual([]);
});
