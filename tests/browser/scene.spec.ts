// The scene in a browser: few draw calls, no frame without a change, labels that tell the solved shares and never overlap.
import { expect, type Page, test } from "@playwright/test";
import { print } from "../../src/units/index.ts";
import { ask, frames, untilAllIsThere, untilReady } from "./handle.ts";
import { faultsOf } from "./page.ts";

let page: Page;
let faults: string[] = [];

const open = async (
  browser: import("@playwright/test").Browser,
  baseURL: string | undefined,
  path: string,
) => {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 720 },
    baseURL: baseURL ?? "",
    serviceWorkers: "block",
  });
  const made = await context.newPage();
  const found = await faultsOf(made, baseURL);
  await made.goto(path);
  await untilReady(made);
  await made.waitForFunction(() => (globalThis as { __handspan?: { frames?: number } }).__handspan?.frames);
  return { made, found };
};

test.beforeAll(async ({ browser, baseURL }) => {
  test.setTimeout(120_000);
  ({ made: page, found: faults } = await open(browser, baseURL, "/"));
});

test.afterEach(() => {
  expect(faults.splice(0), "faults of the page during this test").toEqual([]);
});

test.afterAll(async () => {
  await page?.context().close();
});

interface SceneAnswers {
  frames: number;
  info(): { calls: number; triangles: number };
}

const scene = (on: Page) =>
  on.evaluate(() => {
    const handle = (globalThis as unknown as { __handspan: SceneAnswers }).__handspan;
    return { frames: handle.frames, ...handle.info() };
  });

interface Seen {
  name: string;
  value: string;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** The labels of the reactions: words, and the plate that they stand on. */
const labels = (on: Page): Promise<Seen[]> =>
  on.locator(".scene-overlay .label").evaluateAll((groups) =>
    groups.map((group) => {
      const [name, value] = [...group.querySelectorAll("text")].map((text) => text.textContent ?? "");
      const { left, top, right, bottom } = (group.querySelector(".plate") ?? group).getBoundingClientRect();
      return { name, value, left, top, right, bottom };
    }),
  );

/** Waits until the labels tell the solved shares of the pose at the cursor; gives the labels. */
async function settled(on: Page): Promise<Seen[]> {
  const forces = await ask(on, "forces");
  // Bands alone have labels: no lines, bunks, cylinders and lashings.
  const expected = Object.entries(await ask(on, "shares"))
    .filter(([name]) => Number.isFinite(forces[name]) && !/^(bunk|lashing) | line |:/.test(name))
    .map(([name, share]) => `${name} ${print(share, "load", "SI")}`)
    .sort();
  let seen: Seen[] = [];
  await expect
    .poll(async () => {
      seen = await labels(on);
      return seen.map(({ name, value }) => `${name} ${value}`).sort();
    })
    .toEqual(expected);
  return seen;
}

test("draws with at most 60 calls, and no frame while nothing changes", async () => {
  test.setTimeout(400_000);
  // The first frames may come before there is anything to draw.
  await expect.poll(async () => (await scene(page)).calls).toBeGreaterThan(3);
  const first = await scene(page);
  expect(first.calls).toBeLessThanOrEqual(60);
  expect(first.triangles).toBeGreaterThan(5000);
  // What is worked out behind the first result is drawn when it comes: after that nothing changes.
  await untilAllIsThere(page);
  await frames(page, 5);
  const before = (await scene(page)).frames;
  await frames(page, 40);
  expect((await scene(page)).frames).toBe(before);
  await ask(page, "setCursor", 3, 0.5);
  await expect.poll(async () => (await scene(page)).frames).toBeGreaterThan(before);
});

test("labels tell the solved shares and never overlap: five views, six places", async () => {
  for (const key of ["1", "2", "3", "4", "5"]) {
    await page.locator("body").press(key);
    for (const [step, progress] of [
      [0, 0],
      [6, 0.6],
      [9, 0.4],
      [12, 0.3],
      [17, 0.5],
      [20, 1],
    ]) {
      await ask(page, "setCursor", step, progress);
      const seen = await settled(page);
      expect(seen.length, `view ${key}, step ${step + 1}`).toBeGreaterThan(1);
      seen.forEach((a, i) => {
        for (const b of seen.slice(i + 1)) {
          const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
          expect(apart, `view ${key}, step ${step + 1}: ${a.name} and ${b.name}`).toBe(true);
        }
      });
    }
  }
  await page.locator("body").press("1");
});

test("the picture changes with the pose and is told in words", async () => {
  const canvas = page.locator(".scene canvas");
  await ask(page, "setCursor", 2, 0);
  await settled(page);
  const before = await canvas.screenshot();
  await ask(page, "setCursor", 6, 1);
  const seen = await settled(page);
  const after = await canvas.screenshot();
  // A canvas that stayed empty packs into some 3 kB.
  expect(before.length).toBeGreaterThan(10_000);
  expect(after.equals(before)).toBe(false);
  const words = (await canvas.getAttribute("aria-label")) ?? "";
  await expect(canvas).toHaveAttribute("role", "img");
  expect(words).toContain("step 7");
  for (const { name, value } of seen.filter(({ value }) => !/^0\.0 /.test(value))) {
    expect(words).toContain(`${name} ${value}`);
  }
});

test("pointing at a girder names it, at a label what it carries, and a click on it chooses it", async () => {
  await ask(page, "setCursor", 3, 0.5);
  await settled(page);
  const world = await ask(page, "positions");
  if (world === null) throw new Error("no pose is drawn");
  const middle = world.tail.map((v, k) => v + 0.63 * (world.nose[k] - v)) as [number, number, number];
  const [x, y] = await ask(page, "project", [middle[0], middle[1], middle[2] + 1.2]);
  await page.mouse.move(x, y);
  await expect(page.locator(".scene-hover")).toHaveText(/^girder /);
  const label = page.locator('.scene-overlay .label[data-support="front aft"]');
  // Labels are laid out anew when more of the result arrives: ask until this one stands.
  let box = { x: 0, y: 0, width: 0, height: 0 };
  await expect
    .poll(async () => {
      box = (await label.locator(".plate").boundingBox()) ?? box;
      return box.width;
    })
    .toBeGreaterThan(0);
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await expect(page.locator(".scene-hover")).toHaveText(/^front aft.*carries .* kN/);
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await expect(page.locator('.scene-overlay .label[data-support="front aft"]')).toHaveClass(/marked/);
});

test("with ?gl=off nothing is drawn, and labels and positions go on", async ({ browser, baseURL }) => {
  const { made, found } = await open(browser, baseURL, "/?gl=off");
  await ask(made, "setCursor", 9, 0.5);
  expect((await settled(made)).length).toBeGreaterThan(2);
  expect(await scene(made)).toMatchObject({ calls: 0, triangles: 0 });
  expect(await ask(made, "positions")).not.toBeNull();
  expect(found).toEqual([]);
  await made.context().close();
});
