// How every part of a place reaches the app and reads its state.
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import type { App, AppState } from "../app/index.ts";

export const AppContext = createContext<App | null>(null);

/** The app of this page. */
export function useApp(): App {
  const app = useContext(AppContext);
  if (app === null)
    throw new Error("useApp: there is no app above; put the place into <AppContext value={app}>.");
  return app;
}

/** A part of the state; the component is drawn anew when that part changes. */
export function useIt<T>(part: (state: AppState) => T): T {
  return useStore(useApp().store, part);
}
