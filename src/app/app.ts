// The one place that changes the state: opening plans, moving the cursor, running the operation, choosing views.
import { createStore, type StoreApi } from "zustand/vanilla";
import { poseAt, prepareContext } from "../sequence/index.ts";
import { type Asking, asking } from "./asked.ts";
import { axisOf, fromX, type Place, toX, type Width } from "./axis.ts";
import type { SolverClient } from "./client.ts";
import type { Desk } from "./desk.ts";
import { type Editing, editing } from "./editing.ts";
import { type Filing, filing } from "./filing.ts";
import { type KeepingWork, keeping } from "./keeping.ts";
import { solvingWork } from "./solving.ts";
import {
  type AppState,
  type CornersAsked,
  type Cursor,
  emptyState,
  type SceneView,
  type Theme,
  type View,
} from "./state.ts";
import { stepBeside, stopBeside, stopsOf } from "./stops.ts";
import type {
  BucklingStage,
  Finding,
  Plan,
  Pose,
  Result,
  SetContext,
  SetResult,
  StepRun,
  System,
} from "./types.ts";

/** What the app stands on; tests hand in their own. */
export interface Ground {
  client: SolverClient;
  prepare: (plan: Plan, setId: string, before?: SetContext) => SetContext;
  poseAt: (context: SetContext, step: StepRun, progress: number) => Pose;
  /** Runs a piece of work when the thread has nothing better to do. */
  whenIdle: (work: () => void) => void;
  /** Where work is kept and files are written. */
  desk: Desk;
  /** The time, ms since 1970. */
  now: () => number;
  /** Calls back before the next picture, with the time in ms. */
  nextFrame: (work: (now: number) => void) => void;
  /** True when the user asked for little motion: running then goes from stop to stop. */
  stillness: () => boolean;
}

/** Seconds that one step takes on average while running at speed 1. */
const secondsPerStep = 4;
/** Seconds at each stop while running for a user who wants little motion. */
const secondsPerStop = 1.5;

/** The commands of the screen and the store that they change. */
export interface App extends Asking, Editing, Filing, KeepingWork {
  store: StoreApi<AppState>;
  /** Says that a file could not be opened at all. */
  fail(name: string, found: string): void;
  closeFailure(): void;
  /** Puts away what was held of the plan before the last edit. */
  putBeforeAway(): void;
  /** The solved set of the cursor, or null. */
  set(): SetResult | null;
  setCursor(place: Place): void;
  /** Goes to a place 0..1 of the operation as it is drawn. */
  setX(x: number): void;
  /** The pose at a place of the cursor's set in the result, solved anew without moving the cursor; null where there is none. */
  poseOf(place: Place): Pose | null;
  chooseSet(index: number): void;
  stepBy(by: 1 | -1): void;
  eventBy(by: 1 | -1): void;
  toStart(): void;
  toEnd(): void;
  run(): void;
  pause(): void;
  /** Goes where and when a finding is worst, and selects its subject. */
  chooseFinding(finding: Finding): void;
  select(name: string): void;
  /** Works out low and high of the cursor's set: over the corners that govern, or over every combination. */
  spread(asked: CornersAsked): void;
  /** Ends the working out of low and high after the corner at hand; what there is is kept. */
  stopSpread(): void;
  /** Goes to a stage that was looked at, and shows its buckled shape. */
  chooseStage(stage: BucklingStage): void;
  /** The reactions of the result as CSV with a name for the file; rejects when nothing is solved. */
  csv(): Promise<{ name: string; text: string }>;
  setView(change: Partial<View>): void;
}

/** Name of the CSV file: title and revision of the plan, without signs that file systems refuse. */
export function csvName(plan: Plan): string {
  const words = [plan.header.title || "plan", plan.header.revision].filter((word) => word !== "");
  return `${words
    .join("-")
    .replace(/[^\p{L}\p{N}._-]+/gu, "-")
    .replace(/-{2,}/g, "-")
    .replace(/^[-.]+|-+$/g, "")}.csv`;
}

