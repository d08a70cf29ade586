// An edit in the built page: what was before stands against what is now, over the scene and without moving anything, until it is put away.
import { expect, test } from "./page.ts";

interface OnPage {
  __handspan: { ready(): boolean; edit(label: string, path: (string | number)[], value: unknown): void };
}

test("a change is answered beside what was before, and put away by its button", async ({ page }) => {
  await page.goto("/");
  await page.waitForFunction(() => (globalThis as unknown as OnPage).__handspan?.ready(), null, {
    timeout: 50_000,
  });
  await expect(page.locator(".change")).toHaveCount(0);
  const table = page.locator(".reactions table");
  const stood = await table.boundingBox();
  await page.evaluate(() => {
    (globalThis as unknown as OnPage).__handspan.edit("Heavier", ["sets", 0, "attachments", 0, "mass_t"], 6);
  });
  const change = page.locator(".change button").first();
  await expect(change).toContainText(/findings: \d+ more, \d+ gone/, { timeout: 40_000 });
  await expect(page.locator('.older.is[data-older="pose"]')).toHaveCount(0);
  expect(await table.boundingBox()).toEqual(stood);
  await change.click();
  await expect(page.locator(".change tr.differs").first()).toBeVisible();
  // Escape ends the work on low and high before it puts this away; its button does so at once.
  await page.getByRole("button", { name: /^Put away what was before/ }).click();
  await expect(page.locator(".change")).toHaveCount(0);
});
