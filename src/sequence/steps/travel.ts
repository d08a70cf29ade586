// roll, roll together, drive out: motions of the transporters along the path.

import { byId } from "../../plan/index.ts";
import { boomOf, movedPlane, planeLevel, wheelsOf } from "../place.ts";
import type { Happening, Pose, SetContext, Situation } from "../types.ts";
import { bunkGap, happening, hookForce, type MotionOf, soffitLevel, sunkLess, withCrane } from "./kind.ts";
import { axles, beyondAxles, DRIVE_GAP, provable, stopLineAhead, sweptGap, trainAhead } from "./way.ts";

/** Trains that carry the set and so travel with it; an empty one that still stands under the set stays where it is. */
function travelling(start: Situation, pose: Pose): string[] {
  return start.trains.filter((t) => t.under && bunkGap(pose, t.id) === 0).map((t) => t.id);
}

/** The travelling trains as one number, so that a motion can be rebuilt from its ends. */
function maskOf(start: Situation, movers: string[]): number {
  return start.trains.reduce((mask, t, i) => mask + (movers.includes(t.id) ? 2 ** i : 0), 0);
}

/** Distance that may be travelled before a stop line or a standing train, and what ends it. */
function room(
  ctx: SetContext,
  start: Situation,
  movers: string[],
  distance: number,
): [number, string | null] {
  if (distance <= 0) return [distance, null];
  let allowed = distance;
  let by: string | null = null;
  for (const id of movers) {
    const [, front] = axles(ctx, start, id);
    for (const line of ctx.plan.site.stopLines) {
      const free = line.chainage_m - front;
      if (free >= -1e-9 && free < allowed - 1e-9) {
        allowed = Math.max(0, free);
        by = `stop line ${line.name}`;
      }
    }
    for (const other of start.trains) {
      if (!other.under || movers.includes(other.id)) continue;
      const [rear] = axles(ctx, start, other.id);
      const lengths = beyondAxles(ctx, id) + beyondAxles(ctx, other.id);
      const free = rear - lengths - front;
      if (rear > front && free < allowed - 1e-9) {
        allowed = Math.max(0, free);
        by = `transporter ${other.id}`;
      }
    }
  }
  return [allowed, by];
}

function rolled(ctx: SetContext, start: Situation, distance: number, mask: number): Situation {
  const rearEnd = start.rearEnd + distance;
  const moves = (i: number) => Math.floor(mask / 2 ** i) % 2 === 1;
  const movers = start.trains.filter((_, i) => moves(i));
  return {
    ...start,
    rearEnd,
    plane: movedPlane(ctx.plan, start, rearEnd, movers),
    // What does not travel stays where it stands, also a train that has left.
    trains: start.trains.map((t, i) => (moves(i) ? t : { ...t, deckAt: t.deckAt - distance })),
    sunk: movers.reduce((sunk, t) => offHollows(ctx, sunk, t.id, distance), start.sunk),
  };
}

/** Parts of a travel (0..1) at which an axle line passes a corner of the path, or the last wheel leaves its hollow. */
function corners(ctx: SetContext, start: Situation, distance: number, mask: number): number[] {
  const out = new Set<number>();
  if (distance === 0) return [];
  start.trains.forEach((t, i) => {
    if (Math.floor(mask / 2 ** i) % 2 === 0) return;
    const { pitch_m, groups } = byId(ctx.plan.transporters, t.id);
    const lines = new Set(wheelsOf(ctx.plan, t.id).map((w) => start.rearEnd + t.deckAt + t.gone[0] + w.x));
    for (const x of lines)
      for (const point of ctx.plan.site.path.points) out.add((point.chainage_m - x) / distance);
    if (groups.some((g) => g.name in start.sunk)) out.add(pitch_m / Math.abs(distance));
  });
  return [...out].filter((part) => part > 0 && part < 1);
}

/** Wheels roll out of the hollows that they stood in within one pitch of their axle lines. */
function offHollows(ctx: SetContext, sunk: Situation["sunk"], id: string, distance: number) {
  const t = byId(ctx.plan.transporters, id);
  return sunkLess(
    sunk,
    t.groups.map((g) => g.name),
    Math.abs(distance) / t.pitch_m,
  );
}

