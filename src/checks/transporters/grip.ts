// What the wheels of a transporter can pass to the path: friction on the lines that are braked or driven, at their loads.

import type { Transporter } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import type { Limit } from "../limits.ts";
import { constant, field, KN, NUMBER, type Recorder, solved, TONNE, trace } from "../trace.ts";
import { percent } from "./named.ts";
import { deckOf, heldAlong, linesOf, onDeck, pathOf, trains } from "./trains.ts";

/** A transporter whose wheels hold the path: its lines, how many of them do, and what the machine itself can do, N. */
export interface Gripping {
  t: Transporter;
  lines: [number, number][];
  count: number;
  most: number;
  /** The plan's field that says so. */
  mostPath: string;
  room: Float64Array;
}

/** The transporters of a set with braked, or with driven lines. */
export function gripping(ctx: SetContext, which: "brakedLines" | "drivenLines"): Gripping[] {
  const limit = which === "brakedLines" ? "brakeLimit_kN" : "driveLimit_kN";
  return trains(ctx).flatMap((t) => {
    const count = t[which];
    if (count === undefined || count === 0) return [];
    const kN = t[limit];
    return [
      {
        t,
        lines: linesOf(ctx, t),
        count,
        most: kN === undefined ? Number.POSITIVE_INFINITY : kN * 1000,
        mostPath: `${pathOf(ctx, t)}.${limit}`,
        room: new Float64Array(t.lines),
      },
    ];
  });
}

/** Load of the least loaded of its lines that are braked or driven, N: it is not said which of them are. */
function leastLoad(pose: Pose, { lines, count, room }: Gripping): number {
  for (let i = 0; i < lines.length; i++) room[i] = pose.forces[lines[i][0]] + pose.forces[lines[i][1]];
  room.sort();
  let sum = 0;
  for (let i = 0; i < count && i < room.length; i++) sum += room[i];
  return sum;
}

/** What the wheels of those lines can pass to the path, N, written down under `symbol`. */
export function gripOf(
  pose: Pose,
  grip: Gripping,
  friction: number,
  rec: Recorder | null,
  symbol: string,
): number {
  const { t, count, most, mostPath } = grip;
  const load = leastLoad(pose, grip);
  const limit = Math.min(most, friction * load);
  if (rec === null) return limit;
  field(rec, "mu_w", friction, "friction of wheels on the path", "site.path.wheelFriction", friction, NUMBER);
  solved(rec, "F_least", load, "N", `load of the ${count} least loaded axle lines of ${t.id}`);
  const words = `what ${t.id} can pass to the path`;
  if (!Number.isFinite(most)) return trace(rec, symbol, limit, "mu_w*F_least", "N", words);
  field(rec, "H_most", most, `what ${t.id} itself can do`, mostPath, most / 1000, KN);
  return trace(rec, symbol, limit, "min(H_most, mu_w*F_least)", "N", words);
}

/** Part of a transporter's weight along the path, N: what holds it points forward where the path rises. */
export const gradePart = (ctx: SetContext, t: Transporter, pose: Pose): number =>
  pose.solution.layout.up[0] * (t.mass_t * 1000) * ctx.gravity;

/** What a transporter's own weight asks of its wheels along the path, N: forward positive where the path rises. */
export function ownAlong(ctx: SetContext, t: Transporter, pose: Pose, rec: Recorder | null): number {
  if (rec !== null) {
    solved(rec, "s_up", pose.solution.layout.up[0], "1", "sine of the grade of the set");
    field(rec, "m_t", t.mass_t * 1000, `mass of ${t.id}`, `${pathOf(ctx, t)}.mass_t`, t.mass_t, TONNE);
    constant(rec, "g", ctx.gravity, "m/s2", "gravity", "site.gravity_m_per_s2, else ISO 80000-3");
  }
  const words = `own weight of ${t.id} on the grade`;
  return trace(rec, "H_own", gradePart(ctx, t, pose), "s_up*m_t*g", "N", words);
}

/** What everything that travels asks of all wheels together. */
export interface UnderWay {
  /** Standing on the grade, N, forward positive; weight that starts and stops; load on the ground. */
  still: number;
  weight: number;
  onGround: number;
  /** Lines that grip, and the transporters that they belong to. */
  lines: number;
  grips: Gripping[];
}

/** The trains that carry as they travel; null when none of those that carry has wheels that grip. */
export function underWay(
  ctx: SetContext,
  pose: Pose,
  list: readonly Gripping[],
  grips: (id: string) => boolean,
): UnderWay | null {
  const all: UnderWay = {
    still: 0,
    weight: pose.solution.model.mass * ctx.gravity,
    onGround: 0,
    lines: 0,
    grips: [],
  };
  for (const t of trains(ctx)) {
    const deck = deckOf(pose, t.id);
    if (deck < 0 || onDeck(pose, deck) === 0) continue;
    all.still += heldAlong(pose, deck) + ownAlong(ctx, t, pose, null);
    all.weight += t.mass_t * 1000 * ctx.gravity;
    all.onGround += onDeck(pose, deck) + t.mass_t * 1000 * ctx.gravity;
    const grip = list.find((g) => g.t === t);
    if (grip === undefined || !grips(t.id)) continue;
    all.lines += grip.count;
    all.grips.push(grip);
  }
  return all.lines > 0 ? all : null;
}

/** Force to stop all that travels, or to start it against rolling resistance, N. */
export function toMove(rec: Recorder | null, all: UnderWay, along: Limit, rolling: Limit | null): number {
  const a = percent(rec, "a_x", along, "start or stop, part of gravity");
  solved(rec, "H_still", all.still, "N", "force of the wheels along the path, standing");
  solved(rec, "W_all", all.weight, "N", "weight of the set and of the transporters that travel");
  const stop = Math.abs(all.still) + a * all.weight;
  if (rolling === null)
    return trace(rec, "H_all", stop, "abs(H_still) + a_x*W_all", "N", "force to stop all");
  const c = percent(rec, "c_r", rolling, "rolling resistance, part of the load");
  solved(rec, "F_ground", all.onGround, "N", "load of the transporters that travel on the ground");
  const start = stop + c * all.onGround;
  return trace(rec, "H_all", start, "abs(H_still) + a_x*W_all + c_r*F_ground", "N", "force to start all");
}
