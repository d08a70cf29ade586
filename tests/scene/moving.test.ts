// Things that are moved in the scene: where their handles stand, what a pull and a snap make of them, and the plan that comes
// of it. Plane geometry by hand; common practice for grids, no source. Random cases with a fixed seed, in the titles.
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planHash, readPlan } from "../../src/plan/index.ts";
import { handlesOf, nearestTo, pulled } from "../../src/scene/moving/handlePlaces.ts";
import {
  axisMarks,
  type Movable,
  marksFor,
  movablesOf,
  movedTo,
  standingOf,
  whyFixed,
} from "../../src/scene/moving/movable.ts";
import { lengthWords, movedWords, standingWords } from "../../src/scene/moving/movedWords.ts";
import { outlinesOf } from "../../src/scene/moving/outlines.ts";
import { nudged, reachAt, snapped } from "../../src/scene/moving/snapping.ts";
import { poseAt, prepareContext, runSet, worldOf } from "../../src/sequence/index.ts";

const seed = 20260528;
const read = readPlan(readFileSync("scenarios/demo.json", "utf8"));
if (!read.ok) throw new Error("the demonstration plan has errors");
const { plan } = read;
const all = movablesOf(plan, 0);
const thing = (key: string): Movable => {
  const found = all.find((one) => one.key === key);
  if (found === undefined) throw new Error(`no ${key} among ${all.map((one) => one.key).join(", ")}`);
  return found;
};
const free = { shiftKey: false, altKey: true };
const fine = { shiftKey: false, altKey: false };
const coarse = { shiftKey: true, altKey: false };

describe("what can be moved", () => {
  test("is every crane, transporter, bunk and pick, and the start of the set, each at its numbers", () => {
    expect(all.map(({ key }) => key)).toEqual([
      "start set-1",
      "transporter rear",
      "transporter front",
      "bunk rear 0",
      "bunk front 0",
      "pick far-crane",
      "pick near-crane",
      "crane far-crane",
      "crane near-crane",
    ]);
    // As the file has them.
    expect(standingOf(plan, thing("crane far-crane"))).toEqual({ along: 277, across: 12.5 });
    expect(standingOf(plan, thing("transporter front"))).toEqual({ along: 36, across: null });
    expect(standingOf(plan, thing("pick near-crane"))).toEqual({ along: 5, across: null });
    expect(standingOf(plan, thing("start set-1"))).toEqual({ along: 138, across: null });
  });

  test(`moved there and back gives the same plan, whatever the thing and the way (seed ${seed})`, () => {
    const hash = planHash(plan);
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.array(
          fc.tuple(
            fc.double({ min: -90, max: 90, noNaN: true }),
            fc.double({ min: -9, max: 9, noNaN: true }),
          ),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        (one, ways) => {
          const from = standingOf(plan, one);
          if (from === null) throw new Error(`${one.key} stands nowhere`);
          let there = plan;
          for (const [along, across] of ways)
            there = movedTo(there, one, {
              along: from.along + along,
              across: from.across === null ? null : from.across + across,
            });
          const back = movedTo(there, one, from);
          expect(planHash(back)).toBe(hash);
          // What was not moved is shared.
          expect(back.site).toBe(plan.site);
        },
      ),
      { seed, numRuns: 100 },
    );
  });

  test("moved to where it stands is the very same plan", () => {
    for (const one of all) {
      const at = standingOf(plan, one);
      expect(at === null ? null : movedTo(plan, one, at)).toBe(plan);
    }
  });
});

