// How every part of a place reaches the app and reads its state.
import { createContext, useContext } from "react";
import { useStore } from "zustand";
import { useShallow } from "zustand/react/shallow";
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

/** Several parts of the state at once; the component is drawn anew when one of them changes, and not for any other. */
export function useSome<K extends keyof AppState>(...names: K[]): Pick<AppState, K> {
  const pick = (state: AppState) => Object.fromEntries(names.map((name) => [name, state[name]]));
  return useStore(useApp().store, useShallow(pick)) as Pick<AppState, K>;
}
