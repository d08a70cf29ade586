// How near the set and each transporter are to turning over the lines between group centroids, as angle, way and load.
//
// The statics of the pose give every group's force, and so where the load acts on the ground, with grade, crossfall and all
// that is on. On top of that come, each told apart: what lean and level of deck and set carry aside; the wind of the
// step's limit; starting, stopping and turning while it travels; and the suspension, by which every tilt across grows to
// 1/(1 - sum(W h)/k). Along, decks stand on groups metres apart, and the growth is below 1 %: it is left out.
//
// A transporter alone: what it carries presses on its bunks, so that in a tilt along only the height of the bunks works
// (the rest of the set is held elsewhere), and across the height of the set's centre of gravity. Together: all transporters
// that carry are one body on the hull of all their groups. Source: statics of rigid bodies on springs.

import {
  attitudeOf,
  BARE_GIRDERS,
  baseOf,
  type EdgeMargin,
  gustPressure,
  leastMargin,
  loadToReach,
  type OnBase,
  type Solution,
  windCase,
} from "../../mechanics/index.ts";
import type { Transporter } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { leanStiffnessOf } from "../lean.ts";
import { type Limit, limitOf } from "../limits.ts";
import { overturningOf } from "../tilt.ts";
import { at, deckOf, onDeck, trains, travels } from "./trains.ts";

/** A group under a transporter: its centroid from the deck's centre, its wheels, and the place of its force. */
export interface Centroid {
  name: string;
  x: number;
  y: number;
  wheels: number;
  force: number;
}

/** What acts on a body on groups beside the loads of the pose: how far each carries its load aside, m. */
export interface Asides {
  /** By level along (forward positive) and by lean across (left positive), the growth on the suspension in it. */
  levelled: number;
  leaned: number;
  /** Times that a tilt across grows. */
  growth: number;
  wind: number;
  along: number;
  across: number;
  /** Wind speed of the step, m/s; 0 with `stated` false where the step has no wind limit. */
  speed: number;
  stated: boolean;
  /** Windward girder's area times its height over the ground, m3, and the part of the wind on it that is carried. */
  blown: number;
  windShare: number;
}

/** A body on groups at a pose. */
export interface Standing {
  /** Edge by the names of its groups, and the group furthest from it. */
  edge: string;
  opposite: string;
  /** Of the edge's inward normal, and the distance of the load from it by the group forces alone, m. */
  nx: number;
  ny: number;
  plain: number;
  onBase: OnBase;
  asides: Asides;
  margin: EdgeMargin;
  /** Equal share of the furthest group by its wheels, N. */
  share: number;
  /** Load to be added at the furthest group for a tilt, rad; null where none is enough. */
  toReach: (angle: number) => number | null;
}

/** One body of a set: a transporter, or all that carry. */
interface Body {
  list: { t: Transporter; centroids: Centroid[] }[];
  whole: boolean;
}

/** Named factors of motion, as shares of gravity. */
export interface Motion {
  along: Limit;
  across: Limit;
}

/** Centroids of the groups of a transporter. */
export function centroidsOf(ctx: SetContext, t: Transporter): Centroid[] {
  return t.groups.map((g) => {
    let x = 0;
    let y = 0;
    for (const wheel of g.wheels) {
      const line = Number.parseInt(wheel, 10);
      x += ((line - (t.lines + 1) / 2) * t.pitch_m) / g.wheels.length;
      y += ((wheel.endsWith("L") ? 1 : -1) * t.gauge_m) / 2 / g.wheels.length;
    }
    return { name: g.name, x, y, wheels: g.wheels.length, force: at(ctx, `group ${g.name}`) };
  });
}

/** The bodies of a set by their name: each transporter, and `set` for all that carry together. */
export function bodiesOf(ctx: SetContext): Map<string, Body> {
  const list = trains(ctx).map((t) => ({ t, centroids: centroidsOf(ctx, t) }));
  const out = new Map<string, Body>(list.map((one) => [one.t.id, { list: [one], whole: false }]));
  if (list.length > 1) out.set("set", { list, whole: true });
  return out;
}

export function motionOf(ctx: SetContext): Motion | null {
  const along = limitOf(ctx.plan, "acceleration along");
  const across = limitOf(ctx.plan, "acceleration across");
  return along && across ? { along, across } : null;
}

/** Part of the stiffness against lean that the weights use up; NaN where the lean of a lone girder is taken as held. */
export function usedUp(pose: Pose): number {
  const pull = pose.solution.model.lean < 0 ? null : overturningOf(pose.solution);
  return pull === null ? Number.NaN : pull / leanStiffnessOf(pose);
}

const attitudes = new WeakMap<Solution, { lean: number; level: number }>();

/** Lean and level of the set, kept with the solution: every body asks for them. */
function attitudeAt(solution: Solution): { lean: number; level: number } {
  let known = attitudes.get(solution);
  if (known === undefined) {
    known = attitudeOf(solution);
    attitudes.set(solution, known);
  }
  return known;
}

