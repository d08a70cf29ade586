// What is kept of work under way: the draft as text, how far its file is behind, and which page works on it.
import { changesUnsaved, entryNow } from "./history.ts";
import type { AppState } from "./state.ts";
import type { Plan } from "./types.ts";

/** One document under way, as it is kept. */
export interface Work {
  /** Name of the page that works on it, or worked last. */
  page: string;
  /** Put away by its user, or left for another plan: nothing of it is opened unasked. */
  away: boolean;
  name: string;
  title: string;
  /** Time of its last change, ms since 1970. */
  at: number;
  /** Counts what was written of it: the higher one is the later. */
  written: number;
  /** Changes that no file holds. */
  changes: number;
  /** Labels of the last of them, oldest first. */
  labels: string[];
  /** JSON of the draft; and of the last good plan where the draft has errors and there is one, else null. */
  draft: string;
  plan: string | null;
  /** It is what the page's address asked for, as it came. */
  byAddress: boolean;
}

/** As many labels are kept as a person reads to know which work it was. */
const labelsKept = 20;

const texts = new WeakMap<Plan, string>();

/** JSON of a plan; remembered, since the same object is written many times. */
export function textOf(plan: Plan): string {
  let text = texts.get(plan);
  if (text === undefined) {
    text = JSON.stringify(plan);
    texts.set(plan, text);
  }
  return text;
}

/** What is to be kept of a state; null while nothing is open. */
export function workOf(
  { document, history }: Pick<AppState, "document" | "history">,
  rest: Pick<Work, "page" | "at" | "written" | "byAddress">,
): Work | null {
  if (document === null) return null;
  const { name, draft, plan, errors, trying } = document;
  const labels = history.entries.slice(1, history.index + 1).map(({ label }) => label);
  const changes = changesUnsaved(history) + (trying && draft !== entryNow(history).plan ? 1 : 0);
  return {
    ...rest,
    away: false,
    name,
    title: draft.header?.title ?? "",
    changes,
    labels: labels.slice(-labelsKept),
    draft: textOf(draft),
    plan: errors.length === 0 || plan === null ? null : textOf(plan),
  };
}

/** A record as work; null for anything else, as another version of this program may have left. */
export function asWork(value: unknown): Work | null {
  if (typeof value !== "object" || value === null) return null;
  const it = value as Partial<Record<keyof Work, unknown>>;
  const texts = [it.page, it.name, it.title, it.draft].every((one) => typeof one === "string");
  const numbers = [it.at, it.written, it.changes].every((one) => typeof one === "number");
  const flags = [it.away, it.byAddress].every((one) => typeof one === "boolean");
  const plan = it.plan === null || typeof it.plan === "string";
  const labels = Array.isArray(it.labels) && it.labels.every((one) => typeof one === "string");
  return texts && numbers && flags && plan && labels ? (value as Work) : null;
}
