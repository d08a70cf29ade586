// Moving in a table by keys: never outside, Tab through every cell, rectangles, and where pasted cells go.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaOf, everything, isIn, moved, placesFor } from "../../src/controls/gridMoves.ts";

const keys = [
  "ArrowUp",
  "ArrowDown",
  "ArrowLeft",
  "ArrowRight",
  "Home",
  "End",
  "PageUp",
  "PageDown",
  "Tab",
  "x",
];
const key = fc.record({ key: fc.constantFrom(...keys), shift: fc.boolean(), ctrl: fc.boolean() });
const size = fc.record({ rows: fc.integer({ min: 1, max: 30 }), columns: fc.integer({ min: 1, max: 9 }) });
const origin = { at: { row: 0, column: 0 }, from: { row: 0, column: 0 } };
const plain = { shift: false, ctrl: false };

test("whatever is pressed, the cursor and what is chosen stay in the table", () => {
  fc.assert(
    fc.property(size, fc.array(key, { maxLength: 60 }), (of, pressed) => {
      let now = origin;
      for (const one of pressed) {
        now = moved(now, one, of) ?? now;
        const { top, left, bottom, right } = areaOf(now);
        expect(top >= 0 && left >= 0 && bottom < of.rows && right < of.columns).toBe(true);
        expect(isIn(areaOf(now), now.at)).toBe(true);
      }
    }),
  );
});

test("Tab passes every cell once and then leaves the table; with Shift back again", () => {
  fc.assert(
    fc.property(size, (of) => {
      let [now, count] = [origin, 1];
      for (;;) {
        const next = moved(now, { key: "Tab", ...plain }, of);
        if (next === null) break;
        now = next;
        count++;
      }
      expect(count).toBe(of.rows * of.columns);
      for (;;) {
        const next = moved(now, { key: "Tab", ctrl: false, shift: true }, of);
        if (next === null) break;
        now = next;
        count--;
      }
      expect(count).toBe(1);
      expect(now).toEqual(origin);
    }),
  );
});

test("Shift with arrows widens what is chosen from where it began", () => {
  const of = { rows: 5, columns: 5 };
  let now = moved(origin, { key: "ArrowDown", ...plain }, of) ?? origin;
  for (const k of ["ArrowDown", "ArrowRight", "ArrowRight"])
    now = moved(now, { key: k, shift: true, ctrl: false }, of) ?? now;
  expect(areaOf(now)).toEqual({ top: 1, left: 0, bottom: 2, right: 2 });
  expect(areaOf(everything(of))).toEqual({ top: 0, left: 0, bottom: 4, right: 4 });
});

describe("pasted cells", () => {
  const of = { rows: 3, columns: 3 };
  test("one cell fills what is chosen", () => {
    const { placed } = placesFor([["x"]], { top: 0, left: 1, bottom: 2, right: 2 }, of);
    expect(placed).toHaveLength(6);
  });
  test("more cells than rows ask for new rows; cells beyond the last column are counted", () => {
    const cells = [
      ["a", "b"],
      ["c", "d"],
      ["e", "f"],
    ];
    const got = placesFor(cells, { top: 2, left: 2, bottom: 2, right: 2 }, of);
    expect(got).toMatchObject({ grown: 2, lost: 3 });
    expect(got.placed.map((one) => [one.spot.row, one.spot.column, one.cell])).toEqual([
      [2, 2, "a"],
      [3, 2, "c"],
      [4, 2, "e"],
    ]);
  });
  test("a table without columns or rows does not move", () => {
    expect(moved(origin, { key: "ArrowDown", ...plain }, { rows: 0, columns: 3 })).toBeNull();
  });
});
