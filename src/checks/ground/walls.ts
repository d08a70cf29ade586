// Machines behind a backwall: how near they come, what they put on the ground that presses on it, and how that jumps.

import type { Plan } from "../../plan/index.ts";
import { type Pose, pathLevel, type SetContext, type SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, METRE, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding, Level } from "../types.ts";
import { foundAt, poseWords } from "./found.ts";
import { type Standing, standingOf } from "./standing.ts";
import { pressuresOver } from "./trackPressure.ts";
import { deckAt, type Train, trainsOf } from "./trains.ts";

/** Poses of one step as near as this are both sides of one event. */
const EVENT = 1e-4;
/** A change below this part of the greatest load is not worth a word. */
const WORTH = 0.01;

/** What lies further than this beyond a wall's face stands on the other side of the gap, m. */
const BEYOND = 5;

/** A backwall of the plan. */
export interface Wall {
  name: "near" | "far";
  /** Chainage of the backwall's face toward the ground behind it, and which way that ground lies. */
  at: number;
  back: 1 | -1;
  /** Its height, m; null where the plan does not tell. */
  height: number | null;
}

/** Backwalls of a plan; a side without one is an open item. */
export function wallsOf(plan: Plan): Wall[] {
  const { nearBackwall_m, farBackwall_m, below } = plan.site;
  const height = (x: number) =>
    below.elevation_m === undefined ? null : pathLevel(plan, x).elevation - below.elevation_m;
  const walls: Wall[] = [];
  if (nearBackwall_m !== undefined)
    walls.push({ name: "near", at: nearBackwall_m, back: -1, height: height(nearBackwall_m) });
  if (farBackwall_m !== undefined)
    walls.push({ name: "far", at: farBackwall_m, back: 1, height: height(farBackwall_m) });
  return walls;
}

/** Load of a train within reach of a wall, per metre of its width, N/m, and the pressure of its heaviest side, Pa. */
interface Surcharge {
  perMetre: number;
  pressure: number;
  /** The axle-line sides that stand there, each with its force, N. */
  sides: { id: string; force: number }[];
}

function surchargeOf(train: Train, wall: Wall, reach: number, pose: Pose): Surcharge | null {
  const deck = deckAt(train, pose);
  if (deck === null) return null;
  const { spread, wheels, t } = train;
  let force = 0;
  let most = 0;
  const sides: Surcharge["sides"] = [];
  for (const w of wheels) {
    const back = behind(wall, deck[0] + w.x);
    const F = pose.forces[w.column];
    if (!(F >= 0) || back < 0 || back > reach) continue;
    force += F;
    most = Math.max(most, F);
    sides.push({ id: w.id, force: F });
  }
  return force > 0
    ? { perMetre: force / t.deckWidth_m, pressure: most / (spread.length * spread.width), sides }
    : null;
}

/** Chainage of what a machine has on the ground nearest to a wall's face; null where nothing of it stands on its side. */
function nearestAt(wall: Wall, machine: Standing, pose: Pick<Pose, "situation">): number | null {
  let nearest: number | null = null;
  for (const area of machine.areas(pose))
    for (const [x] of area) {
      const d = behind(wall, x);
      if (d > -BEYOND && (nearest === null || d < behind(wall, nearest))) nearest = x;
    }
  return nearest;
}

/** How far a chainage lies behind a wall's face, m. */
const behind = (wall: Wall, x: number): number => wall.back * (x - wall.at);

/** Least distance of a machine's ground behind a wall's face over some poses, m, and which; -1 where it never stands there. */
export function nearestTo(
  wall: Wall,
  machine: Standing,
  poses: readonly Pose[],
): { distance: number; at: number } {
  let distance = Number.POSITIVE_INFINITY;
  let at = -1;
  poses.forEach((pose, i) => {
    const x = nearestAt(wall, machine, pose);
    if (x === null || behind(wall, x) >= distance) return;
    distance = behind(wall, x);
    at = i;
  });
  return { distance, at };
}

const CURE =
  "have backwall and wingwalls checked for this surcharge and name who signed, or keep further back";

