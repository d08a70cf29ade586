// What the page answers to tests, and the command line's answer to the same plan.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "@playwright/test";
import type { ResultJson } from "../../src/report/index.ts";
import type { World } from "../../src/sequence/index.ts";

const top = fileURLToPath(new URL("../..", import.meta.url));

/** Text of a file of the project. */
export const projectFile = (path: string): string => readFileSync(join(top, path), "utf8");

/** Solves a scenario by the command line, as a user would. */
export function solvedByCommandLine(scenario: string): { json: ResultJson; csv: string } {
  const folder = mkdtempSync(join(tmpdir(), "handspan-"));
  const [csv, json] = [join(folder, "out.csv"), join(folder, "out.json")];
  const words = [
    join(top, "tests/tools/handspan.mjs"),
    "solve",
    join(top, scenario),
    "--csv",
    csv,
    "--json",
    json,
  ];
  const end = spawnSync(process.execPath, words, { cwd: top, encoding: "utf8" });
  // 0: no stop; 1: a finding of level stop. Anything else gives no answer to compare with.
  if (end.status !== 0 && end.status !== 1)
    throw new Error(`the command line ended with ${end.status}: ${end.stderr}${end.stdout}`);
  const answer = {
    json: JSON.parse(readFileSync(json, "utf8")) as ResultJson,
    csv: readFileSync(csv, "utf8"),
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
    findings: { id: string; level: string; worst: { step: number; progress: number } | null }[];
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
