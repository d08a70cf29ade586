// Machines behind a backwall: how near they come, what they put on the ground that presses on it, and how that jumps.

import type { Plan } from "../../plan/index.ts";
import { type Pose, pathLevel, type SetContext, type SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { limitOf } from "../limits.ts";
import type { Finding } from "../types.ts";
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
}

function surchargeOf(train: Train, wall: Wall, reach: number, pose: Pose): Surcharge | null {
  const deck = deckAt(train, pose);
  if (deck === null) return null;
  const { spread, wheels, t } = train;
  let force = 0;
  let most = 0;
  for (const w of wheels) {
    const behind = wall.back * (deck[0] + w.x - wall.at);
    const F = pose.forces[w.column];
    if (!(F >= 0) || behind < 0 || behind > reach) continue;
    force += F;
    most = Math.max(most, F);
  }
  return force > 0
    ? { perMetre: force / t.deckWidth_m, pressure: most / (spread.length * spread.width) }
    : null;
}

/** Least distance of a machine's ground behind a wall's face over some poses, m, and which; -1 where it never stands there. */
export function nearestTo(
  wall: Wall,
  machine: Standing,
  poses: readonly Pose[],
): { distance: number; at: number } {
  let distance = Number.POSITIVE_INFINITY;
  let at = -1;
  poses.forEach((pose, i) => {
    for (const area of machine.areas(pose))
      for (const [x] of area) {
        const d = wall.back * (x - wall.at);
        if (d >= distance || d <= -BEYOND) continue;
        distance = d;
        at = i;
      }
  });
  return { distance, at };
}

/** What comes within reach of a backwall over a run: distance, surcharge and its greatest jump; a note where it is signed for. */
export function wallFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const { plan } = ctx;
  const rule = limitOf(plan, "wall reach");
  const trains = trainsOf(ctx);
  const pressures = pressuresOver(ctx, stored);
  const signed = plan.site.wallSignedOff;
  return wallsOf(plan).flatMap((wall) => {
    const reach = rule && wall.height !== null ? rule.value * wall.height : Number.POSITIVE_INFINITY;
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
        pressures.get(machine.name)?.forEach((p, i) => {
          if (!(p > most)) return;
          most = p;
          at = i;
        });
        words.push(
          most > 0
            ? `with up to ${(most / 1000).toFixed(0)} kPa (${poseWords(run, at)})`
            : "pressure not known",
        );
      }
      return foundAt(ctx, run, at, {
        id: `edge distance:${ctx.set.id}:${machine.name}:${wall.name}`,
        level: signed ? "note" : "caution",
        check: "edge distance",
        subject: `${machine.name}, ${wall.name} wall`,
        value: value ?? least,
        unit: value === null ? "m" : "kN/m",
        source: rule ? `${rule.source}; reach ${rule.value} of the wall's height` : "plan",
        chosenBy: signed?.by ?? rule?.chosenBy ?? "plan",
        words: `${words.join("; ")}: ${signed ? `signed for by ${signed.by}` : "no engineer has signed for the wall"}`,
        cure: "have backwall and wingwalls checked for this surcharge and name who signed, or keep further back",
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
