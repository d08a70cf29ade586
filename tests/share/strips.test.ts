// Strips of use and marks of findings.
import { describe, expect, test } from "vitest";
import {
  bandOfUse,
  inOrderOfUse,
  marksOf,
  mostDrawn,
  stripArea,
  stripPath,
  stripsOf,
  stripsThatFit,
} from "../../src/share/index.ts";
import { madeUpFinding, madeUpSet } from "../app/madeUp.ts";

describe("strips", () => {
  const strips = stripsOf(madeUpSet());

  test("one per subject, with the governing limit at every pose", () => {
    expect(strips.map(({ subject }) => subject)).toEqual(["far crane", "rear left"]);
    const [crane] = strips;
    expect([...crane.use].map((use) => (Number.isNaN(use) ? null : use))).toEqual([
      ...[null, null, null],
      ...[0.1, 0.2, 0.9, 0.7, 1.2],
    ]);
    expect([...crane.governs]).toEqual([-1, -1, -1, 1, 0, 1, 0, 1]);
    expect(crane.most).toBe(1.2);
  });

  test("the line breaks where no limit applies, and what is far over is drawn at the top", () => {
    const x = Float64Array.of(0, 0.25, 0.5, 0.75, 1);
    const place = { left: 10, width: 100, top: 0, height: 14 };
    const use = Float64Array.of(0, mostDrawn, Number.NaN, 0.7, 99);
    expect(stripPath(use, x, place)).toBe("M10 14L35 0M85 7L110 0");
  });
});

describe("low and high of a strip", () => {
  const no = Number.NaN;
  const strip = (check: string, subject: string, low: number[], high: number[], corner: number[]) => ({
    ...{ check, subject, low: Float64Array.from(low), high: Float64Array.from(high) },
    highCorner: Uint16Array.from(corner),
  });
  const strips = [
    strip("hook load", "far crane", [no, 0.3, 0.6], [no, 0.5, 0.9], [0, 4, 5]),
    strip("line lean", "far crane", [no, 0.1, no], [no, 0.7, no], [0, 6, 0]),
    strip("group load", "rear left", [0.5, 0.5, 0.5], [0.6, 0.6, 0.6], [1, 1, 1]),
  ];

  test("join the limits of a subject: the highest use with its corner, and what no corner is below", () => {
    const band = bandOfUse({ strips }, "far crane", 3);
    expect([...band.high]).toEqual([no, 0.7, 0.9]);
    expect([...band.low]).toEqual([no, 0.3, 0.6]);
    expect([...band.corner].slice(1)).toEqual([6, 5]);
    expect([band.worst, band.check]).toEqual([2, "hook load"]);
    const none = bandOfUse({ strips }, "near crane", 3);
    expect([...none.high]).toEqual([no, no, no]);
    expect(none.worst).toBe(-1);
  });

  test("are drawn as an area that breaks where no limit applies", () => {
    const x = Float64Array.of(0, 0.5, 1);
    const place = { left: 0, width: 100, top: 0, height: 14 };
    const band = bandOfUse({ strips }, "far crane", 3);
    expect(stripArea(band.low, band.high, x, place)).toBe("M50 7L100 5L100 8L50 11Z");
  });

  test("the chosen subject comes first, then the highest use", () => {
    const all = stripsOf(madeUpSet());
    expect(inOrderOfUse(all, "").map(({ subject }) => subject)).toEqual(["far crane", "rear left"]);
    expect(inOrderOfUse(all, "rear left").map(({ subject }) => subject)).toEqual(["rear left", "far crane"]);
  });

  test("on the smallest screen four strips fit, and one chosen support leaves two beside it", () => {
    // 720 px high: bar 44, foot 26, scene, timeline; some 255 px are left for bands, rows and strips.
    expect(stripsThatFit(255, 15, false)).toBe(4);
    expect(stripsThatFit(255, 15, true)).toBeGreaterThanOrEqual(2);
    expect(stripsThatFit(255, 3, false)).toBe(3);
    expect(stripsThatFit(400, 15, false)).toBeGreaterThan(6);
    expect(stripsThatFit(120, 15, false)).toBe(1);
  });
});

describe("marks", () => {
  const at = (id: string, step: number, level: "stop" | "caution" | "note") =>
    madeUpFinding({ id, level, worst: { step, progress: 0 } });
  const xOf = (when: { step: number; progress: number }) => (when.step + when.progress) * 10;

  test("close ones are joined under the worst of them", () => {
    const findings = [at("note", 1, "note"), at("stop", 2, "stop"), at("far", 9, "caution")];
    const marks = marksOf(findings, findings[0].set, xOf, 15);
    expect(marks.map(({ x, level, findings: all }) => [x, level, all.map(({ id }) => id)])).toEqual([
      [20, "stop", ["stop", "note"]],
      [90, "caution", ["far"]],
    ]);
  });

  test("findings of other sets and those without a place have no mark", () => {
    const findings = [madeUpFinding({ id: "a", set: "another" }), madeUpFinding({ id: "b", worst: null })];
    expect(marksOf(findings, madeUpFinding({ id: "c" }).set, xOf, 15)).toEqual([]);
  });
});
