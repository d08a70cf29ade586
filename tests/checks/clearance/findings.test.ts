// Findings of clearances against distances worked out by hand from the numbers of the demonstration day, and their traces.

import { describe, expect, test } from "vitest";
import { lineLimit } from "../../../src/checks/clearance/limits.ts";
import { type Clearance, type Finding, solvePlan, type Traced, traceOf } from "../../../src/checks/index.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { scenario, upTo } from "../../sequence/plans.ts";
import { expectTrue } from "../girders/formulas.ts";

const box = (name: string, x: [number, number], y: [number, number], z: [number, number]) => ({
  name,
  kind: "box" as const,
  from: { chainage_m: x[0], y_m: y[0], elevation_m: z[0] },
  to: { chainage_m: x[1], y_m: y[1], elevation_m: z[1] },
});

const cut = (id: string, change: (plan: Plan) => void): Plan =>
  scenario("demo", (plan) => {
    plan.sets[0].steps = upTo(plan, id);
    change(plan);
  });

const ofCheck = (findings: readonly Finding[]) => findings.filter((f) => f.check === "clearance");

describe("things beside the way of the transporters", () => {
  // Bunks reach to the outer girder, 1.6 m, and 0.45 m on; the set stands 0.2 m right of the axis.
  const reach = 1.6 + 0.45;
  const plan = cut("first-roll", (p) => {
    p.site.obstacles.push(
      box("kiosk", [180, 182], [2, 4], [30, 34]),
      box("post", [186, 186.4], [-5, -2.15], [30, 32.5]),
    );
  });
  const result = solvePlan(plan);
  const found = ofCheck(result.findings);
  const about = (subject: string): Finding => {
    const one = found.find((f) => f.subject === subject);
    if (one === undefined) throw new Error(subject);
    return one;
  };
  // The set leans with the crossfall of the path, 0.5 to 0.6 %, which moves a bunk 1.6 m up by 10 mm at most.
  const LEAN = 0.01;

  test("a bunk that passes 0.15 m beside a kiosk is a caution, with its place from and to", () => {
    const front = about("front to kiosk");
    expect(front.level).toBe("caution");
    expect(Math.abs((front.value ?? 0) - (2 - (reach - 0.2)))).toBeLessThan(LEAN);
    expect(front.limit).toBe(0.3);
    // The bunk is 0.5 m long, stands at 174 m and goes 16 m; a corner is 0.3 m off when it is `ahead` before the kiosk.
    const ahead = Math.sqrt(0.3 ** 2 - (front.value ?? 0) ** 2);
    expect(front.from?.progress).toBeCloseTo((180 - ahead - 174.25) / 16, 3);
    expect(front.to?.progress).toBeCloseTo((182 + ahead - 173.75) / 16, 3);
  });

  test("a bunk that runs into a post is a stop with a value below zero, in words too", () => {
    const front = about("front to post");
    expect(front.level).toBe("stop");
    expect(Math.abs((front.value ?? 0) - (2.15 - (reach + 0.2)))).toBeLessThan(LEAN);
    expect(front.words).toMatch(/-0\.\d+ m, bunk of front at 0 m lies 0\.\d+ m within post/);
  });

  test("the girder beside the kiosk: half its bottom flange, 0.3 or 0.325 m", () => {
    const value = about("set to kiosk").value ?? 0;
    expect(Math.abs(value - (2 - (1.6 - 0.2 + 0.325)))).toBeLessThan(LEAN + 0.02);
  });

  test("what nothing comes near is not told", () => {
    expect(found.some((f) => f.subject.includes("rear to"))).toBe(false);
  });
});

describe("an overhead line", () => {
  const line = (kV?: number, clearance_m?: number) => ({
    ...box("line", [223.6, 223.6], [-30, 30], [94, 94]),
    kind: "overhead line" as const,
    ...(kV === undefined ? {} : { voltage_kV: kV }),
    ...(clearance_m === undefined ? {} : { clearance_m }),
  });

  test("its distance by voltage: 29 CFR 1926.1408 Table A, from memory, in feet of 0.3048 m", () => {
    const feet = (kV?: number) => (lineLimit(line(kV))?.value ?? Number.NaN) / 0.3048;
    expect([10, 50, 51, 200, 345, 500, 750, 1000].map(feet).map((x) => Math.round(x * 1e6) / 1e6)).toEqual([
      10, 10, 15, 15, 20, 25, 35, 45,
    ]);
    expect(feet()).toBeCloseTo(20, 9);
    expect(lineLimit(line(1200))).toBeNull();
    expect(lineLimit(line(1200, 14))?.value).toBe(14);
  });

  test("4 m above the tip of a boom, the tip where the crane's triangle has it", () => {
    const plan = cut("far-hook-up", (p) => {
      p.site.obstacles.push(line(132));
    });
    const c = plan.cranes[0];
    // The tip stands over the pick: 138 + 16 + 14.6 + 55 m, and 0.2 m right of the axis.
    const [x, y] = [223.6, -0.2];
    const reach = Math.hypot(c.position.chainage_m - x, c.position.y_m - y) - c.boomFootForward_m;
    const tip = c.position.elevation_m + c.boomFootHeight_m + Math.sqrt(c.boomLength_m ** 2 - reach ** 2);
    const [found] = ofCheck(solvePlan(plan).findings).filter(
      (f) => f.subject === "boom of far-crane to line",
    );
    expect(found.level).toBe("stop");
    expect(found.limit).toBeCloseTo(15 * 0.3048, 9);
    // The head of the boom is 0.56 m wide, 0.2 m before the tip.
    expect(Math.abs((found.value ?? 0) - (94 - tip))).toBeLessThan(0.56 / Math.SQRT2 + 0.2);
  });

  test("an unknown voltage is missing data, one that the table has not is a limit not set", () => {
    const notes = (one: ReturnType<typeof line>) =>
      solvePlan(
        scenario("demo", (p) => {
          p.sets[0].steps = [];
          p.site.obstacles.push(one);
        }),
      ).findings.map((f) => `${f.check}: ${f.subject}`);
    expect(notes(line())).toContain("missing data: site.obstacles[0].voltage_kV");
    expect(notes(line(1200))).toContain("limit not set: clearance of line");
  });
});

