// What actions on files need of the page: its field that picks a file, and what is typed but not yet taken over.
import type { App } from "../../../app/index.ts";

/** Id of the field that picks a plan file. */
export const fileField = "plan-file";

/** Picks a file with the right to write it, where the browser lets us; false where the form has to pick it. */
export function pickedOtherwise(app: App): boolean {
  const can = app.picksFiles();
  if (can) void app.pickFile();
  return can;
}

const plainInputs = ["button", "checkbox", "color", "file", "radio", "range", "reset", "submit"];

/** The field that text is typed into, if it is one. */
export function typingIn(target: EventTarget | null): HTMLInputElement | HTMLTextAreaElement | null {
  if (target instanceof HTMLTextAreaElement) return target;
  return target instanceof HTMLInputElement && !plainInputs.includes(target.type) ? target : null;
}

/** Has the focused field take over what is typed in it, as it does when it is left. */
export function takeTyped(): void {
  const field = typingIn(document.activeElement);
  field?.blur();
  field?.focus();
}
