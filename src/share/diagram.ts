// The diagram of one action along the girders as paths: the pose at the cursor, and the envelope of all steps behind it.
import type { GirderEnvelope } from "../app/index.ts";
import type { DiagramLine } from "../report/index.ts";

export type Action = "moment" | "shear" | "torsion";

/** Where a girder's diagram is drawn: stations and values to px. */
export interface Lane {
  x: (station: number) => number;
  y: (value: number) => number;
}

/** Greatest size of an action in a pose and in its envelopes, for one scale of all girders; 1 where all are zero. */
export function scaleOf(
  lines: readonly DiagramLine[],
  envelopes: readonly GirderEnvelope[],
  action: Action,
): number {
  let most = 0;
  const see = (value: number) => {
    if (Math.abs(value) > most) most = Math.abs(value);
  };
  for (const { points } of lines) for (const point of points) see(point[action]);
  for (const envelope of envelopes) {
    envelope[action].most.forEach(see);
    envelope[action].least.forEach(see);
  }
  return most > 0 ? most : 1;
}

/** Filled outline of a diagram from its axis. */
export function diagramPath({ points }: DiagramLine, action: Action, { x, y }: Lane): string {
  if (points.length === 0) return "";
  const at = points.map((p) => `${x(p.x).toFixed(1)} ${y(p[action]).toFixed(1)}`);
  const zero = y(0).toFixed(1);
  return `M${x(points[0].x).toFixed(1)} ${zero}L${at.join("L")}L${x(points[points.length - 1].x).toFixed(1)} ${zero}Z`;
}

/** Outline of what the action reaches in any pose, element by element. */
export function envelopePath(envelope: GirderEnvelope, action: Action, { x, y }: Lane): string {
  const { most, least } = envelope[action];
  const there: string[] = [];
  const back: string[] = [];
  for (let e = 0; e < most.length; e++) {
    if (Number.isNaN(most[e])) continue;
    const [a, b] = [x(envelope.x[e]).toFixed(1), x(envelope.x[e + 1]).toFixed(1)];
    there.push(`${a} ${y(Math.max(0, most[e])).toFixed(1)}`, `${b} ${y(Math.max(0, most[e])).toFixed(1)}`);
    back.push(`${b} ${y(Math.min(0, least[e])).toFixed(1)}`, `${a} ${y(Math.min(0, least[e])).toFixed(1)}`);
  }
  if (there.length === 0) return "";
  // The lower side is walked back element by element, each from its end to its start.
  const reversed: string[] = [];
  for (let i = back.length - 2; i >= 0; i -= 2) reversed.push(back[i], back[i + 1]);
  return `M${there.join("L")}L${reversed.join("L")}Z`;
}

/** Section with the greatest value of one sign, by size; null where none has that sign. */
export function peakOf(
  { points }: DiagramLine,
  action: Action,
  sign: 1 | -1,
): { x: number; value: number } | null {
  let found: { x: number; value: number } | null = null;
  for (const p of points)
    if (sign * p[action] > sign * (found?.value ?? 0)) found = { x: p.x, value: p[action] };
  return found;
}

/** Values at a station, read from the section nearest to it. */
export function nearest({ points }: DiagramLine, x: number) {
  let best = points[0];
  for (const p of points) if (Math.abs(p.x - x) < Math.abs(best.x - x)) best = p;
  return best;
}
