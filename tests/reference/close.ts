// How a computed value is compared with a published one: within a stated share of it.

import { expect } from "vitest";

/** Fails unless `value` lies within `relative` of `expected` (0.001 is 0.1 %); an expected 0 must be met within 1e-12. */
export function within(value: number, expected: number, relative: number): void {
  const bound = expected === 0 ? 1e-12 : relative * Math.abs(expected);
  expect(
    Math.abs(value - expected),
    `${value} against ${expected}, allowed ${relative * 100} %`,
  ).toBeLessThanOrEqual(bound);
}
