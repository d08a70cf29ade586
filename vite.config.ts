// One build configuration: the page (default), the command line (--mode cli), the benchmarks (--mode bench), the tests.
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
  plugins: [react(), policyInPage()],
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
    testTimeout: 20_000,
    passWithNoTests: false,
  },
};

export default defineConfig(({ mode }) => {
  if (mode === "cli") return forNode("src/cli.ts", "cli");
  if (mode === "bench") return forNode("tests/bench/main.ts", "bench");
  return { ...page, ...tests };
});
