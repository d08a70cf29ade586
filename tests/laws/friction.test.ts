// Contacts and brakes hold sideways up to their limits and no further; what is beyond is held by others, or the set slides.
// Source: Coulomb's law of friction; the limits are random.

import fc from "fast-check";
import { expect, test } from "vitest";
import { solveState } from "../../src/mechanics/index.ts";
import { states } from "./states.ts";

const seed = 26713;

test(`700 random states on slopes and in wind: no contact and no brake beyond its limit (seed ${seed})`, () => {
  let held = 0;
  let slipping = 0;
  let sliding = 0;
  const sloping = states().filter((s) => (s.grade ?? 0) !== 0 || (s.crossfall ?? 0) !== 0 || !!s.wind);
  fc.assert(
    fc.property(sloping, (state) => {
      const a = solveState(state);
      if (a.motion?.startsWith("the set slides")) sliding++;
      if (a.status !== "solved" || a.horizontal === null) return;
      const trains = new Map((state.trains ?? []).map((t) => [t.name, t]));
      for (const [name, { force, used }] of Object.entries(a.horizontal.contacts)) {
        const size = Math.hypot(...force);
        const t = name.startsWith("bunk ") ? trains.get(name.split(" ")[1]) : undefined;
        const b = (state.bearings ?? []).find((x) => `bearing ${x.name}` === name);
        const friction = t?.bunkFriction ?? b?.friction ?? Number.POSITIVE_INFINITY;
        const limit = Math.min(friction * a.forces[name], b?.sideLimit ?? Number.POSITIVE_INFINITY);
        expect(size, name).toBeLessThanOrEqual(limit * (1 + 1e-9) + 1e-9 * a.weight);
        // A free wheel holds across only.
        if (t && t.braked === false) expect(Math.abs(force[0])).toBe(0);
        if (used !== null) held++;
      }
      for (const [name, { force }] of Object.entries(a.horizontal.brakes)) {
        const limit = trains.get(name)?.brakeLimit ?? Number.POSITIVE_INFINITY;
        expect(Math.abs(force), name).toBeLessThanOrEqual(limit * (1 + 1e-9) + 1e-9 * a.weight);
      }
      slipping += a.horizontal.slipping.length;
    }),
    { seed, numRuns: 700 },
  );
  // The family holds all three: contacts within their limits, contacts that slip, and sets that slide off.
  expect(held).toBeGreaterThan(500);
  expect(slipping).toBeGreaterThan(40);
  expect(sliding).toBeGreaterThan(20);
});
