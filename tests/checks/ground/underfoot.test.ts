// What stands above a structure between stored poses, against dense samples of random steps: a limit a little below the
// greatest load of all of them is found to be passed, also where no stored pose passes it; and what is found is there.

import { expect, test } from "vitest";
import { loadsAbove, underfootFindings } from "../../../src/checks/ground/underfoot.ts";
import type { Underfoot } from "../../../src/plan/index.ts";
import { type Pose, poseAt, type SetRun, type Situation, situationAt } from "../../../src/sequence/index.ts";
import { drawnSteps } from "../../sequence/busy.ts";
import { chance } from "../../sequence/chance.ts";

const DRAWN = 40;
const STEPS = 12;
const POSES = 120;
/** The limit stands so far below the greatest sample: the check leaves out 0.01 % of the load. */
const APART = 5e-4;

interface Case {
  kind: "line" | "pressure";
  /** Greatest load of the samples and of the stored poses, N or Pa. */
  sampled: number;
  stored: number;
  /** What is found with a limit, and what is at its place when solved anew; 0 for nothing. */
  tells: (limit: number) => { found: number; there: number };
}

/** Chainage of the middle of the first transporter's deck, m. */
const placeOf = ({ rearEnd, trains: [train] }: Situation): number =>
  train === undefined ? Number.NaN : rearEnd + train.deckAt + train.gone[0];

function cases(): Case[] {
  const random = chance(47);
  const rolling = drawnSteps(DRAWN, 4, random).filter(({ ran: { ctx }, step }) => {
    const [a, b] = [0, 1].map((p) => situationAt(ctx, step, p));
    return b.trains.length > 0 && placeOf(a) !== placeOf(b);
  });
  return rolling.slice(0, STEPS).flatMap(({ ran: { ctx, run, plan }, step }) => {
    const { first, count } = step;
    const stored = Array.from({ length: count }, (_, k) => poseAt(ctx, step, run.progress[first + k]));
    const dense: Pose[] = [];
    for (let k = 1; k < POSES; k++) {
      const pose = poseAt(ctx, step, k / POSES, dense[dense.length - 1] ?? stored[0]);
      if (pose.solution.status === "solved") dense.push(pose);
    }
    // The step alone, as a run of its own.
    const part: SetRun = {
      ...run,
      count,
      step: run.step.slice(first, first + count),
      progress: run.progress.slice(first, first + count),
    };
    const from_m = placeOf(situationAt(ctx, step, random())) + 10 * (random() - 0.5);
    const one: Underfoot = { name: "slab", from_m, to_m: from_m + 0.05 + 2 * random() ** 3 };
    const { underfoot } = plan.site;
    const limited = (what: Partial<Underfoot>) => {
      underfoot.splice(0, underfoot.length, { ...one, ...what });
    };
    return (["line", "pressure"] as const).map((kind): Case => {
      const of = (limit: number): Partial<Underfoot> =>
        kind === "line" ? { allowedLine_kN: limit / 1000 } : { allowablePressure_kPa: limit / 1000 };
      limited(of(1e9));
      const [m] = loadsAbove(ctx);
      const most = (poses: readonly Pose[]) =>
        poses.reduce((top, p) => Math.max(top, m.read(p).value || 0), 0);
      return {
        kind,
        sampled: most(dense),
        stored: most(stored),
        tells: (limit) => {
          limited(of(limit));
          const [stop] = underfootFindings(ctx, part, stored).filter((f) => f.level === "stop");
          if (stop === undefined) return { found: 0, there: 0 };
          const pose = poseAt(ctx, step, stop.worst?.progress ?? Number.NaN);
          return { found: (stop.value ?? 0) * 1000, there: m.read(pose).value };
        },
      };
    });
  });
}

test(`${STEPS} random steps, seed 47`, { timeout: 120_000 }, () => {
  let passed = 0;
  let hidden = 0;
  for (const { kind, sampled, stored, tells } of cases()) {
    if (sampled === 0) continue;
    passed++;
    const limit = sampled * (1 - APART);
    if (stored <= limit) hidden++;
    const { found, there } = tells(limit);
    expect(found, `${kind}: ${sampled} of ${POSES} samples, ${stored} stored`).toBeGreaterThan(limit);
    // Solved from another pose: the statics settle to 1e-9 of their forces.
    expect(Math.abs(found / there - 1), `${kind}: ${found} found, ${there} there`).toBeLessThan(1e-6);
  }
  console.log(`${passed} loads above structures, ${hidden} of them greater between stored poses than at any`);
  expect(passed).toBeGreaterThan(STEPS / 2);
  expect(hidden).toBeGreaterThan(0);
});
