// What stands on the smallest screen without scrolling, what one key brings, whole cranes, labels clear of girders and hooks,
// and the use at the cursor beside that of the step.

import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import type { World } from "../../src/sequence/index.ts";
import { ask, frames, type Point, solvedByCommandLine } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;
let json: ResultJson;

onePage("/", (opened) => {
  page = opened;
  ({ json } = solvedByCommandLine("scenarios/demo.json"));
});

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

async function boxOf(selector: string): Promise<Box> {
  const box = await page.locator(selector).first().boundingBox();
  if (box === null) throw new Error(`${selector} has no place on the page`);
  return box;
}

test("bands, the row of unbacked parts and the most used strips stand on 1280 x 720 without scrolling", async () => {
  const foot = await boxOf("footer");
  const row = await boxOf(".unbacked-row .paper");
  const bands = await boxOf(".share .bands > .paper");
  expect(bands.height).toBeGreaterThanOrEqual(80);
  expect(row.y + row.height).toBeLessThan(foot.y);
  const strips = page.locator(".share .strip");
  expect(await strips.count()).toBeGreaterThanOrEqual(4);
  for (const strip of await strips.all()) {
    const box = await strip.boundingBox();
    expect((box?.y ?? Number.NaN) + (box?.height ?? 0)).toBeLessThanOrEqual(foot.y + 3);
  }
  const uses = await strips
    .locator("[data-use]")
    .evaluateAll((all) => all.map((one) => Number(one.getAttribute("data-use"))));
  expect(uses).toEqual([...uses].sort((a, b) => b - a));
  const scrolls = await page
    .locator(".share-strips")
    .evaluate((it) => it.scrollHeight > it.clientHeight + 1 && getComputedStyle(it).overflowY !== "visible");
  expect(scrolls).toBe(false);
  expect(await page.evaluate(() => document.documentElement.scrollHeight <= window.innerHeight)).toBe(true);
  // The table of reactions neither: every band has its row in sight.
  const reactions = page.locator(".reactions");
  expect(await reactions.evaluate((it) => it.scrollHeight <= it.clientHeight + 1)).toBe(true);
});

test("one key brings every strip in the place of the scene, and takes it away again", async () => {
  const few = await page.locator(".share .strip").count();
  const all = await page.getByRole("list", { name: "Highest uses of limits" }).getByRole("listitem").count();
  expect(all).toBeGreaterThan(few);
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press("u");
  await expect(page.locator(".share .strip")).toHaveCount(all);
  // Where they are more than fit, the focus stands in the list already, and its end comes into sight by one key more.
  const foot = await boxOf("footer");
  const below = async () => {
    const last = await page.locator(".share .strip").last().boundingBox();
    return (last?.y ?? Number.NaN) + (last?.height ?? 0) - foot.y;
  };
  expect(await page.locator(".share .strip").nth(14).isVisible()).toBe(true);
  if ((await below()) > 3) {
    await expect(page.getByRole("region", { name: "Use of limits" })).toBeFocused();
    await page.keyboard.press("End");
  }
  await expect.poll(below).toBeLessThanOrEqual(3);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.keyboard.press("Escape");
  await expect(page.locator(".share .strip")).toHaveCount(few);
});

test("use at the cursor stands beside the step's use: each is named, neither is above the other's bound", async () => {
  const header = page.locator(".reactions thead");
  await expect(header.getByRole("columnheader", { name: "use here %" })).toHaveCount(1);
  await expect(header.getByRole("columnheader", { name: "step's use %" })).toHaveCount(1);
  const cell = async (support: string, which: "here" | "step") =>
    Number(await page.locator(`tr[data-support="${support}"] .use.${which}`).textContent());
  // The far crane takes load: its use grows along the step, and the step's use is that of the end or above.
  const seen: number[] = [];
  const step = json.sets[0].steps.findIndex((one) => one.do === "take load");
  for (const progress of [0.25, 0.5, 1]) {
    await ask(page, "setCursor", step, progress);
    await expect(page.locator('tr[data-support="far crane"] .use.here')).toHaveText(/^\d+$/);
    seen.push(await cell("far crane", "here"));
    expect(await cell("far crane", "here")).toBeLessThanOrEqual(await cell("far crane", "step"));
  }
  expect(seen).toEqual([...seen].sort((a, b) => a - b));
  expect(seen[2]).toBeGreaterThan(seen[0]);
  // At the end of the step: the load felt over the load that the chart allows there, as the strip has it.
  const strip = page.locator('.share .strip[data-strip="far crane"] [data-use]');
  expect(Math.max(...seen)).toBeLessThanOrEqual(Number(await strip.getAttribute("data-use")));
});

