// rebunk: an empty transporter drives to another place under the set, or comes back under it; then it is jacked up.

import { byId } from "../../plan/index.ts";
import type { Happening, SetContext, Situation } from "../types.ts";
import { bunkGap, happening, type MotionOf, type Probe, sunkLess } from "./kind.ts";
import { DRIVE_GAP, stopLineAhead, trainAhead } from "./way.ts";

type Rebunk = Parameters<MotionOf<"rebunk">["find"]>[1];

/** Distance between two places at which the clearance over the bunks is looked at, m. */
const LOOK = 0.5;

/** Along the path first, then, for a transporter that had left to a side, across to the path's axis. */
function driven(
  ctx: SetContext,
  step: Rebunk,
  start: Situation,
  progress: number,
  packed: boolean,
): Situation {
  if (progress === 0) return start;
  const train = byId(start.trains, step.transporter);
  const [dx, dy] = wayOf(step, start);
  const total = Math.abs(dx) + Math.abs(dy);
  const travelled = progress * total;
  const x = Math.min(travelled, Math.abs(dx)) * Math.sign(dx);
  const y = Math.max(0, travelled - Math.abs(dx)) * Math.sign(dy);
  const machine = byId(ctx.plan.transporters, step.transporter);
  const arrived = progress >= 1;
  const beside = dy !== 0 && !arrived;
  const packing = packed && arrived ? packingOf(step, train.packing) : train.packing;
  const station = arrived ? step.deckAt_m : train.deckAt + train.gone[0] + x;
  return {
    ...start,
    trains: start.trains.map((t) =>
      t.id === step.transporter
        ? {
            ...t,
            under: !beside,
            deckAt: station,
            gone: beside ? ([0, train.gone[1] + y] as [number, number]) : ([0, 0] as [number, number]),
            packing,
          }
        : t,
    ),
    sunk: sunkLess(
      start.sunk,
      machine.groups.map((g) => g.name),
      travelled / machine.pitch_m,
    ),
  };
}

/** What is left to drive, m: along the path and across it. */
function wayOf(step: Rebunk, start: Situation): [number, number] {
  const { deckAt, gone } = byId(start.trains, step.transporter);
  return [step.deckAt_m - deckAt - gone[0], -gone[1]];
}

function packingOf(step: Rebunk, before: Record<string, number>): Record<string, number> {
  if (!step.packing_mm) return before;
  const given = Object.entries(step.packing_mm).map(([g, mm]) => [g, mm / 1000]);
  return { ...before, ...Object.fromEntries(given) };
}

/** Least gap above the bunks along the way, where they are below the set, m; and the progress there. */
function leastGap(ctx: SetContext, step: Rebunk, start: Situation, probe: Probe): [number, number] {
  const [dx, dy] = wayOf(step, start);
  const looks = Math.max(1, Math.ceil((Math.abs(dx) + Math.abs(dy)) / LOOK));
  let least: [number, number] = [Number.POSITIVE_INFINITY, 0];
  for (let i = 0; i <= looks; i++) {
    const pose = probe(driven(ctx, step, start, i / looks, false));
    if (pose.solution.status !== "solved") continue;
    const gap = bunkGap(pose, step.transporter);
    if (gap < least[0]) least = [gap, i / looks];
  }
  return least;
}

export const rebunk: MotionOf<"rebunk"> = {
  find: (ctx, step, start, probe) => {
    const id = step.transporter;
    const happenings: Happening[] = [];
    const train = start.trains.find((t) => t.id === id);
    if (!train)
      return {
        ends: [],
        happenings: [happening("out of order", id, `${id} is no transporter of this set`)],
      };
    for (const lashing of start.lashed)
      if (ctx.plan.lashings.find((l) => l.id === lashing)?.transporter === id)
        happenings.push(happening("out of order", id, `lashing ${lashing} still ties it to the set`));
    const [gap, at] = leastGap(ctx, step, start, probe);
    if (gap === 0 && at === 0)
      happenings.push(
        happening("not clear", id, `${id} still carries load: it cannot drive to other bunks`, {
          value: 0,
          limit: DRIVE_GAP,
          unit: "m",
        }),
      );
    else if (gap < DRIVE_GAP)
      happenings.push(
        happening(
          "not clear",
          id,
          gap === 0
            ? `on its way the bunks of ${id} come up against the set`
            : `on its way the bunks of ${id} come to ${(gap * 1000).toFixed(0)} mm of the set`,
          { value: gap, limit: DRIVE_GAP, unit: "m", progress: at },
        ),
      );
    const [dx] = wayOf(step, start);
    const blocking = [trainAhead(ctx, start, id, dx), stopLineAhead(ctx, start, id, dx)];
    for (const b of blocking) {
      if (!b) continue;
      const words = `${b.name} stands in its way after ${b.free.toFixed(1)} m`;
      happenings.push(happening("not clear", id, words, { value: Math.abs(dx), limit: b.free, unit: "m" }));
    }
    if (step.packing_mm && gap >= DRIVE_GAP) {
      const packed = probe(driven(ctx, step, start, 1, true));
      if (packed.solution.status === "solved" && bunkGap(packed, id) === 0)
        happenings.push(
          happening("not clear", id, `the packing named does not go in above the bunks of ${id}`, {
            progress: 1,
          }),
        );
    }
    const dy = wayOf(step, start)[1];
    return { ends: [Math.abs(dx) / (Math.abs(dx) + Math.abs(dy) || 1)], happenings };
  },
  at: (ctx, step, start, _ends, progress) => driven(ctx, step, start, progress, true),
  // Where it turns from along to across.
  marks: (_step, ends) => ends.filter((p) => p > 0 && p < 1),
};
