// What every check of the demonstration day costs: those read at each stored pose, those over the whole run, those of
// the data alone. Also how much of a solve are watches, whose margins are read at every pose that a search looks at.

import { checkList, type Finding, type Measure, solvePlan } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { type Pose, runSet, type SetContext } from "../../src/sequence/index.ts";

/** Least time of a call in microseconds. */
type Timer = (call: (i: number) => void, budget_ms?: number) => number;
type Row = (what: string, value: string, aim?: string, met?: boolean) => void;

/** Prints the whole time of a plan with all checks, and then its parts. */
export function printChecks(time: Timer, row: Row, plan: Plan, ctx: SetContext): void {
  const stored: Pose[] = [];
  const run = runSet(ctx, [], { onPose: (pose) => stored.push(pose) });
  const contexts = new Map([[ctx.set.id, ctx]]);
  console.log("The demonstration day with all checks, warm");
  const whole = time(() => solvePlan(plan, { contexts }), 4000) / 1000;
  const bare = time(() => runSet(ctx, []), 2000) / 1000;
  row("all checks and events", `${whole.toFixed(0)} ms`, "aim: 1000 ms", whole <= 1000);
  row("statics with events of contacts alone", `${bare.toFixed(0)} ms`);

  const read = new Map<string, { spent: number; watched: boolean; subjects: number }>();
  const measures = checkList.makers.flatMap((make) => make(ctx));
  for (const m of measures) {
    const one = read.get(m.check) ?? { spent: 0, watched: m.watched, subjects: 0 };
    one.spent += readAll(time, m, stored);
    one.subjects++;
    read.set(m.check, one);
  }
  const total = [...read.values()].reduce((sum, { spent }) => sum + spent, 0);
  console.log(`Checks read at each of ${stored.length} stored poses: ${(total / 1000).toFixed(1)} ms in all`);
  for (const [check, { spent, watched, subjects }] of ordered(read, (x) => x.spent))
    row(
      `${check}${watched ? "" : ", not watched"} (${subjects})`,
      `${(spent / stored.length).toFixed(2)} us a pose`,
    );

  console.log("Checks over the whole run");
  for (const find of checkList.runChecks) {
    let found: Finding[] = [];
    // A run of its own each time: what is kept for a run is worked out again.
    const spent = time(() => {
      found = find(ctx, { ...run }, stored);
    }, 200);
    row(`${find.name || "readings over the run"} (${found.length} found)`, `${(spent / 1000).toFixed(2)} ms`);
  }
  console.log("Checks of the data alone");
  for (const find of checkList.planChecks)
    row(find.name || "unnamed", `${(time(() => find(plan), 100) / 1000).toFixed(2)} ms`);
}

const readAll = (time: Timer, m: Measure, stored: readonly Pose[]): number =>
  time(() => {
    for (const pose of stored) m.read(pose);
  }, 20);

function ordered<V>(map: ReadonlyMap<string, V>, by: (v: V) => number): [string, V][] {
  return [...map].sort((a, b) => by(b[1]) - by(a[1]));
}
