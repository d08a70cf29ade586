// hook up, unhook, lash, unlash: rigging and ties on or off, nothing commanded to move. Statics by hand.

import { describe, expect, test } from "vitest";
import { plumbOf, poseAt } from "../../src/sequence/index.ts";
import {
  craneOf,
  force,
  oneGirderAfter,
  oneGirderWith,
  type Ran,
  ran,
  ranScenario,
  scenario,
  share,
  step,
  upTo,
  within,
} from "./plans.ts";

/** Clearance of a line before it is taut, m, as the answer of the statics has it. */
function slack(r: Ran, id: string, progress: number, crane: string): number {
  const { solution } = poseAt(r.ctx, r.step(id), progress);
  const j = solution.devices.findIndex(
    (d) => d.kind === "hoist" && solution.layout.hoists[d.of].name === crane,
  );
  return solution.contact.v[j] - solution.devices[j].datum;
}

describe("hook up", () => {
  test("leaves the line 50 mm short of taut, plumb over the picks, and changes no load", () => {
    for (const name of ["one-girder", "demo"] as const) {
      const r = ranScenario(name);
      for (const [id, crane] of [
        ["far-hook-up", "far-crane"],
        ["near-hook-up", "near-crane"],
      ]) {
        const run = r.step(id);
        expect(run.happenings).toEqual([]);
        expect(craneOf(run.start, crane).hooked).toBe(false);
        const before = poseAt(r.ctx, run, 0.99);
        const end = poseAt(r.ctx, run, 1);
        expect(before.situation).toEqual(run.start);
        const hook = craneOf(end.situation, crane);
        expect(hook).toMatchObject({
          hooked: true,
          heldLoad: null,
          tip: plumbOf(r.ctx, end.situation, crane),
        });
        within(slack(r, id, 1, crane), 0.05, 1e-9);
        expect(force(r.ctx, end, crane === "far-crane" ? "far crane" : "near crane")).toBe(0);
        r.ctx.supports.forEach((s, i) => {
          if (s.band) within(end.shares[i] - before.shares[i], 0, 1e-9 * r.run.weight);
        });
      }
    }
  });

  test("twice is out of order", () => {
    const { step: of } = oneGirderAfter("far-hook-up", { id: "again", do: "hook up", crane: "far-crane" });
    expect(of("again").happenings.map((h) => [h.kind, h.subject])).toEqual([["out of order", "far-crane"]]);
  });
});

describe("unhook", () => {
  test("lowers until slack, then takes the hook off; the loads stay", () => {
    const { ctx, run, step: of } = ranScenario("one-girder");
    const off = of("far-off");
    expect(off.happenings).toEqual([]);
    const end = poseAt(ctx, off, 1);
    expect(craneOf(end.situation, "far-crane").hooked).toBe(false);
    for (const name of ["near G", "far G"]) within(share(ctx, end, name), run.weight / 2, 1e-6 * run.weight);
    expect(force(ctx, poseAt(ctx, off, 0.999), "far crane")).toBe(0);
  });

  test("while it carries more than 2 % of the set is out of order, with what it carries", () => {
    const { ctx, run, step: of } = oneGirderAfter("far-takes", { do: "unhook", crane: "far-crane" });
    const [found, ...more] = of("unhook").happenings;
    expect(more).toEqual([]);
    expect(found).toMatchObject({ kind: "out of order", subject: "far-crane", unit: "N" });
    within(found.value as number, 40e3, 1e-2);
    within(found.limit as number, 0.02 * run.weight, 1e-9 * run.weight);
    // The front train still stands: the set comes to rest as before the crane took load.
    const end = poseAt(ctx, of("unhook"), 1);
    within(share(ctx, end, "front aft"), run.weight * (11 / 32), 1e-6 * run.weight);
  });

  test("of a hook that is not on is out of order", () => {
    const { step: of } = oneGirderWith({ do: "unhook", crane: "far-crane" });
    expect(of("unhook").happenings.map((h) => [h.kind, h.subject])).toEqual([["out of order", "far-crane"]]);
  });
});

/**
 * Tension after tying with 12 kN at 18 kN/mm beside a bunk of 1800 kN/mm: the bunk gives way under the tie, so
 * T = T0 / (1 + 18 / 1800), and all of it is between deck and set: no group feels it.
 */
const TIED = 12e3 / (1 + 18 / 1800);

