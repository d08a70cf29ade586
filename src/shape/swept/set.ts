// The set as convex bodies: every girder in boxes along its cambered, sagging axis, as wide as its flanges; its web's
// recess is filled, so that nothing is nearer than it seems. Cross-frames lie between, attachments have no size in a plan.

import { camberAt, type Girder, type PlanSet } from "../../plan/index.ts";
import { type Pose, type SetContext, type Situation, sectionReader } from "../../sequence/index.ts";
import { pieceAt, platesOf } from "../curves.ts";
import type { Draft, SweptBody } from "./form.ts";

/** Stations nearer to each other than this are one, m. */
const SAME = 1e-6;

/** A section of a girder at which the boxes join. */
export interface Section {
  girder: number;
  y: number;
  station: number;
  /** Half-widths of the flanges and the depth, m. */
  bottom: number;
  top: number;
  depth: number;
}

/** Sections of a girder piece by piece: at ends of pieces, at points of the camber, and at the stations handed in. */
function sectionsOf(
  girder: Girder,
  index: number,
  inside: readonly number[],
): { sections: Section[]; boxes: number[] } {
  const sections: Section[] = [];
  const boxes: number[] = [];
  for (const piece of girder.pieces) {
    const corners = [...girder.camber_mm.map(([s]) => s), ...inside];
    const inner = new Set(corners.filter((s) => s > piece.from_m + SAME && s < piece.to_m - SAME));
    const stops = [piece.from_m, ...[...inner].sort((a, b) => a - b), piece.to_m];
    const { top, bottom, depth } = platesOf(pieceAt(girder, (piece.from_m + piece.to_m) / 2));
    stops.forEach((station, i) => {
      if (i > 0) boxes.push(sections.length - 1);
      sections.push({
        girder: index,
        y: girder.y_m,
        station,
        bottom: bottom.width / 2,
        top: top.width / 2,
        depth,
      });
    });
  }
  return { sections, boxes };
}

/** All sections of a set, and the first section of every box, which reaches to the next one. */
interface Sections {
  sections: Section[];
  boxes: number[];
}

function sectionsOfAll(set: PlanSet, inside: (girder: number) => readonly number[]): Sections {
  const all: Sections = { sections: [], boxes: [] };
  set.girders.forEach((girder, i) => {
    const own = sectionsOf(girder, i, inside(i));
    const before = all.sections.length;
    all.boxes.push(...own.boxes.map((b) => b + before));
    all.sections.push(...own.sections);
  });
  return all;
}

/**
 * Sections of the set that is moved, also at all nodes of its mesh: between two of them its twist is straight, and within
 * the 1 m of an element bent to 1/500 of 60 m its soffit leaves the chord by 0.03 mm.
 */
function sectionsOfSet({ set, model }: SetContext): Sections {
  return sectionsOfAll(set, (g) => model.girders[g].elements.map((e) => e.from));
}

/** Sections of a set that lies: straight but for its camber. */
export const landedSections = (set: PlanSet): Sections => sectionsOfAll(set, () => []);

/** Boxes from section to section: four points each. */
export function girderBodies(
  set: PlanSet,
  { sections, boxes }: Sections,
): { bodies: SweptBody[]; points: number } {
  const bodies = boxes.map((b): SweptBody => {
    const line = set.girders[sections[b].girder].line;
    const at = `${sections[b].station.toFixed(1)} to ${sections[b + 1].station.toFixed(1)} m`;
    return { name: `girder ${line}, ${at}`, first: 4 * b, count: 8, radius: 0, disc: 0 };
  });
  return { bodies, points: 4 * sections.length };
}

export function setGroup(ctx: SetContext): Draft {
  const { bodies, points } = girderBodies(ctx.set, sectionsOfSet(ctx));
  return { kind: "set", of: ctx.set.id, name: "set", bodies, points };
}

interface Own {
  sections: Section[];
  read: (pose: Pose, out: Float64Array) => void;
}

const known = new WeakMap<SetContext, Own>();

