// The contacts of a step by brute force: 20,000 poses of it, or as good as. A first sweep has 2,000; every part of it in
// which a contact changes, or comes near enough to closing or opening to do so there and back, is swept again ten times
// as fine.

import { type Pose, poseAt, type Support } from "../../src/sequence/index.ts";
import type { Ran } from "./plans.ts";

export const COARSE = 2000;
const FINE = 10;
export const PART = 1 / (COARSE * FINE);

/** Words before the name of a contact in an event. */
const before: Partial<Record<Support["what"], string>> = {
  bunk: "",
  bearing: "bearing ",
  hoist: "hook ",
  lashing: "",
  cylinder: "wheel ",
};

interface Contact {
  support: Support;
  column: number;
}

/** Force while a contact carries, gap times stiffness below zero while it does not, N; NaN when it is not there. */
function margins(pose: Pose, contacts: Contact[]): Float64Array {
  const { devices, contact } = pose.solution;
  const out = new Float64Array(contacts.length).fill(Number.NaN);
  contacts.forEach(({ support, column }, k) => {
    const F = pose.forces[column];
    if (Number.isNaN(F)) return;
    if (F > 0) {
      out[k] = F;
      return;
    }
    const j = devices.findIndex((d) => d.name === support.force);
    out[k] =
      j < 0 ? -1 : Math.min(-Number.MIN_VALUE, devices[j].stiffness * (devices[j].datum - contact.v[j]));
  });
  return out;
}

export interface Flip {
  name: string;
  on: boolean;
  from: number;
  to: number;
}

/** Every change of a contact that 20,000 poses of a step show. */
export function bruteForce(
  { ctx }: Ran,
  step: Ran["run"]["steps"][number],
  everywhere = false,
): { flips: Flip[]; poses: number } {
  const contacts = ctx.supports.flatMap((support, column): Contact[] =>
    support.what in before ? [{ support, column }] : [],
  );
  let last: Pose | null = null;
  let poses = 0;
  const at = (p: number): Float64Array => {
    last = poseAt(ctx, step, p, last);
    poses++;
    return margins(last, contacts);
  };
  const flips: Flip[] = [];
  const flip = (a: Float64Array, b: Float64Array, from: number, to: number) => {
    contacts.forEach(({ support }, k) => {
      if (Number.isNaN(a[k]) || Number.isNaN(b[k]) || a[k] > 0 === b[k] > 0) return;
      flips.push({ name: `${before[support.what]}${support.name}`, on: b[k] > 0, from, to });
    });
  };
  const coarse = Array.from({ length: COARSE + 1 }, (_, i) => at(i / COARSE));
  for (let i = 0; i < COARSE; i++) {
    const [a, b] = [coarse[i], coarse[i + 1]];
    const [left, right] = [coarse[Math.max(0, i - 1)], coarse[Math.min(COARSE, i + 2)]];
    const unsure =
      everywhere ||
      contacts.some((_, k) => {
        if (Number.isNaN(a[k]) || Number.isNaN(b[k])) return false;
        if (a[k] > 0 !== b[k] > 0) return true;
        const change = Math.abs(b[k] - a[k]) + Math.abs(a[k] - left[k] || 0) + Math.abs(right[k] - b[k] || 0);
        return Math.min(Math.abs(a[k]), Math.abs(b[k])) < change;
      });
    if (!unsure) continue;
    let one = a;
    for (let n = 1; n <= FINE; n++) {
      const next = n === FINE ? b : at(i / COARSE + n * PART);
      flip(one, next, i / COARSE + (n - 1) * PART, i / COARSE + n * PART);
      one = next;
    }
  }
  return { flips, poses };
}

export interface Event {
  words: string;
  progress: number;
}

const says = (e: Event, { name, on, from, to }: Flip) =>
  e.words === `${name} ${on ? "begins to carry" : "comes free"}` &&
  e.progress >= from - PART &&
  e.progress <= to + PART;

/** What the events of a run miss of the changes of its contacts, and what they say beyond them. */
export function compare(r: Ran, step: Ran["run"]["steps"][number], flips: Flip[]) {
  const events = Array.from({ length: step.count }, (_, k) => step.first + k).flatMap((i) =>
    r.run.events[i]
      .split("; ")
      .filter((w) => / (begins to carry|comes free)$/.test(w))
      .map((words): Event => ({ words, progress: r.run.progress[i] })),
  );
  const contact = (e: Event) => e.words.replace(/ (begins to carry|comes free)$/, "");
  // There and back within one part: brute force cannot see it.
  const blink = (e: Event) =>
    events.some((o) => o !== e && Math.abs(o.progress - e.progress) <= PART && contact(o) === contact(e));
  return {
    missed: flips.filter((f) => !events.some((e) => says(e, f))),
    invented: events.filter((e) => !flips.some((f) => says(e, f)) && !blink(e)),
  };
}
