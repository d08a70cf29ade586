// Bunks: slopes against the deck by the beam's own curve, and a fixed bunk as an even bed.

import { expect, test } from "vitest";
import { bunkSlopes, slopeOver } from "../../../src/checks/transporters/bunks.ts";
import { diagramsOf, momentAt } from "../../../src/mechanics/index.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { type Pose, prepareContext, runSet } from "../../../src/sequence/index.ts";
import { readScenario } from "../../coverage/plans.ts";
import { within } from "../../reference/close.ts";

function atRest(change: (plan: Plan) => void) {
  const plan = readScenario("demo", (p) => {
    p.sets[0].steps = p.sets[0].steps.slice(0, 1);
    change(p);
  });
  const ctx = prepareContext(plan, plan.sets[0].id);
  const stored: Pose[] = [];
  runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
  const read = (check: string, subject: string) => {
    const m = bunkSlopes(ctx).find((one) => one.check === check && one.subject === subject);
    return m?.read(stored[0]);
  };
  return { ctx, pose: stored[0], read };
}
const fixed =
  (length_mm: number, stiffness = 1800) =>
  (plan: Plan) => {
    const [, front] = plan.transporters;
    front.bunks = [{ at_m: 0, kind: "fixed", length_mm }];
    front.bunkStiffness_kN_per_mm = stiffness;
  };

test("rocking bunks tell a slope, fixed ones the place of their load: by s k b^2 / 12 F against b/6", () => {
  const rocking = atRest(() => {}).read("bunk rocking", "front");
  const { pose, ctx, read } = atRest(fixed(500));
  expect(read("bunk rocking", "front")).toBeUndefined();
  const edge = read("bunk edge", "front");
  if (!rocking || !edge) throw new Error("both are made");
  within(edge.limit, 0.5 / 6, 1e-12);
  expect(edge.where).toMatch(
    /^fixed bunk 1, girder [LR] (rises|falls) forward by [\d.]+ % against the deck$/,
  );
  // The solver sees no difference between the kinds, so that the slope is the same.
  const girder = edge.where?.includes("girder L") ? "L" : "R";
  const F = pose.forces[ctx.supportIndex.get(`bunk front ${girder} 1`) ?? -1];
  const s = Number(/by ([\d.]+) %/.exec(edge.where ?? "")?.[1]) / 100;
  // The words have two decimals of a percent.
  within(edge.value, (s * 1.8e9 * 0.25) / (12 * F), 0.00005 / s + 1e-9);
});

test("the load shifts by the square of the length and by the stiffness", () => {
  const value = (length: number, k: number) =>
    atRest(fixed(length, k)).read("bunk edge", "front")?.value ?? 0;
  within(value(400, 1800) / value(200, 1800), 4, 1e-9);
  // The stiffness also settles the set by a hair.
  within(value(400, 900) / value(400, 1800), 0.5, 0.02);
});

test("the slopes at both bunks differ by the curve of the girder between them: the integral of M / EI", () => {
  const { ctx, pose } = atRest((plan) => {
    for (const g of plan.sets[0].girders) g.camber_mm = g.camber_mm.map(([s]) => [s, 0]);
  });
  const { model, layout, contact } = pose.solution;
  const diagrams = diagramsOf(pose.solution);
  ctx.model.girders.forEach((g, index) => {
    const own = (id: string, x: number) => {
      const deck = layout.trains.findIndex((t) => t.name === id);
      // Against the deck; back to the slope of the girder itself.
      return slopeOver(pose, deck, index, x) - contact.a[model.modes.length + 3 * deck + 2];
    };
    let turned = 0;
    const n = 5500;
    for (let i = 0; i < n; i++) {
      const x = 8.5 + ((i + 0.5) * 27.5) / n;
      const e = g.elements.find((one) => x <= one.from + one.length);
      turned += (momentAt(diagrams, index, x) / (e?.EI ?? 0)) * (27.5 / n);
    }
    expect(Math.abs(turned)).toBeGreaterThan(1e-4);
    // Sagging curves it up. The slope is that of the section, which shear does not turn; cross-frames send their couples
    // by twist: within 2 %.
    within(own("front", 36) - own("rear", 8.5), turned, 0.02);
  });
});