/** The cursor on a new result: in the same step by its name where that is still there, else inside the operation. */
function onResult(result: Result, { result: before, cursor }: Pick<AppState, "result" | "cursor">): Cursor {
  const held = before?.sets[cursor.set];
  const id = held?.steps[cursor.step]?.step.id;
  const named = result.sets.findIndex((one) => one.setId === held?.setId);
  const set = Math.min(named >= 0 ? named : cursor.set, Math.max(0, result.sets.length - 1));
  const steps = result.sets[set]?.steps ?? [];
  const there = steps.findIndex((one) => one.step.id === id);
  const step = there >= 0 ? there : Math.min(cursor.step, Math.max(0, steps.length - 1));
  return set === cursor.set && step === cursor.step ? cursor : { ...cursor, set, step };
}

/** The ground in a browser, with the given solver and desk. */
export function browserGround(client: SolverClient, desk: Desk): Ground {
  return {
    client,
    desk,
    prepare: prepareContext,
    poseAt,
    whenIdle: (work) => {
      if ("requestIdleCallback" in globalThis) requestIdleCallback(work, { timeout: 200 });
      else setTimeout(work, 0);
    },
    now: Date.now,
    nextFrame: (work) => requestAnimationFrame(work),
    stillness: () => matchMedia("(prefers-reduced-motion: reduce)").matches,
  };
}

