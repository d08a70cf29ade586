// Places labels beside what they name so that none covers another: sorted, then pushed apart along the vertical.

export interface Rect {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** A label that wants to stand just above or below its anchor, centred on it; px. */
export interface Tag {
  id: string;
  x: number;
  y: number;
  width: number;
  height: number;
  way: "up" | "down";
}

/** Least distance between two labels, px. */
const gap = 3;

export function overlaps(a: Rect, b: Rect, apart = gap): boolean {
  return (
    a.left < b.left + b.width + apart &&
    b.left < a.left + a.width + apart &&
    a.top < b.top + b.height + apart &&
    b.top < a.top + a.height + apart
  );
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}

/** What it costs a label to stand elsewhere: px moved, sideways counting half as much again, the wrong side extra. */
function cost(tag: Tag, left: number, top: number): number {
  const away = tag.way === "up" ? tag.y - gap - tag.height - top : top - tag.y - gap;
  const aside = 1.5 * Math.abs(left + tag.width / 2 - tag.x);
  return aside + (away >= -0.5 ? away : 8 * tag.height - 2 * away);
}

/** The cheapest place in a room that is clear of what is taken; null when there is none. */
function bestPlace(tag: Tag, room: Rect, taken: readonly Rect[]): Rect | null {
  const { width, height } = tag;
  const pitch = height + gap + 1;
  const [top, bottom] = [room.top, room.top + room.height - height];
  const [left, right] = [room.left, room.left + room.width - width];
  if (bottom < top || right < left) return null;
  const wish = tag.way === "up" ? tag.y - gap - height : tag.y + gap;
  const tops = grid(clamp(wish, top, bottom), pitch, top, bottom);
  let best: Rect | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const x of grid(clamp(tag.x - width / 2, left, right), width / 4, left, right)) {
    for (const y of tops) {
      const price = cost(tag, x, y);
      if (price >= least) continue;
      const rect = { left: x, top: y, width, height };
      if (taken.some((other) => overlaps(rect, other))) continue;
      best = rect;
      least = price;
    }
  }
  return best;
}

/** Values from `start` to both sides in equal steps, inside the limits. */
function grid(start: number, step: number, least: number, most: number): number[] {
  const values: number[] = [start];
  for (let v = start + step; v <= most; v += step) values.push(v);
  for (let v = start - step; v >= least; v -= step) values.push(v);
  return values;
}

/**
 * Gives every label its rectangle inside `room`, clear of `blocked` and of each other. The order of the tags does not
 * matter: they are placed from left to right, each in the cheapest place that is free. Where the whole room is full a
 * label is left out, which is better than an unreadable one.
 */
export function placeLabels(
  tags: readonly Tag[],
  room: Rect,
  blocked: readonly Rect[] = [],
): Map<string, Rect> {
  const placed = new Map<string, Rect>();
  const taken = [...blocked];
  const order = [...tags].sort((a, b) => a.x - b.x || a.y - b.y || (a.id < b.id ? -1 : 1));
  for (const tag of order) {
    const found = bestPlace(tag, room, taken);
    if (found === null) continue;
    placed.set(tag.id, found);
    taken.push(found);
  }
  return placed;
}

/** Where a leader from a point meets a rectangle: the nearest point of its edge; null when the point touches it. */
export function leaderEnd(x: number, y: number, rect: Rect): [number, number] | null {
  const nearX = clamp(x, rect.left, rect.left + rect.width);
  const nearY = clamp(y, rect.top, rect.top + rect.height);
  return Math.hypot(nearX - x, nearY - y) <= 2 * gap ? null : [nearX, nearY];
}
