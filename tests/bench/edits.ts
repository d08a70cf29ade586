// How soon an edit of the demonstration day is answered: 200 scripted edits of mixed kinds, each on the plan as the one before
// left it, through the very work in turn that the page's worker does (in this process: no copy to a worker and back, which
// is printed by itself), with what is kept of the runs before.

import { type Answer, noRuns, solveInTurn } from "../../src/checks/index.ts";
import { checkPlan, type Plan, type PlanPath, printPath, valueAt, withValue } from "../../src/plan/index.ts";

type Row = (what: string, value: string, aim?: string, met?: boolean) => void;

/** Numbers from 0 to 1 from a seed (mulberry32, public domain). */
function chance(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Paths of numbers below a place whose last name is among some. */
function numbersAt(plan: Plan, at: PlanPath, names: readonly string[]): PlanPath[] {
  const value = at.length === 0 ? plan : valueAt(plan, at);
  if (typeof value === "number") return names.includes(String(at[at.length - 1])) ? [at] : [];
  if (typeof value !== "object" || value === null) return [];
  const inner = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return inner.flatMap((name) => numbersAt(plan, [...at, name], names));
}

interface Kind {
  name: string;
  paths: (plan: Plan) => PlanPath[];
}

/** Kinds of edits, as a planner makes them. */
const kinds: readonly Kind[] = [
  {
    name: "numbers of steps",
    paths: (plan) =>
      numbersAt(
        plan,
        ["sets", 0, "steps"],
        ["distance_m", "height_mm", "dx_m", "bite_m", "loadCap_kN", "minutes", "until_kN"],
      ),
  },
  {
    name: "picks and start",
    paths: (plan) => numbersAt(plan, ["sets", 0], ["at_m", "height_m", "deckAt_m"]),
  },
  {
    name: "machines",
    paths: (plan) => [
      ...numbersAt(plan, ["cranes"], ["chainage_m", "y_m", "best"]),
      ...numbersAt(plan, ["transporters"], ["mass_t", "cylinderStiffness_kN_per_mm", "spacing_m"]),
    ],
  },
  {
    name: "limits",
    paths: (plan) => [
      ...numbersAt(plan, ["limits"], ["value"]),
      ...numbersAt(plan, ["sets", 0, "steps"], ["windLimit_m_per_s"]),
    ],
  },
  { name: "notes", paths: () => [["header", "notes"]] },
];

/** The plan with a number of that kind changed by up to 1 %, or a note gone on with; null where it is no plan any more. */
function edited(plan: Plan, kind: Kind, random: () => number): { plan: Plan; path: PlanPath } | null {
  const paths = kind.paths(plan);
  const path = paths[Math.floor(random() * paths.length)];
  const value = valueAt(plan, path);
  const changed = withValue(
    plan,
    path,
    typeof value === "number" ? value * (1 + 0.02 * (random() - 0.5)) : `${String(value)}.`,
  );
  return checkPlan(structuredClone(changed)).ok ? { plan: changed, path } : null;
}

const EDITS = 200;

/** Times of some edits, ms. */
interface Times {
  step: number[];
  statics: number[];
  checks: number[];
}

const part = (times: readonly number[], p: number): number =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(p * times.length))] ?? Number.NaN;

/** Prints median and 95th part of a hundred of the time from an edit to its answers, of all and of every kind. */
export function printEdits(row: Row, start: Plan): void {
  const random = chance(20261125);
  const kept = noRuns();
  const all: Times = { step: [], statics: [], checks: [] };
  const byKind = new Map<string, Times>();
  let plan = start;
  let longest = 0;
  let copies = 0;
  const run = (next: Plan, step: number): [number, number, number] => {
    const begun = performance.now();
    // As it comes to a worker: a copy that shares nothing with the plan before.
    const copy = structuredClone(next);
    const work = solveInTurn(copy, { kept, first: { set: copy.sets[0].id, step } });
    const at = { step: Number.NaN, statics: Number.NaN };
    let last = performance.now();
    for (;;) {
      const part: IteratorResult<Answer | null> = work.next();
      const now = performance.now();
      longest = Math.max(longest, now - last);
      last = now;
      if (part.done) return [at.step, at.statics, now - begun];
      if (part.value !== null) at[part.value.is] = now - begun;
    }
  };
  run(plan, 0);
  longest = 0;
  for (let i = 0, asked = 0; i < EDITS && asked < 4 * EDITS; asked++) {
    const kind = kinds[asked % kinds.length];
    const next = edited(plan, kind, random);
    if (next === null) continue;
    i++;
    plan = next.plan;
    const { path } = next;
    // The cursor stands in the step that is edited, or anywhere.
    const own = path[2] === "steps" ? Number(path[3]) : Number.NaN;
    const cursor = Number.isNaN(own) ? Math.floor(random() * plan.sets[0].steps.length) : own;
    const [step, statics, checks] = run(plan, cursor);
    const times = byKind.get(kind.name) ?? { step: [], statics: [], checks: [] };
    byKind.set(kind.name, times);
    for (const t of [all, times]) {
      t.step.push(step);
      t.statics.push(statics);
      t.checks.push(checks);
    }
    const before = performance.now();
    structuredClone(plan);
    copies = Math.max(copies, performance.now() - before);
    if (Number.isNaN(step)) throw new Error(`the edit of ${printPath(path)} was not answered first`);
  }
  const both = (times: readonly number[]) =>
    `${part(times, 0.5).toFixed(0)} / ${part(times, 0.95).toFixed(0)} ms`;
  console.log(
    `${all.step.length} edits of the demonstration day, p50 / p95, through the worker's work in this process (not its messages)`,
  );
  row("to the step at the cursor", both(all.step), "aim: p95 100 ms", part(all.step, 0.95) <= 100);
  row("to the statics of the set", both(all.statics), "aim: p95 500 ms", part(all.statics, 0.95) <= 500);
  row("to all checks", both(all.checks), "aim: p95 1500 ms", part(all.checks, 0.95) <= 1500);
  for (const [name, times] of byKind)
    row(
      `  ${name}: step, statics, checks`,
      [times.step, times.statics, times.checks].map((t) => part(t, 0.5).toFixed(0)).join(" / "),
    );
  row("longest piece, which nothing can come between", `${longest.toFixed(0)} ms`);
  row("a copy of the plan, at most", `${copies.toFixed(1)} ms`);
}
