// Which way an empty transporter leaves, how far, and how far its bunks must come down for it.

import { camberAt } from "../../plan/index.ts";
import type { Places } from "./choice.ts";
import type { Prospect } from "./prospect.ts";

export interface WayOut {
  toward: "back" | "left" | "right";
  distance_m: number;
  gap_mm: number;
}

/** Least gap above the bunks before a transporter leaves, mm. Common practice, no source. */
const GAP = 100;
/** Air left beside everything that a transporter passes, m. Common practice, no source. */
const AIR = 1;

/**
 * The front train leaves across the path, away from the near crane's tail, where the ground beside it is free; the rear train back along the path where the
 * path reaches far enough and the near crane leaves it room, else across too.
 */
export function waysOut(p: Prospect, places: Places, rearDeck: number, frontDeck: number) {
  const front = across(p, p.front, places.farTakes + frontDeck);
  const back = rearBack(p, places, rearDeck);
  return { front, rear: back ?? across(p, p.rear, places.nearTakes + rearDeck) };
}

/** Radius round the near crane's centre that its tail and tracks need, m. */
function crowd(p: Prospect): number {
  const { near } = p;
  return Math.max(near.tailRadius_m, Math.hypot(near.trackLength_m, near.trackGauge_m) / 2) + AIR;
}

/** True when a box of the ground (chainage, y) comes too near to the near crane or an obstacle. */
function taken(p: Prospect, x0: number, x1: number, y0: number, y1: number): boolean {
  const { chainage_m: cx, y_m: cy } = p.near.position;
  const dx = Math.max(x0 - cx, 0, cx - x1);
  const dy = Math.max(y0 - cy, 0, cy - y1);
  if (Math.hypot(dx, dy) < crowd(p)) return true;
  return p.plan.site.obstacles.some((o) => {
    if (o.kind !== "box") return false;
    const clear = o.clearance_m ?? 0;
    const [a, b] = [o.from, o.to];
    return (
      Math.min(a.chainage_m, b.chainage_m) - clear < x1 &&
      Math.max(a.chainage_m, b.chainage_m) + clear > x0 &&
      Math.min(a.y_m, b.y_m) - clear < y1 &&
      Math.max(a.y_m, b.y_m) + clear > y0
    );
  });
}

function across(p: Prospect, t: Prospect["front"], centre: number): WayOut {
  const half = t.deckWidth_m / 2;
  const outer = Math.max(
    ...p.set.girders.map(
      (g) => Math.abs(g.y_m) + Math.max(...g.pieces.map((x) => x.bottomFlange_mm[0])) / 2000,
    ),
    p.rear.deckWidth_m / 2,
  );
  const distance_m = Math.ceil(outer + half + AIR);
  const x: [number, number] = [centre - t.deckLength_m / 2, centre + t.deckLength_m / 2];
  const away = p.near.position.y_m >= p.across ? "right" : "left";
  const other = away === "right" ? "left" : "right";
  const blocked = (side: "left" | "right") => {
    const sign = side === "left" ? 1 : -1;
    const y = [p.across - sign * half, p.across + sign * (distance_m + half)].sort((a, b) => a - b);
    const { clearLeft_m, clearRight_m } = p.plan.site.path;
    const clear = (side === "left" ? clearLeft_m : clearRight_m) ?? 0;
    return clear < distance_m + half || taken(p, x[0], x[1], y[0], y[1]);
  };
  // With both sides taken the crane's side is still the worse one.
  const toward = blocked(away) && !blocked(other) ? other : away;
  return { toward, distance_m, gap_mm: GAP };
}

function rearBack(p: Prospect, places: Places, rearDeck: number): WayOut | null {
  const t = p.rear;
  const centre = places.nearTakes + rearDeck;
  const distance_m = Math.ceil(rearDeck + t.deckLength_m / 2 + AIR);
  const half = t.deckWidth_m / 2;
  const tail = centre - t.deckLength_m / 2 - distance_m;
  if (tail < p.pathStart) return null;
  if (taken(p, tail, centre + t.deckLength_m / 2, p.across - half, p.across + half)) return null;
  // On its way back the bunks pass under steel that the camber brings lower.
  let drop = 0;
  for (const g of p.set.girders)
    for (const b of t.bunks)
      for (let s = 0; s <= rearDeck + b.at_m; s += 0.5)
        drop = Math.max(drop, camberAt(g, rearDeck + b.at_m) - camberAt(g, s));
  return { toward: "back", distance_m, gap_mm: GAP + Math.ceil(drop / 10) * 10 };
}
