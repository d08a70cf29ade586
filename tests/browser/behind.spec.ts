// What is worked out behind the first answer: told quietly and in its order, with how far it is; low and high can be stopped,
// keep what they have, and come over every corner on request, as on the command line.
import { ask, openPlan, projectFile, solvedText, untilAllIsThere, untilReady, untilStage } from "./handle.ts";
import { expect, test } from "./page.ts";

test("the pieces arrive one after another, and the page says which is still to come", async ({ page }) => {
  test.setTimeout(400_000);
  // Every stage that the foot of the page tells is noted as it changes.
  await page.addInitScript(() => {
    const seen: string[] = [];
    Object.assign(window, { seenStages: seen });
    const note = () => {
      const stage = document.querySelector<HTMLElement>(".behind")?.dataset.stage ?? "";
      if (stage !== "" && seen.at(-1) !== stage) seen.push(stage);
    };
    const start = () =>
      new MutationObserver(note).observe(document, { subtree: true, childList: true, attributes: true });
    start();
  });
  await page.goto("/");
  await untilReady(page);
  // The first answer stands before what follows it: then the row under the bands says that it is not known yet.
  await untilAllIsThere(page);
  const stages = await page.evaluate(() => (window as unknown as { seenStages: string[] }).seenStages);
  expect(stages).toEqual([
    "solving the plan",
    "losses and ways back are being worked out",
    "low and high are being worked out",
    "everything is worked out",
  ]);
  await expect(page.locator(".behind")).toContainText(/low and high over \d+ chosen corners/);
  await expect(page.locator(".behind [role=status]")).toHaveText("everything is worked out");
});

test("every corner comes on request; a key stops it, and what it has stays when it covers more", async ({
  page,
}) => {
  test.setTimeout(400_000);
  await page.goto("/?example=one-girder");
  await untilReady(page);
  await untilAllIsThere(page);
  const chosen = Number(
    /over (\d+) chosen/.exec((await page.locator(".behind").textContent()) ?? "")?.[1] ?? Number.NaN,
  );
  const button = page.getByRole("button", { name: /^All \d+ corners$/ });
  const all = Number(/\d+/.exec((await button.textContent()) ?? "")?.[0]);
  expect(all).toBeGreaterThan(10 * chosen);
  await button.focus();
  await page.keyboard.press("Enter");
  await untilStage(page, /^low and high are being worked out$/);
  const progress = page.getByRole("progressbar", { name: "Corners run" });
  await expect(progress).toHaveAttribute("max", String(all));
  // More than the chosen ones, so that it covers more when it is stopped.
  await expect
    .poll(async () => Number(await progress.getAttribute("value")), { timeout: 120_000 })
    .toBeGreaterThan(chosen);
  await page.keyboard.press("Escape");
  await untilAllIsThere(page);
  const words = (await page.locator(".behind").textContent()) ?? "";
  const [, done, of] = /over (\d+) of (\d+) corners, told to stop/.exec(words) ?? [];
  expect(Number(done)).toBeGreaterThan(chosen);
  expect(Number(done)).toBeLessThan(all);
  expect(Number(of)).toBe(all);
  // It can be asked for again.
  await expect(button).toBeVisible();
});

test("over every corner to the end: low and high of every support are those of the command line", async ({
  page,
}) => {
  test.setTimeout(400_000);
  const plan = JSON.parse(projectFile("scenarios/one-girder.json")) as {
    header: { title: string };
    spread: Record<string, unknown>;
  };
  // Three quantities, so that every combination is some dozens.
  plan.header.title = "Few corners";
  const none = { cgAcross_m: 0, hookMismatch_mm: 0, settlement_mm: 0, stiffness_pct: [0, 0] };
  plan.spread = { ...plan.spread, ...none };
  const text = JSON.stringify(plan);
  const { json } = solvedText(text, ["--spread", "all"]);
  await page.goto("/?example=one-girder");
  await untilReady(page);
  await openPlan(page, text);
  await untilAllIsThere(page);
  await page.getByRole("button", { name: /^All \d+ corners$/ }).click();
  await expect(page.locator(".behind")).toContainText(/low and high over all \d+ corners/, {
    timeout: 120_000,
  });
  const set = json.sets[0];
  const bands = set.supports.filter(({ band }) => band);
  let compared = 0;
  for (const { name } of bands) {
    const ends = set.spread?.supports.find((one) => one.name === name);
    if (!ends?.low || !ends.high) continue;
    const pose = set.poses[ends.high.pose];
    await ask(page, "setCursor", pose.number - 1, pose.progress);
    const shown = await page.locator(`tr[data-support="${name}"] .range.high`).textContent();
    // 0.1 kN is one unit of the last digit shown.
    expect(Math.abs(Number(shown) - ends.high.value / 1000), name).toBeLessThanOrEqual(0.1);
    compared++;
  }
  expect(compared).toBeGreaterThan(3);
});
