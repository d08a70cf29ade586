// Diagrams and envelopes as a reviewer gets them: no section of any stored pose lies outside its envelope, the file says
// what the statics say, and each extreme names the pose that gave it. Statics of a cut itself: tests/laws/diagrams.test.ts.

import { expect, test } from "vitest";
import { envelopesOf, type SetResult, solvePlan } from "../../src/checks/index.ts";
import { diagramsOf, momentAt, shearAt, torsionAt } from "../../src/mechanics/index.ts";
import { diagramCsv, diagramLines, envelopeCsv, envelopeText } from "../../src/report/index.ts";
import { poseAt, prepareContext } from "../../src/sequence/index.ts";
import { scenario } from "../sequence/plans.ts";

const plan = scenario("demo");
const result = solvePlan(plan, { backed: true });
const [set] = result.sets;
const ctx = prepareContext(plan, set.setId);
const envelopes = set.envelopes ?? [];
const posed = (i: number) => poseAt(ctx, set.steps[set.step[i]], set.progress[i]);

/** Fields of a line that holds no quotes within its first `n`. */
const fields = (line: string, n: number) => line.split(",").slice(0, n);

test("no section of a stored pose lies outside its envelope, and every extreme is met in the pose that it names", () => {
  expect(envelopes.map((e) => e.girder)).toEqual(ctx.model.girders.map((g) => g.name));
  const slack = 1e-9 * set.weight * set.length;
  for (let i = 0; i < set.count; i += 7)
    for (const { girder, points } of diagramLines(posed(i))) {
      const envelope = envelopes.find((e) => e.girder === girder);
      if (envelope === undefined) throw new Error(`no envelope of ${girder}`);
      for (const { x, ...values } of points) {
        // A section at a node belongs to either element.
        const on = [...envelope.x.keys()].filter((e) => envelope.x[e] <= x && x <= envelope.x[e + 1]);
        for (const kind of ["moment", "shear", "torsion"] as const) {
          const most = Math.max(...on.map((e) => envelope[kind].most[e]));
          const least = Math.min(...on.map((e) => envelope[kind].least[e]));
          expect(values[kind]).toBeLessThanOrEqual(most + slack);
          expect(values[kind]).toBeGreaterThanOrEqual(least - slack);
        }
      }
    }
  for (const [g, { x, moment, shear, torsion }] of envelopes.entries())
    for (let e = 0; e < x.length - 1; e += 9)
      for (const [band, at] of [
        [moment, momentAt],
        [shear, shearAt],
        [torsion, torsionAt],
      ] as const)
        for (const side of ["most", "least"] as const) {
          const d = diagramsOf(posed(side === "most" ? band.mostPose[e] : band.leastPose[e]).solution);
          const near = [x[e], x[e + 1]].map((s, k) => at(d, g, s, k === 0 ? 1 : -1));
          const inside = Array.from({ length: 200 }, (_, k) => x[e] + ((x[e + 1] - x[e]) * (k + 0.5)) / 200);
          const { points, first } = d.girders[g];
          // Diagrams jump or bend at actions: both sides of each belong to the walk.
          const acting = points
            .slice(first[e], first[e + 1])
            .flatMap((p) => (p.x > x[e] ? [at(d, g, p.x, -1), at(d, g, p.x, 1)] : []));
          const seen = [...near, ...acting, ...inside.map((s) => at(d, g, s, -1))];
          const found = side === "most" ? Math.max(...seen) : Math.min(...seen);
          // The walk misses a parabola's top by less than 1e-4 of the set's weight times its length over 200^2.
          expect(Math.abs(found - band[side][e])).toBeLessThan(1e-6 * set.weight * set.length);
        }
});

test("the file of a pose has a row for every section and says what the statics say", () => {
  const index = set.steps.findIndex((s) => s.step.id === "lift");
  const pose = poseAt(ctx, set.steps[index], 0.5);
  const d = diagramsOf(pose.solution);
  const [head, ...rows] = diagramCsv(result, plan, set.setId, "lift", pose).trimEnd().split("\r\n");
  expect(fields(head, 8)).toEqual([
    "set",
    "step",
    "progress",
    "girder",
    "station_m",
    "moment_kNm",
    "shear_kN",
    "torsion_kNm",
  ]);
  expect(rows).toHaveLength(diagramLines(pose).reduce((sum, line) => sum + line.points.length, 0));
  for (const line of rows.filter((_, i) => i % 11 === 5)) {
    const [id, step, progress, girder, station, moment] = fields(line, 8);
    expect([id, step, progress]).toEqual([set.setId, "lift", "0.5"]);
    const g = ctx.model.girders.findIndex((one) => one.name === girder);
    // Stations are printed to 0.1 mm and moments to 1 N m: 5e-5 m times the shear, below 300 kN here.
    const sides = ([-1, 1] as const).map((side) => momentAt(d, g, Number(station), side) / 1000);
    expect(Math.min(...sides.map((M) => Math.abs(Number(moment) - M)))).toBeLessThan(0.0155 + 0.0005);
    expect(line).toContain("Planning aid only");
  }
});

test("the file of the envelopes has a row for every element, and the text names the greatest of them", () => {
  const rows = envelopeCsv(result, plan).trimEnd().split("\r\n").slice(1);
  expect(rows).toHaveLength(envelopes.reduce((sum, e) => sum + e.x.length - 1, 0));
  const sagging = Math.max(...envelopes[0].moment.most);
  const row = rows.find((line) => fields(line, 5)[4] === (sagging / 1000).toFixed(3));
  expect(row).toBeDefined();
  expect(envelopeText(set).join("\n")).toContain((sagging / 1000).toFixed(1));
  expect(envelopeText({ ...set, envelopes: undefined } as unknown as SetResult)).toEqual([]);
});

test("envelopes can be broken off after any step", () => {
  let told = 0;
  expect(envelopesOf(ctx, set, () => ++told < 4)).toBeNull();
  expect(told).toBe(4);
});