/** Makes an app on a ground. Nothing is open yet. */
export function createApp(ground: Ground): App {
  const store = createStore<AppState>(() => emptyState);
  const get = store.getState;

  const setOf = (state: Pick<AppState, "result" | "cursor">): SetResult | null =>
    state.result?.sets[state.cursor.set] ?? null;

  /** The pose at the cursor of a state, solved anew; or why there is none. */
  const posed = (
    state: Pick<AppState, "result" | "cursor">,
    first = true,
  ): Pick<AppState, "context" | "pose" | "noPose"> => {
    const set = setOf(state);
    const standing = set === null ? null : work.standing(set, state.cursor.step, first);
    if (standing === null) return { context: null, pose: null, noPose: "" };
    const { context, step } = standing;
    const none = (words: string) => ({ context, pose: null, noPose: words });
    if (step === undefined) return none("This set has no steps.");
    if (!step.solved && step.count === 0)
      return none(`No equilibrium in this step: ${step.motion || "nothing holds the set"}.`);
    try {
      const pose = ground.poseAt(context, step, state.cursor.progress);
      if (pose.solution.status === "solved") return { context, pose, noPose: "" };
      return none(
        `No equilibrium at this place (${pose.solution.status}): ${pose.solution.motion || "no motion named"}.`,
      );
    } catch (error) {
      return none(error instanceof Error ? error.message : String(error));
    }
  };

  const change = (part: Partial<AppState>) => {
    const now = get();
    const cursor = part.cursor ?? (part.result ? onResult(part.result, now) : now.cursor);
    const next = { ...now, ...part, cursor };
    store.setState({ ...part, cursor, ...posed(next) });
  };

  const work = solvingWork(store, ground, change);

  const edits = editing(store, { solve: work.solve, forget: work.forget, now: ground.now });
  const kept = keeping(store, edits, ground.desk, ground.now);

  const axis = () => {
    const set = setOf(get());
    return set === null || set.steps.length === 0 ? null : axisOf(set, get().view.width);
  };

  const goTo = (place: Place) => {
    const { cursor } = get();
    const set = setOf(get());
    if (set === null || set.steps.length === 0) return;
    const step = Math.min(set.steps.length - 1, Math.max(0, Math.round(place.step)));
    const progress = Math.min(1, Math.max(0, place.progress));
    if (step === cursor.step && progress === cursor.progress) return;
    change({ cursor: { ...cursor, step, progress } });
  };

  const move = (place: (set: SetResult, from: Place) => Place) => {
    const set = setOf(get());
    if (set === null) return;
    app.pause();
    goTo(place(set, get().cursor));
  };

  /** One picture of running: the time since the last one moves the cursor along the axis. */
  const frame = (last: number, x: number) => (now: number) => {
    const on = axis();
    const set = setOf(get());
    if (!get().playing || on === null || set === null) return;
    const seconds = (now - last) / 1000;
    if (ground.stillness()) {
      if (seconds < secondsPerStop / get().view.speed) {
        ground.nextFrame(frame(last, x));
        return;
      }
      goTo(stopBeside(stopsOf(set), get().cursor, 1));
    } else {
      // Somebody may have moved the cursor meanwhile; then go on from there.
      const held = toX(on, get().cursor);
      const from = Math.abs(held - x) < 1e-6 ? x : held;
      goTo(
        fromX(on, from + (Math.min(seconds, 0.25) * get().view.speed) / (secondsPerStep * set.steps.length)),
      );
    }
    const reached = toX(on, get().cursor);
    if (reached >= 1) app.pause();
    else ground.nextFrame(frame(now, reached));
  };

  const app: App = {
    store,
    ...edits,
    ...kept,
    ...filing(store, edits, kept, ground.desk, ground.now),
    fail: (name, found) => {
      const error = {
        path: "the file",
        found,
        allowed: "a plan file",
        mend: "Check that it is there and readable.",
      };
      store.setState({ failure: { name, errors: [error] } });
    },
    closeFailure: () => store.setState({ failure: null }),
    putBeforeAway: () => store.setState({ before: null }),
    set: () => setOf(get()),
    setCursor: goTo,
    setX: (x) => {
      const on = axis();
      if (on !== null) goTo(fromX(on, x));
    },
    poseOf: (place) => {
      const { result, cursor } = get();
      return posed({ result, cursor: { ...cursor, ...place } }, false).pose;
    },
    chooseSet: (index) => {
      if (get().result?.sets[index] === undefined) return;
      app.pause();
      change({ cursor: { set: index, step: 0, progress: 0 }, selected: "", finding: "" });
    },
    stepBy: (by) => move((set, from) => stepBeside(set.steps.length, from, by)),
    eventBy: (by) => move((set, from) => stopBeside(stopsOf(set), from, by)),
    toStart: () => move(() => ({ step: 0, progress: 0 })),
    toEnd: () => move((set) => ({ step: set.steps.length - 1, progress: 1 })),
    run: () => {
      const on = axis();
      if (on === null || get().playing) return;
      if (toX(on, get().cursor) >= 1) goTo({ step: 0, progress: 0 });
      store.setState({ playing: true });
      ground.nextFrame((now) => frame(now, toX(on, get().cursor))(now));
    },
    pause: () => {
      if (get().playing) store.setState({ playing: false });
    },
    chooseFinding: (finding) => {
      app.pause();
      const { result, cursor } = get();
      const set = result?.sets.findIndex((one) => one.setId === finding.set) ?? -1;
      const when = finding.worst ?? finding.from;
      change({
        finding: finding.id,
        selected: finding.subject,
        view: { ...get().view, panel: "findings" },
        cursor: set >= 0 && when !== null ? { set, step: when.step, progress: when.progress } : cursor,
      });
    },
    csv: async () => {
      const { document, result, answered } = get();
      if (document === null || document.plan === null || result === null)
        throw new Error("There is no result to export: open a plan and wait until it is solved.");
      if (answered.olderSets.length > 0)
        throw new Error("The last change is still being solved: export when it is.");
      const text = await ground.client.csv(document.plan, result);
      return { name: csvName(document.plan), text };
    },
    select: (name) => store.setState({ selected: name }),
    spread: (asked) => {
      const set = setOf(get());
      if (set !== null && get().completing.is === "done" && get().spreading.is !== "running")
        work.spreadOver([set], asked);
    },
    stopSpread: () => {
      const { spreading } = get();
      if (spreading.is !== "running" || spreading.stopping) return;
      store.setState({ spreading: { ...spreading, stopping: true } });
      ground.client.stopSpread();
    },
    ...asking(store, ground.client, () => setOf(get())),
    chooseStage: ({ step, progress }) => {
      app.pause();
      change({ cursor: { ...get().cursor, step, progress }, view: { ...get().view, buckled: true } });
    },
    setView: (part) => store.setState({ view: { ...get().view, ...part } }),
  };
  return app;
}

export type { SceneView, System, Theme, Width };
