// hold, brace, rest: nothing moves. level, rebunk, walk: refused by name, and nothing after them is trusted.

import { expect, test } from "vitest";
import { poseAt } from "../../src/sequence/index.ts";
import { oneGirderAfter, oneGirderWith } from "./plans.ts";

test.each([
  { do: "hold", releasedBy: "lift director", evidence: "levels read" },
  { do: "brace", items: [{ what: "blocks", count: 2, of: 4 }] },
  { do: "rest", on: ["packing"] },
] as const)("$do moves nothing: forces stay to the last bit", (standing) => {
  const { ctx, run, step: of } = oneGirderAfter("far-takes", standing);
  const still = of(standing.do);
  expect(still.happenings).toEqual([]);
  expect(still.solved).toBe(true);
  for (const p of [0.5, 1]) {
    const pose = poseAt(ctx, still, p);
    expect(pose.situation).toEqual(still.start);
    expect(pose.forces).toEqual(poseAt(ctx, still, 0).forces);
  }
  expect([...run.progress.slice(still.first, still.first + still.count)]).toEqual([0, 1]);
});

test.each([
  { do: "level", tolerance_mm: 5 },
  { do: "rebunk", transporter: "front", deckAt_m: 12 },
  { do: "walk", crane: "far-crane", dx_m: 1, dy_m: 0 },
] as const)("$do is refused by name, and the steps after it stay unsolved", (refused) => {
  const { run, step: of } = oneGirderWith(refused, { do: "roll", distance_m: 1 });
  const here = of(refused.do);
  expect(here.solved).toBe(false);
  expect(here.happenings.map((h) => h.kind)).toEqual(["no equilibrium"]);
  expect(here.happenings[0].words).toContain(`'${refused.do}' is not solved yet`);
  expect(of("roll")).toMatchObject({ solved: false, count: 0 });
  expect(of("roll").motion).toBe(here.motion);
  expect(run.count).toBe(1);
});
