// Where contacts open and close along a step: between neighbouring places that differ, and there and back between two
// that do not.

import { crossing } from "./search.ts";
import type { Pose, SetContext, Support } from "./types.ts";

/** A contact's words in an event, by what it is. */
const names: Partial<Record<Support["what"], string>> = {
  bunk: "",
  bearing: "bearing ",
  hoist: "hook ",
  lashing: "",
  cylinder: "wheel ",
};

/** Guesses at the turning point of a contact that comes near to changing there and back. */
const MOST_GUESSES = 24;

interface Told {
  p: number;
  on: boolean;
}

/** Every contact that opens or closes between the first and the last place, told by `say` where it does. */
export function findContacts(
  ctx: SetContext,
  places: readonly number[],
  exact: number,
  at: (p: number) => Pose,
  say: (p: number, what: string) => void,
): void {
  const known = new Set(places);
  const looked = ctx.supports.map(() => new Set<string>());
  const told = ctx.supports.map((): Told[] => []);
  for (let before = -1; before !== known.size; ) {
    before = known.size;
    // A change of one contact bends the course of all others, so that they are looked at again from there.
    const sorted = [...known].sort((a, b) => a - b);
    ctx.supports.forEach((support, j) => {
      const prefix = names[support.what];
      if (prefix === undefined) return;
      const margin = (p: number) => contactMargin(ctx, at(p), support, j);
      const on = (p: number) => at(p).forces[j] > 0;
      const change = (p0: number, p1: number) => {
        const to = on(p1);
        if (told[j].some((t) => t.on === to && Math.abs(t.p - p1) <= 4 * exact)) return;
        // The force decides the side; the margin only tells how far away the change is.
        const g = (p: number) => (on(p) === to ? 1 : -1) * (Math.abs(margin(p)) || 1e-300);
        const p = p1 - p0 <= exact ? p1 : crossing(g, p0, p1, g(p0), g(p1), exact);
        say(p, `${prefix}${support.name} ${to ? "begins to carry" : "comes free"}`);
        told[j].push({ p, on: to });
        known.add(p);
        // The pose just before, so that a jump stands as a cliff and not as a slope.
        const cliff = Math.max(p0, p - 2 * exact);
        if (cliff < p) {
          say(cliff, "");
          known.add(cliff);
        }
      };
      for (let i = 1; i < sorted.length; i++) {
        const [p0, p1] = [sorted[i - 1], sorted[i]];
        const key = `${p0} ${p1}`;
        if (looked[j].has(key)) continue;
        looked[j].add(key);
        if (Number.isNaN(at(p0).forces[j]) || Number.isNaN(at(p1).forces[j])) continue;
        if (on(p0) !== on(p1)) change(p0, p1);
        else {
          const turn = thereAndBack(sorted, i, exact, margin);
          if (turn === null || on(turn) === on(p0)) continue;
          known.add(turn);
          change(p0, turn);
          change(turn, p1);
        }
      }
    });
  }
}

/**
 * A place between two neighbours in the same state at which a contact is in the other one, where the courses on both
 * sides point to it; null when there is none. The margin's own turning point is found by halving between the two.
 */
function thereAndBack(
  sorted: readonly number[],
  i: number,
  exact: number,
  margin: (p: number) => number,
): number | null {
  const [a, b] = [sorted[i - 1], sorted[i]];
  const width = b - a;
  if (width <= 8 * exact) return null;
  const [ma, mb] = [margin(a), margin(b)];
  const side = Math.sign(ma);
  if (!(side * ma > 0) || !(side * mb > 0)) return null;
  // Slopes toward the other state from outside the gap; at an end of the step, and beside a change, from inside it.
  const inward = (p: number, m: number, beyond: number | undefined, into: number): number => {
    if (beyond !== undefined && Math.abs(p - beyond) > 8 * exact) {
      const mo = margin(beyond);
      if (side * mo > 0) return (side * (mo - m)) / Math.abs(p - beyond);
    }
    const inside = p + into * width * 1e-3;
    return (side * (m - margin(inside))) / (width * 1e-3);
  };
  const down = inward(a, ma, sorted[i - 2], 1);
  const up = inward(b, mb, sorted[i + 1], -1);
  if (!(down > 0) || !(up > 0)) return null;
  // Where the two straight courses meet.
  const x = (side * (ma - mb) + up * width) / (down + up);
  if (side * ma - down * Math.min(Math.max(x, 0), width) > 0) return null;
  let [low, high] = [a, b];
  for (let k = 0; k < MOST_GUESSES; k++) {
    const middle = (low + high) / 2;
    const m = side * margin(middle);
    if (!(m > 0)) return middle;
    const step = (high - low) * 1e-3;
    // Falling to the right of the middle: the turning point lies there.
    if (side * margin(middle + step) < m) low = middle;
    else high = middle;
  }
  return null;
}

/**
 * How far a contact is from opening or closing, N: its force while it carries, less than zero by gap times stiffness
 * while it does not. Straight within an active set, so that a root search lands at once. A wheel lifts off when its
 * cylinder is out of stroke: stroke in hand times stiffness, and -1 off the ground. NaN when it is not there.
 */
function contactMargin(ctx: SetContext, pose: Pose, support: Support, column: number): number {
  const { devices, contact, layout, stroke } = pose.solution;
  const F = pose.forces[column];
  if (support.what === "cylinder") {
    if (!(F > 0)) return F === 0 ? -1 : Number.NaN;
    const i = layout.cylinders.findIndex((c) => support.force === `cylinder ${c.id}`);
    const train = layout.trains[layout.cylinders[i].deck];
    const inHand = (train.strokeUp ?? Number.POSITIVE_INFINITY) - stroke[i];
    return Math.max(inHand * train.cylinderStiffness, Number.MIN_VALUE);
  }
  if (F > 0) return F;
  const lashings = support.what === "lashing" ? lashedIn(ctx, pose) : [];
  let line = -1;
  for (let j = 0; j < devices.length; j++) {
    const d = devices[j];
    if (d.kind === "lashing") line++;
    const same =
      support.what === "lashing"
        ? d.kind === "lashing" && lashings[line] === support.of
        : d.name === support.force;
    if (same) return Math.min(d.stiffness * (d.datum - contact.v[j]), -Number.MIN_VALUE);
  }
  return Number.NaN;
}

/** Lashings that are on in a pose, in the order of its devices. */
function lashedIn(ctx: SetContext, pose: Pose): string[] {
  return ctx.plan.lashings
    .filter(
      (l) =>
        pose.situation.lashed.includes(l.id) &&
        (pose.state.trains ?? []).some((t) => t.name === l.transporter),
    )
    .map((l) => l.id);
}
