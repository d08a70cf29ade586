// A dialog over the plan that is shown as long as the state asks for it.
import { type RefObject, useEffect, useRef } from "react";
import type { Over } from "../../../app/index.ts";
import { useApp } from "../../appContext.ts";

/** The dialog's element, opened at once; and what to do when it was closed: the state then asks for nothing, or for another. */
export function useOver(over: Over): {
  dialog: RefObject<HTMLDialogElement | null>;
  close: () => void;
  closed: () => void;
} {
  const app = useApp();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  return {
    dialog,
    close: () => dialog.current?.close(),
    closed: () => {
      if (app.store.getState().over === over) app.store.setState({ over: "" });
    },
  };
}