/** Moment about the ground of a unit of pressure on a windward girder whose soffit is `arm` above it, m3. */
const blownMoment = ({ force, height }: { force: number; height: number }, arm: number): number =>
  Math.abs(force) * (height + arm);

/** Far enough ahead and behind that nothing tips there, m. */
const FAR = 1000;

/** A group on either side alone: what stands on them is held along by other supports, and tips across only. */
function stripOf(centroids: readonly Centroid[]) {
  if (centroids.length !== 2 || centroids[0].y === centroids[1].y) return null;
  return baseOf(centroids.flatMap((c) => [-FAR, FAR].map((x): Centroid => ({ ...c, x: c.x + x }))));
}

/**
 * How a body of a set stands at a pose; null where it carries nothing, where fewer than two transporters carry together,
 * where the lean is not the pose's own (a single girder), or where it turns over by itself (`tilting over` says so).
 */
export function standingOf(ctx: SetContext, pose: Pose, body: Body, motion: Motion): Standing | null {
  const { solution, state } = pose;
  const { model, contact, layout } = solution;
  const g = state.gravity;
  const weight = model.mass * g;
  const used = usedUp(pose);
  if (!(used < 1)) return null;
  const growth = 1 / (1 - used);
  let force = 0;
  let x = 0;
  let y = 0;
  let wheels = 0;
  // Moments per radian of tilt, and moments that lean and level bring, N m.
  let tiltAlong = 0;
  let tiltAcross = 0;
  let levelled = 0;
  let leaned = 0;
  let carried = 0;
  let bunkMoment = 0;
  let decks = 0;
  const centroids: Centroid[] = [];
  const { lean, level } = attitudeAt(solution);
  const z = model.cg[2];
  for (const { t, centroids: own } of body.list) {
    const deck = deckOf(pose, t.id);
    const N = deck < 0 ? 0 : onDeck(pose, deck);
    if (!(N > 0)) continue;
    decks++;
    const from = layout.trains[deck].at;
    for (const c of own) {
      const F = pose.forces[c.force];
      force += F;
      x += F * (from + c.x);
      y += F * c.y;
      wheels += c.wheels;
      centroids.push({ ...c, x: from + c.x });
    }
    const own_kg = t.mass_t * 1000 * g * t.cgHeight_m;
    const deckLean = contact.a[model.modes.length + 3 * deck + 1];
    const deckLevel = contact.a[model.modes.length + 3 * deck + 2];
    const low = N * t.bunkHeight_m + own_kg;
    // Nothing else holds the set along: its own height counts too.
    const alone = body.whole || N > 0.999 * weight;
    tiltAlong += low + (alone ? N * z : 0);
    tiltAcross += low + N * z;
    levelled += low * deckLevel + (alone ? N * z * level : 0);
    leaned -= low * deckLean + N * z * lean;
    carried += N;
    bunkMoment += N * t.bunkHeight_m;
  }
  if (decks === 0 || (body.whole && decks < 2)) return null;
  const base = baseOf(centroids) ?? stripOf(centroids);
  if (base === null) return null;

  const heightAlong = tiltAlong / force;
  const heightAcross = (tiltAcross / force) * growth;
  const limit = ctx.set.steps[pose.step]?.windLimit_m_per_s;
  const blows = state.wind === undefined && limit !== undefined && limit > 0;
  let wind = 0;
  let blown = 0;
  if (blows) {
    // What the transporters carry of the set's weight they carry of the wind on it.
    const arm = bunkMoment / carried;
    blown = Math.max(blownMoment(windCase(model, "+y"), arm), blownMoment(windCase(model, "-y"), arm));
    wind = ((gustPressure(limit) * BARE_GIRDERS * blown * (carried / weight)) / force) * growth;
  }
  const moves = travels(ctx, pose);
  const asides: Asides = {
    levelled: levelled / force,
    leaned: (leaned / force) * growth,
    growth,
    wind,
    along: moves ? (motion.along.value / 100) * heightAlong : 0,
    across: moves ? (motion.across.value / 100) * heightAcross : 0,
    speed: blows ? limit : 0,
    stated: limit !== undefined || state.wind !== undefined,
    blown,
    windShare: carried / weight,
  };
  const onBase: OnBase = {
    force,
    x: x / force + asides.levelled,
    y: y / force + asides.leaned,
    heightAlong,
    heightAcross,
    along: asides.along,
    across: asides.wind + asides.across,
  };
  const margin = leastMargin(base, onBase);
  const edge = base.edges[margin.edge];
  const { nx, ny } = edge;
  let opposite = centroids[0];
  for (const c of centroids) if (nx * c.x + ny * c.y > nx * opposite.x + ny * opposite.y) opposite = c;
  const a = base.corners[margin.edge];
  const b = base.corners[(margin.edge + 1) % base.corners.length];
  return {
    edge: `${a.name} to ${b.name}`,
    opposite: opposite.name,
    nx,
    ny,
    plain: (nx * x + ny * y) / force - edge.at,
    onBase,
    asides,
    margin,
    share: (force * opposite.wheels) / wheels,
    toReach: (angle) => loadToReach(edge, margin, force, angle),
  };
}
