// The history of a document: every committed edit with its plan, where one stands in it, and how far the file is behind.
import type { Plan } from "./types.ts";

/** One committed state of the plan, and what was done to reach it. Plans of neighbours share what did not change. */
export interface Entry {
  /** In the words of the planner's trade: "Far crane moved to 61.20 m". */
  label: string;
  /** When it was made, ms since 1970. */
  at: number;
  plan: Plan;
}

/** All entries of a session, oldest first; the first one is the plan as it was opened. */
export interface History {
  entries: readonly Entry[];
  /** Where the document stands: what comes after it was undone and can be redone. */
  index: number;
  /**
   * The entry nearest to what the plan's file holds, and how many changes lie between the two besides: 0 when that entry
   * is the file; more when the entry that was saved is no longer in the list, or there is no file yet.
   */
  saved: { index: number; away: number };
}

/** The history of a plan just opened; `away` counts changes that it brings and that no file holds. */
export function beginning(plan: Plan, label: string, at: number, away = 0): History {
  return { entries: [{ label, at, plan }], index: 0, saved: { index: 0, away } };
}

/** The entry where the document stands. */
export function entryNow(history: History): Entry {
  return history.entries[history.index];
}

/** With one more entry after the one that it stands at; what was undone beyond is dropped. */
export function edited(history: History, label: string, plan: Plan, at: number): History {
  const { entries, index, saved } = history;
  const beyond = Math.max(0, saved.index - index);
  return {
    entries: [...entries.slice(0, index + 1), { label, at, plan }],
    index: index + 1,
    saved: { index: saved.index - beyond, away: saved.away + beyond },
  };
}

/** At another entry; beyond either end it stays at that end. */
export function atEntry(history: History, index: number): History {
  const within = Math.min(history.entries.length - 1, Math.max(0, Math.round(index)));
  return within === history.index ? history : { ...history, index: within };
}

/** One entry back; the same history at its beginning. */
export const undone = (history: History): History => atEntry(history, history.index - 1);

/** One entry on; the same history at its end. */
export const redone = (history: History): History => atEntry(history, history.index + 1);

/** With the file now holding what the entry of this index holds. */
export function savedAt(history: History, index = history.index): History {
  return { ...history, saved: { index, away: 0 } };
}

/** How many changes lie between the document and its file; 0 when they are the same. */
export function changesUnsaved({ index, saved }: History): number {
  return saved.away + Math.abs(index - saved.index);
}
