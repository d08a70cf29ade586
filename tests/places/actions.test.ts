// The one list of actions: keys that are never in doubt, words that are found, reasons where something cannot be done.
import { describe, expect, test } from "vitest";
import { type AppState, emptyState, planParts } from "../../src/app/index.ts";
import { fullWords, titleOf, whyNot } from "../../src/places/plan/actions/action.ts";
import { isPressed, type Pressed, shortcutsOf } from "../../src/places/plan/actions/keys.ts";
import { actionOf, pageActions } from "../../src/places/plan/actions/pageActions.ts";
import { planActions } from "../../src/places/plan/actions/planActions.ts";
import { found, scoreOf } from "../../src/places/plan/actions/search.ts";
import { actionPressed } from "../../src/places/plan/actions/useKeys.ts";
import { madeUpFinding, madeUpResult } from "../app/madeUp.ts";
import { samplePlan } from "../plan/sample.ts";

const pressed = (key: string, more: Partial<Pressed> = {}): Pressed => {
  return { key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...more };
};

function open(): AppState {
  const plan = samplePlan();
  return {
    ...emptyState,
    document: { plan, draft: plan, errors: [], trying: false, name: "made-up.json", number: 1, opened: 1 },
    result: madeUpResult([madeUpFinding({ id: "a" }), madeUpFinding({ id: "b", words: "Another one." })]),
  };
}

describe("keys", () => {
  test("no key stands for two actions, and no two actions share an id", () => {
    const keys = pageActions.flatMap((one) => one.keys ?? []);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(pageActions.map(({ id }) => id)).size).toBe(pageActions.length);
  });

  test("keys as printed are those that a browser tells of", () => {
    expect(isPressed("Page Down", pressed("PageDown"))).toBe(true);
    expect(isPressed("Space", pressed(" "))).toBe(true);
    expect(isPressed("F", pressed("f"))).toBe(true);
    expect(isPressed("F", pressed("F", { shiftKey: true }))).toBe(true);
    expect(isPressed("?", pressed("?", { shiftKey: true }))).toBe(true);
    expect(isPressed("F", pressed("f", { altKey: true }))).toBe(false);
    expect(isPressed("F", pressed("f", { ctrlKey: true }))).toBe(false);
    expect(isPressed("Ctrl+S", pressed("s", { metaKey: true }))).toBe(true);
    expect(isPressed("Ctrl+S", pressed("S", { ctrlKey: true, shiftKey: true }))).toBe(false);
    // WAI-ARIA 1.2, aria-keyshortcuts: modifiers by their names, alternatives parted by blanks.
    expect(shortcutsOf(["Ctrl+Shift+S", "Page Up", "Space"])).toBe("Control+Shift+S PageUp Space");
  });

  test("a field keeps its own undo, a dialog only lets the file be saved", () => {
    expect(actionPressed(pressed("z", { ctrlKey: true }), false, false)?.id).toBe("undo");
    expect(actionPressed(pressed("z", { ctrlKey: true }), true, false)).toBeNull();
    expect(actionPressed(pressed("Z", { ctrlKey: true, shiftKey: true }), false, false)?.id).toBe("redo");
    expect(actionPressed(pressed("s", { ctrlKey: true }), true, true)?.id).toBe("save");
    expect(actionPressed(pressed("f"), false, true)).toBeNull();
    expect(actionPressed(pressed("q"), false, false)).toBeNull();
  });
});

describe("whether it can be done", () => {
  test("nothing can be undone, saved or run while nothing is open, and it says why", () => {
    for (const id of ["undo", "redo", "save", "csv", "run", "data", "sets", "panel findings"])
      expect(whyNot(actionOf(id), emptyState), id).not.toBe("");
    expect(titleOf(actionOf("undo"), emptyState)).toBe("Undo: nothing was changed");
    expect(whyNot(actionOf("open"), emptyState)).toBe("");
    expect(whyNot(actionOf("find"), emptyState)).toBe("");
  });

  test("undo names what it takes back, with its key", () => {
    const at = 0;
    const entries = [
      { label: "Open", at },
      { label: "far crane: mass 80 t to 90 t", at },
    ].map((one) => ({ ...one, plan: samplePlan() }));
    const state: AppState = { ...open(), history: { ...emptyState.history, entries, index: 1 } };
    expect(titleOf(actionOf("undo"), state)).toBe("Undo: far crane: mass 80 t to 90 t (Ctrl+Z)");
    expect(whyNot(actionOf("redo"), state)).toBe("nothing was undone");
  });

  test("Escape puts away what lies uppermost", () => {
    const away = actionOf("away");
    expect(whyNot(away, emptyState)).not.toBe("");
    const state = open();
    const view = { ...state.view, data: "seats" as const, allStrips: true };
    expect(fullWords(away, { ...state, view })).toBe("Put away: the plan data");
    expect(fullWords(away, { ...state, view: { ...view, data: null } })).toBe("Put away: the strips");
    expect(fullWords(away, { ...state, selected: "far crane" })).toBe(
      "Put away: what is chosen in the scene",
    );
    const spreading: AppState["spreading"] = {
      is: "running",
      asked: "chosen",
      set: "A",
      done: 1,
      of: 9,
      stopping: false,
    };
    expect(fullWords(away, { ...state, spreading })).toBe("Put away: the work on low and high");
    const before = { result: { sets: [] } } as unknown as NonNullable<AppState["before"]>;
    expect(fullWords(away, { ...state, spreading, before })).toBe(
      "Put away: the comparison with the plan before",
    );
  });
});

describe("finding", () => {
  const state = open();
  const all = [...pageActions, ...planActions(state)];
  const first = (typed: string) => found(all, typed)[0]?.id;

  test.each([
    ["undo", "undo"],
    ["edit seats", "edit seats"],
    ["seats edit", "edit seats"],
    ["edit cranes", "edit cranes"],
    ["EDIT LÍMITS", "edit limits"],
    ["rules", "edit limits"],
    ["go to step 2", "step 1"],
    ["shortcuts", "keys"],
    ["dark", "theme dark"],
    ["export", "csv"],
    ["elevation", "view elevation"],
    ["wind tables", "table wind"],
  ])("'%s' finds %s first", (typed, id) => {
    expect(first(typed)).toBe(id);
  });

  test("steps that fit alike stay in their order", () => {
    const steps = found(all, "go to step").map(({ id }) => id);
    expect(steps.filter((id) => /^step \d/.test(id))).toEqual(["step 0", "step 1", "step 2"]);
  });

  test("every typed word must be there; nothing typed leaves all in their order", () => {
    expect(found(all, "edit zebra")).toEqual([]);
    expect(found(all, "  ")).toEqual(all);
    for (const action of found(all, "set")) expect(scoreOf(action, "set")).toBeGreaterThan(0);
  });

  test("every part of the plan data, step, finding, support, set and bundled plan is there, each once", () => {
    const ids = all.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const part of planParts) expect(ids).toContain(`edit ${part}`);
    const { result } = state;
    expect(ids.filter((id) => id.startsWith("finding ")).length).toBe(result?.findings.length);
    expect(ids.filter((id) => /^step \d/.test(id)).length).toBe(result?.sets[0].steps.length);
    expect(ids).toContain("plan demo.json");
  });

  test("every action is found by its own words", () => {
    for (const action of all) expect(found(all, action.words).slice(0, 3), action.words).toContain(action);
  });
});
