// First plans of the set-up: they read, every value that nobody typed is listed, weights are met, the proposals solve.
// There is no outside source for starter values; what is tested is that none of them is shown as if it were known.

import { describe, expect, test } from "vitest";
import { answerErrors, firstPlan, proposedSets, solvePlan } from "../../src/checks/index.ts";
import {
  checkPlan,
  doubtsIn,
  leavesAt,
  type Plan,
  type PlanPath,
  printPath,
  sentence,
  takeOff,
} from "../../src/plan/index.ts";
import { FIXED, randomAnswers, usual } from "./answers.ts";

function planOf(answers: ReturnType<typeof usual>): Plan {
  const made = firstPlan(answers);
  if (!made.ok) throw new Error(made.errors.map((e) => `${e.at}: ${e.words}`).join("\n"));
  const read = checkPlan(JSON.parse(JSON.stringify(made.plan)));
  if (!read.ok) throw new Error(read.errors.map(sentence).join("\n"));
  expect(read.plan).toEqual(made.plan);
  return made.plan;
}

/** Numbers that were typed, wherever they stand in the answers. */
function typedNumbers(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(typedNumbers);
}

/** Values of a plan that may stand without a mark although nobody typed them: what they follow from is typed, and exactly so. */
const EXACT: [RegExp, string][] = [
  [/^version$/, "the file's format"],
  [/^sets\[0\]\.girders\[\d+\]\.y_m$/, "typed number and spacing, about the set's axis"],
  [/pieces\[0\]\.from_m$/, "stations run from the rear end"],
  [/pieces\[0\]\.web_mm$/, "typed depth less typed flanges"],
  [/^site\.(near|far)Bearing_m$/, "typed distance behind typed faces"],
  [/^cranes\[\d+\]\.position\.chainage_m$/, "typed distance from a face"],
  [/^site\.skew_deg$/, "no other value is solved"],
  [/^sets\[\d+\]\.start\./, "rear end replaced by the proposal; aside in line with the seats"],
];

function unlisted(plan: Plan, answers: unknown): string[] {
  const typed = typedNumbers(answers);
  const doubtAt = doubtsIn(plan);
  const isTyped = (value: unknown): boolean =>
    Array.isArray(value) ? value.every(isTyped) : typeof value === "number" && typed.includes(value);
  const at = (path: PlanPath) =>
    path.reduce<unknown>((v, p) => (v as Record<string, unknown>)[p as string], plan);
  return leavesAt({ ...plan, unconfirmed: undefined }, [])
    .filter((path) => !(path[0] === "sets" && path[2] === "unconfirmed"))
    .filter((path) => {
      const value = at(path);
      const number = typeof value === "number" || (Array.isArray(value) && value.length > 0);
      const bare = Array.isArray(value) && value.some((item) => typeof item === "string");
      return (number || bare) && !isTyped(value) && doubtAt(path) === null;
    })
    .map(printPath)
    .filter((place) => !EXACT.some(([pattern]) => pattern.test(place)));
}

