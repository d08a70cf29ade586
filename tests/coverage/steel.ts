// Witnesses of the checks of the steel at point loads, in splices, and of its slenderness: one girder of thin plates with
// 10 t at its middle, on trains at 4 and 20 m of its 30 m.
//
// By hand: plates of 150 x 60, 1500 x 3 and 450 x 5 mm are 15 750 mm2; times 7850 kg/m3 and 9.80665 m/s2 1.2125 kN/m, so
// 36.37 kN with its CG at 15 m, as the 98.07 kN of the load. The front train takes 11/16 of both, the rear one 5/16.

import { expect } from "vitest";
import { about, found, onlyStands, readScenario, shared, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

const EACH = 0.01575 * 7850 * 9.80665e-3;
const ALL = 30 * EACH + 98.0665;
const REAR = (5 / 16) * ALL;
const FRONT = (11 / 16) * ALL;
const F_Y = 345e3;

/** A splice at 10 m with half of its bolts; a pair of stiffeners of 25 x 3 mm above the rear bunk; bunks of 20 mm. */
const thin = shared(() =>
  readScenario("one-girder", (plan) => {
    onlyStands(plan);
    const [set] = plan.sets;
    Object.assign(set.girders[0].pieces[0], {
      topFlange_mm: [150, 60],
      web_mm: [1500, 3],
      bottomFlange_mm: [450, 5],
      weldLeg_mm: 3,
    });
    set.attachments = [{ name: "load", girder: "G", at_m: 15, mass_t: 10, height_m: 0.8 }];
    set.splices = [{ girder: "G", at_m: 10, mass_t: 0, moment_kNm: 1000, shear_kN: 50, boltedFraction: 0.5 }];
    set.stiffeners = [{ girder: "G", at_m: 4, width_mm: 25, thickness_mm: 3 }];
    for (const t of plan.transporters) for (const bunk of t.bunks) bunk.length_mm = 20;
  }),
);

/** The pair with 25 web thicknesses of web as a column by ANSI/AISC 360-22 J10.8 and E3 (from memory), kN over 1.67. */
function stiffenerPair(): number {
  const area = 2 * 0.025 * 0.003 + 25 * 0.003 ** 2;
  const inertia = (0.003 * (2 * 0.025 + 0.003) ** 3) / 12;
  const slender = (0.75 * 1.5) / Math.sqrt(inertia / area);
  const elastic = (Math.PI ** 2 * 210e6) / slender ** 2;
  return (0.658 ** (F_Y / elastic) * F_Y * area) / 1.67;
}

export const steelWitnesses: Witness[] = [
  {
    check: "web yielding",
    ids: ["ST-6"],
    title:
      "92 kN on 20 mm of a bunk where a web of 3 mm yields at F_y t_w (5 k + l_b) / 1.5 = 41 kN, k = 5 + 3 mm (AISC J10.2)",
    sees: (solve) => {
      const [one] = found(solve(thin()), "web yielding", "stop");
      expect(one.subject).toBe("girder G");
      about(one.value, FRONT, 1e-4);
      about(one.limit, (F_Y * 0.003 * (5 * 0.008 + 0.02)) / 1.5, 1e-9);
    },
  },
  {
    check: "stiffener load",
    ids: ["ST-6"],
    title: "42 kN on a pair of stiffeners that buckles at 53 kN: 32 kN are allowed",
    sees: (solve) => {
      const [one] = found(solve(thin()), "stiffener load", "stop");
      expect(one.subject).toBe("girder G");
      about(one.value, REAR, 1e-4);
      about(one.limit, stiffenerPair(), 1e-9);
    },
  },
  {
    check: "splice shear",
    ids: ["ST-5"],
    title: "half of the bolts of a splice good for 50 kN: the rear reaction less 10 m of girder is 29.9 kN",
    sees: (solve) => {
      const [one] = found(solve(thin()), "splice shear", "stop");
      about(one.value, REAR - 10 * EACH, 1e-4);
      about(one.limit, 25, 1e-9);
    },
  },
  {
    check: "girder too slender",
    ids: ["ST-3"],
    title: "16 m between the trains without a frame are 107 times a flange of 150 mm, where 90 is the end",
    sees: (solve) => {
      const [one] = found(solve(thin()), "girder too slender", "stop");
      about(one.value, 16 / 0.15, 1e-9);
    },
  },
  {
    check: "field piece slenderness",
    ids: ["ST-3"],
    title:
      "the piece from the splice at 10 m to the end is 133 times as long as its flange of 150 mm is wide",
    sees: (solve) => {
      const pieces = found(solve(thin()), "field piece slenderness", "caution");
      expect(subjects(pieces)).toEqual(["girder G from 10 to 30 m"]);
      expect(pieces).toHaveLength(1);
      about(pieces[0].value, 20 / 0.15, 1e-9);
    },
  },
];
