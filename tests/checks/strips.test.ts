// The strips that a page reads at its cursor are those of the whole list of checks, in its order.

import { expect, test } from "vitest";
import { checkList, stripMeasures } from "../../src/checks/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { scenario } from "../sequence/plans.ts";

test.each(["demo", "one-girder"] as const)("%s", (name) => {
  const plan = scenario(name);
  const ctx = prepareContext(plan, plan.sets[0].id);
  const names = (list: { check: string; subject: string }[]) => list.map((m) => `${m.check}: ${m.subject}`);
  const all = checkList.makers.flatMap((make) => make(ctx)).filter(({ strip }) => strip);
  expect(names(stripMeasures(ctx))).toEqual(names(all));
  expect(all.length).toBeGreaterThan(5);
});
