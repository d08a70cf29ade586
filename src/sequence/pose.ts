// One pose solved and put into rows: forces by support, shares of the weight, motions.

import {
  attitudeOf,
  contactWorkspace,
  droopAt,
  type Layout,
  lineForces,
  type Solution,
  type State,
  solveStatics,
} from "../mechanics/index.ts";
import { byId } from "../plan/index.ts";
import { modelIn } from "./heat.ts";
import { idealise } from "./idealise.ts";
import { planeLevel } from "./place.ts";
import { MOTIONS, type Pose, type SetContext, type Situation } from "./types.ts";

const workspace = contactWorkspace();

/** Whether two parts of a State are the same, number for number. */
function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  let keys = 0;
  for (const key in a) {
    if (!same(a[key as keyof typeof a], b[key as keyof typeof b])) return false;
    keys++;
  }
  for (const _ in b) keys--;
  return keys === 0;
}

/** Whether two States are the same: what differs between most of them is looked at first. */
function sameState(a: State, b: State): boolean {
  return (
    same(a.groupLift, b.groupLift) &&
    same(a.hoists, b.hoists) &&
    same(a.ground, b.ground) &&
    same(a.bearings, b.bearings) &&
    same(a, b)
  );
}

/** Solves the pose that a situation stands for; `near` only quickens it: a State that is its own is not solved again. */
export function solvePose(
  ctx: SetContext,
  situation: Situation,
  step: number,
  progress: number,
  near: Pose | null = null,
): Pose {
  const planned = idealise(ctx, situation);
  const state = ctx.change ? ctx.change(planned, step) : planned;
  const model = modelIn(ctx, situation);
  const known = near !== null && near.solution.model === model && sameState(near.state, state);
  const solution = known
    ? near.solution
    : solveStatics(state, { model, workspace, near: near?.solution ?? null });
  return new SolvedPose(ctx, step, progress, situation, state, solution);
}

/** A solved pose. Shares, shape and attitude are worked out when asked for: most poses of a search never need them. */
class SolvedPose implements Pose {
  readonly step: number;
  readonly progress: number;
  readonly situation: Situation;
  readonly state: State;
  readonly solution: Solution;
  readonly forces: Float64Array;
  #ctx: SetContext;
  #shares: Float64Array | null = null;
  #motions: Float64Array | null = null;

  constructor(
    ctx: SetContext,
    step: number,
    progress: number,
    situation: Situation,
    state: State,
    solution: Solution,
  ) {
    this.#ctx = ctx;
    this.step = step;
    this.progress = progress;
    this.situation = situation;
    this.state = state;
    this.solution = solution;
    this.forces = new Float64Array(ctx.supports.length).fill(Number.NaN);
    if (solution.status === "solved") fillForces(ctx, this);
  }

  get shares(): Float64Array {
    this.#shares ??= sharesOf(this.#ctx, this);
    return this.#shares;
  }

  get motions(): Float64Array {
    this.#motions ??= motionsOf(this.#ctx, this);
    return this.#motions;
  }
}

/** Places of a layout's parts among the supports of a context; -1 for none. */
interface Columns {
  groups: number[];
  cylinders: number[];
  hoists: number[];
  lines: number[][];
}

/** Places by context's supports and layout's wiring, both of which stay while machines do. */
const made = new WeakMap<SetContext["supportIndex"], WeakMap<object, Columns>>();

function columnsOf(ctx: SetContext, layout: Layout): Columns {
  let list = made.get(ctx.supportIndex);
  if (list === undefined) {
    list = new WeakMap();
    made.set(ctx.supportIndex, list);
  }
  const known = list.get(layout.wiring);
  if (known !== undefined) return known;
  const at = (force: string) => ctx.supportIndex.get(force) ?? -1;
  const columns: Columns = {
    groups: layout.groups.map((g) => at(`group ${g.name}`)),
    cylinders: layout.cylinders.map((c) => at(`cylinder ${c.id}`)),
    hoists: layout.hoists.map((h) => at(`hoist ${h.name}`)),
    lines: layout.hoists.map((h, i) =>
      layout.hoistGirders[i].map((g) => at(`line ${h.name} ${ctx.model.girders[g].name}`)),
    ),
  };
  list.set(layout.wiring, columns);
  return columns;
}

