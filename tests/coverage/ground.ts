// Witnesses of the checks of ground, mats and structures underfoot. Hand statics of the one girder: 102.77 kN with its CG at
// 15 m on trains at 4 and 20 m, so that the front takes 70.66 kN; each train weighs 7 t = 68.65 kN and has 8 axle-line sides.

import { expect } from "vitest";
import { byId } from "../../src/plan/index.ts";
import { step } from "../sequence/plans.ts";
import { cutAfter, found, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

/** One axle-line side of the front train, kN. */
const SIDE = (70.66 + 68.65) / 8;

/** Rolls 10 m, so that the front train's foremost line comes from 37.1 to 47.1 m; its tyres reach 0.15 m further. */
const rolling = shared(() =>
  readScenario("one-girder", (plan) => {
    cutAfter(plan, "roll-out");
    const { site } = plan;
    site.wallSignedOff = undefined;
    for (const p of site.path.points)
      Object.assign(p, { allowablePressure_kPa: 9, pressureSource: "invented" });
    site.underfoot = [
      { name: "culvert", from_m: 40, to_m: 41, allowedLine_kN: 30 },
      { name: "duct", from_m: 41.03, to_m: 41.05 },
    ];
    site.edges = [
      {
        name: "trench",
        kind: "trench",
        from: { chainage_m: 20, y_m: -2 },
        to: { chainage_m: 46, y_m: -2 },
        depth_m: 2,
      },
    ];
    plan.limits.use.push("setback-1");
    for (const t of plan.transporters)
      Object.assign(t, {
        tyrePrint: { length_m: 0.3, width_m: 0.3 },
        allowedGroundPressure_kPa: 150,
        settlementTrigger_mm: 8,
      });
    byId(plan.cranes, "far-crane").pressureSource = "";
    const near = byId(plan.cranes, "near-crane");
    near.allowablePressure_kPa = undefined;
    near.soil = "ibc clay";
  }),
);

/** Both trains stand; one aft support of the front one sinks by 5 mm. */
const resting = shared(() =>
  readScenario("one-girder", (plan) => {
    for (const t of plan.transporters) t.settlementTrigger_mm = 4;
    plan.sets[0].steps = [step({ do: "rest", minutes: 60, settlement_mm: { "front aft": 5 } })];
  }),
);

/** Far crane of 110 t right ahead of the girder, its CG 1 m behind its centre, 40 kN of the girder on its hook. */
const lifting = (mats: boolean) =>
  shared(() =>
    readScenario("one-girder", (plan) => {
      cutAfter(plan, "far-takes");
      const crane = byId(plan.cranes, "far-crane");
      crane.position.y_m = 0;
      crane.cgBehind_m = 1;
      crane.allowablePressure_kPa = mats ? 60 : 150;
      if (mats)
        crane.mat = {
          length_m: 3,
          width_m: 0.6,
          mass_t: 0.2,
          thickness_m: 0.2,
          bending_MPa: 2,
          shear_MPa: 0.1,
        };
    }),
  );
/** The same on ground good for 300 kPa, walking 2 m toward the girder and 0.5 m to the right over a cover good for 150. */
const walking = shared(() =>
  readScenario("one-girder", (plan) => {
    cutAfter(plan, "far-takes");
    const crane = byId(plan.cranes, "far-crane");
    crane.position.y_m = 0;
    crane.cgBehind_m = 1;
    crane.travelWithLoad = true;
    plan.sets[0].steps.push({
      id: "closer",
      do: "walk",
      crane: "far-crane",
      dx_m: -2,
      dy_m: -0.5,
      carries: [],
    });
    // The corner of the tracks at (83, 2.55) cuts it after 0.4 of the way, for 0.02 of it.
    plan.site.craneGround = [
      {
        name: "cover",
        from_m: 82.199,
        to_m: 82.2,
        fromY_m: 2.34,
        toY_m: 2.345,
        allowablePressure_kPa: 150,
      },
    ];
  }),
);
const bare = lifting(false);
const matted = lifting(true);

/** kN on the hook: 40 of the girder, 0.6 t of block, 0.3 t of rigging, 19.5 m of 4 x 4.6 kg/m of rope; its radius with growth, m. */
const HOOK = 40 + (0.6 + 0.3 + 0.0195 * 4 * 4.6) * 9.80665;
const RADIUS = 33.08;
const CRANE = 110 * 9.80665;
const V = CRANE + HOOK;
const M = HOOK * RADIUS - CRANE;
/** Two tracks of 6 by 0.9 m, 4.2 m apart: area, and distance over second moment of the outermost corner both ways, 1/m3. */
const AREA = 10.8;
const ALONG = 3 / ((2 * 0.9 * 6 ** 3) / 12);
const ACROSS = 2.55 / (AREA * (2.1 ** 2 + 0.9 ** 2 / 12));
const UNDER = V / AREA + M * ALONG;

/** Rope length and radius are rounded in the hand statics: 1 %. */
const ABOUT = 0.01;
const about = (value: number | null, by: number, part = ABOUT) =>
  expect(Math.abs((value ?? Number.NaN) - by)).toBeLessThanOrEqual(part * by);

export const groundWitnesses: Witness[] = [
  {
    check: "track pressure",
    ids: ["GR-2"],
    title: "a crane of 110 t with 52 kN at 33 m ahead presses with V/A + M/Z = 165 kPa",
    sees: (solve) => {
      // Before that, with an empty hook, it presses more behind.
      const one = found(solve(bare()), "track pressure", "stop").find((f) => f.worst?.step === 2);
      expect(one?.subject).toBe("far crane");
      about(one?.value ?? null, UNDER);
    },
  },
  {
    check: "track pressure",
    ids: ["GR-2", "CR-10"],
    title:
      "a walk whose tracks cut a cover good for 150 kPa with one corner, between two stored poses, with 162 kPa",
    sees: (solve) => {
      const one = found(solve(walking()), "track pressure", "stop").find((f) => f.worst?.step === 3);
      expect(one?.limit).toBe(150);
      // 0.8 m nearer, the boom 0.2 m aside in 32.3 m: R - 0.8, and that share of M across.
      const near = HOOK * (RADIUS - 0.8) - CRANE;
      about(one?.value ?? null, V / AREA + near * (ALONG + (0.2 / 32.3) * ACROSS));
    },
  },
  {
    check: "track pressure over the swing",
    ids: ["GR-2"],
    title: "swung to where both moments of the tracks count it would press with 174 kPa",
    sees: (solve) => {
      const [one] = found(solve(bare()), "track pressure over the swing", "caution");
      about(one.value, V / AREA + M * Math.hypot(ALONG, ACROSS));
    },
  },
  {
    check: "track pressure unloaded",
    ids: ["GR-2"],
    title: "the lightest hook at the least radius gives the worst pressure of all, behind",
    sees: (solve) => {
      const result = solve(bare());
      const [one] = found(result, "track pressure unloaded", "caution");
      const block = 0.6 * 9.80665;
      const full = (CRANE + block) / AREA + (CRANE - 6 * block) * Math.hypot(ALONG, ACROSS);
      // One corner just lifts, which adds a little to the form for full contact.
      expect(one.value).toBeGreaterThan(full);
      about(one.value, full, 0.02);
      expect(one.value).toBeGreaterThan(found(result, "track pressure")[0].value ?? 0);
    },
  },
  ...(["bending", "shear"] as const).map(
    (kind): Witness => ({
      check: `mat ${kind}`,
      ids: ["GR-3"],
      title: `a soft mat of 0.6 by 0.2 m fails in ${kind} over the length that 60 kPa of ground asks for`,
      sees: (solve) => {
        const [one] = found(solve(matted()), `mat ${kind}`, "stop");
        const P = UNDER * 0.9 * 0.6;
        const length = (P + 0.2 * 9.80665) / (60 * 0.6);
        const free = (length - 0.9) / 2;
        const q = P / length;
        about(one.value, kind === "bending" ? (q * free ** 2) / 2 : q * (free - 0.2), 0.04); // free length: twice the 1 %
        about(one.limit, kind === "bending" ? (2e3 * 0.6 * 0.2 ** 2) / 6 : (0.1e3 * 0.6 * 0.2) / 1.5, 1e-9);
      },
    }),
  ),
  {
    check: "axle pressure",
    ids: ["TR-8"],
    title: "the front train presses with 9.57 kPa over the shadow of its deck on a path good for 9",
    sees: (solve) => {
      const stops = found(solve(rolling()), "axle pressure", "stop");
      expect(subjects(stops)).toEqual(["front"]);
      about(stops[0].value, SIDE / (1.4 * 1.3), 1e-3);
    },
  },
  {
    check: "tyre pressure",
    ids: ["TR-8"],
    title: "the front train's tyres press with 193 kPa where 150 is allowed",
    sees: (solve) => {
      const stops = found(solve(rolling()), "tyre pressure", "stop");
      expect(subjects(stops)).toEqual(["front"]);
      about(stops[0].value, SIDE / 0.09, 1e-3);
    },
  },
  {
    check: "structure underfoot",
    ids: ["GR-7"],
    title:
      "a culvert good for 30 kN a line is passed by 34.8 kN, and a duct of 20 mm that nobody knows asks for a check",
    sees: (solve) => {
      const result = solve(rolling());
      const [stop] = found(result, "structure underfoot", "stop");
      expect(stop.subject).toBe("culvert");
      about(stop.value, 2 * SIDE, 1e-3);
      expect(subjects(found(result, "structure underfoot", "caution"))).toEqual(["duct"]);
    },
  },
  {
    check: "wall surcharge",
    ids: ["TR-11"],
    title:
      "the front train's tyres come within 49.2 - 47.1 - 0.15 = 1.95 m of the backwall, and nobody has signed",
    sees: (solve) => {
      const [one] = found(solve(rolling()), "wall surcharge", "caution").filter((f) =>
        f.subject.startsWith("front"),
      );
      expect(one.words).toMatch(/within 1\.95 m of the near backwall/);
      expect(one.words).toMatch(/no engineer has signed/);
      // Three of its lines stand within the wall's 6 m: 104.5 kN over 2.6 m.
      about(one.value, (6 * SIDE) / 2.6, 1e-3);
    },
  },
  {
    check: "edge distance",
    ids: ["TR-11"],
    title:
      "the far crane's tracks of 6 m begin at 86 - 3 = 83 m, 3.2 m behind the backwall at 79.8 m, unsigned",
    sees: (solve) => {
      const [one] = found(solve(rolling()), "edge distance", "caution").filter((f) =>
        f.subject.startsWith("far crane"),
      );
      expect(one).toMatchObject({ subject: "far crane, far wall", unit: "m", limit: null });
      about(one.value, 3.2, 1e-9);
    },
  },
  {
    check: "set-back",
    ids: ["GR-4"],
    title: "tyres 0.95 m beside a trench of 2 m stand within one depth",
    sees: (solve) => {
      const stops = found(solve(rolling()), "set-back", "stop");
      expect(subjects(stops)).toEqual(["front, trench", "rear, trench"]);
      about(stops[0].value, 2 - 0.9 - 0.15, 1e-9);
    },
  },
  {
    check: "settlement",
    ids: ["GR-5"],
    title: "a rest that lets the ground below the front train sink by 5 mm passes its action level of 4 mm",
    sees: (solve) => {
      const cautions = found(solve(resting()), "settlement", "caution");
      expect(subjects(cautions)).toEqual(["front"]);
      expect(cautions[0].limit).toBe(4);
      about(cautions[0].value, 5, 1e-9);
    },
  },
  {
    check: "settlement action level",
    ids: ["GR-5"],
    title: "an action level of 8 mm is beyond the 5 mm whose effect was looked at",
    sees: (solve) => {
      const cautions = found(solve(rolling()), "settlement action level", "caution");
      expect(subjects(cautions)).toEqual(["front", "rear"]);
      expect(cautions[0]).toMatchObject({ value: 8, limit: 5 });
    },
  },
  {
    check: "presumptive bearing",
    ids: ["GR-1"],
    title:
      "clay without an investigation gets the 1500 psf of IBC 2012 Table 1806.2, 71.8 kPa, as a stand-in",
    sees: (solve) => {
      const [one] = found(solve(rolling()), "presumptive bearing", "caution");
      expect(one.chosenBy).toBe("presumptive");
      about(one.value, 71.8, 1e-3);
    },
  },
  {
    check: "ground record",
    ids: ["GR-1"],
    title: "an allowable pressure that nobody stands for is told",
    sees: (solve) => {
      const [one] = found(solve(rolling()), "ground record", "caution");
      expect(one.subject).toBe("cranes[0].pressureSource");
    },
  },
];
