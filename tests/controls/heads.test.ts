// Pasted heads matched with columns: any order, other words, units in the head; and no guess where there is no head.
import { describe, expect, test } from "vitest";
import {
  type GridColumn,
  type GridModel,
  matchHeads,
  readCells,
  unitInHead,
} from "../../src/controls/gridModel.ts";
import { readQuantity } from "../../src/controls/QuantityField.tsx";

const column = (key: string, head: string, number: boolean, also: string[] = []): GridColumn => ({
  key,
  head,
  unit: number ? "m" : "",
  says: "",
  number,
  also,
});
const columns = [
  column("line", "bearing line", false),
  column("girder", "girder", false),
  column("design_m", "elevation as designed", true),
  column("asBuilt_m", "elevation as built", true, ["surveyed elevation", "measured level"]),
  column("source", "source", false),
];

describe("heads", () => {
  test.each<[string[], (number | null)[]]>([
    [
      ["Girder", "Line", "As built (mm)", "Source"],
      [1, 0, 3, 4],
    ],
    [
      ["girder", "bearing line", "asBuilt_m", "design_m"],
      [1, 0, 3, 2],
    ],
    [
      ["Surveyed elevation [ft]", "Girder", "Remarks"],
      [3, 1, null],
    ],
  ])("%j", (heads, want) => expect(matchHeads(heads, columns)?.map((one) => one.column)).toEqual(want));

  test("a row with a number is no head, nor one that names no column", () => {
    expect(matchHeads(["near", "L", "98.2"], columns)).toBeNull();
    expect(matchHeads(["apples", "pears"], columns)).toBeNull();
  });

  test.each([
    ["As built (mm)", "mm"],
    ["Elevation [ft]", "ft"],
    ["rated load, t", "t"],
    ["asBuilt_mm", "mm"],
    ["Girder", ""],
  ])("the unit of %s is %s", (head, unit) => expect(unitInHead(head)).toBe(unit));
});

test("cells are read with the unit of their head, but for those that have one; what fails is told by its place", () => {
  const model = {
    columns,
    read: (_: unknown, text: string) =>
      readQuantity(text, { keptIn: "m", shownIn: "m", least: -500, most: 9000 }),
  } as unknown as GridModel;
  const cells = [["98203", "98.2 m", "x"]];
  const got = readCells(
    model,
    cells,
    (row) => ({ row, column: 3 }),
    () => "mm",
  );
  expect(got.changes.map((one) => one.value)).toEqual([98.203, 98.2]);
  expect(got.refused).toMatchObject([{ row: 0, column: 2, text: "x" }]);
});

test("a quantity out of its bounds is refused with the bounds in the shown unit", () => {
  const got = readQuantity("20 km/h", { keptIn: "m", shownIn: "ft", least: 0, most: 10 });
  expect(got.ok).toBe(false);
  const far = readQuantity("100", { keptIn: "m", shownIn: "ft", least: 0, most: 3.048 });
  expect(far).toEqual({
    ok: false,
    problem: '"100" is too large; allowed: from 0 ft to 10 ft. Correct the number or its unit.',
  });
  expect(readQuantity("12 ft 6 in", { keptIn: "m", shownIn: "m", least: 0, most: 10 })).toEqual({
    ok: true,
    value: 3.81,
  });
});
