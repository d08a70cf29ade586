// One build configuration: the page (default), the command line (--mode cli), the benchmarks (--mode bench), the tests.
import { createHash } from "node:crypto";
import { existsSync, readdirSync } from "node:fs";
import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";

/**
 * What the page may load: its own files and nothing else. The worker is bound by the header of its own file, which
 * is why the preview server sends the policy too. `blob:` and `data:` serve pictures that the page itself draws.
 */
const policy = [
  "default-src 'self'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** Writes the policy into the built index.html, so that any static host serves it. */
function policyInPage(): Plugin {
  return {
    name: "policy-in-page",
    apply: "build",
    transformIndexHtml: () => [
      {
        tag: "meta",
        attrs: { "http-equiv": "Content-Security-Policy", content: policy },
        injectTo: "head-prepend",
      },
    ],
  };
}

/** The service worker: a list of files and one rule for each question. `FILES` and `NAME` are filled in at the build. */
const serviceWorker = `
const name = NAME, files = FILES;
const open = () => caches.open(name);
const options = { ignoreSearch: true, ignoreVary: true };
self.addEventListener("install", (event) =>
  event.waitUntil(open().then((cache) => cache.addAll(files.map((file) => new Request(file, { cache: "reload" }))))));
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  for (const key of await caches.keys()) if (key.startsWith("handspan-") && key !== name) await caches.delete(key);
  await self.clients.claim();
})()));
// The page itself comes from the network when there is one (so that a new version is never hidden by an old copy),
// from the copy when there is none or it takes too long. All else has its contents in its name: the copy is right.
const page = async (request) => {
  const copy = async () => (await (await open()).match("./", options)) ?? Response.error();
  if (!self.navigator.onLine) return copy();
  const late = new Promise((resolve) => setTimeout(resolve, 3000)).then(copy);
  return Promise.race([fetch(request).catch(copy), late]);
};
const file = async (request) => (await (await open()).match(request, options)) ?? fetch(request);
self.addEventListener("fetch", (event) => {
  const request = event.request;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  event.respondWith(request.mode === "navigate" ? page(request) : file(request));
});
`;

const registration = `
if ("serviceWorker" in navigator) navigator.serviceWorker.register("./sw.js").catch(() => {
  // No copy for use without a network; the page works as long as there is one.
});
`;

/** Keeps a copy of the whole page on the device, so that a tablet on site opens it without a network. */
function copyOnDevice(): Plugin {
  return {
    name: "copy-on-device",
    apply: "build",
    enforce: "post",
    transformIndexHtml: () => [
      { tag: "script", attrs: { type: "module", src: "./register.js" }, injectTo: "body" },
    ],
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const files = Object.values(bundle).filter(
          (file) => !/\.map$|^\.vite|\.woff$|\.html$/.test(file.fileName),
        );
        const hash = createHash("sha256");
        for (const file of Object.values(bundle)) {
          hash.update(file.fileName).update(file.type === "chunk" ? file.code : file.source);
        }
        const icons = existsSync("public")
          ? readdirSync("public").filter((file) => /\.(svg|png|ico|webmanifest)$/.test(file))
          : [];
        const list = ["", "register.js", ...icons, ...files.map((file) => file.fileName)].map(
          (file) => `./${file}`,
        );
        const name = `handspan-${hash.digest("hex").slice(0, 12)}`;
        const source = serviceWorker
          .replace("NAME", JSON.stringify(name))
          .replace("FILES", () => JSON.stringify(list));
        this.emitFile({ type: "asset", fileName: "sw.js", source });
        this.emitFile({ type: "asset", fileName: "register.js", source: registration });
      },
    },
  };
}

/** One file for Node 20 with every package inside: runs wherever the file is copied to. */
function forNode(entry: string, name: string) {
  return {
    publicDir: false as const,
    ssr: { noExternal: true as const, target: "node" as const },
    build: {
      ssr: entry,
      target: "node20",
      outDir: `.cache/${name}`,
      emptyOutDir: true,
      copyPublicDir: false,
      minify: false,
      rollupOptions: {
        output: { entryFileNames: `${name}.mjs`, format: "es" as const, codeSplitting: false },
      },
    },
  };
}

/** The page: relative addresses, so that it can stand in any folder of any host. */
const page = {
  base: "./",
  plugins: [react(), policyInPage(), copyOnDevice()],
  worker: { format: "es" as const, codeSplitting: false },
  build: {
    target: "es2023",
    manifest: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 800,
  },
  preview: {
    headers: {
      "Content-Security-Policy": `${policy}; frame-ancestors 'none'`,
      "X-Content-Type-Options": "nosniff",
      "Referrer-Policy": "no-referrer",
    },
  },
};

const tests = {
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    exclude: ["tests/browser/**", "tests/bench/**", "node_modules/**"],
    // Two cores are two workers; a busy machine may take its time, since no test judges how long it takes.
    maxWorkers: "100%",
    testTimeout: 60_000,
    passWithNoTests: false,
  },
};

export default defineConfig(({ mode }) => {
  if (mode === "cli") return forNode("src/cli.ts", "cli");
  if (mode === "bench") return forNode("tests/bench/main.ts", "bench");
  return { ...page, ...tests };
});