function own(ctx: SetContext): Own {
  let found = known.get(ctx);
  if (found === undefined) {
    const { sections } = sectionsOfSet(ctx);
    found = { sections, read: sectionReader(ctx, sections) };
    known.set(ctx, found);
  }
  return found;
}

const sectionsIn = (ctx: SetContext): Section[] => own(ctx).sections;

/** Numbers of the shape of a set: rise over the datum plane and twist at every section. */
export const setShapeSize = (ctx: SetContext): number => 2 * sectionsIn(ctx).length;

/** Writes the solved shape of the set: rise (m) and twist (rad) of every section, from the start of `out`. */
export function readSetShape(ctx: SetContext, pose: Pose, out: Float64Array): void {
  own(ctx).read(pose, out);
}

/** How far at most a change of the shape moves a point of the set, m: `change` is the difference of two shapes. */
export function setMoves(ctx: SetContext, change: Float64Array): number {
  const sections = sectionsIn(ctx);
  let most = 0;
  for (let i = 0; i < sections.length; i++) {
    const { bottom, top, depth } = sections[i];
    const arm = Math.max(bottom, Math.sqrt(top * top + depth * depth));
    most = Math.max(most, Math.abs(change[2 * i]) + arm * Math.abs(change[2 * i + 1]));
  }
  return most;
}

/** Puts the points of the set in their place. */
export function placeSet(ctx: SetContext, s: Situation, shape: Float64Array, xyz: Float64Array): void {
  const { grade, crossfall, elevation, chainage } = s.plane;
  const sections = sectionsIn(ctx);
  let at = 0;
  for (let i = 0; i < sections.length; i++) {
    const { y, station, bottom, top, depth } = sections[i];
    const rise = shape[2 * i];
    const twist = shape[2 * i + 1];
    const level = elevation + grade * (s.rearEnd + station - chainage);
    for (let corner = 0; corner < 4; corner++) {
      const height = corner < 2 ? 0 : depth;
      const side = (corner % 2 === 0 ? 1 : -1) * (corner < 2 ? bottom : top);
      const across = y + side - height * twist;
      const z = rise + height + side * twist;
      xyz[at++] = s.rearEnd + station - grade * z;
      xyz[at++] = s.across + across + crossfall * z;
      xyz[at++] = level - crossfall * across + z;
    }
  }
}

/** Rise over the datum plane of a girder's soffit at a station, between sections, m. */
export function riseAt(ctx: SetContext, shape: Float64Array, girder: number, station: number): number {
  const sections = sectionsIn(ctx);
  let before = -1;
  for (let i = 0; i < sections.length; i++) {
    if (sections[i].girder !== girder) continue;
    if (sections[i].station <= station || before < 0) before = i;
    else break;
  }
  const [a, b] = [sections[before], sections[before + 1]];
  if (b === undefined || b.girder !== girder || b.station === a.station) return shape[2 * before];
  const t = (station - a.station) / (b.station - a.station);
  return shape[2 * before] + t * (shape[2 * before + 2] - shape[2 * before]);
}

/**
 * An earlier set where it lies in the end, as points of its sections: how far it sags on its bearings is not worked out
 * here, so that its boxes reach from no camber at all up to its full camber. Its rear end is at a chainage, and its axis
 * lies to the left of the bridge's, m.
 */
export function landedPoints(
  set: PlanSet,
  [rearEnd, aside]: readonly [number, number],
  soffit: (girder: number, station: number) => number,
): number[] {
  const out: number[] = [];
  for (const { girder, y, station, bottom, top, depth } of landedSections(set).sections) {
    const camber = camberAt(set.girders[girder], station) / 1000;
    const low = soffit(girder, station);
    for (let corner = 0; corner < 4; corner++) {
      const side = (corner % 2 === 0 ? 1 : -1) * (corner < 2 ? bottom : top);
      out.push(
        rearEnd + station,
        aside + y + side,
        corner < 2 ? low + Math.min(0, camber) : low + depth + Math.max(0, camber),
      );
    }
  }
  return out;
}
