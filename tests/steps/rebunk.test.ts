// rebunk: an empty transporter under new bunks. One girder: after `front-down` the front train stands at 20 m, 80 mm clear.

import { describe, expect, test } from "vitest";
import { bunkGap, poseAt } from "../../src/sequence/index.ts";
import {
  force,
  frontGroups,
  oneGirderAfter,
  oneGirderWith,
  type Ran,
  ran,
  scenario,
  shares,
  step,
  upTo,
  within,
} from "../sequence/plans.ts";

const rebunk = { do: "rebunk", transporter: "front", deckAt_m: 14 } as const;
const found = (r: Ran) => r.step("rebunk").happenings.map((h) => [h.kind, h.subject, h.level ?? "stop"]);
const front = (r: Ran, p: number) => {
  const t = poseAt(r.ctx, r.step("rebunk"), p).situation.trains.find((x) => x.id === "front");
  if (!t) throw new Error("no front train");
  return t;
};

describe("an empty train, clear of the set", () => {
  test("drives along below it, changes no load, and stands at its new place", () => {
    const r = oneGirderAfter("front-down", rebunk);
    expect(found(r)).toEqual([]);
    for (const p of [0.25, 0.5, 1]) within(front(r, p).deckAt, 20 - 6 * p, 1e-12);
    expect(front(r, 1)).toMatchObject({ under: true, gone: [0, 0], deckAt: 14 });
    const before = poseAt(r.ctx, r.step("rebunk"), 0);
    for (const name of ["far crane", "rear aft", "rear left", "rear right"])
      within(force(r.ctx, r.end("rebunk"), name), force(r.ctx, before, name), 1e-6 * r.run.weight);
  });

  test("then jacked up it takes load there: by levers about rear train and hook", () => {
    const r = oneGirderAfter("front-down", rebunk, {
      do: "jack up",
      transporter: "front",
      until: { load_kN: 90 },
    });
    expect(r.step("jack up").happenings).toEqual([]);
    const taken = shares(r.ctx, r.end("jack up"), frontGroups);
    // Of its 90 kN gross the train's own 7 t are no part of the set's weight.
    within(taken, 90e3 - 7000 * r.ctx.gravity, 1);
    // The rear train at 4 m and the hook at 28 m give up what it takes at 14 m: 10/24 of it from the hook.
    const hook = (id: string) => force(r.ctx, r.end(id), "far crane");
    within(hook("rebunk") - hook("jack up"), (taken * 10) / 24, 1e-3 * taken);
  });

  test("one that had driven out to the right drives along first, then across to its bunks", () => {
    const r = oneGirderAfter("front-out", rebunk);
    expect(found(r)).toEqual([]);
    // 6 m back, then 8 m across: at half of the 14 m it is 1 m on its way in.
    expect(front(r, 0.5)).toMatchObject({ under: false });
    within(front(r, 0.5).deckAt, 14, 1e-12);
    within(front(r, 0.5).gone[1], -7, 1e-12);
    expect(front(r, 1)).toMatchObject({ under: true, gone: [0, 0], deckAt: 14 });
    expect(bunkGap(r.end("rebunk"), "front")).toBeGreaterThan(0.02);
    const stored = [...r.run.progress.slice(r.step("rebunk").first)];
    expect(stored.some((p) => Math.abs(p - 6 / 14) < 1e-12)).toBe(true);
  });

  test("packing goes on at the end, and takes its height off the gap", () => {
    const bare = oneGirderAfter("front-down", rebunk);
    const packed = oneGirderAfter("front-down", { ...rebunk, packing_mm: { G: 30 } });
    expect(front(packed, 0.5).packing.G).toBe(0);
    expect(front(packed, 1).packing.G).toBe(0.03);
    within(bunkGap(packed.end("rebunk"), "front"), bunkGap(bare.end("rebunk"), "front") - 0.03, 1e-9);
  });
});

describe("what stops it", () => {
  test("a train under load", () => {
    const r = oneGirderWith({ ...rebunk, deckAt_m: 18 });
    expect(found(r)).toEqual([["not clear", "front", "stop"]]);
    expect(r.step("rebunk").happenings[0].words).toContain("still carries load");
  });

  test("packing higher than the gap", () => {
    const r = oneGirderAfter("front-down", { ...rebunk, packing_mm: { G: 200 } });
    expect(found(r)).toEqual([["not clear", "front", "stop"]]);
    expect(r.step("rebunk").happenings[0].words).toContain("packing");
  });

  test("a lashing, the other train, and a stop line", () => {
    const r = ran(
      scenario("one-girder", (plan) => {
        plan.lashings = [
          {
            id: "tie",
            transporter: "front",
            girder: "G",
            at_m: 20,
            stiffness_kN_per_mm: 5,
            slack_mm: 200,
            pretension_kN: 0,
          },
        ];
        plan.sets[0].steps = upTo(plan, "front-down", step({ do: "lash", lashings: ["tie"] }), step(rebunk));
      }),
    );
    expect(found(r)).toEqual([["out of order", "front", "stop"]]);
    // Decks of 5.8 m at 4 m and 8 m are 1.8 m into each other: the way of 12 m ends after 16 - 5.8 = 10.2 m.
    const far = oneGirderAfter("front-down", { ...rebunk, deckAt_m: 8 });
    expect(found(far)).toEqual([["not clear", "front", "stop"]]);
    within(far.step("rebunk").happenings[0].limit as number, 16 - 5.8, 1e-9);
    // Rear end at chainage 25 m: the front axle stands at 25 + 20 + 2.1 m, the line at 48 m.
    const forward = oneGirderAfter("front-down", { ...rebunk, deckAt_m: 22 });
    expect(forward.step("rebunk").happenings.map((h) => h.words)).toEqual([
      "stop line front axle stands in its way after 0.9 m",
    ]);
  });

  test("a soffit lower than the bunks somewhere on its way", () => {
    const r = ran(
      scenario("one-girder", (plan) => {
        // The line falls by 120 mm from the front bunk to the one at 14 m, where 80 mm were clear.
        plan.sets[0].girders[0].camber_mm = [
          [0, 0],
          [14, 0],
          [20, 120],
          [30, 120],
        ];
        plan.sets[0].steps = upTo(plan, "front-down", step(rebunk));
      }),
    );
    expect(r.step("rebunk").happenings[0]).toMatchObject({
      kind: "not clear",
      subject: "front",
      limit: 0.02,
    });
    expect(r.step("rebunk").happenings[0].words).toContain("on its way");
  });
});
