// How far and how long: what moves in a part of a step, in metres, and how many minutes it takes.

import { byId } from "../plan/index.ts";
import { boomOf, type SetContext, type Situation, type StepRun, situationAt } from "../sequence/index.ts";

/** What a stretch of a step moves. */
export interface Extent {
  /** Travel of the set, or else the furthest that a hook or a group is moved, m; 0 when nothing moves it. */
  length: number;
  motion: "rolled" | "brought over" | "hoisted" | "jacked" | "";
  /** From the step's own minutes, or else from the speeds of its machines; null when neither tells. */
  minutes: number | null;
}

/** Just after the start, when a line that was slack has been taken in. */
const BEGUN = 1e-12;

/** Extent of a step between two of its progresses. */
export function extentOf(ctx: SetContext, run: StepRun, from: number, to: number): Extent {
  const a = situationAt(ctx, run, Math.max(from, BEGUN));
  const b = situationAt(ctx, run, to);
  const travel = Math.hypot(b.rearEnd - a.rearEnd, b.across - a.across);
  const hoisted = hookMoves(a, b);
  const jacked = Object.keys(b.groupLift).map((g) => Math.abs(b.groupLift[g] - (a.groupLift[g] ?? 0)));
  const furthest = (list: number[]) => Math.max(0, ...list);
  const motion = ((): Pick<Extent, "length" | "motion"> => {
    if (travel > 0)
      return { length: travel, motion: run.step.do === "bring over" ? "brought over" : "rolled" };
    const up = furthest(hoisted.map((h) => Math.abs(h.up)));
    if (up > 0) return { length: up, motion: "hoisted" };
    const oil = furthest(jacked);
    return { length: oil, motion: oil > 0 ? "jacked" : "" };
  })();
  const { minutes } = run.step;
  if (minutes !== undefined) return { ...motion, minutes: minutes * (to - from) };
  return { ...motion, minutes: minutesAtSpeed(ctx, a, b, motion.motion) };
}

/** How far every hooked line was taken in between two situations, m; down is negative. */
export function hookMoves(a: Situation, b: Situation): { crane: string; up: number }[] {
  return b.cranes.flatMap((c) => {
    const before = a.cranes.find((x) => x.id === c.id);
    if (!before?.hooked || !c.hooked || c.tautAt === before.tautAt) return [];
    return [{ crane: c.id, up: c.tautAt - before.tautAt }];
  });
}

/** Minutes at the machines' own speeds, the slowest of them; null for oil and for what nothing is known of. */
function minutesAtSpeed(
  ctx: SetContext,
  a: Situation,
  b: Situation,
  motion: Extent["motion"],
): number | null {
  const { cranes, transporters } = ctx.plan;
  if (motion === "rolled") {
    const trains = b.trains.filter((t) => t.under).map((t) => byId(transporters, t.id));
    return slowest(trains.map((t) => at(Math.abs(b.rearEnd - a.rearEnd), t.speed_m_per_min)));
  }
  if (motion === "hoisted")
    return slowest(
      hookMoves(a, b).map((h) => at(Math.abs(h.up), byId(cranes, h.crane).hoistSpeed_m_per_min)),
    );
  if (motion !== "brought over") return null;
  return slowest(
    b.cranes.flatMap((c) => {
      const before = a.cranes.find((x) => x.id === c.id);
      if (!c.hooked || !before) return [];
      const crane = byId(cranes, c.id);
      const [from, to] = [boomOf(crane, before.tip, before.moved), boomOf(crane, c.tip, c.moved)];
      const boom = Math.abs(to.angle - from.angle) * DEGREES;
      const swing = between(heading(from), heading(to)) * DEGREES;
      return [at(boom, crane.boomSpeed_deg_per_min), at(swing, crane.swingSpeed_deg_per_min)];
    }),
  );
}

const DEGREES = 180 / Math.PI;

/** Minutes for a way at a speed; none for no way, null when the speed is not stated. */
function at(way: number, speed: number | undefined): number | null {
  if (way === 0) return 0;
  return speed === undefined ? null : way / speed;
}

/** The longest of some times; null when there is none or one of them is not known. */
function slowest(times: (number | null)[]): number | null {
  let most: number | null = null;
  for (const t of times) {
    if (t === null) return null;
    most = Math.max(most ?? 0, t);
  }
  return most;
}

/** Direction of a boom in plan, rad. */
function heading({ foot, tip }: ReturnType<typeof boomOf>): number {
  return Math.atan2(tip[1] - foot[1], tip[0] - foot[0]);
}

/** Angle between two directions, rad. */
function between(a: number, b: number): number {
  return Math.abs(Math.atan2(Math.sin(b - a), Math.cos(b - a)));
}
