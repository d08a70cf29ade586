// Tables to and from the clipboard: any table comes back equal; separators; and commas that are never guessed.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { commaQuestion, parse, serialise, tablesIn, withPoint } from "../../src/controls/clipboard.ts";

const cell = fc.oneof(
  fc.string({ unit: fc.constantFrom("a", "1", ",", ".", '"', "\t", "\n", "\r", ";", " ", "é") }),
  fc.string(),
);

test("any table copied and pasted is equal", () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(cell, { minLength: 1, maxLength: 5 }), { minLength: 1, maxLength: 8 }),
      (cells) => {
        expect(parse(serialise(cells), "\t")).toEqual(cells);
      },
    ),
    { numRuns: 2000 },
  );
});

test("a rectangle with a tab in it is recognised as a table of tabs", () => {
  fc.assert(
    fc.property(
      fc
        .integer({ min: 2, max: 5 })
        .chain((width) =>
          fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }),
        ),
      (cells) => {
        expect(tablesIn(serialise(cells))).toEqual([{ separator: "\t", cells }]);
      },
    ),
  );
});

describe("separators", () => {
  test("semicolons, quotes and line ends of either kind", () => {
    expect(tablesIn('"a;b";2\r\n"say ""x""";4')).toEqual([
      {
        separator: ";",
        cells: [
          ["a;b", "2"],
          ['say "x"', "4"],
        ],
      },
    ]);
  });
  test("commas part cells where a line is no number", () => {
    expect(tablesIn("near,L,98.2\nfar,L,98.4")).toEqual([
      {
        separator: ",",
        cells: [
          ["near", "L", "98.2"],
          ["far", "L", "98.4"],
        ],
      },
    ]);
  });
  test("a column of 12,5 may be two columns or one with decimal commas: both are given", () => {
    expect(tablesIn("12,5\n13,5\n").map((one) => one.cells)).toEqual([
      [
        ["12", "5"],
        ["13", "5"],
      ],
      [["12,5"], ["13,5"]],
    ]);
  });
  test("lines of different length are not parted by commas", () => {
    expect(tablesIn("bolts, nuts\nplates").map((one) => one.cells)).toEqual([[["bolts, nuts"], ["plates"]]]);
  });
  test("a quote that is not closed takes the rest", () => expect(parse('"a\tb', "\t")).toEqual([["a\tb"]]));
});

describe("commas in numbers", () => {
  const ask = (...cells: string[]) =>
    commaQuestion(
      cells.map((one) => [one]),
      () => true,
    );
  test.each<[string[], string, string | null]>([
    [["12.5", "7"], "none", null],
    [["12,5", "0,125"], "sure", "decimal"],
    [["1.234,5"], "sure", "decimal"],
    [["12,5 m", "-3,25 m"], "sure", "decimal"],
    [["1,234.5"], "sure", "thousands"],
    [["1,234,567"], "sure", "thousands"],
    [["1,234"], "doubtful", null],
    [["12,5", "1,234"], "doubtful", null],
    [["12,5", "1,234.5"], "doubtful", null],
    [["12,5", "1.234"], "doubtful", null],
    [["1,2,3"], "doubtful", null],
  ])("%j is %s %s", (cells, is, meaning) => {
    expect(ask(...cells)).toMatchObject({ is, meaning });
  });
  test("only columns of numbers are looked at", () => {
    expect(commaQuestion([["a, b", "1.5"]], (column) => column === 1).is).toBe("none");
  });

  test.each<[string, "decimal" | "thousands", string]>([
    ["12,5 m", "decimal", "12.5 m"],
    ["-1.234,5", "decimal", "-1234.5"],
    ["1.234", "decimal", "1234"],
    ["12.5", "decimal", "12.5"],
    ["1,234.5 kN", "thousands", "1234.5 kN"],
    ["1,234", "decimal", "1.234"],
    ["1,234", "thousands", "1234"],
    ["12,5", "thousands", ""],
    ["1,234,567", "decimal", ""],
    ["not surveyed", "decimal", "not surveyed"],
  ])("%s as %s is %s", (cell, meaning, want) => expect(withPoint(cell, meaning)).toBe(want));

  test("a sure meaning always reads, and to the number that was written", () => {
    const value = fc.integer({ min: 0, max: 1e9 }).map((n) => n / 100);
    fc.assert(
      fc.property(value, fc.constantFrom("de-DE", "en-US"), (x, locale) => {
        const written = x.toLocaleString(locale, { minimumFractionDigits: 2 });
        const question = ask(written);
        if (question.is === "none") return;
        expect(question).toMatchObject({ is: "sure", meaning: locale === "de-DE" ? "decimal" : "thousands" });
        if (question.meaning !== null) expect(Number(withPoint(written, question.meaning))).toBe(x);
      }),
    );
  });
});
