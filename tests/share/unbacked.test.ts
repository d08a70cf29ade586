// The row of unbacked parts, the marks of steps without a way back, and what both say.
import { describe, expect, test } from "vitest";
import type { SetResult, UnbackedStretch, WayBack } from "../../src/app/index.ts";
import {
  allBacked,
  extentWords,
  noReturnsOf,
  piecesOf,
  stretchLines,
  unbackedAt,
  unbackedSentences,
} from "../../src/share/index.ts";
import { madeUpSet } from "../app/madeUp.ts";

const accepted = { check: "unbacked", subject: "set", by: "A. Name", reason: "fall zone empty" };
const fall = (support: string, from: number, to: number, yes: boolean) => ({
  ...{ support, from, to, at: (from + to) / 2, words: "the set tips" },
  accepted: yes ? accepted : null,
});
const stretch = (part: Partial<UnbackedStretch>): UnbackedStretch => ({
  ...{ step: 1, from: 0.2, to: 1, falls: [], accepted: false },
  ...{ length: 28, motion: "rolled", minutes: 60 },
  ...part,
});
const backedWith = (stretches: UnbackedStretch[]): SetResult => ({
  ...madeUpSet(),
  backed: { marks: new Uint8Array(8), stretches },
});

describe("the row under the bands", () => {
  test("an accepted stretch is one piece; losses that nobody accepted are cut out as stops", () => {
    expect(piecesOf([stretch({ falls: [fall("far crane", 0.2, 1, true)] })])).toMatchObject([
      { step: 1, from: 0.2, to: 1, accepted: true },
    ]);
    const mixed = stretch({ falls: [fall("far crane", 0.2, 1, true), fall("near crane", 0.5, 0.75, false)] });
    expect(piecesOf([mixed]).map(({ from, to, accepted: yes }) => [from, to, yes])).toEqual([
      [0.2, 0.5, true],
      [0.5, 0.75, false],
      [0.75, 1, true],
    ]);
    const open = stretch({ falls: [fall("far crane", 0.2, 1, false)] });
    expect(piecesOf([open]).map(({ accepted: yes }) => yes)).toEqual([false]);
    const both = stretch({ falls: [fall("far crane", 0.2, 1, false), fall("near crane", 0.5, 1, false)] });
    expect(piecesOf([both]).map(({ from, to }) => [from, to])).toEqual([[0.2, 1]]);
  });

  test("is found at a place of the operation, both ends included", () => {
    const one = stretch({});
    expect(unbackedAt([one], { step: 1, progress: 0.2 })).toBe(one);
    expect(unbackedAt([one], { step: 1, progress: 1 })).toBe(one);
    expect(unbackedAt([one], { step: 1, progress: 0.19 })).toBeNull();
    expect(unbackedAt([one], { step: 2, progress: 0.5 })).toBeNull();
  });

  test("says what falls, at what place, how long, and who accepted it", () => {
    const falls = [fall("far crane", 0.2, 1, true), fall("near crane", 0.5, 0.75, false)];
    expect(stretchLines(stretch({ falls }), "SI")).toEqual([
      "unbacked from 20 % to 100 % of the step: 28.00 m rolled, 60 min",
      "with far crane lost at 60 %, the set tips; accepted by A. Name: fall zone empty",
      "with near crane lost at 63 %, the set tips; accepted by nobody: a stop",
    ]);
    // 28 m / 0.3048 m per ft
    expect(extentWords(stretch({}), "US")).toBe("91.86 ft rolled, 60 min");
    expect(extentWords(stretch({ motion: "", length: 0, minutes: null }), "SI")).toBe(
      "nothing moves, minutes not stated",
    );
  });
});

describe("ways back", () => {
  const way = (step: number, source: WayBack["source"], ok: boolean[]): WayBack => ({
    step,
    source,
    from: ok.map((good, i) => ({
      ...{ progress: i / 2, ok: good, steps: [], findings: [] },
      words: good ? "back where the step began" : `fails ${i}`,
    })),
  });

  test("a stated one that fails is a stop, none at all a note, a proposed one no mark", () => {
    const waysBack = [
      way(0, "plan", [true, true, false]),
      way(1, "none", [true, false, false]),
      way(2, "proposed", [true, true, true]),
    ];
    expect(noReturnsOf({ ...madeUpSet(), waysBack })).toEqual([
      {
        step: 0,
        progress: 1,
        level: "stop",
        words: "the stated way back fails from 100 % of the step: fails 2",
      },
      {
        step: 1,
        progress: 0.5,
        level: "note",
        words: "past the point of no return from 50 % of the step on: fails 1",
      },
    ]);
    expect(noReturnsOf(madeUpSet())).toEqual([]);
  });

  test("and unbacked parts are told in sentences; what is not known yet is not told as good", () => {
    expect(unbackedSentences(madeUpSet(), "SI")).toEqual([
      "which poses are backed is still being worked out",
    ]);
    expect(unbackedSentences(backedWith([]), "SI")).toEqual([allBacked]);
    const set = {
      ...backedWith([stretch({ falls: [fall("far crane", 0.2, 1, true)] })]),
      waysBack: [way(0, "none", [false])],
    };
    const [unbacked, lost] = unbackedSentences(set, "SI");
    expect(unbacked).toMatch(/^step 2 .*: unbacked from 20 % to 100 % .*; with far crane lost .*A\. Name/);
    expect(lost).toMatch(/^step 1 .*: past the point of no return from 0 %/);
  });
});
