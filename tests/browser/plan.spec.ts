// The Plan place, as a planner uses it: one page for all tests, the built site, the demonstration plan.
import { readFileSync } from "node:fs";
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import {
  ask,
  drop,
  frames,
  type Handle,
  type Point,
  projectFile,
  solvedByCommandLine,
  untilReady,
} from "./handle.ts";
import { faultsOf } from "./page.ts";

let page: Page;
let faults: string[] = [];
let json: ResultJson;
let csv = "";

test.beforeAll(async ({ browser, baseURL }) => {
  test.setTimeout(180_000);
  ({ json, csv } = solvedByCommandLine("scenarios/demo.json"));
  const context = await browser.newContext({
    viewport: { width: 1280, height: 720 },
    baseURL: baseURL ?? "",
    serviceWorkers: "block",
    colorScheme: "light",
    acceptDownloads: true,
  });
  page = await context.newPage();
  faults = await faultsOf(page, baseURL);
  await page.goto("/");
  await untilReady(page);
});

test.afterEach(() => {
  expect(faults.splice(0), "faults of the page during this test").toEqual([]);
});

test.afterAll(async () => {
  await page?.context().close();
});

const place = async () => {
  const { step, progress } = await ask(page, "cursor");
  return { step, progress };
};
const picture = () => page.getByRole("slider", { name: "Place in the operation", exact: true });

test("opens the demonstration plan at once, with its title, the mark of invented data and the caution", async () => {
  const plan = JSON.parse(projectFile("scenarios/demo.json")) as {
    header: { title: string };
    invented: boolean;
  };
  expect(plan.invented).toBe(true);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(plan.header.title);
  await expect(page.getByText("Invented data", { exact: true })).toBeVisible();
  await expect(page.getByText(/planning aid only: not a substitute for a licensed engineer/i)).toBeVisible();
  expect((await ask(page, "result"))?.planHash).toBe(json.planHash);
  expect(await page.evaluate(() => document.documentElement.scrollHeight <= window.innerHeight)).toBe(true);
});

test("every step is in the picture, and the bands fill it up to the weight: no hole", async () => {
  await expect(page.locator(".step-names > g")).toHaveCount(json.sets[0].steps.length);
  const bands = json.sets[0].supports.filter((support) => support.band);
  await expect(page.locator(".share .band")).toHaveCount(bands.length);
  await expect(page.locator("[data-hole]")).toHaveCount(0);
});

test("a force taken out of the Result leaves a hole below the weight line", async () => {
  await expect(page.locator('[data-hole="yes"]')).toHaveCount(0);
  await ask(page, "withoutForce", "far crane");
  const hole = page.locator('[data-hole="yes"]');
  await expect(hole).toHaveCount(1);
  // It stands where the far crane carries, as wide as that is: from its taking over to the landing.
  const box = await hole.boundingBox();
  const whole = await page.locator(".weight-line").first().boundingBox();
  expect((box?.width ?? 0) / (whole?.width ?? 1)).toBeGreaterThan(0.4);
  expect(box?.height ?? 0).toBeGreaterThan(10);
  await ask(page, "withoutForce", "");
  await expect(hole).toHaveCount(0);
});

test("the pointer drags the cursor, and every place is solved", async () => {
  const box = await picture().boundingBox();
  if (box === null) throw new Error("the picture has no place on the page");
  await page.mouse.move(box.x + box.width * 0.4, box.y + 40);
  await page.mouse.down();
  const seen: number[] = [];
  for (const part of [0.45, 0.5, 0.55, 0.6, 0.7]) {
    await page.mouse.move(box.x + box.width * part, box.y + 40);
    const { step, progress } = await place();
    seen.push(step + progress);
    const shares = Object.values(await ask(page, "shares"));
    const sum = shares.reduce((all, share) => all + (Number.isFinite(share) ? share : 0), 0);
    // What slopes turn sideways and lashings pull is below 1e-3 of the weight in this plan.
    expect(sum / json.sets[0].weight).toBeCloseTo(1, 3);
  }
  await page.mouse.up();
  expect(seen).toEqual([...seen].sort((a, b) => a - b));
  expect(new Set(seen).size).toBe(seen.length);
  await page.mouse.move(box.x + box.width * 0.5, box.y + 40);
  await expect(page.locator(".hover")).toContainText("kN");
});

