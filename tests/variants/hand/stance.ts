// Hand stances of the operation, step by step: who carries how much of the set, where it stands, where the booms are.

import type { Plan, Step } from "../../../src/plan/index.ts";
import { LEVER, type Lowered, lowered, type Taken, taken, type Word } from "./handOver.ts";
import { across, bunksLie, distance, leanAt } from "./lean.ts";
import { bunkAt, lever, pathAt, type Train, trainOf } from "./levers.ts";
import { pickOf } from "./reach.ts";
import { about, exactly, hull, less, type Span, size, times } from "./span.ts";
import type { Weight } from "./weights.ts";

export type Hook = "far" | "near";

/** Who carries the set, N of its weight. */
interface Loads {
  /** Share on a train that stands under the set; null where none stands there. */
  trains: Record<Train, Span | null>;
  /** Net load of a hook that is on; null where none is. */
  hooks: Record<Hook, Span | null>;
  /** Share on both bearings of a line; null before the set is over them. */
  bearings: Record<Hook, Span> | null;
}

/** One moment of the operation. */
export interface Stance extends Loads {
  step: number;
  progress: number;
  /** Chainage of the set's rear end and y of its axis, m. */
  rearEnd: number;
  across: number;
  /** Boom tips in plan, and the elevation of the picks, m. */
  tips: Record<Hook, [number, number]>;
  picks: number;
  /** Stroke of a train's cylinders where it has been jacked down, m. */
  strokes: Partial<Record<Train, Span>>;
  /** On the way from one stance to the next: loads lie between theirs, and nothing else is known. */
  between: boolean;
}

/** Something that a motion must meet, or must not. */
export interface Met {
  check: string;
  subject: string;
  step: number;
  word: Word;
}

export interface Walk {
  stances: Stance[];
  met: Met[];
}

/** Loads by the lever may be off by this part of the set's weight besides. */
const OF_WEIGHT = 0.002;
/** A set of which nothing is known across may lean by a sixth, which is this over a bunk, m. */
const UNKNOWN_TILT = 0.27;
const HOOKS: readonly Hook[] = ["far", "near"];

class Walker {
  readonly stances: Stance[] = [];
  readonly met: Met[] = [];
  private readonly plan: Plan;
  private readonly own: readonly [number, number];
  private readonly at: { rear: number; front: number; far: number; near: number };
  private readonly w: Weight;
  private readonly takes: Partial<Record<Hook, Taken>> = {};
  private readonly downs: Partial<Record<Train, Lowered>> = {};
  private now: Omit<Stance, "step" | "progress">;
  /** Shares of the trains before anything moves. */
  readonly start: Record<Train, Span>;

  constructor(plan: Plan, w: Weight) {
    this.plan = plan;
    this.w = w;
    this.own = [w.x, w.W];
    const { start } = plan.sets[0];
    this.at = {
      rear: bunkAt(plan, "rear"),
      front: bunkAt(plan, "front"),
      far: pickOf(plan, "far").at_m,
      near: pickOf(plan, "near").at_m,
    };
    const set = pathAt(plan, start.rearEnd_m + w.x).elevation + trainOf(plan, "rear").bunkHeight_m;
    const { rear, front } = this.at;
    this.start = { rear: this.share(rear, front), front: this.share(front, rear) };
    this.now = {
      rearEnd: start.rearEnd_m,
      across: start.y_m ?? 0,
      ...this.onTrains(exactly(0)),
      tips: { far: [0, 0], near: [0, 0] },
      picks: set + pickOf(plan, "far").height_m,
      bearings: null,
      strokes: {},
      between: false,
    };
  }

  private by(v: number): Span {
    return about(v, LEVER, OF_WEIGHT * this.w.W);
  }

  /** Reactions of two supports under the weight and what a hook holds up. */
  private share(at: number, other: number, hook = 0, held: Span = exactly(0)): Span {
    return hull(...[held.low, held.high].map((T) => this.by(lever(at, other, [this.own, [hook, -T]]))));
  }

  private onTrains(T: Span): Pick<Loads, "trains" | "hooks"> {
    const { rear, front, far } = this.at;
    return {
      trains: { rear: this.share(rear, front, far, T), front: this.share(front, rear, far, T) },
      hooks: { far: T.high > 0 ? T : null, near: null },
    };
  }

  private onRearAndFar(N: Span | null): Pick<Loads, "trains" | "hooks"> {
    const { rear, far, near } = this.at;
    const held = N ?? exactly(0);
    return {
      trains: { rear: this.share(rear, far, near, held), front: null },
      hooks: { far: this.share(far, rear, near, held), near: N },
    };
  }

  private onHooks(): Pick<Loads, "trains" | "hooks"> {
    const { far, near } = this.at;
    return {
      trains: { rear: exactly(0), front: null },
      hooks: { far: this.share(far, near), near: this.share(near, far) },
    };
  }

  private put(step: number, progress: number, change: Partial<Stance> = {}): void {
    this.stances.push({ ...this.now, ...change, step, progress });
  }

