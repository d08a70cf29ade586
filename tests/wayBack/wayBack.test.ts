// Ways back of the one-girder plan and of the day with planted faults: proposed ones, stated ones, and those that fail.
// Bounds of the check itself: 0.5 % of W in every band, 10 mm at every end of a girder.

import { describe, expect, test } from "vitest";
import { type Finding, type WayBack, waysBackOf } from "../../src/checks/index.ts";
import type { Plan, WayBackStep } from "../../src/plan/index.ts";
import { MOTIONS, poseAt, runSteps } from "../../src/sequence/index.ts";
import { type Solved, solved, whole } from "../backed/solved.ts";
import { within } from "../sequence/plans.ts";

interface Tried extends Solved {
  ways: WayBack[];
  findings: Finding[];
  way: (id: string) => WayBack;
}

function tried(s: Solved): Tried {
  const result = whole(s, { backed: false });
  const ways = result.sets[0].waysBack ?? [];
  const findings = result.findings.filter((f) => f.check === "way back" || f.check === "no way back");
  return { ...s, ways, findings, way: (id) => ways[s.step(id)] };
}

/** The one-girder plan with the steps up to one, and this way back stated for that one. */
function stating(id: string, wayBack: object[], change: (plan: Plan) => void = () => {}): Tried {
  return tried(
    solved("one-girder", (plan) => {
      const { steps } = plan.sets[0];
      const i = steps.findIndex((s) => s.id === id);
      plan.sets[0].steps = steps.slice(0, i + 1);
      plan.accept = plan.accept.filter((a) => plan.sets[0].steps.some((s) => s.id === a.step));
      Object.assign(steps[i], { wayBack });
      change(plan);
    }),
  );
}

const trains = ["rear aft", "rear left", "rear right", "front aft", "front left", "front right"];
const back = (distance_m: number, carries = trains) => ({ id: "roll home", do: "roll", distance_m, carries });
const one = tried(solved("one-girder"));

describe("proposed ways back", () => {
  test("every step of this plan has one", () => {
    expect(one.ways.map((w) => w.source)).toEqual(one.set.steps.map(() => "proposed"));
    expect(one.findings).toEqual([]);
    for (const w of one.ways) expect(w.from.map((f) => f.progress)).toEqual([0, 0.5, 1]);
    for (const w of one.ways.filter((x) => x.source === "proposed"))
      for (const f of w.from) expect(f.ok, `${w.step}: ${f.words}`).toBe(true);
  });

  test("are the step the other way, cut to what was done", () => {
    const commands = (id: string, k: number): WayBackStep[] => one.way(id).from[k].steps;
    expect(commands("roll-out", 0)).toEqual([]);
    expect(commands("roll-out", 1)).toMatchObject([{ do: "roll", distance_m: -5, carries: trains }]);
    expect(commands("roll-out", 2)).toMatchObject([{ do: "roll", distance_m: -10 }]);
    expect(commands("over", 2)).toMatchObject([{ do: "bring over", dx_m: -8.5 }]);
    expect(commands("far-hook-up", 2)).toMatchObject([{ do: "unhook", crane: "far-crane" }]);
    expect(commands("far-off", 2)).toMatchObject([{ do: "hook up", crane: "far-crane" }]);
    // A train that left drives back under the set, to the bunks that it stood at: the front one's deck at 20 m.
    expect(commands("front-out", 2)).toMatchObject([{ do: "rebunk", transporter: "front", deckAt_m: 20 }]);
    expect(commands("rear-out", 1)).toMatchObject([{ do: "rebunk", transporter: "rear", deckAt_m: 4 }]);
    const [lower] = commands("lower", 1);
    expect(lower).toMatchObject({ do: "hoist up" });
    if (lower.do === "hoist up") for (const h of lower.hooks) within(h.height_mm, 500, 1e-6);
  });

  test("taking load is given back by the slack taken in and the height that the load needed", () => {
    const run = one.set.steps[one.step("far-takes")];
    const [command] = one.way("far-takes").from[2].steps;
    if (command?.do !== "hoist down") throw new Error("found another command");
    // The two ends that the search of the step found: slack and height, m.
    within(command.hooks[0].height_mm, (run.ends[0] + run.ends[1]) * 1000, 1e-6);
  });

  test("a jacking down to a gap is jacked up by the height that was found", () => {
    const run = one.set.steps[one.step("rear-down")];
    const [command] = one.way("rear-down").from[2].steps;
    if (command?.do !== "jack up" || !("height_mm" in command.until))
      throw new Error("found another command");
    within(command.until.height_mm, run.ends[0] * 1000, 1e-6);
    expect(command.groups).toEqual(["rear aft", "rear left", "rear right"]);
  });

  test("lead back in forces and place when they are run once more here", () => {
    const W = one.set.weight;
    for (const w of one.ways.filter((x) => x.source === "proposed")) {
      const run = one.set.steps[w.step];
      const end = w.from[2];
      if (end.steps.length === 0) continue;
      const here = poseAt(one.ctx, run, 1).situation;
      const again = runSteps(one.ctx, here, end.steps, []);
      const start = poseAt(one.ctx, run, 0);
      const last = again.count - 1;
      const n = again.supports.length;
      one.ctx.supports.forEach((s, j) => {
        if (!s.band) return;
        within(again.forces[last * n + j] || 0, start.forces[j] || 0, 0.005 * W);
      });
      within(again.motions[last * MOTIONS.length], start.motions[0], 1e-9);
    }
  });

  test("nothing is commanded to move in a hold, and nothing has moved at a start", () => {
    const demo = tried(
      solved("demo", (plan) => {
        plan.sets[0].steps = plan.sets[0].steps.slice(0, 2);
        plan.accept = [];
      }),
    );
    expect(demo.way("brief").source).toBe("proposed");
    for (const f of demo.way("brief").from) expect([f.ok, f.steps.length]).toEqual([true, 0]);
    expect(demo.way("lash-down").from[2].steps).toMatchObject([{ do: "unlash" }]);
  });
});

