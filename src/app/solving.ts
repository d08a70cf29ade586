// What follows an opened plan: it is solved, its sets are prepared for the cursor, and low and high are worked out.
import type { StoreApi } from "zustand/vanilla";
import type { SolverClient } from "./client.ts";
import { spreadSets, wider } from "./spreads.ts";
import type { AppState, CornersAsked } from "./state.ts";
import type { Plan, SetContext, SetResult } from "./types.ts";

/** What solving stands on. */
export interface SolvingGround {
  client: SolverClient;
  prepare: (plan: Plan, setId: string) => SetContext;
  whenIdle: (work: () => void) => void;
}

/** The work behind a plan. */
export interface SolvingWork {
  /** The prepared sets of the open plan by their ids. */
  contexts: Map<string, SetContext>;
  /** Solves a plan that was opened under a number; what comes when another is open is dropped. */
  solve(plan: Plan, number: number): void;
  /** Low and high of some sets, worked out behind the whole result. */
  spreadOver(sets: readonly SetResult[], asked: CornersAsked): void;
}

/** The work behind the plan of a store. `change` writes a part of the state and solves the cursor's pose anew. */
export function solvingWork(
  store: StoreApi<AppState>,
  ground: SolvingGround,
  change: (part: Partial<AppState>) => void,
): SolvingWork {
  const get = store.getState;
  const contexts = new Map<string, SetContext>();

  const prepareAll = (number: number) => {
    const { document, result, cursor } = get();
    if (document === null || result === null || document.number !== number) return;
    const order = [result.sets[cursor.set], ...result.sets].filter((set) => set !== undefined);
    const next = order.find((set) => !contexts.has(set.setId));
    if (next === undefined) return;
    contexts.set(next.setId, ground.prepare(document.plan, next.setId));
    change({});
    ground.whenIdle(() => prepareAll(number));
  };

  const spreadOver = (sets: readonly SetResult[], asked: CornersAsked) => {
    const { document } = get();
    if (document === null) return;
    const wanted = () => get().document?.number === document.number;
    store.setState({ spreading: { is: "running", asked, set: "", done: 0, of: 0, stopping: false } });
    void spreadSets(ground.client, document.plan, sets, asked, {
      wanted,
      told: (set, done, of) => {
        const { spreading } = get();
        // A word that comes late, after the end, is dropped.
        if (!wanted() || spreading.is !== "running") return;
        store.setState({ spreading: { ...spreading, set, done, of } });
      },
      keep: (held) => {
        const { spreads } = get();
        const id = held.spread.setId;
        if (held.spread.done > 0) store.setState({ spreads: { ...spreads, [id]: wider(spreads[id], held) } });
      },
      ended: (words) =>
        store.setState({ spreading: words === "" ? { is: "done" } : { is: "failed", words } }),
    });
  };

  const solve = (plan: Plan, number: number) => {
    const current = () => get().document?.number === number;
    store.setState({ solving: { is: "running", words: "solving", done: 0, of: 0 } });
    ground.client
      .solve(
        plan,
        (words, done, of) => {
          if (current() && get().solving.is === "running")
            store.setState({ solving: { is: "running", words, done, of } });
        },
        {
          progress: (words, done, of) => {
            // Words and results come by ways of their own: words may be the later ones.
            if (current() && get().completing.is !== "done")
              store.setState({ completing: { is: "running", words, done, of } });
          },
          completed: (result) => {
            if (!current()) return;
            change({ result, completing: { is: "done" } });
            const first = result.sets.filter((_, i) => i === get().cursor.set);
            spreadOver([...first, ...result.sets.filter((set) => !first.includes(set))], "chosen");
          },
        },
      )
      .then(
        (result) => {
          if (!current()) return;
          contexts.clear();
          change({ result, solving: { is: "done" } });
          ground.whenIdle(() => prepareAll(number));
        },
        (error: unknown) => {
          if (!current()) return;
          const words = error instanceof Error ? error.message : String(error);
          store.setState({ solving: { is: "failed", words } });
        },
      );
  };

  return { contexts, solve, spreadOver };
}
