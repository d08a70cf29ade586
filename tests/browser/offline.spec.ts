// Without a network: once opened, the page opens again from the copy on the device.
import { expect, test } from "./page.ts";

test.use({ serviceWorkers: "allow" });

test("opens again with the network gone, under another query too", async ({ page, context }) => {
  await page.goto("/");
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  const copied = await page.evaluate(async () => {
    const names = await caches.keys();
    return Promise.all(names.map(async (name) => (await (await caches.open(name)).keys()).length));
  });
  expect(copied).toHaveLength(1);
  expect(copied[0]).toBeGreaterThanOrEqual(3);

  await context.setOffline(true);
  await page.reload();
  await expect(page.getByText(/planning aid only/i).first()).toBeVisible();
  await page.goto("/?again");
  await expect(page.getByText(/planning aid only/i).first()).toBeVisible();
});