test("whole cranes: a small true picture where booms are cropped, and a view in which every tip is in sight", async () => {
  const tips = (world: World) => Object.values(world.cranes).map(({ tip }) => tip);
  for (const [step, progress] of [
    [0, 0],
    [6, 0.6],
    [13, 0.5],
  ]) {
    await ask(page, "setCursor", step, progress);
    await frames(page);
    const world = await ask(page, "positions");
    if (world === null) throw new Error("no pose is drawn");
    const canvas = await boxOf(".stage canvas");
    const cropped = await Promise.all(
      tips(world).map(async (tip) => (await ask(page, "project", tip))[1] < canvas.y),
    );
    expect(cropped).toContain(true);
    // The small picture has a boom for every crane, its heights as the command line has them.
    await expect(page.locator(".whole-cranes .boom")).toHaveCount(tips(world).length);
  }
  const tandem = await ask(page, "positions");
  const plan = json.sets[0].poses.find(({ number, progress }) => number === 14 && progress === 0.5);
  for (const [id, tip] of Object.entries(plan?.world.tips ?? {}))
    expect(Math.abs((tandem?.cranes[id].tip[2] ?? Number.NaN) - tip[2])).toBeLessThan(1e-3);

  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press("5");
  await expect(page.getByRole("button", { name: "5 Cranes" })).toHaveAttribute("aria-pressed", "true");
  for (const [step, progress] of [
    [0, 0],
    [6, 0.6],
    [15, 1],
  ]) {
    await ask(page, "setCursor", step, progress);
    await frames(page);
    const world = await ask(page, "positions");
    const canvas = await boxOf(".stage canvas");
    for (const tip of tips(world as World)) {
      const [x, y] = await ask(page, "project", tip);
      expect(x).toBeGreaterThan(canvas.x);
      expect(x).toBeLessThan(canvas.x + canvas.width);
      expect(y).toBeGreaterThan(canvas.y);
      expect(y).toBeLessThan(canvas.y + canvas.height);
    }
    await expect(page.locator(".whole-cranes")).toHaveCount(0);
  }
  await page.keyboard.press("1");
});

test("no label covers a girder, a hook or its rigging, in either elevation", async () => {
  for (const key of ["1", "5"]) {
    await page.keyboard.press(key);
    for (const [step, progress] of [
      [0, 0],
      [3, 1],
      [6, 0.6],
      [13, 0.5],
      [16, 0.5],
      [20, 1],
    ]) {
      await ask(page, "setCursor", step, progress);
      await frames(page);
      const world = await ask(page, "positions");
      if (world === null) throw new Error("no pose is drawn");
      const at = async (p: Point) => await ask(page, "project", p);
      const bodies: { left: number; top: number; right: number; bottom: number }[] = [];
      const around = async (points: Point[]) => {
        const seen = await Promise.all(points.map(at));
        const [xs, ys] = [seen.map(([x]) => x), seen.map(([, y]) => y)];
        bodies.push({
          left: Math.min(...xs),
          right: Math.max(...xs),
          top: Math.min(...ys),
          bottom: Math.max(...ys),
        });
      };
      // A girder in eight pieces, from its soffit to 2 m above it: less than its depth.
      for (const { tail, nose } of Object.values(world.girders)) {
        for (let i = 0; i < 8; i++) {
          const along = (part: number, up: number): Point => [
            tail[0] + (nose[0] - tail[0]) * part,
            tail[1],
            tail[2] + (nose[2] - tail[2]) * part + up,
          ];
          await around([along(i / 8, 0), along((i + 1) / 8, 0), along(i / 8, 2), along((i + 1) / 8, 2)]);
        }
      }
      for (const { hook, picks } of Object.values(world.cranes))
        if (hook !== null) await around([hook, ...picks]);
      const plates = await page.locator(".scene-overlay .label").evaluateAll((groups) =>
        groups.map((group) => {
          const { left, top, right, bottom } = (
            group.querySelector(".plate") ?? group
          ).getBoundingClientRect();
          return { name: group.getAttribute("data-support"), left, top, right, bottom };
        }),
      );
      expect(plates.length).toBeGreaterThan(1);
      for (const plate of plates)
        for (const body of bodies) {
          const clear =
            plate.right <= body.left ||
            body.right <= plate.left ||
            plate.bottom <= body.top ||
            body.bottom <= plate.top;
          expect(clear, `view ${key}, step ${step + 1}: ${plate.name} covers a body`).toBe(true);
        }
    }
  }
  await page.keyboard.press("1");
});
