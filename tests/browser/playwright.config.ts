// How the browser tests run: one worker (software rendering uses every core), the same flags everywhere, the built page.
import { defineConfig, devices } from "@playwright/test";
import { findOrInstallBrowser } from "../tools/browser.mjs";

// Playwright reads this file again in each of its processes: what is chosen once is handed on by the environment.
process.env.HANDSPAN_BROWSER ??= findOrInstallBrowser();
process.env.HANDSPAN_PORT ??= String(4200 + (process.pid % 700));
const port = Number(process.env.HANDSPAN_PORT);
const report = process.env.HANDSPAN_REPORT;

export default defineConfig({
  testDir: ".",
  testMatch: "**/*.spec.ts",
  outputDir: "../../.cache/browser-results",
  snapshotPathTemplate: "{testDir}/pictures/{arg}{ext}",
  workers: 1,
  fullyParallel: false,
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 15_000, toHaveScreenshot: { maxDiffPixelRatio: 0.002, threshold: 0.1 } },
  reporter: report ? [["list"], ["json", { outputFile: report }]] : [["list"]],
  use: {
    ...devices["Desktop Chrome"],
    viewport: { width: 1400, height: 900 },
    baseURL: `http://localhost:${port}`,
    locale: "en-GB",
    timezoneId: "UTC",
    serviceWorkers: "block",
    launchOptions: {
      executablePath: process.env.HANDSPAN_BROWSER,
      args: [
        "--no-sandbox",
        "--use-angle=swiftshader",
        "--enable-unsafe-swiftshader",
        "--force-color-profile=srgb",
        "--font-render-hinting=none",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
  webServer: {
    command: `node tests/tools/start.mjs --port ${port} --out .cache/site-${port} --throwaway --owner ${process.pid}`,
    cwd: "../..",
    url: `http://localhost:${port}/`,
    timeout: 120_000,
    reuseExistingServer: false,
    gracefulShutdown: { signal: "SIGTERM", timeout: 3000 },
    stdout: "ignore",
    stderr: "pipe",
  },
});
