// Puts the bodies of a plan where a situation and a solved shape have them.

import { byId, type Crane } from "../../plan/index.ts";
import {
  boomOf,
  hookAbovePicks,
  type Pose,
  pathLevel,
  planeLevel,
  type SetContext,
  type Situation,
  type TrainSituation,
  type Vec3,
} from "../../sequence/index.ts";
import { boomOutline, craneSizes } from "../crane.ts";
import { bunkReach } from "../transporter.ts";
import type { BodyGroup } from "./form.ts";
import { type SweptBodies, sweptBodies } from "./groups.ts";
import { blockSize, deckLevels, type Hung, hungOf, tailLevels } from "./machines.ts";
import { placeSet, readSetShape, riseAt, setShapeSize } from "./set.ts";

/** Numbers of a solved shape: rise and twist of every section of the set; heave, lean and level of every deck. */
export const shapeSize = (ctx: SetContext): number => setShapeSize(ctx) + 3 * ctx.set.onTransporters.length;

/** The solved shape of a pose; a deck that no longer stands under the set in a situation has none. */
export function shapeOf(ctx: SetContext, pose: Pose, s: Situation = pose.situation): Float64Array {
  const out = new Float64Array(shapeSize(ctx));
  readSetShape(ctx, pose, out);
  const { layout, contact, problem } = pose.solution;
  const own = problem.N - 3 * layout.trains.length;
  const first = setShapeSize(ctx);
  ctx.set.onTransporters.forEach(({ transporter }, i) => {
    const deck = layout.trains.findIndex((t) => t.name === transporter);
    if (deck < 0 || !s.trains.some((t) => t.id === transporter && t.under)) return;
    for (let k = 0; k < 3; k++) out[first + 3 * i + k] = contact.a[own + 3 * deck + k];
  });
  return out;
}

/** Where everything is: coordinates of all points, and per group whether it is there at all. */
export interface Placed {
  xyz: Float64Array;
  there: Uint8Array;
}

export function newPlaced(ctx: SetContext): Placed {
  const swept = sweptBodies(ctx);
  return { xyz: swept.still.slice(), there: new Uint8Array(swept.groups.length).fill(1) };
}

/** Puts all moving bodies in their place. */
export function placeBodies(ctx: SetContext, s: Situation, shape: Float64Array, out: Placed): void {
  const swept = sweptBodies(ctx);
  placeSet(ctx, s, shape, out.xyz);
  let g = 1;
  while (g < swept.moving) {
    const { kind, of } = swept.groups[g];
    if (kind === "train") {
      out.there[g] = placeTrain(ctx, s, shape, swept.groups[g], out.xyz) ? 1 : 0;
      g++;
    } else {
      placeCrane(ctx, s, shape, swept, g, byId(ctx.plan.cranes, of), out);
      g += 5;
    }
  }
}

/** A boom whose tip stands over its own centre was not told where to hold it: it has no place yet. */
const NO_PLACE = 1;

/** Boom, tail, tracks, line and rigging of one crane, the groups from `g` on. */
function placeCrane(
  ctx: SetContext,
  s: Situation,
  shape: Float64Array,
  swept: SweptBodies,
  g: number,
  c: Crane,
  { xyz, there }: Placed,
): void {
  const own = byId(s.cranes, c.id);
  const { centre, foot, tip } = boomOf(c, own.tip, own.moved);
  const [boom, tail, tracks, line, rigging] = [0, 1, 2, 3, 4].map((k) => swept.groups[g + k]);
  const known = Math.hypot(tip[0] - centre[0], tip[1] - centre[1]) > NO_PLACE;
  there[g] = known ? 1 : 0;
  there[g + 3] = own.hooked && known ? 1 : 0;
  there[g + 4] = there[g + 3];
  placeBoom(c, foot, tip, xyz, 3 * boom.first);
  let at = 3 * tail.first;
  for (const z of tailLevels(c)) {
    xyz[at++] = centre[0];
    xyz[at++] = centre[1];
    xyz[at++] = centre[2] + z;
  }
  placeTracks(c, centre, xyz, 3 * tracks.first);
  if (there[g + 3] === 1) placeRigging(ctx, s, shape, c, tip, line, rigging, xyz);
}

