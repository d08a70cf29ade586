// The command line as it is built: what it prints, what it writes, and above all its exit codes.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { goodSteps, smallPlan, steps } from "../report/plans.ts";
import { beam } from "../report/states.ts";
import { bundle } from "../tools/handspan.mjs";
import { parseCsv } from "../tools/recompute.mjs";

const folder = mkdtempSync(join(tmpdir(), "handspan-cli-"));
let program = "";

beforeAll(async () => {
  program = await bundle();
}, 120_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** Runs the command line in the tests' folder. */
function run(...words: string[]): { code: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    cwd: folder,
    encoding: "utf8",
  });
  return { code: status, out: stdout, err: stderr };
}

function put(name: string, data: unknown): string {
  writeFileSync(join(folder, name), typeof data === "string" ? data : JSON.stringify(data));
  return name;
}

const text = (name: string) => readFileSync(join(folder, name), "utf8");
const calm = () => put("calm.json", smallPlan([steps.tie, { ...steps.roll, distance_m: 20 }]));

describe("how it is used", () => {
  test.each([[[]], [["--help"]], [["solve", "--help"]]])("%j prints the use, code 0", (words) => {
    const { code, out } = run(...words);
    expect(code).toBe(0);
    for (const command of ["state STATE.json", "solve PLAN.json", "check PLAN.json"])
      expect(out).toContain(command);
    expect(out).toMatch(/not a substitute for a licensed engineer/);
  });

  test("starts within a time that is printed here, not judged", () => {
    const start = performance.now();
    expect(run("version").code).toBe(0);
    console.log(`start-up of the command line: ${(performance.now() - start).toFixed(0)} ms`);
  });

  test.each([
    [["fly"], /'fly'; allowed commands: state, solve, check/],
    [["constructor"], /'constructor'/],
    [["solve"], /0 words beside the options/],
    [["solve", "a.json", "b.json"], /2 words/],
    [["solve", "calm.json", "--cvs", "x"], /'--cvs'/],
    [["solve", "calm.json", "--csv"], /'--csv' without its value/],
    [["solve", "calm.json", "--csv", "--json"], /'--csv' without its value/],
    [["solve", "calm.json", "--csv", "a", "--csv", "b"], /'--csv' twice/],
    [["solve", "nowhere.json"], /nowhere\.json: found no such file/],
    [["solve", "."], /no file/],
    [["solve", "calm.json", "--set", "S9"], /'S9'; allowed: the plan's sets, S1/],
    [["solve", "calm.json", "--at", "1:0"], /neither --state FILE nor --diagrams FILE/],
    [["solve", "calm.json", "--trace", "x"], /--trace: found 'x' without --at; allowed: CHECK:SUBJECT/],
    [["solve", "calm.json", "--at", "1:2", "--diagrams", "x.csv"], /progress from 0 to 1/],
    [["solve", "calm.json", "--buckling", "all"], /rests or stages/],
    [["solve", "calm.json", "--state", "x.json"], /both or none/],
    [["solve", "calm.json", "--at", "1", "--state", "x.json"], /STEP:PROGRESS/],
    [["solve", "calm.json", "--at", "1:", "--state", "x.json"], /STEP:PROGRESS/],
    [["solve", "calm.json", "--at", "1:1.5", "--state", "x.json"], /progress from 0 to 1/],
    [["solve", "calm.json", "--at", "9:0", "--state", "x.json"], /a number from 1 to 2, or one of 01, =roll/],
    [["solve", "calm.json", "--csv", "calm.json"], /read or written here already/],
    [["solve", "calm.json", "--csv", "x", "--json", "./x"], /read or written here already/],
    [["solve", "calm.json", "--csv", "no/where/x.csv"], /a place that can be written to/],
    [["state", "calm.json"], /handspan-state/],
  ])("%j is bad input: code 2, a sentence, nothing written", (words, sentence) => {
    calm();
    const before = readdirSync(folder).sort();
    const { code, out, err } = run(...words);
    expect(err).toMatch(sentence);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(readdirSync(folder).sort()).toEqual(before);
    expect(JSON.parse(text("calm.json")).format).toBe("handspan-plan");
  });
});

describe("check", () => {
  test("a plan that can be read: code 0 and its open items", () => {
    const { code, out } = run("check", calm());
    expect(code).toBe(0);
    expect(out).toMatch(/^the plan can be read: 1 sets, 2 steps/);
    expect(out).toMatch(/open: header\.preparedBy: blank/);
  });

  test("a bad plan: code 2 and every error in it", () => {
    const plan = smallPlan([steps.tie]) as unknown as Record<string, unknown> & { header: object };
    delete (plan.header as { title?: string }).title;
    Object.assign(plan, { colour: "red" });
    Object.assign((plan.transporters as object[])[0], { lines: -1 });
    const { code, out, err } = run("check", put("bad.json", plan));
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(err).toMatch(/header\.title: found nothing; allowed: /);
    expect(err).toMatch(/colour/);
    expect(err).toMatch(/transporters\[0\]\.lines: found -1/);
  });

  test("no JSON, and no UTF-8: code 2", () => {
    const cut = run("check", put("cut.json", '{ "format": '));
    expect(cut.code).toBe(2);
    expect(cut.err).toMatch(/not JSON/);
    writeFileSync(join(folder, "bytes.json"), Buffer.from([0x7b, 0xff, 0x7d]));
    const bytes = run("check", "bytes.json");
    expect(bytes.code).toBe(2);
    expect(bytes.err).toMatch(/no UTF-8/);
  });
});

describe("solve", () => {
  test("without a stop: code 0, a table, CSV with metadata, JSON", () => {
    const { code, out, err } = run("solve", calm(), "--csv", "calm.csv", "--json", "calm-out.json");
    expect(err).toBe("");
    expect(out).not.toMatch(/^stop: /m);
    expect(code).toBe(0);
    expect(out).toMatch(/=roll/);
    const rows = parseCsv(text("calm.csv"));
    expect(rows.length).toBeGreaterThan(100);
    const metadata = JSON.parse(text("calm.csv-metadata.json"));
    expect(metadata.url).toBe("calm.csv");
    expect(metadata.tableSchema.columns.map((c: { titles: string }) => c.titles)).toEqual(
      Object.keys(rows[0]),
    );
    const json = JSON.parse(text("calm-out.json"));
    expect(json.complete).toBe(true);
    expect(json.planHash).toBe(rows[0].plan_hash);
    expect(json.sets[0].poses.length).toBe(Number(rows[rows.length - 1].pose));
    expect(readdirSync(folder).filter((name) => name.includes(".part"))).toEqual([]);
  });

  test("with a cap reached: code 1, and the finding with value, limit and cure", () => {
    const plan = smallPlan([
      steps.tie,
      { ...steps.roll, distance_m: 35 },
      steps.far,
      steps.untie,
      steps.takeTooMuch,
    ]);
    const { code, out } = run("solve", put("stop.json", plan));
    expect(out).toMatch(/^stop: /m);
    expect(out).toMatch(/cure: /);
    expect(code).toBe(1);
  });

  test("without equilibrium at a step: code 3, before 1; what moves; later steps not solved; earlier ones written", () => {
    const plan = smallPlan([steps.tie, steps.roll, steps.untie, steps.fall, steps.far]);
    const { code, out } = run("solve", put("falls.json", plan), "--csv", "falls.csv");
    expect(code).toBe(3);
    expect(out).toMatch(/fall .*no equilibrium: .*(pitch|turns|tips)/);
    const rows = parseCsv(text("falls.csv"));
    expect(rows.some((r) => r.step === "03")).toBe(true);
    expect(rows.some((r) => r.step === "far on")).toBe(false);
    const at = run("solve", "falls.json", "--at", "far on:0.5", "--state", "none.json");
    expect(at.code).toBe(3);
    expect(at.err).toMatch(/not solved/);
    expect(existsSync(join(folder, "none.json"))).toBe(false);
  });

  test("--trace prints how a number of a check came about, at --at or at its greatest use", () => {
    put("good.json", smallPlan(goodSteps()));
    const greatest = run("solve", "good.json", "--trace", "tipping:set").out;
    expect(greatest).toMatch(/^trace of tipping of set, set .* at [\d.]+$/m);
    expect(greatest).toMatch(/use = ratio > 0 \? least \/ ratio : 1 \/ 0 = 0\.\d+/);
    const at = run("solve", "good.json", "--trace", "tipping:set", "--at", "1:1").out;
    expect(at).toMatch(/^trace of tipping of set, set .* step 1 .* at 1$/m);
  });

  test("--at by a step's id and by its number write the same state, and `state` gives the same forces", () => {
    put("good.json", smallPlan(goodSteps()));
    const byId = run(
      "solve",
      "good.json",
      "--at",
      "take:0.4",
      "--state",
      "id.json",
      "--json",
      "good-out.json",
    );
    const byNumber = run("solve", "good.json", "--at", "5:0.4", "--state", "number.json");
    expect(byId.code).toBe(byNumber.code);
    expect(text("id.json")).toBe(text("number.json"));
    const answer = run("state", "id.json", "--json", "answer.json");
    expect(answer.code).toBe(0);
    expect(answer.out).toMatch(/hoist far-1 +\d/);
    expect(JSON.parse(text("answer.json")).status).toBe("solved");
  });

  test("--set: this set only", () => {
    const plan = smallPlan([steps.tie]);
    const second = structuredClone(plan.sets[0]);
    second.id = "S2";
    plan.sets.push(second);
    put("two.json", plan);
    const both = run("solve", "two.json");
    expect(both.out).toMatch(/^set S1 /m);
    expect(both.out).toMatch(/^set S2 /m);
    const one = run("solve", "two.json", "--set", "S2");
    expect(one.out).not.toMatch(/^set S1 /m);
    expect(one.out).toMatch(/^set S2 /m);
    const at = run("solve", "two.json", "--at", "1:0", "--state", "x.json");
    expect(at.code).toBe(2);
    expect(at.err).toMatch(/Add --set ID/);
  });
});

describe("state", () => {
  test("solved: code 0, a table, and JSON in full precision", () => {
    const { code, out } = run("state", put("beam.json", beam(18)), "--json", "beam-answer.json");
    expect(code).toBe(0);
    expect(out).toMatch(/bearing front +125\.000/);
    const { forces } = JSON.parse(text("beam-answer.json"));
    expect(Math.abs(forces["bearing front"] - 125000)).toBeLessThan(1e-3);
  });

  test("a mechanism: code 3, its motion, and no numbers", () => {
    const { code, out } = run("state", put("falling.json", beam(12)), "--json", "falling-answer.json");
    expect(code).toBe(3);
    expect(out).toMatch(/^status: mechanism/);
    expect(out).not.toMatch(/kN/);
    expect(Object.keys(JSON.parse(text("falling-answer.json")))).not.toContain("forces");
  });

  test("bad input: code 2, and an answer written before stays", () => {
    put("kept.json", "before");
    const state = { ...beam(18), gravity: "ten" };
    const { code, err } = run("state", put("bad-state.json", state), "--json", "kept.json");
    expect(code).toBe(2);
    expect(err).toMatch(/gravity: found "ten"; allowed: /);
    expect(text("kept.json")).toBe("before");
  });

  test("a support off the set is bad input too", () => {
    const { code, err } = run("state", put("off.json", beam(31)));
    expect(code).toBe(2);
    expect(err).toMatch(/31/);
  });
});
