// Low and high behind the result: asked for set by set once all else is worked out, kept by set, dropped with their plan.
import { describe, expect, test } from "vitest";
import { createApp, type Ground, type Result, type SpreadResult, storedAt } from "../../src/app/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { madeUpResult, madeUpSet } from "./madeUp.ts";

const text = JSON.stringify(samplePlan());

function spreadOf(setId: string): SpreadResult {
  const none = new Float64Array(0);
  const whose = new Uint16Array(0);
  const arrays = { low: none, high: none, lowCorner: whose, highCorner: whose };
  return {
    setId,
    corners: [],
    done: 0,
    assumed: [],
    ...arrays,
    supports: [],
    worst: [],
    strips: [],
    findings: [],
  };
}

/** Two solved sets; the second of them comes first where the cursor stands on it. */
function twoSets(): Result {
  const one = madeUpResult();
  return { ...one, sets: [one.sets[0], { ...madeUpSet(), setId: "second" }] };
}

function testGround() {
  const completed: ((result: Result) => void)[] = [];
  const asked: {
    set: string;
    told: (done: number, of: number) => void;
    answer: (spread: SpreadResult | null) => void;
    refuse: (error: Error) => void;
  }[] = [];
  const ground: Ground = {
    client: {
      solve: (_plan, _progress, whole) => {
        completed.push(whole);
        return Promise.resolve(twoSets());
      },
      spread: (_plan, set, told) =>
        new Promise((answer, refuse) => asked.push({ set: set.setId, told, answer, refuse })),
      csv: async () => "",
    },
    prepare: () => {
      throw new Error("no set is prepared in this test");
    },
    poseAt: () => {
      throw new Error("no pose is solved in this test");
    },
    whenIdle: () => {},
    nextFrame: () => {},
    stillness: () => false,
  };
  const app = createApp(ground);
  const settle = async () => {
    for (let i = 0; i < 5; i++) await Promise.resolve();
  };
  return { app, completed, asked, settle, state: () => app.store.getState() };
}

describe("spreads", () => {
  test("are asked for once the result is whole, the cursor's set first, one after another", async () => {
    const it = testGround();
    it.app.openText(text, "a.json");
    await it.settle();
    expect(it.asked).toHaveLength(0);
    it.app.chooseSet(1);
    it.completed[0](twoSets());
    expect(it.asked.map(({ set }) => set)).toEqual(["second"]);
    it.asked[0].told(3, 41);
    expect(it.state().spreading).toEqual({
      is: "running",
      words: "low and high: corner",
      done: 3,
      of: 41,
    });
    // Progress within the same tenth draws nothing anew.
    it.asked[0].told(4, 41);
    expect(it.state().spreading).toMatchObject({ done: 3 });
    const spread = spreadOf("second");
    it.asked[0].answer(spread);
    await it.settle();
    expect(it.state().spreads).toEqual({ second: spread });
    expect(it.asked.map(({ set }) => set)).toEqual(["second", madeUpSet().setId]);
    it.asked[1].answer(spreadOf(madeUpSet().setId));
    await it.settle();
    expect(Object.keys(it.state().spreads)).toHaveLength(2);
    expect(it.state().spreading.is).toBe("done");
  });

  test("of a plan that is gone are dropped, with their progress", async () => {
    const it = testGround();
    it.app.openText(text, "a.json");
    await it.settle();
    it.completed[0](twoSets());
    it.app.openText(text, "b.json");
    await it.settle();
    it.asked[0].told(7, 41);
    expect(it.state().spreading.is).toBe("idle");
    it.asked[0].answer(spreadOf(madeUpSet().setId));
    await it.settle();
    expect(it.state().spreads).toEqual({});
    expect(it.asked).toHaveLength(1);
  });

  test("a solver that fails says why, and the result stays", async () => {
    const it = testGround();
    it.app.openText(text, "a.json");
    await it.settle();
    it.completed[0](twoSets());
    it.asked[0].refuse(new Error("out of memory"));
    await it.settle();
    expect(it.state().spreading).toEqual({ is: "failed", words: "out of memory" });
    expect(it.state().result).not.toBeNull();
  });

  test("are known at stored poses only", () => {
    const set = madeUpSet();
    expect(storedAt(set, { step: 1, progress: 0.5 })).toBe(4);
    expect(storedAt(set, { step: 1, progress: 0.51 })).toBe(-1);
    expect(storedAt(set, { step: 9, progress: 0 })).toBe(-1);
  });
});
