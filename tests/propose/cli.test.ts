// The command `propose`: its exit codes, what it prints and the plan that it writes.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bundle } from "../tools/handspan.mjs";
import { strippedDemo } from "./sites.ts";

const folder = mkdtempSync(join(tmpdir(), "handspan-propose-"));
let program = "";

beforeAll(async () => {
  program = await bundle();
}, 300_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function run(...words: string[]): { code: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    encoding: "utf8",
  });
  return { code: status, out: stdout, err: stderr };
}

test("a set that the plan does not have is bad input, code 2, and nothing is written", () => {
  writeFileSync(join(folder, "demo.json"), JSON.stringify(strippedDemo()));
  const { code, err } = run("propose", "demo.json", "--set", "set-9", "--out", "none.json");
  expect(code).toBe(2);
  expect(err).toMatch(/--set: found 'set-9'; allowed: the plan's sets, set-1/);
  expect(existsSync(join(folder, "none.json"))).toBe(false);
});

test("a plan that lacks a machine has no sequence, code 3, and says which", () => {
  const plan = strippedDemo();
  plan.transporters = plan.transporters.filter((t) => t.kind !== "front");
  plan.lashings = [];
  writeFileSync(join(folder, "lacks.json"), JSON.stringify(plan));
  const { code, out } = run("propose", "lacks.json", "--out", "none.json");
  expect(code).toBe(3);
  expect(out).toMatch(/impossible: .*lacks a front transporter/);
  expect(existsSync(join(folder, "none.json"))).toBe(false);
});

test("a girder with its machines gets a plan that can be read and solved, code 0", () => {
  const file = new URL("../../scenarios/one-girder.json", import.meta.url).pathname;
  const { code, out } = run("propose", file, "--out", "girder.json");
  expect(code).toBe(0);
  expect(out).toMatch(/proposed sequence, worst use \d+\.\d %/);
  expect(out).toMatch(/runner-up: /);
  expect(out).toMatch(/it lost: .* at \d+\.\d\d % in step/);
  expect(out).toMatch(/Judged here: \d+\./);
  expect(out).toMatch(/not a substitute for a licensed engineer/);
  expect(run("check", "girder.json").out).toMatch(/the plan can be read: 1 sets, \d\d steps/);
  expect(run("solve", "girder.json").code).not.toBe(3);
  const before = JSON.parse(readFileSync(file, "utf8"));
  const after = JSON.parse(readFileSync(join(folder, "girder.json"), "utf8"));
  expect(after.cranes).toEqual(before.cranes);
  expect(after.sets[0].girders).toEqual(before.sets[0].girders);
}, 600_000);
