// The table of coverage: every row once, in our own words; what is computed has checks, and each check a witness that names
// the row; what a witness answers stands in the table.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { requirements } from "../../src/checks/index.ts";
import { coverageText } from "../../src/report/index.ts";
import { witnesses } from "./witnesses.ts";

/** How many numbered requirements each area has. */
const counts: Record<string, number> = {
  SW: 8,
  TR: 13,
  CR: 17,
  GR: 7,
  ST: 11,
  SQ: 12,
  WX: 7,
  FT: 8,
  DOC: 7,
  BR: 3,
  CA: 5,
};

describe("the table of coverage", () => {
  test("has every requirement once, in order", () => {
    const all = Object.entries(counts).flatMap(([area, n]) =>
      Array.from({ length: n }, (_, i) => `${area}-${i + 1}`),
    );
    expect(requirements.map((r) => r.id)).toEqual(all);
  });

  test.each(requirements.map((r) => [r.id, r] as const))(
    "%s says what is asked and where it is answered",
    (_, r) => {
      expect(r.asks).toMatch(/^\S.*\.$/);
      expect(r.words).toMatch(/^\S.*\.$/);
      expect(r.checks.length > 0).toBe(r.way === "computed");
      expect(r.test !== "").toBe(r.way === "shown" || r.way === "asked");
    },
  );

  test.each(requirements.filter((r) => r.test !== "").map((r) => [r.id, r.test]))(
    "%s names a test that there is: %s",
    (_, named) => {
      const [, file, title] = /^(\S+?): (.*)$/.exec(named) ?? [];
      const text = readFileSync(new URL(`../../${file}`, import.meta.url), "utf8");
      expect(text).toContain(`test("${title}"`);
    },
  );

  const computed = requirements.flatMap((r) => r.checks.map((check) => [r.id, check] as const));
  test.each(computed)("%s: the check '%s' has a witness that names it", (id, check) => {
    const own = witnesses.filter((w) => w.check === check);
    expect(own.map((w) => w.check)).toContain(check);
    expect(own.flatMap((w) => w.ids)).toContain(id);
  });

  test.each(witnesses.flatMap((w) => w.ids.map((id) => [w.check, id] as const)))(
    "'%s' answers %s, and stands there",
    (check, id) => {
      expect(requirements.find((r) => r.id === id)?.checks).toContain(check);
    },
  );

  test("is printed whole", () => {
    const lines = coverageText().split("\n");
    for (const { id } of requirements) expect(lines.some((line) => line.startsWith(`${id} `))).toBe(true);
  });
});
