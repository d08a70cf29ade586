// The way of an empty transporter: what stands in it, whether the plan's data reach that far, what is above its bunks.

import { byId, type StepOf } from "../../plan/index.ts";
import { boomOf, pathLevel, planeLevel } from "../place.ts";
import type { Happening, Pose, SetContext, Situation } from "../types.ts";
import { deckLevel, happening, soffitLevel } from "./kind.ts";

/** Least gap between bunks and set at which a transporter may leave, m. Common practice, no source. */
export const DRIVE_GAP = 0.02;

/** Chainage of the foremost and rearmost axle of every train under the set. */
export function axles(ctx: SetContext, s: Situation, id: string): [number, number] {
  const t = byId(ctx.plan.transporters, id);
  const train = byId(s.trains, id);
  const half = ((t.lines - 1) / 2) * t.pitch_m;
  const centre = s.rearEnd + train.deckAt + train.gone[0];
  return [centre - half, centre + half];
}

/** How far the deck of a train reaches beyond its outer axles, m. */
export function beyondAxles(ctx: SetContext, id: string): number {
  const t = byId(ctx.plan.transporters, id);
  return (t.deckLength_m - (t.lines - 1) * t.pitch_m) / 2;
}

/** What ends a travel along the path, and after how many metres. */
export interface InTheWay {
  name: string;
  free: number;
}

/** The nearest train under the set that ends a travel of `by` metres along the path (< 0 back), or null. */
export function trainAhead(ctx: SetContext, start: Situation, id: string, by: number): InTheWay | null {
  const [rear, front] = axles(ctx, start, id);
  let found: InTheWay | null = null;
  for (const other of start.trains) {
    if (!other.under || other.id === id) continue;
    const [r, f] = axles(ctx, start, other.id);
    const between = by > 0 ? r - front : rear - f;
    if (between < 0) continue;
    const free = Math.max(0, between - beyondAxles(ctx, id) - beyondAxles(ctx, other.id));
    if (free < Math.abs(by) - 1e-9 && (!found || free < found.free)) found = { name: other.id, free };
  }
  return found;
}

/** The nearest stop line that ends a travel forward along the path, or null. */
export function stopLineAhead(ctx: SetContext, start: Situation, id: string, by: number): InTheWay | null {
  const [, front] = axles(ctx, start, id);
  let found: InTheWay | null = null;
  for (const line of ctx.plan.site.stopLines) {
    const free = line.chainage_m - front;
    if (free >= -1e-9 && free < by - 1e-9 && (!found || free < found.free))
      found = { name: `stop line ${line.name}`, free: Math.max(0, free) };
  }
  return found;
}

/** How much a deck rises against the set's datum plane while it drives `by` metres along the path, m. */
function rise(ctx: SetContext, start: Situation, id: string, by: number): number {
  const t = byId(ctx.plan.transporters, id);
  const { deckAt } = byId(start.trains, id);
  const over = (s: number) => {
    let level = 0;
    for (let line = 0; line < t.lines; line++) {
      const x = s + (line - (t.lines - 1) / 2) * t.pitch_m;
      level += (pathLevel(ctx.plan, start.rearEnd + x).elevation - planeLevel(start, x, 0)) / t.lines;
    }
    return level;
  };
  return over(deckAt + by) - over(deckAt);
}

/** Least gap between bunk tops and the sagging set while a transporter drives `by` metres along below it, m. */
export function sweptGap(ctx: SetContext, start: Situation, pose: Pose, id: string, by: number): number {
  const train = byId(start.trains, id);
  const machine = byId(ctx.plan.transporters, id);
  const { model, layout } = pose.solution;
  let least = Number.POSITIVE_INFINITY;
  if (!layout.trains.some((t) => t.name === id)) return least;
  const looks = Math.max(1, Math.ceil(Math.abs(by) / 0.5));
  for (let i = 0; i <= looks; i++) {
    const d = (by * i) / looks;
    const up = rise(ctx, start, id, d);
    for (const bunk of machine.bunks) {
      const s = train.deckAt + bunk.at_m + d;
      if (s < 0 || s > ctx.length) continue;
      model.girders.forEach((g, k) => {
        const top = deckLevel(pose, id, bunk.at_m, g.y) + up + (train.packing[g.name] ?? 0);
        least = Math.min(least, soffitLevel(pose, k, s) - top);
      });
    }
  }
  return least;
}

