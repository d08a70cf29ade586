// Gaps, packing, sweep and members between sets against closed forms and hand numbers.

import { describe, expect, test } from "vitest";
import { checkList, endReach, misfitOf, packingOf, sweptCg } from "../../../src/checks/index.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { type Pose, poseAt, prepareContext } from "../../../src/sequence/index.ts";
import { within } from "../../reference/close.ts";
import { scenario } from "../../sequence/plans.ts";
import { findingsIn, landingPlan, landingRun } from "./hung.ts";

/** The single girder from its landing on: 30 m, soles 0.5 m from its ends. */
const single = (change: (plan: Plan) => void = () => {}) =>
  scenario("one-girder", (plan) => {
    const [set] = plan.sets;
    set.steps = set.steps.slice(set.steps.findIndex((s) => s.id === "landing"));
    change(plan);
  });

/** Second moment of the single girder and its weight in N/m, from its plates. */
function steelOf(plan: Plan): { I: number; q: number } {
  const [piece] = plan.sets[0].girders[0].pieces;
  let z = 0;
  const plates = [piece.bottomFlange_mm, [piece.web_mm[1], piece.web_mm[0]], piece.topFlange_mm].map(
    ([b, h]) => {
      const plate = { b: b / 1000, h: h / 1000, z: z + h / 2000 };
      z += h / 1000;
      return plate;
    },
  );
  const A = plates.reduce((s, p) => s + p.b * p.h, 0);
  const c = plates.reduce((s, p) => s + p.b * p.h * p.z, 0) / A;
  const I = plates.reduce((s, p) => s + (p.b * p.h ** 3) / 12 + p.b * p.h * (p.z - c) ** 2, 0);
  return { I, q: A * 7850 * 9.80665 };
}

describe("gap at the backwalls", () => {
  test("ends of a beam with camber turn by camber less bending, q l^3 / (24 E I) less the overhang's part", () => {
    const plan = single((p) => {
      p.sets[0].girders[0].camber_mm = [
        [0, 0],
        [15, 300],
        [30, 0],
      ];
      p.site.temperature_C = 15;
      p.sets[0].temperature_C = 15;
    });
    const { ctx, stored } = landingRun(plan);
    const pose = stored.at(-1) as Pose;
    const { I, q } = steelOf(plan);
    const [l, a, depth] = [29, 0.5, 1.555];
    // Slope over a support of a beam on two supports with overhangs: q l^3 / 24 - q a^2 l / 4, over E I.
    const turn = (q * (l ** 3 / 24 - (a * a * l) / 4)) / (210e9 * I);
    const slope = 0.02 - turn;
    const tail = plan.site.nearBearing_m - 0.5 - slope * depth;
    // The slope is taken over the last 0.1 m, where the overhang bends by 1e-6 more: 0.01 mm.
    expect(Math.abs(endReach(ctx, pose, "tail").reach - tail)).toBeLessThan(1e-5);
    expect(
      Math.abs(endReach(ctx, pose, "nose").reach - (plan.site.farBearing_m + 0.5 + slope * depth)),
    ).toBeLessThan(1e-5);
  });

  test("a backwall 20 mm behind the soffit is a caution against 25 mm, from the first pose over the seats", () => {
    const plan = single((p) => {
      p.site.nearBackwall_m = p.site.nearBearing_m - 0.52;
    });
    const found = findingsIn(landingRun(plan), checkList, "backwall gap");
    expect(found.map((f) => [f.subject, f.level])).toEqual([["near backwall", "caution"]]);
    expect(found[0].from).toMatchObject({ step: 0, progress: 0 });
    expect(found[0].value as number).toBeLessThanOrEqual(20.000001);
  });
});

test("packing of the demonstration by hand: seats, camber and a deck on the path's crossfall", () => {
  const plan = scenario("demo");
  const rows = packingOf(prepareContext(plan, plan.sets[0].id));
  const of = (t: string, g: string) =>
    rows.find((r) => r.transporter === t && r.girder === g)?.asked as number;
  // Seats L less R: 30.987 - 30.996 = -9 mm near, 31.335 - 31.354 = -19 mm far; soles 58.8 m apart.
  const seats = (s: number) => -9 - 10 * ((s - 0.6) / 58.8);
  // Camber L less R at 8.5 m: 72/12 and 76/12 a metre; at 36 m 113 and 118. At the soles 3.6 and 3.8 mm.
  const rear = seats(8.5) + (8.5 * (72 - 76)) / 12 + 0.2;
  const front = seats(36) + (113 - 118) + 0.2;
  // Path at 146.5 m falls 0.5 % to the left, at 174 m 0.57 %: a deck is lower at L by that over 3.2 m.
  within(of("rear", "L") - of("rear", "R"), rear + 0.005 * 3200, 1e-6);
  within(of("front", "L") - of("front", "R"), front + 0.0057 * 3200, 1e-6);
  expect(Math.min(...rows.map((r) => r.asked))).toBe(0);
});

test("sweep moves the centre of gravity by two thirds of it, weighed by the girders' part of the set", () => {
  const plan = scenario("one-girder", (p) => {
    p.sets[0].girders[0].sweep_mm = 30;
  });
  // A parabola of rise e has the mean 2 e / 3; the girder is the whole set.
  within(sweptCg(null, plan, plan.sets[0]), 0.02, 1e-12);
});

