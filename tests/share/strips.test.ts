// Strips of use and marks of findings.
import { describe, expect, test } from "vitest";
import { highOf, marksOf, mostDrawn, stripPath, stripsOf } from "../../src/share/index.ts";
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

describe("the line of the spread", () => {
  test("is the highest use of any limit of the subject, at every stored pose", () => {
    const no = Number.NaN;
    const strip = (check: string, subject: string, high: number[]) => {
      const [low, highCorner] = [new Float64Array(3), new Uint16Array(3)];
      return { check, subject, low, high: Float64Array.from(high), highCorner };
    };
    const strips = [
      strip("hook load", "far crane", [no, 0.5, 0.9]),
      strip("line lean", "far crane", [no, 0.7, no]),
      strip("group load", "rear left", [0.6, 0.6, 0.6]),
    ];
    expect([...highOf({ strips }, "far crane", 3)]).toEqual([no, 0.7, 0.9]);
    expect([...highOf({ strips }, "near crane", 3)]).toEqual([no, no, no]);
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
