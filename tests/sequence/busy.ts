// Random plans with steps of every kind: varied scenarios, into which what they lack is woven at random places.

import type { Plan, Step } from "../../src/plan/index.ts";
import { type StepRun, stepKinds } from "../../src/sequence/index.ts";
import { varied } from "./chance.ts";
import { type Ran, ran, type ScenarioName, step } from "./plans.ts";

/** Kinds in which nothing moves. */
const still = ["hook up", "lash", "unlash", "brace"];

/** All others. */
export const kindsThatMove = stepKinds.filter((kind) => !still.includes(kind)).sort();

/** Whether anything moves in a step that was run: standing moves something only where ground sinks or the sun shines. */
export const moves = ({ step: { do: kind }, ends }: StepRun): boolean =>
  !still.includes(kind) && !(["hold", "rest"].includes(kind) && ends.length === 0);

type Brief = Parameters<typeof step>[0];

/** What may be woven in after a step of a kind, by where the set then is. */
function after(plan: Plan, before: Step, random: () => number): Brief[][] {
  const between = (low: number, high: number) => low + (high - low) * random();
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)];
  const groups = plan.transporters.flatMap((t) => t.groups.map((g) => g.name));
  const [train] = plan.transporters.map((t) => t.id).filter((id) => id !== "front");
  const heat = () => ({ temperature_C: between(-15, 15), topWarmer_C: between(-15, 15) });
  const stand = (supports: readonly string[]): Brief =>
    one<Brief>([
      {
        do: "hold",
        releasedBy: "lift director",
        evidence: "levels read",
        ...heat(),
        settlement_mm: { [one(supports)]: between(5, 60) },
      },
      { do: "rest", on: ["oil"], minutes: 60, settlement_mm: { [one(supports)]: between(5, 60) } },
    ]);
  const slopes = () => ({ lean_pct: between(-1.5, 1.5), level_pct: between(-0.6, 0.6) });
  const taken = before.do === "take load" ? before.crane : "";
  const inFront = before.do === "jack down" && "transporter" in before && before.transporter === "front";
  switch (before.do) {
    case "roll":
      return [
        [{ do: "level", tolerance_mm: 1, ...slopes() }],
        [{ do: "jack up", groups: [one(groups)], until: { height_mm: between(5, 40) } }],
        [{ do: "jack down", groups: [one(groups)], until: { height_mm: between(5, 60) } }],
        [stand(groups)],
        [{ do: "roll", distance_m: between(-6, -1) }],
      ];
    case "take load":
      return [
        [{ do: "trial lift", crane: taken, height_mm: between(5, 80) }],
        [{ do: "walk", crane: taken, dx_m: between(-2, 2), dy_m: between(-1, 1), hook: one(hooks) }],
        [
          {
            do: "roll together",
            cranes: [taken],
            hold: one(["load", "rope"] as const),
            bite_m: between(0.3, 1),
            distance_m: between(-3, -0.5),
          },
        ],
        [stand([`${taken === "far-crane" ? "far" : "near"} crane`, `${train} left`])],
        [{ do: "hoist down", hooks: [{ crane: taken, height_mm: between(5, 60) }] }],
      ];
    case "jack down":
      if (!inFront) return [];
      return [
        [
          { do: "rebunk", transporter: "front", deckAt_m: between(0.5, 0.62) * lengthOf(plan) },
          { do: "jack up", transporter: "front", until: { height_mm: between(120, 260) } },
          { do: "jack down", transporter: "front", until: { gap_mm: 80 } },
        ],
        [
          { do: "jack up", transporter: "front", until: { height_mm: between(60, 200) } },
          { do: "jack down", transporter: "front", until: { gap_mm: between(30, 80) } },
        ],
      ];
    case "bring over":
      return [
        [{ do: "walk", crane: "near-crane", dx_m: between(-1, 1), dy_m: between(-1, 1), hook: one(hooks) }],
        [{ do: "hoist up", hooks: [{ crane: one(cranes), height_mm: between(10, 120) }] }],
        [stand(["far crane", "near crane"])],
      ];
    case "land":
      return [
        [{ do: "hoist up", hooks: [{ crane: one(cranes), height_mm: between(20, 200) }] }],
        [{ do: "trial lift", crane: one(cranes), height_mm: between(20, 200) }],
        [stand(plan.site.bearings.map((b) => `${b.line} ${b.girder}`))],
      ];
    default:
      return [];
  }
}

const hooks = ["stays", "goes along"] as const;
const cranes = ["far-crane", "near-crane"] as const;

function lengthOf(plan: Plan): number {
  return Math.max(...plan.sets[0].girders[0].pieces.map((p) => p.to_m));
}

/** A varied scenario with up to five more steps, run. */
export function busy(name: ScenarioName, random: () => number): Ran {
  const plan = varied(name, random);
  for (const c of plan.cranes) Object.assign(c, { travelWithLoad: true, travelSource: "invented leave" });
  const [set] = plan.sets;
  const list: Step[] = [];
  let added = 0;
  // What is rolled back on the way is made good when the set is brought over its seats.
  let back = 0;
  for (const s of set.steps) {
    list.push(s.do === "bring over" ? { ...s, dx_m: s.dx_m - back } : s);
    const may = after(plan, s, random);
    if (may.length === 0 || added >= 5 || random() < 0.3) continue;
    for (const brief of may[Math.floor(random() * may.length)]) {
      list.push(step({ ...brief, id: `woven-${++added}` }));
      if (brief.do === "roll" || brief.do === "roll together") back += brief.distance_m as number;
    }
  }
  set.steps = list;
  return ran(plan);
}

/** A step of a run, with words to tell it by. */
export interface Drawn {
  name: string;
  ran: Ran;
  step: StepRun;
}

/**
 * Solved steps in which something moves, from random plans, `count` of them: kinds take turns, so that the rare ones are
 * among them. Of one plan at most `each` are taken.
 */
export function drawnSteps(count: number, each: number, random: () => number): Drawn[] {
  const taken = new Map<string, number>();
  const out: Drawn[] = [];
  for (let n = 0; out.length < count; n++) {
    const name = n % 3 === 2 ? "one-girder" : "demo";
    const r = busy(name, random);
    const left = r.run.steps.filter((s) => s.solved && moves(s));
    for (let k = 0; k < each && left.length > 0 && out.length < count; k++) {
      const times = left.map((s) => taken.get(s.step.do) ?? 0);
      const least = Math.min(...times);
      const rare = left.filter((_, i) => times[i] === least);
      const s = rare[Math.floor(random() * rare.length)];
      left.splice(left.indexOf(s), 1);
      taken.set(s.step.do, least + 1);
      out.push({ name: `${n} ${name} ${s.step.do} ${s.step.id}`, ran: r, step: s });
    }
  }
  return out;
}
