// Rigging and lifted sets by their data alone, at and beside each limit.
// 29 CFR 1926.251(a)(4): custom gear is proof-tested to 125 % of its rated load: 84 t asks for 105 t.

import { describe, expect, test } from "vitest";
import { checkList } from "../../../src/checks/index.ts";
import type { Plan, Rigging } from "../../../src/plan/index.ts";
import { scenario, within } from "../../sequence/plans.ts";

const t = 9.80665;
const found = (check: string, change: (plan: Plan) => void) =>
  checkList.planChecks.flatMap((find) => find(scenario("demo", change))).filter((f) => f.check === check);
const far =
  (fields: Partial<Rigging>, more: (plan: Plan) => void = () => {}) =>
  (plan: Plan) => {
    Object.assign(plan.rigging[0], fields);
    more(plan);
  };
const slung = (plan: Plan) => {
  plan.sets[0].picks[0].attachment = { kind: "sling" };
};

test("the demonstration has nothing to say of its rigging", () => {
  for (const check of [
    "edge guard",
    "proof test",
    "sling angle",
    "rigging mass",
    "sling stiffness",
    "tag lines",
    "loose part",
    "lift point",
    "end for end",
  ])
    expect(
      found(check, () => {}),
      check,
    ).toEqual([]);
});

describe("edge guards", () => {
  test("slings without them are stopped, clamps and lugs are not; an attachment that is not stated counts as a sling", () => {
    expect(found("edge guard", far({ softeners: false }, slung)).map((f) => f.level)).toEqual(["stop"]);
    expect(found("edge guard", far({ softeners: false }))).toEqual([]);
    const unsaid = far({ softeners: false }, (p) => {
      delete p.sets[0].picks[0].attachment;
    });
    expect(found("edge guard", unsaid).length).toBe(1);
    expect(found("edge guard", far({ guards: "makeshift" }, slung)).map((f) => f.words)).toEqual([
      "the edge guards of rigging 'far spreader' are makeshift",
    ]);
  });
});

describe("proof test", () => {
  const gear = (tested: number, marked = true) =>
    found("proof test", far({ ratedLoad_kN: 84 * t, custom: { proofTest_kN: tested * t, marked } }));

  test("105 t are enough for 84 t, 104.9 t are not; gear bought with a rating needs none", () => {
    expect(gear(105)).toEqual([]);
    const [short] = gear(104.9);
    within(short.limit ?? 0, 105 * t, 1e-9);
    expect(short.level).toBe("stop");
    expect(gear(105, false).map((f) => f.subject)).toEqual(["far spreader marking"]);
    expect(found("proof test", far({ custom: undefined }))).toEqual([]);
  });

  test("a plan may ask for more", () => {
    const more = found("proof test", (p) => {
      p.limits.overrides.push({ limit: "proof test", value: 150, source: "owner", chosenBy: "owner" });
    });
    expect(more.map((f) => [f.subject, f.limit])).toEqual([
      ["far spreader", 1230],
      ["near spreader", 1230],
    ]);
  });
});

test("legs at 30 degrees from the horizontal are allowed, flatter ones are not", () => {
  const top = (angle_deg: number) => found("sling angle", far({ topLegs: { apart_m: 3.2, angle_deg } }));
  expect(top(60)).toEqual([]);
  within(top(60.5)[0].value ?? 0, 29.5, 1e-9);
  // Slings to one point 0.8 m above picks 3.2 m apart: 26.6 degrees.
  const [point] = found("sling angle", far({ kind: "point", hookPinHeight_m: 0.8 }));
  within(point.value ?? 0, 26.565, 1e-3);
  const parts = (demo: Plan) => Object.assign(demo.rigging[0].parts?.[2] ?? {}, { angle_deg: 62 });
  expect(found("sling angle", parts).map((f) => f.value)).toEqual([28]);
});

test("parts that weigh more than the assembly are told in any case, less only when all are known", () => {
  // 0.12 + 2.4 + 4 x 0.055 + 4 x 0.04 = 2.9 t.
  const [light] = found("rigging mass", far({ mass_t: 3.2 }));
  within(light.value ?? 0, 2.9, 1e-9);
  const unknown = far({ mass_t: 3.2 }, (p) => {
    delete p.rigging[0].parts?.[0].mass_t;
  });
  expect(found("rigging mass", unknown)).toEqual([]);
  const heavy = far({ mass_t: 2 }, (p) => {
    delete p.rigging[0].parts?.[0].mass_t;
  });
  within(found("rigging mass", heavy)[0].value ?? 0, 2.78, 1e-9);
});

test("slings stiffer than their own steel: four of 44 mm and 5.5 m give 88.4 kN/mm", () => {
  expect(found("sling stiffness", far({ slingStiffness_kN_per_mm: 88 }))).toEqual([]);
  const [stiff] = found("sling stiffness", far({ slingStiffness_kN_per_mm: 90 }));
  // 4 x 80 000 x 0.785 x 44^2 / 5500.
  within(stiff.limit ?? 0, 88.42, 0.01);
  expect(stiff.level).toBe("caution");
});

describe("what is lifted", () => {
  test("tag lines on both halves; a set that is only rolled needs none", () => {
    const none = (p: Plan) => {
      p.sets[0].tagLines = undefined;
    };
    expect(found("tag lines", none).map((f) => f.subject)).toEqual(["set"]);
    const rolled = (p: Plan) => {
      none(p);
      p.sets[0].steps = p.sets[0].steps.slice(0, 3);
    };
    expect(found("tag lines", rolled)).toEqual([]);
  });

  test("turned end for end: how far the CG moves, and what the far hook would carry", () => {
    const [one] = found("end for end", (p) => {
      p.sets[0].forwardMark = undefined;
      // 6 t at the front end: the CG moves forward by some 1.4 m.
      p.sets[0].attachments.push({ name: "front", girder: "R", at_m: 59, mass_t: 6, height_m: 1 });
    });
    const mass = 118.21;
    const cg = (mass * 30.048 + 6 * 59) / (mass + 6);
    within(one.value ?? 0, 2 * cg - 60, 0.02);
    const W = (mass + 6) * t;
    const turned = (W * (60 - cg - 5)) / 50;
    const right = (W * (cg - 5)) / 50;
    const [, said, instead] = /would carry (\d+) kN instead of (\d+) kN/.exec(one.words) ?? [];
    within(Number(said), turned, 2);
    within(Number(instead), right, 2);
  });
});
