// The commands: opening, late results, bad files, the cursor and its solved pose, running, choosing findings.
import { describe, expect, test } from "vitest";
import {
  type App,
  createApp,
  type Ground,
  type Pose,
  type Result,
  type SetContext,
} from "../../src/app/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { madeUpFinding, madeUpResult, supports } from "./madeUp.ts";
import { madeUpBrowser } from "./madeUpDesk.ts";

const text = (title = "sample"): string => {
  const plan = samplePlan();
  return JSON.stringify({ ...plan, header: { ...plan.header, title } });
};

/** A ground whose solver answers when told, and whose poses say where they were asked for. */
function testGround() {
  const waiting: { title: string; answer: (result: Result) => void; refuse: (error: Error) => void }[] = [];
  const asked: [number, number][] = [];
  const idle: (() => void)[] = [];
  const frames: ((now: number) => void)[] = [];
  let still = false;
  const context: SetContext = { ...prepareContext(samplePlan(), samplePlan().sets[0].id), supports };
  const ground: Ground = {
    client: {
      solve: (plan) =>
        new Promise((answer, refuse) => waiting.push({ title: plan.header.title, answer, refuse })),
      spread: async () => null,
      stopSpread: () => {},
      buckling: async () => null,
      tables: async () => null,
      stopTables: () => {},
      stopBuckling: () => {},
      csv: async (plan, result) => `${plan.header.title} ${result.planHash}`,
    },
    prepare: () => context,
    poseAt: (_, step, progress): Pose => {
      asked.push([step.index, progress]);
      const solution = { status: "solved" } as Pose["solution"];
      const forces = Float64Array.from(supports, () => step.index + progress);
      return { step: step.index, progress, solution, forces, shares: forces } as Pose;
    },
    whenIdle: (work) => idle.push(work),
    desk: madeUpBrowser().page("page").desk,
    now: () => 0,
    nextFrame: (work) => frames.push(work),
    stillness: () => still,
  };
  return {
    app: createApp(ground),
    waiting,
    asked,
    frames,
    /** Lets promises and idle work come to their end. */
    settle: async () => {
      for (let i = 0; i < 5; i++) {
        await Promise.resolve();
        idle.splice(0).forEach((work) => {
          work();
        });
      }
    },
    beStill: () => {
      still = true;
    },
  };
}

async function opened(findings: Parameters<typeof madeUpResult>[0] = []) {
  const it = testGround();
  it.app.openText(text(), "sample.json");
  it.waiting[0].answer(madeUpResult(findings));
  await it.settle();
  return it;
}

const placeOf = (app: App) => {
  const { step, progress } = app.store.getState().cursor;
  return [step, progress];
};

describe("opening", () => {
  test("a good plan stands at once, its result and a solved pose follow", async () => {
    const it = testGround();
    it.app.openText(text(), "sample.json");
    expect(it.app.store.getState().document?.name).toBe("sample.json");
    expect(it.app.store.getState().solving.is).toBe("running");
    expect(it.app.store.getState().pose).toBeNull();
    it.waiting[0].answer(madeUpResult());
    await it.settle();
    expect(it.app.store.getState().solving.is).toBe("done");
    expect(it.app.store.getState().pose).toMatchObject({ step: 0, progress: 0 });
  });

  test("a result that comes after another plan was opened is dropped", async () => {
    const it = testGround();
    it.app.openText(text("first"), "1.json");
    it.app.openText(text("second"), "2.json");
    expect(it.waiting.map(({ title }) => title)).toEqual(["first", "second"]);
    it.waiting[0].answer({ ...madeUpResult(), planHash: "late" });
    await it.settle();
    expect(it.app.store.getState().result).toBeNull();
    it.waiting[1].answer({ ...madeUpResult(), planHash: "right" });
    await it.settle();
    expect(it.app.store.getState().result?.planHash).toBe("right");
  });

  test("a bad file shows every error, and the last good plan stays with its result", async () => {
    const { app } = await opened();
    const before = app.store.getState();
    const plan = samplePlan();
    const bad = { ...plan, version: 1, site: { ...plan.site, nearBearing_m: "x" }, sets: [], extra: 1 };
    app.openText(JSON.stringify(bad), "bad.json");
    const after = app.store.getState();
    expect(after.failure?.name).toBe("bad.json");
    expect(after.failure?.errors.length).toBeGreaterThanOrEqual(2);
    expect(after.failure?.errors.some(({ path }) => path === "site.nearBearing_m")).toBe(true);
    expect(after.document).toBe(before.document);
    expect(after.result).toBe(before.result);
    app.closeFailure();
    expect(app.store.getState().failure).toBeNull();
  });

  test("a solver that breaks off says so", async () => {
    const it = testGround();
    it.app.openText(text(), "sample.json");
    it.waiting[0].refuse(new Error("broke off"));
    await it.settle();
    expect(it.app.store.getState().solving).toEqual({ is: "failed", words: "broke off" });
    await expect(it.app.csv()).rejects.toThrow(/no result to export/);
  });
});

