// What the runner of the mutants takes for caught: an assertion of a named test alone. The faults themselves run in a
// phase of their own.

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Report } from "./reporter.mjs";
import { faultless, readMutant, verdict } from "./run.mjs";

const mutant = { name: "00", patch: "00.patch", fault: "a fault", file: "tests/a.test.ts", test: "a law" };
/** A report of the named test and of another one that fails. */
const report = (state: string, failures: Report["errors"] = [], errors: Report["errors"] = []): Report => ({
  tests: [
    { file: "tests/a.test.ts", title: "a law of 500 states", state, failures },
    {
      file: "tests/a.test.ts",
      title: "another",
      state: "failed",
      failures: [{ name: "AssertionError", message: "no" }],
    },
  ],
  errors,
});
const assertion = { name: "AssertionError", message: "expected 1 to be 2" };
const crash = { name: "TypeError", message: "x is undefined" };

describe("with the fault", () => {
  test("an assertion of the named test catches it", () => {
    expect(verdict(report("failed", [assertion]), mutant, [])).toBe("");
  });
  test("a fault that the named test passes with has survived, whatever other tests say", () => {
    expect(verdict(report("passed"), mutant, [])).toMatch(/^SURVIVED: 'a law' in tests.a.test.ts/);
    expect(verdict(report("skipped"), mutant, [])).toMatch(/^SURVIVED/);
    expect(verdict({ tests: [], errors: [] }, mutant, [])).toMatch(/^SURVIVED/);
  });
  test("any other error does not catch it", () => {
    expect(verdict(report("failed", [crash]), mutant, [])).toMatch(
      /by no assertion: TypeError: x is undefined/,
    );
    expect(verdict(report("failed", [], [{ name: "SyntaxError", message: "x" }]), mutant, [])).toMatch(
      /do not run with it: SyntaxError/,
    );
    expect(verdict(report("failed", [assertion]), mutant, ["core/a.ts: error TS1"])).toMatch(
      /no working program: core.a.ts: error TS1/,
    );
  });
});

describe("without the fault", () => {
  test("the named test must be there and pass", () => {
    expect(faultless(report("passed"), mutant)).toBe("");
    expect(faultless(report("failed", [crash]), mutant)).toMatch(
      /'a law of 500 states' is failed: TypeError/,
    );
    expect(faultless(report("skipped"), mutant)).toMatch(/is skipped/);
    expect(faultless(report("passed"), { ...mutant, test: "no law" })).toMatch(
      /has no test whose title holds/,
    );
  });
});

test("a patch says its fault, its test and why", () => {
  const folder = mkdtempSync(join(tmpdir(), "handspan-patch-"));
  const write = (head: string) => writeFileSync(join(folder, "00-x.patch"), `${head}\ndiff --git a/x b/x\n`);
  try {
    write("Fault: a sign\nCaught by: tests/a.test.ts\nTest: a law\nWhy: statics\n");
    expect(readMutant("00-x.patch", folder)).toMatchObject({
      name: "00-x",
      fault: "a sign",
      file: "tests/a.test.ts",
      test: "a law",
    });
    write("Fault: a sign\nCaught by: tests/a.test.ts\nWhy: statics\n");
    expect(() => readMutant("00-x.patch", folder)).toThrow("no line 'Test: ...'");
  } finally {
    rmSync(folder, { recursive: true });
  }
});
