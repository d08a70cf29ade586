// Distances of a pose by brute force: the set and the booms put in place by the code that draws, everything that can be
// nearest looked at; for round edges weights of all differences of points walked down to the least (Mitchell, Demyanov,
// Malozemov 1974), which is never below the true one. Shares no code with the search that it tests.

import type { ClearancePair } from "../../../src/checks/clearance/pairs.ts";
import { camberAt } from "../../../src/plan/index.ts";
import { girderShape, type Pose, type SetContext, worldOf } from "../../../src/sequence/index.ts";
import {
  craneSizes,
  curvesOf,
  newPlaced,
  placeBodies,
  pointOn,
  setFrame,
  shapeOf,
  sweptBodies,
} from "../../../src/shape/index.ts";
import { apart as ofFeatures } from "../../numeric/convex/features.ts";

type Vec = readonly [number, number, number];

/** A hull of points with a ball around it, or an upright cylinder around its points. */
interface Hull {
  points: Vec[];
  radius: number;
  disc: number;
}

/** Distance of two hulls from above, and what it is at least. */
function walkedDistance(a: Hull, b: Hull, rounds: number): { most: number; least: number } {
  const n = a.points.length * b.points.length;
  const all = new Float64Array(3 * n);
  let at = 0;
  for (const p of a.points) for (const q of b.points) for (let k = 0; k < 3; k++) all[at++] = p[k] - q[k];
  const weights = new Float64Array(n);
  const along = new Float64Array(n);
  let [x, y, z] = [0, 0, 0];
  let nearest = Number.POSITIVE_INFINITY;
  let start = 0;
  let least = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < n; i++) {
    const d = all[3 * i] ** 2 + all[3 * i + 1] ** 2 + all[3 * i + 2] ** 2;
    if (d < nearest) [nearest, start] = [d, i];
  }
  weights[start] = 1;
  [x, y, z] = [all[3 * start], all[3 * start + 1], all[3 * start + 2]];
  for (let round = 0; round < rounds; round++) {
    let low = 0;
    let high = -1;
    for (let i = 0; i < n; i++) {
      along[i] = all[3 * i] * x + all[3 * i + 1] * y + all[3 * i + 2] * z;
      if (along[i] < along[low]) low = i;
      if (weights[i] > 0 && (high < 0 || along[i] > along[high])) high = i;
    }
    const gap = along[high] - along[low];
    least = Math.max(least, along[low] / Math.sqrt(x * x + y * y + z * z));
    // Bound on how far the squares are apart.
    if (gap <= 1e-9 * Math.max(1e-3, x * x + y * y + z * z)) break;
    const [dx, dy, dz] = [0, 1, 2].map((k) => all[3 * low + k] - all[3 * high + k]);
    const step = Math.min(weights[high], gap / (dx * dx + dy * dy + dz * dz));
    weights[low] += step;
    weights[high] = step === weights[high] ? 0 : weights[high] - step;
    [x, y, z] = [x + step * dx, y + step * dy, z + step * dz];
  }
  const thick = a.radius + b.radius;
  return { most: Math.sqrt(x * x + y * y + z * z) - thick, least: least - thick };
}

/** Straight between neighbouring stations, by weights of both. */
function straight(stations: readonly number[], s: number, value: (at: number) => number): number {
  const i = Math.max(
    1,
    stations.findIndex((x) => x >= s),
  );
  const [a, b] = [stations[i - 1], stations[i]];
  return value(a) + ((s - a) / (b - a)) * (value(b) - value(a));
}

/**
 * The set as it is drawn, in boxes from node to node along the curves of its girders, and from corner to corner of their
 * camber: a drawn curve cuts those, by 0.6 mm where 2.6 mrad of slope change half-way along an element of 1 m.
 */
function drawnSet(ctx: SetContext, pose: Pose): Hull[] {
  const frame = setFrame(pose.situation);
  const shapes = girderShape(ctx, pose);
  return curvesOf(ctx.set, shapes, 1).flatMap((drawn, g) => {
    const stations = Array.from(shapes[g].stations);
    const camber = (s: number) => camberAt(drawn.girder, s) / 1000;
    const rise = (s: number) => drawn.rise(s) + camber(s) - straight(stations, s, camber);
    const curve = { ...drawn, rise };
    const corners = drawn.girder.camber_mm.map(([s]) => s);
    return curve.girder.pieces.flatMap((piece) => {
      const inside = [...stations, ...corners].filter(
        (s) => s > piece.from_m + 1e-9 && s < piece.to_m - 1e-9,
      );
      const nodes = [...new Set(inside)].sort((a, b) => a - b);
      const stops = [piece.from_m, ...nodes, piece.to_m];
      const [tf, web, bf] = [piece.topFlange_mm, piece.web_mm, piece.bottomFlange_mm];
      const depth = (tf[1] + web[0] + bf[1]) / 1000;
      const at = (s: number): Vec[] => [
        pointOn(frame, curve, s, bf[0] / 2000, 0),
        pointOn(frame, curve, s, -bf[0] / 2000, 0),
        pointOn(frame, curve, s, tf[0] / 2000, depth),
        pointOn(frame, curve, s, -tf[0] / 2000, depth),
      ];
      return stops
        .slice(1)
        .map((s, i): Hull => ({ points: [...at(stops[i]), ...at(s)], radius: 0, disc: 0 }));
    });
  });
}

