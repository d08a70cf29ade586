// A number that is known to lie between two others.

export interface Span {
  low: number;
  high: number;
}

export const exactly = (v: number): Span => ({ low: v, high: v });
/** Within a part of itself and a plain amount. */
export const about = (v: number, part: number, more = 0): Span => ({
  low: v - Math.abs(v) * part - more,
  high: v + Math.abs(v) * part + more,
});
export const plus = (a: Span, b: Span): Span => ({ low: a.low + b.low, high: a.high + b.high });
export const less = (a: Span, b: Span): Span => ({ low: a.low - b.high, high: a.high - b.low });
export const times = (a: Span, k: number): Span =>
  k >= 0 ? { low: a.low * k, high: a.high * k } : { low: a.high * k, high: a.low * k };
export const hull = (...all: Span[]): Span => ({
  low: Math.min(...all.map((s) => s.low)),
  high: Math.max(...all.map((s) => s.high)),
});
/** Not below zero. */
export const pushed = (a: Span): Span => ({ low: Math.max(0, a.low), high: Math.max(0, a.high) });
/** Size of what may have either sign. */
export const size = (a: Span): Span => ({
  low: a.low <= 0 && a.high >= 0 ? 0 : Math.min(Math.abs(a.low), Math.abs(a.high)),
  high: Math.max(Math.abs(a.low), Math.abs(a.high)),
});
