// npm run bench: builds tests/bench/main.ts for Node, as the command line is built, and runs it; further words are handed on.
import { existsSync, mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";
import { top } from "./common.mjs";

if (!existsSync(join(top, "tests/bench/main.ts"))) {
  console.error("There is nothing to measure: tests/bench/main.ts is missing.");
  process.exit(1);
}
const out = join(top, ".cache", `bench-${process.pid}`);
mkdirSync(out, { recursive: true });
process.on("exit", () => rmSync(out, { recursive: true, force: true }));
await build({
  root: top,
  configFile: join(top, "vite.config.ts"),
  mode: "bench",
  logLevel: "warn",
  build: { outDir: out },
});
const file = join(out, "bench.mjs");
process.argv = [process.execPath, file, ...process.argv.slice(2)];
await import(pathToFileURL(file).href);
