// Long checks over a run are done in pieces: they rest after each pose or pair, and find what they find in one go.
import { expect, test } from "vitest";
import { checkList } from "../../src/checks/index.ts";
import { type Pose, prepareContext, runSet } from "../../src/sequence/index.ts";
import { scenario } from "../sequence/plans.ts";

test("clearances and wind rest after each piece, and find the same", () => {
  const plan = scenario("planted-faults");
  const ctx = prepareContext(plan, plan.sets[0].id);
  const stored: Pose[] = [];
  const run = runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
  const divided = checkList.runChecks.filter((check) => check.inPieces !== undefined);
  expect(divided.map(({ name }) => name)).toEqual(["clearanceFindings", "windOfEveryStep"]);
  const inWind = stored.filter(({ step, solution }) => {
    return (ctx.set.steps[step].windLimit_m_per_s ?? 0) > 0 && solution.status === "solved";
  });
  for (const check of divided) {
    // A run of its own each time: what is kept for a run is worked out again.
    const work = check.inPieces?.(ctx, { ...run }, stored);
    let rests = 0;
    let next = work?.next();
    for (; next?.done === false; next = work?.next()) rests++;
    expect(rests, check.name).toBeGreaterThanOrEqual(
      check.name === "windOfEveryStep" ? inWind.length : run.steps.length,
    );
    expect(next?.value).toEqual(check(ctx, { ...run }, stored));
  }
});