function placeBoom(c: Crane, foot: Vec3, tip: Vec3, xyz: Float64Array, first: number): void {
  const d = [tip[0] - foot[0], tip[1] - foot[1], tip[2] - foot[2]];
  const length = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
  const level = Math.sqrt(d[0] * d[0] + d[1] * d[1]);
  const e = [d[0] / length, d[1] / length, d[2] / length];
  // Across the boom, level; and square to both.
  const a = level > 1e-9 ? [-d[1] / level, d[0] / level] : [0, 1];
  const u = [-e[2] * a[1], e[2] * a[0], e[0] * a[1] - e[1] * a[0]];
  let at = first;
  for (const [along, half] of boomOutline(c, length))
    for (let corner = 0; corner < 4; corner++) {
      const side = corner % 2 === 0 ? half : -half;
      const up = corner < 2 ? half : -half;
      xyz[at++] = foot[0] + along * e[0] + side * a[0] + up * u[0];
      xyz[at++] = foot[1] + along * e[1] + side * a[1] + up * u[1];
      xyz[at++] = foot[2] + along * e[2] + up * u[2];
    }
}

function placeTracks(c: Crane, centre: Vec3, xyz: Float64Array, first: number): void {
  const { trackWidth, trackHeight } = craneSizes(c);
  const turn = ((c.facing_deg ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [half, wide] = [c.trackLength_m / 2, (c.trackGauge_m + trackWidth) / 2];
  let at = first;
  for (let corner = 0; corner < 8; corner++) {
    const x = corner % 2 === 0 ? half : -half;
    const y = corner % 4 < 2 ? wide : -wide;
    xyz[at++] = centre[0] + cos * x - sin * y;
    xyz[at++] = centre[1] + sin * x + cos * y;
    xyz[at++] = centre[2] + (corner < 4 ? 0 : trackHeight);
  }
}

/** A point of a girder's axis above the soffit in the world. */
function onGirder(
  ctx: SetContext,
  s: Situation,
  shape: Float64Array,
  g: number,
  x: number,
  height: number,
): Vec3 {
  const { grade, crossfall } = s.plane;
  const { y_m: y } = ctx.set.girders[g];
  const z = riseAt(ctx, shape, g, x) + height;
  return [s.rearEnd + x - grade * z, s.across + y + crossfall * z, planeLevel(s, x, y) + z];
}

const wires = new WeakMap<SetContext, Map<string, Hung>>();

function hung(ctx: SetContext, id: string): Hung {
  let map = wires.get(ctx);
  if (map === undefined) {
    map = new Map();
    wires.set(ctx, map);
  }
  let found = map.get(id);
  if (found === undefined) {
    found = hungOf(ctx, id) as Hung;
    map.set(id, found);
  }
  return found;
}

/** The line from tip to block, the block, slings and spreader: the hook stands on the line from picks to tip. */
function placeRigging(
  ctx: SetContext,
  s: Situation,
  shape: Float64Array,
  c: Crane,
  tip: Vec3,
  line: BodyGroup,
  group: BodyGroup,
  xyz: Float64Array,
): void {
  const { pick, rigging, girders } = hung(ctx, c.id);
  const picks = girders.map((g) => onGirder(ctx, s, shape, g, pick.at_m, pick.height_m));
  const n = picks.length;
  const middle: Vec3 = [0, 0, 0];
  for (const p of picks) for (let k = 0; k < 3; k++) middle[k] += p[k] / n;
  const up = [tip[0] - middle[0], tip[1] - middle[1], tip[2] - middle[2]];
  const f = hookAbovePicks(rigging) / (Math.sqrt(up[0] * up[0] + up[1] * up[1] + up[2] * up[2]) || 1);
  const pin: Vec3 = [middle[0] + up[0] * f, middle[1] + up[1] * f, middle[2] + up[2] * f];
  const size = blockSize(c);
  let at = 3 * group.first;
  const put = (p: Vec3, z = 0) => {
    xyz[at++] = p[0];
    xyz[at++] = p[1];
    xyz[at++] = p[2] + z;
  };
  // Slings that hang on their own lines have their blocks above them, as drawn.
  const pins = rigging.kind === "separate" ? picks.map((p): Vec3 => [p[0], p[1], p[2] + 1.2]) : [pin];
  for (const p of pins) {
    put(p, 0.4 * size);
    put(p, 0.35 + 0.6 * size);
  }
  const spread = rigging.kind === "spreader" && n > 1;
  const ends = picks.map((p, i): Vec3 => {
    if (rigging.kind === "separate") return pins[i];
    if (!spread) return pin;
    return [pin[0] + p[0] - middle[0], pin[1] + p[1] - middle[1], pin[2] - rigging.hookPinHeight_m];
  });
  picks.forEach((p, i) => {
    put(ends[i]);
    put(p);
  });
  if (spread) {
    put(pin);
    put(ends[0]);
    put(ends[n - 1]);
  }
  at = 3 * line.first;
  for (const p of pins) {
    put(tip);
    put(p, 0.35 + 0.8 * size);
  }
}

/** Deck and bunks of a transporter; false once it is no part of the situation. */
function placeTrain(
  ctx: SetContext,
  s: Situation,
  shape: Float64Array,
  group: BodyGroup,
  xyz: Float64Array,
): boolean {
  const train = s.trains.find((t) => t.id === group.of);
  if (train === undefined) return false;
  const t = byId(ctx.plan.transporters, group.of);
  const deck = ctx.set.onTransporters.findIndex((on) => on.transporter === group.of);
  const [w, lean, level] = [0, 1, 2].map((k) => shape[setShapeSize(ctx) + 3 * deck + k]);
  const weight = t.mass_t * 1000 * ctx.gravity;
  let lift = -weight / (2 * t.lines * t.cylinderStiffness_kN_per_mm * 1e6);
  for (const g of t.groups) lift += (s.groupLift[g.name] ?? 0) / t.groups.length;
  const stand: Stand = { ctx, s, train, w, lean, level, height: t.bunkHeight_m + lift };
  let at = 3 * group.first;
  const block = (x0: number, x1: number, y0: number, y1: number, z0: number, z1: number) => {
    at = putAcross(stand, x0, y0, y1, z0, z1, xyz, at);
    at = putAcross(stand, x1, y0, y1, z0, z1, xyz, at);
  };
  const [top, bottom] = deckLevels(t);
  const [half, wide] = [t.deckLength_m / 2, t.deckWidth_m / 2];
  block(-half, half, -wide, wide, bottom, top);
  const reach = bunkReach(t, ctx.set);
  for (const { at_m: x } of t.bunks) {
    block(x - 0.25, x + 0.25, -reach, reach, top, 0);
    for (const g of ctx.set.girders)
      block(x - 0.25, x + 0.25, g.y_m - 0.25, g.y_m + 0.25, -0.04, train.packing[g.line] ?? 0);
  }
  return true;
}

/** A deck where it stands: under the set by its solved heave, lean and level, else on the path by itself. */
interface Stand {
  ctx: SetContext;
  s: Situation;
  train: TrainSituation;
  w: number;
  lean: number;
  level: number;
  /** Of its bunks above the path when it is empty: with the lift of its groups, less what its own weight presses in, m. */
  height: number;
}

/** Writes the four corners of a block at one place along the deck. */
function putAcross(
  { ctx, s, train, w, lean, level, height }: Stand,
  x: number,
  y0: number,
  y1: number,
  z0: number,
  z1: number,
  xyz: Float64Array,
  first: number,
): number {
  let at = first;
  if (train.under) {
    const { grade, crossfall } = s.plane;
    const along = s.rearEnd + train.deckAt + x;
    const axis = planeLevel(s, train.deckAt + x, 0);
    for (let corner = 0; corner < 4; corner++) {
      const y = corner < 2 ? y0 : y1;
      const up = w + lean * y - level * x + (corner % 2 === 0 ? z0 : z1);
      xyz[at++] = along - grade * up;
      xyz[at++] = s.across + y + crossfall * up;
      xyz[at++] = axis - crossfall * y + up;
    }
    return at;
  }
  const chainage = s.rearEnd + train.deckAt + train.gone[0] + x;
  const { elevation, crossfall } = pathLevel(ctx.plan, chainage);
  for (let corner = 0; corner < 4; corner++) {
    const across = s.across + train.gone[1] + (corner < 2 ? y0 : y1);
    xyz[at++] = chainage;
    xyz[at++] = across;
    xyz[at++] = elevation - crossfall * across + height + (corner % 2 === 0 ? z0 : z1);
  }
  return at;
}
