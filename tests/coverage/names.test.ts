// The list of the names of checks is whole: no check has another name, as the compiler sees it and as it is made, and each
// name has a witness.

import { describe, expect, test } from "vitest";
import { type CheckName, checkList, checkNames, nameForms } from "../../src/checks/index.ts";
import { prepareContext } from "../../src/sequence/index.ts";
import { readScenario } from "./plans.ts";
import { witnesses } from "./witnesses.ts";

const listed = new Set<string>(checkNames);
const form = (name: string) => nameForms.find((start) => name.startsWith(start));
const isKnown = (name: string) => listed.has(name) || form(name) !== undefined;

/** The compiler holds that a finding and a measure have no other name: these lines do not compile when it does not. */
const held: CheckName[] = ["tipping", "overnight: tipping"];
const refused: "tiping" extends CheckName ? true : false = false;

describe("the names of checks", () => {
  test("are each in the list once", () => {
    expect(listed.size).toBe(checkNames.length);
    expect([...held, "tiping"].map(isKnown)).toEqual([true, true, refused]);
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
