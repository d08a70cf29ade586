// The quick look at a choice: rigid set, lever rule, charts and tipping. It sorts thousands of choices for the solver.

import { leverRule, type SetModel, sideMoments } from "../../mechanics/index.ts";
import type { Crane, Rigging, Transporter } from "../../plan/index.ts";
import { gravityOf, pathAt } from "../../plan/index.ts";
import { boomOf, hookAbovePicks, wheelsOf } from "../../sequence/index.ts";
import { ratedLoad } from "../cranes/hookLoad.ts";
import { levelGrowth } from "../cranes/reach.ts";
import { hookRules } from "../cranes/rules.ts";
import { limitOf } from "../limits.ts";
import { type Choice, deckSpacing, placesOf } from "./choice.ts";
import { bunkCentre, type Prospect, pickHeight } from "./prospect.ts";

/** Use that stands for "cannot be": finite, so that the least bad choice still comes first. */
const CANNOT = 100;

/** A radius by levers may be off by this, m: the set's slope moves a pick by its height times the slope, 2.5 m x 2 %. */
const ABOUT = 0.05;

/** Worst use of a choice by the lever rule, all phases; above 1 it should fail, from 100 on it has no meaning. */
export type QuickLook = (choice: Choice, bound?: number) => number;

/** Prepares the quick look of a prospect: what its uses share is computed once. */
export function quickLook(p: Prospect): QuickLook {
  const g = gravityOf(p.plan);
  const [cg] = p.cg;
  const rearUse = trainUse(p, p.rear);
  const frontUse = trainUse(p, p.front);
  const level = (pathAt(p.plan, p.stop)?.elevation_m ?? 0) + p.rear.bunkHeight_m;
  const farUse = hookUse(p, p.far, p.farRig, level, g);
  const nearUse = hookUse(p, p.near, p.nearRig, level, g);
  const least = limitOf(p.plan, "tipping ratio", true)?.value ?? 0;
  const tip = memo((rear: number, front: number) => least / tipRatio(p, rear, front, null));
  const tipHung = memo((rear: number, pick: number) => least / tipRatio(p, rear, null, pick));
  const spacing = deckSpacing(p);
  const bunkRear = bunkCentre(p.rear);
  const bunkFront = bunkCentre(p.front);
  return (c, bound = Number.POSITIVE_INFINITY) => {
    if (c.frontDeck - c.rearDeck < spacing) return CANNOT + spacing - (c.frontDeck - c.rearDeck);
    const places = placesOf(p, c);
    if (!places) return CANNOT + c.frontDeck;
    const rearAt = c.rearDeck + bunkRear;
    const frontAt = c.frontDeck + bunkFront;
    const [rear, front] = leverRule(p.weight, cg - rearAt, frontAt - cg);
    let use = Math.max(rearUse(rear), frontUse(front), tip(c.rearDeck, c.frontDeck));
    if (use > bound) return use;
    const [rearLeft, far] = leverRule(p.weight, cg - rearAt, c.farPick - cg);
    use = Math.max(
      use,
      rearUse(rearLeft),
      tipHung(c.rearDeck, c.farPick),
      farUse(far, places.farTakes + c.farPick, p.across, false),
    );
    if (use > bound) return use;
    const [nearEnd, farEnd] = leverRule(p.weight, cg - c.nearPick, c.farPick - cg);
    return Math.max(
      use,
      nearUse(nearEnd, places.nearTakes + c.nearPick, p.across, true),
      nearUse(nearEnd, p.seated + c.nearPick, p.seatedAcross, true),
      farUse(farEnd, places.nearTakes + c.farPick, p.across, true),
      farUse(farEnd, p.seated + c.farPick, p.seatedAcross, true),
    );
  };
}

function memo(f: (a: number, b: number) => number): (a: number, b: number) => number {
  const known = new Map<string, number>();
  return (a, b) => {
    const key = `${a} ${b}`;
    let value = known.get(key);
    if (value === undefined) {
      value = f(a, b);
      known.set(key, value);
    }
    return value;
  };
}