test("keys move the cursor by event, by step and to both ends", async () => {
  await picture().focus();
  await page.keyboard.press("Home");
  expect(await place()).toEqual({ step: 0, progress: 0 });
  await page.keyboard.press("PageDown");
  expect(await place()).toEqual({ step: 1, progress: 0 });
  await page.keyboard.press("End");
  expect(await place()).toEqual({ step: json.sets[0].steps.length - 1, progress: 1 });
  await page.keyboard.press("PageUp");
  expect((await place()).progress).toBe(0);

  // By event from the start of the first step that has one well inside it: to the very place that the command line found.
  const event = json.sets[0].poses.find(
    ({ event: words, progress }) => !/^(start|end)?$/.test(words) && progress > 0.01 && progress < 0.99,
  );
  if (event === undefined) throw new Error("the plan has no event within a step");
  await ask(page, "setCursor", event.number - 1, 0);
  await page.keyboard.press("ArrowRight");
  const at = await place();
  expect(at.step).toBe(event.number - 1);
  // Found to 1e-9 of the step; the last bits differ between engines.
  expect(at.progress).toBeCloseTo(event.progress, 7);
  await page.keyboard.press("ArrowLeft");
  expect(await place()).toEqual({ step: event.number - 1, progress: 0 });
});

test("keys choose the view, and the blank runs and pauses", async () => {
  await page.locator("body").focus();
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  for (const [key, name] of [
    ["2", "Plan"],
    ["3", "End"],
    ["4", "Free"],
    ["1", "Elevation"],
  ] as const) {
    await page.keyboard.press(key);
    await expect(page.getByRole("button", { name: `${key} ${name}` })).toHaveAttribute(
      "aria-pressed",
      "true",
    );
  }
  await ask(page, "setCursor", 2, 0);
  await page.keyboard.press(" ");
  await expect(page.getByRole("button", { name: /^Pause/ })).toBeVisible();
  await expect.poll(async () => (await place()).step + (await place()).progress).toBeGreaterThan(2.02);
  await page.keyboard.press(" ");
  await expect(page.getByRole("button", { name: /^Run/ })).toBeVisible();
  const held = await place();
  await frames(page, 10);
  expect(await place()).toEqual(held);
});

/** Ten poses spread over those that the command line stored and that have an equilibrium. */
function tenPoses(): ResultJson["sets"][0]["poses"] {
  const all = json.sets[0].poses.filter(({ forces }) =>
    Object.values(forces).some((force) => force !== null),
  );
  return Array.from({ length: 10 }, (_, k) => all[Math.round(((all.length - 1) * k) / 9)]);
}

test("forces at ten poses are those of the command line", async () => {
  for (const pose of tenPoses()) {
    await ask(page, "setCursor", pose.number - 1, pose.progress);
    const forces = await ask(page, "forces");
    for (const [name, force] of Object.entries(pose.forces)) {
      const where = `${name} at step ${pose.number}, progress ${pose.progress}`;
      if (force === null) expect(forces[name], where).toBeNaN();
      // One unit of the sixth place behind the point of kN, as printed in CSV.
      else expect(Math.abs(forces[name] - force), where).toBeLessThanOrEqual(1e-3);
    }
  }
});

const apart = (a: Point | undefined, b: Point): number =>
  a === undefined ? Number.NaN : Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

test("what the scene draws stands where the command line says, within 1 mm, and inside the picture", async () => {
  const canvas = await page.locator(".stage canvas").boundingBox();
  if (canvas === null) throw new Error("there is no canvas");
  for (const { number, progress, world } of tenPoses()) {
    await ask(page, "setCursor", number - 1, progress);
    const where = `step ${number}, progress ${progress}`;
    await expect
      .poll(async () => apart((await ask(page, "positions"))?.nose, world.nose), { message: where })
      .toBeLessThan(1e-3);
    const drawn = await ask(page, "positions");
    expect(apart(drawn?.tail, world.tail), where).toBeLessThan(1e-3);
    for (const [id, hook] of Object.entries(world.hooks)) {
      const found = drawn?.cranes[id]?.hook ?? null;
      if (hook === null || found === null) expect(found, `hook of ${id}, ${where}`).toEqual(hook);
      else expect(apart(found, hook), `hook of ${id}, ${where}`).toBeLessThan(1e-3);
    }
    expect(Object.keys(drawn?.wheels ?? {}).sort()).toEqual(Object.keys(world.wheels).sort());
    for (const [id, wheel] of Object.entries(world.wheels))
      expect(apart(drawn?.wheels[id], wheel), `wheel ${id}, ${where}`).toBeLessThan(1e-3);
    for (const point of [world.nose, world.tail]) {
      const [x, y] = await ask(page, "project", point);
      expect(x, where).toBeGreaterThanOrEqual(canvas.x);
      expect(x, where).toBeLessThanOrEqual(canvas.x + canvas.width);
      expect(y, where).toBeGreaterThanOrEqual(canvas.y);
      expect(y, where).toBeLessThanOrEqual(canvas.y + canvas.height);
    }
  }
});

