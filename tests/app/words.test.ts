// Words on the screen: every kind of step says what it does, with its numbers in the chosen units.
import { expect, test } from "vitest";
import { csvName, rememberedView, type Step, stepName, stepWords } from "../../src/app/index.ts";
import { samplePlan } from "../plan/sample.ts";

const plan = samplePlan();
const step = (id: string): Step => {
  const found = plan.sets[0].steps.find((one) => one.id === id);
  if (found === undefined) throw new Error(`the sample has no step ${id}`);
  return found;
};

test("numbers of the file in the units of the screen", () => {
  expect(stepWords(plan, step("02"), "SI")).toBe("Roll 12.00 m forward");
  // 12 m = 39.37 ft (1 ft = 0.3048 m exactly, NIST SP 811).
  expect(stepWords(plan, step("02"), "US")).toBe("Roll 39.37 ft forward");
  const back: Step = { id: "b", do: "roll", distance_m: -1.5, carries: [] };
  expect(stepWords(plan, back, "SI")).toBe("Roll 1.50 m back");
  expect(stepWords(plan, step("07"), "SI")).toBe("Jack down front left, front right until a gap of 50 mm");
  expect(stepWords(plan, step("08"), "SI")).toBe("Jack up all groups of rear by 20 mm");
  expect(stepWords(plan, step("03"), "SI")).toBe("Hook up the far crane");
});

test("every kind of step has words, and no value of any is left out as undefined", () => {
  const kinds = new Set<string>();
  for (const one of plan.sets[0].steps) {
    kinds.add(one.do);
    const words = stepWords(plan, one, "SI");
    expect(words, one.do).toMatch(/^[A-Z]/);
    expect(words, one.do).not.toMatch(/undefined|NaN|object/);
  }
  expect(kinds.size).toBeGreaterThanOrEqual(18);
});

test("a step is called by its title, else by what it does", () => {
  expect(stepName({ id: "1", do: "roll", distance_m: 1, carries: [] })).toBe("Roll");
  expect(stepName({ id: "1", do: "roll", distance_m: 1, carries: [], title: "On to the line" })).toBe(
    "On to the line",
  );
});

test("the file of an export is named by title and revision, with signs that file systems refuse taken out", () => {
  const header = { ...plan.header, title: 'Alder/Cut: "set 1" (invented)', revision: "B.2" };
  expect(csvName({ ...plan, header })).toBe("Alder-Cut-set-1-invented-B.2.csv");
  expect(csvName({ ...plan, header: { ...header, title: "", revision: "" } })).toBe("plan.csv");
});

test("what is remembered is read with care", () => {
  const kept = (text: string | null) => ({ getItem: () => text });
  expect(rememberedView(kept('{"units":"US","theme":"dark","width":"travel"}'), false)).toEqual({
    units: "US",
    theme: "dark",
    width: "travel",
  });
  expect(rememberedView(kept('{"units":"stone","theme":3,"width":"toString"}'), true)).toEqual({
    theme: "dark",
  });
  expect(rememberedView(kept("not JSON"), false)).toEqual({ theme: "light" });
  expect(rememberedView(kept("null"), false)).toEqual({ theme: "light" });
  expect(rememberedView(null, true)).toEqual({ theme: "dark" });
});
