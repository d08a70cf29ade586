// Twist and changes of slope of a bridge under way: Utah DOT, section 03253 (25 June 2009). Twist is how far one corner
// lies above or below the plane through the other three; the levels are by hand, the answer exact.

import { expect, test } from "vitest";
import { slopeAcross, slopeAlong, twistOf } from "../../src/mechanics/index.ts";
import { within } from "./close.ts";

test("corners at 0, 12, 31 and 9 mm going round: the fourth lies 10 mm below the plane of the others", () => {
  expect(twistOf(0, 12, 31, 9)).toBe(-10);
});

test("whichever corner comes last, the size is the same; every second time with the other sign", () => {
  expect(twistOf(12, 31, 9, 0)).toBe(10);
  expect(twistOf(31, 9, 0, 12)).toBe(-10);
  expect(twistOf(9, 0, 12, 31)).toBe(10);
});

test("a plane has no twist, and its slopes are its own", () => {
  const z = (x: number, y: number) => 3 + 0.02 * x - 0.04 * y;
  const corners = [z(0, 1.4), z(0, -1.4), z(50, -1.4), z(50, 1.4)] as const;
  expect(Math.abs(twistOf(...corners))).toBeLessThan(1e-12);
  within(slopeAlong(corners, 50), 0.02, 1e-12);
  within(slopeAcross(corners, 2.8), 0.04, 1e-12);
});
