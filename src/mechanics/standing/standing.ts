// What stands on hydraulic groups: how far its load is from the lines between their centroids, as distance, angle and load.
//
// A hydraulic group is one support at the centroid of its cylinders, so a load turns over about the lines between
// centroids, not about the outermost wheels. Three groups make a triangle, two trains of two a rectangle.
// Source: statics of a rigid body; distances in plan, heights over the plane of the centroids.

import { hullOf, type PlanPoint } from "./hull.ts";

/** The ground below a body on groups: corners of the hull of the centroids, counter-clockwise, and its edges. */
export interface Base<P extends PlanPoint = PlanPoint> {
  corners: P[];
  edges: Edge[];
}

/** The edge from corner i to the next: its inward normal, and how far the furthest centroid lies inside it, m. */
export interface Edge {
  nx: number;
  ny: number;
  /** n . p of a point on the edge: the distance of (x, y) inside is nx x + ny y - at. */
  at: number;
  depth: number;
}

/** What presses on a base. */
export interface OnBase {
  /** Whole force on the ground, N. */
  force: number;
  /** Where it acts: m in the base's own axes. */
  x: number;
  y: number;
  /** Moment per radian of tilt over the force, m: in a tilt along, and in one across. A rigid body's is its CG's height. */
  heightAlong: number;
  heightAcross: number;
  /** How far actions beside the force may move it either way, m: along, and across. */
  along: number;
  across: number;
}

/** How far a body is from turning over about one edge. */
export interface EdgeMargin {
  edge: number;
  /** From the force, moved as far towards the edge as the actions may, to the edge, m; negative outside. */
  distance: number;
  /** Height that a tilt about this edge works on, m. */
  height: number;
  /** Further tilt of the ground about the edge that brings the force over it, rad. */
  angle: number;
  /** Force that then still presses at the furthest centroid, N: with a triangle, all that is left in that group. */
  load: number;
}

/** The base on some centroids; null when they lie on one line, so that nothing holds what stands on them. */
export function baseOf<P extends PlanPoint>(centroids: readonly P[]): Base<P> | null {
  const corners = hullOf(centroids);
  if (corners.length < 3) return null;
  const edges = corners.map((a, i): Edge => {
    const b = corners[(i + 1) % corners.length];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const nx = -(b.y - a.y) / length;
    const ny = (b.x - a.x) / length;
    const at = nx * a.x + ny * a.y;
    return { nx, ny, at, depth: Math.max(...centroids.map((c) => nx * c.x + ny * c.y - at)) };
  });
  return { corners, edges };
}

/** Distance, angle and load left about one edge of a base. */
export function marginAbout({ edges }: Base, edge: number, p: OnBase): EdgeMargin {
  const { nx, ny, at, depth } = edges[edge];
  const distance = nx * p.x + ny * p.y - at - p.along * Math.abs(nx) - p.across * Math.abs(ny);
  const height = p.heightAlong * nx * nx + p.heightAcross * ny * ny;
  return { edge, distance, height, angle: Math.atan(distance / height), load: (p.force * distance) / depth };
}

/** The edge about which the least tilt turns the body over. */
export function leastMargin(base: Base, p: OnBase): EdgeMargin {
  let least = marginAbout(base, 0, p);
  for (let i = 1; i < base.edges.length; i++) {
    const one = marginAbout(base, i, p);
    if (one.angle < least.angle) least = one;
  }
  return least;
}

/**
 * Load to be added at the furthest centroid, at the height of none, for the angle about the edge to become `angle`, N; 0
 * when it is so already, null when no load there is enough. From (F d + Q depth) / (F + Q) = height tan(angle).
 */
export function loadToReach(edge: Edge, m: EdgeMargin, force: number, angle: number): number | null {
  const wanted = m.height * Math.tan(angle);
  if (m.distance >= wanted) return 0;
  return edge.depth > wanted ? (force * (wanted - m.distance)) / (edge.depth - wanted) : null;
}
