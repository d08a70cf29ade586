// Oil stays where a step has put it: strokes are those of all oil pumped so far, and the way it came in leaves no trace.
// Source: volume of a liquid that does not compress; common practice, no published numbers.

import { expect, test } from "vitest";
import { oneGirderAfter, type Ran, within } from "../sequence/plans.ts";

/** The front train is jacked up in some steps, with the far hook on, so that heights decide the loads. */
function jacked(...heights: number[]): Ran {
  return oneGirderAfter(
    "far-takes",
    ...heights.map((height_mm, i) => ({
      do: "jack up" as const,
      id: `jack ${i}`,
      transporter: "front",
      until: { height_mm },
    })),
    { do: "rest" },
  );
}

test("30 mm in one step, in three and in five: the same loads and strokes at its end and at the rest after it", () => {
  const runs = [[30], [10, 10, 10], [4, 11, 2, 6, 7]].map((heights) => jacked(...heights));
  const [whole, ...parts] = runs;
  // Heights decide: 30 mm at the front lift the pick by 45 mm, and the hook lets go of more than half of its 40 kN.
  const far = whole.ctx.supportIndex.get("hoist far-crane") ?? -1;
  expect(whole.end("far-takes").forces[far]).toBeGreaterThan(39e3);
  expect(whole.end("rest").forces[far]).toBeLessThan(20e3);
  for (const r of parts) {
    const [a, b] = [whole.end("rest"), r.end("rest")];
    // Heights are sums of tenths: rounding alone, 1e-9 of the weight and 1e-12 m.
    b.forces.forEach((F, i) => {
      if (!Number.isNaN(a.forces[i])) within(F, a.forces[i], 1e-9 * r.run.weight);
    });
    b.solution.stroke.forEach((stroke, i) => {
      within(stroke, a.solution.stroke[i], 1e-12);
    });
  }
});

test("after every step the strokes of a group add up to all the oil that the steps so far have put in", () => {
  const heights = [4, 11, 2];
  const r = jacked(...heights);
  let pumped = 0;
  heights.forEach((height_mm, i) => {
    pumped += height_mm / 1000;
    const { solution } = r.end(`jack ${i}`);
    for (const group of solution.layout.groups) {
      const sum = group.cylinders.reduce((s, c) => s + solution.stroke[c], 0);
      const lift = group.name.startsWith("front") ? pumped : 0;
      within(sum, group.cylinders.length * lift, 1e-12);
    }
  });
});
