// History: what a step leaves is what the next one starts from, and a step solved alone from its stored start is the
// step solved in sequence, to the last bit. No source needed.

import { describe, expect, test } from "vitest";
import { motionOf, poseAt, prepareContext, type Situation, solvePose } from "../../src/sequence/index.ts";
import { busy, kindsThatMove, moves } from "./busy.ts";
import { chance } from "./chance.ts";
import { type Ran, ran, ranScenario, scenario, scenarioNames, step, upTo, within } from "./plans.ts";

/** A stored pose of every step, solved alone from the step as it was stored, in a context of its own: bit for bit the same. */
function aloneAsInSequence({ plan, run }: Ran): number {
  const fresh = prepareContext(plan, plan.sets[0].id);
  const m = run.supports.length;
  for (let i = 0; i < run.count; i++) {
    const s = structuredClone(run.steps[run.step[i]]);
    const pose = poseAt(fresh, s, run.progress[i]);
    const where = `${s.step.id} at ${run.progress[i]}`;
    expect(pose.solution.status, where).toBe("solved");
    expect(pose.forces, where).toEqual(run.forces.slice(i * m, (i + 1) * m));
    expect(pose.shares, where).toEqual(run.shares.slice(i * m, (i + 1) * m));
  }
  return new Set(run.step).size;
}

/** The one-girder plan with every other kind of motion in it: a held load that is locked again, jacking by load. */
function mixed(): Ran {
  return ran(
    scenario("one-girder", (plan) => {
      plan.sets[0].steps = upTo(
        plan,
        "far-takes",
        step({
          id: "held",
          do: "roll together",
          cranes: ["far-crane"],
          hold: "load",
          bite_m: 1,
          distance_m: -3,
        }),
        step({ id: "locked", do: "trial lift", crane: "far-crane", height_mm: 5 }),
        step({
          id: "rope",
          do: "roll together",
          cranes: ["far-crane"],
          hold: "rope",
          bite_m: 1,
          distance_m: 0.4,
        }),
        step({ do: "jack up", transporter: "front", until: { load_kN: 90 }, brakes: ["front"] }),
        step({ do: "rest" }),
      );
    }),
  );
}

const cases: [string, () => Ran][] = [
  ["order-faults", () => ran(scenario("order-faults"))],
  ...scenarioNames.map((name): [string, () => Ran] => [name, () => ranScenario(name)]),
  ["held and locked", mixed],
];

