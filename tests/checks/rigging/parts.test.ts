// Every part of the rigging at a pose: what it carries by statics worked by hand beside it, against its own rating.

import { describe, expect, test } from "vitest";
import { checkList, limitOf, type Measure, useOf as partOfLimit } from "../../../src/checks/index.ts";
import { basketCapacity } from "../../../src/mechanics/index.ts";
import type { Plan, Rigging } from "../../../src/plan/index.ts";
import { type Pose, poseAt, type SetContext } from "../../../src/sequence/index.ts";
import { force, near, type Ran, ranScenario } from "../../sequence/plans.ts";
import { expectTrue } from "../girders/formulas.ts";
import { readingOf } from "../readings.ts";

const g = 9.80665;
const demo = ranScenario("demo");
const pose = poseAt(demo.ctx, demo.step("lift"), 1);
const net = force(demo.ctx, pose, "far crane");
const lines = ["L", "R"].map((girder) => force(demo.ctx, pose, `far crane line ${girder}`));

/** The context of a run under a plan with another rigging on its first crane. */
function rigged(change: (rig: Rigging, plan: Plan) => void, from: Ran = demo): SetContext {
  const plan = structuredClone(from.plan);
  change(plan.rigging[0], plan);
  return { ...from.ctx, plan, set: plan.sets[0] };
}

const part = (fields: Partial<NonNullable<Rigging["parts"]>[number]>) => [
  { name: "P", count: 1, ratedLoad_kN: 500, ...fields },
];
const on = (ctx: SetContext, at: Pose = pose) => readingOf(ctx, at, "part of rigging", "far crane: P");

describe("the load of a part", () => {
  const own = demo.plan.rigging[0].mass_t * 1000 * g;

  test("lines of both girders make the hook's net load", () => {
    near(lines[0] + lines[1], net, 1e-9);
    expect(Math.abs(lines[0] - lines[1])).toBeGreaterThan(1e3);
  });

  test("on the hook and in the beam: the net load and the rigging's own weight, by their count", () => {
    for (const place of ["hook", "beam"] as const)
      for (const count of [1, 2]) {
        const ctx = rigged((rig) => Object.assign(rig, { parts: part({ place, count }) }));
        near(on(ctx).value, (net + own) / count, 1e-12);
        expect(on(ctx).limit).toBe(500e3);
      }
  });

  test("below a spreader: the heavier line, by the parts at a girder, more where the leg slopes", () => {
    const most = Math.max(...lines);
    const of = (fields: Parameters<typeof part>[0]) =>
      on(rigged((rig) => Object.assign(rig, { parts: part(fields) }))).value;
    near(of({ place: "leg", count: 4 }), most / 2, 1e-12);
    near(of({ place: "pick", count: 2 }), most, 1e-12);
    // Of five parts at two girders two each are sure.
    near(of({ place: "leg", count: 5 }), most / 2, 1e-12);
    // 30 degrees from the vertical: 1 / cos 30 = 1.1547.
    near(of({ place: "leg", count: 4, angle_deg: 30 }), (most / 2) * 1.1547005, 1e-7);
    // Laid as a basket, each sling has two legs: its capacity is 2 x rated x cos.
    const rated = basketCapacity(500e3, Math.PI / 6);
    near(of({ place: "leg", count: 2, angle_deg: 30, hitch: "basket" }) / 500e3, most / rated, 1e-12);
    // A part without a place counts as a leg.
    near(of({ count: 4 }), most / 2, 1e-12);
  });

  test("slings that part along the girder slope by it: 3 m apart and 5.5 m long", () => {
    const ctx = rigged((rig) =>
      Object.assign(rig, { parts: part({ place: "leg", count: 4 }), legs: { perPick: 2, alongApart_m: 3 } }),
    );
    near(on(ctx).value, ((Math.max(...lines) / 2) * Math.hypot(5.5, 1.5)) / 5.5, 1e-12);
  });

  test("above a spreader: its heavier end and half of its weight, by stated angle, length or the hook's height", () => {
    const side = Math.max(...lines) + own / 2;
    const of = (topLegs: Rigging["topLegs"]) =>
      on(rigged((rig) => Object.assign(rig, { topLegs, parts: part({ place: "top leg", count: 2 }) }))).value;
    near(of({ apart_m: 3.2, angle_deg: 30 }), side * 1.1547005, 1e-7);
    near(of({ apart_m: 3.2, length_m: 2 }), side / 0.6, 1e-12);
    near(of({ apart_m: 3.2 }), (side * Math.hypot(1.1, 1.6)) / 1.1, 1e-12);
    near(of(undefined), side, 1e-12);
  });

  test("a spreader is pressed by its heavier end times the legs' slope", () => {
    const ctx = rigged((rig) =>
      Object.assign(rig, { topLegs: { apart_m: 3.2, angle_deg: 30, compression_kN: 250 } }),
    );
    const r = readingOf(ctx, pose, "spreader thrust", "far crane");
    near(r.value, Math.max(...lines) * 0.577350269, 1e-8);
    expect(r.limit).toBe(250e3);
  });

  test("a lug carries its own girder's line", () => {
    const r = readingOf(demo.ctx, pose, "lift attachment", "far crane");
    near(r.value, Math.max(...lines), 1e-12);
    expect(r.limit).toBe((demo.plan.sets[0].picks[0].attachment?.capacity_kN ?? 0) * 1000);
    expect(r.where).toBe("girder L");
  });

  test("is nothing while the hook is not on", () => {
    expect(
      on(
        rigged((rig) => Object.assign(rig, { parts: part({}) })),
        poseAt(demo.ctx, demo.step("first-roll"), 1),
      ).value,
    ).toBeNaN();
  });
});

