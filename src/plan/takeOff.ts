// The weight take-off of a set: every line with mass and centre, from the plates up; the total is the sum of the lines.
import { type Plate, type Section, sectionOf } from "../section/index.ts";
import { steelOf } from "./defaults.ts";
import type { Girder, LedgerLine, Piece, PlanSet } from "./schema.ts";

/** What a line of the take-off counts. */
export type TakeOffKind = "girders" | "splices" | "cross-frames" | "attachments";

/** One line: mass (kg), centre (m: along from the rear end, left, above the soffit). */
export interface TakeOffLine {
  kind: TakeOffKind;
  item: string;
  /** Girder line by name; null for a cross-frame, which belongs to two. */
  girder: string | null;
  mass: number;
  cg: readonly [number, number, number];
}

/** Mass per metre (kg/m) of one piece, its stiffeners and welds included; stations in m. */
export interface PieceMass {
  girder: string;
  from: number;
  to: number;
  massPerMetre: number;
}

/** A line of the weight ledger (kg) beside what the take-off finds for the same parts; null where it covers none. */
export interface LedgerComparison {
  item: string;
  low: number;
  best: number;
  high: number;
  source: string;
  takeOff: number | null;
}

/** The take-off of a set. Masses in kg, lengths in m. */
export interface TakeOff {
  mass: number;
  cg: readonly [number, number, number];
  lines: TakeOffLine[];
  pieces: PieceMass[];
  /** The whole mass over the length of the set (kg/m). */
  meanMassPerMetre: number;
  ledger: LedgerComparison[];
}

/** Section of a piece's three plates (m, m2, m4); heights above the soffit. */
export function pieceSection(piece: Piece): Section {
  const plate = ([a, b]: readonly [number, number]): Plate => [a / 1000, b / 1000];
  return sectionOf({
    topFlange: plate(piece.topFlange_mm),
    web: plate(piece.web_mm),
    bottomFlange: plate(piece.bottomFlange_mm),
  });
}

/** Weighs a set. Camber is not counted in heights; frames lie halfway between their two girders. */
export function takeOff(set: PlanSet): TakeOff {
  const { density } = steelOf(set);
  const factor = (set.fabricationFactor_pct ?? 0) / 100;
  const lines: TakeOffLine[] = [];
  const pieces: PieceMass[] = [];
  for (const girder of set.girders) {
    for (const [i, piece] of girder.pieces.entries()) {
      const { area, centroid } = pieceSection(piece);
      const length = piece.to_m - piece.from_m;
      const plates = area * length * density;
      const cg = [(piece.from_m + piece.to_m) / 2, girder.y_m, centroid] as const;
      const mark = piece.mark ?? `piece ${i + 1}`;
      const line = { kind: "girders", girder: girder.line, cg } as const;
      lines.push({ ...line, item: `${girder.line} ${mark}: plates`, mass: plates });
      if (factor > 0) {
        lines.push({ ...line, item: `${girder.line} ${mark}: stiffeners and welds`, mass: plates * factor });
      }
      pieces.push({
        girder: girder.line,
        from: piece.from_m,
        to: piece.to_m,
        massPerMetre: area * density * (1 + factor),
      });
    }
  }
  lines.push(...spliceLines(set), ...frameLines(set), ...attachmentLines(set));
  const mass = sum(lines.map((line) => line.mass));
  const along = (axis: 0 | 1 | 2) => sum(lines.map((line) => line.mass * line.cg[axis])) / mass;
  const ends = set.girders[0].pieces;
  return {
    mass,
    cg: [along(0), along(1), along(2)],
    lines,
    pieces,
    meanMassPerMetre: mass / ends[ends.length - 1].to_m,
    ledger: set.ledger.map((line) => compare(line, lines, mass)),
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** The girder of this name; the reader has seen to it that it exists. */
function girderOf(set: PlanSet, line: string): Girder {
  const girder = set.girders.find((g) => g.line === line);
  if (girder === undefined) {
    const known = set.girders.map((g) => g.line).join(", ");
    throw new Error(
      `takeOff: found no girder "${line}" in set ${set.id}; it has ${known}. Read the plan first.`,
    );
  }
  return girder;
}

/** Centroid of a girder (m above the soffit) at a station; at a joint, of the piece that ends there. */
function centroidAt(girder: Girder, at: number): number {
  const piece = girder.pieces.find((p) => at <= p.to_m) ?? girder.pieces[girder.pieces.length - 1];
  return pieceSection(piece).centroid;
}

function spliceLines(set: PlanSet): TakeOffLine[] {
  return set.splices.map((splice) => {
    const girder = girderOf(set, splice.girder);
    return {
      kind: "splices",
      item: `${splice.girder} splice at ${splice.at_m} m`,
      girder: splice.girder,
      mass: splice.mass_t * 1000,
      cg: [splice.at_m, girder.y_m, centroidAt(girder, splice.at_m)],
    };
  });
}

/** One frame between each two neighbours, each an equal part of the mass at its station; on a lone girder, all on it. */
function frameLines(set: PlanSet): TakeOffLine[] {
  const across = [...set.girders].sort((a, b) => b.y_m - a.y_m);
  const bays =
    across.length === 1 ? [[across[0], across[0]]] : across.slice(1).map((right, i) => [across[i], right]);
  return set.crossFrames.flatMap((frame) =>
    bays.map(([left, right]): TakeOffLine => {
      const between = left === right ? left.line : `${left.line}-${right.line}`;
      return {
        kind: "cross-frames",
        item: `frame ${between} at ${frame.at_m} m`,
        girder: left === right ? left.line : null,
        mass: (frame.mass_t * 1000) / bays.length,
        cg: [frame.at_m, (left.y_m + right.y_m) / 2, frame.height_m],
      };
    }),
  );
}

function attachmentLines(set: PlanSet): TakeOffLine[] {
  return set.attachments.map((part) => ({
    kind: "attachments",
    item: part.name,
    girder: part.girder,
    mass: part.mass_t * 1000,
    cg: [part.at_m, girderOf(set, part.girder).y_m + (part.y_m ?? 0), part.height_m],
  }));
}

function compare(line: LedgerLine, lines: readonly TakeOffLine[], mass: number): LedgerComparison {
  const { item, source, covers } = line;
  const { low, best, high } = line.mass_t;
  const counted = lines.filter((l) => l.kind === covers).map((l) => l.mass);
  const takeOff = covers === undefined ? null : covers === "whole set" ? mass : sum(counted);
  return { item, source, low: low * 1000, best: best * 1000, high: high * 1000, takeOff };
}