describe.each(cases)("%s", (_, make) => {
  const r = make();
  const { ctx, run } = r;

  test("at no progress every step is where it starts", () => {
    for (const s of run.steps) {
      expect(poseAt(ctx, s, 0).situation).toBe(s.start);
      const at = motionOf(s.step.do).at(ctx, s.step, s.start, s.ends, 0);
      // Its own motion says the same; the datum plane may be told about another point of itself.
      expect({ ...at, plane: null, rearEnd: 0, trains: null }).toEqual({
        ...s.start,
        plane: null,
        rearEnd: 0,
        trains: null,
        cranes: at.cranes.map((c, i) => ({ ...s.start.cranes[i], tautAt: c.tautAt })),
      });
      at.cranes.forEach((c, i) => {
        within(c.tautAt, s.start.cranes[i].tautAt, 1e-12 * 40);
      });
      within(at.rearEnd, s.start.rearEnd, 0);
      expect(at.trains.map((t) => t.deckAt)).toEqual(s.start.trains.map((t) => t.deckAt));
      const level = (x: Situation, chainage: number) =>
        x.plane.elevation + x.plane.grade * (chainage - x.plane.chainage);
      for (const chainage of [0, 300]) within(level(at, chainage), level(s.start, chainage), 1e-11);
      within(at.plane.crossfall, s.start.plane.crossfall, 1e-15);
    }
  });

  test("the end of a step is the start of the next, but for its brakes", () => {
    let compared = 0;
    for (let i = 1; i < run.steps.length; i++) {
      const [before, next] = [run.steps[i - 1], run.steps[i]];
      if (!before.solved) break;
      const pose = poseAt(ctx, before, 1);
      const settle = motionOf(before.step.do).settle;
      const end = settle ? settle(ctx, pose.situation, pose) : pose.situation;
      const { brakes } = next.step;
      const trains = brakes ? end.trains.map((t) => ({ ...t, braked: brakes.includes(t.id) })) : end.trains;
      expect(next.start, next.step.id).toEqual({ ...end, trains });
      compared++;
    }
    expect(compared).toBe(run.steps.length - 1);
  });

  test("loads do not jump from a step to the next, but for hooks let go and what is held locked again", () => {
    for (let i = 1; i < run.steps.length; i++) {
      const [before, next] = [run.steps[i - 1], run.steps[i]];
      const [a, b] = [poseAt(ctx, before, 1), poseAt(ctx, next, 0)];
      ctx.supports.forEach((s, j) => {
        // 1e-6 W: a held load is locked by the take-up of its line, where second order is left out.
        if (s.band) within(b.shares[j] - a.shares[j], 0, 1e-6 * run.weight);
      });
    }
  });

  test("a step found again from its stored start has the same ends and happenings", () => {
    const fresh = prepareContext(r.plan, r.plan.sets[0].id);
    for (const s of run.steps) {
      const found = motionOf(s.step.do).find(fresh, s.step, structuredClone(s.start), (x) =>
        solvePose(fresh, x, 0, 0),
      );
      expect(found.ends, s.step.id).toEqual(s.ends);
      expect(found.happenings).toEqual(s.happenings);
    }
  });

  test("stored poses solved alone have the same forces, to the last bit", () => {
    expect(aloneAsInSequence(r)).toBe(run.steps.length);
  });

  test("stored poses are in order, each once, from 0 to 1 in every step", () => {
    for (const s of run.steps) {
      const own = [...run.progress.slice(s.first, s.first + s.count)];
      expect(own[0]).toBe(0);
      expect(own[own.length - 1]).toBe(1);
      for (let i = 1; i < own.length; i++) expect(own[i]).toBeGreaterThan(own[i - 1]);
      expect(own.length).toBeLessThanOrEqual(200 + 40);
      expect([...run.step.slice(s.first, s.first + s.count)].every((k) => k === s.index)).toBe(true);
    }
  });
});

const seed = 90417;

describe(`random plans with every kind of motion, seed ${seed}`, () => {
  const random = chance(seed);
  const names = ["demo", "one-girder", "demo", "one-girder", "demo", "one-girder"] as const;
  const kinds = new Set<string>();

  test.each(names)("%s: every step solved alone is the step solved in sequence, to the last bit", (name) => {
    const r = busy(name, random);
    for (const s of r.run.steps) if (s.solved && moves(s)) kinds.add(s.step.do);
    expect(aloneAsInSequence(r)).toBe(r.run.steps.filter((s) => s.count > 0).length);
    const fresh = prepareContext(r.plan, r.plan.sets[0].id);
    for (const s of r.run.steps.filter((step) => step.solved)) {
      const found = motionOf(s.step.do).find(fresh, s.step, structuredClone(s.start), (x) =>
        solvePose(fresh, x, s.index, 0),
      );
      expect(found.ends, s.step.id).toEqual(s.ends);
    }
  });

  test("nearly every kind that moves was among them", () => {
    expect(kinds.size).toBeGreaterThanOrEqual(kindsThatMove.length - 4);
  });
});

test("brakes of a step stand from its start; without any stated they stay", () => {
  const { run } = ranScenario("demo");
  const braked = (id: string) => {
    const found = run.steps.find((s) => s.step.id === id);
    return found?.start.trains.filter((t) => t.braked).map((t) => t.id);
  };
  expect(braked("far-takes")).toEqual(["rear", "front"]);
  expect(braked("front-out")).toEqual(["rear"]);
  expect(braked("over")).toEqual(["rear"]);
});
