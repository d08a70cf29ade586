// The least distance of every pair over a whole step: stored poses first, then every span between them in which something
// nearer could hide is halved at a pose solved anew, until nothing can by more than the tolerance.

import {
  type Pose,
  poseAt,
  type SetContext,
  type Situation,
  type StepRun,
  situationAt,
} from "../../sequence/index.ts";
import { shapeMoves, shapeOf, sweptBodies } from "../../shape/index.ts";
import { leastBetween, type Span, spanOf } from "./between.ts";
import { type Least, type Look, lookAt, newLeast, roughGap, takeDistance } from "./look.ts";
import type { ClearancePair } from "./pairs.ts";

/** Some kinds put things on or take them off at the very start or end of a step: just inside it, m of nothing moved. */
const INSIDE = 1e-9;
/** Spans shorter than this part of a step are not halved. */
const SHORTEST = 1e-6;
/** Poses solved for one step at most. */
const MOST_SOLVED = 60;
/** What moves less than this stands still, m. */
const STILL = 1e-9;

/** The least distance is told to this, m, for pairs up to MARGIN above their limit; beyond, to a hundredth of what is beyond. */
export const TOLERANCE = 1e-3;
const MARGIN = 0.5;
const FAR = 0.01;

/** How much less than the distance found (m) could be in the step at most. */
export const toleranceOf = (distance: number, limit: number): number =>
  Math.max(TOLERANCE, FAR * (distance - limit - MARGIN));

/** Whether the same things hold the set in two situations. */
function alike(a: Situation, b: Situation): boolean {
  return (
    a === b ||
    (a.overSeats === b.overSeats &&
      a.trains.every((t, i) => t.under === b.trains[i].under && t.packing === b.trains[i].packing) &&
      a.cranes.every((c, i) => c.hooked === b.cranes[i].hooked && c.heldLoad === b.cranes[i].heldLoad))
  );
}

/** One pair over one step. */
export interface PairSweep {
  pair: ClearancePair;
  least: Least;
  within: number;
}

/** A step with its looks, which are joined by spans; poses between are solved when they are asked for. */
export class StepSweep {
  readonly spans: Span[] = [];
  readonly looks: Look[] = [];
  solved = 0;
  private readonly ctx: SetContext;
  private readonly run: StepRun;
  private readonly moved: Uint8Array;

  /** `poses` are the stored poses of the step, in order; `first` when no step went before. */
  constructor(ctx: SetContext, run: StepRun, poses: readonly Pose[], first: boolean) {
    this.ctx = ctx;
    this.run = run;
    this.moved = new Uint8Array(sweptBodies(ctx).groups.length);
    const add = (pose: Pose, progress: number) => {
      const at = progress === pose.progress ? pose.situation : situationAt(ctx, run, progress);
      // Where a step begins or ends with something put on or taken off, the shape just inside it is another.
      const inside = alike(at, pose.situation) ? pose : poseAt(ctx, run, progress, pose);
      if (inside !== pose) this.solved++;
      const settled = inside.solution.status === "solved" ? inside : pose;
      this.looks.push(lookAt(ctx, progress, at, settled, shapeOf(ctx, settled, at)));
    };
    const [start, end] = [poses[0], poses[poses.length - 1]];
    const whole = end.progress === 1;
    const still = poses.length <= 2 && whole;
    if (first || still) add(start, 0);
    if (!still) {
      const before = this.looks.length;
      add(start, INSIDE);
      for (const p of poses) if (p.progress > INSIDE && p.progress < 1 - INSIDE) add(p, p.progress);
      if (whole) add(end, 1 - INSIDE);
      for (let i = before + 1; i < this.looks.length; i++) this.join(this.looks[i - 1], this.looks[i]);
    }
    if (whole) add(end, 1);
    this.findMoved();
  }

  private join(a: Look, b: Look): void {
    const middle = situationAt(this.ctx, this.run, (a.progress + b.progress) / 2);
    this.spans.push(spanOf(this.ctx, a, b, middle, null));
  }

  /** Groups that move within the step, or come and go. */
  private findMoved(): void {
    const { groups } = sweptBodies(this.ctx);
    const [one] = this.looks;
    for (const look of this.looks)
      groups.forEach(({ first, points }, g) => {
        if (this.moved[g] === 1) return;
        if (look.there[g] !== one.there[g]) this.moved[g] = 1;
        for (let i = 3 * first; i < 3 * (first + points); i++)
          if (Math.abs(look.xyz[i] - one.xyz[i]) > STILL) {
            this.moved[g] = 1;
            return;
          }
      });
    for (const { depart } of this.spans)
      depart.forEach((d, g) => {
        if (d > STILL) this.moved[g] = 1;
      });
  }

  private applies(look: Look, { a, b, applies }: ClearancePair): boolean {
    return look.there[a] === 1 && look.there[b] === 1 && applies(look.situation);
  }

