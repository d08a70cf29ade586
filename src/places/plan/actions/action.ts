// What an action of the page is: its words, its keys, whether it can be done now, and what it does.
import type { App, AppState } from "../../../app/index.ts";

/** The groups of actions, in the order of the sheet of keys. */
export const actionKinds = {
  help: "Finding things",
  file: "The plan and its file",
  move: "Through the operation",
  scene: "Scene",
  panel: "Strips and panels",
  data: "Plan data",
  work: "Worked out on request",
  reading: "How numbers and pictures are shown",
  step: "Step",
  finding: "Finding",
  support: "Part of the set-up",
  set: "Set",
  plan: "Bundled plan",
} as const;

export type ActionKind = keyof typeof actionKinds;

/** Something that the page can do for its user. */
export interface Action {
  readonly id: string;
  readonly kind: ActionKind;
  /** What it does, as it stands on a button and in the list. */
  readonly words: string;
  /** Other names under which somebody may look for it. */
  readonly also?: string;
  /** Its keys as they are printed on a keyboard: "F", "Ctrl+Shift+S", "Page Down". */
  readonly keys?: readonly string[];
  /** Its keys are obeyed while a dialog is open too. */
  readonly inDialog?: true;
  /** Its keys belong to a field whose text was just changed. */
  readonly fieldFirst?: true;
  /** What it would do just now, where its words leave that open; "" for nothing more. */
  readonly now?: (state: AppState) => string;
  /** Why it cannot be done now; "" when it can. */
  readonly not?: (state: AppState) => string;
  readonly run: (app: App) => void;
}

/** Why an action cannot be done now; "" when it can. */
export const whyNot = (action: Action, state: AppState): string => action.not?.(state) ?? "";

/** Its words with what it would do just now. */
export function fullWords(action: Action, state: AppState): string {
  const now = action.now?.(state) ?? "";
  return now === "" ? action.words : `${action.words}: ${now}`;
}

/** What a button says under the pointer: the words and the key, or why it cannot be pressed. */
export function titleOf(action: Action, state: AppState): string {
  const why = whyNot(action, state);
  if (why !== "") return `${action.words}: ${why}`;
  const keys = action.keys?.[0];
  return keys === undefined ? fullWords(action, state) : `${fullWords(action, state)} (${keys})`;
}
