// What follows an opened plan: it is solved, its sets are prepared for the cursor, and low and high are worked out.
import type { StoreApi } from "zustand/vanilla";
import { allAnswered, allOlder, type Before, withLate, withStatics } from "./answered.ts";
import type { SolverClient } from "./client.ts";
import { spreadSets, wider } from "./spreads.ts";
import type { AppState, CornersAsked } from "./state.ts";
import type { Answer, Plan, SetContext, SetResult, StepRun } from "./types.ts";

/** What solving stands on. */
export interface SolvingGround {
  client: SolverClient;
  prepare: (plan: Plan, setId: string, before?: SetContext) => SetContext;
  whenIdle: (work: () => void) => void;
}

/** What a pose is solved with; both of one plan, be it the open one or the one before. */
export interface Standing {
  context: SetContext;
  step: StepRun | undefined;
}

/** The work behind a plan. */
export interface SolvingWork {
  /**
   * The prepared set and the run of a step that poses are solved with; null while the set is not prepared. With `first` those
   * of the first answer where it is about this step; else always those of the result.
   */
  standing(set: SetResult, step: number, first: boolean): Standing | null;
  /** Forgets what was prepared: another document is opened. */
  forget(): void;
  /** Solves a plan that was opened or edited under a number; what comes when another is open is dropped. */
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
  /** By set id, for the plan of what stands in the result. */
  const contexts = new Map<string, { plan: Plan; context: SetContext }>();
  const prepared = (plan: Plan, id: string) => ground.prepare(plan, id, contexts.get(id)?.context);
  /** The set of the first answer, prepared for the open plan; null when there is none. */
  let ahead: SetContext | null = null;
  /** The plan that the statics of the result are of. */
  let solved: Plan | null = null;
  /** Ids of the findings of the last result that came only when it was completed. */
  let late: ReadonlySet<string> = new Set();
  /** True while what is held as before is from before the drag under way. */
  let dragged = false;

  const prepareAll = (number: number) => {
    const { document, result, cursor } = get();
    if (document === null || document.plan === null || result === null || document.number !== number) return;
    const order = [result.sets[cursor.set], ...result.sets].filter((set) => set !== undefined);
    const next = order.find((set) => contexts.get(set.setId)?.plan !== document.plan);
    if (next === undefined) return;
    contexts.set(next.setId, { plan: document.plan, context: prepared(document.plan, next.setId) });
    change({});
    ground.whenIdle(() => prepareAll(number));
  };

  const standing = (set: SetResult, index: number, first: boolean): Standing | null => {
    const { step: alone } = get().answered;
    const own = alone?.set === set.setId && alone.run.steps[0]?.index === index ? alone.run.steps[0] : null;
    if (first && own !== null && ahead !== null) return { context: ahead, step: own };
    const context = contexts.get(set.setId)?.context;
    return context === undefined ? null : { context, step: set.steps[index] };
  };

  /** What comes before all checks are made. */
  const answer = (plan: Plan, number: number, part: Answer) => {
    const { document, result, answered } = get();
    // Answers and the whole result come by ways of their own: an answer may be the later one.
    if (document?.number !== number || answered.of !== number || get().solving.is !== "running") return;
    if (result === null) return;
    if (part.is === "step") {
      ahead = prepared(plan, part.set);
      const { set, run, findings } = part;
      store.setState({ answered: { ...answered, has: "step", step: { set, run, findings } } });
      change({});
      return;
    }
    // A set that was put in has no place in the result before all of it is there.
    if (!result.sets.some(({ setId }) => setId === part.set.setId)) return;
    const { setId } = part.set;
    const context = ahead?.set.id === setId ? ahead : prepared(plan, setId);
    contexts.set(setId, { plan, context });
    const next = withStatics(result, answered, plan, part);
    if (next.answered.olderSets.length === 0) solved = plan;
    store.setState({ answered: next.answered });
    change({ result: next.result });
  };

  /** What is held for old against new when another plan is solved: the last result that answered its plan. */
  const keepBefore = (plan: Plan): Before | null => {
    const { document, result, answered, before } = get();
    const whole = result !== null && solved !== null && answered.olderSets.length === 0;
    if (dragged && before !== null) {
      dragged = document?.trying === true;
      return before.plan === plan ? null : before;
    }
    dragged = document?.trying === true;
    return whole && solved !== null && result !== null ? { plan: solved, result } : before;
  };

  const spreadOver = (sets: readonly SetResult[], asked: CornersAsked) => {
    const { document } = get();
    if (document === null || document.plan === null) return;
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
    const { result: shown, cursor } = get();
    const own = shown?.sets[cursor.set];
    const before = keepBefore(plan);
    ahead = null;
    store.setState({
      solving: { is: "running", words: "solving", done: 0, of: 0 },
      answered: allOlder(shown, number, get().answered),
      before,
    });
    const first =
      own === undefined || !plan.sets.some(({ id }) => id === own.setId)
        ? null
        : { set: own.setId, step: cursor.step };
    ground.client
      .solve(
        plan,
        (words, done, of) => {
          if (current() && get().solving.is === "running")
            store.setState({ solving: { is: "running", words, done, of } });
        },
        {
          first,
          answered: (part) => answer(plan, number, part),
          progress: (words, done, of) => {
            // Words and results come by ways of their own: words may be the later ones.
            if (current() && get().completing.is !== "done")
              store.setState({ completing: { is: "running", words, done, of } });
          },
          completed: (result) => {
            if (!current()) return;
            const early = new Set(get().result?.findings.map(({ id }) => id));
            const { olderFindings } = get().answered;
            late = new Set(
              result.findings.map(({ id }) => id).filter((id) => !early.has(id) || olderFindings.has(id)),
            );
            store.setState({ answered: allAnswered(result, number, "all", plan) });
            change({ result, completing: { is: "done" } });
            const first = result.sets.filter((_, i) => i === get().cursor.set);
            spreadOver([...first, ...result.sets.filter((set) => !first.includes(set))], "chosen");
          },
        },
      )
      .then(
        (result) => {
          if (!current()) return;
          solved = plan;
          // The cursor's set is prepared at once, where a frame is lent that costs little: no picture is lost.
          const set = result.sets[get().cursor.set];
          for (const [id, known] of contexts) {
            if (known.plan === plan) continue;
            if (id === set?.setId) contexts.set(id, { plan, context: prepared(plan, id) });
            else contexts.delete(id);
          }
          ahead = null;
          const next = withLate(result, number, plan, get().result, late);
          store.setState({ answered: next.answered });
          change({ result: next.result, solving: { is: "done" } });
          ground.whenIdle(() => prepareAll(number));
        },
        (error: unknown) => {
          if (!current()) return;
          const words = error instanceof Error ? error.message : String(error);
          store.setState({ solving: { is: "failed", words } });
        },
      );
  };

  const forget = () => {
    contexts.clear();
    ahead = null;
    solved = null;
    late = new Set();
    dragged = false;
  };

  return { standing, forget, solve, spreadOver };
}