function blocked(distance: number, allowed: number, by: string | null, mover: string): Happening[] {
  if (by === null) return [];
  return [
    happening(
      "not clear",
      mover,
      `${by} ends the travel after ${allowed.toFixed(2)} m of ${distance.toFixed(2)} m`,
      {
        value: distance,
        limit: allowed,
        unit: "m",
        progress: 1,
      },
    ),
  ];
}

export const roll: MotionOf<"roll"> = {
  find: (ctx, step, start, probe) => {
    const happenings: Happening[] = [];
    for (const c of start.cranes)
      if (c.hooked)
        happenings.push(
          happening("out of order", c.id, `${c.id} is hooked up while the trains roll without it`),
        );
    const pose = probe(start);
    const movers = travelling(start, pose);
    const [allowed, by] = room(ctx, start, movers, step.distance_m);
    happenings.push(...blocked(step.distance_m, allowed, by, movers[movers.length - 1] ?? "transporter"));
    return { ends: [allowed, maskOf(start, movers)], happenings };
  },
  at: (ctx, _step, start, ends, progress) => rolled(ctx, start, ends[0] * progress, ends[1]),
  looks: (ctx, _step, start, ends) => corners(ctx, start, ends[0], ends[1]),
};

/** Part of every bite in which the trains roll; in the rest the boom brings the line plumb again. */
const ROLLING = 0.8;

/** How far the trains and the boom tips have come at a progress, m. */
export function biteAt(distance: number, bite: number, progress: number): { rolled: number; tip: number } {
  const n = Math.max(1, Math.ceil(Math.abs(distance) / bite - 1e-9));
  const each = distance / n;
  if (progress >= 1) return { rolled: distance, tip: distance };
  const i = Math.floor(progress * n);
  const u = progress * n - i;
  return {
    rolled: (i + Math.min(1, u / ROLLING)) * each,
    tip: (i + Math.max(0, (u - ROLLING) / (1 - ROLLING))) * each,
  };
}

export const rollTogether: MotionOf<"roll together"> = {
  find: (ctx, step, start, probe) => {
    const happenings: Happening[] = [];
    for (const c of start.cranes) {
      if (c.hooked && !step.cranes.includes(c.id))
        happenings.push(happening("out of order", c.id, `${c.id} is hooked up but does not follow`));
      if (!c.hooked && step.cranes.includes(c.id))
        happenings.push(happening("out of order", c.id, `${c.id} is to follow but is not hooked up`));
    }
    const pose = probe(start);
    const movers = travelling(start, pose);
    const [allowed, by] = room(ctx, start, movers, step.distance_m);
    happenings.push(...blocked(step.distance_m, allowed, by, movers[movers.length - 1] ?? "transporter"));
    const loads = step.cranes.map((id) =>
      step.hold === "load"
        ? step.load_kN !== undefined
          ? step.load_kN * 1000
          : hookForce(ctx, pose, id)
        : 0,
    );
    return { ends: [allowed, maskOf(start, movers), ...loads], happenings };
  },
  at: (ctx, step, start, ends, progress) => {
    const { rolled: x, tip } = biteAt(ends[0], step.bite_m, progress);
    let s = rolled(ctx, start, x, ends[1]);
    step.cranes.forEach((id, i) => {
      const before = start.cranes.find((c) => c.id === id);
      const pick = ctx.set.picks.find((p) => p.crane === id);
      if (!before?.hooked || !pick) return;
      s = withCrane(s, id, (c) => ({ tip: [c.tip[0] + tip, c.tip[1]] }));
      if (step.hold === "elevation") {
        // The hook keeps its height above the path: boom and hoist move together.
        const takeUp = before.tautAt - planeLevel(start, pick.at_m, 0);
        s = withCrane(s, id, () => ({ tautAt: planeLevel(s, pick.at_m, 0) + takeUp }));
      } else if (step.hold === "rope") {
        const machine = byId(ctx.plan.cranes, id);
        const level = (x: number) => boomOf(machine, [x, before.tip[1]], before.moved).tip[2];
        const rise = level(before.tip[0] + tip) - level(before.tip[0]);
        s = withCrane(s, id, () => ({ tautAt: before.tautAt + rise }));
      } else s = withCrane(s, id, () => ({ heldLoad: progress === 0 ? null : ends[2 + i] }));
    });
    return s;
  },
  marks: (step, ends) => {
    const n = Math.max(1, Math.ceil(Math.abs(ends[0]) / step.bite_m - 1e-9));
    const out: number[] = [];
    for (let i = 0; i < n; i++) {
      out.push((i + ROLLING) / n);
      if (i > 0) out.push(i / n);
    }
    return out;
  },
  looks: (ctx, step, start, ends) => {
    const n = Math.max(1, Math.ceil(Math.abs(ends[0]) / step.bite_m - 1e-9));
    return corners(ctx, start, ends[0], ends[1]).map((part) => {
      const i = Math.floor(part * n);
      return (i + (part * n - i) * ROLLING) / n;
    });
  },
  // The rope is locked at the load it held: take-up = where the picks hang + stretch of the line.
  settle: (_ctx, end, pose) => {
    const { layout, hoistForce } = pose.solution;
    let s = end;
    layout.hoists.forEach((h, i) => {
      if (h.mode !== "load") return;
      let level = 0;
      for (const g of layout.hoistGirders[i])
        level += soffitLevel(pose, g, h.at) / layout.hoistGirders[i].length;
      const takeUp = level * layout.up[2] + hoistForce[i] / h.stiffness;
      s = withCrane(s, h.name, () => ({ heldLoad: null, tautAt: planeLevel(end, h.at, 0) + takeUp }));
    });
    return s;
  },
};

