// A trace as text: numbered lines that can be worked out again, leaves first; and why there is none.

import { evaluate } from "mathjs";
import { expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import { contextsOf, readTraced, tracedText } from "../../src/report/index.ts";
import { scenario } from "../sequence/plans.ts";

const plan = scenario("demo");
const result = solvePlan(plan);
const contexts = contextsOf(result, plan);
const textOf = (asked: string, at: Parameters<typeof readTraced>[4] = null) => {
  const found = tracedText(plan, result, contexts, asked, at);
  return "text" in found ? found.text : found.error;
};

test("each line names its symbol, formula, value and the lines it is made of, all of which stand before it", () => {
  const text = textOf("girder bending:girder L");
  expect(text).toMatch(/^\ntrace of girder bending of girder L, set set-1 step \d+ \(\S+\) at [\d.]+\n/);
  expect(text).toContain("plan: sets[0].girders[0].pieces[0].web_mm[1]");
  expect(text).toContain("; ANSI/AISC 360-22 F");
  const lines = text.split("\n").slice(4);
  const values = new Map<string, number>();
  let formulas = 0;
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const [, line, symbol, rest] = lines[i].match(/^ *(\d+) {2}(\w+) = (.*)$/) ?? [];
    const parts = rest.split(" = ");
    const value = Number(parts[parts.length - 1].split(" ")[0]);
    values.set(line, value);
    const made = lines[i + 1].match(/from ((?:\w+ \(\d+\)(?:, )?)+)$/)?.[1] ?? "";
    const scope: Record<string, number> = {};
    for (const [, name, of] of made.matchAll(/(\w+) \((\d+)\)/g)) {
      expect(Number(of), `${symbol} is made of line ${of}`).toBeLessThan(Number(line));
      scope[name] = values.get(of) as number;
    }
    if (parts.length === 1) continue;
    formulas++;
    // Nine digits are printed of every number; differences of two of them may lose some.
    const again = evaluate(parts.slice(0, -1).join(" = "), scope) as number;
    expect(Math.abs(again - value), `${symbol}: ${again} against ${value}`).toBeLessThanOrEqual(
      1e-6 * Math.abs(value),
    );
  }
  expect(formulas).toBeGreaterThan(30);
});

test("without a place it is the one of greatest use, as in the strips", () => {
  const strip = result.sets[0].strips.find((s) => s.check === "hook load" && s.subject === "far crane");
  const greatest = Math.max(...[...(strip?.use ?? [])].filter((use) => !Number.isNaN(use)));
  expect(textOf("hook load:far crane")).toContain(`use ${(100 * greatest).toFixed(1)} %`);
});

test("where the check does not apply, it says why", () => {
  const at = { set: "set-1", step: 0, progress: 0.5 };
  expect(textOf("two-girder set:set", at)).toMatch(/^\nno trace of .*: does not apply: cantilever stage\n$/);
  expect(textOf("web crippling:girder L", at)).toContain(
    "a stiffener takes the load: bunk rear L 1 at 8.50 m",
  );
  expect(textOf("no such check:set", at)).toContain("no check 'no such check' of 'set'");
  expect(textOf("girder bending:set", at)).toContain("is made for girder L, girder R");
});

test("words that name no check are told with those that do", () => {
  const error = readTraced(plan, result, contexts, "girder bending", null);
  expect(error).toMatch(
    /found 'girder bending' without --at; allowed: CHECK:SUBJECT, one of .*'tipping:set'/,
  );
  expect(
    readTraced(plan, result, contexts, "girder bending", { set: "set-1", step: 0, progress: 1 }),
  ).toMatch(/^found/);
});

test("what the data alone give needs no place; a number without a limit says so", () => {
  const weight = textOf("weight check:mass per metre");
  expect(weight).toMatch(/^\ntrace of weight check of mass per metre, set set-1\n/);
  expect(weight).toContain("m_L = m/L = ");
  const seat = plan.site.seats[0];
  const level = textOf(`seat level:${seat.line} ${seat.girder}`);
  expect(level).toMatch(/^\ntrace of seat level of \S+ \S+\n/);
  expect(level).toContain("plan: site.seats[0].asBuilt_m");
  // Without --at, where the finding of it stands.
  const wall = textOf("edge distance:far crane, far wall");
  expect(wall).toMatch(/^\ntrace of edge distance of far crane, far wall, set set-1 step \d+ /);
  expect(wall).toContain(" m, no limit\n");
  expect(wall).toContain("plan: site.farBackwall_m");
  const at = { set: "set-1", step: 3, progress: 0.5 };
  expect(textOf("weight check:mass per metre", at)).toBe(weight);
});