function fillForces(ctx: SetContext, { solution: s, forces, situation, state }: Pose): void {
  const { layout, devices, contact } = s;
  const columns = columnsOf(ctx, layout);
  const put = (i: number, F: number) => {
    if (i >= 0) forces[i] = F;
  };
  let lashings: string[] | null = null;
  let lashing = 0;
  for (let j = 0; j < devices.length; j++) {
    const { kind, name } = devices[j];
    if (kind === "bunk" || kind === "bearing") put(ctx.supportIndex.get(name) ?? -1, contact.F[j]);
    else if (kind === "lashing") {
      lashings ??= ctx.plan.lashings
        .filter(
          (l) =>
            situation.lashed.includes(l.id) && (state.trains ?? []).some((t) => t.name === l.transporter),
        )
        .map((l) => l.id);
      put(ctx.supportIndex.get(`lashing ${lashings[lashing++]}`) ?? -1, contact.F[j]);
    }
  }
  columns.cylinders.forEach((i, c) => {
    put(i, s.cylinderForce[c]);
  });
  columns.groups.forEach((i, k) => {
    put(i, groupForce(s, k));
  });
  columns.hoists.forEach((i, h) => {
    put(i, s.hoistForce[h]);
    const lines = lineForces(s, h);
    columns.lines[h].forEach((place, k) => {
      put(place, lines[k]);
    });
  });
}

/** Force of a group with its decks' tare, N. */
function groupForce({ layout, cylinderForce }: Solution, group: number): number {
  let F = 0;
  for (const c of layout.groups[group].cylinders) F += cylinderForce[c];
  return F;
}

/** Part of the set's weight on each band of a pose, N; zeros where it is not solved. */
function sharesOf(ctx: SetContext, pose: Pose): Float64Array {
  const { solution: s, forces } = pose;
  const shares = new Float64Array(forces.length);
  if (s.status !== "solved") return shares;
  const columns = columnsOf(ctx, s.layout);
  for (const { kind, name } of s.devices) {
    if (kind !== "bearing") continue;
    const i = ctx.supportIndex.get(name) ?? -1;
    if (i >= 0) shares[i] = forces[i];
  }
  const tare = tareOf(pose);
  const held = decksHeld(s);
  columns.groups.forEach((i, k) => {
    // Cylinders at the end of their travel share out their own deck's weight otherwise; none of it is the set's.
    const touches = s.layout.groups[k].cylinders.some((c) => held.has(s.layout.cylinders[c].deck));
    if (i >= 0) shares[i] = touches ? forces[i] - tare[k] : 0;
  });
  columns.hoists.forEach((i, h) => {
    if (i >= 0) shares[i] = s.hoistForce[h] * s.layout.up[2];
  });
  return shares;
}

/** Decks that the set touches: by a bunk that presses, or by a lashing that pulls. */
function decksHeld({ devices, contact }: Solution): Set<number> {
  const held = new Set<number>();
  for (let j = 0; j < devices.length; j++) {
    const { kind, decks } = devices[j];
    if (kind !== "bunk" && kind !== "lashing") continue;
    if (contact.F[j] > 0) for (const deck of decks) held.add(deck);
  }
  return held;
}

/** Motions of a pose in the order of MOTIONS; NaN where it is not solved. */
function motionsOf(ctx: SetContext, { solution: s, situation }: Pose): Float64Array {
  if (s.status !== "solved") return new Float64Array(MOTIONS.length).fill(Number.NaN);
  const { lean, level } = attitudeOf(s);
  let nose = 0;
  let tail = 0;
  ctx.model.girders.forEach((g, i) => {
    nose += droopAt(s, i, g.to) / ctx.model.girders.length;
    tail += droopAt(s, i, g.from) / ctx.model.girders.length;
  });
  return Float64Array.of(
    situation.rearEnd,
    situation.across,
    planeLevel(situation, 0, 0),
    situation.plane.grade,
    situation.plane.crossfall,
    lean,
    level,
    nose,
    tail,
    s.residual.force,
    s.residual.moment,
    s.passes,
  );
}

