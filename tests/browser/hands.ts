// The hands of a planner: clicks, keys and typed texts of a test go through them and are counted.
import { readFileSync } from "node:fs";
import { expect, type Locator, type Page } from "@playwright/test";
import type { Plan } from "../../src/plan/index.ts";

/** What a planner does with a page, counted: one click, one key (with what is held down) or one typed text is one action. */
export class Hands {
  count = 0;
  readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }

  async click(what: Locator): Promise<void> {
    this.count++;
    await what.click();
  }

  async press(...keys: string[]): Promise<void> {
    for (const key of keys) {
      this.count++;
      await this.page.keyboard.press(key);
    }
  }

  async type(text: string): Promise<void> {
    this.count++;
    await this.page.keyboard.type(text);
  }

  /** Chooses an entry of a list that the page draws as a native one. */
  async choose(list: Locator, entry: string | { label: string }): Promise<void> {
    this.count++;
    await list.selectOption(entry);
  }

  /** Goes on by Tab until something has the focus. */
  async tabTo(what: Locator, most = 80): Promise<void> {
    for (let i = 0; i < most; i++) {
      if (await what.evaluate((it) => it === document.activeElement)) return;
      await this.press("Tab");
    }
    await expect(what).toBeFocused();
  }

  /** Types over what a cell with the focus holds, and takes it. */
  async over(text: string, take = "Enter"): Promise<void> {
    await this.press("F2", "Control+a");
    await this.type(text);
    await this.press(take);
  }
}

/** What the page tells of its document, in short. */
export interface DocumentInShort {
  name: string;
  draftHash: string;
  planHash: string;
  errors: string[];
  labels: string[];
  index: number;
  changes: number;
  opened: number;
}

export const documentOf = (page: Page): Promise<DocumentInShort> =>
  page.evaluate(() =>
    (window as unknown as { __handspan: { document(): DocumentInShort } }).__handspan.document(),
  );

/** Waits until the result on screen is that of the document as it stands. */
export const untilAnswered = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    () => {
      const handle = (
        window as unknown as {
          __handspan: {
            ready(): boolean;
            document(): { draftHash: string } | null;
            result(): { planHash: string } | null;
          };
        }
      ).__handspan;
      return handle.ready() && handle.result()?.planHash === handle.document()?.draftHash;
    },
    undefined,
    { timeout: 120_000 },
  );

/** The plan as a file would hold it: downloaded by the finder and read. */
export async function planIn(page: Page): Promise<Plan> {
  const waiting = page.waitForEvent("download");
  await page.keyboard.press("Control+k");
  const field = page.getByRole("combobox", { name: "Words of the action" });
  await field.fill("Download the plan");
  await field.press("Enter");
  await expect(page.locator("#found")).toHaveCount(0);
  return JSON.parse(readFileSync(await (await waiting).path(), "utf8")) as Plan;
}
