// Contacts that open and close along a step, on made-up courses of one bunk whose changes are known: force while it
// carries, gap times stiffness below zero while it does not. No source needed.

import { describe, expect, test } from "vitest";
import { findContacts } from "../../src/sequence/contacts.ts";
import type { Pose, SetContext, Support } from "../../src/sequence/index.ts";

const EXACT = 1e-9;
const sixteenths = Array.from({ length: 17 }, (_, i) => i / 16);
const support: Support = {
  name: "bunk rear L 1",
  force: "bunk rear L 1",
  what: "bunk",
  kind: "rear train",
  of: "rear",
  band: false,
};
const ctx = { supports: [support], plan: { lashings: [] } } as unknown as SetContext;

/** Events told for a course, and how many poses it took. */
function told(course: (p: number) => number, places: readonly number[] = sixteenths) {
  const poses = new Map<number, Pose>();
  const at = (p: number): Pose => {
    const known = poses.get(p);
    if (known) return known;
    const m = course(p);
    const pose = {
      forces: Float64Array.of(Math.max(0, m)),
      solution: {
        devices: [{ name: support.force, kind: "bunk", stiffness: 2, datum: 0 }],
        contact: { v: Float64Array.of(-m / 2) },
      },
    } as unknown as Pose;
    poses.set(p, pose);
    return pose;
  };
  const events: [number, string][] = [];
  findContacts(ctx, places, EXACT, at, (p, what) => {
    if (what !== "") events.push([p, what.replace(support.name, "").trim()]);
  });
  return { events: events.sort((a, b) => a[0] - b[0]), poses: poses.size };
}

/** Name, course, changes as [progress, words]. */
const courses: [string, (p: number) => number, [number, string][]][] = [
  ["one change", (p) => p - 0.53, [[0.53, "begins to carry"]]],
  ["one change the other way", (p) => 0.53 - p, [[0.53, "comes free"]]],
  [
    "there and back on a curve between two looks",
    (p) => 1e3 * ((p - 0.53) ** 2 - 1e-4),
    [
      [0.52, "comes free"],
      [0.54, "begins to carry"],
    ],
  ],
  [
    "there and back on two straight pieces",
    (p) => 5 * Math.abs(p - 0.41) - 0.05,
    [
      [0.4, "comes free"],
      [0.42, "begins to carry"],
    ],
  ],
  [
    "touching between two looks while it is free",
    (p) => 0.002 - Math.abs(p - 0.66),
    [
      [0.658, "begins to carry"],
      [0.662, "comes free"],
    ],
  ],
  [
    "in the first sixteenth",
    (p) => 1e3 * ((p - 0.03) ** 2 - 1e-4),
    [
      [0.02, "comes free"],
      [0.04, "begins to carry"],
    ],
  ],
  [
    "in the last sixteenth",
    (p) => 1e3 * ((p - 0.97) ** 2 - 1e-4),
    [
      [0.96, "comes free"],
      [0.98, "begins to carry"],
    ],
  ],
  ["near, but not there", (p) => 1e3 * ((p - 0.53) ** 2 + 1e-5), []],
  ["level at nothing much", () => 1e-9, []],
];

describe("changes of a contact", () => {
  test.each(courses)("%s", (_, course, changes) => {
    const { events, poses } = told(course);
    expect(events.map(([, what]) => what)).toEqual(changes.map(([, what]) => what));
    events.forEach(([p], i) => {
      expect(Math.abs(p - changes[i][0])).toBeLessThanOrEqual(EXACT);
      // On the side on which it has changed.
      expect(course(p) > 0).toBe(changes[i][1] === "begins to carry");
    });
    // 17 looks, some 30 to a change, and 50 to find a turning point.
    expect(poses).toBeLessThanOrEqual(17 + 30 * changes.length + 60);
  });

  test("a jump is found, with the pose just before it", () => {
    const { events } = told((p) => (p < 0.29 ? -3 : 4));
    expect(events.length).toBe(1);
    expect(Math.abs(events[0][0] - 0.29)).toBeLessThanOrEqual(EXACT);
  });

  test("each change is told once, also where many places lie close together", () => {
    const crowded = [...sixteenths, 0.53 - 3e-9, 0.53 - 1e-9, 0.53 + 1e-9].sort((a, b) => a - b);
    expect(told((p) => p - 0.53, crowded).events.length).toBe(1);
  });
});
