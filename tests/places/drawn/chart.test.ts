// A chart as it is drawn: curves as the checks read them, rows that need a look, round ticks.
import { describe, expect, test } from "vitest";
import { ratedLoad } from "../../../src/checks/index.ts";
import {
  roundFactor,
  scaleOf,
  spreadLabels,
  ticksOf,
  tickText,
} from "../../../src/places/plan/data/drawn/axes.ts";
import { curvePath, curvesOf, readsBetween, rowFlags } from "../../../src/places/plan/data/drawn/chart.ts";

const row = (radius_m: number, boom_m: number, rated_t: number) => ({ radius_m, boom_m, rated_t });
const chart = (rows: ReturnType<typeof row>[], page = "") => ({
  invented: true,
  interpolation: page !== "",
  ...(page === "" ? {} : { page }),
  rows,
});
const m = (value: number) => `${value} m`;
const t = (value: number) => `${value} t`;

/** The height of a drawn path at x, where it is single: walked along its M, L, V and H. */
function heightAt(path: string, x: number): number {
  let [px, py] = [Number.NaN, Number.NaN];
  for (const [, command, numbers] of path.matchAll(/([MLVH])([^MLVH]*)/g)) {
    const parts = numbers.trim().split(/\s+/).map(Number);
    const next = command === "V" ? [px, parts[0]] : command === "H" ? [parts[0], py] : parts;
    if (x > px && x <= next[0]) return py + ((x - px) / (next[0] - px)) * (next[1] - py);
    [px, py] = next;
  }
  return Number.NaN;
}

describe("curves", () => {
  const rows = [row(20, 42, 50), row(30, 42, 30), row(24, 42, 40), row(20, 60, 44)];

  test("by boom length, by radius, with the row's own place", () => {
    const [short, long] = curvesOf(chart(rows));
    expect(short.rows.map(({ index }) => index)).toEqual([0, 2, 1]);
    expect(long.rows.map(({ index }) => index)).toEqual([3]);
  });

  // The check of hook loads reads the same rows by itself: at every radius both must agree.
  test.each(["", "page 7"])("are drawn as the checks read the chart (page '%s')", (page) => {
    const it = chart(rows, page);
    const path = curvePath(
      curvesOf(it)[0],
      readsBetween(it),
      (v) => v,
      (v) => v,
    );
    for (const radius of [20.5, 23.9, 24, 24.5, 27, 30]) {
      const read = ratedLoad(it, radius, 42, 10);
      expect(heightAt(path, radius), `radius ${radius}`).toBeCloseTo((read ?? Number.NaN) / 10_000, 1);
    }
  });
});

describe("rows that need a look", () => {
  test("a sound chart has none", () => {
    expect(rowFlags(chart([row(20, 42, 50), row(24, 42, 40), row(20, 60, 48)]), m, t)).toEqual([]);
  });

  test("out of order, doubled and rising are told by row", () => {
    const flags = rowFlags(
      chart([row(20, 42, 50), row(26, 42, 35), row(24, 42, 40), row(26, 42, 34), row(30, 42, 36)]),
      m,
      t,
    );
    expect(flags.map(({ index, why }) => [index + 1, why])).toEqual([
      [3, "out of order"],
      [4, "doubled"],
      [5, "rising"],
    ]);
    expect(flags[0].words).toContain("Row 3, radius 24 m, boom 42 m, stands behind radius 26 m");
    expect(flags[1].words).toContain("34 t instead of 35 t");
    expect(flags[2].words).toContain("rates 36 t at radius 30 m");
  });
});

describe("axes", () => {
  test("ticks are round and lie within the span", () => {
    expect(ticksOf(0, 10, 5)).toEqual([0, 2, 4, 6, 8, 10]);
    expect(ticksOf(0.13, 0.61, 5).map((v) => tickText(v, 0.1))).toEqual(["0.2", "0.3", "0.4", "0.5", "0.6"]);
    expect(tickText(-0.0001, 1)).toBe("0");
  });

  test("scales go through both ends; nothing lies in the middle of no span", () => {
    const x = scaleOf(5, 15, 100, 0);
    expect([x(5), x(10), x(15)]).toEqual([100, 50, 0]);
    expect(scaleOf(3, 3, 0, 10)(3)).toBe(5);
  });

  test("factors are 1, 2 or 5 times a power of ten, and at most what fits", () => {
    expect([0.4, 1, 1.9, 2, 49, 50, 999].map(roundFactor)).toEqual([1, 1, 1, 2, 20, 50, 500]);
  });

  test("labels keep apart and inside", () => {
    const at = spreadLabels([10, 12, 95, 96], 13, 100);
    const sorted = [...at].sort((a, b) => a - b);
    for (let i = 1; i < sorted.length; i++)
      expect(sorted[i] - sorted[i - 1]).toBeGreaterThanOrEqual(13 - 1e-9);
    expect(Math.max(...at)).toBeLessThanOrEqual(100);
  });
});
