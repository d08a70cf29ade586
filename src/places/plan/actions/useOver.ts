// A dialog over the plan that is shown as long as the state asks for it.
import { type RefObject, useCallback, useEffect, useRef } from "react";
import type { Over } from "../../../app/index.ts";
import { useApp } from "../../appContext.ts";

/**
 * The dialog's element, opened at once; `close` for its buttons, `closed` for its event. Escape closes it in the same turn
 * too: the event of closing comes later, and another dialog, or the same one again, may have been asked for meanwhile.
 */
export function useOver(over: Over): {
  dialog: RefObject<HTMLDialogElement | null>;
  close: () => void;
  closed: () => void;
} {
  const app = useApp();
  const dialog = useRef<HTMLDialogElement>(null);
  const closed = useCallback(() => {
    if (app.store.getState().over === over && dialog.current?.open !== true) app.store.setState({ over: "" });
  }, [app, over]);
  const close = useCallback(() => {
    dialog.current?.close();
    closed();
  }, [closed]);
  useEffect(() => {
    const it = dialog.current;
    if (it === null) return;
    if (!it.open) it.showModal();
    const onCancel = (event: Event) => {
      event.preventDefault();
      close();
    };
    it.addEventListener("cancel", onCancel);
    return () => it.removeEventListener("cancel", onCancel);
  }, [close]);
  return { dialog, close, closed };
}
