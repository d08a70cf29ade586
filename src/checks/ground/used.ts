// The ground over a whole run: every pressure where it is used most, and how near machines come to walls and edges.

import { type Pose, poseAt, type SetContext, type SetRun } from "../../sequence/index.ts";
import { type Measure, useOf as partOfLimit } from "../measure.ts";
import type { When } from "../types.ts";
import { axlePressures, tyrePressures } from "./axlePressure.ts";
import { matLoads } from "./mats.ts";
import { leastDistance } from "./setback.ts";
import { standingOf } from "./standing.ts";
import { pressuresOverSwing, pressuresUnloaded } from "./swing.ts";
import { trackPressures } from "./trackPressure.ts";
import { nearestTo, wallsOf } from "./walls.ts";

/** A pressure, or an action of a mat, where it is used most. */
export interface GroundUse {
  check: string;
  subject: string;
  /** In the unit stated. */
  value: number;
  limit: number;
  unit: string;
  digits: number;
  use: number;
  at: When;
  where: string;
  source: string;
}

/** How near a machine comes to a wall or an edge, m; below 0 where it reaches beyond a wall's face. */
export interface GroundDistance {
  machine: string;
  to: string;
  distance: number;
  at: When;
}

/** Everything that the ground is asked for over a run; poses are solved again. */
export function groundUse(ctx: SetContext, run: SetRun): { uses: GroundUse[]; distances: GroundDistance[] } {
  const poses: Pose[] = [];
  for (let i = 0; i < run.count; i++) poses.push(poseAt(ctx, run.steps[run.step[i]], run.progress[i]));
  const solved = poses.map((pose) => pose.solution.status === "solved");
  const when = (i: number): When => ({ step: run.step[i], progress: run.progress[i] });
  const makers = [
    trackPressures,
    pressuresOverSwing,
    pressuresUnloaded,
    matLoads,
    axlePressures,
    tyrePressures,
  ];
  const uses = makers.flatMap((make) => make(ctx)).flatMap((m) => mostUsed(m, poses, solved, when));
  const machines = standingOf(ctx);
  const walls = machines.flatMap((machine) =>
    wallsOf(ctx.plan).map((wall) => ({
      machine: machine.name,
      to: `${wall.name} backwall`,
      ...nearestTo(wall, machine, poses),
    })),
  );
  const edges = machines.flatMap((machine) => {
    const areas = poses.map((pose) => machine.areas(pose));
    return (ctx.plan.site.edges ?? []).map((edge) => ({
      machine: machine.name,
      to: edge.name,
      ...leastDistance(areas, run, edge),
    }));
  });
  const distances = [...walls, ...edges].flatMap((d) => (d.at < 0 ? [] : [{ ...d, at: when(d.at) }]));
  return { uses, distances };
}

function mostUsed(
  m: Measure,
  poses: readonly Pose[],
  solved: readonly boolean[],
  when: (i: number) => When,
): GroundUse[] {
  let best = -1;
  let use = -1;
  poses.forEach((pose, i) => {
    if (!solved[i]) return;
    const u = partOfLimit(m, m.read(pose));
    if (u > use) {
      use = u;
      best = i;
    }
  });
  if (best < 0) return [];
  const r = m.read(poses[best]);
  return [
    {
      check: m.check,
      subject: m.subject,
      value: r.value * m.factor,
      limit: r.limit * m.factor,
      unit: m.unit,
      digits: m.digits,
      use,
      at: when(best),
      where: r.where ?? "",
      source: r.source ?? m.source,
    },
  ];
}