/** Use of a train's groups and axle lines under a load on its bunks: both straight in the load, so prepared as such. */
function trainUse(p: Prospect, t: Transporter): (load: number) => number {
  const wheels = wheelsOf(p.plan, t.id);
  const own = t.mass_t * 1000 * gravityOf(p.plan);
  const groups = t.groups.map((group) => {
    const mine = wheels.filter((w) => group.wheels.includes(w.id));
    const mean = (f: (w: { x: number; y: number }) => number) =>
      mine.reduce((sum, w) => sum + f(w) / mine.length, 0);
    return { group, n: mine.length, x: mean((w) => w.x), y: mean((w) => w.y) };
  });
  // Pressure per wheel of every group under a unit load at (x, y): equal cylinders on a rigid deck.
  const pressures = (x: number, y: number): number[] => {
    const K = [0, 0, 0, 0, 0, 0, 0, 0, 0];
    for (const s of groups) {
      const r = [1, s.y, s.x];
      for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) K[3 * i + j] += s.n * r[i] * r[j];
    }
    const q = solve3(K, [1, y, x]);
    return groups.map((s) => q[0] + s.y * q[1] + s.x * q[2]);
  };
  const loaded = pressures(bunkCentre(t), p.cg[1]);
  const empty = pressures(0, 0);
  const side = (t.allowedSide_kN ?? t.allowedLine_kN / 2) * 1000;
  const rows: { a: number; b: number }[] = groups.map((_, i) => ({
    a: loaded[i] / side,
    b: (empty[i] * own) / side,
  }));
  for (let line = 1; line <= t.lines; line++) {
    const on = groups.flatMap((s, i) =>
      s.group.wheels.filter((w) => w === `${line}L` || w === `${line}R`).map(() => i),
    );
    const limit = t.allowedLine_kN * 1000;
    rows.push({
      a: on.reduce((sum, i) => sum + loaded[i], 0) / limit,
      b: (on.reduce((sum, i) => sum + empty[i], 0) * own) / limit,
    });
  }
  return (load) => {
    let use = load < 0 ? 1 - load / p.weight : 0;
    for (const { a, b } of rows) use = Math.max(use, a * load + b);
    return use;
  };
}

/** Three equations, pivoted; a singular system gives equal pressures (only its first unknown). */
function solve3(K: number[], b: number[]): number[] {
  const rows = [0, 1, 2].map((i) => [K[3 * i], K[3 * i + 1], K[3 * i + 2], b[i]]);
  for (let i = 0; i < 3; i++) {
    let top = i;
    for (let k = i + 1; k < 3; k++) if (Math.abs(rows[k][i]) > Math.abs(rows[top][i])) top = k;
    [rows[i], rows[top]] = [rows[top], rows[i]];
    if (Math.abs(rows[i][i]) < 1e-9) return [b[0] / K[0], 0, 0];
    for (let k = 0; k < 3; k++) {
      if (k === i) continue;
      const f = rows[k][i] / rows[i][i];
      for (let j = i; j < 4; j++) rows[k][j] -= f * rows[i][j];
    }
  }
  return rows.map((r, i) => r[3] / r[i]);
}

