// Editing the draft: errors leave the last good plan, trying out leaves no trace, undo and redo solve what they come to.
import { expect, test } from "vitest";
import { createStore } from "zustand/vanilla";
import { editing } from "../../src/app/editing.ts";
import { type AppState, changesUnsaved, emptyState } from "../../src/app/index.ts";
import { checkPlan, type Plan, planHash } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";

/** The commands on a bare store, and the plans that were handed on to be solved. */
function opened() {
  const store = createStore<AppState>(() => emptyState);
  const solved: [plan: Plan, number: number][] = [];
  let clock = 0;
  const app = editing(store, {
    solve: (plan, number) => void solved.push([plan, number]),
    forget: () => {},
    now: () => ++clock,
  });
  app.openText(JSON.stringify(samplePlan()), "sample.json");
  const document = () => {
    const { document: it } = store.getState();
    if (it === null) throw new Error("nothing is open");
    return it;
  };
  return { app, store, solved, document, history: () => store.getState().history };
}

const titled =
  (title: string) =>
  (plan: Plan): Plan => ({ ...plan, header: { ...plan.header, title } });
const mass =
  (mass_t: number) =>
  (plan: Plan): Plan => {
    const [first, ...rest] = plan.transporters;
    return { ...plan, transporters: [{ ...first, mass_t }, ...rest] };
  };

test("a good edit is entered, is the plan itself and no copy of it, and is solved under a new number", () => {
  const { app, solved, document, history } = opened();
  const before = document();
  app.edit("Title changed", titled("new"));
  expect(document().plan).toBe(document().draft);
  expect(document().plan?.sets).toBe(before.plan?.sets);
  expect(solved.map(([, number]) => number)).toEqual([before.number, document().number]);
  expect(solved[1][0]).toBe(document().draft);
  expect(history().entries.map(({ label, at }) => [label, at])).toEqual([
    ["Opened sample.json", 1],
    ["Title changed", 2],
  ]);
});

test("an edit with errors is entered too; the last good plan stays, unsolved anew, and undo ends the errors", () => {
  const { app, solved, document, history } = opened();
  const good = document();
  app.edit("Mass of the front train -3 t", mass(-3));
  expect(document().errors.map(({ path }) => path)).toEqual(["transporters[0].mass_t"]);
  const judged = checkPlan(document().draft);
  expect(document().errors).toEqual(judged.ok ? [] : judged.errors);
  expect(document().plan).toBe(good.plan);
  expect(document().draft.transporters[0].mass_t).toBe(-3);
  // One may go on editing what is faulty.
  app.edit("Title changed", titled("new"));
  expect(document()).toMatchObject({ plan: good.plan, draft: { header: { title: "new" } } });
  expect(solved).toHaveLength(1);
  app.undo();
  app.undo();
  expect(document()).toMatchObject({ errors: [], number: good.number });
  expect(document().draft).toBe(good.plan);
  expect(solved).toHaveLength(1);
  app.redo();
  app.redo();
  expect(document().errors).toHaveLength(1);
  app.edit("Mass of the front train 17 t", mass(17));
  expect(document().errors).toEqual([]);
  expect(document().plan).toBe(document().draft);
  expect(solved).toHaveLength(2);
  expect(history().index).toBe(3);
});

test("a change that leaves the draft as it was is no entry, also when it is written anew", () => {
  const { app, solved, document, history } = opened();
  const before = document();
  app.edit("Nothing", (plan) => plan);
  app.edit("The same title", titled(before.draft.header.title));
  app.edit("The same, word by word", (plan) => structuredClone(plan));
  expect(document()).toEqual(before);
  expect(document().draft).toBe(before.draft);
  expect(history().entries).toHaveLength(1);
  expect(solved).toHaveLength(1);
});

test("what is tried out is solved and leaves no entry; each time it starts from the committed draft", () => {
  const { app, solved, document, history } = opened();
  const committed = document().draft;
  for (const t of [11, 12, 13])
    app.tryOut((plan) => {
      expect(plan).toBe(committed);
      return mass(t)(plan);
    });
  expect(document()).toMatchObject({ trying: true, errors: [] });
  expect(document().plan?.transporters[0].mass_t).toBe(13);
  expect(solved).toHaveLength(4);
  expect(history().entries).toHaveLength(1);
  app.tryOut(mass(-1));
  expect(document().errors).toHaveLength(1);
  expect(document().plan?.transporters[0].mass_t).toBe(13);
  app.tryOut(null);
  expect(document()).toMatchObject({ trying: false, errors: [] });
  expect(document().plan).toBe(committed);
  expect(changesUnsaved(history())).toBe(0);
});

test("what was tried out last and is then committed is one entry, the same object, and not solved twice", () => {
  const { app, solved, document, history } = opened();
  app.tryOut(mass(13));
  const tried = document().draft;
  app.edit("Mass 13 t", mass(13));
  expect(document()).toMatchObject({ trying: false });
  expect(document().draft).toBe(tried);
  expect(history().entries.map(({ label }) => label)).toEqual(["Opened sample.json", "Mass 13 t"]);
  expect(solved).toHaveLength(2);
  app.undo();
  expect(history().index).toBe(0);
});

test("a hundred edits undone and redone come to the same hashes, and any entry can be gone to", () => {
  const { app, document, history } = opened();
  const hashes = [planHash(document().draft)];
  for (let i = 1; i <= 100; i++) {
    // Every seventh is faulty.
    app.edit(`edit ${i}`, i % 7 === 0 ? mass(-i) : mass(10 + i / 10));
    hashes.push(planHash(document().draft));
  }
  for (let i = 99; i >= 0; i--) {
    app.undo();
    expect(planHash(document().draft)).toBe(hashes[i]);
  }
  for (let i = 1; i <= 100; i++) {
    app.redo();
    expect(planHash(document().draft)).toBe(hashes[i]);
    expect(document().errors.length > 0).toBe(i % 7 === 0);
  }
  for (const i of [57, 3, 100, 0, 49]) {
    app.toEntry(i);
    expect(planHash(document().draft)).toBe(hashes[i]);
    expect(history().index).toBe(i);
  }
});

test("a plan made here is unsaved from the start; a faulty one is not opened and its errors are shown", () => {
  const { app, store, document, history } = opened();
  expect(app.openPlan(titled("made here")(samplePlan()), "new plan")).toBe(true);
  expect(document()).toMatchObject({ name: "new plan", opened: 2 });
  expect(changesUnsaved(history())).toBe(1);
  expect(app.openPlan(mass(-3)(samplePlan()), "faulty")).toBe(false);
  expect(document().name).toBe("new plan");
  expect(store.getState().failure).toMatchObject({
    name: "faulty",
    errors: [{ path: "transporters[0].mass_t" }],
  });
});
