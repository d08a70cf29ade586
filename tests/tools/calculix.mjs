// Finds the general-purpose finite-element program CalculiX (ccx), or installs it from Debian's packages.
import { spawnSync } from "node:child_process";
import { delimiter, join } from "node:path";
import { aptInstall, isProgram } from "./apt.mjs";

/**
 * Whether the program at this path says that it is CalculiX.
 * @param {string} path
 */
function answers(path) {
  if (!isProgram(path)) return false;
  const { stdout } = spawnSync(path, ["-v"], { timeout: 20_000, encoding: "utf8" });
  return /This is Version \d/.test(stdout ?? "");
}

/**
 * Path of a ccx that answers, or undefined. CCX_PATH, when set, is the only one tried.
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {string | undefined}
 * @throws {Error} when CCX_PATH is set and does not answer
 */
export function findCalculix(env = process.env) {
  if (env.CCX_PATH) {
    if (answers(env.CCX_PATH)) return env.CCX_PATH;
    throw new Error(
      `CCX_PATH is "${env.CCX_PATH}", which does not answer as CalculiX. Set it to one that does, or unset it.`,
    );
  }
  const folders = (env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return folders.map((folder) => join(folder, "ccx")).find(answers);
}

/**
 * Path of a ccx that answers; on Debian (or a child of it), as root, it is installed when there is none.
 * @returns {string}
 * @throws {Error} when there is none and it could not be installed
 */
export function findOrInstallCalculix() {
  let found = findCalculix();
  if (found === undefined) {
    aptInstall(["calculix-ccx"], 110);
    found = findCalculix();
  }
  if (found !== undefined) return found;
  throw new Error(
    "The finite-element program ccx was not found, and could not be installed. Install it (Debian: apt-get install calculix-ccx) or set CCX_PATH to one.",
  );
}
