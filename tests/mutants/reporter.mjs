// Reporter for vitest: every test with its state and the name of the error at the bottom of each failure, as JSON. The
// reporters that vitest brings leave out causes, and so cannot tell what failed inside a property.
import { writeFileSync } from "node:fs";

/**
 * @typedef {{ name: string, message: string }} Failure
 * @typedef {{ file: string, title: string, state: string, failures: Failure[] }} Told
 * @typedef {{ tests: Told[], errors: Failure[] }} Report errors: those outside of any test
 */

/**
 * The error that all others were thrown for.
 * @param {{ name?: string, message?: string, cause?: unknown }} error
 * @returns {Failure}
 */
function bottom(error) {
  const { cause } = error;
  if (typeof cause === "object" && cause !== null) return bottom(cause);
  return { name: error.name ?? "Error", message: (error.message ?? "").split("\n")[0] };
}

export default class MutantReporter {
  /**
   * @param {readonly import("vitest/node").TestModule[]} modules
   * @param {readonly { name?: string, message?: string, cause?: unknown }[]} unhandled
   */
  onTestRunEnd(modules, unhandled) {
    /** @type {Report} */
    const report = { tests: [], errors: unhandled.map(bottom) };
    for (const module of modules) {
      report.errors.push(...module.errors().map(bottom));
      for (const test of module.children.allTests()) {
        const { state, errors } = test.result();
        const failures = (errors ?? []).map(bottom);
        report.tests.push({ file: module.relativeModuleId, title: test.name, state, failures });
      }
    }
    writeFileSync(process.env.HANDSPAN_MUTANT_REPORT ?? "", JSON.stringify(report));
  }
}
