// Radius with all that makes it grow, and lines out of plumb. Trigonometry; that a level error and a leaning line count is
// common practice, no source.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { levelGrowth, plumbAt } from "../../../src/checks/cranes/reach.ts";
import { reachAt } from "../../../src/checks/index.ts";
import { byId, type Crane } from "../../../src/plan/index.ts";
import { poseAt } from "../../../src/sequence/index.ts";
import { near, oneGirderAfter, ranScenario, scenario, within } from "../../sequence/plans.ts";
import { readingOf } from "../readings.ts";
import { madePose } from "./made.ts";

const DEGREE = Math.PI / 180;
const machine = (): Crane => byId(scenario("one-girder").cranes, "far-crane");
/** The far crane stands at chainage 86, y 6. */
const at = (tip: [number, number], pulls: [number, number], lifts = 100e3) =>
  madePose({ crane: "far-crane", tip, lifts, pulls, rope: 20 });

describe("level error", () => {
  test("half a degree at a tip 52 m up is 0.45 m", () => {
    within(levelGrowth(100 * Math.tan(0.5 * DEGREE), 52), 0.45, 0.005);
  });

  test("none where the plan states none", () => expect(levelGrowth(undefined, 52)).toBe(0));

  test("of the way counts while the crane walks, and its own again afterwards", () => {
    const r = oneGirderAfter(
      "far-hook-up",
      { do: "walk", crane: "far-crane", dx_m: -1, dy_m: 0, outOfLevel_pct: 1 },
      { do: "hold", id: "after", releasedBy: "x", evidence: "y" },
    );
    const crane = byId(r.plan.cranes, "far-crane");
    const reach = (id: string) => reachAt(r.ctx, crane, r.end(id), 0);
    const [walking, after] = [reach("walk"), reach("after")];
    near((walking?.level ?? 0) / (walking?.height ?? 0), 0.01, 1e-12);
    near((after?.level ?? 0) / (after?.height ?? 0), 0.002, 1e-12);
    expect(readingOf(r.ctx, r.end("walk"), "crane level", "far crane")).toMatchObject({
      value: 0.01,
      limit: 0.005,
    });
  });
});

describe("a line out of plumb", () => {
  test("a degree at 90 t pulls 1.6 t across the boom", () => {
    // Boom along -x from (86, 6): the pull along y is all across it.
    const plumb = plumbAt(machine(), at([66, 6], [0, 90e3 * Math.tan(DEGREE)], 90e3));
    within((plumb?.side ?? 0) * 90, 1.6, 0.05);
    near((plumb?.side ?? 0) * 90, 90 * Math.tan(DEGREE), 1e-12);
    within(plumb?.radial ?? 1, 0, 1e-12);
  });

  test("a pull toward the tip from further out is outward, from nearer inward", () => {
    // The boom points to -x; a set further out is pulled to +x, toward the crane.
    near(plumbAt(machine(), at([66, 6], [3e3, 0]))?.radial ?? 0, 0.03, 1e-12);
    near(plumbAt(machine(), at([66, 6], [-3e3, 0]))?.radial ?? 0, -0.03, 1e-12);
  });

  test("both parts make up the whole, whatever the direction (seed 3)", () => {
    const metre = fc.double({ min: -30, max: 30, noNaN: true });
    fc.assert(
      fc.property(metre, metre, metre, metre, (x, y, px, py) => {
        fc.pre(Math.hypot(x, y) > 1);
        const plumb = plumbAt(machine(), at([86 + x, 6 + y], [1e3 * px, 1e3 * py]));
        if (plumb === null) throw new Error("no line");
        within(Math.hypot(plumb.radial, plumb.side), plumb.total, 1e-12);
        within(plumb.total, Math.hypot(px, py) / 100, 1e-12);
      }),
      { seed: 3 },
    );
  });

  test("outward it adds what the load hangs further out; inward it takes nothing off", () => {
    const { ctx } = ranScenario("one-girder");
    const crane = machine();
    const reach = (pull: number) => reachAt(ctx, crane, at([66, 6], [pull, 0]), 0);
    near(reach(3e3)?.lean ?? 0, 0.03 * 20, 1e-12);
    expect(reach(-3e3)?.lean).toBe(0);
    near(reach(3e3)?.radius ?? 0, 20 + 0.6 + 0.002 * (reach(0)?.height ?? 0), 1e-12);
  });

  test("a load on which the line hangs slack has none", () => {
    expect(plumbAt(machine(), at([66, 6], [0, 0], 0))).toBeNull();
  });
});

describe("boom side load", () => {
  // The crane goes 2 m aside with its hook going along.
  const aside = (change: (crane: Crane) => void) => {
    const r = oneGirderAfter("far-takes", {
      do: "walk",
      crane: "far-crane",
      dx_m: 0,
      dy_m: 0.5,
      hook: "goes along",
    });
    const plan = structuredClone(r.plan);
    change(byId(plan.cranes, "far-crane"));
    const pose = poseAt(r.ctx, r.step("walk"), 1);
    return { r, pose, reading: readingOf({ ...r.ctx, plan }, pose, "boom side load", "far crane") };
  };

  test("is the part across the boom of all that hangs, as if all of it leaned", () => {
    const { r, pose, reading } = aside(() => {});
    const gross = readingOf(r.ctx, pose, "hook load", "far crane").value;
    const side = plumbAt(byId(r.plan.cranes, "far-crane"), pose)?.side ?? 0;
    near(reading.value, side * gross, 1e-12);
    // Half a metre over a line of some 20 m; the bunks give a little.
    const rope = pose.state.hoists?.[0].ropeLength ?? 1;
    within(side, 0.5 / rope, 0.1 * (0.5 / rope));
    near(reading.limit, 0.02 * gross, 1e-12);
    expect(reading.source ?? "").toBe("");
  });

  test("the maker's own limit stands in place of the usual one", () => {
    const { r, pose, reading } = aside((crane) => {
      crane.allowedSideLoad_pct = 0.5;
    });
    near(reading.limit, 0.005 * readingOf(r.ctx, pose, "hook load", "far crane").value, 1e-12);
  });
});