describe("stated ways back", () => {
  test("a good one is the plan's, from its end as stated and from its middle cut to the half", () => {
    const t = stating("roll-out", [back(-10)]);
    const way = t.way("roll-out");
    expect(way.source).toBe("plan");
    expect(way.from.map((f) => f.ok)).toEqual([true, true, true]);
    expect(way.from[1].steps).toMatchObject([{ do: "roll", distance_m: -5 }]);
    expect(way.from[2].steps).toMatchObject([{ do: "roll", distance_m: -10 }]);
    expect(t.findings).toEqual([]);
  });

  test("one that stops short is a stop that says how far it is off, on a level path where no force tells", () => {
    const t = stating("roll-out", [back(-8)]);
    expect(t.findings.map((f) => [f.level, f.check, f.subject])).toEqual([["stop", "way back", "roll-out"]]);
    // 10 m out and 8 m back; and 5 m out and 8 m back, as cutting both in half does not mend it either.
    expect(t.way("roll-out").from[2].words).toMatch(/ends 2000 mm from where the step began/);
    expect(t.way("roll-out").from[1].words).toMatch(/ends 3000 mm/);
  });

  test("one whose list of carrying supports is wrong is a stop", () => {
    const t = stating("roll-out", [back(-10, trains.slice(1))]);
    expect(t.way("roll-out").from[2].ok).toBe(false);
    expect(t.findings[0].words).toMatch(/on the way back \('roll home'\): rear aft is meant to be free/);
    for (const f of t.way("roll-out").from[2].findings)
      expect(f.worst).toEqual({ step: t.step("roll-out"), progress: 1 });
  });

  test("one without equilibrium says what falls", () => {
    // With the front train gone the girder on its rear bunk tips: CG 15 m, bunk 4 m.
    const out = {
      id: "wrong way",
      do: "drive out",
      transporter: "front",
      toward: "right",
      distance_m: 8,
      carries: [],
    };
    const t = stating("roll-out", [out]);
    expect(t.way("roll-out").from[2].words).toMatch(/no equilibrium in 'wrong way': .*tips end up/);
    expect(t.findings[0].level).toBe("stop");
  });

  test("one that reaches a cap is a stop", () => {
    // Given back whole, then taken up once more to 40 kN under a cap of 30 kN.
    const list = [
      { id: "give back", do: "hoist down", hooks: [{ crane: "far-crane", height_mm: 200 }], carries: trains },
      {
        id: "take again",
        do: "take load",
        crane: "far-crane",
        until: { load_kN: 40 },
        loadCap_kN: 30,
        heightCap_mm: 300,
        carries: [...trains, "far crane"],
      },
      {
        id: "give back again",
        do: "hoist down",
        hooks: [{ crane: "far-crane", height_mm: 200 }],
        carries: trains,
      },
    ];
    const t = stating("far-takes", list);
    const end = t.way("far-takes").from[2];
    expect(end.ok).toBe(false);
    expect(end.findings.map((f) => f.check)).toEqual(["cap reached"]);
  });

  test("several steps in a row are run one after the other", () => {
    const t = stating("roll-out", [back(-4), { ...back(-6), id: "and home" }]);
    expect(t.way("roll-out").from.map((f) => f.ok)).toEqual([true, true, true]);
  });

  test("one that cannot be cut is run as stated from the middle too", () => {
    // Slack enough for the whole height: from the middle the hook ends slack all the same.
    const list = [
      { id: "give back", do: "hoist down", hooks: [{ crane: "far-crane", height_mm: 200 }], carries: trains },
    ];
    const t = stating("far-takes", list);
    expect(t.way("far-takes").from.map((f) => f.ok)).toEqual([true, true, true]);
  });
});

