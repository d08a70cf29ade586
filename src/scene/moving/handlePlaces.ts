// Where the handles of movable things stand in the world, as the draft has them, and which of them a pointer meant.
import { byId, type Plan, type PlanSet, pickOf } from "../../plan/index.ts";
import type { Situation, Vec3, World } from "../../sequence/index.ts";
import type { View } from "../views.ts";
import { lengthOf, type Movable, movablesOf, type Standing, standingOf, whyFixed } from "./movable.ts";

/** What is drawn: a solved pose of a plan, or the plan alone. */
export interface DrawnPose {
  plan: Plan;
  set: PlanSet;
  situation: Situation | null;
  world: World | null;
}

/** A thing that can be moved, with its place. */
export interface Handle {
  thing: Movable;
  /** Where it stands by the draft, in its own numbers. */
  standing: Standing;
  /** Where its handle stands in the world by the draft: chainage, y, elevation, m. */
  at: Vec3;
  /** By how much the draft has it elsewhere than what is drawn: along and across, m. */
  shift: [number, number];
  /** Why it cannot be moved at this pose; "" where it can. */
  fixed: string;
  /** What its numbers mean where it has gone on since the start; "" where it has not. */
  since: string;
}

/** Where the handle of a thing stands in a drawn pose; null where the pose does not show it. */
function drawnAt(thing: Movable, standing: Standing, { plan, set, world }: DrawnPose): Vec3 | null {
  if (thing.is === "crane") {
    const crane = byId(plan.cranes, thing.of);
    const { chainage_m, y_m, elevation_m } = crane.position;
    const [x, y] = world?.cranes[thing.of]?.centre ?? [chainage_m, y_m];
    return [x, y, elevation_m + crane.boomFootHeight_m / 2];
  }
  if (world === null) return null;
  if (thing.is === "transporter" || thing.is === "bunk") {
    const deck = world.decks[thing.of];
    if (deck === undefined) return null;
    const machine = byId(plan.transporters, thing.of);
    const [x, y, z] = deck.centre;
    const half = machine.deckWidth_m / 2;
    return thing.is === "bunk"
      ? [x + standing.along, y + half, z]
      : [x, y - half, z - 0.55 * machine.bunkHeight_m];
  }
  const { tail, nose } = world;
  const length = lengthOf(set);
  const t = thing.is === "start" || length === 0 ? 0 : standing.along / length;
  const height = thing.is === "pick" ? (pickOf(set, thing.of)?.height_m ?? 0) : 0;
  return [
    tail[0] + t * (nose[0] - tail[0]),
    tail[1] + t * (nose[1] - tail[1]),
    tail[2] + t * (nose[2] - tail[2]) + height,
  ];
}

/** Nearer than this (m) to its place at the start, a thing has not gone on. */
const near = 1e-3;

/** Says that a crane has walked, or the set has rolled, since the start that its numbers are of. */
function sinceStart({ is, of }: Movable, { along }: Standing, { situation }: DrawnPose): string {
  if (situation === null) return "";
  if (is === "start")
    return Math.abs(situation.rearEnd - along) < near
      ? ""
      : "The numbers are those of the start; the set has gone on.";
  const walked =
    is === "crane" && situation.cranes.some(({ id, moved }) => id === of && Math.hypot(...moved) > near);
  return walked ? "The numbers are those of the start; the crane has walked on." : "";
}

/**
 * Every thing of a draft that the drawn pose shows, with its place in the draft: where it is drawn, and as much farther as
 * the draft has it from there. Pure; the draft may be the plan that is drawn.
 */
export function handlesOf(drawn: DrawnPose, draft: Plan): Handle[] {
  const known = new Map(
    movablesOf(
      drawn.plan,
      drawn.plan.sets.findIndex(({ id }) => id === drawn.set.id),
    ).map((one) => [one.key, one]),
  );
  const here = draft.sets.findIndex(({ id }) => id === drawn.set.id);
  const all = movablesOf(draft, here);
  const shifts = new Map<string, [number, number]>();
  for (const thing of all) {
    const was = known.get(thing.key);
    const from = was === undefined ? null : standingOf(drawn.plan, was);
    const to = standingOf(draft, thing);
    if (from === null || to === null) continue;
    shifts.set(thing.key, [to.along - from.along, (to.across ?? 0) - (from.across ?? 0)]);
  }
  const along = (key: string) => shifts.get(key)?.[0] ?? 0;
  return all.flatMap((thing): Handle[] => {
    const was = known.get(thing.key);
    const from = was === undefined ? null : standingOf(drawn.plan, was);
    const standing = standingOf(draft, thing);
    const own = shifts.get(thing.key);
    if (was === undefined || from === null || standing === null || own === undefined) return [];
    const at = drawnAt(was, from, drawn);
    if (at === null) return [];
    // What stands on something goes with it.
    const carried =
      thing.is === "crane" || thing.is === "start"
        ? 0
        : along(`start ${drawn.set.id}`) + (thing.is === "bunk" ? along(`transporter ${thing.of}`) : 0);
    const shift: [number, number] = [own[0] + carried, own[1]];
    return [
      {
        thing,
        standing,
        at: [at[0] + shift[0], at[1] + shift[1], at[2]],
        shift,
        fixed: whyFixed(drawn.set, was, drawn.situation),
        since: sinceStart(was, from, drawn),
      },
    ];
  });
}

/** Which of some places (px) a pointer meant: the nearest within reach, the first of two alike; -1 for none. */
export function nearestTo(
  places: readonly { x: number; y: number }[],
  x: number,
  y: number,
  reach: number,
): number {
  let found = -1;
  let least = reach;
  places.forEach((place, i) => {
    const away = Math.hypot(place.x - x, place.y - y);
    if (away < least || (found < 0 && away === least)) {
      found = i;
      least = away;
    }
  });
  return found;
}

/**
 * What a pull of the pointer (px from where it was pressed) makes of a place, before snapping. Right on the screen is
 * forward; up is to the left in a plan view and nothing in an elevation.
 */
export function pulled(
  from: Standing,
  view: View,
  pixelsPerMetre: number,
  right: number,
  down: number,
): Standing {
  const across = from.across === null || view !== "plan" ? from.across : from.across - down / pixelsPerMetre;
  return { along: from.along + right / pixelsPerMetre, across };
}
