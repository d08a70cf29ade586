// Every plan in scenarios/: its CSV alone is in equilibrium with the masses that its plates and parts have.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { readPlan, sentence } from "../../src/plan/index.ts";
import { reactionsCsv } from "../../src/report/index.ts";
import { recompute } from "../tools/recompute.mjs";

const folder = new URL("../../scenarios/", import.meta.url);
const plans = readdirSync(folder).flatMap((name): [string, string][] => {
  const text = readFileSync(new URL(name, folder), "utf8");
  return name.endsWith(".json") && /"format"\s*:\s*"handspan-plan"/.test(text) ? [[name, text]] : [];
});

describe("equilibrium summed from the reactions' file alone", () => {
  test("the demo is among the plans", () => {
    expect(plans.map(([name]) => name)).toContain("demo.json");
  });

  test.each(plans)("%s", (_, text) => {
    const read = readPlan(text);
    if (!read.ok) throw new Error(read.errors.map(sentence).join("\n"));
    const found = recompute(reactionsCsv(solvePlan(read.plan), read.plan), JSON.parse(text));
    expect(found.poses).toBeGreaterThan(read.plan.sets.length);
    for (const [what, { error, bound }] of Object.entries(found.worst))
      console.log(`${what}: ${error.toExponential(2)} of ${bound.toExponential(2)}`);
    expect(found.faults.slice(0, 5)).toEqual([]);
  });
});
