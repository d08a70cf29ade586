// An edit in the built page: what was before stands against what is now, over the scene and without moving anything, until Escape puts it away.
import { expect, test } from "./page.ts";

interface OnPage {
  __handspan: { ready(): boolean; edit(label: string, path: (string | number)[], value: unknown): void };
}

test("a change is answered beside what was before, and put away by Escape", async ({ page }) => {
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
  // Escape puts this away before it ends the work on low and high behind it.
  await expect(page.getByRole("button", { name: /^Put away what was before/ })).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.locator(".change")).toHaveCount(0);
  await expect(page.getByText(/told to stop|stopping/)).toHaveCount(0);
});
