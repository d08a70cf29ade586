// What the page answers to tests, and the command line's answer to the same plan.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, type Page } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import type { World } from "../../src/sequence/index.ts";

const top = fileURLToPath(new URL("../..", import.meta.url));

/** Text of a file of the project. */
export const projectFile = (path: string): string => readFileSync(join(top, path), "utf8");

/** The command line's answer: both files, and what it prints. */
export interface Solved {
  json: ResultJson;
  csv: string;
  out: string;
}

/** Solves a scenario by the command line, as a user would; `more` are further words, such as those for the spread. */
export function solvedByCommandLine(scenario: string, more: readonly string[] = []): Solved {
  return solvedText(projectFile(scenario), more);
}

/** Solves the text of a plan by the command line. */
export function solvedText(plan: string, more: readonly string[] = []): Solved {
  const folder = mkdtempSync(join(tmpdir(), "handspan-"));
  const [file, csv, json] = [join(folder, "plan.json"), join(folder, "out.csv"), join(folder, "out.json")];
  writeFileSync(file, plan);
  const words = [join(top, "tests/tools/handspan.mjs"), "solve", file, "--csv", csv, "--json", json, ...more];
  const end = spawnSync(process.execPath, words, { cwd: top, encoding: "utf8" });
  // 0: no stop; 1: a finding of level stop. Anything else gives no answer to compare with.
  if (end.status !== 0 && end.status !== 1)
    throw new Error(`the command line ended with ${end.status}: ${end.stderr}${end.stdout}`);
  const answer = {
    json: JSON.parse(readFileSync(json, "utf8")) as ResultJson,
    csv: readFileSync(csv, "utf8"),
    out: end.stdout,
  };
  rmSync(folder, { recursive: true });
  return answer;
}

/** A point in the world: chainage, left, elevation, m. */
export type Point = [number, number, number];

/** The parts of `window.__handspan` that tests use: the app's and the scene's. */
export interface Handle {
  withoutForce(support: string): void;
  ready(): boolean;
  setCursor(step: number, progress: number): void;
  cursor(): { set: number; step: number; progress: number };
  forces(): Record<string, number>;
  shares(): Record<string, number>;
  result(): {
    planHash: string;
    sets: { weight: number; steps: string[]; poses: number }[];
    findings: {
      id: string;
      level: string;
      check: string;
      subject: string;
      from: { step: number; progress: number } | null;
      to: { step: number; progress: number } | null;
      worst: { step: number; progress: number } | null;
    }[];
  } | null;
  positions(): World | null;
  project(point: Point): [number, number];
  setGlOff(off: boolean): void;
}

/** Calls one of the page's answers. */
export function ask<K extends keyof Handle>(
  page: Page,
  name: K,
  ...words: Parameters<Handle[K]>
): Promise<ReturnType<Handle[K]>> {
  return page.evaluate(
    ([key, given]) => {
      const handle = (window as unknown as { __handspan: Record<string, (...all: unknown[]) => unknown> })
        .__handspan;
      return handle[key](...given);
    },
    [name, words] as const,
  ) as Promise<ReturnType<Handle[K]>>;
}

/** Waits until the plan is solved and a pose stands at the cursor. */
export async function untilReady(page: Page): Promise<void> {
  await page.waitForFunction(
    () => (window as unknown as { __handspan?: { ready?: () => boolean } }).__handspan?.ready?.() === true,
    undefined,
    { timeout: 40_000 },
  );
}

/** Opens the text of a plan by the button for files, and waits until it is solved. */
export async function openPlan(page: Page, text: string): Promise<void> {
  const { header } = JSON.parse(text) as { header: { title: string } };
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: "plan.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await page.locator("h1", { hasText: header.title }).waitFor();
  await untilReady(page);
}

/** Lets the page draw some frames: what a change brings is on the screen then. */
export function frames(page: Page, count = 3): Promise<void> {
  return page.evaluate(
    (left) =>
      new Promise<void>((resolve) => {
        const next = (n: number) => (n <= 0 ? resolve() : requestAnimationFrame(() => next(n - 1)));
        next(left);
      }),
    count,
  );
}

/** Waits until the foot of the page says so: a state, and no span of time. */
export async function untilStage(page: Page, stage: RegExp, timeout = 240_000): Promise<void> {
  await expect(page.locator(".behind")).toHaveAttribute("data-stage", stage, { timeout });
}

/** Waits until nothing is being worked out behind the numbers any more. */
export const untilAllIsThere = (page: Page): Promise<void> => untilStage(page, /^everything is worked out$/);

/** Drops a text as a file on the page, as from a folder. */
export async function drop(page: Page, name: string, text: string): Promise<void> {
  await page.evaluate(
    ([file, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content], file, { type: "application/json" }));
      for (const kind of ["dragover", "drop"])
        window.dispatchEvent(
          new DragEvent(kind, { dataTransfer: transfer, bubbles: true, cancelable: true }),
        );
    },
    [name, text] as const,
  );
}
