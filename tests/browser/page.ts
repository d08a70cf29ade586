// What every browser test starts from: a page whose console errors and foreign requests are failures.
import { test as base, expect, type Page } from "@playwright/test";

/**
 * Watches a page from now on: the list that comes back fills with every error that it logs or throws and with every
 * address of another origin that it asks for (the tool must work with no network; such a request is refused).
 */
export async function faultsOf(page: Page, baseURL: string | undefined): Promise<string[]> {
  const faults: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(`console: ${message.text()}`);
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
  return faults;
}

/** Playwright's `test`, with a `page` that fails the test when anything of that kind happens. */
export const test = base.extend({
  page: async ({ page, baseURL }, use) => {
    const faults = await faultsOf(page, baseURL);
    await use(page);
    expect(faults, "faults of the page during this test").toEqual([]);
  },
});

export { expect };