  /** Moments of a travel, evenly; the last one stays. */
  private travel(i: number, parts: number, where: (t: number) => Partial<Stance>): void {
    for (let k = 0; k <= parts; k++) this.put(i, k / parts, where(k / parts));
    this.now = { ...this.now, ...where(1) };
  }

  private hookOf(crane: string): Hook {
    return HOOKS.find((kind) => pickOf(this.plan, kind).crane === crane) ?? "far";
  }

  roll(i: number, distance: number): void {
    const { rearEnd } = this.now;
    this.travel(i, 8, (t) => ({ rearEnd: rearEnd + distance * t }));
  }

  hookUp(i: number, crane: string): void {
    const kind = this.hookOf(crane);
    this.put(i, 0);
    const { hooks, tips, rearEnd, across } = this.now;
    this.now = {
      ...this.now,
      hooks: { ...hooks, [kind]: exactly(0) },
      tips: { ...tips, [kind]: [rearEnd + this.at[kind], across] },
    };
    this.put(i, 1);
  }

  takeLoad(i: number, step: Extract<Step, { do: "take load" }>): void {
    const kind = this.hookOf(step.crane);
    if (!("load_kN" in step.until))
      throw new Error(`${step.id}: hand statics know a load to take, no other end`);
    const t = taken(this.plan, this.w, kind, step.until.load_kN * 1000, step.heightCap_mm / 1000);
    this.takes[kind] = t;
    this.met.push({ check: "cap reached", subject: `${kind} crane`, step: i, word: t.capped });
    const loads = (T: Span) => (kind === "far" ? this.onTrains(T) : this.onRearAndFar(T));
    this.put(i, 0);
    for (let k = 1; k <= 8; k++) {
      // Straight in the height from just taut on; where a support frees on the way the load rises sooner, and no further.
      const T = times(t.load, k / 8);
      if (t.freed !== "no" && k < 8) T.high = Math.max(T.high, t.load.high);
      this.put(i, k / 8, loads({ low: T.low * (1 - LEVER), high: T.high * (1 + LEVER) }));
    }
    const end = loads(t.load);
    if (t.freed === "yes") end.trains[kind === "far" ? "front" : "rear"] = exactly(0);
    this.stances.pop();
    this.now = { ...this.now, ...end };
    this.put(i, 1);
  }

  jackDown(i: number, step: Extract<Step, { do: "jack down" }>): void {
    const id: Train = step.transporter === "front" ? "front" : "rear";
    const t = this.takes[id === "front" ? "far" : "near"];
    const share = this.now.trains[id];
    if (!t || !share || !("gap_mm" in step.until))
      throw new Error(`${step.id}: hand statics know a train that goes down to a gap after a hook took load`);
    const after: Pick<Loads, "trains" | "hooks"> = id === "front" ? this.onRearAndFar(null) : this.onHooks();
    after.trains[id] = exactly(0);
    const l = lowered(this.plan, id, share, step.until.gap_mm / 1000, t.freed, this.tilt(id, after));
    this.downs[id] = l;
    this.met.push({ check: "end not reached", subject: `${id} aft`, step: i, word: l.short });
    const before = this.now;
    const one = (p: Span | null, q: Span | null) => (p && q ? hull(p, q) : (p ?? q));
    const over: Pick<Loads, "trains" | "hooks"> = {
      trains: {
        rear: one(before.trains.rear, after.trains.rear),
        front: one(before.trains.front, after.trains.front),
      },
      hooks: { far: one(before.hooks.far, after.hooks.far), near: one(before.hooks.near, after.hooks.near) },
    };
    const end = structuredClone(l.carries === "no" ? after : over);
    if (l.carries === "yes") end.trains[id] = { low: 1, high: share.high };
    const going = { between: true, strokes: { [id]: { low: 0, high: l.stroke.high } } };
    this.put(i, 0);
    this.put(i, 0.001, { ...over, ...going });
    // A gap of 150 mm is more than four tenths of all the stroke there is.
    if (l.short === "no") this.put(i, 0.6, { ...after, ...going, between: false });
    this.put(i, 1, { ...end, between: l.carries !== "no", strokes: { [id]: l.stroke } });
    this.now = { ...this.now, ...after };
  }

  /** How far a set that hangs free of a train is lower over one of its bunks than over their middle, m. */
  private tilt(id: Train, after: Pick<Loads, "trains" | "hooks">): Span {
    const free: Stance = { ...this.now, ...after, step: 0, progress: 0 };
    const { ends } = across(this.plan, this.w, free);
    if (!ends) return { low: 0, high: UNKNOWN_TILT };
    const lean = less(leanAt(ends, bunkAt(this.plan, id)), exactly(bunksLie(this.plan, free, id)));
    return times(size(lean), distance(this.plan) / 2);
  }

