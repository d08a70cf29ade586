// The finder of actions by keyboard and as screen readers are told of it, and rules and limits set in their form.
import { expect, type Page, test } from "@playwright/test";
import { ask } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;

onePage(
  "/",
  (opened) => {
    page = opened;
  },
  "solved",
);

const field = () => page.getByRole("combobox", { name: "Words of the action" });
const chosen = () => page.locator('.finder [role="option"][aria-selected="true"]');

/** What the history of the document says last. */
const lastEntry = () =>
  page.evaluate(() => {
    const handle = (window as unknown as { __handspan: { document(): { labels: string[] } | null } })
      .__handspan;
    return handle.document()?.labels.at(-1);
  });

test("typed words find an action; the field names the line that Enter does; the focus comes back", async () => {
  await page.getByRole("button", { name: "Find an action" }).focus();
  await page.keyboard.press("Control+k");
  await expect(field()).toBeFocused();
  await field().fill("go to step");
  const id = await chosen().getAttribute("id");
  expect(await field().getAttribute("aria-activedescendant")).toBe(id);
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await expect(chosen()).toHaveText(/Go to step 3/);
  await page.keyboard.press("Enter");
  await expect(page.locator("dialog[open]")).toHaveCount(0);
  expect(await ask(page, "cursor")).toMatchObject({ step: 2, progress: 0 });
  await expect(page.getByRole("button", { name: "Find an action" })).toBeFocused();
});

test("what cannot be done says why, and stays in the list", async () => {
  await page.locator("body").press("/");
  await field().fill("undo");
  await expect(chosen()).toHaveText(/not now: nothing was changed/);
  await expect(chosen()).toHaveAttribute("aria-disabled", "true");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("dialog").getByRole("status")).toHaveText(
    "Undo is not possible now: nothing was changed.",
  );
  await page.keyboard.press("Escape");
  // At once again: the dialog that was closed is not in the way.
  await page.keyboard.press("Control+k");
  await expect(field()).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(page.locator("dialog[open]")).toHaveCount(0);
});

test("the sheet of keys opens by its key and names every single one of the list", async () => {
  await page.locator("body").press("?");
  const sheet = page.getByRole("dialog", { name: "All keys" });
  await expect(sheet).toBeVisible();
  for (const words of ["Find an action", "Save to the plan's file", "Step on", "Plan data", "Put away"])
    await expect(sheet.locator("dd", { hasText: new RegExp(`^${words}$`) })).toHaveCount(1);
  await page.keyboard.press("Escape");
});

test("a rule is switched, a limit tightened, then overridden by name: each an entry of the history", async () => {
  await page.keyboard.press("Control+k");
  await field().fill("rules");
  await page.keyboard.press("Enter");
  const form = page.locator(".limits-form");
  await form.getByRole("checkbox", { name: /^railway-150/ }).press("Space");
  expect(await lastEntry()).toBe("Use rule railway-150");
  const line = form.getByRole("button", { name: /^tandem use/ });
  await expect(line).toHaveText(/at most 75 %.*rule tandem-75/);
  await line.press("Enter");
  const set = async (value: string, button: string) => {
    await form.getByLabel("value", { exact: true }).fill(value);
    await form.getByLabel("source", { exact: true }).fill("letter 12");
    await form.getByLabel("chosen by", { exact: true }).fill("lifting engineer");
    await page.keyboard.press("Tab");
    await form.getByRole("button", { name: button }).press("Enter");
  };
  await set("70", "Set the limit");
  expect(await lastEntry()).toBe("tandem use: own limit 70 %");
  await expect(line).toHaveText(/at most 70 %.*chosen by lifting engineer/);
  await set("80", "Override the limit");
  expect(await lastEntry()).toBe("tandem use: override 80 %, looser than rule tandem-75");
  await expect(line).toHaveText(/at most 80 %.*an override, looser than the rules/);
  await form.getByRole("button", { name: "Take the override away" }).press("Enter");
  await expect(line).toHaveText(/at most 70 %/);
  await form.getByRole("button", { name: "Set the limit" }).press("Enter");
  await expect(form.getByRole("alert")).toHaveText(/Type the value first/);
});