/** How machines at a wall are judged: by whoever signed for it, no number says how near they may come. */
function judged({ plan }: SetContext, machine: Standing, wall: Wall) {
  const rule = limitOf(plan, "wall reach");
  const signed = plan.site.wallSignedOff;
  const level: Level = signed ? "note" : "caution";
  return {
    level,
    ...(machine.of === "train"
      ? ({ check: "wall surcharge", unit: "kN/m" } as const)
      : ({ check: "edge distance", unit: "m" } as const)),
    subject: `${machine.name}, ${wall.name} wall`,
    source: rule ? `${rule.source}; reach ${rule.value} of the wall's height` : "plan",
    chosenBy: signed?.by ?? rule?.chosenBy ?? "plan",
    cure: CURE,
  } as const;
}

/** How far behind its face a load still presses on a wall, m; Infinity where its height is not known. */
function reachOf(plan: Plan, wall: Wall): number {
  const rule = limitOf(plan, "wall reach");
  return rule && wall.height !== null ? rule.value * wall.height : Number.POSITIVE_INFINITY;
}

/** Machines behind walls at one pose, for their traces: what trains put there per metre of wall, how near cranes come. */
export function behindWalls(ctx: SetContext): Measure[] {
  const trains = trainsOf(ctx);
  return wallsOf(ctx.plan).flatMap((wall) =>
    standingOf(ctx).map((machine) => {
      const train = trains.find((one) => machine.of === "train" && one.t.id === machine.name);
      return measure({
        ...judged(ctx, machine, wall),
        kind: "",
        sense: train === undefined ? "least" : "greatest",
        factor: train === undefined ? 1 : 1e-3,
        digits: train === undefined ? 2 : 1,
        watched: false,
        ...traced(ctx, (pose, rec) =>
          train === undefined
            ? distanceReading(rec, machine, wall, pose)
            : surchargeReading(rec, train, wall, reachOf(ctx.plan, wall), pose),
        ),
      });
    }),
  );
}

function distanceReading(rec: Recorder | null, machine: Standing, wall: Wall, pose: Pose): Reading {
  const x = nearestAt(wall, machine, pose);
  if (x === null) return { ...NOT_HERE, why: `it does not stand on this side of the ${wall.name} backwall` };
  solved(rec, "x", x, "m", `chainage of what ${machine.name} has on the ground nearest to the wall`);
  const path = `site.${wall.name}Backwall_m`;
  field(rec, "x_w", wall.at, `face of the ${wall.name} backwall`, path, wall.at, METRE);
  const formula = wall.back === 1 ? "x - x_w" : "x_w - x";
  const value = trace(rec, "d", behind(wall, x), formula, "m", "distance behind the face; beyond it below 0");
  rec?.ends("d", null);
  return { value, limit: Number.NaN };
}

function surchargeReading(
  rec: Recorder | null,
  train: Train,
  wall: Wall,
  reach: number,
  pose: Pose,
): Reading {
  const load = surchargeOf(train, wall, reach, pose);
  if (load === null)
    return { ...NOT_HERE, why: `nothing of it stands within reach of the ${wall.name} backwall` };
  const within = Number.isFinite(reach) ? `within ${reach.toFixed(2)} m of the face` : "behind the wall";
  const names = load.sides.map(({ id, force }, i) => {
    solved(rec, `F_${i + 1}`, force, "N", `force of axle-line side ${id}, ${within}`);
    return `F_${i + 1}`;
  });
  const { deckWidth_m: width } = train.t;
  field(rec, "b", width, "width of the deck", `${train.path}.deckWidth_m`, width, METRE);
  const words = "load within reach, per metre of the wall";
  const value = trace(rec, "s", load.perMetre, `(${names.join(" + ")})/b`, "N/m", words);
  rec?.ends("s", null);
  return { value, limit: Number.NaN };
}

