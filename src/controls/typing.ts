// Whether a key pressed somewhere is meant for that place, or free for the page's own keys.

/** What is asked of an element that holds the focus. */
export interface Focused {
  tagName: string;
  type?: string | undefined;
  role: string | null;
}

const takesEveryKey = ["INPUT", "SELECT", "TEXTAREA", "DIALOG"];

/** True when an element uses this key itself: fields use all keys, buttons and the like the blank and Enter. */
export function keyIsTaken(focused: Focused | null, key: string): boolean {
  if (focused === null) return false;
  const moves = /^(Arrow|Page|Home|End)/.test(key);
  if (focused.tagName === "INPUT" && focused.type === "range") return moves;
  if (focused.role === "gridcell") return key !== "Escape";
  if (focused.tagName === "SECTION" || focused.role === "slider") return moves;
  if (takesEveryKey.includes(focused.tagName)) return true;
  const pressed = ["BUTTON", "SUMMARY", "A"].includes(focused.tagName) || focused.role === "button";
  return pressed && (key === " " || key === "Enter");
}