describe("the whole day", () => {
  const plan = scenario("demo", (p) => {
    p.limits.use.push("sway-1");
    p.limits.overrides.push(
      { limit: "clearance tail swing", value: 7, source: "test", chosenBy: "test" },
      { limit: "clearance set to structure", value: 0.4, source: "test", chosenBy: "test" },
    );
  });
  const result = solvePlan(plan);
  const [set] = result.sets;
  const list = set.clearances?.list ?? [];
  const least = (subject: string): Clearance =>
    list.filter((c) => c.subject === subject).reduce((a, b) => (b.distance < a.distance ? b : a));

  test("tail swing to a passing transporter: crane, tail radius and bunk, all level", () => {
    // Near crane 15 m left, its tail 6.2 m; bunk 1.85 m left of the axis.
    const c = least("tail swing of near-crane to front");
    expect(c.distance).toBeCloseTo(15 - 6.2 - 1.85, 2);
    const found = ofCheck(result.findings).find((f) => f.subject === c.subject);
    expect(found?.level).toBe("stop");
    expect(found?.value).toBeCloseTo(6.95, 2);
  });

  test("the landed set ends 0.5 m before the backwall, and above its top", () => {
    const c = least("set to near backwall");
    expect(c.distance).toBeGreaterThan(0.49);
    expect(c.distance).toBeLessThan(0.56);
  });

  test("sway is added while nothing but lines holds the set: 1 % of the longest line", () => {
    const lower = list.find(
      (c) => c.subject === "set to near backwall" && set.steps[c.step].step.id === "lower",
    );
    // The longest line is the far one: from a tip some 60 m above the set down to the block above spreader and slings.
    expect(lower?.sway).toBeGreaterThan(0.4);
    expect(lower?.sway).toBeLessThan(0.75);
    const found = ofCheck(result.findings).find((f) => f.subject === "set to near backwall");
    expect(found?.words).toMatch(/of it for sway/);
    const rolled = list.find(
      (c) => c.subject === "set to near abutment" && set.steps[c.step].step.id === "first-roll",
    );
    expect(rolled?.sway).toBe(0);
  });

  test("over its seats a set may touch its bearings, and no distance to the abutment is told", () => {
    const after = set.steps.findIndex((s) => s.step.id === "lower");
    expect(list.some((c) => c.subject === "set to near abutment" && c.step >= after)).toBe(false);
    expect(list.some((c) => c.subject === "set to near backwall" && c.step >= after)).toBe(true);
  });

  test("a transporter is kept clear of the set once it has left it, not while it carries", () => {
    const out = set.steps.findIndex((s) => s.step.id === "front-out");
    expect(list.filter((c) => c.subject === "set to front").map((c) => c.step)[0]).toBe(out);
  });

  test("traces are the distance of their two points, and meet what the sweep found", () => {
    const subjects = [...new Set(list.map((c) => c.subject))];
    let traced = 0;
    for (const subject of subjects) {
      const c = least(subject);
      const asked = { check: "clearance", subject, set: set.setId, step: c.step, progress: c.progress };
      const one: Traced = traceOf(plan, result, asked);
      if (!one.found) continue;
      traced++;
      expectTrue(one.trace, plan);
      expect(one.value.value).toBe(one.reading.value);
      // The pose is solved again, from another neighbour.
      expect(Math.abs(one.value.value - c.distance), subject).toBeLessThan(1e-6 + 1e-9 * c.distance);
    }
    expect(traced).toBeGreaterThan(0.8 * subjects.length);
  });
});

test("sets landed before stand in the way of the next: as deep as with no camber, as high as with all of it", () => {
  const plan = scenario("demo", (p) => {
    const [one] = p.sets;
    const next = structuredClone(one);
    next.id = "set-2";
    next.steps = next.steps.slice(0, 3);
    one.steps = [];
    for (const l of p.lashings) l.set = "set-1";
    p.accept = [];
    p.expected = [];
    next.steps = next.steps.filter((s) => s.do === "roll");
    p.sets.push(next);
  });
  const result = solvePlan(plan, { sets: ["set-2"] });
  const c = result.sets[0].clearances?.list.find((one) => one.subject === "set to landed set set-1");
  // After 16 m the nose stands at 214 m, 2.6 m into the landed set, which lies from 211.4 m on at the same y but for 0.2 m.
  expect(c?.distance).toBeLessThan(0);
  expect(c?.progress).toBeGreaterThan(0.8);
});
