// Findings of the measures of a run: a quantity beyond its limit over one unbroken stretch of stored poses.

import type { SetContext, SetRun } from "../sequence/index.ts";
import { type Measure, marginOf, type Reading } from "./measure.ts";
import type { Finding, Level, When } from "./types.ts";

const rank: Record<Level, number> = { stop: 0, caution: 1, note: 2 };

/** Findings with the worst level first, and within a level in the order of the operation. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      rank[a.level] - rank[b.level] ||
      (a.from?.step ?? -1) - (b.from?.step ?? -1) ||
      (a.from?.progress ?? 0) - (b.from?.progress ?? 0),
  );
}

const when = (run: SetRun, i: number): When => ({ step: run.step[i], progress: run.progress[i] });

/** One finding for every unbroken stretch of stored poses beyond the limit; gaps within a step are joined where asked for. */
export function measureFindings(
  ctx: SetContext,
  run: SetRun,
  m: Measure,
  reading: (i: number) => Reading,
  use: Float64Array,
): Finding[] {
  const out: Finding[] = [];
  for (let i = 0; i < run.count; i++) {
    const beyond = (k: number) => {
      const r = reading(k);
      return !Number.isNaN(r.value) && marginOf(m, r) < 0;
    };
    if (!beyond(i)) continue;
    let end = i;
    let worst = i;
    for (let k = i + 1; k < run.count; k++) {
      if (beyond(k)) {
        end = k;
        if (use[k] > use[worst]) worst = k;
      } else if (!m.perStep || run.step[k] !== run.step[end]) break;
    }
    const r = reading(worst);
    const value = r.value * m.factor;
    const limit = r.limit * m.factor;
    const relation = m.sense === "greatest" ? "above" : "below";
    out.push({
      id: `${m.check}:${ctx.set.id}:${m.subject}:${run.step[i]}:${run.progress[i]}`,
      level: m.level,
      check: m.check,
      set: ctx.set.id,
      subject: m.subject,
      from: when(run, i),
      to: when(run, end),
      worst: when(run, worst),
      value,
      limit,
      unit: m.unit,
      use: use[worst],
      source: r.source ?? m.source,
      chosenBy: r.chosenBy ?? m.chosenBy,
      words: `${m.check} of ${m.subject}: ${value.toFixed(m.digits)} is ${relation} ${limit.toFixed(m.digits)} ${m.unit}${r.where ? ` (${r.where})` : ""}`,
      cure: m.cure,
    });
    i = end;
  }
  return out;
}
