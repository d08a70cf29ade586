// What this browser remembers of how a person likes to read: units, theme, width. Nothing of any plan.
import { systems } from "../units/index.ts";
import { type Width, widths } from "./axis.ts";
import type { Theme, View } from "./state.ts";
import type { System } from "./types.ts";

const place = "handspan-view";

/** The remembered part of the view; what is missing or no longer known is left out. Storage may be forbidden. */
export function rememberedView(storage: Pick<Storage, "getItem"> | null, dark: boolean): Partial<View> {
  const view: Partial<View> = { theme: dark ? "dark" : "light" };
  try {
    const kept: unknown = JSON.parse(storage?.getItem(place) ?? "{}");
    if (typeof kept !== "object" || kept === null) return view;
    const { units, theme, width } = kept as Record<string, unknown>;
    if (typeof units === "string" && Object.hasOwn(systems, units)) view.units = units as System;
    if (theme === "light" || theme === "dark") view.theme = theme satisfies Theme;
    if (typeof width === "string" && Object.hasOwn(widths, width)) view.width = width as Width;
  } catch {
    // Unreadable or forbidden: the page starts as if nothing were remembered.
  }
  return view;
}

/** Remembers units, theme and width. A browser that forbids it loses nothing but the memory. */
export function keepView(storage: Pick<Storage, "setItem"> | null, { units, theme, width }: View): void {
  try {
    storage?.setItem(place, JSON.stringify({ units, theme, width }));
  } catch {
    // Full or forbidden.
  }
}