test("the table shows the solved shares of the place at the cursor", async () => {
  const pose = tenPoses()[5];
  await ask(page, "setCursor", pose.number - 1, pose.progress);
  for (const [name, share] of Object.entries(pose.shares)) {
    const cell = page.locator(`tr[data-support="${name}"] td`).first();
    if (pose.forces[name] === null) await expect(cell).toHaveText("–");
    // 0.1 kN is one unit of the last digit shown.
    else expect(Math.abs(Number(await cell.textContent()) - share / 1000), name).toBeLessThanOrEqual(0.1);
  }
  await page.getByLabel("Units").selectOption("US");
  await expect(page.locator(".reactions caption")).toContainText("kip");
  await page.getByLabel("Units").selectOption("SI");
});

test("a finding is chosen by pointer and by key: the cursor goes where it is worst", async () => {
  await drop(page, "planted-faults.json", projectFile("scenarios/planted-faults.json"));
  const { header } = JSON.parse(projectFile("scenarios/planted-faults.json")) as {
    header: { title: string };
  };
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(header.title);
  await untilReady(page);
  const findings = (await ask(page, "result"))?.findings ?? [];
  const finding = findings.find(({ level, worst }) => level === "stop" && worst !== null && worst.step > 0);
  if (finding?.worst == null) throw new Error("the plan of planted faults has no stop with a place");
  const atFinding = async () => {
    const { step, progress } = await place();
    expect(step).toBe(finding.worst?.step);
    expect(progress).toBeCloseTo(finding.worst?.progress ?? Number.NaN, 9);
  };
  const item = page.locator(`button[data-finding="${finding.id}"]`);
  await item.click();
  await atFinding();
  await expect(item).toHaveAttribute("aria-current", "true");

  await ask(page, "setCursor", 0, 0);
  await item.focus();
  await page.keyboard.press("Enter");
  await atFinding();

  // A mark in the picture: the place of the finding that it carries.
  const mark = page.locator(".share .mark").last();
  const carried = await mark.getAttribute("data-finding");
  const marked = findings.find(({ id }) => id === carried);
  await ask(page, "setCursor", 0, 0);
  await mark.click();
  expect((await place()).step).toBe(marked?.worst?.step);

  const demo = JSON.parse(projectFile("scenarios/demo.json")) as { header: { title: string } };
  await drop(page, "demo.json", projectFile("scenarios/demo.json"));
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(demo.header.title);
  await untilReady(page);
});

test("the exported CSV is the command line's: text equal, numbers within one unit of the last printed digit", async () => {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Export CSV" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^Alder-Cut.*-A\.csv$/);
  const text = readFileSync(await download.path(), "utf8");
  const [mine, theirs] = [text.split("\r\n"), csv.split("\r\n")];
  expect(mine.length).toBe(theirs.length);
  expect(mine[0]).toBe(theirs[0]);
  let numbers = 0;
  const differ: string[] = [];
  for (let i = 1; i < mine.length; i++) {
    if (mine[i] === theirs[i]) continue;
    const [a, b] = [mine[i].split(","), theirs[i].split(",")];
    if (a.length !== b.length) differ.push(`row ${i}`);
    a.forEach((cell, k) => {
      if (cell === b[k]) return;
      numbers += 1;
      const digits = /\.(\d+)$/.exec(b[k])?.[1].length ?? 0;
      // Ratios carry every digit that they have: there the last bits of two engines differ, 1e-9 is allowed.
      const allowed = Math.max(1.001 * 10 ** -digits, 1e-9);
      if (!(Math.abs(Number(cell) - Number(b[k])) <= allowed))
        differ.push(`row ${i}, cell ${k}: ${cell}, ${b[k]}`);
    });
  }
  expect(differ, `of ${numbers} cells that are not equal in text`).toEqual([]);
  expect(mine.length).toBeGreaterThan(1000);
});

