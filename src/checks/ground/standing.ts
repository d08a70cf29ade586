// What stands on the ground at a pose, in plan: tyres of transporters, tracks of cranes with their mats.

import { type Area, hullOf, placed, rectangle } from "../../mechanics/index.ts";
import { byId, type Crane, hookName, matsAlong } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { deckAt, trainArea, trainsOf } from "./trains.ts";

/** A machine on the ground: its name in findings, and the areas that it covers at a pose; none where it is not there. */
export type Standing = {
  name: string;
  areas: (pose: Pick<Pose, "situation">) => Area[];
} & ({ of: "train" } | { of: "crane"; crane: Crane });

/** Tracks of a crane with their mats, about its centre of rotation, along x. */
export function craneAreas(crane: Crane): Area[] {
  const { trackGauge_m: gauge, trackLength_m: length, trackWidth_m = 0, mat } = crane;
  const width = Math.max(trackWidth_m, mat?.length_m ?? 0);
  const long = mat ? Math.max(length, matsAlong(crane) * mat.width_m) : length;
  if (width === 0) return [];
  return [rectangle(0, gauge / 2, long, width), rectangle(0, -gauge / 2, long, width)];
}

/** The same where it stands in plan, moved by so much from its place. */
export function craneAreasAt(crane: Crane, [dx, dy]: readonly [number, number]): Area[] {
  const { chainage_m, y_m } = crane.position;
  const turn = ((crane.facing_deg ?? 0) * Math.PI) / 180;
  return craneAreas(crane).map((area) => placed(area, turn, chainage_m + dx, y_m + dy));
}

/** Where a crane stands against its place in the plan, m. */
export function movedAt(crane: Crane, { situation }: Pick<Pose, "situation">): readonly [number, number] {
  for (const c of situation.cranes) if (c.id === crane.id) return c.moved;
  return [0, 0];
}

/** All machines of a set that stand on the ground. Cranes without a width of track are left out: an open item. */
export function standingOf(ctx: SetContext): Standing[] {
  const trains = trainsOf(ctx).map(
    (train): Standing => ({
      name: train.t.id,
      of: "train",
      areas: (pose) => {
        const at = deckAt(train, pose);
        return at === null ? [] : [trainArea(train, at)];
      },
    }),
  );
  const cranes = ctx.set.picks.map((pick): Standing => {
    const crane = byId(ctx.plan.cranes, pick.crane);
    return {
      name: hookName(crane),
      of: "crane",
      crane,
      areas: (pose) => craneAreasAt(crane, movedAt(crane, pose)),
    };
  });
  return [...trains, ...cranes];
}

/** The ground that areas sweep between two poses: machines travel straight, so that it is the hull of both. */
export function swept(a: readonly Area[], b: readonly Area[]): Area[] {
  return a.flatMap((area, i) =>
    b[i] === undefined
      ? []
      : [hullOf([...area, ...b[i]].map(([x, y]) => ({ x, y }))).map(({ x, y }) => [x, y] as const)],
  );
}