/** What comes within reach of a backwall over a run: distance, surcharge and its greatest jump; a note where it is signed for. */
export function wallFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const { plan } = ctx;
  const trains = trainsOf(ctx);
  const pressures = pressuresOver(ctx, stored);
  const signed = plan.site.wallSignedOff;
  return wallsOf(plan).flatMap((wall) => {
    const reach = reachOf(plan, wall);
    return standingOf(ctx).flatMap((machine) => {
      const { distance: least, at: nearest } = nearestTo(wall, machine, stored);
      if (nearest < 0 || least > reach) return [];
      const words = [
        least < 0
          ? `${machine.name} reaches ${(-least).toFixed(2)} m beyond the face of the ${wall.name} backwall`
          : `${machine.name} comes within ${least.toFixed(2)} m of the ${wall.name} backwall`,
      ];
      let at = nearest;
      let value: number | null = null;
      if (machine.of === "train") {
        const train = trains.find((one) => one.t.id === machine.name);
        const loads = stored.map((pose) => train && surchargeOf(train, wall, reach, pose));
        const heaviest = heaviestOf(loads);
        if (heaviest < 0) return [];
        const { perMetre, pressure } = loads[heaviest] as Surcharge;
        at = heaviest;
        value = perMetre / 1000;
        words.push(
          `up to ${value.toFixed(1)} kN per metre of wall stands within ${reach.toFixed(1)} m of it, at most ${(pressure / 1000).toFixed(1)} kPa over the shadow of a line's side (${poseWords(run, heaviest)})`,
        );
        const change = greatestChange(run, loads);
        if (change !== null) {
          const [before, after] = [change.from, change.to].map((i) => (loads[i]?.perMetre ?? 0) / 1000);
          const when = change.event
            ? `at ${poseWords(run, change.from)} it jumps`
            : `in step ${run.step[change.from] + 1} it goes`;
          words.push(`${when} from ${before.toFixed(1)} to ${after.toFixed(1)} kN/m`);
        }
      } else {
        let most = -1;
        let pressed = -1;
        pressures.get(machine.name)?.forEach((p, i) => {
          if (!(p > most)) return;
          most = p;
          pressed = i;
        });
        words.push(
          most > 0
            ? `with up to ${(most / 1000).toFixed(0)} kPa (${poseWords(run, pressed)})`
            : "pressure not known",
        );
      }
      const quantity = judged(ctx, machine, wall);
      return foundAt(ctx, run, at, {
        id: `${quantity.check}:${ctx.set.id}:${machine.name}:${wall.name}`,
        ...quantity,
        value: value ?? least,
        words: `${words.join("; ")}: ${signed ? `signed for by ${signed.by}` : "no engineer has signed for the wall"}`,
      });
    });
  });
}

function heaviestOf(loads: readonly (Surcharge | null | undefined)[]): number {
  let best = -1;
  loads.forEach((l, i) => {
    if (l && (best < 0 || l.perMetre > (loads[best]?.perMetre ?? 0))) best = i;
  });
  return best;
}

/** The greatest change of a load: at one event, or else over one step; first and last stored pose of it. */
function greatestChange(
  run: SetRun,
  loads: readonly (Surcharge | null | undefined)[],
): { from: number; to: number; event: boolean } | null {
  const change = (i: number, j: number) => Math.abs((loads[j]?.perMetre ?? 0) - (loads[i]?.perMetre ?? 0));
  let best: { from: number; to: number; event: boolean } | null = null;
  let most = WORTH * Math.max(0, ...loads.map((l) => l?.perMetre ?? 0));
  const look = (from: number, to: number, event: boolean) => {
    if (!loads[from] || !loads[to] || change(from, to) <= most) return;
    most = change(from, to);
    best = { from, to, event };
  };
  for (let i = 0; i + 1 < loads.length; i++)
    if (run.step[i] === run.step[i + 1] && run.progress[i + 1] - run.progress[i] <= EVENT)
      look(i, i + 1, true);
  if (best === null) for (const s of run.steps) if (s.count > 1) look(s.first, s.first + s.count - 1, false);
  return best;
}

/** What a plan lacks to say how near machines come to its walls. */
export function wallItems(plan: Plan): Finding[] {
  const out: Finding[] = [];
  const lacks = (subject: string, words: string) =>
    out.push(
      finding({
        level: "note",
        check: "missing data",
        set: "",
        subject,
        words: `${subject}: blank: ${words}`,
        cure: "give the value with its source",
      }),
    );
  if (plan.site.nearBackwall_m === undefined)
    lacks("site.nearBackwall_m", "how near machines come to the near backwall is not judged");
  if (plan.site.farBackwall_m === undefined)
    lacks("site.farBackwall_m", "how near machines come to the far backwall is not judged");
  if (plan.site.below.elevation_m === undefined && wallsOf(plan).length > 0)
    lacks(
      "site.below.elevation_m",
      "how far behind its walls a load still presses on them is not known: all loads count",
    );
  return out;
}
