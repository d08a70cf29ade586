// Sets that lie already when a later one is worked on: in the scene's fixed bodies, in their own place. Closed forms; no source needed.
import { describe, expect, test } from "vitest";
import { copySet } from "../../src/plan/index.ts";
import { centreOf, drawSite, numberOf, volumeOf } from "../../src/shape/index.ts";
import { samplePlan } from "../plan/sample.ts";

const one = samplePlan();
for (const seat of one.site.seats) seat.asBuilt_m = null;
for (const girder of one.sets[0].girders) girder.camber_mm = [];
const plan = copySet(one, one.sets[0].id, "second", "Second", 6);
const origin: [number, number, number] = [40, 0, 100];

describe("landed sets", () => {
  test("the first set has nothing landed beside it; the second has the first one, by every plate of it", () => {
    const names = (set: number) =>
      drawSite(plan, plan.sets[set], origin).bodies.parts.map((part) => part.name);
    expect(names(0).filter((name) => name.startsWith("landed"))).toEqual([]);
    expect(names(1).filter((name) => name.startsWith("landed"))).toHaveLength(1);
  });

  test("its plates have the volume of the girders, and lie over the first set's seats, not the second's", () => {
    const { bodies } = drawSite(plan, plan.sets[1], origin);
    const part = bodies.parts.findIndex((p) => p.name.startsWith("landed"));
    const steel = [numberOf("steel"), numberOf("steel dark")];
    let volume = 0;
    let left = 0;
    for (let i = 0; i < bodies.boxes.count; i++) {
      if (bodies.boxes.parts[i] !== part || !steel.includes(bodies.boxes.tones[i])) continue;
      const v = volumeOf(bodies.boxes, i);
      volume += v;
      left += v * centreOf(bodies, bodies.boxes, i)[1];
    }
    let steelVolume = 0;
    let moment = 0;
    for (const girder of plan.sets[0].girders)
      for (const p of girder.pieces) {
        const plates = [p.topFlange_mm, p.web_mm, p.bottomFlange_mm];
        const area = plates.reduce((sum, [a, b]) => sum + a * b * 1e-6, 0);
        steelVolume += area * (p.to_m - p.from_m);
        moment += area * (p.to_m - p.from_m) * girder.y_m;
      }
    // Single precision and the slope between the seats: 1e-4.
    expect(volume / steelVolume).toBeCloseTo(1, 3);
    expect(left / volume).toBeCloseTo(moment / steelVolume, 3);
  });
});
