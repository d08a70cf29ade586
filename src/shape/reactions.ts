// Where reactions act: every band support of a pose with its place, its load and which way its arrow stands.
import { type Plan, type PlanSet, pickOf } from "../plan/index.ts";
import type { Pose, SetContext, Support, Vec3, World } from "../sequence/index.ts";
import { bearingPlaces } from "./picture.ts";
import { mean } from "./vec.ts";

/** One reaction. Forces in N; `at` is the hook, the middle of a group's wheels on the ground, or the top of a bearing. */
export interface Reaction {
  support: Support;
  at: Vec3;
  /** Its part of the set's weight, and the force under it: for a group with its part of the deck. */
  share: number;
  force: number;
  /** Number of the support among those of its kind: tells patterns apart. */
  nth: number;
  /** A hook pulls from above, all others push from below. */
  from: "above" | "below";
}

function placeOf(plan: Plan, set: PlanSet, world: World, support: Support): Vec3 | null {
  if (support.what === "hoist") return world.cranes[support.of]?.hook ?? null;
  if (support.what === "bearing") {
    const bearing = bearingPlaces(plan, set).find((one) => one.name === support.name);
    return bearing === undefined ? null : [bearing.foot[0], bearing.foot[1], bearing.foot[2]];
  }
  if (support.what !== "group") return null;
  const t = plan.transporters.find((one) => one.id === support.of);
  const wheels = t?.groups.find((group) => group.name === support.name)?.wheels ?? [];
  const places = wheels.map((wheel) => world.wheels[`${support.of}:${wheel}`]).filter((p) => p !== undefined);
  return places.length === 0 ? null : mean(places);
}

/** Reactions of all bands that are part of a pose, in the order of the set's supports. */
export function reactionsOf(ctx: SetContext, pose: Pose, world: World): Reaction[] {
  const count = new Map<string, number>();
  return ctx.supports.flatMap((support, j): Reaction[] => {
    if (!support.band) return [];
    const nth = count.get(support.kind) ?? 0;
    count.set(support.kind, nth + 1);
    const force = pose.forces[j];
    const at = placeOf(ctx.plan, ctx.set, world, support);
    if (!Number.isFinite(force) || at === null) return [];
    return [
      { support, at, force, share: pose.shares[j], nth, from: support.what === "hoist" ? "above" : "below" },
    ];
  });
}

/** Stations (m) of the set at which a band carries now: decks, picks and sole plates; ascending, each once. */
export function carriedAt(ctx: SetContext, pose: Pose): number[] {
  const { set, supports } = ctx;
  const stations = supports.flatMap((support, j): number[] => {
    if (!support.band || !(pose.forces[j] > 0)) return [];
    if (support.what === "hoist") return [pickOf(set, support.of)?.at_m ?? []].flat();
    if (support.what === "group") {
      return [pose.situation.trains.find((train) => train.id === support.of)?.deckAt ?? []].flat();
    }
    const soles = set.soleStations_m;
    if (soles === undefined) return [];
    return [support.kind === "near bearings" ? soles.near : soles.far];
  });
  return [...new Set(stations)].sort((a, b) => a - b);
}
