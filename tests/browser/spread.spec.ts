// Low and high of what is uncertain come behind the result, stand at stored poses only, and go when another plan is opened.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseCsv } from "../tools/recompute.mjs";
import { ask, projectFile, untilReady } from "./handle.ts";
import { expect, test } from "./page.ts";

const top = fileURLToPath(new URL("../..", import.meta.url));

/** The reactions with low and high, as the command line writes them. */
function byCommandLine(scenario: string): Record<string, string>[] {
  const folder = mkdtempSync(join(tmpdir(), "handspan-"));
  const csv = join(folder, "out.csv");
  const words = [join(top, "tests/tools/handspan.mjs"), "solve", join(top, scenario), "--spread", "chosen"];
  const end = spawnSync(process.execPath, [...words, "--csv", csv], { cwd: top, encoding: "utf8" });
  if (end.status !== 0 && end.status !== 1) throw new Error(`${end.status}: ${end.stderr}`);
  const rows = parseCsv(readFileSync(csv, "utf8"));
  rmSync(folder, { recursive: true });
  return rows;
}

test("low and high in the table are those of the command line; a line on every strip; none between stored poses", async ({
  page,
}) => {
  test.setTimeout(240_000);
  const rows = byCommandLine("scenarios/one-girder.json");
  await page.goto("/");
  await untilReady(page);
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({
      name: "one-girder.json",
      mimeType: "application/json",
      buffer: Buffer.from(projectFile("scenarios/one-girder.json")),
    });
  await expect(page.locator("h1")).toHaveText("One girder to check by hand (invented)");
  await untilReady(page);
  const ranges = page.locator(".reactions .range");
  await expect(ranges.first()).toBeVisible({ timeout: 120_000 });
  for (const step of [0, 3]) {
    await ask(page, "setCursor", step, 1);
    const own = rows.filter(
      (r) => r.step_number === String(step + 1) && r.progress === "1" && r.band === "yes",
    );
    expect(own.length).toBeGreaterThan(3);
    await expect(ranges).toHaveCount(own.length);
    for (const { support, share_low_kN, share_high_kN } of own) {
      const words = await page.locator(`tr[data-support="${support}"] .range`).textContent();
      const [low, high] = (/^low (-?[\d.]+), high (-?[\d.]+)$/.exec(words ?? "") ?? []).slice(1).map(Number);
      // 0.1 kN is one unit of the last digit shown.
      expect(Math.abs(low - Number(share_low_kN)), `${support}, low`).toBeLessThanOrEqual(0.1);
      expect(Math.abs(high - Number(share_high_kN)), `${support}, high`).toBeLessThanOrEqual(0.1);
    }
  }
  const strips = await page.locator(".share .strip").count();
  await expect(page.locator(".share .strip .high")).toHaveCount(strips);
  await ask(page, "setCursor", 0, 0.333);
  await expect(ranges).toHaveCount(0);
});
