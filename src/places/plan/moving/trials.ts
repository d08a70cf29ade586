// Tries changes out while something is dragged: at most one a frame, and the next only when the step at hand was answered.
import type { App, AppState, Plan } from "../../../app/index.ts";

/** After so long (ms) the next change is tried though the last was not answered: a lost answer must not stop a drag. */
const patience = 400;

export interface Trials {
  /** The change to be tried next; it takes the place of one that still waits. */
  want(change: (draft: Plan) => Plan): void;
  /** Forgets what waits, as when the drag is over. */
  drop(): void;
}

/** Whether the last change was answered for the cursor's step, or never will be. */
function isAnswered({ document, answered, solving }: Pick<AppState, "document" | "answered" | "solving">) {
  if (document === null || document.errors.length > 0 || solving.is === "failed") return true;
  return answered.of === document.number && answered.has !== "nothing";
}

/** Trials of an app. Without waiting for answers a steady drag would overtake every one of them, and none would be seen. */
export function trialsOf(
  app: Pick<App, "tryOut"> & { store: { getState(): AppState } },
  nextFrame: (work: () => void) => void = requestAnimationFrame,
  now: () => number = () => performance.now(),
): Trials {
  let wanted: ((draft: Plan) => Plan) | null = null;
  let asked = false;
  let tried = Number.NEGATIVE_INFINITY;
  const ask = () => {
    if (asked) return;
    asked = true;
    nextFrame(tick);
  };
  const tick = () => {
    asked = false;
    if (wanted === null) return;
    if (!isAnswered(app.store.getState()) && now() - tried < patience) return ask();
    const change = wanted;
    wanted = null;
    tried = now();
    app.tryOut(change);
  };
  return {
    want: (change) => {
      wanted = change;
      ask();
    },
    drop: () => {
      wanted = null;
    },
  };
}
