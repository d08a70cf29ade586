// npm run crosscheck: the tests beside this file, apart from those of `npx vitest run`, since they need another program.
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: fileURLToPath(new URL("../..", import.meta.url)),
  test: {
    include: ["tests/crosscheck/**/*.crosscheck.ts"],
    // A shell model takes some ten seconds on a slow machine.
    testTimeout: 120_000,
    passWithNoTests: false,
    // The tables come out as they are.
    disableConsoleIntercept: true,
  },
});