describe("lash", () => {
  test("ties with the stated pretension; what the set and the groups carry stays", () => {
    const { ctx, run, step: of } = ranScenario("demo");
    const tie = of("lash-down");
    const before = poseAt(ctx, tie, 0.99);
    const end = poseAt(ctx, tie, 1);
    expect(before.situation).toEqual(tie.start);
    expect(end.situation.lashed).toEqual(["rear L", "rear R", "front L", "front R"]);
    for (const id of end.situation.lashed) within(force(ctx, end, `lashing ${id}`), TIED, 1e-6 * TIED);
    for (const bunk of ["rear L", "rear R", "front L", "front R"])
      within(force(ctx, end, `bunk ${bunk} 1`) - force(ctx, before, `bunk ${bunk} 1`), TIED, 1e-6 * TIED);
    ctx.supports.forEach((s, i) => {
      if (s.band) within(end.shares[i] - before.shares[i], 0, 1e-9 * run.weight);
    });
  });

  test("packing does not stretch the ties", () => {
    const { ctx, step: of } = ran(
      scenario("demo", (plan) => {
        for (const on of plan.sets[0].onTransporters) on.packing_mm = { L: 80, R: 80 };
        plan.sets[0].steps = upTo(plan, "lash-down");
      }),
    );
    const end = poseAt(ctx, of("lash-down"), 1);
    for (const id of end.situation.lashed) within(force(ctx, end, `lashing ${id}`), TIED, 1e-6 * TIED);
  });

  test("a slack tie carries nothing until its slack is used up", () => {
    const tied = (slack_mm: number) =>
      ran(
        scenario("demo", (plan) => {
          for (const l of plan.lashings) Object.assign(l, { slack_mm, pretension_kN: 0 });
          plan.sets[0].steps = upTo(
            plan,
            "lash-down",
            step({ do: "hook up", crane: "far-crane" }),
            step({
              do: "take load",
              crane: "far-crane",
              until: { frees: "front left" },
              loadCap_kN: 900,
              heightCap_mm: 700,
            }),
          );
        }),
      );
    const loose = tied(400);
    const front = (r: Ran) => force(r.ctx, r.end("take load"), "lashing front L");
    expect(front(loose)).toBe(0);
    // Tied without slack the front train is lifted by its ties: they carry more than nothing.
    expect(front(tied(0))).toBeGreaterThan(10e3);
  });

  test("again, what is tied already stays as it was tied", () => {
    const { step: of, end } = ran(
      scenario("demo", (plan) => {
        plan.sets[0].steps = [
          step({ id: "one", do: "lash", lashings: ["rear L"] }),
          step({ do: "roll", distance_m: 20 }),
          step({ id: "two", do: "lash", lashings: ["rear L", "rear R"] }),
        ];
      }),
    );
    expect(end("two").situation.lashed).toEqual(["rear L", "rear R"]);
    expect(end("two").situation.tiedAt["rear L"]).toBe(of("roll").start.tiedAt["rear L"]);
  });

  test("to a transporter that is gone is out of order", () => {
    const { step: of } = ran(
      scenario("demo", (plan) => {
        plan.sets[0].steps = upTo(plan, "front-out", step({ do: "lash", lashings: ["front L"] }));
      }),
    );
    expect(of("lash").happenings.map((h) => [h.kind, h.subject])).toEqual([["out of order", "front L"]]);
  });

  test("a train tied to the set does not drive out", () => {
    const { step: of } = ran(
      scenario("demo", (plan) => {
        plan.sets[0].steps = upTo(
          plan,
          "front-down",
          step({ do: "lash", lashings: ["front L"] }),
          step({ do: "drive out", transporter: "front", toward: "right", distance_m: 14 }),
        );
      }),
    );
    expect(of("drive out").happenings.map((h) => [h.kind, h.words])).toEqual([
      ["out of order", "lashing front L still ties it to the set"],
    ]);
  });
});

describe("unlash", () => {
  test("takes the ties off", () => {
    const { ctx, step: of } = ranScenario("demo");
    const untie = of("untie");
    expect(untie.start.lashed.length).toBe(4);
    expect(poseAt(ctx, untie, 0.5).situation).toEqual(untie.start);
    const end = poseAt(ctx, untie, 1);
    expect(end.situation.lashed).toEqual([]);
    expect(end.situation.tiedAt).toEqual({});
    expect(force(ctx, end, "lashing rear L")).toBeNaN();
  });

  test("what is not tied is out of order", () => {
    const { step: of, end } = ran(
      scenario("demo", (plan) => {
        plan.sets[0].steps = [
          step({ do: "lash", lashings: ["rear L", "rear R"] }),
          step({ do: "unlash", lashings: ["rear L", "front L"] }),
        ];
      }),
    );
    expect(of("unlash").happenings.map((h) => [h.kind, h.subject])).toEqual([["out of order", "front L"]]);
    expect(end("unlash").situation.lashed).toEqual(["rear R"]);
  });
});
