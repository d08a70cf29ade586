// Traces: what is shown of a number gives that number, also after a change of the plan.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  checkList,
  solvePlan,
  type Trace,
  type Traced,
  traceOf,
  tracesIn,
} from "../../../src/checks/index.ts";
import { type Plan, readPlan, writePlan } from "../../../src/plan/index.ts";
import { prepareContext } from "../../../src/sequence/index.ts";
import { type ScenarioName, scenario } from "../../sequence/plans.ts";
import { expectTrue, inPlan, putInPlan } from "./formulas.ts";

type Found = Extract<Traced, { found: true }>;

/** A plan under all three rule sets, solved. */
function judged(name: ScenarioName, change: (plan: Plan) => void = () => {}) {
  const plan = scenario(name, (p) => {
    const all = ["aisc360-asd", "aisc360-lrfd", "aashto-construction"];
    p.limits.use.push(...all.filter((id) => !p.limits.use.includes(id)));
    change(p);
  });
  const [{ id }] = plan.sets;
  const ctx = prepareContext(plan, id);
  const result = solvePlan(plan, { contexts: new Map([[id, ctx]]) });
  const measures = checkList.makers.flatMap((make) => make(ctx)).filter((m) => m.trace !== undefined);
  return { plan, ctx, result, measures };
}
type Judged = ReturnType<typeof judged>;

/** Traces of random checks at random poses, each of which applies there. */
function randomTraces({ plan, ctx, result, measures }: Judged, count: number, seed: number): Found[] {
  const [set] = result.sets;
  const out: Found[] = [];
  const draw = fc.sample(
    fc.tuple(fc.nat(measures.length - 1), fc.nat(set.count - 1), fc.double({ min: 0, max: 1, noNaN: true })),
    { numRuns: 40 * count, seed },
  );
  for (const [m, i, p] of draw) {
    const { check, subject } = measures[m];
    // Half of them at stored poses, half between.
    const progress = i % 2 === 0 ? set.progress[i] : p;
    const traced = traceOf(
      plan,
      result,
      { check, subject, set: set.setId, step: set.step[i], progress },
      ctx,
    );
    if (traced.found) out.push(traced);
    if (out.length === count) break;
  }
  return out;
}

describe.each(["demo", "planted-faults"] as const)("%s", (name) => {
  const whole = judged(name);

  test("100 random traces give their numbers (seed 1)", () => {
    const traces = randomTraces(whole, 100, 1);
    expect(traces.length).toBe(100);
    for (const { trace, reading, value, limit } of traces) {
      expect(value.value).toBe(reading.value);
      expect(limit?.value).toBe(reading.limit);
      expectTrue(trace, whole.plan);
    }
    // They are of several checks, not of one that happens to be everywhere.
    expect(new Set(traces.map((t) => t.asked.check)).size).toBeGreaterThan(4);
  });

  test("the number of a trace is the number of the result, to the last bit", () => {
    const { plan, ctx, result, measures } = whole;
    const [set] = result.sets;
    let compared = 0;
    for (const strip of set.strips) {
      if (!measures.some((m) => m.check === strip.check && m.subject === strip.subject)) continue;
      for (let i = 0; i < set.count; i += 7) {
        if (Number.isNaN(strip.use[i])) continue;
        const { check, subject } = strip;
        const asked = { check, subject, set: set.setId, step: set.step[i], progress: set.progress[i] };
        const traced = traceOf(plan, result, asked, ctx) as Found;
        expect(traced.trace.value, JSON.stringify(asked)).toBe(strip.use[i]);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(200);
  });

  test("with one leaf of the plan 1 % off and all solved again, they give the new numbers (seed 2)", () => {
    const traces = randomTraces(whole, 12, 2);
    for (const [k, { asked, trace }] of traces.entries()) {
      const leaves = tracesIn(trace).filter((t): t is Trace & { leaf: { path: string } } => {
        return t.leaf !== undefined && "path" in t.leaf && t.value !== 0;
      });
      if (leaves.length === 0) continue;
      const { leaf, value } = leaves[(7 * k) % leaves.length];
      const changed = structuredClone(whole.plan);
      putInPlan(changed, leaf.path, value * 1.01);
      const read = readPlan(writePlan(changed));
      // A station moved beyond its neighbour's, or one of a hundred bolts, may be no plan any more.
      if (!read.ok) continue;
      const again = solvePlan(read.plan);
      const traced = traceOf(read.plan, again, asked);
      if (!traced.found) continue;
      expect(inPlan(read.plan, leaf.path)).toBe(value * 1.01);
      expectTrue(traced.trace, read.plan);
      const seen = tracesIn(traced.trace).find(
        (t) => t.leaf && "path" in t.leaf && t.leaf.path === leaf.path,
      );
      if (seen) expect(seen.value).toBe(value * 1.01);
    }
  });
});
