// Finding actions by typed words: every word must be somewhere in the action's words or other names; the best first.
import { type Action, actionKinds } from "./action.ts";

/** Small letters without accents, so that what is typed without them is found. */
const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** How well one word fits a text: 3 as a whole word, 2 as the beginning of one, 1 inside, 0 not at all. */
function fitOf(word: string, text: string): number {
  let best = 0;
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
    const begins = at === 0 || !/[\p{L}\p{N}]/u.test(text[at - 1]);
    const after = text[at + word.length];
    const ends = after === undefined || !/[\p{L}\p{N}]/u.test(after);
    best = Math.max(best, begins ? (ends ? 3 : 2) : 1);
  }
  return best;
}

/** Words of an action count more than its other names, and those more than the name of its kind. */
const weights = [4, 1.5, 1] as const;

/** How well an action fits what was typed; 0 when a word is missing in it. */
export function scoreOf(action: Pick<Action, "words" | "also" | "kind" | "keys">, typed: string): number {
  const words = plain(typed)
    .split(/\s+/)
    .filter((word) => word !== "");
  const texts = [
    action.words,
    `${action.also ?? ""} ${action.keys?.join(" ") ?? ""}`,
    actionKinds[action.kind],
  ];
  const lookedIn = texts.map(plain);
  let sum = 0;
  for (const word of words) {
    const best = Math.max(...lookedIn.map((text, i) => fitOf(word, text) * weights[i]));
    if (best === 0) return 0;
    sum += best;
  }
  // One that begins as typed comes first; of two that fit alike the one with the fewer other words. Steps and findings
  // stay in their own order.
  const begins = lookedIn[0].startsWith(plain(typed).trim()) ? 4 : 0;
  const ordered = action.kind === "step" || action.kind === "finding";
  return sum + begins + (ordered ? 0 : 1 / (1 + lookedIn[0].length / 40));
}

/** The actions that fit, the best first; all of them in their own order when nothing is typed. */
export function found(actions: readonly Action[], typed: string): Action[] {
  if (typed.trim() === "") return [...actions];
  return actions
    .map((action) => ({ action, score: scoreOf(action, typed) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .map(({ action }) => action);
}