test("a bad file shows all its errors, and the plan on screen stays", async () => {
  const title = await page.getByRole("heading", { level: 1 }).textContent();
  const before = await ask(page, "forces");
  const bad = JSON.parse(projectFile("scenarios/demo.json")) as {
    site: Record<string, unknown>;
    cranes: Record<string, unknown>[];
    colour?: string;
  };
  bad.site.nearBearing_m = "twelve";
  bad.cranes[0].boomLength_m = -4;
  bad.colour = "green";
  await drop(page, "bad.json", JSON.stringify(bad));
  const panel = page.getByRole("dialog");
  await expect(panel).toContainText("bad.json was not opened: 3 errors");
  for (const path of ["site.nearBearing_m", "cranes[0].boomLength_m", "colour"])
    await expect(panel.getByText(path, { exact: true })).toBeVisible();
  await expect(panel).toContainText('"twelve"');
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);
  await page.keyboard.press("Escape");
  await expect(panel).toBeHidden();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(title ?? "");
  expect(await ask(page, "forces")).toEqual(before);

  await drop(page, "broken.json", '{ "format": "handspan-plan", ');
  await expect(panel).toContainText("broken.json was not opened");
  await panel.getByRole("button", { name: "Close" }).click();
  await expect(panel).toBeHidden();
});

test("a good file that is dropped is opened and solved", async () => {
  const plan = JSON.parse(projectFile("scenarios/demo.json")) as {
    header: { title: string; revision: string };
  };
  plan.header.title = "Dropped plan";
  await drop(page, "dropped.json", JSON.stringify(plan));
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Dropped plan");
  await untilReady(page);
  expect((await ask(page, "result"))?.planHash).not.toBe(json.planHash);
  await drop(page, "demo.json", projectFile("scenarios/demo.json"));
  await expect(page.getByRole("heading", { level: 1 })).not.toHaveText("Dropped plan");
  await untilReady(page);
  expect((await ask(page, "result"))?.planHash).toBe(json.planHash);
});

test("every one of 200 moves of the cursor is solved at once; the longest is printed", async () => {
  test.setTimeout(240_000);
  await ask(page, "setGlOff", true);
  const { longest, unsolved } = await page.evaluate(async () => {
    type Scrubbed = Pick<Handle, "setCursor" | "shares">;
    const handle = (window as unknown as { __handspan: Scrubbed }).__handspan;
    const spent: number[] = [];
    let unsolved = 0;
    for (let i = 0; i <= 200; i++) {
      const start = performance.now();
      handle.setCursor(Math.floor(i / 10), (i % 10) / 10);
      const shares = Object.values(handle.shares());
      if (!shares.some((share) => share > 0)) unsolved++;
      // A message comes after the work that the change has queued, and before the next frame.
      await new Promise<void>((resolve) => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => resolve();
        channel.port2.postMessage(null);
      });
      spent.push(performance.now() - start);
      await new Promise((resolve) => requestAnimationFrame(resolve));
    }
    return { longest: spent.sort((a, b) => b - a).slice(0, 5), unsolved };
  });
  await ask(page, "setGlOff", false);
  const times = longest.map((ms) => ms.toFixed(1)).join(", ");
  // Printed, not judged: what else the machine does is no fault of the page.
  console.log(`  longest of 200 moves of the cursor: ${times} ms (aim: under 50 each)`);
  expect(unsolved).toBe(0);
});

test("nothing stands in the way of people with other eyes and hands, in both themes", async () => {
  const info = test.info();
  await ask(page, "setCursor", 9, 0.4);
  for (const theme of ["dark", "light"] as const) {
    await page.getByLabel("Theme").selectOption(theme);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`)).toEqual(
      [],
    );
    for (const [width, height] of [
      [1920, 1080],
      [1280, 720],
    ]) {
      await page.setViewportSize({ width, height });
      await frames(page);
      const path = info.outputPath(`plan-${theme}-${width}x${height}.png`);
      await page.screenshot({ path });
      await info.attach(`plan ${theme} ${width} x ${height}`, { path, contentType: "image/png" });
      const fits = await page.evaluate(() => document.documentElement.scrollHeight <= window.innerHeight);
      expect(fits, `${width} x ${height} without scrolling`).toBe(true);
    }
  }
});
