// The findings of every variant of some kinds against hand statics, a test each, and what they asked for in all.

import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { judge } from "./hand/judge.ts";
import { type Kind, variants } from "./variants.ts";

/** How many findings of each check the variants of a kind must ask for at least, so that none of the tests is empty. */
export type Least = Record<string, number>;

/** Tests of all variants of a kind. */
export function tellsOf(kind: Kind, least: Least): void {
  describe(kind, () => {
    const asked = new Map<string, number>();
    const sums = { excluded: 0, open: 0 };
    let before = process.cpuUsage();
    beforeAll(() => {
      before = process.cpuUsage();
    });
    test.each(variants(kind))("seed $seed: $words", ({ plan }) => {
      const verdict = judge(plan, solvePlan(plan));
      for (const [check, n] of verdict.asked) asked.set(check, (asked.get(check) ?? 0) + n);
      sums.excluded += verdict.excluded;
      sums.open += verdict.open;
      expect(verdict.wrong).toEqual([]);
    });
    test("what hand statics asked for is enough to prove something", () => {
      for (const [check, n] of Object.entries(least))
        expect(asked.get(check) ?? 0, check).toBeGreaterThanOrEqual(n);
      // Where hand statics are silent, nothing is proven: that is less than one check and subject in ten.
      expect(sums.excluded).toBeGreaterThan(10 * sums.open);
    });
    afterAll(() => {
      const list = [...asked].map(([check, n]) => `${check} ${n}`).join(", ");
      const { user } = process.cpuUsage(before);
      console.log(
        `${kind}: ${variants(kind).length} variants in ${(user / 1e6).toFixed(1)} s; asked for by hand: ${list}; ` +
          `excluded ${sums.excluded}, left open ${sums.open}`,
      );
    });
  });
}