/** A boom from its foot to its tip in the world of the pose: butt, middle and head as wide as drawn. */
function drawnBoom(ctx: SetContext, pose: Pose, id: string): Hull[] {
  const { foot, tip } = worldOf(ctx, pose).cranes[id];
  const crane = ctx.plan.cranes.find((c) => c.id === id);
  if (crane === undefined) throw new Error(id);
  const half = craneSizes(crane).lattice / 2;
  const d: Vec = [tip[0] - foot[0], tip[1] - foot[1], tip[2] - foot[2]];
  const l = Math.hypot(d[0], d[1], d[2]);
  const e: Vec = [d[0] / l, d[1] / l, d[2] / l];
  const level = Math.hypot(e[0], e[1]);
  const across: Vec = [-e[1] / level, e[0] / level, 0];
  const up: Vec = [-e[2] * across[1], e[2] * across[0], e[0] * across[1] - e[1] * across[0]];
  const points = (
    [
      [0.25, 0.3],
      [Math.min(0.16 * l, 7), half],
      [l - Math.min(0.14 * l, 6), half],
      [l - 0.2, 0.28],
    ] as const
  ).flatMap(([x, h]) =>
    [
      [h, h],
      [h, -h],
      [-h, h],
      [-h, -h],
    ].map(
      ([y, z]): Vec => [0, 1, 2].map((k) => foot[k] + x * e[k] + y * across[k] + z * up[k]) as unknown as Vec,
    ),
  );
  return [{ points, radius: 0, disc: 0 }];
}

/** Hulls of a group of bodies at a pose. */
function hullsOf(ctx: SetContext, pose: Pose, group: number): Hull[] {
  const swept = sweptBodies(ctx);
  const { kind, of, bodies } = swept.groups[group];
  if (kind === "set") return drawnSet(ctx, pose);
  if (kind === "boom") return drawnBoom(ctx, pose, of);
  const { xyz } = newPlaced(ctx);
  placeBodies(ctx, pose.situation, shapeOf(ctx, pose), { xyz, there: new Uint8Array(swept.groups.length) });
  return bodies.map(({ first, count, radius, disc }): Hull => {
    const points = Array.from({ length: count }, (_, i) => first + i).map(
      (i): Vec => [xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]],
    );
    return { points, radius, disc };
  });
}

/** A cylinder as the part of its edge that looks toward a point, 81 points over 90 degrees. */
function edgeToward({ points: own, radius, disc }: Hull, toward: Vec): Hull {
  const middle = Math.atan2(toward[1] - own[0][1], toward[0] - own[0][0]);
  const points = own.flatMap(([x, y, z]) =>
    Array.from({ length: 81 }, (_, i): Vec => {
      const turn = middle + ((i - 40) * Math.PI) / 160;
      return [x + disc * Math.cos(turn), y + disc * Math.sin(turn), z];
    }),
  );
  return { points, radius, disc: 0 };
}

const middleOf = ({ points }: Hull): Vec =>
  [0, 1, 2].map((k) => points.reduce((s, p) => s + p[k] / points.length, 0)) as unknown as Vec;

/**
 * Distance of two hulls, or something more than `most` where it is more. Of bodies that overlap it is more than nothing,
 * which proves nothing.
 */
function apart(a: Hull, b: Hull, most: number): number {
  const round = a.disc > 0 || b.disc > 0;
  const one = a.disc > 0 ? edgeToward(a, middleOf(b)) : a;
  const other = b.disc > 0 ? edgeToward(b, middleOf(a)) : b;
  const walked = walkedDistance(one, other, round ? 4000 : 100);
  if (round || walked.least > most || walked.most - walked.least < 1e-6) return walked.most;
  return ofFeatures(a.points, b.points) - a.radius - b.radius;
}

const boxOf = ({ points, radius, disc }: Hull): number[] =>
  [0, 1, 2].flatMap((k) => [
    Math.min(...points.map((p) => p[k])) - radius - (k < 2 ? disc : 0),
    Math.max(...points.map((p) => p[k])) + radius + (k < 2 ? disc : 0),
  ]);

function boxesApart(a: number[], b: number[]): number {
  let square = 0;
  for (let k = 0; k < 3; k++) square += Math.max(0, b[2 * k] - a[2 * k + 1], a[2 * k] - b[2 * k + 1]) ** 2;
  return Math.sqrt(square);
}

interface Group {
  hulls: Hull[];
  boxes: number[][];
}

/** Distances at one pose: of a pair, unless it is more than `most`. */
export function distancesAt(ctx: SetContext, pose: Pose): (pair: ClearancePair, most: number) => number {
  const made = new Map<number, Group>();
  const group = (g: number): Group => {
    let found = made.get(g);
    if (found === undefined) {
      const hulls = hullsOf(ctx, pose, g);
      found = { hulls, boxes: hulls.map(boxOf) };
      made.set(g, found);
    }
    return found;
  };
  return (pair, most) => {
    const [a, b] = [group(pair.a), group(pair.b)];
    let least = most;
    const order: [number, number, number][] = [];
    a.boxes.forEach((one, i) => {
      b.boxes.forEach((other, j) => {
        const d = boxesApart(one, other);
        if (d < most) order.push([d, i, j]);
      });
    });
    order.sort((p, q) => p[0] - q[0]);
    for (const [d, i, j] of order) {
      if (d >= least) break;
      least = Math.min(least, apart(a.hulls[i], b.hulls[j], least));
    }
    return least;
  };
}
