// Traces evaluated by mathjs, a general-purpose expression library that shares no code with the checks.

import { compile, type EvalFunction } from "mathjs";
import { expect } from "vitest";
import { type Trace, tracesIn } from "../../../src/checks/index.ts";
import type { Plan } from "../../../src/plan/index.ts";

const compiled = new Map<string, EvalFunction>();

/** Value of a formula on the stated values of what it is worked out of. */
export function evaluated(one: Trace): number {
  const formula = one.formula as string;
  let code = compiled.get(formula);
  if (!code) {
    code = compile(formula);
    compiled.set(formula, code);
  }
  return code.evaluate(Object.fromEntries(one.from.map((f) => [f.symbol, f.value]))) as number;
}

/** The value at a path of a plan, such as `sets[0].girders[1].y_m`. */
export function inPlan(plan: Plan, path: string): unknown {
  return keysOf(path).reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], plan);
}

/** Puts a value at a path of a plan. */
export function putInPlan(plan: Plan, path: string, value: number): void {
  const keys = keysOf(path);
  const last = keys.pop() as string;
  const holder = keys.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], plan);
  (holder as Record<string, number>)[last] = value;
}

const keysOf = (path: string): string[] => path.split(/[.[\]]+/).filter((key) => key !== "");

/**
 * Every formula of a trace gives its value within 1e-12, every symbol of it is stated, and every leaf says where it is
 * from: a leaf of the plan is the number that stands there.
 */
export function expectTrue(root: Trace, plan: Plan): void {
  for (const one of tracesIn(root)) {
    const name = `${root.symbol}: ${one.symbol} = ${one.formula ?? "leaf"}`;
    if (one.leaf !== undefined) {
      expect(one.from, name).toEqual([]);
      expect(one.formula, name).toBeUndefined();
      if ("path" in one.leaf)
        expect(inPlan(plan, one.leaf.path), `${name} at ${one.leaf.path}`).toBe(one.value);
      else if ("constant" in one.leaf) expect(one.leaf.constant, name).not.toBe("");
      else expect(one.leaf.solved, name).not.toBe("");
      continue;
    }
    const value = evaluated(one);
    if (value === one.value) continue; // as for a use without end
    // Both are sums of a dozen products in double precision: 1e-12 leaves them 4000 roundings.
    expect(Math.abs(value - one.value), `${name}: ${value} against ${one.value}`).toBeLessThanOrEqual(
      1e-12 * Math.abs(one.value),
    );
  }
}
