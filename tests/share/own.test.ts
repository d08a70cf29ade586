// A chosen support alone: its share with low and high, on a scale that starts at no load.
import { expect, test } from "vitest";
import { axisOf, type SpreadResult } from "../../src/app/index.ts";
import { cornerOf } from "../../src/checks/index.ts";
import { areaBetween, lineThrough, ownLineOf, ownSentence } from "../../src/share/index.ts";
import { madeUpSet, supports } from "../app/madeUp.ts";
import { samplePlan } from "../plan/sample.ts";

const set = madeUpSet();
const axis = axisOf(set, "steps");
const plan = samplePlan();

/** Low and high of every support: a tenth below and above its share. */
function spread(): SpreadResult {
  const whose = new Uint16Array(set.count * supports.length);
  const at = (value: number, pose: number) => ({ value, corner: 0, pose });
  return {
    setId: set.setId,
    corners: [cornerOf(plan, { weight_pct: 10 })],
    done: 1,
    assumed: [],
    low: set.shares.map((share) => share * 0.9 - 50),
    high: set.shares.map((share) => share * 1.1),
    lowCorner: whose,
    highCorner: whose,
    supports: supports.map(({ name }) => ({ name, low: at(-50, 0), high: at(770, 5) })),
    worst: [],
    strips: [],
    findings: [],
  };
}

test("the line is the share at every stored pose; its scale holds low and high and starts at no load", () => {
  const best = ownLineOf(set, axis, null, "far crane");
  expect([...(best?.best ?? [])]).toEqual([0, 0, 0, 0, 200, 700, 700, 700]);
  expect([best?.low, best?.least, best?.most]).toEqual([null, 0, 700]);
  const whole = ownLineOf(set, axis, spread(), "far crane");
  expect([whole?.least, Math.round(whole?.most ?? 0)]).toEqual([-50, 770]);
  expect(whole?.highest).toEqual({ value: 770, corner: 0, pose: 5 });
  expect(ownLineOf(set, axis, null, "bunk 1")).toBeNull();
  expect(ownLineOf(set, axis, null, "nobody")).toBeNull();
});

test("its lowest and highest are told with place and corner", () => {
  expect(ownSentence(plan, set, spread(), "far crane", "SI")).toBe(
    "far crane: highest 0.8 kN in step 2 at 100 %, corner: weight +10 %; lowest -0.1 kN in step 1 at 0 %, corner: weight +10 %",
  );
  expect(ownSentence(plan, set, null, "far crane", "SI")).toBe("");
});

test("lines and areas break where there is no number", () => {
  const no = Number.NaN;
  const px = (i: number) => 10 * i;
  const py = (value: number) => 100 - value;
  expect(lineThrough(Float64Array.of(1, 2, no, 4), px, py)).toBe("M0 99L10 98M30 96");
  expect(areaBetween(Float64Array.of(0, 0, no, 0), Float64Array.of(1, 2, 3, 4), px, py)).toBe(
    "M0 99L10 98L10 100L0 100ZM30 96L30 100Z",
  );
});