describe("four slings to one hook", () => {
  const fourOf = (legs: Rigging["legs"]) =>
    on(
      rigged((rig) =>
        Object.assign(rig, {
          kind: "point",
          hookPinHeight_m: 4,
          legs,
          parts: part({ place: "leg", count: 4 }),
        }),
      ),
    ).value;
  // Picks 1.6 m aside and 1.2 m along from the plumb line, hook 4 m above: legs of 4.472 m.
  const L = Math.hypot(4, 1.6, 1.2);
  const alike = ((net / 4) * L) / 4;

  test("without stiffness or tolerance the rule stands in: 1.25 of the even share", () => {
    near(fourOf({ perPick: 2, alongApart_m: 2.4 }), 1.25 * alike, 1e-9);
    expect(limitOf(demo.plan, "skew factor")?.value).toBe(1.25);
  });

  test("with both, by stretch: a pair longer by e gives up EA e / (2 L) a leg, and no more than all of it", () => {
    // 44 mm: EA = 80 000 x 0.785 x 44^2 = 121 581 kN.
    const more = (121_580.8e3 * 0.002) / (2 * L);
    near(
      fourOf({ perPick: 2, alongApart_m: 2.4, diameter_mm: 44, lengthTolerance_mm: 2 }),
      alike + more,
      1e-9,
    );
    near(
      fourOf({ perPick: 2, alongApart_m: 2.4, diameter_mm: 44, lengthTolerance_mm: 300 }),
      2 * alike,
      1e-9,
    );
    near(fourOf({ perPick: 2, alongApart_m: 2.4, EA_kN: 121_580.8, lengthTolerance_mm: 0 }), alike, 1e-9);
  });
});

describe("how they came about", () => {
  const forms: ((rig: Rigging) => void)[] = [
    (rig) => Object.assign(rig, { topLegs: { apart_m: 3.2, angle_deg: 35, compression_kN: 250 } }),
    (rig) =>
      Object.assign(rig, {
        topLegs: { apart_m: 3.2, length_m: 2.4, compression_kN: 250 },
        legs: { perPick: 2, alongApart_m: 2 },
      }),
    (rig) => Object.assign(rig, { topLegs: { apart_m: 3.2, compression_kN: 250 } }),
    (rig) => Object.assign(rig, { kind: "point", hookPinHeight_m: 4 }),
    (rig) => Object.assign(rig, { kind: "point", hookPinHeight_m: 4, legs: { perPick: 2, alongApart_m: 2 } }),
    (rig) =>
      Object.assign(rig, {
        kind: "point",
        hookPinHeight_m: 4,
        legs: { perPick: 2, alongApart_m: 2, EA_kN: 1e5, lengthTolerance_mm: 4 },
      }),
    (rig) => Object.assign(rig, { kind: "separate" }),
  ];

  test("the trace of every part gives its number, in all forms of rigging", () => {
    let traced = 0;
    for (const form of forms) {
      const ctx = rigged((rig) => {
        rig.parts = (["hook", "top leg", "beam", "leg", "pick"] as const).flatMap((place) => [
          { name: place, count: 4, ratedLoad_kN: 500, place },
          {
            name: `${place}, sloping`,
            count: 3,
            ratedLoad_kN: 400,
            angle_deg: 25,
            place,
            hitch: "basket" as const,
          },
        ]);
        form(rig);
      });
      const measures = checkList.makers
        .flatMap((make) => make(ctx))
        .filter((m): m is Required<Measure> =>
          ["part of rigging", "rigging load", "spreader thrust", "lift attachment"].includes(m.check),
        );
      for (const m of measures) {
        const whole = m.trace(pose);
        if (!whole?.limit) throw new Error(`no trace of ${m.check} of ${m.subject}`);
        const reading = m.read(pose);
        expect(whole.value.value, m.subject).toBe(reading.value);
        expect(whole.limit.value, m.subject).toBe(reading.limit);
        expect(partOfLimit(m, reading)).toBeGreaterThan(0);
        expectTrue(whole.value, ctx.plan);
        expectTrue(whole.limit, ctx.plan);
        traced++;
      }
    }
    expect(traced).toBeGreaterThan(90);
  });
});
