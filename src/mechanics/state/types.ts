// The physical state of one pose, in plain SI numbers (m, N, kg, rad, Pa): the only thing the statics read.
//
// x forward from the rear end of the set, y left, z up and normal to the path. Displacements count from the
// unstressed straight set with its soffit at z = 0. `grade` > 0 rises forward and `crossfall` > 0 falls towards +y
// (both as tangents): they turn gravity, not the coordinates.

/** Width or height across the girder axis and thickness, m. */
export type PlateSize = readonly [number, number];

export interface StatePiece {
  from: number;
  to: number;
  topFlange: PlateSize;
  web: PlateSize;
  bottomFlange: PlateSize;
  /** kg/m, stiffeners and welds included. */
  massPerMetre: number;
}

export interface StateGirder {
  name: string;
  y: number;
  /** Unstressed shape as [x, height] points, linear between them, m. */
  camber?: readonly (readonly [number, number])[];
  pieces: readonly StatePiece[];
}

/** Joins all neighbouring girders at station `at`. */
export interface StateCrossFrame {
  at: number;
  area: number;
  /** Second moment for bending in the vertical plane across the bridge, m4. */
  inPlaneInertia: number;
  planInertia: number;
  torsion: number;
  mass: number;
  /** Height of its mass above the soffit, m. */
  height: number;
}

export interface StatePointMass {
  girder: string;
  at: number;
  mass: number;
  height: number;
  /** Distance left of its girder's axis, m; 0 when left out. */
  off?: number;
}

export interface StateTrain {
  name: string;
  /** Station of the deck centre. */
  at: number;
  lines: number;
  pitch: number;
  gauge: number;
  /** One cylinder, N/m. */
  cylinderStiffness: number;
  strokeUp?: number;
  strokeDown?: number;
  mass: number;
  cgHeight: number;
  bunkHeight: number;
  /** Bunk positions along the deck from its centre. */
  bunks: readonly number[];
  bunkGirders: readonly string[];
  bunkStiffness: number;
  bunkSideStiffness?: number;
  bunkFriction?: number;
  brakeLimit?: number;
  packing?: Readonly<Record<string, number>>;
  braked?: boolean;
}

export interface StateHoist {
  name: string;
  at: number;
  girders: readonly string[];
  rigging: "spreader" | "point" | "separate";
  mode: "load" | "takeUp";
  /** m, from the line just taut on the unstressed straight set; used when mode is takeUp. */
  takeUp?: number | null;
  /** N, the net load on the picks; used when mode is load. */
  load?: number | null;
  stiffness: number;
  /** Picks above the soffit, m. */
  pickHeight: number;
  /** Hook pin above the spreader's lower pins (spreader) or above the picks (point), m. */
  pinHeight?: number;
  /** By girder: how much longer its sling is than the others', m; their mean counts for nothing. */
  longer?: Readonly<Record<string, number>>;
  /** Boom tip to picks, m; without it the line stays vertical and has no plan stiffness. */
  ropeLength?: number;
  /** [x, y] of the boom tip from the true plumb above the picks, m. */
  offset?: readonly [number, number];
}

export interface StateLashing {
  train: string;
  girder: string;
  at: number;
  stiffness: number;
  slack?: number;
  pretension?: number;
}

export interface StateBearing {
  name: string;
  girder: string;
  at: number;
  seat: number;
  stiffness: number;
  holds?: "free" | "guided" | "fixed";
  friction?: number;
  sideLimit?: number;
  sideStiffness?: number;
}

export interface StateWind {
  pressure: number;
  factor: number;
  toward: "+y" | "-y";
}

export interface State {
  format: "handspan-state";
  version: 1;
  gravity: number;
  E: number;
  G: number;
  shear?: boolean;
  girders: readonly StateGirder[];
  crossFrames?: readonly StateCrossFrame[];
  pointMasses?: readonly StatePointMass[];
  trains?: readonly StateTrain[];
  /** Group name to its cylinder ids `train:line side`, line 1 rearmost. */
  groups?: Readonly<Record<string, readonly string[]>>;
  /** Commanded mean lift of a group, m. */
  groupLift?: Readonly<Record<string, number>>;
  /** Ground level under a wheel, m. */
  ground?: Readonly<Record<string, number>>;
  hoists?: readonly StateHoist[];
  lashings?: readonly StateLashing[];
  bearings?: readonly StateBearing[];
  grade?: number;
  crossfall?: number;
  wind?: StateWind;
  ask?: { droopAt?: readonly number[] };
}

export interface Tipping {
  /** The two supports through which the axis runs. */
  axis: string;
  /** Stabilising over overturning moment about it; null when nothing overturns. */
  momentRatio: number | null;
  /** Distance of the CG inside the axis, m (negative outside). */
  cgDistance: number;
  /** Smallest group force with tare, N; null without groups. */
  smallestGroup: number | null;
}

export interface HorizontalAnswer {
  /** Per hoist: lean of the line (tangent, along x and y) and the force it puts on the picks, N. */
  lines: Record<string, { lean: [number, number]; force: [number, number] }>;
  /** Per bunk or bearing that holds: force on the set [x, y] in N and the share of its limit used (null: no limit given). */
  contacts: Record<string, { force: [number, number]; used: number | null }>;
  /** Per train: longitudinal force in N and the share of its brake limit used. */
  brakes: Record<string, { force: number; used: number | null }>;
  /** Displacement of the set [x, y, yaw]. */
  motion: [number, number, number];
  /** Horizontal motions that nothing holds and that no force acts on. */
  free: string[];
  /** Contacts at their friction or stop limit. */
  slipping: string[];
}

/** What the statics answer for one State. */
export interface StateAnswer {
  status: "solved" | "mechanism" | "unsettled";
  /** With a mechanism: which body moves and how. */
  motion?: string;
  /** Remarks such as 'lean of a one-girder set is held'. */
  notes: string[];
  /** Weight of the set, N, and its centre of gravity [x, y, z]. */
  weight: number;
  cg: [number, number, number];
  forces: Record<string, number>;
  strokes: Record<string, number>;
  gaps: Record<string, number>;
  droop: Record<string, number[]>;
  lean: number;
  level: number;
  horizontal: HorizontalAnswer | null;
  tipping: Tipping | null;
  residual: { force: number; moment: number };
  passes: number;
}