/** A deck on its groups: each group's stiffness (its cylinders on this deck) and place, and what 3 x 3 they give way by. */
interface DeckStand {
  deck: number;
  groups: { group: number; k: number; r: [number, number, number] }[];
  /** Heave, lean and level under unit loads on them, row-major. */
  gives: number[];
}

/** Decks on their groups by wiring, which holds all that they hang on. */
const stands = new WeakMap<object, DeckStand[]>();

function standsOf({ wiring, trains, groups, cylinders }: Layout): DeckStand[] {
  const known = stands.get(wiring);
  if (known !== undefined) return known;
  const found = trains.map((_, deck): DeckStand => {
    const K = new Float64Array(9);
    const own: DeckStand["groups"] = [];
    groups.forEach((g, group) => {
      const list = g.cylinders.filter((c) => cylinders[c].deck === deck);
      if (list.length === 0) return;
      let x = 0;
      let y = 0;
      for (const c of list) {
        x += cylinders[c].x / list.length;
        y += cylinders[c].y / list.length;
      }
      const r: [number, number, number] = [1, y, -x];
      own.push({ group, k: list.length, r });
      for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) K[3 * i + j] += list.length * r[i] * r[j];
    });
    const columns = [0, 1, 2].map((j) =>
      solveSmall(
        K,
        [0, 1, 2].map((i) => (i === j ? 1 : 0)),
      ),
    );
    return { deck, groups: own, gives: [0, 1, 2].flatMap((i) => columns.map((column) => column[i])) };
  });
  stands.set(wiring, found);
  return found;
}

/**
 * The part of the decks' own weight in every group, N: the same groups under the empty decks, where their pressures
 * follow from statics (three groups) or from equal cylinders (four and more).
 */
export function tareOf({ solution: { layout }, state }: Pose): Float64Array {
  const { trains, groups, up } = layout;
  const tare = new Float64Array(groups.length);
  for (const { deck, groups: own, gives } of standsOf(layout)) {
    const { mass, cgHeight } = trains[deck];
    const W = mass * state.gravity;
    const [heave, lean, level] = [W * up[2], -W * up[1] * cgHeight, W * up[0] * cgHeight];
    for (const { group, k, r } of own)
      for (let i = 0; i < 3; i++)
        tare[group] += k * r[i] * (gives[3 * i] * heave + gives[3 * i + 1] * lean + gives[3 * i + 2] * level);
  }
  return tare;
}

/** Symmetric positive semidefinite 3 x 3; directions without stiffness stay at zero. */
function solveSmall(K: Float64Array, b: number[]): number[] {
  const a = Array.from(K);
  const left = [0, 1, 2];
  const done: number[] = [];
  const top = Math.max(a[0], a[4], a[8]);
  while (left.length > 0) {
    left.sort((i, j) => a[4 * j] - a[4 * i]);
    const p = left[0];
    if (!(a[4 * p] > 1e-12 * top)) break;
    left.shift();
    done.push(p);
    for (const i of left) {
      const f = a[3 * i + p] / a[4 * p];
      for (const j of left) a[3 * i + j] -= f * a[3 * p + j];
      b[i] -= f * b[p];
    }
  }
  const x = [0, 0, 0];
  for (let i = done.length - 1; i >= 0; i--) {
    const p = done[i];
    let s = b[p];
    for (const q of done.slice(i + 1)) s -= a[3 * p + q] * x[q];
    x[p] = s / a[4 * p];
  }
  return x;
}

/** The weakest words for a pose without equilibrium. */
export function whyUnsolved(s: Solution): string {
  if (s.status === "mechanism") return s.motion;
  return "heights, tensions and sideways forces do not settle together";
}

/** A crane of the situation by id. */
export function craneIn(situation: Situation, id: string) {
  return byId(situation.cranes, id);
}
