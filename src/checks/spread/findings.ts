// Findings of the spread: stops and cautions at some corner that the best run does not have.

import { type Measure, marginOf } from "../measure.ts";
import type { Finding, When } from "../types.ts";
import type { MeasureBand } from "./gather.ts";

/** What marks a finding that only some corner has. */
export const inSpread = "in the spread: ";

/** The end of its words, by which it names its corner. */
export const cornerWords = (corner: string): string => `; corner: ${corner}`;

/**
 * One finding for every unbroken stretch of stored poses at which some corner is beyond the limit. A stretch in which the
 * best run is beyond it somewhere has its finding already.
 */
export function bandFindings(
  set: string,
  band: MeasureBand,
  when: (pose: number) => When,
  nameOf: (corner: number, step: number) => string,
): Finding[] {
  const m: Measure = band.measure;
  const out: Finding[] = [];
  const beyond = (i: number) => {
    const r = band.readings[i];
    return r !== null && marginOf(m, r) < 0;
  };
  for (let i = 0; i < band.high.length; i++) {
    if (!beyond(i)) continue;
    let end = i;
    let worst = i;
    let known = band.bestBeyond[i] === 1;
    while (end + 1 < band.high.length && beyond(end + 1)) {
      end++;
      if (band.high[end] > band.high[worst]) worst = end;
      known ||= band.bestBeyond[end] === 1;
    }
    const r = band.readings[worst];
    if (!known && r !== null && m.level !== "note") {
      const value = r.value * m.factor;
      const limit = r.limit * m.factor;
      const relation = m.sense === "greatest" ? "above" : "below";
      out.push({
        id: `${inSpread}${m.check}:${set}:${m.subject}:${when(i).step}:${when(i).progress}`,
        level: m.level,
        check: `${inSpread}${m.check}`,
        set,
        subject: m.subject,
        from: when(i),
        to: when(end),
        worst: when(worst),
        value,
        limit,
        unit: m.unit,
        use: band.high[worst],
        source: r.source ?? m.source,
        chosenBy: r.chosenBy ?? m.chosenBy,
        words: `${inSpread}${m.check} of ${m.subject}: ${value.toFixed(m.digits)} is ${relation} ${limit.toFixed(m.digits)} ${m.unit}${r.where ? ` (${r.where})` : ""}${cornerWords(nameOf(band.corner[worst], when(worst).step))}`,
        cure: m.cure,
      });
    }
    i = end;
  }
  return out;
}

/** A finding of the best run's kind, as one of the spread. */
export function ofCorner(finding: Finding, corner: string): Finding {
  return {
    ...finding,
    id: `${inSpread}${finding.id}`,
    check: `${inSpread}${finding.check}`,
    words: `${inSpread}${finding.words}${cornerWords(corner)}`,
  };
}
