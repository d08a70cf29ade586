// What every browser test starts from: a page whose console errors and foreign requests are failures.
import { test as base, expect } from "@playwright/test";

/**
 * Playwright's `test`, with a `page` that fails the test when the page logs an error, throws, or asks any other
 * origin for anything (the tool must work with no network).
 */
export const test = base.extend({
  page: async ({ page, baseURL }, use) => {
    const faults: string[] = [];
    page.on("console", (message) => {
      if (message.type() === "error") faults.push(`console: ${message.text()} (${message.location().url})`);
    });
    page.on("pageerror", (error) => {
      faults.push(`uncaught: ${error.message}`);
    });
    await page.route(
      (url) => /^https?:$/.test(url.protocol) && url.origin !== new URL(baseURL ?? "").origin,
      async (route) => {
        faults.push(`asked another origin: ${route.request().url()}`);
        await route.abort();
      },
    );
    await use(page);
    expect(faults, "faults of the page during this test").toEqual([]);
  },
});

export { expect };
