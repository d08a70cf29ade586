// A page that is comfortable: zoomed to twice and three times its size nothing is lost or covered, targets are large enough
// for a finger, the focus is always seen, and nothing moves by itself when results come.
import { expect, type Page, test } from "@playwright/test";
import { ask, frames, untilAllIsThere } from "./handle.ts";
import { onePage } from "./onePage.ts";

let page: Page;

onePage("/", (opened) => {
  page = opened;
});

/** 1920 x 1080 zoomed to 200 %, and 1280 x 720 zoomed to 200 % (WCAG 2.2, 1.4.4 and 1.4.10), CSS px. */
const zoomed = [
  [960, 540],
  [640, 360],
] as const;

/** Controls that cannot be brought into sight or are covered there, and those that are smaller than 24 px (WCAG 2.2, 2.5.8). */
function faultsOfControls(): Promise<string[]> {
  return page.evaluate(() => {
    const faults: string[] = [];
    const dialog = document.querySelector("dialog[open]");
    const all = (dialog ?? document).querySelectorAll<HTMLElement>(
      'button, select, textarea, summary, input:not([type="file"]), [role="option"]',
    );
    for (const one of all) {
      if (!one.checkVisibility({ visibilityProperty: true })) continue;
      const name = `${one.tagName.toLowerCase()} "${(one.getAttribute("aria-label") ?? one.textContent ?? "").trim().slice(0, 30)}"`;
      one.scrollIntoView({ block: "center", inline: "center" });
      const box = one.getBoundingClientRect();
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      if (x < 0 || y < 0 || x > innerWidth || y > innerHeight) {
        faults.push(`${name} cannot be brought into sight`);
        continue;
      }
      const there = document.elementFromPoint(x, y);
      if (there === null || !(one.contains(there) || there.contains(one)))
        faults.push(`${name} is covered by ${there?.tagName} ${there?.className}`);
      // A check box or radio has the label around it as its target.
      const target = one.closest("label")?.getBoundingClientRect() ?? box;
      if (Math.max(target.height, box.height) < 23.9 || Math.max(target.width, box.width) < 23.9)
        faults.push(`${name} is ${box.width.toFixed(0)} x ${box.height.toFixed(0)} px`);
    }
    if (document.documentElement.scrollWidth > innerWidth) faults.push("the page scrolls sideways");
    return faults;
  });
}

async function act(words: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await page.getByRole("combobox", { name: "Words of the action" }).fill(words);
  await page.keyboard.press("Enter");
  await frames(page, 6);
}

for (const [width, height] of zoomed)
  test(`at ${width} x ${height} every control can be reached, is not covered and is large enough`, async () => {
    test.setTimeout(400_000);
    await page.setViewportSize({ width, height });
    for (const key of ["1", "f", "b", "g", "h"]) {
      await page.locator("body").press(key);
      await frames(page, 6);
      expect.soft(await faultsOfControls(), `after key ${key}`).toEqual([]);
    }
    await page.keyboard.press("Control+k");
    expect.soft(await faultsOfControls(), "the finder").toEqual([]);
    await page.keyboard.press("Escape");
    for (const words of ["edit header", "edit limits", "edit people"]) {
      await act(words);
      await expect(page.locator(".data-part h2").first()).toBeVisible();
      expect.soft(await faultsOfControls(), words).toEqual([]);
    }
    await act("put away");
    for (const words of ["new plan", "sets side by side", "plans that were open lately", "all keys"]) {
      await act(words);
      await expect(page.locator("dialog[open]")).toBeVisible();
      await frames(page, 6);
      expect.soft(await faultsOfControls(), words).toEqual([]);
      await page.keyboard.press("Escape");
      await expect(page.locator("dialog[open]")).toHaveCount(0);
    }
    await page.setViewportSize({ width: 1280, height: 720 });
  });

test("whatever has the focus shows it", async () => {
  await page.keyboard.press("Tab");
  const hidden = await page.evaluate(() => {
    const faults: string[] = [];
    const all = document.querySelectorAll<HTMLElement | SVGElement>(
      'button, select, summary, input:not([type="file"]), [tabindex]:not([tabindex="-1"])',
    );
    for (const one of all) {
      if (!one.checkVisibility({ visibilityProperty: true }) || one.matches(":disabled")) continue;
      one.focus({ focusVisible: true } as FocusOptions);
      if (document.activeElement !== one) continue;
      const { outlineStyle, outlineWidth } = getComputedStyle(one);
      if (outlineStyle === "none" || Number.parseFloat(outlineWidth) < 1.5)
        faults.push(one.outerHTML.slice(0, 120));
    }
    return faults;
  });
  expect(hidden).toEqual([]);
});

test("nothing moves by itself: not while scrubbing, not when the results of an edit come", async () => {
  test.setTimeout(240_000);
  await page.evaluate(() => {
    const seen = { sum: 0, of: [] as string[] };
    (window as unknown as { __shifts: typeof seen }).__shifts = seen;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & {
        value: number;
        hadRecentInput: boolean;
        sources: { node: Element | null }[];
      })[]) {
        if (entry.hadRecentInput) continue;
        // A number that is set to the right begins further left when it has a digit more: the text is its own and moves
        // nothing. Findings are listed by level and history by time, so that a new one stands above those that are there.
        const moved = entry.sources.filter(
          ({ node }) => node instanceof Element && node.closest(".findings, .history") === null,
        );
        if (moved.length === 0) continue;
        seen.sum += entry.value;
        for (const { node } of moved) seen.of.push((node as Element).outerHTML.slice(0, 120));
      }
    }).observe({ type: "layout-shift" });
  });
  const shifts = async () =>
    page.evaluate(() => (window as unknown as { __shifts: { sum: number; of: string[] } }).__shifts);
  for (let i = 0; i <= 40; i++) {
    await ask(page, "setCursor", Math.floor(i / 2), (i % 2) * 0.5);
    await frames(page, 1);
  }
  const scrubbed = await shifts();
  await page.evaluate(() => {
    const handle = (window as unknown as { __handspan: { edit: (...all: unknown[]) => void } }).__handspan;
    handle.edit("Wind of a step", ["sets", 0, "steps", 3, "windLimit_m_per_s"], 6.5);
  });
  await frames(page, 3);
  await untilAllIsThere(page);
  await frames(page, 3);
  const edited = await shifts();
  console.log(
    `  layout shift without input: ${scrubbed.sum} in a scrub, ${edited.sum - scrubbed.sum} in an edit`,
  );
  expect([...new Set(edited.of)]).toEqual([]);
  expect(edited.sum).toBe(0);
});
