// solve --spread: what it prints and writes, and how a word that it does not know is refused.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { smallPlan, steps } from "../report/plans.ts";
import { bundle } from "../tools/handspan.mjs";
import { parseCsv } from "../tools/recompute.mjs";

const folder = mkdtempSync(join(tmpdir(), "handspan-cli-"));
let program = "";

beforeAll(async () => {
  program = await bundle();
  const plan = smallPlan([steps.tie, { ...steps.roll, distance_m: 20 }]);
  writeFileSync(join(folder, "calm.json"), JSON.stringify(plan));
}, 120_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const run = (...words: string[]) =>
  spawnSync(process.execPath, [program, ...words], { cwd: folder, encoding: "utf8" });
const text = (name: string) => readFileSync(join(folder, name), "utf8");

test("prints the worst values with their corners, and writes low and high behind every share", () => {
  const files = ["--csv", "out.csv", "--json", "out.json"];
  const { stdout, stderr, status } = run("solve", "calm.json", "--spread", "chosen", ...files);
  expect(stderr).toBe("");
  expect([0, 1]).toContain(status);
  expect(stdout).toMatch(/^spread over \d+ corners of what is uncertain/m);
  expect(stdout).toMatch(/^front left high +[\d.]+ +step \d+ at .*weight \+/m);
  expect(stdout).toMatch(/^group load, .* % .*weight \+/m);
  const rows = parseCsv(text("out.csv"));
  const names = Object.keys(rows[0]);
  expect(names.slice(names.indexOf("share_kN"), names.indexOf("load_kN"))).toEqual([
    "share_kN",
    "share_low_kN",
    "share_high_kN",
  ]);
  const metadata = JSON.parse(text("out.csv-metadata.json"));
  expect(metadata.tableSchema.columns.map((c: { name: string }) => c.name)).toEqual(names);
  let apart = 0;
  for (const r of rows) {
    if (r.band !== "yes") expect([r.share_low_kN, r.share_high_kN]).toEqual(["", ""]);
    else {
      // Half a unit of the sixth place behind the point is the most that a cell is off.
      expect(Number(r.share_low_kN)).toBeLessThanOrEqual(Number(r.share_kN) + 1e-6);
      expect(Number(r.share_high_kN)).toBeGreaterThanOrEqual(Number(r.share_kN) - 1e-6);
      if (Number(r.share_high_kN) - Number(r.share_low_kN) > 1) apart++;
    }
  }
  expect(apart).toBeGreaterThan(50);
  const [set] = JSON.parse(text("out.json")).sets;
  expect(set.spread.worst.length).toBeGreaterThan(5);
  expect(set.spread.supports).toHaveLength(set.supports.length);
}, 60_000);

test("without it there is no such column and no such section", () => {
  const { stdout } = run("solve", "calm.json", "--csv", "plain.csv", "--json", "plain.json");
  expect(stdout).not.toMatch(/spread over/);
  expect(text("plain.csv").split("\r\n")[0]).not.toMatch(/share_low/);
  expect(JSON.parse(text("plain.json")).sets[0].spread).toBeNull();
}, 60_000);

test("another word is bad input: code 2, with what is allowed", () => {
  const { stderr, stdout, status } = run("solve", "calm.json", "--spread", "some");
  expect(status).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toBe("--spread: found 'some'; allowed: chosen or all. Choose one of them.\n");
}, 60_000);
