// hold, brace, rest: nothing moves while nothing acts. What acts, and what these steps find, is in tests/steps.

import { expect, test } from "vitest";
import { poseAt } from "../../src/sequence/index.ts";
import { oneGirderAfter } from "./plans.ts";

test.each([
  { do: "hold", releasedBy: "lift director", evidence: "levels read" },
  { do: "brace", items: [{ what: "blocks", count: 4, of: 4 }] },
  { do: "rest", on: ["packing"], windLimit_m_per_s: 12 },
] as const)("$do moves nothing: forces stay to the last bit", (standing) => {
  const { ctx, run, step: of } = oneGirderAfter("roll-out", standing);
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
