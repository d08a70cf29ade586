// Named factors and limits of the rule set as leaves of a trace.

import type { Limit } from "../limits.ts";
import { constant, type Recorder, trace } from "../trace.ts";

/** A limit in percent as a leaf, and as the share that it stands for under `symbol`. */
export function percent(rec: Recorder | null, symbol: string, limit: Limit, words: string): number {
  const share = limit.value / 100;
  if (rec === null) return share;
  constant(rec, `${symbol}_pct`, limit.value, "%", words, `${limit.source} (${limit.chosenBy})`);
  return trace(rec, symbol, share, `${symbol}_pct/100`, "1", words);
}

/** A limit in its own unit, which is one of SI or none. */
export function plain(
  rec: Recorder | null,
  symbol: string,
  limit: Limit,
  unit: string,
  words: string,
): number {
  return constant(rec, symbol, limit.value, unit, words, `${limit.source} (${limit.chosenBy})`);
}
