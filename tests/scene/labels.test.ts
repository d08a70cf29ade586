// Labels of the scene: none covers another, none leaves the room, the order in which they come does not matter.
// Geometry only; no source needed. Random cases with a fixed seed, which stands in the title.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leaderEnd, overlaps, placeLabels, type Rect, type Tag } from "../../src/scene/labels.ts";

const seed = 20260514;
const room: Rect = { left: 4, top: 30, width: 1200, height: 400 };

const tags = fc
  .array(
    fc.record({
      x: fc.double({ min: -50, max: 1250, noNaN: true }),
      y: fc.double({ min: 0, max: 450, noNaN: true }),
      width: fc.double({ min: 40, max: 180, noNaN: true }),
      way: fc.constantFrom("up" as const, "down" as const),
    }),
    { maxLength: 20 },
  )
  .map((list): Tag[] => list.map((one, i) => ({ ...one, id: `tag ${i}`, height: 20 })));

/** Anchors that fall together, as those of left and right groups do in an elevation. */
const crowd = Array.from(
  { length: 8 },
  (_, i): Tag => ({ id: `group ${i}`, x: 600, y: 200, width: 150, height: 20, way: "down" }),
);

describe("labels", () => {
  test(`never cover each other or what is blocked, and stay in the room (seed ${seed})`, () => {
    const blocked: Rect[] = [{ left: 500, top: 100, width: 200, height: 150 }];
    fc.assert(
      fc.property(tags, (list) => {
        const rects = [...placeLabels(list, room, blocked).values()];
        expect(rects.length).toBe(list.length);
        rects.forEach((rect, i) => {
          expect(overlaps(rect, blocked[0], 0)).toBe(false);
          for (const other of rects.slice(i + 1)) expect(overlaps(rect, other, 0)).toBe(false);
          expect(rect.left).toBeGreaterThanOrEqual(room.left);
          expect(rect.left + rect.width).toBeLessThanOrEqual(room.left + room.width + 1e-9);
          expect(rect.top).toBeGreaterThanOrEqual(room.top);
          expect(rect.top + rect.height).toBeLessThanOrEqual(room.top + room.height + 1e-9);
        });
      }),
      { seed, numRuns: 200 },
    );
  });

  test(`do not depend on the order in which they come (seed ${seed})`, () => {
    fc.assert(
      fc.property(tags, (list) => {
        const forth = placeLabels(list, room);
        const back = placeLabels([...list].reverse(), room);
        for (const tag of list) expect(back.get(tag.id)).toEqual(forth.get(tag.id));
      }),
      { seed, numRuns: 50 },
    );
  });

  test("at one anchor all find a place, the first right below it", () => {
    const placed = placeLabels(crowd, room);
    expect(placed.size).toBe(8);
    expect(placed.get("group 0")).toEqual({ left: 525, top: 203, width: 150, height: 20 });
  });

  test("in a full room one is left out rather than laid over another", () => {
    const small: Rect = { left: 0, top: 0, width: 320, height: 50 };
    const placed = placeLabels(crowd, small);
    expect(placed.size).toBeGreaterThanOrEqual(2);
    expect(placed.size).toBeLessThan(crowd.length);
  });

  test("a leader ends at the nearest edge, and there is none to a label that is near", () => {
    const rect: Rect = { left: 100, top: 100, width: 50, height: 20 };
    expect(leaderEnd(50, 200, rect)).toEqual([100, 120]);
    expect(leaderEnd(120, 60, rect)).toEqual([120, 100]);
    expect(leaderEnd(120, 98, rect)).toBeNull();
  });
});
