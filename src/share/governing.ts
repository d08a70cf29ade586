// Strips below the bands: use of the governing limit of every subject along the operation.
import type { SetResult, SpreadResult, UseStrip } from "../app/index.ts";
import { areaBetween, lineThrough } from "./lines.ts";

/** One subject: at every stored pose the highest use of any of its limits, and which limit that is. */
export interface Strip {
  subject: string;
  kind: string;
  /** Highest use per stored pose; NaN where no limit applies. */
  use: Float64Array;
  /** Index into `checks` of the limit that governs at each pose; -1 where none applies. */
  governs: Int16Array;
  checks: { check: string; limitWords: string }[];
  /** Highest use of all poses; NaN when no limit ever applies. */
  most: number;
}

/** Joins the strips of each subject into one, in the order in which the subjects first appear. */
export function stripsOf(set: Pick<SetResult, "strips" | "count">): Strip[] {
  const subjects = new Map<string, UseStrip[]>();
  for (const strip of set.strips) {
    const known = subjects.get(strip.subject);
    if (known === undefined) subjects.set(strip.subject, [strip]);
    else known.push(strip);
  }
  return [...subjects].map(([subject, own]) => {
    const use = new Float64Array(set.count).fill(Number.NaN);
    const governs = new Int16Array(set.count).fill(-1);
    let most = Number.NaN;
    own.forEach((strip, k) => {
      for (let i = 0; i < set.count; i++) {
        const value = strip.use[i];
        if (Number.isNaN(value) || !(Number.isNaN(use[i]) || value > use[i])) continue;
        use[i] = value;
        governs[i] = k;
        if (!(value <= most)) most = value;
      }
    });
    const checks = own.map(({ check, limitWords }) => ({ check, limitWords }));
    return { subject, kind: own.find(({ kind }) => kind !== "")?.kind ?? "", use, governs, checks, most };
  });
}

/** Use of the limits of one subject over the corners of what is uncertain, per stored pose; NaN where none applies. */
export interface UseBand {
  /** In no corner is the use lower: the greatest of its limits' lowest uses. */
  low: Float64Array;
  /** Highest use of any of its limits, and the corner that gave it: index into the corners. */
  high: Float64Array;
  corner: Uint16Array;
  /** Index of the stored pose of the highest of all, and its limit; -1 and '' where no limit ever applies. */
  worst: number;
  check: string;
}

/** Joins low and high of all limits of a subject. */
export function bandOfUse(spread: Pick<SpreadResult, "strips">, subject: string, count: number): UseBand {
  const low = new Float64Array(count).fill(Number.NaN);
  const high = new Float64Array(count).fill(Number.NaN);
  const corner = new Uint16Array(count);
  let worst = -1;
  let check = "";
  for (const strip of spread.strips) {
    if (strip.subject !== subject) continue;
    for (let i = 0; i < count; i++) {
      if (!Number.isNaN(strip.low[i]) && !(strip.low[i] <= low[i])) low[i] = strip.low[i];
      if (Number.isNaN(strip.high[i]) || strip.high[i] <= high[i]) continue;
      high[i] = strip.high[i];
      corner[i] = strip.highCorner[i];
      if (worst >= 0 && high[i] <= high[worst] && i !== worst) continue;
      worst = i;
      check = strip.check;
    }
  }
  return { low, high, corner, worst, check };
}

/** The strips with a use, the chosen subject first, then by highest use. */
export function inOrderOfUse(strips: readonly Strip[], chosen: string): Strip[] {
  const first = (strip: Strip) => (strip.subject === chosen ? 0 : 1);
  return strips
    .filter((strip) => Number.isFinite(strip.most))
    .sort((a, b) => first(a) - first(b) || b.most - a.most);
}

/** A use above this multiple of the limit is drawn at it, so that a strip stays readable. */
export const mostDrawn = 1.4;

/** Where a strip stands, px. `height` px stand for `mostDrawn`. */
export interface StripFrame {
  left: number;
  width: number;
  top: number;
  height: number;
}

const along =
  (x: Float64Array, { left, width }: StripFrame) =>
  (i: number) =>
    left + x[i] * width;
const up =
  ({ top, height }: StripFrame) =>
  (use: number) =>
    top + height * (1 - Math.min(mostDrawn, Math.max(0, use)) / mostDrawn);

/** The line of a strip as an SVG path; broken where no limit applies. `x` is 0..1 per stored pose. */
export function stripPath(use: Float64Array, x: Float64Array, frame: StripFrame): string {
  return lineThrough(use, along(x, frame), up(frame));
}

/** Outline of what lies between two lines of a strip, as an SVG path. */
export function stripArea(low: Float64Array, high: Float64Array, x: Float64Array, frame: StripFrame): string {
  return areaBetween(low, high, along(x, frame), up(frame));
}