  driveOut(i: number, step: Extract<Step, { do: "drive out" }>): void {
    const id: Train = step.transporter === "front" ? "front" : "rear";
    const l = this.downs[id];
    if (!l) throw new Error(`${step.id}: hand statics know a train that has gone down before`);
    const clear = l.short === "no" || l.gap.low > 0.02 ? "no" : l.gap.high < 0.02 ? "yes" : "maybe";
    this.met.push({ check: "not clear", subject: id, step: i, word: clear });
    if (l.carries === "no") this.put(i, 0, { strokes: { [id]: l.stroke } });
    this.now = { ...this.now, trains: { ...this.now.trains, [id]: null } };
    for (const p of [0.02, 0.5, 1]) this.put(i, p);
  }

  rollTogether(i: number, step: Extract<Step, { do: "roll together" }>): void {
    const { rearEnd, tips } = this.now;
    const bites = Math.ceil(step.distance_m / step.bite_m - 1e-9);
    // In the first four fifths of a bite the trains roll, in the last one the boom follows.
    this.travel(i, 5 * bites, (t) => {
      const u = t * bites;
      const done = Math.floor(u + 1e-9);
      const part = u - done;
      const each = step.distance_m / bites;
      return {
        rearEnd: rearEnd + each * (done + Math.min(1, part / 0.8)),
        tips: { ...tips, far: [tips.far[0] + each * (done + Math.max(0, (part - 0.8) / 0.2)), tips.far[1]] },
      };
    });
  }

  hoist(i: number, up: number): void {
    const { picks } = this.now;
    this.travel(i, 2, (t) => ({ picks: picks + up * t }));
    if (up > 0) return;
    // A set that hangs lower than planned may touch its bearings before the end: by how much nobody says here.
    this.stances.pop();
    this.put(i, 0.7);
    this.now = { ...this.now, ...this.landing() };
    this.put(i, 1);
  }

  /** Anything between hanging over the bearings and lying on them. */
  private landing(): Partial<Stance> {
    const near = this.plan.site.nearBearing_m - this.now.rearEnd;
    const far = this.plan.site.farBearing_m - this.now.rearEnd;
    const upTo = (s: Span): Span => ({ low: 0, high: s.high });
    const { hooks } = this.onHooks();
    // While the far end comes down first its bearings reach further than its hook, and the near hook gains.
    const nearHook = hull(hooks.near ?? exactly(0), this.share(this.at.near, far));
    return {
      hooks: { far: hooks.far && upTo(hooks.far), near: upTo(nearHook) },
      bearings: { near: upTo(this.share(near, far)), far: upTo(this.share(far, this.at.near)) },
      between: true,
    };
  }

  bringOver(i: number, step: Extract<Step, { do: "bring over" }>): void {
    const { rearEnd, across, tips } = this.now;
    this.travel(i, 32, (t) => {
      const go = ([x, y]: [number, number]): [number, number] => [x + step.dx_m * t, y + step.dy_m * t];
      return {
        rearEnd: rearEnd + step.dx_m * t,
        across: across + step.dy_m * t,
        tips: { far: go(tips.far), near: go(tips.near) },
      };
    });
  }

  land(i: number): void {
    const near = this.plan.site.nearBearing_m - this.now.rearEnd;
    const far = this.plan.site.farBearing_m - this.now.rearEnd;
    for (const p of [0, 0.999]) this.put(i, p, this.landing());
    this.now = {
      ...this.now,
      hooks: { far: null, near: null },
      bearings: { near: this.share(near, far), far: this.share(far, near) },
      between: false,
    };
    this.put(i, 1);
  }

  step(step: Step, i: number): void {
    switch (step.do) {
      case "roll":
        this.roll(i, step.distance_m);
        break;
      case "hook up":
        this.hookUp(i, step.crane);
        break;
      case "take load":
        this.takeLoad(i, step);
        break;
      case "jack down":
        this.jackDown(i, step);
        break;
      case "drive out":
        this.driveOut(i, step);
        break;
      case "roll together":
        this.rollTogether(i, step);
        break;
      case "hoist up":
        this.hoist(i, step.hooks[0].height_mm / 1000);
        break;
      case "hoist down":
        this.hoist(i, -step.hooks[0].height_mm / 1000);
        break;
      case "bring over":
        this.bringOver(i, step);
        break;
      case "land":
        this.land(i);
        break;
      default:
        // Ties, holds and hooks that come off a landed set move nothing.
        this.put(i, 0);
        this.put(i, 1);
    }
  }
}

/** Whether the set stands on both trains at all, by its CG between their bunks. */
function stands(walker: Walker): Word {
  const { rear, front } = walker.start;
  const least = Math.min(rear.low, front.low);
  return least > 0 ? "yes" : Math.min(rear.high, front.high) < 0 ? "no" : "maybe";
}

/** Walks the operation of a plan whose steps keep the order of the demonstration, to wherever they end. */
export function walk(plan: Plan, w: Weight): Walk {
  const walker = new Walker(plan, w);
  const { steps } = plan.sets[0];
  const standing = stands(walker);
  walker.met.push({
    check: "no equilibrium",
    subject: steps[0].id,
    step: 0,
    word: standing === "no" ? "yes" : standing === "yes" ? "no" : "maybe",
  });
  if (standing === "yes")
    steps.forEach((step, i) => {
      walker.step(step, i);
    });
  return { stances: walker.stances, met: walker.met };
}