describe("snapping", () => {
  test(`keeps to the grid of 0.1 m, 0.5 m with Shift, and to the millimetre with Alt (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (value) => {
        for (const [held, step] of [
          [fine, 0.1],
          [coarse, 0.5],
          [free, 0.001],
        ] as const) {
          const { value: at } = snapped(value, "SI", held);
          // Half a step away at most; 1e-5 m is what the digits kept add.
          expect(Math.abs(at - value)).toBeLessThanOrEqual(step / 2 + 1e-5);
          expect(Math.abs(at / step - Math.round(at / step))).toBeLessThan(1e-6);
          expect(snapped(at, "SI", held).value).toBe(at);
        }
      }),
      { seed },
    );
  });

  test("keeps to quarters of a foot and whole feet for who reads feet: 0.3048 m by definition", () => {
    expect(snapped(0.3, "US", coarse).value).toBe(0.3048);
    expect(snapped(0.08, "US", fine).value).toBe(0.0762);
    expect(snapped(10, "US", coarse).value).toBe(10.0584);
  });

  test("is taken in by the nearest mark within reach, and with Alt by none", () => {
    const marks = [
      { at: 12, words: "cross-frame" },
      { at: 12.4, words: "splice" },
    ];
    expect(snapped(12.26, "SI", fine, marks, 0.3)).toEqual({ value: 12.4, mark: marks[1] });
    expect(snapped(12.19, "SI", coarse, marks, 0.3)).toEqual({ value: 12, mark: marks[0] });
    expect(snapped(12.8, "SI", fine, marks, 0.3)).toEqual({ value: 12.8, mark: null });
    expect(snapped(12.268, "SI", free, marks, 0.3)).toEqual({ value: 12.268, mark: null });
    expect(snapped(-0.14, "SI", fine, axisMarks, 0.2).value).toBe(0);
    // 7 px at 14 px to the metre is half a metre.
    expect(reachAt(14)).toBe(0.5);
  });

  test("offers the stations of the set to picks, and those as the deck counts them to bunks", () => {
    const [set] = plan.sets;
    const stations = marksFor(set, thing("pick far-crane")).map(({ at }) => at);
    for (const { at_m } of [...set.crossFrames, ...set.splices, ...(set.stiffeners ?? [])])
      expect(stations).toContain(at_m);
    expect(marksFor(set, thing("bunk front 0")).map(({ at }) => at)).toEqual(stations.map((at) => at - 36));
    expect(marksFor(set, thing("crane far-crane"))).toEqual([]);
  });

  test("is left by arrow keys in steps of the grid", () => {
    expect(nudged(277, 1, "SI", fine)).toBe(277.1);
    expect(nudged(277.1, -1, "SI", coarse)).toBe(276.6);
    expect(nudged(277, 1, "SI", free)).toBe(277.01);
    expect(nudged(0, -1, "US", coarse)).toBe(-0.3048);
  });
});

describe("pointing and pulling", () => {
  test("means the nearest handle within reach", () => {
    const places = [
      { x: 10, y: 10 },
      { x: 22, y: 10 },
    ];
    expect(nearestTo(places, 17, 10, 18)).toBe(1);
    expect(nearestTo(places, 16, 10, 18)).toBe(0);
    expect(nearestTo(places, 60, 10, 18)).toBe(-1);
    expect(nearestTo([], 0, 0, 18)).toBe(-1);
  });

  test("goes forward to the right, and to the left up the screen in a plan view alone", () => {
    const from = { along: 277, across: 12.5 };
    expect(pulled(from, "plan", 8, 16, 4)).toEqual({ along: 279, across: 12 });
    expect(pulled(from, "elevation", 8, 16, 40)).toEqual({ along: 279, across: 12.5 });
    expect(pulled({ along: 36, across: null }, "plan", 8, -4, 40)).toEqual({ along: 35.5, across: null });
  });
});

describe("words", () => {
  const crane = thing("crane far-crane");
  const from = { along: 277, across: 12.5 };
  test("name a move by its way and its end", () => {
    expect(movedWords(crane, from, { along: 279, across: 12.5 }, "SI")).toBe(
      "far-crane moved 2.0 m forward, to 279.0 m",
    );
    expect(movedWords(crane, from, { along: 276.75, across: 0 }, "SI")).toBe(
      "far-crane moved 0.25 m back and 12.5 m to the right, to 276.75 m, y 0.0 m",
    );
    expect(
      movedWords(thing("pick far-crane"), { along: 55, across: null }, { along: 54.9, across: null }, "SI_t"),
    ).toBe("pick of far-crane moved 0.1 m back, to 54.9 m");
    expect(movedWords(crane, from, { along: 277 + 3.048, across: 12.5 }, "US")).toMatch(
      /^far-crane moved 10\.0 ft forward, to /,
    );
  });
  test("name a place", () => {
    expect(standingWords(crane, from, "SI")).toBe("Chainage 277.0 m, y 12.5 m");
    expect(lengthWords(-0.00001, "SI")).toBe("0.0 m");
  });
});

describe("handles", () => {
  const ctx = prepareContext(plan, "set-1");
  const run = runSet(ctx, []);
  const posed = (id: string) => {
    const step = run.steps.find((one) => one.step.id === id);
    if (step === undefined) throw new Error(`no step ${id}`);
    const pose = poseAt(ctx, step, 1);
    return { plan, set: plan.sets[0], situation: pose.situation, world: worldOf(ctx, pose) };
  };
  const drawn = posed("brief");

  test("stand where things are drawn, while the draft is the plan", () => {
    const handles = handlesOf(drawn, plan);
    expect(handles.map((one) => one.thing.key)).toEqual(all.map(({ key }) => key));
    for (const { shift, fixed } of handles) expect([shift, fixed]).toEqual([[0, 0], ""]);
    const at = (key: string) => handles.find((one) => one.thing.key === key)?.at ?? [0, 0, 0];
    // By the plan's own numbers: the start at 138 m, decks and picks counted from there.
    expect(at("crane far-crane").slice(0, 2)).toEqual([277, 12.5]);
    // 0.01 m: the set lies on a grade, along which its stations count.
    expect(Math.abs(at("transporter front")[0] - (138 + 36))).toBeLessThan(0.01);
    expect(Math.abs(at("bunk front 0")[0] - (138 + 36))).toBeLessThan(0.01);
    expect(Math.abs(at("pick far-crane")[0] - (138 + 55))).toBeLessThan(0.05);
    expect(Math.abs(at("start set-1")[0] - 138)).toBeLessThan(0.05);
    for (const one of handles) expect(outlinesOf(one, drawn, "plan")).toEqual([]);
  });

  test("go with the draft before it is solved, and take along what stands on them", () => {
    const draft = movedTo(plan, thing("start set-1"), { along: 139.5, across: null });
    const shifts = Object.fromEntries(
      handlesOf(drawn, draft).map(({ thing: { key }, shift }) => [key, shift[0]]),
    );
    expect(shifts).toEqual({
      ...Object.fromEntries(all.map(({ key }) => [key, 1.5])),
      "crane far-crane": 0,
      "crane near-crane": 0,
    });
    const deck = movedTo(plan, thing("transporter rear"), { along: 9, across: null });
    const moved = handlesOf(drawn, deck).filter(({ shift }) => shift[0] !== 0);
    expect(moved.map(({ thing: { key } }) => key)).toEqual(["transporter rear", "bunk rear 0"]);
    for (const one of moved) expect(outlinesOf(one, drawn, "elevation").length).toBeGreaterThan(0);
  });

  test("say that the numbers are those of the start once the set has rolled on", () => {
    const rolled = handlesOf(posed("second-roll"), plan);
    expect(rolled.filter(({ since }) => since !== "").map((one) => one.thing.key)).toEqual(["start set-1"]);
    expect(handlesOf(drawn, plan).every(({ since }) => since === "")).toBe(true);
  });

  test("say why a transporter that has left the set cannot be moved by its place at the start", () => {
    const out = posed("front-out");
    const [set] = plan.sets;
    expect(whyFixed(set, thing("transporter front"), out.situation)).toMatch(/has left the set/);
    expect(whyFixed(set, thing("transporter rear"), out.situation)).toBe("");
    expect(whyFixed(set, thing("crane far-crane"), out.situation)).toBe("");
  });
});
