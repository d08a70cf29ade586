// What labels leave in sight: girders, hooks with their rigging, the bodies of the cranes; labels stand beside, with a leader.
import type { Vec3 } from "../sequence/index.ts";
import type { Rect } from "./labels.ts";
import type { Sheet } from "./sheet.ts";

/** Pieces into which a girder is cut, so that one that lies aslant on the sheet blocks no more than itself. */
const pieces = 16;
/** Room (px) around a body. */
const around = 2;

/** The rectangle around some points of the world; null where one of them is behind the eye. */
function frameOf(sheet: Sheet, points: readonly Vec3[]): Rect | null {
  const seen = points.map((p) => sheet.at(p));
  if (seen.some(({ behind }) => behind)) return null;
  const [xs, ys] = [seen.map(({ x }) => x), seen.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs) - around, Math.min(...ys) - around];
  return {
    left,
    top,
    width: Math.max(...xs) + around - left,
    height: Math.max(...ys) + around - top,
  };
}

const between = (a: Vec3, b: Vec3, part: number): Vec3 => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
  a[2] + (b[2] - a[2]) * part,
];

const raised = ([x, y, z]: Vec3, by: number): Vec3 => [x, y, z + by];

/** Depth of a girder, m: the greatest of its pieces. */
function depthOf(sheet: Sheet, line: string): number {
  const pieces = sheet.model.set.girders.find((one) => one.line === line)?.pieces ?? [];
  const depths = pieces.map((piece) => piece.topFlange_mm[1] + piece.web_mm[0] + piece.bottomFlange_mm[1]);
  return Math.max(0, ...depths) / 1000;
}

/** Rectangles on the sheet that no label may cover. */
export function keptFree(sheet: Sheet): Rect[] {
  const { world, plan } = sheet.model;
  if (world === null) return [];
  const girders = Object.entries(world.girders).flatMap(([line, { tail, nose }]) => {
    const depth = depthOf(sheet, line);
    return Array.from({ length: pieces }, (_, i) => {
      const [a, b] = [between(tail, nose, i / pieces), between(tail, nose, (i + 1) / pieces)];
      return frameOf(sheet, [a, b, raised(a, depth), raised(b, depth)]);
    });
  });
  const cranes = Object.entries(world.cranes).flatMap(([id, { hook, picks, centre }]) => {
    const rigging = hook === null ? null : frameOf(sheet, [hook, ...picks]);
    const crane = plan.cranes.find((one) => one.id === id);
    if (crane === undefined) return [rigging];
    const half = crane.trackLength_m / 2;
    const [x, y, z] = centre;
    const ground = crane.position.elevation_m;
    const body = [-half, half].flatMap((dx): Vec3[] => [
      [x + dx, y, ground],
      [x + dx, y, Math.max(z, ground + crane.boomFootHeight_m)],
    ]);
    return [rigging, frameOf(sheet, body)];
  });
  return [...girders, ...cranes].filter((rect) => rect !== null);
}
