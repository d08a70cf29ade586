// The command line: builds src/cli.ts when it has changed since the last time, then runs it in this process.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { top } from "./common.mjs";

/**
 * A short name for the present state of the sources: every file's path, size and time of change. The bundle's folder
 * bears that name, so a deleted file or an older one put back is noticed, and two runs at once do no harm.
 */
function stampOfSources() {
  const hash = createHash("sha256");
  const files = ["package.json", "package-lock.json", "vite.config.ts"];
  const entries = readdirSync(join(top, "src"), { recursive: true, encoding: "utf8" });
  for (const entry of entries) if (/\.(ts|tsx|json)$/.test(entry)) files.push(join("src", entry));
  for (const file of files.sort()) {
    const { mtimeMs, size } = statSync(join(top, file));
    hash.update(`${file} ${size} ${mtimeMs}\n`);
  }
  return hash.digest("hex").slice(0, 16);
}

/**
 * The built command line for the present sources; builds it when there is none.
 * @returns {Promise<string>} path of the bundle
 */
export async function bundle() {
  const home = join(top, ".cache", "handspan");
  const stamp = stampOfSources();
  const built = join(home, stamp);
  const file = join(built, "cli.mjs");
  if (existsSync(file)) return file;

  const { build } = await import("vite");
  const making = join(home, `making-${process.pid}`);
  mkdirSync(home, { recursive: true });
  try {
    await build({
      root: top,
      configFile: join(top, "vite.config.ts"),
      mode: "cli",
      logLevel: "silent",
      build: { outDir: making },
    });
    const anHourAgo = Date.now() - 3_600_000; // younger ones may be in use by another run
    for (const old of readdirSync(home)) {
      const place = join(home, old);
      if (place !== making && statSync(place).mtimeMs < anHourAgo)
        rmSync(place, { recursive: true, force: true });
    }
    if (!existsSync(built)) renameSync(making, built);
  } catch (error) {
    if (!existsSync(file)) throw error;
  } finally {
    rmSync(making, { recursive: true, force: true });
  }
  return file;
}

/**
 * Runs the command line.
 * @param {readonly string[]} words what stands after `--`
 */
async function main(words) {
  let file;
  try {
    file = await bundle();
  } catch (error) {
    console.error("The command line could not be built from src/cli.ts:");
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 70;
    return;
  }
  process.argv = [process.execPath, file, ...words];
  await import(pathToFileURL(file).href);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) await main(process.argv.slice(2));
