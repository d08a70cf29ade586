// Installs packages of Debian, and of systems made from it, as root.
import { spawnSync } from "node:child_process";
import { accessSync, constants, readFileSync } from "node:fs";

/** @param {string} path */
export function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Whether this is Debian itself: on its children some packages are only pointers to another store. */
export function isDebian() {
  try {
    return /^ID="?debian"?$/m.test(readFileSync("/etc/os-release", "utf8"));
  } catch {
    return false;
  }
}

/** Whether apt can install here: it is there, and we are root. */
export function aptCanHelp() {
  return process.platform === "linux" && process.getuid?.() === 0 && isProgram("/usr/bin/apt-get");
}

/**
 * Runs an installer and shows what it says.
 * @param {string} file
 * @param {string[]} args
 * @param {number} [limit_s] ended after that time
 */
export function install(file, args, limit_s = 600) {
  console.error(`Running: ${file} ${args.join(" ")}`);
  spawnSync(file, args, {
    stdio: ["ignore", 2, 2],
    timeout: 1000 * limit_s,
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
  });
}

/**
 * Brings packages by apt; does nothing where it cannot.
 * @param {readonly string[]} packages
 * @param {number} [limit_s] of each of the two steps, reading the lists and installing
 */
export function aptInstall(packages, limit_s = 600) {
  if (!aptCanHelp()) return;
  const patient = ["-o", `DPkg::Lock::Timeout=${Math.round(limit_s / 2)}`];
  install("apt-get", [...patient, "update"], limit_s);
  install("apt-get", [...patient, "install", "-y", "--no-install-recommends", ...packages], limit_s);
}
