// Axes of drawings: round numbers along them, and the way from a value to px.

/** A straight way from values to px. */
export type Scale = (value: number) => number;

/** From `from` at `start` px to `to` at `end` px; a span of nothing lies in the middle. */
export function scaleOf(from: number, to: number, start: number, end: number): Scale {
  if (to === from) return () => (start + end) / 2;
  return (value) => start + ((value - from) / (to - from)) * (end - start);
}

/** Steps between ticks: the next of 1, 2, 5 times a power of ten so that at most `most` parts lie in a span. */
export function tickStep(span: number, most: number): number {
  if (!(span > 0)) return 1;
  const raw = span / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(raw));
  // The quotient of two decimals may lie a rounding above the number that it stands for.
  const times = raw / power - 1e-9;
  return (times <= 1 ? 1 : times <= 2 ? 2 : times <= 5 ? 5 : 10) * power;
}

/** Round values within a span, both ends counted. */
export function ticksOf(from: number, to: number, most: number): number[] {
  const step = tickStep(to - from, most);
  const out: number[] = [];
  for (let i = Math.ceil(from / step - 1e-9) + 0; i * step <= to + 1e-9 * step; i++) out.push(i * step);
  return out;
}

/** A tick as text, with no more places than its step has. */
export function tickText(value: number, step: number): string {
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const text = value.toFixed(Math.min(6, places));
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
}

/** The greatest of 1, 2, 5 times a power of ten that is at most `most`: a factor by which a drawing is exaggerated. */
export function roundFactor(most: number): number {
  if (!(most >= 1) || !Number.isFinite(most)) return 1;
  const power = 10 ** Math.floor(Math.log10(most) + 1e-12);
  const times = most / power + 1e-9;
  return (times >= 5 ? 5 : times >= 2 ? 2 : 1) * power;
}

/** Heights at which labels do not overlap: each at its own or pushed down to `apart` below the one above. */
export function spreadLabels(at: readonly number[], apart: number, lowest: number): number[] {
  const order = at.map((_, i) => i).sort((a, b) => at[a] - at[b]);
  const out = [...at];
  for (let k = 1; k < order.length; k++) out[order[k]] = Math.max(out[order[k]], out[order[k - 1]] + apart);
  // What was pushed beyond the end is pushed back up.
  let bound = lowest;
  for (let k = order.length - 1; k >= 0; k--) {
    out[order[k]] = Math.min(out[order[k]], bound);
    bound = out[order[k]] - apart;
  }
  return out;
}