/** Use of a hook with a net load at a place: the chart, or the rules for two cranes together. */
function hookUse(p: Prospect, crane: Crane, rig: Rigging, level: number, g: number) {
  const rules = hookRules(p.plan);
  const [alone, shared] = [rules(1).part, rules(2).part];
  const fixed = (rig.mass_t + crane.deductions.block_t + (crane.deductions.auxiliary_t ?? 0)) * 1000 * g;
  const ropePerMetre = crane.deductions.rope_kg_per_m * crane.partsOfLine * g;
  const top = level + pickHeight(p.set, p.length / 2) + hookAbovePicks(rig);
  const reach = Math.max(...crane.chart.rows.map((r) => r.radius_m));
  // The chart is a staircase: looked up once for every centimetre.
  const rated = new Map<number, number | null>();
  const ratedAt = (radius: number): number | null => {
    const key = Math.ceil(radius * 100 - 1e-9);
    let value = rated.get(key);
    if (value === undefined) {
      value = ratedLoad(crane.chart, key / 100, crane.boomLength_m, g);
      rated.set(key, value);
    }
    return value;
  };
  return (net: number, chainage: number, y: number, two: boolean): number => {
    const boom = boomOf(crane, [chainage, y]);
    const gross = net + fixed + ropePerMetre * Math.max(0, boom.tip[2] - top);
    const growth = (crane.radiusGrowth_mm_per_kN.best / 1000) * (gross / 1000);
    const radius = boom.radius + growth + levelGrowth(crane.outOfLevel_pct, boom.tip[2] - boom.centre[2]);
    const limit = ratedAt(radius) ?? ratedAt(radius - ABOUT);
    if (limit === null || limit <= 0 || !boom.inReach)
      return CANNOT + Math.abs(radius - Math.min(radius, reach)) / reach;
    const sling = net / (rig.ratedLoad_kN * 1000);
    const use = gross / (limit * (two ? shared : alone));
    return sling > 1 ? Math.max(use, sling) : use;
  };
}

interface Foot {
  x: number;
  y: number;
  hangs: boolean;
}

/** Least moment ratio of the weight about the edges of what it stands on: both trains, or the rear train and the far pick. */
function tipRatio(p: Prospect, rear: number, front: number | null, pick: number | null): number {
  const centres = (t: Transporter, at: number): Foot[] => {
    const wheels = wheelsOf(p.plan, t.id);
    return t.groups.map((group) => {
      const mine = wheels.filter((w) => group.wheels.includes(w.id));
      return {
        x: at + mine.reduce((sum, w) => sum + w.x / mine.length, 0),
        y: mine.reduce((sum, w) => sum + w.y / mine.length, 0),
        hangs: false,
      };
    });
  };
  const bunks = (t: Transporter, at: number): Foot[] =>
    t.bunks.flatMap((b) => p.set.girders.map((girder) => ({ x: at + b.at_m, y: girder.y_m, hangs: false })));
  const hook: Foot[] = pick === null ? [] : [{ x: pick, y: 0, hangs: true }];
  const polygon = (of: (t: Transporter, at: number) => Foot[]) => [
    ...of(p.rear, rear),
    ...(front === null ? [] : of(p.front, front)),
    ...hook,
  ];
  const one = p.set.girders.length === 1;
  return Math.min(leastRatio(p.model, polygon(centres), one), leastRatio(p.model, polygon(bunks), one));
}

/** Least stabilising over overturning moment about the edges round some feet; a one-girder set tips only over its ends. */
function leastRatio(model: SetModel, feet: Foot[], one: boolean): number {
  let least = CANNOT * CANNOT;
  const about = (a: Foot, b: Foot) => {
    const m = sideMoments(model, a, b);
    if (m.overturning > 0) least = Math.min(least, Math.max(m.stabilising, 1e-9) / m.overturning);
  };
  const alongs = feet.map((f) => f.x);
  const [tail, nose] = [Math.min(...alongs), Math.max(...alongs)];
  if (one || new Set(feet.map((f) => f.y)).size === 1) {
    about({ x: tail, y: 1, hangs: false }, { x: tail, y: -1, hangs: false });
    about({ x: nose, y: -1, hangs: false }, { x: nose, y: 1, hangs: false });
    return least;
  }
  for (const a of feet)
    for (const b of feet) {
      if ((a.x === b.x && a.y === b.y) || (a.hangs && b.hangs)) continue;
      const left = (f: Foot) => (b.x - a.x) * (f.y - a.y) - (b.y - a.y) * (f.x - a.x) >= -1e-9;
      if (feet.every(left)) about(a, b);
    }
  return least;
}
