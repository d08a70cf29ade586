// One page for all tests of a file, opened on an address before the first of them; a fault of the page fails the test in
// which it came.
import { expect, type Page, test } from "@playwright/test";
import { untilAllIsThere, untilReady } from "./handle.ts";
import { faultsOf } from "./page.ts";

/**
 * Opens the page at 1280 by 720 in the light theme and hands it to `opened`, once it is solved or, by `until`, once all
 * that follows is there. Service workers are blocked, so that the page comes from the server at hand.
 */
export function onePage(
  address: string,
  opened: (page: Page) => void | Promise<void>,
  until: "solved" | "all is there" = "all is there",
): void {
  let page: Page | null = null;
  let faults: string[] = [];

  test.beforeAll(async ({ browser, baseURL }) => {
    test.setTimeout(400_000);
    const context = await browser.newContext({
      viewport: { width: 1280, height: 720 },
      baseURL: baseURL ?? "",
      serviceWorkers: "block",
      colorScheme: "light",
    });
    page = await context.newPage();
    faults = await faultsOf(page, baseURL);
    await page.goto(address);
    await untilReady(page);
    if (until === "all is there") await untilAllIsThere(page);
    await opened(page);
  });

  test.afterEach(() => {
    expect(faults.splice(0), "faults of the page during this test").toEqual([]);
  });

  test.afterAll(async () => {
    await page?.context().close();
  });
}
