// Work is never lost: pages closed amid an edit, two pages at once, storage that is forbidden or full; history by keyboard.
import AxeBuilder from "@axe-core/playwright";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { projectFile } from "./handle.ts";
import { faultsOf } from "./page.ts";

interface DocumentInShort {
  name: string;
  draftHash: string;
  planHash: string;
  errors: string[];
  labels: string[];
  index: number;
  changes: number;
}
interface Handle {
  document(): DocumentInShort | null;
  edit(label: string, path: (string | number)[], value: unknown): void;
  undo(): void;
  redo(): void;
}
type InPage = { __handspan?: Handle };

let context: BrowserContext;
let faults: string[][] = [];

test.beforeEach(async ({ browser, baseURL }) => {
  context = await browser.newContext({
    viewport: { width: 1280, height: 720 },
    baseURL: baseURL ?? "",
    serviceWorkers: "block",
    acceptDownloads: true,
  });
  faults = [];
});

test.afterEach(async () => {
  await context.close();
  expect(faults.flat(), "faults of the pages during this test").toEqual([]);
});

/** A new page of the same browser; it is there when a plan is open. */
async function pageAt(address = "/"): Promise<Page> {
  const page = await context.newPage();
  faults.push(await faultsOf(page, test.info().project.use.baseURL));
  await page.goto(address);
  await opened(page);
  return page;
}

const opened = (page: Page) =>
  page.waitForFunction(() => (window as InPage).__handspan?.document?.() != null, undefined, {
    timeout: 40_000,
  });

async function shortOf(page: Page): Promise<DocumentInShort> {
  const short = await page.evaluate(() => (window as InPage).__handspan?.document() ?? null);
  if (short === null) throw new Error("nothing is open");
  return short;
}

const edit = (page: Page, label: string, path: (string | number)[], value: unknown) =>
  page.evaluate(([words, place, given]) => (window as InPage).__handspan?.edit(words, place, given), [
    label,
    path,
    value,
  ] as const);

const kept = (page: Page) => expect(page.getByText(/^kept in this browser \d\d:\d\d$/)).toBeVisible();

test("closed amid an edit twenty times, the work is there again, with nothing older than a second lost", async () => {
  test.setTimeout(240_000);
  const lost: number[] = [];
  let page = await pageAt();
  for (let round = 0; round < 20; round++) {
    // Edits come all the time, each saying when it was made, also while the page is being closed.
    await page.evaluate((n) => {
      const work = () => {
        (window as InPage).__handspan?.edit(`note of round ${n}`, ["header", "notes"], `${n} ${Date.now()}`);
        setTimeout(work, 15 + Math.random() * 40);
      };
      work();
    }, round);
    await page.waitForTimeout(120 + ((round * 137) % 400));
    const closed = Date.now();
    if (round % 4 === 1) await page.reload();
    else if (round % 4 === 3) await page.goto("about:blank");
    if (round % 4 === 1) await opened(page);
    else {
      // As a tab is closed by its cross, and as it is ended without being asked.
      await page.close({ runBeforeUnload: round % 4 === 2 });
      page = await pageAt();
    }
    const last = (await shortOf(page)).labels[0];
    expect(last).toBe(`Recovered, last: note of round ${round}`);
    const text = await page.evaluate(
      () =>
        new Promise<string>((resolve, reject) => {
          const request = indexedDB.open("handspan");
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {
            const all = request.result.transaction("work").objectStore("work").getAll();
            all.onsuccess = () => {
              const works = all.result as { draft: string; at: number }[];
              resolve(works.sort((a, b) => b.at - a.at)[0].draft);
            };
          };
        }),
    );
    const [n, made] = (JSON.parse(text) as { header: { notes: string } }).header.notes.split(" ").map(Number);
    expect(n).toBe(round);
    lost.push(Math.max(0, closed - made));
    await expect(page.getByRole("region", { name: "Recovered" })).toContainText("not saved to a file");
  }
  console.log(`time between the last edit found again and the closing, ms: ${lost.join(", ")}`);
  expect(Math.max(...lost)).toBeLessThan(1000);
});