  /** The least distance of a pair; null where it applies nowhere. */
  pair(pair: ClearancePair): PairSweep | null {
    const { ctx } = this;
    const least = newLeast();
    const still = this.moved[pair.a] === 0 && this.moved[pair.b] === 0;
    // From the end at which both are nearer: what is further then needs no second look.
    const { looks } = this;
    const last = looks.length - 1;
    const back = roughGap(looks[last], pair) < roughGap(looks[0], pair);
    for (let i = 0; i <= last; i++) {
      const look = looks[back ? last - i : i];
      if (!this.applies(look, pair)) continue;
      takeDistance(ctx, look, pair, least);
      if (still) break;
    }
    if (!Number.isFinite(least.distance)) return null;
    const open = still ? [] : this.spans.filter((s) => this.applies(s.a, pair) && this.applies(s.b, pair));
    const limit = pair.limit?.value ?? 0;
    // Nothing is nearer than this within a span: what is told is how far the least found lies above it.
    let lowest = Number.POSITIVE_INFINITY;
    while (open.length > 0) {
      const span = open.pop() as Span;
      const enough = least.distance - toleranceOf(least.distance, limit);
      const bound = leastBetween(ctx, span, pair, enough);
      if (bound >= enough) {
        lowest = Math.min(lowest, bound);
        continue;
      }
      const halves = this.halve(span);
      if (halves === null) {
        lowest = Math.min(lowest, bound);
        continue;
      }
      takeDistance(ctx, halves[0].b, pair, least);
      open.push(...halves);
    }
    return { pair, least, within: Math.max(0, least.distance - lowest) };
  }

  /** Both halves of a span, at its middle solved anew; null where it is not to be halved any more. */
  private halve(span: Span): [Span, Span] | null {
    if (span.halves !== null) return span.halves;
    const { ctx, run } = this;
    const { a, b } = span;
    if (b.progress - a.progress < SHORTEST || this.solved >= MOST_SOLVED) return null;
    const look = this.solve((a.progress + b.progress) / 2, a.pose);
    if (look === null) return null;
    const change = look.shape.map((x, i) => 2 * (x - (a.shape[i] + b.shape[i]) / 2));
    const known = new Float64Array(span.depart.length);
    shapeMoves(ctx, change, known);
    const middle = (x: Look, y: Look) => situationAt(ctx, run, (x.progress + y.progress) / 2);
    span.halves = [
      spanOf(ctx, a, look, middle(a, look), known),
      spanOf(ctx, look, b, middle(look, b), known),
    ];
    return span.halves;
  }

  /** A look at a pose solved anew; null where it has no equilibrium. */
  solve(progress: number, near: Pose): Look | null {
    const pose = poseAt(this.ctx, this.run, progress, near);
    this.solved++;
    if (pose.solution.status !== "solved") return null;
    return lookAt(this.ctx, progress, pose.situation, pose, shapeOf(this.ctx, pose));
  }

  /** All looks of the step with those solved for it, in order. */
  all(): Look[] {
    const out = new Set(this.looks);
    const walk = (span: Span) => {
      if (span.halves === null) return;
      out.add(span.halves[0].b);
      span.halves.forEach(walk);
    };
    this.spans.forEach(walk);
    return [...out].sort((x, y) => x.progress - y.progress);
  }

  /** Where a pair is below a distance: from and to, their ends solved for; at looks only where nothing is solved between. */
  below(pair: ClearancePair, limit: number): [number, number][] {
    const at = (look: Look): number => {
      if (!this.applies(look, pair)) return Number.NaN;
      const least = newLeast();
      takeDistance(this.ctx, look, pair, least);
      return least.distance;
    };
    const out: [number, number][] = [];
    let before: Look | null = null;
    let was = false;
    for (const look of this.all()) {
      const is = at(look) < limit;
      if (is !== was) {
        const edge = before === null ? look : this.edge(before, look, (x) => at(x) < limit === is);
        if (is) out.push([edge.progress, edge.progress]);
        else out[out.length - 1][1] = edge.progress;
      } else if (is) out[out.length - 1][1] = look.progress;
      was = is;
      before = look;
    }
    return out.map(([from, to]) => [from <= INSIDE ? 0 : from, to >= 1 - INSIDE ? 1 : to]);
  }

  /** The first look between two at which something holds that holds at the second alone, to a millionth of the step. */
  private edge(a: Look, b: Look, holds: (look: Look) => boolean): Look {
    let [low, high] = [a, b];
    while (high.progress - low.progress > SHORTEST) {
      const middle = this.solve((low.progress + high.progress) / 2, low.pose);
      if (middle === null) break;
      if (holds(middle)) high = middle;
      else low = middle;
    }
    return high;
  }
}
