// A girder as it is drawn: the plates of a piece as rectangles, and everything that an elevation shows along it.
import { camberAt, type Girder, type Piece, type PlanSet } from "../../../../plan/index.ts";

/** A plate seen in cross-section, mm: left edge from the web's middle, bottom above the soffit. */
export interface PlateBox {
  readonly plate: "top flange" | "web" | "bottom flange";
  readonly x: number;
  readonly z: number;
  readonly width: number;
  readonly height: number;
}

/** The three plates of a piece, the bottom flange first. */
export function platesOf({ topFlange_mm, web_mm, bottomFlange_mm }: Piece): PlateBox[] {
  const [bottom, top] = [bottomFlange_mm, topFlange_mm];
  const [height, thick] = web_mm;
  return [
    { plate: "bottom flange", x: -bottom[0] / 2, z: 0, width: bottom[0], height: bottom[1] },
    { plate: "web", x: -thick / 2, z: bottom[1], width: thick, height },
    { plate: "top flange", x: -top[0] / 2, z: bottom[1] + height, width: top[0], height: top[1] },
  ];
}

/** Depth of a piece, m. */
export const depthOf = ({ topFlange_mm, web_mm, bottomFlange_mm }: Piece): number =>
  (topFlange_mm[1] + web_mm[0] + bottomFlange_mm[1]) / 1000;

/** A mark along a girder. */
export interface Mark {
  readonly at: number;
  readonly words: string;
}

/** What an elevation of one girder shows, stations in m, camber in mm. */
export interface GirderElevation {
  readonly length: number;
  readonly depth: number;
  readonly pieces: readonly { from: number; to: number; depth: number; mark: string }[];
  readonly splices: readonly Mark[];
  readonly frames: readonly Mark[];
  readonly stiffeners: readonly Mark[];
  /** Stations at which the camber is known to bend, with both ends of the girder. */
  readonly camber: readonly { at: number; rise: number }[];
  readonly mostCamber: number;
}

/** The elevation of a girder of a set. */
export function elevationOf(set: PlanSet, girder: Girder): GirderElevation {
  const { pieces, camber_mm, line } = girder;
  const length = pieces[pieces.length - 1].to_m;
  const stations = [...new Set([0, ...camber_mm.map(([at]) => at), length])].sort((a, b) => a - b);
  const camber = stations.map((at) => ({ at, rise: camberAt(girder, at) }));
  const own = <T extends { girder: string; at_m: number }>(list: readonly T[], words: string): Mark[] =>
    list.filter((one) => one.girder === line).map(({ at_m }) => ({ at: at_m, words }));
  return {
    length,
    depth: Math.max(...pieces.map(depthOf)),
    pieces: pieces.map((piece, i) => ({
      from: piece.from_m,
      to: piece.to_m,
      depth: depthOf(piece),
      mark: piece.mark ?? `piece ${i + 1}`,
    })),
    splices: own(set.splices, "splice"),
    frames: set.crossFrames.map(({ at_m }) => ({ at: at_m, words: "cross-frame" })),
    stiffeners: own(set.stiffeners ?? [], "stiffeners"),
    camber,
    mostCamber: Math.max(...camber.map(({ rise }) => Math.abs(rise))),
  };
}
