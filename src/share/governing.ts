// Strips below the bands: use of the governing limit of every subject along the operation.
import type { SetResult, SpreadResult, UseStrip } from "../app/index.ts";

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

/** Highest use of any limit of a subject over the corners of what is uncertain, per stored pose; NaN where none applies. */
export function highOf(spread: Pick<SpreadResult, "strips">, subject: string, count: number): Float64Array {
  const high = new Float64Array(count).fill(Number.NaN);
  for (const strip of spread.strips) {
    if (strip.subject !== subject) continue;
    for (let i = 0; i < count; i++)
      if (!Number.isNaN(strip.high[i]) && !(strip.high[i] <= high[i])) high[i] = strip.high[i];
  }
  return high;
}

/** A use above this multiple of the limit is drawn at it, so that a strip stays readable. */
export const mostDrawn = 1.4;

/** The line of a strip as an SVG path; broken where no limit applies. `height` px stand for `mostDrawn`. */
export function stripPath(
  use: Float64Array,
  x: Float64Array,
  frame: { left: number; width: number; top: number; height: number },
): string {
  let path = "";
  let drawing = false;
  for (let i = 0; i < use.length; i++) {
    if (!Number.isFinite(use[i])) {
      drawing = false;
      continue;
    }
    const part = Math.min(mostDrawn, Math.max(0, use[i])) / mostDrawn;
    const px = Math.round((frame.left + x[i] * frame.width) * 10) / 10;
    const py = Math.round((frame.top + frame.height * (1 - part)) * 10) / 10;
    path += `${drawing ? "L" : "M"}${px} ${py}`;
    drawing = true;
  }
  return path;
}
