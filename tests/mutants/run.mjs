// Mutants: faults planted one at a time in a copy of the project; the law or published case that each one names must
// fail by an assertion. `npm run mutants`, or `npm run mutants -- 03 07` for some of them.
//
// A mutant is a patch against src/ below a header of four lines: `Fault:`, `Caught by:` (a test file), `Test:` (a part of
// its title) and `Why:`. It fails when it no longer applies, when the patched core has errors of type, when its tests do
// not pass without it, and when it survives them.
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { run, runProgram, top } from "../tools/common.mjs";

/**
 * @typedef {import("./reporter.mjs").Report} Report
 * @typedef {import("../tools/totals.mjs").Totals} Totals
 * @typedef {{ name: string, patch: string, fault: string, file: string, test: string }} Mutant
 */

const here = dirname(fileURLToPath(import.meta.url));
/** What a copy needs to run tests; packages are linked. */
const copied = ["src", "tests", "scenarios", "public", "package.json"];
const copiedByName = /^(tsconfig.*\.json|vite.*\.ts)$/;
/** A run of a few tests that takes longer than this hangs, s. */
const LIMIT = 120;

/**
 * Reads a patch; throws an Error that says what its header lacks.
 * @param {string} file its name
 * @param {string} [folder]
 * @returns {Mutant}
 */
export function readMutant(file, folder = here) {
  const patch = join(folder, file);
  const head = readFileSync(patch, "utf8").split(/^diff --git /m)[0];
  /** @param {string} word */
  const said = (word) => {
    const found = head.match(new RegExp(`^${word}: *(\\S.*)$`, "m"));
    if (found === null)
      throw new Error(`the header has no line '${word}: ...'; Fault, Caught by, Test and Why are needed`);
    return found[1];
  };
  said("Why");
  return {
    name: file.replace(/\.patch$/, ""),
    patch,
    fault: said("Fault"),
    file: said("Caught by"),
    test: said("Test"),
  };
}

/** A copy of the project in the folder of the system for such things, removed at the end of this process. */
function makeCopy() {
  const copy = realpathSync(mkdtempSync(join(tmpdir(), "handspan-mutants-")));
  process.on("exit", () => rmSync(copy, { recursive: true, force: true }));
  for (const name of readdirSync(top))
    if (copied.includes(name) || copiedByName.test(name))
      cpSync(join(top, name), join(copy, name), { recursive: true });
  symlinkSync(join(top, "node_modules"), join(copy, "node_modules"), "junction");
  return copy;
}

/**
 * Runs the named tests in the copy.
 * @param {string} copy
 * @param {readonly Mutant[]} mutants
 * @returns {Promise<Report>}
 */
async function runTests(copy, mutants) {
  const report = join(copy, "report.json");
  rmSync(report, { force: true });
  const files = [...new Set(mutants.map((m) => m.file))];
  const titles = mutants.map((m) => m.test.replace(/[\\^$.*+?()[\]{}|]/g, "\\$&")).join("|");
  const args = ["run", "--root", copy, ...files, "-t", titles, `--reporter=${join(here, "reporter.mjs")}`];
  const env = { HANDSPAN_MUTANT_REPORT: report };
  const end = await runProgram("vitest", "vitest", args, { env, quiet: true, limit_s: LIMIT });
  if (existsSync(report)) return JSON.parse(readFileSync(report, "utf8"));
  const message = end.late ? `ended after ${LIMIT} s` : `no report: ${end.output.trim().split("\n").pop()}`;
  return { tests: [], errors: [{ name: "Error", message }] };
}

/**
 * Errors of type in the copy's core, without their lines.
 * @param {string} copy
 */
async function typeErrors(copy) {
  const args = ["--noEmit", "--pretty", "false", "-p", join(copy, "tsconfig.core.json")];
  const { output } = await runProgram("typescript", "tsc", args, { quiet: true, limit_s: LIMIT });
  return output.split("\n").flatMap((line) => {
    const found = line.match(/([^/]+\/[^/]+)\(\d+,\d+\): (error .*)$/);
    return found === null ? [] : [`${found[1]}: ${found[2]}`];
  });
}

/**
 * The tests of a report that a mutant names.
 * @param {Report} report
 * @param {Mutant} mutant
 */
const named = (report, { file, test }) =>
  report.tests.filter((t) => t.file === file && t.title.includes(test));

/** @param {readonly { name: string, message: string }[]} errors */
const inWords = (errors) => errors.map((e) => `${e.name}: ${e.message}`).join("; ");

/**
 * What is wrong with a mutant's tests before anything is planted; '' for nothing.
 * @param {Report} sound
 * @param {Mutant} mutant
 */
