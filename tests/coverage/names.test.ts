// The list of the names of checks is whole: no check has another name, as its source is written and as it is made, and each
// name has a witness.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkList, checkNames, nameForms } from "../../src/checks/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { readScenario } from "./plans.ts";
import { witnesses } from "./witnesses.ts";

const listed = new Set<string>(checkNames);
const form = (name: string) => nameForms.find((start) => name.startsWith(start));
const isKnown = (name: string) => listed.has(name) || form(name) !== undefined;

const folder = new URL("../../src/checks/", import.meta.url);
const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter(
  // Proposals name what governs a variant, the table of coverage the checks that answer a row.
  (file) => file.endsWith(".ts") && !/^(propose|coverage)[\\/]|^names\.ts$/.test(file),
);
const sources = files.map((file) => ({ file, text: readFileSync(new URL(file, folder), "utf8") }));

/** Names that the source gives to checks: as text, by a constant, or with a part that is filled in (`*`). */
function written(text: string): string[] {
  const out: string[] = [];
  for (const [, given] of text.matchAll(/\bcheck(?::| =(?!=)) ?([^;,}\n]*(?:\n\s+[?:][^;,}\n]*)*)/g)) {
    // Of a choice, what is chosen; what is compared is no name.
    const chosen = given.replace(/^[^?"`]*\?/, "").replace(/ as const$/, "");
    for (const [, literal, template] of chosen.matchAll(/"([^"]+)"|`([^`]+)`/g))
      out.push(literal ?? template.replace(/\$\{[^}]*\}/g, "*"));
    const constant = /^([A-Z][A-Z_]+)$/.exec(chosen.trim())?.[1];
    const value =
      constant && sources.map((s) => new RegExp(`const ${constant} = "([^"]+)"`).exec(s.text)?.[1]);
    if (value) out.push(value.find((v) => v !== undefined) ?? `${constant}, which is nowhere`);
  }
  return out;
}

const all = sources.flatMap(({ file, text }) => written(text).map((name) => [name, file] as const));

describe("the names of checks", () => {
  test("are each in the list once", () => {
    expect(listed.size).toBe(checkNames.length);
    expect(all.length).toBeGreaterThan(100);
  });

  test.each(all)("'%s' of %s is in the list", (name) => {
    if (!name.includes("*")) expect(isKnown(name)).toBe(true);
    else {
      const pattern = new RegExp(`^${name.replaceAll("*", ".+")}$`);
      expect(
        [...checkNames, ...nameForms.map((start) => `${start}x`)].filter((n) => pattern.test(n)),
      ).not.toEqual([]);
    }
  });

  test.each(["demo", "one-girder", "planted-faults"])(
    "all that is made for the plan %s is in the list",
    (plan) => {
      const read = readScenario(plan);
      const ctx = prepareContext(read, read.sets[0].id);
      const made = [...checkList.makers, ...checkList.onDemand].flatMap((make) => make(ctx));
      const found = checkList.planChecks.flatMap((find) => find(read));
      expect([...made, ...found].map((m) => m.check).filter((name) => !isKnown(name))).toEqual([]);
    },
  );

  test.each(checkNames)("'%s' has a witness", (name) => {
    expect(witnesses.map((w) => w.check)).toContain(name);
  });

  test.each(nameForms)("what is read once more '%s' has a witness", (start) => {
    expect(witnesses.filter((w) => w.check.startsWith(start))).not.toEqual([]);
  });

  test("have no witness beside them", () => {
    expect(witnesses.map((w) => w.check).filter((name) => !isKnown(name))).toEqual([]);
  });
});
