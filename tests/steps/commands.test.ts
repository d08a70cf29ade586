// The commands that a crew hears: no two begin with the same word unless they are one motion. Common practice, no source.

import { describe, expect, test } from "vitest";
import { planJsonSchema } from "../../src/plan/index.ts";
import { motionOf, oneMotion, stepKinds } from "../../src/sequence/index.ts";

const first = (command: string) => command.split(" ")[0];
const pairs = stepKinds.flatMap((a, i) => stepKinds.slice(i + 1).map((b) => [a, b] as const));
const together = (a: string, b: string) =>
  oneMotion.some(
    (kinds) => (kinds as readonly string[]).includes(a) && (kinds as readonly string[]).includes(b),
  );

describe("commands", () => {
  test("every kind of step in the plan file has a motion, and no other has", () => {
    const text = JSON.stringify(planJsonSchema());
    const inFile = new Set([...text.matchAll(/"do":\{"type":"string","const":"([^"]+)"/g)].map((m) => m[1]));
    expect(inFile.size).toBeGreaterThan(15);
    expect([...stepKinds].sort()).toEqual([...inFile].sort());
    for (const kind of stepKinds) expect(typeof motionOf(kind).at).toBe("function");
  });

  test("two that begin with the same word are one motion", () => {
    for (const [a, b] of pairs)
      if (first(a) === first(b)) expect([a, b, together(a, b)]).toEqual([a, b, true]);
  });

  test("of one motion, everything but the last word is the same", () => {
    for (const kinds of oneMotion) {
      expect(new Set(kinds.map(first)).size).toBe(1);
      for (const kind of kinds) expect(kind.split(" ").length).toBeLessThanOrEqual(2);
      expect(new Set(kinds).size).toBe(kinds.length);
    }
  });

  test("a first word is no beginning of another, and words that are easily misheard are not used", () => {
    const words = [...new Set(stepKinds.map(first))];
    for (const a of words)
      for (const b of words) if (a !== b) expect(b.startsWith(a), `${a}, ${b}`).toBe(false);
    for (const word of ["clear", "let", "lower"]) expect(words).not.toContain(word);
  });
});
