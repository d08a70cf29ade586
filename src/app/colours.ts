// One hue for each kind of support, the same in scene, bands, tables and print.
import type { SupportKind } from "./types.ts";

/**
 * Hues that people with any kind of colour vision tell apart: Okabe and Ito, "Color Universal Design" (2008), without
 * their vermilion, which is too near to the red of a stop. A lashing is no support that carries: it stays grey.
 */
export const kindColours: Readonly<Record<SupportKind, string>> = {
  "far crane": "#0072B2",
  "near crane": "#E69F00",
  "front train": "#009E73",
  "rear train": "#CC79A7",
  "far bearings": "#56B4E9",
  "near bearings": "#F0E442",
  lashing: "#8A8F94",
};

/** Hue of a kind given as a word; grey for what is no kind of support. */
export function colourOf(kind: string): string {
  return Object.hasOwn(kindColours, kind) ? kindColours[kind as SupportKind] : kindColours.lashing;
}
