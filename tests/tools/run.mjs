// npm test: runs every phase whatever failed before, counts each check, and ends with the line `N passed, N failed`.
// Options: --only=lint,types (some phases), and the phases' names by --list.
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { mutants } from "../mutants/run.mjs";
import { findOrInstallBrowser } from "./browser.mjs";
import { show, weigh } from "./budget.mjs";
import { findOrInstallCalculix } from "./calculix.mjs";
import { endChildren, run, runProgram, top } from "./common.mjs";
import { playwrightTotals, vitestTotals } from "./totals.mjs";

/** @typedef {import("./totals.mjs").Totals} Totals */

const scratch = join(top, ".cache", `run-${process.pid}`);
const site = join(scratch, "site");

/**
 * A phase of one check: passed when the program's exit code is 0.
 * @param {string} what
 * @param {{ code: number, late: boolean }} end
 * @returns {Totals}
 */
function oneCheck(what, end) {
  if (end.code === 0) return { passed: 1, failed: 0, failures: [] };
  return { passed: 0, failed: 1, failures: [end.late ? `${what}: ended by the time limit` : what] };
}

/**
 * @param {readonly Totals[]} parts
 * @returns {Totals}
 */
function sum(parts) {
  return {
    passed: parts.reduce((n, part) => n + part.passed, 0),
    failed: parts.reduce((n, part) => n + part.failed, 0),
    failures: parts.flatMap((part) => part.failures),
  };
}

/** @returns {Promise<number>} a port that was free a moment ago */
function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" && address !== null ? address.port : 0));
    });
  });
}

/** Format, ordinary mistakes, and which layer may import which. */
async function lint() {
  return oneCheck(
    "biome check",
    await runProgram("@biomejs/biome", "biome", ["check", "--error-on-warnings", "."]),
  );
}

/** The types of everything, and of the core, which knows no browser. */
async function types() {
  const parts = [];
  for (const project of ["tsconfig.json", "tsconfig.core.json"]) {
    const what = `tsc -p ${project}`;
    console.log(what);
    parts.push(oneCheck(what, await runProgram("typescript", "tsc", ["-p", project])));
  }
  return sum(parts);
}

/**
 * A run of vitest.
 * @param {string} name of its report
 * @param {readonly string[]} words
 * @param {Parameters<typeof runProgram>[3]} options
 */
async function vitest(name, words, options) {
  const report = join(scratch, `${name}.json`);
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const end = await runProgram("vitest", "vitest", ["run", ...words, ...reporters], options);
  if (!existsSync(report)) {
    const what = end.late ? `${name}: ended by the time limit` : `${name}: vitest wrote no report`;
    return oneCheck(what, { code: 1, late: false });
  }
  const { totals, byFolder } = vitestTotals(JSON.parse(readFileSync(report, "utf8")), top);
  for (const [folder, n] of byFolder) console.log(`  ${String(n).padStart(5)}  ${folder}`);
  if (end.code !== 0 && totals.failed === 0) {
    return sum([totals, oneCheck("vitest failed outside of any test", end)]);
  }
  return totals;
}

/** Every test under tests/ that needs no browser: units, laws, references, layers, tours, schemas, regressions. */
function tests() {
  return vitest("tests", [], { limit_s: 1800 });
}

/** Statics and buckling against a general-purpose finite-element program, in 5 minutes with its installation. */
async function crosscheck() {
  const start = performance.now();
  const path = findOrInstallCalculix();
  console.log(`finite-element program: ${path}`);
  const left_s = 300 - (performance.now() - start) / 1000;
  if (left_s < 1) throw new Error("crosscheck: the installation took longer than the time limit");
  const words = ["--config", "tests/crosscheck/vitest.config.ts"];
  return vitest("crosscheck", words, { env: { CCX_PATH: path }, limit_s: left_s });
}

/** The page and the command line can be built. */
async function build() {
  const page = ["build", "--logLevel", "warn", "--outDir", site, "--emptyOutDir"];
  const cli = ["build", "--mode", "cli", "--logLevel", "warn", "--outDir", join(scratch, "cli")];
  const built = sum([
    oneCheck("build of the page", await runProgram("vite", "vite", page)),
    oneCheck("build of the command line", await runProgram("vite", "vite", cli)),
  ]);
  const words = [join(top, "tests/tools/handspan.mjs"), "version"];
  const answer = await run(process.execPath, words, { quiet: true });
  const right = answer.code === 0 && /^\d+\.\d+\.\d+\s*$/.test(answer.output);
  if (!right) console.log(answer.output);
  return sum([built, oneCheck("handspan version answers", { ...answer, code: right ? 0 : 1 })]);
}

