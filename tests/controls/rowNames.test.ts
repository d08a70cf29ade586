// Pasted rows found by their names: any order, nothing guessed where a name is missing, doubled or unknown.
import { describe, expect, test } from "vitest";
import type { GridCell, GridModel, RowNames } from "../../src/controls/gridModel.ts";
import { rowsByNames } from "../../src/controls/rowNames.ts";

/** A table of line, girder, set and level; only what the search looks at. */
function table(rows: readonly (readonly string[])[], rowNames?: RowNames): GridModel {
  return {
    columns: ["line", "girder", "set", "level"].map((head) => ({ head })),
    rows: rows.map((row) => row.slice(0, 2).join(" ")),
    cell: ({ row, column }: { row: number; column: number }) => ({ full: rows[row][column] }) as GridCell,
    rowWord: "seat",
    rowNames,
  } as unknown as GridModel;
}
const names: RowNames = { needed: [0, 1], more: [2] };
const plain = table(
  [
    ["near", "L", "", "1"],
    ["near", "R", "", "2"],
    ["far", "L", "", "3"],
    ["far", "R", "", "4"],
  ],
  names,
);
const shared = table(
  [
    ["near", "L", "one", "1"],
    ["near", "L", "two", "2"],
  ],
  names,
);
/** Pasted columns: girder, level, line, and set as the fourth. */
const order = (j: number) => [1, 3, 0, 2][j] ?? null;

describe("rows by name", () => {
  test("in another order of rows and columns, in other capitals", () => {
    const found = rowsByNames(
      plain,
      [
        ["R", "9", "Far"],
        ["l", "8", "near"],
      ],
      order,
    );
    expect(found).toEqual({ rows: [3, 0], not: [] });
  });

  test("a row that the table has not, and one pasted twice, are told and not placed", () => {
    const found = rowsByNames(
      plain,
      [
        ["M", "9", "far"],
        ["L", "8", "near"],
        ["L", "7", "near"],
        ["R", "6", "near"],
      ],
      order,
    );
    expect(found?.rows).toEqual([null, null, null, 1]);
    expect(found?.not).toEqual([
      { row: 0, problem: 'there is no seat "far M"', isNew: true },
      { row: 1, problem: 'seat "near L" is pasted more than once', isNew: false },
      { row: 2, problem: 'seat "near L" is pasted more than once', isNew: false },
    ]);
  });

  test("sets that share a girder's name need the set; a set that the table leaves blank agrees", () => {
    expect(rowsByNames(shared, [["L", "9", "near", "two"]], order)?.rows).toEqual([1]);
    expect(rowsByNames(shared, [["L", "9", "near"]], order)).toEqual({
      rows: [null],
      not: [
        {
          row: 0,
          problem: '2 seats are called "near L"; add a column that tells the set',
          isNew: false,
        },
      ],
    });
    expect(rowsByNames(plain, [["L", "9", "near", "one"]], order)?.rows).toEqual([0]);
  });

  test("without a column that is needed, or without names, rows go by their place", () => {
    expect(rowsByNames(plain, [["L", "9"]], (j) => [1, 3][j] ?? null)).toBeNull();
    expect(rowsByNames(table([["near", "L", "", "1"]]), [["L", "9", "near"]], order)).toBeNull();
  });
});
