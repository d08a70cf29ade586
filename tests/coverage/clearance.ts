// Witnesses of the clearances: distances known by hand from the numbers of the demonstration day.

import { expect } from "vitest";
import type { Finding, Result } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { readScenario } from "./plans.ts";
import type { Witness } from "./witness.ts";

const keep = (plan: Plan, last: string): void => {
  const [set] = plan.sets;
  set.steps = set.steps.slice(0, set.steps.findIndex((s) => s.id === last) + 1);
};

/** A post beside the path, and an overhead line that the far boom comes to stand below. */
const beset = readScenario("demo", (plan) => {
  keep(plan, "far-hook-up");
  plan.site.obstacles.push(
    {
      name: "post",
      kind: "box",
      from: { chainage_m: 186, y_m: 2, elevation_m: 30 },
      to: { chainage_m: 186.4, y_m: 3, elevation_m: 32.5 },
      clearance_m: 0.25,
    },
    {
      name: "line",
      kind: "overhead line",
      from: { chainage_m: 223.6, y_m: -30, elevation_m: 94 },
      to: { chainage_m: 223.6, y_m: 30, elevation_m: 94 },
      voltage_kV: 132,
    },
  );
});

const strict = readScenario("demo", (plan) => {
  const by = { source: "asked for by the owner", chosenBy: "owner" };
  plan.limits.overrides.push({ limit: "clearance set to structure", value: 0.6, ...by });
  plan.limits.overrides.push({ limit: "clearance tail swing", value: 7, ...by });
});

const told = (result: Result, subject: string): Finding | undefined =>
  result.findings.find((f) => f.check === "clearance" && f.level === "stop" && f.subject === subject);

export const clearanceWitnesses: Witness[] = [
  {
    check: "clearance",
    ids: ["CR-16"],
    title:
      "the tip of a boom below a line of 132 kV, 3.7 m off by the crane's triangle, where 15 ft are asked for",
    sees: (solve) => {
      const found = told(solve(beset), "boom of far-crane to line");
      expect(found?.limit).toBeCloseTo(15 * 0.3048, 6);
      // 94 m less 30.9 + 2.4 + the rise of 78 m of boom over 53.29 m of reach, 56.96 m, and half of a head 0.56 m wide.
      expect(found?.value).toBeGreaterThan(94 - 90.26 - 0.6);
      expect(found?.value).toBeLessThan(94 - 90.26 + 0.2);
    },
  },
  {
    check: "clearance",
    ids: ["CR-16"],
    title: "a tail of 6.2 m, 15 m left of the path, 6.95 m from a passing bunk where 7 m are asked for",
    sees: (solve) => {
      expect(told(solve(strict), "tail swing of near-crane to front")?.value).toBeCloseTo(15 - 6.2 - 1.85, 2);
    },
  },
  {
    check: "clearance",
    ids: ["FT-8"],
    title: "a set that is lowered 0.5 m before a backwall where 0.6 m are asked for",
    sees: (solve) => {
      const value = told(solve(strict), "set to near backwall")?.value ?? 0;
      expect(value).toBeGreaterThan(0.49);
      expect(value).toBeLessThan(0.56);
    },
  },
  {
    check: "clearance",
    ids: ["TR-8"],
    title: "a bunk that passes 0.15 m beside a post to which 0.25 m are asked for",
    sees: (solve) => {
      // Bunks reach 1.6 + 0.45 m, the set stands 0.2 m right of the axis; a crossfall of 0.6 % moves a bunk by 10 mm.
      const found = told(solve(beset), "front to post");
      expect(Math.abs((found?.value ?? 0) - 0.15)).toBeLessThan(0.01);
      expect(found?.limit).toBe(0.25);
    },
  },
];
