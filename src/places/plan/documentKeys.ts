// The keys that every program has for its documents: open, save, undo, redo, with Control or the Command key.
import { useEffect } from "react";
import type { App } from "../../app/index.ts";

/** Id of the field that picks a plan file. */
export const fileField = "plan-file";

/** Picks a file with the right to write it, where the browser lets us; false where the form has to pick it. */
export function pickedOtherwise(app: App): boolean {
  const can = app.picksFiles();
  if (can) void app.pickFile();
  return can;
}

const plainInputs = ["button", "checkbox", "color", "file", "radio", "range", "reset", "submit"];

/** The field that text is typed into, if the focus is in one. */
function typingIn(target: EventTarget | null): HTMLInputElement | HTMLTextAreaElement | null {
  if (target instanceof HTMLTextAreaElement) return target;
  return target instanceof HTMLInputElement && !plainInputs.includes(target.type) ? target : null;
}

/** A command for a key, or null. Undo in a field with text that was just typed is the browser's own. */
export function documentCommand(
  event: Pick<KeyboardEvent, "key" | "shiftKey">,
  typed: boolean,
): "open" | "save" | "save as" | "undo" | "redo" | null {
  const key = event.key.toLowerCase();
  if (key === "o" && !event.shiftKey) return "open";
  if (key === "s") return event.shiftKey ? "save as" : "save";
  if (typed) return null;
  if (key === "z") return event.shiftKey ? "redo" : "undo";
  return key === "y" && !event.shiftKey ? "redo" : null;
}

/** Listens for these keys on the whole page. */
export function useDocumentKeys(app: App) {
  useEffect(() => {
    // What stood in a field when the focus came: once it differs, undo belongs to the field.
    let came = "";
    const onFocus = ({ target }: FocusEvent) => {
      came = typingIn(target)?.value ?? "";
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey)) return;
      const field = typingIn(event.target);
      const command = documentCommand(event, field !== null && field.value !== came);
      if (command === null) return;
      const inDialog = document.querySelector("dialog[open]") !== null;
      if (inDialog && command !== "save") return;
      event.preventDefault();
      if (command === "undo") app.undo();
      else if (command === "redo") app.redo();
      else if (command === "open") {
        if (!pickedOtherwise(app)) document.getElementById(fileField)?.click();
      } else {
        // A field takes over what is typed in it when it is left.
        field?.blur();
        field?.focus();
        void (command === "save" ? app.save() : app.saveAs());
      }
    };
    window.addEventListener("focusin", onFocus);
    window.addEventListener("keydown", onKey);
    return () => {
      window.removeEventListener("focusin", onFocus);
      window.removeEventListener("keydown", onKey);
    };
  }, [app]);
}
