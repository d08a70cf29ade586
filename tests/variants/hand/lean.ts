// Hand lean of a set of two girders: girder by girder, since two plate girders joined by frames hardly resist twisting.

import type { Plan } from "../../../src/plan/index.ts";
import { bunkAt, leanStiffness, packed, pathAt, pendulumArm, type Train, trainOf } from "./levers.ts";
import { pickOf } from "./reach.ts";
import { about, exactly, hull, less, plus, type Span, times } from "./span.ts";
import type { Stance } from "./stance.ts";
import type { Weight } from "./weights.ts";
import type { Push } from "./wind.ts";

/** Moments across, of themselves and in N m: St Venant torsion of the girders, bending of the frames, twist of the path. */
const MOMENT = 0.06;
const MOMENT_MORE = 8e3;
/** What twist there is between the supports, taken as torsion: N m per rad, at most, of girders and frames together. */
const TORSION = 4e5;
/** Leans by hand, of themselves and in rad: the middle of a twist that is not quite straight. */
const LEAN = 0.1;
const LEAN_MORE = 1e-3;
/** Crossfall of the path below a train, as a tangent: within this of that below its middle. */
const PATH = 2e-4;
/** A moment is known while groups and bunks on the light side keep a tenth of what they carry. */
const HELD = 0.9;
/** A train that carries nothing stands on its groups with this moment at most, N m: its own weight on the crossfall. */
const FREE = 4e3;
/** Bunks hold a side force as they press while it is less than this part of friction times what they carry. */
const GRIPPED = 0.8;
/** Where a bunk is about to slip, side forces of up to this much more wind may stand for it, of themselves. */
const GUST = 0.06;
/** A spreader at a set that leans by less than this pulls across by its load times it. */
const LEANS = 0.015;

export interface Across {
  /** Moment about the path below a train's middle, N m, > 0 towards the left; none where hand statics do not know it. */
  moments: Partial<Record<Train, Span>>;
  /** Lean against true level, rad, > 0 left side up, at two stations; null where it is not known. */
  ends: [Leaning, Leaning] | null;
}

interface Leaning {
  at: number;
  lean: Span;
}

/** Distance of the girders, m. */
export const distance = (plan: Plan): number => {
  const ys = plan.sets[0].girders.map((g) => g.y_m);
  return Math.max(...ys) - Math.min(...ys);
};

/** Part of a moment of the lumps that the support at `at` has, the other one at `other`. */
const partAt = (w: Weight, at: number, other: number, of: (l: { y: number; z: number }) => number): number =>
  w.lumps.reduce((sum, l) => sum + (l.w * of(l) * (other - l.x)) / (other - at), 0);

const wide = (s: Span, more = 0): Span => {
  const by = MOMENT * Math.max(Math.abs(s.low), Math.abs(s.high)) + MOMENT_MORE + more;
  return { low: s.low - by, high: s.high + by };
};

const slope = (plan: Plan, s: Stance, id: Train): number =>
  pathAt(plan, s.rearEnd + bunkAt(plan, id)).crossfall;

/** Slope of the bunk tops of a train that nothing turns, against true level, > 0 left side up. */
export const bunksLie = (plan: Plan, s: Stance, id: Train): number =>
  packed(plan, id) / distance(plan) - slope(plan, s, id);

/** Lean at a station of a set that leans so at two others. */
export function leanAt([a, b]: [Leaning, Leaning], x: number): Span {
  const t = (x - a.at) / (b.at - a.at);
  const s = plus(times(a.lean, 1 - t), times(b.lean, t));
  const sizes = [a.lean.low, a.lean.high, b.lean.low, b.lean.high].map(Math.abs);
  const more = LEAN * Math.max(...sizes) + LEAN_MORE;
  return { low: s.low - more, high: s.high + more };
}

/** Whether a train's fore groups and its bunks hold a moment between them, with something to spare. */
function holds(plan: Plan, s: Stance, id: Train, M: Span): boolean {
  const share = s.trains[id];
  if (!share) return true;
  const t = trainOf(plan, id);
  const fore = t.groups.find((g) => g.name === `${id} left`)?.wheels.length ?? 0;
  const most = Math.max(Math.abs(M.low), Math.abs(M.high));
  const gross = share.low + t.mass_t * 1000 * 9.80665;
  return (
    most / t.gauge_m < HELD * gross * (fore / (2 * t.lines)) && most < HELD * share.low * (distance(plan) / 2)
  );
}

const UNKNOWN: Across = { moments: {}, ends: null };

/**
 * What a stance does across the set, in the calm or in a wind. On one train and a hook hand statics know no wind: how much
 * of it the bunks hold, which also turn in plan, and how much the line is a matter of slip.
 */
export function across(plan: Plan, w: Weight, s: Stance, push: Push | null = null): Across {
  if (s.between) return UNKNOWN;
  const { rear, front } = s.trains;
  const { far, near } = s.hooks;
  const held = near && near.high > 0 ? near : null;
  if (rear && front && front.high > 0) return onTrains(plan, w, s, far ?? exactly(0), push);
  if (rear && rear.low > 0 && far && !held) return push ? UNKNOWN : onRearAndFar(plan, w, s, far);
  if ((!rear || rear.high === 0) && !front && !s.bearings && far && held)
    return hung(plan, w, far, held, push);
  return UNKNOWN;
}

