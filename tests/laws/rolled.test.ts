// A set that rolls on a straight path with its hook held at its height is the same set further on: loads do not change.
// With the rope locked instead, the boom that comes in raises the hook on its own circle, and the loads follow.
// Source: invariance of statics under a shift; the boom's circle z = sqrt(L^2 - r^2); W2's form for a hook raised.

import { expect, test } from "vitest";
import { type Pose, poseAt } from "../../src/sequence/index.ts";
import { near, oneGirderAfter, type Ran, within } from "../sequence/plans.ts";
import { lineStiffness, pickFlexibility } from "../sequence/stiffness.ts";

const BITES = 3;

/** Bites while both trains and the far hook carry, so that the hook's height decides the loads. */
const rolled = (hold: "elevation" | "rope", bite_m: number): Ran =>
  oneGirderAfter("far-takes", {
    do: "roll together",
    cranes: ["far-crane"],
    hold,
    bite_m: Math.abs(bite_m),
    distance_m: BITES * bite_m,
  });

/** Poses at the start and after every bite, when the boom has followed and the line hangs plumb. */
const plumb = (r: Ran): Pose[] =>
  Array.from({ length: BITES + 1 }, (_, i) => poseAt(r.ctx, r.step("roll together"), i / BITES));

test("hook held at its elevation: after every bite each support carries what it carried", () => {
  for (const bite of [-1, 0.3]) {
    const r = rolled("elevation", bite);
    const [start, ...bites] = plumb(r);
    for (const pose of bites)
      pose.forces.forEach((F, i) => {
        if (!Number.isNaN(start.forces[i])) within(F, start.forces[i], 1e-9 * r.run.weight);
      });
  }
});

test("rope locked: the far hook's load changes by the tip's rise on the boom's circle over 1/k + f", () => {
  // Back by bites of 10 mm: at this radius the tip comes down by more than the boom goes out.
  const r = rolled("rope", -0.01);
  const [crane] = r.plan.cranes;
  const [start, ...bites] = plumb(r);
  const far = r.ctx.supportIndex.get("hoist far-crane") ?? -1;
  const height = (pose: Pose) => {
    const [x, y] = pose.situation.cranes[0].tip;
    const { chainage_m, y_m } = crane.position;
    const reach = Math.hypot(x - chainage_m, y - y_m) - crane.boomFootForward_m;
    return Math.sqrt(crane.boomLength_m ** 2 - reach ** 2);
  };
  const give = 1 / lineStiffness(r.plan, "far-crane") + pickFlexibility(r.plan, 16, 8);
  for (const pose of bites) {
    const rise = height(pose) - height(start);
    expect(rise).toBeLessThan(-0.01);
    // 1e-3 of the change: beam formulas at whole metres, and second-order terms of 1e-4.
    near(pose.forces[far] - start.forces[far], rise / give, 1e-3);
  }
});