describe("first plans", () => {
  test("300 random answers (seeds 1 to 300) read, and every number that nobody typed is listed", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const answers = randomAnswers(seed);
      expect(answerErrors(answers), `seed ${seed}`).toEqual([]);
      const plan = planOf(answers);
      expect(unlisted(plan, answers), `seed ${seed}`).toEqual([]);
      expect(
        (plan.unconfirmed ?? []).filter(
          (g) =>
            g.why.includes("not asked") &&
            !g.places.includes("site.below.kind") &&
            !g.places.some((p) => p.startsWith("site.below")),
        ),
      ).toEqual([]);
    }
  });

  test("plates chosen by weight weigh what was typed within 0.5 %: widths are whole millimetres", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const answers = randomAnswers(seed);
      if (answers.sets.steel.kind !== "mass") continue;
      const [set] = planOf(answers).sets;
      const girders = takeOff(set).lines.filter((line) => line.kind === "girders");
      const perMetre =
        girders.reduce((sum, line) => sum + line.mass, 0) / answers.sets.length_m / answers.sets.girders;
      expect(Math.abs(perMetre / (answers.sets.steel.mass_t_per_m * 1000) - 1), `seed ${seed}`).toBeLessThan(
        0.005,
      );
    }
  });

  test("sources say that values are starter values", () => {
    const plan = planOf(usual());
    for (const machine of [...plan.transporters, ...plan.cranes])
      expect(machine.source).toContain("starter value of the set-up, not confirmed");
    for (const group of plan.unconfirmed ?? [])
      expect(group.why).toMatch(/^starter value of the set-up, not confirmed: ./);
  });

  test("wrong answers are told by place, with what to give", () => {
    const answers = usual();
    answers.sets.length_m = 40;
    answers.cranes.far.rows = [];
    answers.transporters.rear.lines = 2.5;
    answers.grade_pct = Number.NaN;
    const made = firstPlan(answers);
    expect(made.ok ? [] : made.errors.map((e) => e.at)).toEqual([
      "grade_pct",
      "transporters.rear.lines",
      "sets.length_m",
      "cranes.far.rows",
    ]);
    expect(made.ok ? "" : made.errors[2].words).toBe(
      "The bearing lines are 58.8 m apart: a set of 40 m does not reach both. Give more.",
    );
  });

  test("two sets lie side by side, the second a copy whose values are all listed", () => {
    const answers = usual();
    answers.sets.count = 2;
    const plan = planOf(answers);
    const y = (set: string) =>
      plan.site.bearings.filter((b) => b.line === "near" && b.set === set).map((b) => b.y_m);
    // Four girders 3.2 m apart about the axis; the cranes stand on the left, so the first set lies on the right.
    expect([y("set-1"), y("set-2")]).toEqual([
      [-1.6, -4.8],
      [4.8, 1.6],
    ]);
    expect(plan.sets[1].unconfirmed).toContain("girders[1].pieces[0].web_mm");
    expect(plan.sets[1].girders).toEqual(plan.sets[0].girders);
  });
});

describe("proposed sequences", () => {
  test.each(FIXED.map((f) => [f.title, f] as const))(
    "%s: the steps solve without a stop",
    (_, answers) => {
      const plan = planOf(answers);
      const found = proposedSets(
        plan,
        plan.sets.map((set) => set.id),
      );
      expect(found.sets.map((s) => s.reason)).toEqual(plan.sets.map(() => ""));
      const result = solvePlan(found.plan);
      expect(result.complete).toBe(true);
      expect(result.findings.filter((f) => f.level === "stop").map((f) => f.words)).toEqual([]);
      expect(unlisted(found.plan, answers).filter((place) => !/\.(steps|start)\b/.test(place))).toEqual([]);
      expect(result.findings.some((f) => f.check === "lift point")).toBe(true);
    },
    400000,
  );

  const seeds = process.env.LONG === "1" ? 40 : 2;
  test.each(Array.from({ length: seeds }, (_, i) => i + 1))(
    "random answers, seed %i: all steps have an equilibrium",
    (seed) => {
      const plan = planOf({ ...randomAnswers(seed), title: "" });
      const found = proposedSets(
        plan,
        plan.sets.slice(0, 1).map((set) => set.id),
      );
      const read = checkPlan(JSON.parse(JSON.stringify(found.plan)));
      expect(read.ok).toBe(true);
      // What cannot be done has its reason; what is proposed solves.
      if (found.plan.sets[0].steps.length > 0) {
        expect(solvePlan(found.plan, { sets: ["set-1"] }).complete).toBe(true);
      } else expect(found.sets[0].reason).not.toBe("");
    },
    200000,
  );

  test("a search that is told to stop gives the plan back as it was", () => {
    const plan = planOf(usual());
    const found = proposedSets(plan, ["set-1"], (_, __, done) => done < 2);
    expect(found).toEqual({ plan, sets: [], cancelled: true });
    expect(found.plan).toBe(plan);
  });

  test("cranes that are too weak: the best is taken, with the limit that must change first", () => {
    const answers = usual();
    for (const crane of [answers.cranes.far, answers.cranes.near])
      for (const row of crane.rows) row.rated_t /= 4;
    const plan = planOf(answers);
    const found = proposedSets(plan, ["set-1"]);
    expect(found.plan.sets[0].steps.length).toBeGreaterThan(0);
    expect(found.sets[0].passes).toBe(false);
    expect(found.sets[0].reason).toContain("this is what must change first");
  }, 200000);
});