describe("the cursor", () => {
  test("every place is solved anew, never read between two others", async () => {
    const { app, asked } = await opened();
    app.setCursor({ step: 1, progress: 0.123 });
    expect(asked.at(-1)).toEqual([1, 0.123]);
    expect(app.store.getState().pose?.forces[0]).toBeCloseTo(1.123, 12);
  });

  test("stays inside the operation", async () => {
    const { app } = await opened();
    app.setCursor({ step: 99, progress: 7 });
    expect(placeOf(app)).toEqual([2, 1]);
    app.setX(-3);
    expect(placeOf(app)).toEqual([0, 0]);
  });

  test("goes by event, by step, and to both ends", async () => {
    const { app } = await opened();
    app.eventBy(1);
    expect(placeOf(app)).toEqual([0, 0.25]);
    app.stepBy(1);
    expect(placeOf(app)).toEqual([1, 0]);
    app.eventBy(-1);
    expect(placeOf(app)).toEqual([0, 0.25]);
    app.toEnd();
    expect(placeOf(app)).toEqual([2, 1]);
    app.toStart();
    expect(placeOf(app)).toEqual([0, 0]);
  });

  test("looking at another place does not move it", async () => {
    const { app } = await opened();
    expect(app.poseOf({ step: 2, progress: 0.5 })).toMatchObject({ step: 2, progress: 0.5 });
    expect(placeOf(app)).toEqual([0, 0]);
  });

  test("a step without equilibrium gives words and no numbers", async () => {
    const it = testGround();
    it.app.openText(text(), "sample.json");
    const result = madeUpResult();
    const [set] = result.sets;
    const steps = set.steps.map((step) =>
      step.index < 2 ? step : { ...step, solved: false, count: 0, motion: "the set rolls over" },
    );
    it.waiting[0].answer({ ...result, sets: [{ ...set, steps }] });
    await it.settle();
    it.app.setCursor({ step: 2, progress: 0 });
    expect(it.app.store.getState().pose).toBeNull();
    expect(it.app.store.getState().noPose).toMatch(/No equilibrium.*the set rolls over/);
  });
});

describe("running", () => {
  test("moves with the clock: three steps of four seconds each, twice as fast at speed 2", async () => {
    const { app, frames } = await opened();
    app.run();
    for (let now = 0; now <= 1000; now += 100) frames.shift()?.(now);
    const [step, progress] = placeOf(app);
    expect(step + progress).toBeCloseTo(1 / 4, 6);
    app.setView({ speed: 2 });
    for (let now = 1100; now <= 2000; now += 100) frames.shift()?.(now);
    expect(placeOf(app)[0] + placeOf(app)[1]).toBeCloseTo(3 / 4, 6);
    app.pause();
    frames.shift()?.(9000);
    expect(placeOf(app)[1]).toBeCloseTo(3 / 4, 6);
  });

  test("ends at the end, and starts over from there", async () => {
    const { app, frames } = await opened();
    app.setCursor({ step: 2, progress: 0.99 });
    app.run();
    for (let now = 0; now <= 1000; now += 100) frames.shift()?.(now);
    expect(placeOf(app)).toEqual([2, 1]);
    expect(app.store.getState().playing).toBe(false);
    app.run();
    expect(placeOf(app)[0]).toBe(0);
  });

  test("goes from stop to stop for a user who wants little motion", async () => {
    const it = await opened();
    it.beStill();
    it.app.run();
    for (let now = 0; now <= 1400; now += 100) it.frames.shift()?.(now);
    expect(placeOf(it.app)).toEqual([0, 0]);
    it.frames.shift()?.(1600);
    expect(placeOf(it.app)).toEqual([0, 0.25]);
  });
});

test("choosing a finding goes where and when it is worst, and selects its subject", async () => {
  const finding = madeUpFinding({ id: "f", worst: { step: 2, progress: 0.75 }, subject: "rear left" });
  const { app } = await opened([finding]);
  app.chooseFinding(finding);
  expect(placeOf(app)).toEqual([2, 0.75]);
  expect(app.store.getState()).toMatchObject({ selected: "rear left", finding: "f" });
  app.chooseFinding(madeUpFinding({ id: "g", set: "", worst: null, from: null, to: null, subject: "path" }));
  expect(placeOf(app)).toEqual([2, 0.75]);
});

test("an export asks the solver's thread for the text", async () => {
  const { app } = await opened();
  expect(await app.csv()).toEqual({
    name: expect.stringMatching(/^sample-.*\.csv$/),
    text: "sample made up",
  });
});
