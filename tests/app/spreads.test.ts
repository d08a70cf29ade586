// Low and high behind the result: asked for set by set once all else is worked out, kept by set, told to stop, widened on
// request, dropped with their plan. Words that come late change nothing.
import { describe, expect, test } from "vitest";
import {
  allFindings,
  type Completing,
  type CornersAsked,
  createApp,
  type Ground,
  type HeldSpread,
  isOfSpread,
  nearestStored,
  type Result,
  storedAt,
  wider,
} from "../../src/app/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { madeUpFinding, madeUpResult, madeUpSet } from "./madeUp.ts";
import { madeUpBrowser } from "./madeUpDesk.ts";

const text = JSON.stringify(samplePlan());

function heldOf(setId: string, part: { done?: number; of?: number; asked?: CornersAsked } = {}): HeldSpread {
  const { done = 41, of = 41, asked = "chosen" } = part;
  const none = new Float64Array(0);
  const whose = new Uint16Array(0);
  const arrays = { low: none, high: none, lowCorner: whose, highCorner: whose };
  const lists = { corners: [], assumed: [], supports: [], worst: [], strips: [], findings: [] };
  return { spread: { setId, done, ...arrays, ...lists }, asked, of, all: 900 };
}

/** Two solved sets; the second of them comes first where the cursor stands on it. */
function twoSets(): Result {
  const one = madeUpResult();
  return { ...one, sets: [one.sets[0], { ...madeUpSet(), setId: "second" }] };
}

const first = madeUpSet().setId;

function testGround() {
  const later: Completing[] = [];
  let stops = 0;
  const asked: {
    set: string;
    corners: CornersAsked;
    told: (done: number, of: number) => void;
    answer: (held: HeldSpread | null) => void;
    refuse: (error: Error) => void;
  }[] = [];
  const ground: Ground = {
    client: {
      solve: (_plan, _progress, completing) => {
        later.push(completing);
        return Promise.resolve(twoSets());
      },
      spread: (_plan, set, corners, told) =>
        new Promise((answer, refuse) => asked.push({ set: set.setId, corners, told, answer, refuse })),
      stopSpread: () => {
        stops++;
      },
      buckling: async () => null,
      tables: async () => null,
      stopTables: () => {},
      stopBuckling: () => {},
      csv: async () => "",
    },
    prepare: () => {
      throw new Error("no set is prepared in this test");
    },
    poseAt: () => {
      throw new Error("no pose is solved in this test");
    },
    whenIdle: () => {},
    desk: madeUpBrowser().page("page").desk,
    now: () => 0,
    nextFrame: () => {},
    stillness: () => false,
  };
  const app = createApp(ground);
  const settle = async () => {
    for (let i = 0; i < 5; i++) await Promise.resolve();
  };
  return { app, later, asked, stops: () => stops, settle, state: () => app.store.getState() };
}

/** A plan that is solved and whole. */
async function whole() {
  const it = testGround();
  it.app.openText(text, "a.json");
  await it.settle();
  it.later[0].completed(twoSets());
  return it;
}

describe("what follows the first answer", () => {
  test("tells how far it is; words that come after it is whole are dropped", async () => {
    const it = testGround();
    it.app.openText(text, "a.json");
    await it.settle();
    it.later[0].progress("trying the ways back", 2, 3);
    expect(it.state().completing).toEqual({
      is: "running",
      words: "trying the ways back",
      done: 2,
      of: 3,
    });
    it.later[0].completed(twoSets());
    expect(it.state().completing.is).toBe("done");
    it.later[0].progress("trying the ways back", 3, 3);
    expect(it.state().completing.is).toBe("done");
  });

  test("of a plan that is gone says nothing", async () => {
    const it = testGround();
    it.app.openText(text, "a.json");
    it.app.openText(text, "b.json");
    it.later[0].progress("trying the ways back", 2, 3);
    it.later[0].completed(twoSets());
    expect(it.state().completing.is).toBe("idle");
    expect(it.asked).toEqual([]);
  });
});