/** A box in plan: chainage and y from least to greatest, m. */
type Box = readonly [x0: number, x1: number, y0: number, y1: number];

/** Ground that the deck sweeps while it drives out. */
function sweptBox(ctx: SetContext, step: StepOf<"drive out">, start: Situation): Box {
  const t = byId(ctx.plan.transporters, step.transporter);
  const train = byId(start.trains, step.transporter);
  const x = start.rearEnd + train.deckAt;
  const y = start.across;
  const d = step.distance_m;
  const [back, ahead] = [step.toward === "back" ? d : 0, step.toward === "forward" ? d : 0];
  const [right, left] = [step.toward === "right" ? d : 0, step.toward === "left" ? d : 0];
  const [l, w] = [t.deckLength_m / 2, t.deckWidth_m / 2];
  return [x - l - back, x + l + ahead, y - w - right, y + w + left];
}

const meet = (a: Box, b: Box) => a[0] < b[1] && b[0] < a[1] && a[2] < b[3] && b[2] < a[3];

/** Boxes and cranes that the deck would run into. */
function obstaclesIn(ctx: SetContext, step: StepOf<"drive out">, start: Situation): string[] {
  const way = sweptBox(ctx, step, start);
  const { plan } = ctx;
  const t = byId(plan.transporters, step.transporter);
  const ground = pathLevel(plan, start.rearEnd + byId(start.trains, step.transporter).deckAt).elevation;
  const sorted = (a: number, b: number) => [Math.min(a, b), Math.max(a, b)] as const;
  const boxes = plan.site.obstacles
    .filter((o) => o.kind === "box")
    .filter((o) => {
      const [z0, z1] = sorted(o.from.elevation_m, o.to.elevation_m);
      const x = sorted(o.from.chainage_m, o.to.chainage_m);
      const y = sorted(o.from.y_m, o.to.y_m);
      return z1 > ground && z0 < ground + t.bunkHeight_m && meet(way, [...x, ...y]);
    })
    .map((o) => o.name);
  const cranes = start.cranes
    .filter((c) => {
      const crane = byId(plan.cranes, c.id);
      const { centre } = boomOf(crane, c.tip, c.moved);
      const wide = crane.trackGauge_m + (crane.trackWidth_m ?? 0);
      const r = Math.max(crane.trackLength_m, wide) / 2;
      return meet(way, [centre[0] - r, centre[0] + r, centre[1] - r, centre[1] + r]);
    })
    .map((c) => c.id);
  return [...boxes, ...cranes];
}

/** Whether the data of the plan show a way out to be clear: path under all axles, free ground beside it, nothing in it. */
export function provable(ctx: SetContext, step: StepOf<"drive out">, start: Situation): Happening[] {
  const id = step.transporter;
  const out: Happening[] = [];
  for (const name of obstaclesIn(ctx, step, start))
    out.push(happening("not clear", id, `${name} stands in its way out`));
  const { path } = ctx.plan.site;
  if (step.toward === "back" || step.toward === "forward") {
    const [rear, front] = axles(ctx, start, id);
    const first = path.points[0].chainage_m;
    const last = path.points[path.points.length - 1].chainage_m;
    const end = step.toward === "back" ? rear - step.distance_m : front + step.distance_m;
    if (end < first - 1e-9 || end > last + 1e-9)
      out.push(
        happening(
          "not provable",
          id,
          `its way out goes to chainage ${end.toFixed(1)} m, where the plan has no path (${first} to ${last} m)`,
          { value: end, limit: end < first ? first : last, unit: "m", progress: 1 },
        ),
      );
    return out;
  }
  const clear = step.toward === "left" ? path.clearLeft_m : path.clearRight_m;
  const needed = step.distance_m + byId(ctx.plan.transporters, id).deckWidth_m / 2;
  const field = step.toward === "left" ? "clearLeft_m" : "clearRight_m";
  if (clear === undefined)
    out.push(
      happening(
        "not provable",
        id,
        `nothing in the plan says that ${needed.toFixed(1)} m to the ${step.toward} of the path's axis are free to drive on: give site.path.${field}`,
      ),
    );
  else if (clear < needed)
    out.push(
      happening(
        "not clear",
        id,
        `it needs ${needed.toFixed(1)} m to the ${step.toward} of the path's axis; ${clear.toFixed(1)} m are free`,
        { value: needed, limit: clear, unit: "m", progress: 1 },
      ),
    );
  return out;
}
