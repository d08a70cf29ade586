// Work that is done only when the user asks for it: at how many times its loads a set buckles, and tables on one matter.
import type { StoreApi } from "zustand/vanilla";
import type { SolverClient } from "./client.ts";
import type { AppState, HeldTables } from "./state.ts";
import type { SetResult } from "./types.ts";

/** The commands that ask for it, and those that end it; what there is when it ends is kept. */
export interface Asking {
  buckle(): void;
  stopBuckling(): void;
  /** Works out the tables of a section, as `landing`, for the cursor's set; those that are there already stay. */
  tabulate(section: string): void;
  stopTables(): void;
}

/** Name under which the tables of a section are kept for a set. */
export const tablesKey = (set: string, section: string): string => `${set}/${section}`;

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Makes the commands on a store; `setNow` gives the solved set of the cursor. */
export function asking(
  store: StoreApi<AppState>,
  client: SolverClient,
  setNow: () => SetResult | null,
): Asking {
  const get = store.getState;
  return {
    buckle: () => {
      const { document, buckling } = get();
      const set = setNow();
      if (document === null || document.plan === null || set === null || buckling.is === "running") return;
      const wanted = () => get().document?.number === document.number;
      store.setState({ buckling: { is: "running", set: set.setId, done: 0, of: 0, stopping: false } });
      const told = (done: number, of: number) => {
        const now = get().buckling;
        if (wanted() && now.is === "running") store.setState({ buckling: { ...now, done, of } });
      };
      client.buckling(document.plan, set, "stages", told).then(
        (found) => {
          if (found === null || !wanted()) return;
          store.setState({ bucklings: { ...get().bucklings, [set.setId]: found }, buckling: { is: "done" } });
        },
        (error: unknown) => {
          if (wanted()) store.setState({ buckling: { is: "failed", words: wordsOf(error) } });
        },
      );
    },
    stopBuckling: () => {
      const { buckling } = get();
      if (buckling.is !== "running" || buckling.stopping) return;
      store.setState({ buckling: { ...buckling, stopping: true } });
      client.stopBuckling();
    },
    tabulate: (section) => {
      const { document, tabling, tables } = get();
      const set = setNow();
      if (document === null || document.plan === null || set === null || tabling.is === "running") return;
      const key = tablesKey(set.setId, section);
      const held = tables[key];
      if (held !== undefined && held.done === held.of) return;
      const wanted = () => get().document?.number === document.number;
      store.setState({ tabling: { is: "running", key, done: 0, of: 0, stopping: false } });
      const told = (done: number, of: number) => {
        const now = get().tabling;
        if (wanted() && now.is === "running") store.setState({ tabling: { ...now, done, of } });
      };
      client.tables(document.plan, set, section, told).then(
        (found: HeldTables | null) => {
          if (found === null || !wanted()) return;
          store.setState({ tables: { ...get().tables, [key]: found }, tabling: { is: "idle" } });
        },
        (error: unknown) => {
          if (wanted()) store.setState({ tabling: { is: "failed", key, words: wordsOf(error) } });
        },
      );
    },
    stopTables: () => {
      const { tabling } = get();
      if (tabling.is !== "running" || tabling.stopping) return;
      store.setState({ tabling: { ...tabling, stopping: true } });
      client.stopTables();
    },
  };
}
