// The history of a document: any edits undone and redone give plans of the same hash; how far the file is behind.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  atEntry,
  beginning,
  changesUnsaved,
  edited,
  entryNow,
  type History,
  redone,
  savedAt,
  undone,
} from "../../src/app/history.ts";
import { type Plan, planHash } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";

/** What a planner may do to a plan, as pure changes that share what they leave. */
const change = fc.oneof(
  fc.record({ is: fc.constant("title" as const), to: fc.string({ maxLength: 12 }) }),
  fc.record({ is: fc.constant("mass" as const), to: fc.integer({ min: 1, max: 900 }) }),
  fc.record({ is: fc.constant("drop step" as const), to: fc.nat(40) }),
  fc.record({ is: fc.constant("copy step" as const), to: fc.nat(40) }),
);
type Change = typeof change extends fc.Arbitrary<infer T> ? T : never;

function changed(plan: Plan, one: Change): Plan {
  const [set, ...rest] = plan.sets;
  const steps = [...set.steps];
  switch (one.is) {
    case "title":
      return { ...plan, header: { ...plan.header, title: one.to } };
    case "mass": {
      const [first, ...more] = plan.transporters;
      return { ...plan, transporters: [{ ...first, mass_t: one.to / 10 }, ...more] };
    }
    case "drop step":
      steps.splice(one.to % Math.max(1, steps.length), 1);
      break;
    case "copy step":
      if (steps.length > 0) {
        const step = steps[one.to % steps.length];
        steps.splice(one.to % steps.length, 0, { ...step, id: `${step.id}+` });
      }
  }
  return { ...plan, sets: [{ ...set, steps }, ...rest] };
}

test("any sequence of edits undone gives the plan it began with, and redone the plan it ended with, by their hashes", () => {
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 30 }), (changes) => {
      const first = samplePlan();
      const begun = planHash(first);
      let history = beginning(first, "Opened", 0);
      const hashes = [begun];
      changes.forEach((one, i) => {
        history = edited(history, one.is, changed(entryNow(history).plan, one), i + 1);
        hashes.push(planHash(entryNow(history).plan));
      });
      const ended = hashes.at(-1);
      for (let i = changes.length - 1; i >= 0; i--) {
        history = undone(history);
        expect(planHash(entryNow(history).plan)).toBe(hashes[i]);
      }
      expect(planHash(entryNow(history).plan)).toBe(begun);
      expect(undone(history)).toBe(history);
      for (const _ of changes) history = redone(history);
      expect(planHash(entryNow(history).plan)).toBe(ended);
      expect(redone(history)).toBe(history);
      expect(history.entries.map(({ label }) => label)).toEqual(["Opened", ...changes.map(({ is }) => is)]);
    }),
    { numRuns: 40 },
  );
});

/** The same moves on a history and on a list of letters, which knows nothing of it. */
test("moves about in a history answer as a plain list of states does, with every count of changes not saved", () => {
  const moves = fc.array(fc.constantFrom("edit", "undo", "redo", "save", "jump"), { maxLength: 60 });
  fc.assert(
    fc.property(moves, fc.infiniteStream(fc.nat(50)), (all, jumps) => {
      const plan = samplePlan();
      let history: History = beginning(plan, "0", 0);
      let [states, at, made] = [["0"], 0, 0];
      // Which way leads from the file to the document: changes made good for, or made anew, are steps of a walk.
      let walk: string[] = ["0"];
      const walkTo = (state: string, before: string) => {
        if (walk.at(-2) === state) walk.pop();
        else if (state !== before) walk.push(state);
      };
      for (const move of all) {
        const before = states[at];
        if (move === "edit") {
          const label = String(++made);
          history = edited(history, label, { ...plan }, made);
          states = [...states.slice(0, at + 1), label];
          at += 1;
          walkTo(label, before);
        } else if (move === "save") {
          history = savedAt(history);
          walk = [before];
        } else {
          const wanted = move === "jump" ? jumps.next().value : at + (move === "undo" ? -1 : 1);
          const to = Math.min(states.length - 1, Math.max(0, wanted));
          history =
            move === "undo" ? undone(history) : move === "redo" ? redone(history) : atEntry(history, to);
          const by = Math.sign(to - at);
          while (at !== to) {
            const left = states[at];
            at += by;
            walkTo(states[at], left);
          }
        }
        expect(history.entries.map(({ label }) => label)).toEqual(states);
        expect(entryNow(history).label).toBe(states[at]);
        expect(changesUnsaved(history)).toBe(walk.length - 1);
      }
    }),
    { numRuns: 200 },
  );
});

test("undo has no limit: a thousand edits and back", () => {
  let history = beginning(samplePlan(), "Opened", 0);
  const first = entryNow(history).plan;
  for (let i = 1; i <= 1000; i++) history = edited(history, `${i}`, { ...entryNow(history).plan }, i);
  expect(history.entries).toHaveLength(1001);
  for (let i = 0; i < 1000; i++) history = undone(history);
  expect(entryNow(history).plan).toBe(first);
});
