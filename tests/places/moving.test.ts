// What goes on while a thing is dragged: one trial a frame and none ahead of its answer; and the use of the cranes before and now.
// Counting by hand; no source needed.
import { expect, test } from "vitest";
import { type AppState, emptyState, type Plan, type Result } from "../../src/app/index.ts";
import { craneUses } from "../../src/places/plan/moving/craneUses.ts";
import { trialsOf } from "../../src/places/plan/moving/trials.ts";

/** A stand-in of the app that counts trials, with frames and a clock that the test moves. */
function bench() {
  const frames: (() => void)[] = [];
  const tried: unknown[] = [];
  let time = 0;
  let state: AppState = emptyState;
  const held = (number: number, errors: number, answered: number, has: "nothing" | "step") => {
    const plan = {} as Plan;
    const error = { path: "a", found: "b", allowed: "c", mend: "d" };
    state = {
      ...emptyState,
      solving: { is: "running", words: "", done: 0, of: 0 },
      answered: { ...emptyState.answered, of: answered, has },
      document: {
        ...{ plan, draft: plan, trying: true, name: "", number, opened: 1 },
        errors: Array.from({ length: errors }, () => error),
      },
    };
  };
  const app = { tryOut: (change: unknown) => tried.push(change), store: { getState: () => state } };
  const trials = trialsOf(
    app as never,
    (work) => frames.push(work),
    () => time,
  );
  const frame = () => {
    for (const work of frames.splice(0)) work();
  };
  return {
    trials,
    tried,
    frame,
    held,
    frames,
    wait: (ms: number) => {
      time += ms;
    },
  };
}

test("only the last of the changes wanted in one frame is tried, and none without a wish", () => {
  const { trials, tried, frame, held, frames } = bench();
  held(1, 0, 1, "step");
  const [a, b, c] = [(p: Plan) => p, (p: Plan) => p, (p: Plan) => p];
  trials.want(a);
  trials.want(b);
  trials.want(c);
  expect(frames.length).toBe(1);
  frame();
  expect(tried).toEqual([c]);
  frame();
  expect(tried.length).toBe(1);
  expect(frames.length).toBe(0);
  trials.want(a);
  trials.drop();
  frame();
  expect(tried.length).toBe(1);
});

test("the next change waits for the answer to the last one, but not for ever and not for a draft with errors", () => {
  const { trials, tried, frame, held, wait } = bench();
  held(1, 0, 1, "step");
  trials.want((p) => p);
  frame();
  expect(tried.length).toBe(1);
  // Another plan is open, and nothing of it is answered.
  held(2, 0, 2, "nothing");
  trials.want((p) => p);
  wait(100);
  frame();
  frame();
  expect(tried.length).toBe(1);
  held(2, 0, 2, "step");
  frame();
  expect(tried.length).toBe(2);
  held(3, 0, 3, "nothing");
  trials.want((p) => p);
  frame();
  expect(tried.length).toBe(2);
  wait(500);
  frame();
  expect(tried.length).toBe(3);
  held(3, 1, 3, "nothing");
  trials.want((p) => p);
  frame();
  expect(tried.length).toBe(4);
});

/** A result of one set of two steps with three stored poses each, and strips of use. */
function resultWith(
  strips: readonly [check: string, subject: string, kind: string, use: number[]][],
  ids = ["a", "b"],
) {
  return {
    sets: [
      {
        setId: "set",
        steps: ids.map((id, i) => ({ step: { id }, first: 3 * i, count: 3 })),
        strips: strips.map(([check, subject, kind, use]) => ({
          ...{ check, subject, kind, limitWords: `limit of ${check}` },
          use: Float64Array.from(use),
        })),
      },
    ],
  } as unknown as Result;
}

test("of every crane the limit that is used most in the step is told, with what it was by the names of set and step", () => {
  const none = Number.NaN;
  const before = resultWith(
    [
      ["chart", "far crane", "far crane", [0.5, 0.6, none, 0.1, 0.1, 0.1]],
      ["tipping", "far crane", "far crane", [0.7, 0.7, 0.7, 0, 0, 0]],
    ],
    ["b", "a"],
  );
  const now = resultWith([
    ["tipping", "far crane", "far crane", [0, 0, 0, 0.2, none, 0.3]],
    ["chart", "far crane", "far crane", [0, 0, 0, 0.4, 0.8, none]],
    ["chart", "near crane", "near crane", [0.9, 0.9, 0.9, none, none, none]],
    ["oil", "rear", "rear train", [1, 1, 1, 1, 1, 1]],
  ]);
  expect(craneUses(now, before, { set: 0, step: 1 })).toEqual([
    { subject: "far crane", limitWords: "limit of chart", before: 0.6, now: 0.8 },
  ]);
  expect(craneUses(now, null, { set: 0, step: 0 }).map(({ subject, before: was }) => [subject, was])).toEqual(
    [
      ["far crane", null],
      ["near crane", null],
    ],
  );
  expect(craneUses(now, null, { set: 1, step: 0 })).toEqual([]);
});
