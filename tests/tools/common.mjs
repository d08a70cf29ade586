// What the tools share: where the project stands, how a package's program is found, how a child is run and ended.
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The top folder of the project. */
export const top = fileURLToPath(new URL("../..", import.meta.url));

const require = createRequire(import.meta.url);

/**
 * Path of a program that a package of this project brings. It is run with `node`, never through `npx`: a child of npx
 * lives on when npx is ended.
 * @param {string} packageName
 * @param {string} program
 */
export function program(packageName, program) {
  const place = require.resolve(`${packageName}/package.json`);
  const { bin } = JSON.parse(readFileSync(place, "utf8"));
  const path = typeof bin === "string" ? bin : bin[program];
  if (path === undefined)
    throw new Error(`The package ${packageName} brings no program "${program}". Run npm ci.`);
  return join(dirname(place), path);
}

/** @type {Set<import("node:child_process").ChildProcess>} */
const living = new Set();

/**
 * Ends every child still living, with all that it started in turn.
 * @param {NodeJS.Signals} signal
 */
export function endChildren(signal = "SIGTERM") {
  for (const child of living) {
    if (child.pid === undefined) continue;
    try {
      process.kill(-child.pid, signal);
    } catch {
      child.kill(signal);
    }
  }
}

let watching = false;
let ending = false;

/** From now on an interrupt, an end or a failure of this process ends the children too. */
function watchForTheEnd() {
  if (watching) return;
  watching = true;
  process.on("exit", () => endChildren("SIGKILL"));
  for (const [signal, code] of /** @type {const} */ ([
    ["SIGINT", 130],
    ["SIGTERM", 143],
    ["SIGHUP", 129],
  ])) {
    process.on(signal, () => {
      ending = true;
      endChildren("SIGTERM");
      setTimeout(() => process.exit(code), 1500);
    });
  }
}

/**
 * Runs a program to its end in a process group of its own, so that nothing it starts outlives this one.
 * @param {string} file
 * @param {readonly string[]} args
 * @param {{ env?: Record<string, string | undefined>, quiet?: boolean, limit_s?: number }} [options] quiet: keep the output instead of showing it
 * @returns {Promise<{ code: number, output: string, late: boolean }>} code 0 for success; late when the time limit ended it
 */
export function run(file, args, options = {}) {
  watchForTheEnd();
  return new Promise((resolve) => {
    const child = spawn(file, args, {
      cwd: top,
      env: { ...process.env, ...options.env },
      stdio: ["ignore", "pipe", "pipe"],
      detached: process.platform !== "win32",
    });
    living.add(child);
    let output = "";
    let late = false;
    let done = false;
    /** @param {Buffer} chunk */
    const take = (chunk) => {
      output += chunk.toString();
      if (!options.quiet) process.stdout.write(chunk);
    };
    child.stdout.on("data", take);
    child.stderr.on("data", take);
    const timer = options.limit_s
      ? setTimeout(() => {
          late = true;
          endOne(child);
        }, options.limit_s * 1000)
      : undefined;
    /** @param {number} code */
    const finish = (code) => {
      if (done) return;
      done = true;
      clearTimeout(timer);
      endOne(child);
      living.delete(child);
      if (ending) return; // interrupted: no answer, so that no further phase starts
      resolve({ code, output, late });
    };
    child.on("error", (error) => {
      output += `${error.message}\n`;
      finish(127);
    });
    // 'exit' and not 'close': a grandchild that holds the pipe open must not keep us waiting.
    child.on("exit", (code) => setTimeout(() => finish(code ?? 1), 50));
  });
}

/** @param {import("node:child_process").ChildProcess} child */
function endOne(child) {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, "SIGKILL");
  } catch {
    // The group is gone already: nothing to end.
  }
}

/**
 * Runs a package's program with this same Node.
 * @param {string} packageName
 * @param {string} name
 * @param {readonly string[]} args
 * @param {Parameters<typeof run>[2]} [options]
 */
export function runProgram(packageName, name, args, options) {
  return run(process.execPath, [program(packageName, name), ...args], options);
}
