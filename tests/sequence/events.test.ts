// Events against brute force: contacts that open or close in 20,000 poses of a step, of which the run may miss none.
// A first sweep has 2,000 poses; every part of it in which a contact changes, or comes near enough to closing or
// opening to do so there and back, is swept again ten times as fine. No source needed.

import { describe, expect, test } from "vitest";
import { chance, varied } from "./chance.ts";
import { type Ran, ran } from "./plans.ts";
import { bruteForce, COARSE, compare } from "./sweep.ts";

const seed = 20260504;
const random = chance(seed);
const still = ["hook up", "lash", "unlash", "hold", "brace", "rest"];

/** Twenty steps: two of each of ten varied scenarios. */
const drawn = Array.from({ length: 10 }, (_, n) => {
  const name = n % 3 === 2 ? "one-girder" : "demo";
  const r = ran(varied(name, random));
  const moving = r.run.steps.filter((s) => s.solved && !still.includes(s.step.do));
  const first = Math.floor(random() * moving.length);
  const second = (first + 1 + Math.floor(random() * (moving.length - 1))) % moving.length;
  return [first, second].map((k): [string, Ran, Ran["run"]["steps"][number]] => [
    `${n} ${name} ${moving[k].step.id}`,
    r,
    moving[k],
  ]);
}).flat();

describe(`contacts of 20 steps drawn with seed ${seed}`, () => {
  let changes = 0;

  test.each(drawn)("%s", { timeout: 60_000 }, (name, r, step) => {
    // The steps drawn from the first plan of one girder, which are cheap, have all 20,000 poses.
    const everywhere = name.startsWith("2 one-girder");
    const { flips, poses } = bruteForce(r, step, everywhere);
    expect(poses).toBeGreaterThan(everywhere ? 20_000 : COARSE);
    changes += flips.length;
    expect(compare(r, step, flips)).toEqual({ missed: [], invented: [] });
  });

  test("many contacts changed in them", () => {
    expect(changes).toBeGreaterThanOrEqual(5);
  });
});

/** A contact that opens and closes again between two of the places that every step is looked at in. */
test("there and back between two looks: the landing drawn with seed 124, in which a bearing comes free and carries again", {
  timeout: 60_000,
}, () => {
  const r = ran(varied("demo", chance(124)));
  const step = r.step("landing");
  expect(step.solved).toBe(true);
  const { flips } = bruteForce(r, step);
  const sixteenth = (f: { from: number }) => Math.floor(f.from * 16);
  const back = flips.filter((f) =>
    flips.some((o) => o !== f && o.name === f.name && o.on !== f.on && sixteenth(o) === sixteenth(f)),
  );
  expect(back.map((f) => f.name)).toContain("bearing far R");
  expect(compare(r, step, flips)).toEqual({ missed: [], invented: [] });
});
