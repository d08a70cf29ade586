// One pose solved and put into rows: forces by support, shares of the weight, motions.

import {
  attitudeOf,
  contactWorkspace,
  droopAt,
  lineForces,
  type Solution,
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
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => same(a[key as keyof typeof a], b[key as keyof typeof b]));
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
  const known = near !== null && near.solution.model === model && same(near.state, state);
  const solution = known
    ? near.solution
    : solveStatics(state, { model, workspace, near: near?.solution ?? null });
  const n = ctx.supports.length;
  let motions: Float64Array | null = null;
  const pose: Pose = {
    step,
    progress,
    situation,
    state,
    solution,
    forces: new Float64Array(n).fill(Number.NaN),
    shares: new Float64Array(n),
    // Shape and attitude cost more than the forces do, and most poses of a search never need them.
    get motions() {
      motions ??=
        solution.status === "solved"
          ? motionsOf(ctx, pose)
          : new Float64Array(MOTIONS.length).fill(Number.NaN);
      return motions;
    },
  };
  if (solution.status === "solved") fill(ctx, pose);
  return pose;
}

function fill(ctx: SetContext, pose: Pose): void {
  const { solution: s, forces, shares, situation, state } = pose;
  const { layout, devices, contact } = s;
  const at = (name: string) => ctx.supportIndex.get(name) ?? -1;
  const put = (name: string, F: number) => {
    const i = at(name);
    if (i >= 0) forces[i] = F;
    return i;
  };
  devices.forEach((d, j) => {
    if (d.kind === "bunk") put(d.name, contact.F[j]);
    else if (d.kind === "bearing") {
      const i = put(d.name, contact.F[j]);
      if (i >= 0) shares[i] = contact.F[j];
    }
  });
  let lashing = 0;
  const onNow = ctx.plan.lashings.filter(
    (l) => situation.lashed.includes(l.id) && (state.trains ?? []).some((t) => t.name === l.transporter),
  );
  devices.forEach((d, j) => {
    if (d.kind === "lashing") put(`lashing ${onNow[lashing++].id}`, contact.F[j]);
  });
  layout.cylinders.forEach((c, i) => {
    put(`cylinder ${c.id}`, s.cylinderForce[i]);
  });
  const tare = tareOf(pose);
  layout.groups.forEach((g, k) => {
    let F = 0;
    for (const c of g.cylinders) F += s.cylinderForce[c];
    const i = put(`group ${g.name}`, F);
    if (i >= 0) shares[i] = F - tare[k];
  });
  layout.hoists.forEach((h, i) => {
    const j = put(`hoist ${h.name}`, s.hoistForce[i]);
    if (j >= 0) shares[j] = s.hoistForce[i] * layout.up[2];
    const lines = lineForces(s, i);
    layout.hoistGirders[i].forEach((g, k) => {
      put(`line ${h.name} ${ctx.model.girders[g].name}`, lines[k]);
    });
  });
}

/** Motions of a solved pose in the order of MOTIONS. */
function motionsOf(ctx: SetContext, { solution: s, situation }: Pose): Float64Array {
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

/**
 * The part of the decks' own weight in every group, N: the same groups under the empty decks, where their pressures
 * follow from statics (three groups) or from equal cylinders (four and more).
 */
export function tareOf(pose: Pose): Float64Array {
  const { layout } = pose.solution;
  const { trains, groups, cylinders, up } = layout;
  const g = pose.state.gravity;
  const tare = new Float64Array(groups.length);
  trains.forEach((t, deck) => {
    const own = groups
      .map((_, k) => k)
      .filter((k) => groups[k].cylinders.some((c) => cylinders[c].deck === deck));
    const K = new Float64Array(9);
    const rows = own.map((k) => {
      const list = groups[k].cylinders.filter((c) => cylinders[c].deck === deck);
      let x = 0;
      let y = 0;
      for (const c of list) {
        x += cylinders[c].x / list.length;
        y += cylinders[c].y / list.length;
      }
      return { k: list.length, r: [1, y, -x] };
    });
    for (const { k, r } of rows)
      for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) K[3 * i + j] += k * r[i] * r[j];
    const W = t.mass * g;
    const b = [W * up[2], -W * up[1] * t.cgHeight, W * up[0] * t.cgHeight];
    const q = solveSmall(K, b);
    rows.forEach(({ k, r }, i) => {
      tare[own[i]] += k * (r[0] * q[0] + r[1] * q[1] + r[2] * q[2]);
    });
  });
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
