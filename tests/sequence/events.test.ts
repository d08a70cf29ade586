// Events against brute force: contacts that open or close in 20,000 poses of a step, of which the run may miss none.
// A first sweep has 2,000 poses; every part of it in which a contact changes, or comes near enough to closing or
// opening to do so there and back, is swept again ten times as fine. LONG=1 takes 200 steps instead of 20, solves all
// 20,000 poses of each, and prints what it found. No source needed.

import { describe, expect, test } from "vitest";
import { solvePlan } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { poseAt, wheelsOf } from "../../src/sequence/index.ts";
import { drawnSteps, kindsThatMove } from "./busy.ts";
import { chance, varied } from "./chance.ts";
import { ran, scenario, upTo } from "./plans.ts";
import { bruteForce, COARSE, compare } from "./sweep.ts";

const long = process.env.LONG === "1";
const seed = 20260504;
const drawn = drawnSteps(long ? 200 : 20, 4, chance(seed));

describe(`contacts of ${drawn.length} steps of every kind, drawn with seed ${seed}`, () => {
  const began = performance.now();
  const kinds = new Map<string, number>();
  const sum = { poses: 0, changes: 0, missed: 0, invented: 0 };

  test.each(drawn)("$name", { timeout: long ? 1_200_000 : 60_000 }, ({ name, ran: r, step }) => {
    // The steps drawn from the first plan of one girder, which are cheap, have all 20,000 poses.
    const everywhere = long || name.startsWith("2 one-girder");
    const { flips, poses } = bruteForce(r, step, everywhere);
    expect(poses).toBeGreaterThan(everywhere ? 20_000 : COARSE);
    const { missed, invented } = compare(r, step, flips);
    kinds.set(step.step.do, (kinds.get(step.step.do) ?? 0) + 1);
    sum.poses += poses;
    sum.changes += flips.length;
    sum.missed += missed.length;
    sum.invented += invented.length;
    expect({ missed, invented }).toEqual({ missed: [], invented: [] });
  });

  test("many contacts changed in them, and every kind with a motion was among them", () => {
    const list = [...kinds].map(([kind, n]) => `${n} ${kind}`).join(", ");
    if (long)
      console.log(
        `${drawn.length} steps (${list}): ${sum.poses} poses, ${sum.changes} changes of contacts, ${sum.missed} missed, ${sum.invented} invented, ${((performance.now() - began) / 1000).toFixed(0)} s`,
      );
    expect(sum.changes).toBeGreaterThanOrEqual(long ? 100 : 5);
    expect(kindsThatMove).toEqual(expect.arrayContaining([...kinds.keys()]));
    // Twenty steps cannot hold them all: the rare ones need more plans than they are drawn from.
    expect(kinds.size).toBeGreaterThanOrEqual(long ? kindsThatMove.length : 12);
  });
});

/** A contact that opens and closes again between two of the places that every step is looked at in. */
test("there and back between two looks: the landing drawn with seed 124, in which a bearing comes free and carries again", {
  timeout: 60_000,
}, () => {
  const r = ran(varied("demo", chance(124)));
  const step = r.step("landing");
  expect(step.solved).toBe(true);
  const { flips } = bruteForce(r, step);
  const sixteenth = (f: { from: number }) => Math.floor(f.from * 16);
  const back = flips.filter((f) =>
    flips.some((o) => o !== f && o.name === f.name && o.on !== f.on && sixteenth(o) === sixteenth(f)),
  );
  expect(back.map((f) => f.name)).toContain("bearing far R");
  expect(compare(r, step, flips)).toEqual({ missed: [], invented: [] });
});

/** The demo on short strokes, rolled out over a dip shorter than an axle pitch. */
function dipped(middle: number, depth: number): Plan {
  return scenario("demo", (plan) => {
    for (const t of plan.transporters) Object.assign(t, { strokeUp_mm: 60, strokeDown_mm: 60 });
    const { points } = plan.site.path;
    const i = points.findIndex((p) => p.chainage_m > middle);
    const [a, b] = [points[i - 1], points[i]];
    const on = (chainage_m: number, down: number) => {
      const t = (chainage_m - a.chainage_m) / (b.chainage_m - a.chainage_m);
      return {
        chainage_m,
        elevation_m: a.elevation_m + t * (b.elevation_m - a.elevation_m) - down,
        crossfall_pct: a.crossfall_pct + t * (b.crossfall_pct - a.crossfall_pct),
      };
    };
    points.splice(i, 0, on(middle - 0.5, 0), on(middle, depth), on(middle + 0.5, 0));
    plan.sets[0].steps = upTo(plan, "second-roll");
  });
}

describe("a dip of 1 m on the way, shorter than what lies between two looks", () => {
  const plan = dipped(188.3, 0.12);
  const r = ran(plan);

  test("every wheel that goes over it is told to come free and to carry again", { timeout: 60_000 }, () => {
    const step = r.step("second-roll");
    const { flips } = bruteForce(r, step);
    // The front train's rear half and the rear train's fore half go over it, and hang where it is deeper than their
    // stroke lets them follow.
    expect(flips.length).toBeGreaterThanOrEqual(8);
    expect(flips.every((f) => f.name.startsWith("wheel "))).toBe(true);
    expect(compare(r, step, flips)).toEqual({ missed: [], invented: [] });
  });

  test("and its greatest stroke is found, where a wheel stands in the deepest place", () => {
    const found = solvePlan(plan).findings.filter((f) => f.check === "stroke" && f.from?.step === 3);
    expect(found.length).toBeGreaterThanOrEqual(3);
    for (const f of found) {
      const pose = poseAt(r.ctx, r.step("second-roll"), f.worst?.progress ?? 0);
      const { rearEnd, trains } = pose.situation;
      const train = trains.find((t) => t.id === f.subject);
      const nearest = Math.min(
        ...wheelsOf(plan, f.subject).map((w) => Math.abs(rearEnd + (train?.deckAt ?? 0) + w.x - 188.3)),
      );
      // The rest of the way down the wheel hangs: anywhere within the dip it is out of stroke by as much.
      expect(nearest).toBeLessThanOrEqual(0.5);
    }
  });

  test("a path with very many corners is looked at everywhere, and stored where something is beyond its limit", () => {
    const rough = ran(
      scenario("demo", (p) => {
        const [first, ...rest] = p.site.path.points;
        const last = rest[rest.length - 1];
        p.site.path.points = Array.from({ length: 180 }, (_, i) => {
          const t = i / 179;
          const chainage_m = first.chainage_m + t * (last.chainage_m - first.chainage_m);
          const level = first.elevation_m + t * (last.elevation_m - first.elevation_m);
          return { chainage_m, elevation_m: level + (i % 2) * 0.002, crossfall_pct: 0.5 };
        });
        p.sets[0].steps = upTo(p, "first-roll");
      }),
    );
    expect(rough.step("first-roll").solved).toBe(true);
    expect(rough.step("first-roll").count).toBeLessThanOrEqual(200);
  });
});