describe("spreads", () => {
  test("are asked for once the result is whole, the cursor's set first, one after another", async () => {
    const it = testGround();
    it.app.openText(text, "a.json");
    await it.settle();
    expect(it.asked).toHaveLength(0);
    it.app.chooseSet(1);
    it.later[0].completed(twoSets());
    expect(it.asked.map(({ set, corners }) => [set, corners])).toEqual([["second", "chosen"]]);
    it.asked[0].told(3, 41);
    expect(it.state().spreading).toEqual({
      is: "running",
      asked: "chosen",
      set: "second",
      done: 3,
      of: 41,
      stopping: false,
    });
    const held = heldOf("second");
    it.asked[0].answer(held);
    await it.settle();
    expect(it.state().spreads).toEqual({ second: held });
    expect(it.asked.map(({ set }) => set)).toEqual(["second", first]);
    it.asked[1].answer(heldOf(first));
    await it.settle();
    expect(Object.keys(it.state().spreads)).toHaveLength(2);
    expect(it.state().spreading.is).toBe("done");
    it.asked[1].told(41, 41);
    expect(it.state().spreading.is).toBe("done");
  });

  test("told to stop keep what they have, and leave the sets not yet begun", async () => {
    const it = await whole();
    it.asked[0].told(12, 41);
    it.app.stopSpread();
    it.app.stopSpread();
    expect(it.stops()).toBe(1);
    expect(it.state().spreading).toMatchObject({ is: "running", stopping: true });
    it.asked[0].answer(heldOf(first, { done: 12 }));
    await it.settle();
    expect(it.state().spreading.is).toBe("done");
    expect(it.state().spreads[first].spread.done).toBe(12);
    expect(it.asked).toHaveLength(1);
    it.app.stopSpread();
    expect(it.stops()).toBe(1);
  });

  test("stopped before the first corner are nothing to show", async () => {
    const it = await whole();
    it.app.stopSpread();
    it.asked[0].answer(heldOf(first, { done: 0 }));
    await it.settle();
    expect(it.state().spreads).toEqual({});
  });

  test("over every corner come on request, for the cursor's set, and never while another is under way", async () => {
    const it = await whole();
    it.app.spread("all");
    expect(it.asked).toHaveLength(1);
    it.asked[0].answer(heldOf(first));
    await it.settle();
    it.asked[1].answer(heldOf("second"));
    await it.settle();
    it.app.spread("all");
    expect(it.asked.at(-1)).toMatchObject({ set: first, corners: "all" });
    expect(it.state().spreading).toMatchObject({ is: "running", asked: "all", done: 0 });
    // Until they are there the chosen ones stay.
    expect(it.state().spreads[first].asked).toBe("chosen");
    it.asked[2].answer(heldOf(first, { asked: "all", done: 900, of: 900 }));
    await it.settle();
    expect(it.state().spreads[first]).toMatchObject({ asked: "all", of: 900 });
  });

  test("of a plan that is gone are dropped, with their progress", async () => {
    const it = await whole();
    it.app.openText(text, "b.json");
    await it.settle();
    it.asked[0].told(7, 41);
    expect(it.state().spreading.is).toBe("idle");
    it.asked[0].answer(heldOf(first));
    await it.settle();
    expect(it.state().spreads).toEqual({});
    expect(it.asked).toHaveLength(1);
  });

  test("a solver that fails says why, and the result stays", async () => {
    const it = await whole();
    it.asked[0].refuse(new Error("out of memory"));
    await it.settle();
    expect(it.state().spreading).toEqual({ is: "failed", words: "out of memory" });
    expect(it.state().result).not.toBeNull();
  });

  test("broken off hide nothing that covered more", () => {
    const chosen = heldOf("a");
    const few = heldOf("a", { asked: "all", done: 12, of: 900 });
    const many = heldOf("a", { asked: "all", done: 300, of: 900 });
    expect(wider(undefined, few)).toBe(few);
    expect(wider(chosen, few)).toBe(chosen);
    expect(wider(chosen, many)).toBe(many);
    expect(wider(many, chosen)).toBe(chosen);
  });

  test("are known at stored poses only", () => {
    const set = madeUpSet();
    expect(storedAt(set, { step: 1, progress: 0.5 })).toBe(4);
    expect(storedAt(set, { step: 1, progress: 0.51 })).toBe(-1);
    expect(storedAt(set, { step: 9, progress: 0 })).toBe(-1);
    expect(nearestStored(set, { step: 1, progress: 0.6 })).toBe(4);
    expect(nearestStored(set, { step: 1, progress: 0.8 })).toBe(5);
    expect(nearestStored(set, { step: 9, progress: 0 })).toBe(-1);
  });

  test("bring findings of their own, told apart from those of the run", () => {
    const own = madeUpFinding({ id: "run" });
    const held = heldOf("a");
    const brought = madeUpFinding({ id: "corner", check: "in the spread: hook load" });
    const all = allFindings({
      result: { ...madeUpResult(), findings: [own] },
      spreads: { a: { ...held, spread: { ...held.spread, findings: [brought] } } },
      bucklings: {},
      tables: {},
    });
    expect(all.map(({ id }) => id)).toEqual(["run", "corner"]);
    expect(all.map(isOfSpread)).toEqual([false, true]);
  });
});
