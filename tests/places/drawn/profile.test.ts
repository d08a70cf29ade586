// The drawn path and seats: grades and footprints by hand, flags in words, what was not surveyed stays unknown.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { profileOf } from "../../../src/places/plan/data/drawn/profile.ts";
import { seatRows } from "../../../src/places/plan/data/drawn/seatLevels.ts";
import { type Plan, readPlan, withValue } from "../../../src/plan/index.ts";

function demo(): Plan {
  const read = readPlan(readFileSync("scenarios/demo.json", "utf8"));
  if (!read.ok) throw new Error("the demonstration is no plan");
  return read.plan;
}
const m = (value: number) => `${value} m`;
const profile = (plan: Plan) => profileOf(plan, plan.sets[0], m);

describe("the path", () => {
  test("grades and footprints of the demonstration, worked by hand", () => {
    const it = profile(demo());
    // From 30.448 at 120 to 30.700 at 160.
    expect(it.stretches[0].grade_pct).toBeCloseTo((100 * 0.252) / 40, 12);
    const [rear, front] = it.footprints;
    // Rear end at 138, deck centre 8.5 ahead, deck 8.6 long; six lines 1.4 apart.
    expect([rear.from, rear.to].map((v) => Number(v.toFixed(6)))).toEqual([142.2, 150.8]);
    expect(rear.lines[0]).toBeCloseTo(146.5 - 3.5, 12);
    expect(rear.lines).toHaveLength(6);
    // Between the points at 120 and 160.
    expect(rear.elevation).toBeCloseTo(30.448 + (0.252 * 26.5) / 40, 12);
    expect(front.lines[7]).toBeCloseTo(174 + 4.9, 12);
    expect(it.flags).toEqual([]);
  });

  test("axle lines beyond the path, grades too steep and points that do not run forward are told", () => {
    const far = profile(withValue(demo(), ["sets", 0, "start", "rearEnd_m"], 110));
    // Centre at 118.5: lines from 115 to 122, four of them behind 120.
    expect(far.flags).toEqual([
      "4 of 6 axle lines of rear stand beyond the path, which runs from 120 m to 210.5 m.",
    ]);
    const steep = profile(withValue(demo(), ["site", "path", "points", 4, "elevation_m"], 32.2));
    expect(steep.flags).toHaveLength(2);
    expect(steep.flags[0]).toBe("Between 196 m and 210.5 m the path has 8.9 % grade; rear may stand on 6 %.");
    const back = profile(withValue(demo(), ["site", "path", "points", 1, "chainage_m"], 119));
    expect(back.flags[0]).toBe(
      "Point 2 at chainage 119 m does not lie ahead of point 1 at 120 m: points run forward.",
    );
  });
});

describe("seats", () => {
  test("as built less design, from the left girder to the right", () => {
    const [near, far] = seatRows(demo(), demo().sets[0]);
    expect(near.seats.map(({ girder, off }) => [girder, Math.round(1000 * (off ?? Number.NaN))])).toEqual([
      ["L", 2],
      ["R", -1],
    ]);
    expect(far.seats.map(({ off }) => Math.round(1000 * (off ?? Number.NaN)))).toEqual([-3, 4]);
    expect(near.apart).toBeCloseTo(0.003, 9);
    expect(far.apart).toBeCloseTo(0.007, 9);
  });

  test("shims count in the plane; a seat that was not surveyed leaves it unknown", () => {
    const shimmed = withValue(demo(), ["site", "seats", 1, "shims_mm"], 3);
    expect(seatRows(shimmed, shimmed.sets[0])[0].apart).toBeCloseTo(0, 9);
    const blank = withValue(demo(), ["site", "seats", 0, "asBuilt_m"], null);
    const [near] = seatRows(blank, blank.sets[0]);
    expect(near.seats[0].off).toBeNull();
    expect(near.apart).toBeNull();
  });
});
