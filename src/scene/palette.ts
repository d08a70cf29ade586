// Colours of the scene in both themes: neutral greys for steel, warm greys for ground, the kinds' hues for supports.
import { Color } from "three";
import { kindColours } from "../app/index.ts";
import { type Tone, tones } from "../shape/index.ts";
import type { Theme } from "./types.ts";

type Neutral = Exclude<Tone, keyof typeof kindColours>;

const light: Readonly<Record<Neutral, string>> = {
  steel: "#b4babf",
  "steel dark": "#959ca2",
  frame: "#7d848a",
  machine: "#d2cfc8",
  "machine dark": "#6a6e72",
  tyre: "#3f4245",
  ballast: "#8b8e92",
  lattice: "#7f8589",
  rope: "#3a4045",
  timber: "#cdb083",
  concrete: "#dad7d1",
  "concrete dark": "#c3bfb7",
  path: "#c2b8ab",
  ground: "#e2dcd2",
  "ground cut": "#ded8cd",
  water: "#a9bcc8",
  road: "#9a9c9f",
  marking: "#fafaf6",
  obstacle: "#a59db0",
  fitting: "#757b81",
};

const dark: Readonly<Record<Neutral, string>> = {
  steel: "#9aa2a8",
  "steel dark": "#7d858b",
  frame: "#8a9298",
  machine: "#8d8b86",
  "machine dark": "#5a5f63",
  tyre: "#3c4043",
  ballast: "#74777b",
  lattice: "#9aa0a4",
  rope: "#b9c0c4",
  timber: "#94805e",
  concrete: "#7a7873",
  "concrete dark": "#67655f",
  path: "#5d574e",
  ground: "#47433c",
  "ground cut": "#3a3731",
  water: "#34505f",
  road: "#4c4f52",
  marking: "#d8d8d2",
  obstacle: "#6f6880",
  fitting: "#6a7177",
};

/** Everything that depends on the theme alone. */
export interface Palette {
  background: Color;
  edge: Color;
  rope: Color;
  /** What a marked body is drawn toward. */
  marked: Color;
  /** Red, green, blue (linear) of every tone, in the order of `tones`. */
  tones: Float32Array;
}

function paletteOf(
  neutral: Readonly<Record<Neutral, string>>,
  background: string,
  edge: string,
  marked: string,
): Palette {
  const hex: Readonly<Record<string, string>> = { ...neutral, ...kindColours };
  const colour = new Color();
  return {
    background: new Color(background),
    edge: new Color(edge),
    rope: new Color(neutral.rope),
    marked: new Color(marked),
    tones: Float32Array.from(tones.flatMap((tone) => colour.set(hex[tone]).toArray())),
  };
}

const palettes: Readonly<Record<Theme, Palette>> = {
  light: paletteOf(light, "#fbfbf9", "#24292d", "#101418"),
  dark: paletteOf(dark, "#14181b", "#0b0e10", "#ffffff"),
};

export function palette(theme: Theme): Palette {
  return palettes[theme];
}
