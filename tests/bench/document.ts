// What each edit costs before anything is solved: judging the draft, its history, and its text for this browser.

import { checkPlan, type Plan, planHash, withValue, writePlan } from "../../src/plan/index.ts";

type Row = (what: string, value: string, aim?: string, met?: boolean) => void;

/** Median and 95th percentile of many calls, ms. */
function spread(call: (i: number) => unknown, count = 200): [number, number] {
  const taken = Array.from({ length: count }, (_, i) => {
    const start = performance.now();
    call(i);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return [taken[Math.floor(count / 2)], taken[Math.floor(0.95 * count)]];
}

/** Prints what an edit of a plan costs on the thread of the screen. */
export function printDocument(row: Row, plan: Plan): void {
  const revised = (i: number) => withValue(plan, ["header", "revision"], `R${i}`);
  const show = ([p50, p95]: [number, number]) => `${p50.toFixed(2)} / ${p95.toFixed(2)} ms`;
  const judged = spread((i) => checkPlan(revised(i)));
  // Judged with every edit and every step of a drag: a picture has 16 ms, of which this may take the larger part.
  row("judging an edited draft, p50 / p95", show(judged), "aim: 10 ms", judged[0] <= 10);
  row("its text for this browser", show(spread((i) => JSON.stringify(revised(i)))));
  row("its text for a file", show(spread((i) => writePlan(revised(i)))));
  row("its content hash", show(spread((i) => planHash(revised(i)))));
}
