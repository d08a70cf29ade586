// Finds a Chromium that starts, or installs one. `node tests/tools/browser.mjs [--install]` prints its path.
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { delimiter, dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { aptInstall, install, isDebian, isProgram } from "./apt.mjs";

const require = createRequire(import.meta.url);

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const places = [
  "/usr/bin/chromium",
  "/snap/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];

/**
 * Whether the file at this path starts and says that it is Chromium or Chrome.
 * @param {string} path
 */
export function starts(path) {
  if (!isProgram(path)) return false;
  if (process.platform === "win32") return true; // chrome.exe prints no version there
  const { status, stdout } = spawnSync(path, ["--headless=new", "--no-sandbox", "--version"], {
    timeout: 20_000,
    encoding: "utf8",
  });
  return status === 0 && /Chrom/.test(stdout);
}

/**
 * Every path at which a browser may stand, in the order in which they are tried.
 * @param {NodeJS.ProcessEnv} env
 * @returns {string[]}
 */
export function candidates(env) {
  const own = () => {
    try {
      return [require("playwright-core").chromium.executablePath()];
    } catch {
      return []; // no browser of its own on this platform
    }
  };
  const folders = (env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  const onPath = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...new Set([...own(), ...onPath, ...places])];
}

/**
 * Path of a Chromium that starts, or undefined. CHROME_PATH, when set, is the only one tried.
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {string | undefined}
 * @throws {Error} when CHROME_PATH is set and does not start
 */
export function findBrowser(env = process.env) {
  if (env.CHROME_PATH) {
    if (starts(env.CHROME_PATH)) return env.CHROME_PATH;
    throw new Error(
      `CHROME_PATH is "${env.CHROME_PATH}", which does not start as Chromium or Chrome. Set it to one that does, or unset it.`,
    );
  }
  return candidates(env).find(starts);
}

/**
 * Path of a Chromium that starts; installs one when none is found: on Debian by apt (as root), elsewhere, or when that
 * failed, by Playwright.
 * @returns {string}
 * @throws {Error} when there is none and none could be installed
 */
export function findOrInstallBrowser() {
  let found = findBrowser();
  // Elsewhere apt's Chromium may be only a pointer to another store.
  if (found === undefined && isDebian()) {
    aptInstall(["chromium", "fonts-dejavu-core"]);
    found = findBrowser();
  }
  if (found === undefined) {
    const cli = join(dirname(require.resolve("playwright-core/package.json")), "cli.js");
    install(process.execPath, [cli, "install", "chromium"]);
    found = findBrowser();
  }
  if (found !== undefined) return found;
  throw new Error(
    "No Chromium or Chrome was found, and none could be installed. Install one (Debian: apt-get install chromium) or set CHROME_PATH to one.",
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  try {
    const path = process.argv.includes("--install") ? findOrInstallBrowser() : findBrowser();
    console.log(path ?? "No Chromium or Chrome was found. With --install one is installed.");
    process.exitCode = path === undefined ? 1 : 0;
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
