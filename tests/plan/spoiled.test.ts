// Whatever is put at whatever place of a plan: reading answers, never throws, and never lets a non-number through.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  checkPlan,
  openItems,
  planHash,
  readPlan,
  sentence,
  takeOff,
  writePlan,
} from "../../src/plan/index.ts";
import { samplePlan } from "./sample.ts";

/** All places in a value, as paths. */
function places(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== "object" || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, inner]) => places(inner, [...path, key]))].filter(
    (p) => p.length > 0,
  );
}

const everywhere = places(samplePlan());

const oddValue = fc.oneof(
  fc.constantFrom<unknown>(null, undefined, Number.NaN, 1e308, -1, 0, "", "__proto__", [], {}, [[]], true),
  fc.double(),
  fc.jsonValue(),
  fc.string(),
);

/** Does one spoiling to the plan: puts a value, takes a field away, adds one, or doubles a member of a list. */
function spoil(plan: unknown, path: (string | number)[], how: string, value: unknown): void {
  const parts = [...path];
  const last = parts.pop() ?? "";
  let at = plan as Record<string, unknown>;
  for (const part of parts) {
    const inner = at[part];
    if (typeof inner !== "object" || inner === null) return;
    at = inner as Record<string, unknown>;
  }
  if (how === "put") at[last] = value;
  else if (how === "take") delete at[last];
  else if (how === "double" && Array.isArray(at)) at.push(structuredClone(at[Number(last)]));
  else if (how === "add")
    Object.defineProperty(at, typeof value === "string" ? value : `new ${typeof value}`, {
      value: 1,
      enumerable: true,
      configurable: true,
      writable: true,
    });
}

const spoilings = fc.array(
  fc.tuple(fc.constantFrom(...everywhere), fc.constantFrom("put", "take", "double", "add"), oddValue),
  { minLength: 1, maxLength: 5 },
);

describe("a spoiled plan", () => {
  test("walks a plausible number of places", () => {
    expect(everywhere.length).toBeGreaterThan(500);
  });

  test("is answered with a plan or with sentences (seed 7)", () => {
    let refused = 0;
    let accepted = 0;
    const answers = (list: [(string | number)[], string, unknown][]) => {
      const plan = samplePlan();
      for (const [path, how, value] of list) spoil(plan, path, how, value);
      for (const result of [checkPlan(plan), readPlan(JSON.stringify(plan))]) {
        if (result.ok) {
          accepted++;
          expect(planHash(result.plan)).toMatch(/^[0-9a-f]{64}$/);
          const again = readPlan(writePlan(result.plan));
          expect(again.ok && planHash(again.plan)).toBe(planHash(result.plan));
          openItems(result.plan);
          for (const set of result.plan.sets) expect(Number.isFinite(takeOff(set).mass)).toBe(true);
        } else {
          refused++;
          expect(result.errors.length).toBeGreaterThan(0);
          for (const error of result.errors) {
            const { path, found, allowed, mend } = error;
            for (const words of [path, found, allowed, mend]) expect(words).not.toBe("");
            expect(sentence(error)).not.toMatch(/\[object Object\]/);
          }
        }
      }
    };
    fc.assert(fc.property(spoilings, answers), { seed: 7, numRuns: 500 });
    expect(refused).toBeGreaterThan(300);
    expect(accepted).toBeGreaterThan(20);
  });

  test("any text is answered, and called JSON exactly when it is (seed 8)", () => {
    const text = fc.oneof(
      fc.json(),
      fc.string(),
      fc.string({ unit: fc.constantFrom(...'{}[]",:0-1.e+ \\tu\n') }),
    );
    const agrees = (input: string) => {
      let json = true;
      try {
        JSON.parse(input);
      } catch {
        json = false;
      }
      const result = readPlan(input);
      const isNot =
        !result.ok && result.errors.length === 1 && result.errors[0].found.endsWith("which is not JSON");
      expect(isNot).toBe(!json);
    };
    fc.assert(fc.property(text, agrees), { seed: 8, numRuns: 3000 });
  });
});
