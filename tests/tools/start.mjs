// npm start: builds the page and serves it, both in this one process, so that ending it ends everything.
// npm start -- PLAN.json hands out that plan too, read anew at each request, and prints the address that opens it.
// Options: --port N (4173), --out FOLDER (dist); for the browser tests --throwaway (removes FOLDER at the end) and
// --owner PID (ends when that process is gone, however it ended).
import { accessSync, constants, createReadStream, rmSync, statSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { build, preview } from "vite";
import { top } from "./common.mjs";

const { values, positionals } = parseArgs({
  allowPositionals: true,
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
const [given, ...more] = positionals;
if (more.length > 0) {
  console.error(
    `Found ${positionals.length} plans (${positionals.join(", ")}); one is allowed. Start once for each.`,
  );
  process.exit(2);
}
// npm changes into the project's folder; a name is meant from where it was typed.
const plan = given === undefined ? "" : resolve(process.env.INIT_CWD ?? process.cwd(), given);
if (plan !== "") {
  try {
    accessSync(plan, constants.R_OK);
    if (!statSync(plan).isFile()) throw new Error("it is no file");
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    console.error(`${given}: found no plan file that can be read (${reason}). Give the path of a plan file.`);
    process.exit(2);
  }
}
/** Where the plan stands on the server: under its own name. */
const handedOut = `/given/${encodeURIComponent(basename(plan))}`;

/** Hands out the plan, and nothing else, as it is on disk at that moment. */
const handOut = {
  name: "hand-out-plan",
  /** @param {import("vite").PreviewServer} server */
  configurePreviewServer(server) {
    if (plan === "") return;
    server.middlewares.use(handedOut, (_, answer) => {
      answer.setHeader("Content-Type", "application/json");
      answer.setHeader("Cache-Control", "no-store");
      createReadStream(plan)
        .on("error", () => {
          answer.statusCode = 404;
          answer.end();
        })
        .pipe(answer);
    });
  },
};
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
    plugins: [handOut],
    logLevel: "warn",
    build: { outDir: values.out },
    preview: { host: "127.0.0.1", port, strictPort: true, open: false },
  });
  const query = plan === "" ? "" : `/?open=${encodeURIComponent(handedOut.slice(1))}`;
  console.log(`Handspan stands at http://localhost:${port}${query}   (Ctrl+C ends it)`);
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
