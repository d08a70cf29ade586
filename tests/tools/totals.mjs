// Reads the reports of vitest and Playwright into one form of totals. A skipped test counts as a failure.
import { relative, sep } from "node:path";

/**
 * @typedef {{ passed: number, failed: number, failures: string[] }} Totals
 * @typedef {{ status: string, fullName: string }} VitestCase
 * @typedef {{ name: string, status: string, message?: string, assertionResults: VitestCase[] }} VitestFile
 * @typedef {{ title: string, specs?: PlaywrightSpec[], suites?: PlaywrightSuite[] }} PlaywrightSuite
 * @typedef {{ title: string, file: string, line: number, tests: { status: string }[] }} PlaywrightSpec
 */

/**
 * Totals of vitest's JSON report.
 * @param {{ testResults: VitestFile[] }} report
 * @param {string} top folder against which names are shortened
 * @returns {{ totals: Totals, byFolder: Map<string, number> }} byFolder: passed checks by first folder under tests/
 */
export function vitestTotals(report, top) {
  /** @type {Totals} */
  const totals = { passed: 0, failed: 0, failures: [] };
  /** @type {Map<string, number>} */
  const byFolder = new Map();
  for (const file of report.testResults) {
    const name = relative(top, file.name).split(sep).join("/");
    const parts = name.split("/");
    const folder = parts.length > 2 ? `${parts[0]}/${parts[1]}/` : name;
    let failedHere = 0;
    for (const test of file.assertionResults) {
      if (test.status === "passed") {
        totals.passed += 1;
        byFolder.set(folder, (byFolder.get(folder) ?? 0) + 1);
      } else {
        failedHere += 1;
        const how = test.status === "failed" ? "" : ` (${test.status}: no test may be left out)`;
        totals.failures.push(`${name}: ${test.fullName}${how}`);
      }
    }
    if (failedHere === 0 && (file.status === "failed" || file.assertionResults.length === 0)) {
      failedHere = 1;
      totals.failures.push(`${name}: ${(file.message || "holds no test").split("\n")[0]}`);
    }
    totals.failed += failedHere;
  }
  return { totals, byFolder };
}

/**
 * Totals of Playwright's JSON report.
 * @param {{ suites: PlaywrightSuite[], errors?: { message?: string }[] }} report
 * @returns {Totals}
 */
export function playwrightTotals(report) {
  /** @type {Totals} */
  const totals = { passed: 0, failed: 0, failures: [] };
  /** @param {PlaywrightSuite} suite */
  const walk = (suite) => {
    for (const spec of suite.specs ?? []) {
      for (const test of spec.tests) {
        if (test.status === "expected") totals.passed += 1;
        else {
          totals.failed += 1;
          totals.failures.push(`${spec.file}:${spec.line}: ${spec.title} (${test.status})`);
        }
      }
    }
    for (const inner of suite.suites ?? []) walk(inner);
  };
  for (const suite of report.suites) walk(suite);
  for (const error of report.errors ?? []) {
    totals.failed += 1;
    totals.failures.push((error.message ?? "an error outside of any test").split("\n")[0]);
  }
  return totals;
}
