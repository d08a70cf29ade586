// Warped seats change which bearing touches first and what each carries: every stage against a solver that shares no code.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  checkList,
  landedAsDesigned,
  landedOn,
  landingsOf,
  proposeShims,
  topsOf,
  touchesOf,
} from "../../../src/checks/index.ts";
import { poseAt, prepareContext } from "../../../src/sequence/index.ts";
import { solveDense } from "../../independent/dense.ts";
import { findingsIn, landingRun, shortPlan, warpSeats } from "./hung.ts";

const warps: [string, Record<string, number>][] = [
  ["flat seats", {}],
  ["the middle seat at the near end 6 mm low", { "near B": -0.006 }],
  ["three seats off", { "near A": 0.01, "far C": 0.004, "far B": -0.002 }],
];

const onSeats = (off: Record<string, number>) => landingRun(shortPlan((plan) => warpSeats(plan, off)));

describe("landing of three girders", () => {
  test.each(warps)("%s: loads at the end of every stage, and before and after the first touch", (_, off) => {
    const { ctx, run } = onSeats(off);
    expect(run.steps.map((s) => s.solved)).toEqual([true, true, true]);
    const [landing] = landingsOf(ctx, run);
    const places = landing.stages.map((s) => s.progress);
    const [first] = touchesOf(ctx, run);
    if (first.at) places.push(first.at.progress - 1e-6, first.at.progress + 1e-6);
    for (const progress of places) {
      const pose = poseAt(ctx, run.steps[landing.step], progress);
      const { forces } = solveDense(pose.state);
      const largest = Math.max(...Object.values(forces));
      for (const [i, s] of ctx.supports.entries()) {
        if (s.what !== "bearing" && s.what !== "hoist") continue;
        // Frames and turns inside elements differ between the two by less than this part of the largest force.
        expect(Math.abs((pose.forces[i] || 0) - (forces[s.force] ?? 0)), s.name).toBeLessThan(
          0.002 * largest,
        );
      }
    }
  });

  test("order and loads are those of the seats: the low one stays free, the high ones touch first", () => {
    const order = (off: Record<string, number>) => {
      const { ctx, run } = onSeats(off);
      return touchesOf(ctx, run).map((t) => (t.at === null ? `${t.bearing} never` : t.bearing));
    };
    expect(
      order({})
        .slice(0, 3)
        .every((b) => b.startsWith("far")),
    ).toBe(true);
    expect(order({ "near B": -0.006 }).at(-1)).toBe("near B never");
    expect(order({ "near A": 0.01, "far C": 0.004, "far B": -0.002 }).slice(0, 3)).toEqual([
      "far C",
      "far A",
      "near A",
    ]);
  });

  test("a seat that stays free and parts that are off are cautions, and shims as proposed end them", () => {
    const off = { "near B": -0.006 };
    const warped = onSeats(off);
    const late = findingsIn(warped, checkList, "late contact");
    expect(late.map((f) => [f.level, f.subject])).toEqual([["caution", "near B"]]);
    expect(findingsIn(warped, checkList, "bearing share").map((f) => f.subject)).toContain("near bearings");
    const proposal = proposeShims(warped.ctx);
    if (typeof proposal === "string" || proposal.exact === null) throw new Error("no shims");
    const { bearings, exact } = proposal;
    const plan = shortPlan((p) => {
      warpSeats(p, off);
      for (const seat of p.site.seats)
        seat.shims_mm = 1000 * exact.shims[bearings.indexOf(`${seat.line} ${seat.girder}`)];
    });
    const shimmed = landingRun(plan);
    expect(findingsIn(shimmed, checkList, "late contact")).toEqual([]);
    expect(findingsIn(shimmed, checkList, "bearing share")).toEqual([]);
  });
});

test("shims of a plan give the shares that the proposal says: 30 random warps (seed 8122)", () => {
  const names = ["A", "B", "C"].flatMap((g) => [`near ${g}`, `far ${g}`]);
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -80, max: 80 }), { minLength: 6, maxLength: 6 }), (tenths) => {
      const off = Object.fromEntries(names.map((n, i) => [n, tenths[i] * 1e-4]));
      const plan = shortPlan((p) => warpSeats(p, off));
      const proposal = proposeShims(prepareContext(plan, plan.sets[0].id), 0.08, 0.0001);
      if (typeof proposal === "string") throw new Error(proposal);
      const { bearings } = proposal;
      for (const choice of [proposal.exact, proposal.stepped]) {
        if (choice === null) throw new Error("no shims");
        for (const seat of plan.site.seats)
          seat.shims_mm = 1000 * choice.shims[bearings.indexOf(`${seat.line} ${seat.girder}`)];
        const ctx = prepareContext(plan, plan.sets[0].id);
        const stands = landedOn(ctx, topsOf(ctx, "it stands"))?.forces ?? [];
        const meant = landedAsDesigned(ctx)?.forces ?? [];
        expect(stands.length).toBe(6);
        // The programme is linear, the statics exact to 1e-9 of the weight.
        stands.forEach((F, i) => {
          expect(Math.abs(F / meant[i] - 1)).toBeLessThan(0.08 + 1e-6);
          expect(Math.abs(F - choice.forces[i])).toBeLessThan(1e-6 * meant[i]);
        });
      }
      const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
      expect(sum(proposal.stepped?.shims ?? [])).toBeGreaterThan(sum(proposal.exact?.shims ?? []) - 1e-9);
    }),
    { seed: 8122, numRuns: 30 },
  );
});