export function faultless(sound, mutant) {
  const tests = named(sound, mutant);
  if (tests.length === 0) {
    const why = sound.errors.length > 0 ? ` (${inWords(sound.errors)})` : "";
    return `${mutant.file} has no test whose title holds '${mutant.test}'${why}`;
  }
  const bad = tests.filter((t) => t.state !== "passed");
  return bad.map((t) => `without the fault '${t.title}' is ${t.state}: ${inWords(t.failures)}`).join("; ");
}

/**
 * What a run with the fault says: '' when a named test failed by an assertion, in a program that is sound otherwise.
 * @param {Report} report
 * @param {Mutant} mutant
 * @param {readonly string[]} types errors of type that come with it
 */
export function verdict(report, mutant, types) {
  if (types.length > 0) return `the fault is no working program: ${types[0]}`;
  if (report.errors.length > 0) return `the tests do not run with it: ${inWords(report.errors)}`;
  const failures = named(report, mutant).flatMap((t) => t.failures);
  if (failures.length === 0) return `SURVIVED: '${mutant.test}' in ${mutant.file} does not see it`;
  if (!failures.some((f) => f.name === "AssertionError"))
    return `its test fails, but by no assertion: ${inWords(failures)}`;
  return "";
}

/**
 * Plants one fault and runs its tests; '' when they caught it, else what is wrong. The copy is left as it was.
 * @param {string} copy
 * @param {Mutant} mutant
 * @param {readonly string[]} known errors of type that the copy has without it
 */
async function plant(copy, mutant, known) {
  // No repository above the copy: paths count from the copy, and nothing is skipped in silence.
  const env = { GIT_CEILING_DIRECTORIES: dirname(copy), GIT_DIR: undefined, GIT_WORK_TREE: undefined };
  const apply = (/** @type {string[]} */ ...how) =>
    run("git", ["-C", copy, "apply", ...how, mutant.patch], { env, quiet: true });
  const applied = await apply();
  if (applied.code !== 0)
    return `the patch does not apply (${applied.output.trim().split("\n")[0]}): plant the fault anew in today's src`;
  const [report, types] = await Promise.all([runTests(copy, [mutant]), typeErrors(copy)]);
  const undone = await apply("--reverse");
  if (undone.code !== 0) throw new Error(`${mutant.name} cannot be taken out again: ${undone.output}`);
  return verdict(
    report,
    mutant,
    types.filter((line) => !known.includes(line)),
  );
}

/**
 * Plants every fault in turn (or those whose names begin with one of `only`) and counts the caught ones.
 * @param {readonly string[]} [only]
 * @returns {Promise<Totals>}
 */
export async function mutants(only = []) {
  /** @type {Totals} */
  const totals = { passed: 0, failed: 0, failures: [] };
  /** @type {Mutant[]} */
  const list = [];
  const begin = performance.now();
  const since = (/** @type {number} */ start) => `${((performance.now() - start) / 1000).toFixed(1)} s`;
  const count = (/** @type {string} */ name, /** @type {string} */ wrong, /** @type {string} */ right) => {
    console.log(wrong === "" ? `  caught  ${name}  ${right}` : `  FAILED  ${name}: ${wrong}`);
    if (wrong === "") totals.passed++;
    else {
      totals.failed++;
      totals.failures.push(`${name}: ${wrong}`);
    }
  };
  const files = readdirSync(here).filter((file) => file.endsWith(".patch"));
  for (const file of files.sort()) {
    if (only.length > 0 && !only.some((start) => file.startsWith(start))) continue;
    try {
      list.push(readMutant(file));
    } catch (error) {
      count(file, error instanceof Error ? error.message : String(error), "");
    }
  }
  if (list.length === 0) return totals;
  const copy = makeCopy();
  const [sound, known] = await Promise.all([runTests(copy, list), typeErrors(copy)]);
  console.log(
    `  without a fault: ${sound.tests.filter((t) => t.state === "passed").length} tests pass (${since(begin)})`,
  );
  for (const mutant of list) {
    const start = performance.now();
    const wrong = faultless(sound, mutant) || (await plant(copy, mutant, known));
    count(mutant.name, wrong, `${since(start)}  by ${mutant.file}: ${mutant.test}`);
  }
  console.log(`  ${totals.passed} of ${totals.passed + totals.failed} faults caught in ${since(begin)}`);
  return totals;
}

if (process.argv[1] !== undefined && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const { passed, failed } = await mutants(process.argv.slice(2));
  console.log(`${passed} passed, ${failed} failed`);
  process.exit(failed === 0 && passed > 0 ? 0 : 1);
}
