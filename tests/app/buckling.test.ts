// The search for buckling as the screen runs it: told how far it is, stopped with what there is, none of it for a plan that
// is gone. The search itself: tests/checks/buckling.test.ts. No source needed.

import { describe, expect, test } from "vitest";
import {
  type BucklingStage,
  createApp,
  type Ground,
  leastStage,
  type SetBuckling,
  stageAt,
} from "../../src/app/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { madeUpResult } from "./madeUp.ts";
import { madeUpBrowser } from "./madeUpDesk.ts";

const stage = (step: number, progress: number, factor: number | null): BucklingStage => ({
  step,
  progress,
  why: "rest",
  factor,
  moment: 1,
  shape: [],
  reference: 1,
});
const found: SetBuckling = {
  asked: "stages",
  stages: [stage(0, 0, 5), stage(0, 1, 2.5), stage(1, 1, null)],
  of: 3,
  findings: [],
};

function testGround() {
  const asked: {
    told: (done: number, of: number) => void;
    answer: (found: SetBuckling | null) => void;
    refuse: (error: Error) => void;
  }[] = [];
  let stops = 0;
  const ground: Ground = {
    client: {
      solve: async () => madeUpResult(),
      spread: async () => null,
      stopSpread: () => {},
      buckling: (_plan, _set, _asked, told) =>
        new Promise((answer, refuse) => asked.push({ told, answer, refuse })),
      tables: async () => null,
      stopTables: () => {},
      stopBuckling: () => {
        stops++;
      },
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
  const open = async () => {
    app.openText(JSON.stringify(samplePlan()), "sample.json");
    await settle();
  };
  return { app, asked, settle, open, stops: () => stops };
}

describe("the search for buckling", () => {
  test("says how far it is, keeps what it finds, and is asked once at a time", async () => {
    const it = testGround();
    await it.open();
    it.app.buckle();
    it.app.buckle();
    expect(it.asked).toHaveLength(1);
    it.asked[0].told(2, 3);
    expect(it.app.store.getState().buckling).toMatchObject({ is: "running", done: 2, of: 3 });
    it.asked[0].answer(found);
    await it.settle();
    const state = it.app.store.getState();
    expect(state.buckling.is).toBe("done");
    expect(Object.values(state.bucklings)).toEqual([found]);
  });

  test("is told to stop once", async () => {
    const it = testGround();
    await it.open();
    it.app.stopBuckling();
    expect(it.stops()).toBe(0);
    it.app.buckle();
    it.app.stopBuckling();
    it.app.stopBuckling();
    expect(it.stops()).toBe(1);
    expect(it.app.store.getState().buckling).toMatchObject({ is: "running", stopping: true });
  });

  test("what comes for a plan that is gone is dropped; a failure is told", async () => {
    const it = testGround();
    await it.open();
    it.app.buckle();
    await it.open();
    it.asked[0].answer(found);
    await it.settle();
    expect(it.app.store.getState()).toMatchObject({ bucklings: {}, buckling: { is: "idle" } });
    it.app.buckle();
    it.asked[1].refuse(new Error("no memory"));
    await it.settle();
    expect(it.app.store.getState().buckling).toEqual({ is: "failed", words: "no memory" });
  });

  test("a chosen stage moves the cursor there and shows its shape", async () => {
    const it = testGround();
    await it.open();
    it.app.buckle();
    it.asked[0].answer(found);
    await it.settle();
    it.app.chooseStage(found.stages[1]);
    const state = it.app.store.getState();
    expect(state.cursor).toMatchObject({ step: 0, progress: 1 });
    expect(state.view.buckled).toBe(true);
    expect(stageAt(state)).toBe(found.stages[1]);
    expect(stageAt({ ...state, cursor: { ...state.cursor, progress: 0.5 } })).toBeNull();
  });
});

test("the least of the stages leaves out those without a factor", () => {
  expect(leastStage(found.stages)).toBe(found.stages[1]);
  expect(leastStage([stage(0, 0, null)])).toBeNull();
});
