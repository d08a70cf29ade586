// npm start: builds the page and serves it, both in this one process, so that ending it ends everything.
// Options: --port N (4173), --out FOLDER (dist); for the browser tests --throwaway (removes FOLDER at the end) and
// --owner PID (ends when that process is gone, however it ended).
import { rmSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { build, preview } from "vite";
import { top } from "./common.mjs";

const { values } = parseArgs({
  options: {
    port: { type: "string", default: "4173" },
    out: { type: "string", default: "dist" },
    owner: { type: "string" },
    throwaway: { type: "boolean", default: false },
  },
});
const port = Number(values.port);
if (!Number.isInteger(port) || port < 1 || port > 65_535) {
  console.error(`--port is "${values.port}"; a whole number from 1 to 65535 is allowed.`);
  process.exit(2);
}
const config = { root: top, configFile: join(top, "vite.config.ts") };

/** @param {number} pid */
function isAlive(pid) {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

function tidy() {
  if (values.throwaway) rmSync(join(top, values.out), { recursive: true, force: true });
}

try {
  await build({ ...config, logLevel: "warn", build: { outDir: values.out, emptyOutDir: true } });
  const server = await preview({
    ...config,
    logLevel: "warn",
    build: { outDir: values.out },
    preview: { host: "127.0.0.1", port, strictPort: true, open: false },
  });
  console.log(`Handspan stands at http://localhost:${port}   (Ctrl+C ends it)`);
  const end = () => {
    tidy();
    server.httpServer.close();
    process.exit(0);
  };
  for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM", "SIGHUP"])) process.on(signal, end);
  const owner = values.owner;
  if (owner !== undefined) setInterval(() => isAlive(Number(owner)) || end(), 1000).unref();
} catch (error) {
  const reason = error instanceof Error ? error.message : String(error);
  console.error(
    /already in use/.test(reason)
      ? `Port ${port} is in use. End the program that holds it, or choose another: npm start -- --port ${port + 1}`
      : reason,
  );
  tidy();
  process.exit(1);
}
