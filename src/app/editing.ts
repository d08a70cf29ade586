// The document: opening plans, editing the draft, going back and forth. A draft with errors leaves the last good plan.
import type { StoreApi } from "zustand/vanilla";
import { checkPlan, mendable, mendableText, readPlan, same } from "../plan/index.ts";
import { atEntry, beginning, edited, entryNow, type History } from "./history.ts";
import { type AppState, type Document, emptyState } from "./state.ts";
import type { Plan } from "./types.ts";

/** The commands that open and change the document. */
export interface Editing {
  /** Opens the text of a plan file; false, with its errors shown and the last good plan left, when it has some. */
  openText(text: string, name: string): boolean;
  /** Opens what can be mended of the file that could not be opened; false when nothing of it can. */
  openToMend(): boolean;
  /** Opens a plan made here, which no file holds yet; false with its errors shown when it has some. */
  openPlan(plan: Plan, name: string): boolean;
  /** Opens what was kept of a session that ended: its draft, and the last good plan where the draft has errors. */
  openKept(kept: KeptDocument): boolean;
  /** One committed edit of the draft. Nothing is entered when the change leaves the draft as it was. */
  edit(label: string, change: (draft: Plan) => Plan): void;
  /** Shows a change without committing it, as while dragging; always from the committed draft. null takes it back. */
  tryOut(change: ((draft: Plan) => Plan) | null): void;
  undo(): void;
  redo(): void;
  /** Goes to an entry of the history. */
  toEntry(index: number): void;
}

/** What is needed to go on with a document of an earlier session. */
export interface KeptDocument {
  name: string;
  draft: unknown;
  /** The last good plan, or null when the draft is it. */
  plan: unknown;
  /** Changes that no file holds. */
  changes: number;
  /** Label of the entry that the history then begins with. */
  label: string;
}

/** What editing stands on. */
export interface EditingGround {
  /** Solves a plan under a number; what comes when another plan is the good one is dropped. */
  solve(plan: Plan, number: number): void;
  /** Forgets what was prepared for the plan before. */
  forget(): void;
  /** The time, ms since 1970. */
  now(): number;
}

/** What is worked out for one plan and holds for no other. */
const ofOnePlan = {
  completing: emptyState.completing,
  spreads: emptyState.spreads,
  spreading: emptyState.spreading,
  bucklings: emptyState.bucklings,
  buckling: emptyState.buckling,
  tables: emptyState.tables,
  tabling: emptyState.tabling,
} as const satisfies Partial<AppState>;

/** The commands on a store. */
export function editing(store: StoreApi<AppState>, ground: EditingGround): Editing {
  const get = store.getState;

  const open = (plan: Plan | null, draft: Plan, name: string, history: History) => {
    const { document: before, over, view, keeping, leftBehind, recent } = get();
    const number = (before?.number ?? 0) + 1;
    const read = draft === plan ? null : checkPlan(draft);
    ground.forget();
    store.setState({
      ...emptyState,
      // What was found for a new plan is read before its screen is left.
      over,
      view,
      keeping,
      leftBehind,
      recent,
      document: {
        plan,
        draft,
        errors: read === null || read.ok ? [] : read.errors,
        trying: false,
        name,
        number,
        opened: (before?.opened ?? 0) + 1,
      },
      history,
    });
    if (plan !== null) ground.solve(plan, number);
  };

  /** Makes a draft the document's, and the last good plan too when it has no error. */
  const become = (document: Document, draft: Plan, trying: boolean, history: History) => {
    if (draft === document.draft) {
      store.setState({ document: { ...document, trying }, history });
      return;
    }
    const read = checkPlan(draft);
    if (!read.ok || draft === document.plan) {
      const errors = read.ok ? [] : read.errors;
      store.setState({ document: { ...document, draft, errors, trying }, history });
      return;
    }
    const number = document.number + 1;
    // The draft itself, and not the copy that was read: entries of the history go on sharing their parts.
    store.setState({
      ...ofOnePlan,
      document: { ...document, plan: draft, draft, errors: [], trying, number },
      history,
    });
    ground.solve(draft, number);
  };

  const go = (index: number) => {
    const { document, history } = get();
    if (document === null) return;
    const there = atEntry(history, index);
    become(document, entryNow(there).plan, false, there);
  };

  return {
    openText: (text, name) => {
      const read = readPlan(text);
      if (read.ok) open(read.plan, read.plan, name, beginning(read.plan, `Opened ${name}`, ground.now()));
      else {
        const mended = mendableText(text);
        const [draft, beyond] = mended.ok ? [mended.draft, ""] : [null, mended.why];
        store.setState({ failure: { name, errors: read.errors, draft, beyond } });
      }
      return read.ok;
    },
    openToMend: () => {
      const { failure } = get();
      if (failure?.draft == null) return false;
      const { draft, name } = failure;
      open(null, draft, name, beginning(draft, `Opened ${name} to mend it`, ground.now()));
      return true;
    },
    openPlan: (plan, name) => {
      const read = checkPlan(plan);
      if (read.ok) open(plan, plan, name, beginning(plan, "New plan", ground.now(), 1));
      else store.setState({ failure: { name, errors: read.errors } });
      return read.ok;
    },
    openKept: ({ name, draft, plan, changes, label }) => {
      const good = checkPlan(plan ?? draft);
      // A file that was opened to be mended has had no good plan yet.
      const mended = good.ok || plan !== null ? null : mendable(draft);
      if (mended?.ok) {
        open(null, mended.draft, name, beginning(mended.draft, label, ground.now(), changes));
        return true;
      }
      if (!good.ok) {
        store.setState({ failure: { name, errors: good.errors } });
        return false;
      }
      // A draft with errors is no Plan to the letter; nothing but the forms and the file ever reads it.
      const kept = plan === null ? good.plan : (draft as Plan);
      open(good.plan, kept, name, beginning(kept, label, ground.now(), changes));
      return true;
    },
    edit: (label, change) => {
      const { document, history } = get();
      if (document === null) return;
      const committed = entryNow(history).plan;
      const draft = change(committed);
      if (same(draft, committed)) become(document, committed, false, history);
      // What was tried out last is often what is committed: then it stays the same object, and its result stands.
      else {
        const kept = same(draft, document.draft) ? document.draft : draft;
        become(document, kept, false, edited(history, label, kept, ground.now()));
      }
    },
    tryOut: (change) => {
      const { document, history } = get();
      if (document === null || (change === null && !document.trying)) return;
      const committed = entryNow(history).plan;
      const draft = change === null ? committed : change(committed);
      become(document, same(draft, committed) ? committed : draft, change !== null, history);
    },
    undo: () => go(get().history.index - 1),
    redo: () => go(get().history.index + 1),
    toEntry: go,
  };
}