/** Lean of a set on a train's bunks. */
const deck = (plan: Plan, s: Stance, id: Train, M: Span): Leaning => ({
  at: bunkAt(plan, id),
  lean: plus(times(M, -1 / leanStiffness(plan, id)), exactly(bunksLie(plan, s, id))),
});

/** Part of a force across that the support at `at` has, the other one at `other`, N. */
const partOf = ({ F, x }: Push, at: number, other: number): number => (F * (other - x)) / (other - at);

/** Whether the bunks of a train hold what of a wind is theirs, beside what the crossfall asks of them. */
function grips(plan: Plan, s: Stance, id: Train, F: number): boolean {
  const share = s.trains[id];
  if (!share) return true;
  const friction = trainOf(plan, id).bunkFriction ?? 0;
  return Math.abs(F) * (1 + GUST) < share.low * (GRIPPED * friction - Math.abs(slope(plan, s, id)));
}

function onTrains(plan: Plan, w: Weight, s: Stance, T: Span, push: Push | null): Across {
  const up = trainOf(plan, "rear").bunkHeight_m;
  const pick = pickOf(plan, "far");
  const c = hull(...(["rear", "front"] as Train[]).map((id) => about(slope(plan, s, id), 0, PATH)));
  const turned =
    Math.max(...(["rear", "front"] as Train[]).map((id) => Math.abs(packed(plan, id)))) / distance(plan);
  // The spreader pulls the leaning set upright, and holds its top against the crossfall.
  const upright = T.high * pendulumArm(plan, "far", w) * (LEANS + turned);
  const hook = plus(times(c, T.high * (pick.height_m + up)), { low: -upright, high: upright });
  const twist = TORSION * (Math.abs(packed(plan, "rear") - packed(plan, "front")) / distance(plan));
  const own = (at: number, other: number): Span => {
    const held = times(hull(exactly(0), hook), (other - pick.at_m) / (other - at));
    const slid = times(
      c,
      partAt(w, at, other, (l) => l.z + up),
    );
    const blown = push === null ? 0 : partOf(push, at, other) * (push.z + up);
    const gust = plus(
      exactly(partAt(w, at, other, (l) => l.y)),
      hull(exactly(blown), exactly(blown * (1 + GUST))),
    );
    return wide(plus(gust, less(slid, held)), twist);
  };
  const [a, b] = [bunkAt(plan, "rear"), bunkAt(plan, "front")];
  if (
    push !== null &&
    !(grips(plan, s, "rear", partOf(push, a, b)) && grips(plan, s, "front", partOf(push, b, a)))
  )
    return UNKNOWN;
  const moments = { rear: own(a, b), front: own(b, a) };
  if (!holds(plan, s, "rear", moments.rear) || !holds(plan, s, "front", moments.front)) return UNKNOWN;
  return { moments, ends: [deck(plan, s, "rear", moments.rear), deck(plan, s, "front", moments.front)] };
}

function onRearAndFar(plan: Plan, w: Weight, s: Stance, T: Span): Across {
  const up = trainOf(plan, "rear").bunkHeight_m;
  const [a, far] = [bunkAt(plan, "rear"), pickOf(plan, "far").at_m];
  const c = about(slope(plan, s, "rear"), 0, PATH);
  const twist = (TORSION * Math.abs(packed(plan, "rear"))) / distance(plan);
  const slid = times(
    c,
    partAt(w, a, far, (l) => l.z + up),
  );
  const rear = wide(plus(exactly(partAt(w, a, far, (l) => l.y)), slid), twist);
  if (!holds(plan, s, "rear", rear)) return UNKNOWN;
  // A train that is free has nothing of the set to turn it.
  const free: Partial<Record<Train, Span>> = s.trains.front ? { front: { low: -FREE, high: FREE } } : {};
  const lean = hangs(plan, w, T, "far", wide(exactly(partAt(w, far, a, (l) => l.y))));
  return { moments: { rear, ...free }, ends: [deck(plan, s, "rear", rear), lean] };
}

function hung(plan: Plan, w: Weight, far: Span, near: Span, push: Push | null): Across {
  const [n, f] = [pickOf(plan, "near").at_m, pickOf(plan, "far").at_m];
  // Its line holds it at the hook's pin; blown to the left below that, it lifts its left side.
  const own = (kind: "far" | "near", at: number, other: number): Span => {
    const blown = push === null ? 0 : partOf(push, at, other) * (pendulumArm(plan, kind, w) + w.z - push.z);
    return exactly(partAt(w, at, other, (l) => l.y) - blown);
  };
  return {
    moments: {},
    ends: [hangs(plan, w, near, "near", own("near", n, f)), hangs(plan, w, far, "far", own("far", f, n))],
  };
}

/** Lean of a set at a spreader that has this moment (N m) to turn back as a pendulum. */
function hangs(plan: Plan, w: Weight, T: Span, kind: "far" | "near", M: Span): Leaning {
  const arm = pendulumArm(plan, kind, w);
  return { at: pickOf(plan, kind).at_m, lean: times(M, -2 / ((T.low + T.high) * arm)) };
}
