// Listens to the keyboard for the whole page, and gives buttons what they say of an action.
import { useEffect } from "react";
import type { App } from "../../../app/index.ts";
import { keyIsTaken } from "../../../controls/index.ts";
import { useApp, useIt } from "../../appContext.ts";
import { type Action, titleOf, whyNot } from "./action.ts";
import { isPressed, type Pressed, shortcutsOf } from "./keys.ts";
import { actionOf, pageActions } from "./pageActions.ts";
import { typingIn } from "./picking.ts";

/** The action of a pressed key. `typed`: text in the field that has the focus was just changed. */
export function actionPressed(event: Pressed, typed: boolean, inDialog: boolean): Action | null {
  const found = pageActions.find((one) => one.keys?.some((keys) => isPressed(keys, event)));
  if (found === undefined || (typed && found.fieldFirst === true)) return null;
  return inDialog && found.inDialog !== true ? null : found;
}

/** What was typed for the finder before it stood there. */
let early = "";

/** Hands out, once, what was typed for the finder before it stood there. */
export function takeEarly(): string {
  const typed = early;
  early = "";
  return typed;
}

/** The keys of all actions, on the whole page. Single keys are left to the field or button that uses them itself. */
export function usePageKeys(app: App) {
  useEffect(() => {
    // What stood in a field when the focus came: once it differs, undo belongs to the field.
    let came = "";
    const onFocus = ({ target }: FocusEvent) => {
      came = typingIn(target)?.value ?? "";
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented) return;
      const field = typingIn(event.target);
      const isOpen = document.querySelector("dialog[open]") !== null;
      const { over } = app.store.getState();
      if (!isOpen && over === "find" && event.key.length === 1 && !event.ctrlKey && !event.metaKey) {
        early += event.key;
        event.preventDefault();
        return;
      }
      if (over !== "find") early = "";
      // A dialog that is asked for, and not there yet, has the keys already.
      const inDialog = isOpen || over !== "";
      const action = actionPressed(event, field !== null && field.value !== came, inDialog);
      if (action === null) return;
      const focused = document.activeElement;
      const type = focused instanceof HTMLInputElement ? focused.type : undefined;
      const it =
        focused === null ? null : { tagName: focused.tagName, type, role: focused.getAttribute("role") };
      if (!event.ctrlKey && !event.metaKey && keyIsTaken(it, event.key)) return;
      event.preventDefault();
      if (whyNot(action, app.store.getState()) === "") action.run(app);
    };
    window.addEventListener("focusin", onFocus);
    window.addEventListener("keydown", onKey);
    return () => {
      window.removeEventListener("focusin", onFocus);
      window.removeEventListener("keydown", onKey);
    };
  }, [app]);
}

/** What a button of an action says and does; `disabled` while it cannot be done. */
export function useAction(id: string) {
  const app = useApp();
  const action = actionOf(id);
  const title = useIt((state) => titleOf(action, state));
  const disabled = useIt((state) => whyNot(action, state) !== "");
  const keys = action.keys;
  return {
    type: "button" as const,
    title,
    disabled,
    ...(keys === undefined ? {} : { "aria-keyshortcuts": shortcutsOf(keys) }),
    onClick: () => action.run(app),
  };
}