test("a hundred edits undone and redone give the same content hash; history goes by keyboard and pointer", async () => {
  test.setTimeout(180_000);
  const page = await pageAt();
  const first = (await shortOf(page)).draftHash;
  for (let i = 1; i <= 100; i++) await edit(page, `Revision ${i}`, ["header", "revision"], `R${i}`);
  const last = (await shortOf(page)).draftHash;
  expect(last).not.toBe(first);
  for (let i = 0; i < 100; i++) await page.keyboard.press("Control+z");
  expect(await shortOf(page)).toMatchObject({ index: 0, draftHash: first, changes: 0 });
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  for (let i = 0; i < 60; i++) await page.keyboard.press("Control+y");
  for (let i = 0; i < 40; i++) await page.keyboard.press("Control+Shift+z");
  expect(await shortOf(page)).toMatchObject({ index: 100, draftHash: last, changes: 100 });
  // The panels stand once the plan is solved.
  await expect(page.getByRole("tab", { name: /History/ })).toBeVisible({ timeout: 60_000 });
  await page.keyboard.press("h");
  await expect(page.getByRole("tab", { name: /History/ })).toBeFocused();
  const entries = page.getByRole("list", { name: "History, newest first" }).getByRole("button");
  await expect(entries).toHaveCount(101);
  await page.keyboard.press("Tab");
  await expect(entries.first()).toBeFocused();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  expect(await shortOf(page)).toMatchObject({ index: 98 });
  await page.keyboard.press("End");
  await page.keyboard.press("Enter");
  expect(await shortOf(page)).toMatchObject({ index: 0, draftHash: first });
  await entries.filter({ hasText: "Revision 57" }).click();
  expect(await shortOf(page)).toMatchObject({ index: 57 });
  await expect(page.getByRole("button", { name: "Undo: Revision 57" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Redo: Revision 58" })).toBeVisible();
  // Undo of letters just typed is the field's own.
  await page.keyboard.press("f");
  const field = page.getByPlaceholder("words");
  await field.fill("abc");
  await page.keyboard.press("Control+z");
  expect(await shortOf(page)).toMatchObject({ index: 57 });
});

test("two pages keep their work apart; put away, work is under Recent until it is deleted there", async () => {
  const [one, two] = [await pageAt(), await pageAt("/?example=one-girder")];
  await edit(one, "Title changed", ["header", "title"], "Work of one");
  await edit(two, "Title changed", ["header", "title"], "Work of two");
  await Promise.all([kept(one), kept(two)]);
  const third = await pageAt("/?example=one-girder");
  await expect(third.locator(".notice")).toHaveCount(0);
  await third.close();
  const hashes = [await shortOf(one), await shortOf(two)].map(({ draftHash }) => draftHash);
  await one.close();
  await two.close();
  const page = await pageAt();
  expect((await shortOf(page)).draftHash).toBe(hashes[1]);
  const notice = page.getByRole("region", { name: "Recovered" });
  await expect(notice).toContainText("Work of two, last changed");
  await expect(notice).toContainText("1 change not saved to a file");
  await expect(notice).toContainText("Work of one");
  await notice.getByRole("button", { name: "Put it away" }).click();
  await expect(page.getByRole("heading", { level: 1 })).not.toHaveText(/Work of/);
  await page.getByRole("button", { name: "Open it" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Work of one");
  expect((await shortOf(page)).draftHash).toBe(hashes[0]);
  await page.getByRole("button", { name: "Recent" }).click();
  const list = page.getByRole("dialog", { name: "Plans that were open lately" });
  await expect(list).toContainText("put away with 1 change that no file holds");
  await list.getByRole("button", { name: "Take Work of two off the list" }).click();
  await expect(list).not.toContainText("Work of two");
});

test("forbidden storage is said with the offer to download, and editing goes on", async () => {
  await context.addInitScript(() => {
    Object.defineProperty(globalThis, "indexedDB", {
      get() {
        throw new DOMException("storage is off", "SecurityError");
      },
    });
  });
  const page = await pageAt();
  await edit(page, "Title changed", ["header", "title"], "Mine");
  const notice = page.getByRole("alert", { name: "Changes are not kept" });
  await expect(notice).toContainText("forbids storage here");
  await edit(page, "Title changed", ["header", "title"], "Mine again");
  const asked = page.waitForEvent("dialog");
  await page.close({ runBeforeUnload: true });
  const dialog = await asked;
  expect(dialog.type()).toBe("beforeunload");
  await dialog.dismiss();
  const waiting = page.waitForEvent("download");
  await notice.getByRole("button", { name: "Download the plan" }).click();
  const stream = await (await waiting).createReadStream();
  let text = "";
  for await (const part of stream) text += String(part);
  expect((JSON.parse(text) as { header: { title: string } }).header.title).toBe("Mine again");
  await expect(notice).toHaveCount(0);
});

test("a full disk is said while it is full, and no longer when there is room again", async () => {
  const page = await pageAt();
  await page.evaluate(() => {
    const real = IDBObjectStore.prototype.put;
    Object.assign(window, { real });
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("no room", "QuotaExceededError");
    };
  });
  await edit(page, "Title changed", ["header", "title"], "Mine");
  await expect(page.getByRole("alert")).toContainText("the storage of this browser is full");
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = (window as unknown as { real: IDBObjectStore["put"] }).real;
  });
  await edit(page, "Title changed", ["header", "title"], "Mine again");
  await kept(page);
  await expect(page.getByRole("alert")).toHaveCount(0);
});

test("errors of the draft are told at the foot, nothing on the page moves, and the last good plan stays", async () => {
  test.setTimeout(180_000);
  const page = await pageAt();
  await expect(page.getByRole("tab", { name: /Findings/ })).toBeVisible({ timeout: 60_000 });
  const good = await shortOf(page);
  const boxes = async () =>
    Promise.all(
      [".stage", ".operation", "aside", "footer", ".tabs", "header.top"].map((one) =>
        page.locator(one).boundingBox(),
      ),
    );
  const before = await boxes();
  await edit(page, "Mass of the front train -3 t", ["transporters", 0, "mass_t"], -3);
  const bar = page.getByRole("button", { name: /1 error in the plan/ });
  await expect(bar).toContainText("transporters[0].mass_t: found -3");
  await expect(page.getByText("Old: the last plan without errors")).toBeVisible();
  expect(await boxes()).toEqual(before);
  const now = await shortOf(page);
  expect(now.planHash).toBe(good.planHash);
  expect(now.draftHash).not.toBe(good.draftHash);
  await bar.click();
  await expect(page.getByRole("region", { name: "Errors in the plan" }).getByRole("listitem")).toHaveCount(1);
  for (const theme of ["Light", "Dark"]) {
    await page.getByLabel("Theme").selectOption(theme);
    const found = await new AxeBuilder({ page }).analyze();
    expect(found.violations.map(({ id, nodes }) => [id, nodes.map(({ target }) => target)])).toEqual([]);
  }
  await page.keyboard.press("Control+z");
  await expect(bar).toHaveCount(0);
  expect((await shortOf(page)).draftHash).toBe(good.draftHash);
});

test("a plan that the server hands out is opened by its address; errors in it are shown", async () => {
  const text = projectFile("scenarios/one-girder.json");
  let answer = text.replace(/"title": "[^"]*"/, '"title": "Handed out"');
  await context.route("**/given/mine.json", (route) =>
    route.fulfill({ body: answer, contentType: "application/json" }),
  );
  const page = await pageAt("/?open=given%2Fmine.json");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Handed out");
  expect((await shortOf(page)).name).toBe("mine.json");
  answer = text.slice(0, 900);
  await page.reload();
  const dialog = page.getByRole("dialog");
  await expect(dialog).toContainText("mine.json was not opened: 1 error");
  await expect(dialog).toContainText("which is not JSON");
});