/** Two single girders 3 m apart; the second stands beside the first with a member between their middles. */
const twoSets = (fit: "no load" | "steel dead load", change: (plan: Plan) => void = () => {}) =>
  single((plan) => {
    const [one] = plan.sets;
    const { site } = plan;
    const own = <T extends { set?: string | undefined }>(list: T[]) =>
      [one.id, "second"].flatMap((set) => list.map((x) => ({ ...x, set })));
    site.seats = own(site.seats);
    site.bearings = own(site.bearings);
    const second = structuredClone(one);
    second.id = "second";
    second.start.y_m = 3;
    second.E_GPa = 400;
    second.infill = [{ name: "frame", to: one.id, at_m: 15, girder: "G", toGirder: "G", fit, allowed_mm: 5 }];
    plan.sets.push(second);
    change(plan);
  });

const twoSetsWith = (change: (one: NonNullable<Plan["sets"][number]["infill"]>[number]) => void) =>
  twoSets("no load", (plan) => {
    for (const one of plan.sets[1].infill ?? []) change(one);
  });

describe("fit to a set that stands", () => {
  const misfit = (plan: Plan) => {
    const ctx = prepareContext(plan, "second");
    return misfitOf(null, ctx, (plan.sets[1].infill ?? [])[0])?.off as number;
  };

  test("made to fit under no load: the stiffer girder stays up by the difference of sags, (5 l^4 - 24 a^2 l^2) q / (384 E I)", () => {
    const plan = twoSets("no load");
    const { I, q } = steelOf(plan);
    const [l, a] = [29, 0.5];
    const sag = (E: number) => (q * (5 * l ** 4 - 24 * a * a * l * l)) / (384 * E * I);
    // Webs give the same to shear in both; masses lie where the mesh has them: 0.1 %.
    within(misfit(plan), sag(210e9) - sag(400e9), 1e-3);
  });

  test("made to fit under the steel's weight: off by what the seats of the first are low, 10 mm", () => {
    const plan = twoSets("steel dead load", (p) => {
      for (const s of p.site.seats) if (s.set !== "second") s.asBuilt_m = s.design_m - 0.01;
    });
    within(misfit(plan), 0.01, 1e-6);
    const found = findingsIn(landingRun(plan, "second"), checkList, "infill fit");
    expect(found.map((f) => [f.level, f.subject])).toEqual([["caution", "frame"]]);
    within(found[0].value as number, 10, 1e-6);
  });

  test("a member to a set that does not come before, or to a girder that it has not, is refused", () => {
    const wrong = (field: "to" | "toGirder", value: string) => () =>
      twoSetsWith((one) => {
        one[field] = value;
      });
    expect(wrong("to", "second")).toThrow(/sets\[1\]\.infill\[0\]\.to.*set that comes before this one/);
    expect(wrong("toGirder", "H")).toThrow(/sets\[1\]\.infill\[0\]\.toGirder.*girder of set girder/);
  });

  test("gap between the flanges: 3 m less 450 mm; with sweep toward the other 40 mm less", () => {
    const gap = (plan: Plan) => {
      const { ctx, run } = landingRun(plan, "second");
      const measures = (checkList.onDemand ?? []).flatMap((make) => make(ctx));
      const m = measures.find((x) => x.check === "gap between sets");
      return m?.read(poseAt(ctx, run.steps[0], 1)).value as number;
    };
    within(gap(twoSets("no load")), 2.55, 1e-9);
    const swept = (p: Plan) => {
      p.sets[1].girders[0].sweep_mm = -40;
    };
    within(gap(twoSets("no load", swept)), 2.51, 1e-9);
  });
});

describe("release", () => {
  const of = (change: (plan: Plan) => void) =>
    findingsIn(landingRun(landingPlan(change)), checkList, "release condition");
  const stepOf = (plan: Plan, id: string) => plan.sets[0].steps.find((s) => s.id === id);

  test("met conditions leave only the note on wind", () => {
    expect(of(() => {}).map((f) => f.level)).toEqual(["note", "note"]);
  });

  test("three blocks counted where four must be in: a stop at both hooks", () => {
    const found = of((plan) => {
      const hold = stepOf(plan, "secure");
      if (hold?.do === "hold" && hold.counted) hold.counted[0].count = 3;
    }).filter((f) => f.level === "stop");
    expect(found.map((f) => [f.subject, f.value, f.limit])).toEqual([
      ["far crane: bearing blocks", 3, 4],
      ["near crane: bearing blocks", 3, 4],
    ]);
    expect(found[0].words).toContain("near bearings");
  });

  test("nothing named is a caution that says what is not; blocks at three of four bearings another", () => {
    const found = of((plan) => {
      const far = stepOf(plan, "far-off");
      const near = stepOf(plan, "near-off");
      if (far?.do === "unhook") far.release = undefined;
      if (near?.do === "unhook" && near.release) near.release[0].least = 3;
    }).filter((f) => f.level === "caution");
    expect(found.map((f) => f.subject)).toEqual(["far crane: blocks, braces, bolts", "near crane: blocks"]);
  });

  test("webs lean by the crossfall of their seats: 12 mm on 3.2 m, 0.375 %, against 0.3 %", () => {
    const plan = landingPlan((p) => {
      for (const s of p.site.seats) s.asBuilt_m = s.design_m;
      p.limits.rules.push({
        id: "web plumb",
        value: 0.3,
        unit: "pct",
        source: "owner (invented)",
        chosenBy: "owner",
      });
    });
    const found = findingsIn(landingRun(plan), checkList, "web plumb");
    expect([...new Set(found.map((f) => f.subject))].sort()).toEqual(["girder L", "girder R"]);
    // Girders of different weight twist by some hundredths of a percent beside it.
    for (const f of found) within(f.value as number, 0.375, 0.1);
  });
});
