// Answers to an edit as they come: nothing old stands among the new without its mark; old against new.
import { describe, expect, test } from "vitest";
import {
  type Answer,
  compareResults,
  createApp,
  type Ground,
  olderOf,
  type Plan,
  type Pose,
  planOfSet,
  type Result,
  type SetContext,
  setOfPose,
} from "../../src/app/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { madeUpFinding, madeUpResult, supports } from "./madeUp.ts";
import { madeUpBrowser } from "./madeUpDesk.ts";

function desk() {
  const asked: {
    plan: Plan;
    first: { set: string; step: number } | null;
    answered: (answer: Answer) => void;
    completed: (result: Result) => void;
    done: (result: Result) => void;
  }[] = [];
  const posed: SetContext[] = [];
  const ground: Ground = {
    client: {
      solve: (plan, _, { first, answered, completed }) =>
        new Promise((done) => asked.push({ plan, first, answered, completed, done })),
      spread: async () => null,
      stopSpread: () => {},
      buckling: async () => null,
      tables: async () => null,
      stopTables: () => {},
      stopBuckling: () => {},
      csv: async () => "",
    },
    prepare: (plan, set) => ({ ...prepareContext(plan, set), supports }),
    poseAt: (context, step, progress): Pose => {
      posed.push(context);
      const solution = { status: "solved" } as Pose["solution"];
      return { step: step.index, progress, solution, forces: new Float64Array(0) } as Pose;
    },
    whenIdle: (work) => work(),
    desk: madeUpBrowser().page("page").desk,
    now: () => 0,
    nextFrame: () => {},
    stillness: () => true,
  };
  const app = createApp(ground);
  const settle = async () => {
    for (let i = 0; i < 5; i++) await Promise.resolve();
  };
  return { app, asked, posed, settle };
}

const renamed = (title: string) => (plan: Plan) => ({ ...plan, header: { ...plan.header, title } });
const old = madeUpFinding({ id: "hook:old", check: "hook load" });
const slow = madeUpFinding({ id: "clearance:old", check: "clearance" });

async function edited() {
  const it = desk();
  it.app.openText(JSON.stringify(samplePlan()), "sample.json");
  it.asked[0].done(madeUpResult([old, slow]));
  await it.settle();
  it.app.setCursor({ step: 1, progress: 0.5 });
  it.app.edit("Renamed", renamed("new"));
  return it;
}

/** A statics answer of the made-up set, its weight as given. */
function statics(weight: number, findings: Answer["findings"]): Answer {
  const [set] = madeUpResult([]).sets;
  return { is: "statics", set: { ...set, weight }, findings, made: ["hook load"], ofPlan: [] };
}

describe("an edit", () => {
  test("asks for the cursor's step first and leaves everything on screen, marked as older", async () => {
    const { app, asked } = await edited();
    expect(asked[1].first).toEqual({ set: samplePlan().sets[0].id, step: 1 });
    const state = app.store.getState();
    expect(state.result?.findings).toHaveLength(2);
    expect(olderOf(state)).toEqual({ pose: true, set: true, findings: true });
    expect(planOfSet(state)?.header.title).toBe(samplePlan().header.title);
    expect(state.before?.plan.header.title).toBe(samplePlan().header.title);
  });

  test("has its step answered alone: the pose is new, and its table knows that step only", async () => {
    const { app, asked, posed } = await edited();
    const [set] = madeUpResult([]).sets;
    const run = { ...set, weight: 7, steps: [{ ...set.steps[1], first: 0 }] };
    asked[1].answered({ is: "step", set: set.setId, run, findings: [] });
    const state = app.store.getState();
    expect(olderOf(state)).toEqual({ pose: false, set: true, findings: true });
    expect(posed[posed.length - 1].plan.header.title).toBe("new");
    expect(setOfPose(state)?.weight).toBe(7);
    expect(setOfPose(state)?.strips).toEqual([]);
    expect(app.set()?.weight).not.toBe(7);
    // At another step nothing new is known yet: pose and set are those before, of one plan.
    app.setCursor({ step: 0, progress: 0 });
    expect(olderOf(app.store.getState()).pose).toBe(true);
    expect(posed[posed.length - 1].plan.header.title).toBe(samplePlan().header.title);
  });

  test("has its statics answered: what is checked is new, what is still to be checked is marked", async () => {
    const { app, asked, posed, settle } = await edited();
    const gained = madeUpFinding({ id: "hook:new", subject: "near crane" });
    asked[1].answered(statics(8, [gained]));
    const state = app.store.getState();
    expect(app.set()?.weight).toBe(8);
    expect(state.result?.findings.map(({ id }) => id).sort()).toEqual(["clearance:old", "hook:new"]);
    expect([...state.answered.olderFindings]).toEqual(["clearance:old"]);
    expect(olderOf(state)).toEqual({ pose: false, set: false, findings: true });
    expect(planOfSet(state)?.header.title).toBe("new");
    expect(posed[posed.length - 1].plan.header.title).toBe("new");
    asked[1].done(madeUpResult([gained]));
    await settle();
    expect(olderOf(app.store.getState()).findings).toBe(false);
    expect(app.store.getState().answered.has).toBe("checks");
  });

  test("drops answers to a plan that is gone, and those that come behind the whole", async () => {
    const { app, asked, settle } = await edited();
    app.edit("Renamed", renamed("newer"));
    asked[1].answered(statics(8, []));
    expect(app.set()?.weight).not.toBe(8);
    asked[2].done(madeUpResult([]));
    await settle();
    asked[2].answered(statics(9, []));
    expect(app.set()?.weight).not.toBe(9);
  });

  test("keeps what was before a drag until it ends, and forgets it when the drag is taken back", async () => {
    const { app, asked, settle } = await edited();
    asked[1].done(madeUpResult([]));
    await settle();
    const held = app.store.getState().result;
    for (const title of ["a", "b", "c"]) app.tryOut(renamed(title));
    asked[asked.length - 1].answered(statics(8, []));
    app.tryOut(renamed("d"));
    expect(app.store.getState().before?.result).toBe(held);
    app.tryOut(null);
    expect(app.store.getState().before).toBeNull();
    app.edit("Renamed", renamed("e"));
    app.putBeforeAway();
    expect(app.store.getState().before).toBeNull();
  });
});

test("old against new: loads at the end and at most of a step found again by its name, findings by what they are about", () => {
  const before = madeUpResult([old, slow]);
  const [set] = before.sets;
  const n = set.supports.length;
  const shares = set.shares.slice();
  // Poses 3 to 5 are those of step 1: the rear left group carries most at its start, 600, and 180 at its end.
  shares[5 * n + 1] = 900;
  // A step put in before moves the others on.
  const moved = madeUpFinding({ id: "hook:moved", worst: null, from: { step: 2, progress: 0.5 } });
  const steps = [{ ...set.steps[0], step: { ...set.steps[0].step, id: "new" }, count: 0 }, ...set.steps];
  const after: Result = { ...before, sets: [{ ...set, shares, steps }], findings: [moved] };
  const change = compareResults({ result: before }, after, { set: 0, step: 2 });
  expect(change.known).toBe(true);
  expect(change.loads.map(({ support }) => support)).toEqual(["far crane", "rear left", "rear right"]);
  expect(change.loads[1]).toMatchObject({
    atEnd: { before: 180, after: 900 },
    most: { before: 600, after: 900 },
  });
  expect(change.gained).toEqual([]);
  expect(change.lost.map(({ id }) => id)).toEqual(["clearance:old"]);
  expect(compareResults({ result: before }, after, { set: 0, step: 0 })).toMatchObject({
    known: false,
    loads: [],
  });
});