export const driveOut: MotionOf<"drive out"> = {
  find: (ctx, step, start, probe) => {
    const happenings: Happening[] = [];
    const train = start.trains.find((t) => t.id === step.transporter);
    if (!train?.under)
      return {
        ends: [0, 0],
        happenings: [happening("out of order", step.transporter, `${step.transporter} is not under the set`)],
      };
    const pose = probe(start);
    const gap = bunkGap(pose, step.transporter);
    const limit = DRIVE_GAP;
    if (!(gap >= limit))
      happenings.push(
        happening(
          "not clear",
          step.transporter,
          gap === 0
            ? `${step.transporter} still carries load: it cannot drive out`
            : `the bunks of ${step.transporter} are only ${(gap * 1000).toFixed(0)} mm clear of the set`,
          { value: gap, limit, unit: "m" },
        ),
      );
    for (const id of start.lashed) {
      const l = ctx.plan.lashings.find((x) => x.id === id);
      if (l?.transporter === step.transporter)
        happenings.push(
          happening("out of order", step.transporter, `lashing ${id} still ties it to the set`),
        );
    }
    happenings.push(...provable(ctx, step, start));
    if (step.toward === "back" || step.toward === "forward") {
      const by = step.toward === "back" ? -step.distance_m : step.distance_m;
      const ahead = [
        trainAhead(ctx, start, step.transporter, by),
        stopLineAhead(ctx, start, step.transporter, by),
      ];
      for (const other of ahead) {
        if (!other) continue;
        happenings.push(
          happening(
            "not clear",
            step.transporter,
            `${other.name} stands in its way after ${other.free.toFixed(1)} m`,
            { value: step.distance_m, limit: other.free, unit: "m" },
          ),
        );
      }
      const least = sweptGap(ctx, start, pose, step.transporter, by);
      if (least < DRIVE_GAP)
        happenings.push(
          happening(
            "not clear",
            step.transporter,
            `on its way out the bunks come to ${(least * 1000).toFixed(0)} mm of the set`,
            { value: least, limit: DRIVE_GAP, unit: "m" },
          ),
        );
    }
    return { ends: [step.distance_m], happenings };
  },
  at: (ctx, step, start, ends, progress) => {
    if (progress === 0) return start;
    const d = ends[0] * progress;
    const gone: [number, number] =
      step.toward === "back"
        ? [-d, 0]
        : step.toward === "forward"
          ? [d, 0]
          : [0, step.toward === "left" ? d : -d];
    return {
      ...start,
      trains: start.trains.map((t) => (t.id === step.transporter ? { ...t, under: false, gone } : t)),
      sunk: offHollows(ctx, start.sunk, step.transporter, d),
    };
  },
};