/** Sizes of what a visitor loads. */
async function budget() {
  if (!existsSync(join(site, ".vite/manifest.json"))) {
    await runProgram("vite", "vite", ["build", "--logLevel", "warn", "--outDir", site, "--emptyOutDir"]);
  }
  const lines = weigh(site);
  for (const line of lines) console.log(show(line));
  const over = lines.filter((line) => line.over);
  return {
    passed: lines.length - over.length,
    failed: over.length,
    failures: over.map((line) => `${line.name}: ${line.size_kB.toFixed(1)} kB, limit ${line.limit_kB} kB`),
  };
}

/** The built page in a real browser. */
async function browser() {
  const report = join(scratch, "browser.json");
  const env = {
    HANDSPAN_BROWSER: findOrInstallBrowser(),
    HANDSPAN_PORT: String(await freePort()),
    HANDSPAN_REPORT: report,
  };
  console.log(`browser: ${env.HANDSPAN_BROWSER}`);
  const end = await runProgram(
    "@playwright/test",
    "playwright",
    ["test", "--config", "tests/browser/playwright.config.ts"],
    { env, limit_s: 1800 },
  );
  rmSync(join(top, ".cache", `site-${env.HANDSPAN_PORT}`), { recursive: true, force: true });
  if (!existsSync(report)) return oneCheck("Playwright wrote no report", { ...end, code: 1 });
  const totals = playwrightTotals(JSON.parse(readFileSync(report, "utf8")));
  if (end.code !== 0 && totals.failed === 0) {
    return sum([totals, oneCheck("Playwright failed outside of any test", end)]);
  }
  return totals;
}

/** The phases in their order; a new one is one line here. @type {Record<string, () => Promise<Totals>>} */
const phases = { lint, types, tests, mutants, crosscheck, build, budget, browser };

/**
 * Runs the named phases and gives the exit code.
 * @param {readonly string[]} names
 */
async function main(names) {
  mkdirSync(scratch, { recursive: true });
  process.on("exit", () => rmSync(scratch, { recursive: true, force: true }));
  /** @type {{ name: string, totals: Totals, time_s: number }[]} */
  const done = [];
  for (const name of names) {
    console.log(`\n== ${name}`);
    const start = performance.now();
    /** @type {Totals} */
    let totals;
    try {
      totals = await phases[name]();
      if (totals.passed + totals.failed === 0)
        totals = { passed: 0, failed: 1, failures: ["nothing was checked"] };
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      console.log(reason);
      totals = { passed: 0, failed: 1, failures: [reason] };
    }
    const time_s = (performance.now() - start) / 1000;
    done.push({ name, totals, time_s });
    console.log(`-- ${name}: ${totals.passed} passed, ${totals.failed} failed (${time_s.toFixed(1)} s)`);
  }
  endChildren("SIGKILL");

  console.log("\n== summary");
  for (const { name, totals, time_s } of done) {
    const counts = `${String(totals.passed).padStart(6)} passed ${String(totals.failed).padStart(4)} failed`;
    console.log(`  ${name.padEnd(10)} ${counts}  ${time_s.toFixed(1).padStart(7)} s`);
    for (const failure of totals.failures) console.log(`           failed: ${failure}`);
  }
  const all = sum(done.map((phase) => phase.totals));
  console.log(`${all.passed} passed, ${all.failed} failed`);
  return all.failed === 0 && all.passed > 0 ? 0 : 1;
}

const { values } = parseArgs({ options: { only: { type: "string" }, list: { type: "boolean" } } });
if (values.list) {
  console.log(Object.keys(phases).join("\n"));
} else {
  const names = values.only === undefined ? Object.keys(phases) : values.only.split(",");
  const unknown = names.filter((name) => !Object.hasOwn(phases, name));
  if (unknown.length > 0) {
    console.error(`--only names ${unknown.join(", ")}; the phases are ${Object.keys(phases).join(", ")}.`);
    process.exit(2);
  }
  const code = await main(names);
  process.exit(code);
}
