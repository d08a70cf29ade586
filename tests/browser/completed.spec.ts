// The page's second, whole result: what losing hooks and groups shows comes after the first answer, as on the command line.
import { ask, solvedByCommandLine, untilReady } from "./handle.ts";
import { expect, test } from "./page.ts";

test("after the first answer the findings become those of the command line", async ({ page }) => {
  test.setTimeout(180_000);
  const { json } = solvedByCommandLine("scenarios/demo.json");
  await page.goto("/");
  await untilReady(page);
  const levels = async () => (await ask(page, "result"))?.findings.map((f) => `${f.level} ${f.id}`);
  await expect.poll(levels, { timeout: 60_000 }).toEqual(json.findings.map((f) => `${f.level} ${f.id}`));
  expect(json.findings.some((f) => f.check === "unbacked")).toBe(true);
});