describe("limits on the way back", () => {
  test("an overload that the step itself has is no fault of its way back, a worse one is", () => {
    const faults = tried(solved("planted-faults"));
    // Half of the rear train is overloaded while the front train is jacked down, and no more so on its way up.
    expect(faults.findings.some((f) => f.subject === "front-down")).toBe(false);
    expect(faults.way("front-down").source).toBe("proposed");
    // Rolling back, the line leans the other way in every bite and the groups get more than on the way out.
    const roll = faults.way("roll-with-far");
    expect(roll.source).toBe("none");
    expect(roll.from[2].findings.map((f) => f.check)).toContain("group load");
    const own = faults.result.findings.find((f) => f.check === "group load" && f.subject === "rear left");
    const worse = roll.from[2].findings.find((f) => f.check === "group load" && f.subject === "rear left");
    expect(worse?.value).toBeGreaterThan(own?.value ?? Number.POSITIVE_INFINITY);
    // Past the point of no return is a note at that step, and no stop.
    const notes = faults.findings.map((f) => [f.level, f.check, f.subject]);
    expect(notes).toEqual([["note", "no way back", "roll-with-far"]]);
    expect(faults.findings[0].from).toEqual({ step: faults.step("roll-with-far"), progress: 0.5 });
    expect(faults.findings[0].words).toMatch(/past the point of no return.*group load of rear left/);
  });

  test("no scenario states a way back that fails", () => {
    const demo = tried(solved("demo"));
    expect(demo.findings).toEqual([]);
    expect(demo.ways.filter((w) => w.source === "plan").length).toBe(3);
  });
});

describe("the work itself", () => {
  test("can be broken off, and then there is no answer", () => {
    let calls = 0;
    expect(waysBackOf(one.ctx, one.set, () => ++calls < 2)).toBeNull();
    expect(calls).toBe(2);
  });

  test("gives the same answer twice and leaves the result that it was given as it was", () => {
    expect(JSON.stringify(waysBackOf(one.ctx, one.set))).toBe(JSON.stringify(one.ways));
    expect(one.result.sets[0].waysBack).toBeUndefined();
  });

  test("a step that is not solved has no way back, and is no finding of this check", () => {
    const t = stating("roll-out", [back(-10)], (plan) => {
      const out = {
        id: "gone",
        do: "drive out",
        transporter: "front",
        toward: "right",
        distance_m: 8,
        carries: [],
      };
      plan.sets[0].steps.push(out as unknown as (typeof plan.sets)[0]["steps"][number]);
    });
    expect(t.way("gone").source).toBe("none");
    expect(t.way("gone").from.map((f) => f.ok)).toEqual([false, false, false]);
    expect(t.findings).toEqual([]);
  });
});
