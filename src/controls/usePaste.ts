// A paste from the text on the clipboard to changed cells: asks what is doubtful, and takes all cells or none.
import { useState } from "react";
import { type Cells, type CommaMeaning, commaQuestion, tablesIn, withPoint } from "./clipboard.ts";
import { type CellChange, type GridModel, type HeadMatch, matchHeads, readCells } from "./gridModel.ts";
import { type Area, placesFor, type Spot } from "./gridMoves.ts";
import type { PasteQuestion } from "./PasteDialog.tsx";

/** What a person said once about commas that can only mean one thing; it holds while the page is open. */
const agreed = new Set<CommaMeaning>();

const commaWords: Readonly<Record<CommaMeaning, string>> = {
  decimal: "The comma is the decimal sign",
  thousands: "The comma parts thousands",
};

/** A cell as it is written in the unit-less plain form; its own text where the meaning does not fit, to be refused later. */
function allWithPoint(
  cells: Cells,
  isNumber: (column: number) => boolean,
  meaning: CommaMeaning,
): string[][] {
  return cells.map((row) =>
    row.map((cell, j) => {
      if (!isNumber(j)) return cell;
      const plain = withPoint(cell, meaning);
      return plain === "" ? cell : plain;
    }),
  );
}

/** The paste of one table: `paste` begins it; `question` is what is asked now; `close` gives it up. */
export function usePaste(model: GridModel, done: (area: Area) => void) {
  const [question, setQuestion] = useState<PasteQuestion | null>(null);
  const close = () => setQuestion(null);

  const finish = (changes: CellChange[], grown: number, area: Area, replaceBy: number | null) => {
    close();
    if (changes.length === 0) return;
    if (replaceBy !== null) model.replace?.("paste", changes, replaceBy);
    else model.change("paste", changes, grown);
    done(area);
  };

  const numbersIn = (columnOf: (j: number) => number | null) => (j: number) => {
    const column = columnOf(j);
    return column !== null && (model.columns[column]?.number ?? false);
  };

  /** Asks about commas where that is needed, and goes on with cells that have points. */
  const withCommas = (cells: Cells, isNumber: (column: number) => boolean, then: (cells: Cells) => void) => {
    const asked = commaQuestion(cells, isNumber);
    const taken = (meaning: CommaMeaning) => then(allWithPoint(cells, isNumber, meaning));
    if (asked.is === "none") {
      then(cells);
      return;
    }
    if (asked.meaning !== null && agreed.has(asked.meaning)) {
      taken(asked.meaning);
      return;
    }
    const meanings: readonly CommaMeaning[] =
      asked.meaning === null ? ["decimal", "thousands"] : [asked.meaning];
    const reading = (meaning: CommaMeaning) =>
      asked.examples.map((one) => `${one} is ${withPoint(one, meaning) || "no number"}`).join("; ");
    setQuestion({
      is: "ways",
      title: "Commas in numbers",
      words:
        asked.meaning === null
          ? "The commas in these numbers can be read in more than one way. How are they meant?"
          : "The commas in these numbers can only be read like this. It is asked once.",
      ways: meanings.map((meaning) => ({
        words: `${commaWords[meaning]}: ${reading(meaning)}`,
        cells: allWithPoint(cells, isNumber, meaning),
      })),
      answer: (i) => {
        if (asked.meaning !== null) agreed.add(asked.meaning);
        taken(meanings[i]);
      },
    });
  };

  const settle = (
    cells: Cells,
    spotOf: (row: number, column: number) => Spot | null,
    unitOf: (column: number) => string,
    end: (changes: CellChange[]) => void,
  ) => {
    const { changes, refused } = readCells(model, cells, spotOf, unitOf);
    if (refused.length === 0) end(changes);
    else setQuestion({ is: "refused", refused, of: changes.length + refused.length });
  };

  /** Columns by heads or by place, shown before they are taken. */
  const bySurvey = (cells: Cells, area: Area) => {
    const heads = matchHeads(cells[0], model.columns);
    const body = heads === null ? cells : cells.slice(1);
    const width = Math.max(...cells.map((row) => row.length));
    const byPlace = Array.from({ length: width }, (_, j): HeadMatch => {
      const column = area.left + j;
      return { column: column < model.columns.length ? column : null, unit: "" };
    });
    const show = (match: readonly HeadMatch[]) => {
      const columnOf = (j: number) => match[j]?.column ?? null;
      setQuestion({
        is: "columns",
        cells: body,
        heads: heads === null ? null : cells[0],
        match,
        rows: body.length,
        canReplace: model.replace !== undefined,
        rematch: (i, column) => show(match.map((one, j) => (i === j ? { ...one, column } : one))),
        answer: (replace) => {
          const top = replace ? 0 : area.top;
          withCommas(body, numbersIn(columnOf), (plain) => {
            const spotOf = (row: number, j: number) => {
              const column = columnOf(j);
              return column === null ? null : { row: top + row, column };
            };
            settle(
              plain,
              spotOf,
              (j) => match[j]?.unit ?? "",
              (changes) => {
                const bottom = top + body.length - 1;
                const grown = Math.max(0, bottom + 1 - model.rows.length);
                const whole = { top, bottom, left: 0, right: model.columns.length - 1 };
                finish(changes, grown, whole, replace ? body.length : null);
              },
            );
          });
        },
      });
    };
    show(heads ?? byPlace);
  };

  const byPlaces = (cells: Cells, area: Area) => {
    const columnOf = (j: number) => (cells.length === 1 && cells[0].length === 1 ? area.left : area.left + j);
    withCommas(cells, numbersIn(columnOf), (plain) => {
      const size = { rows: model.rows.length, columns: model.columns.length };
      const { placed, grown } = placesFor(plain, area, size);
      const rows = new Map<number, { text: string; spot: Spot }[]>();
      for (const { spot, cell } of placed)
        rows.set(spot.row, [...(rows.get(spot.row) ?? []), { text: cell, spot }]);
      const lines = [...rows.values()];
      const texts = lines.map((row) => row.map((one) => one.text));
      settle(
        texts,
        (i, j) => lines[i][j].spot,
        () => "",
        (changes) => {
          const spots = placed.map((one) => one.spot);
          finish(
            changes,
            model.insert === undefined ? 0 : grown,
            {
              ...area,
              bottom: Math.max(area.bottom, ...spots.map((s) => s.row)),
              right: Math.max(area.right, ...spots.map((s) => s.column)),
            },
            null,
          );
        },
      );
    });
  };

  const paste = (text: string, area: Area) => {
    if (text === "") return;
    const take = (cells: Cells) => {
      if (model.survey && cells.length > 1) bySurvey(cells, area);
      else if (cells.length > 1 && matchHeads(cells[0], model.columns) !== null) bySurvey(cells, area);
      else byPlaces(cells, area);
    };
    const tables = tablesIn(text);
    if (tables.length === 1) {
      take(tables[0].cells);
      return;
    }
    setQuestion({
      is: "ways",
      title: "One column or several",
      words: "The commas in this text may part columns or stand inside numbers. How is it meant?",
      ways: tables.map(({ separator, cells }) => ({
        words: separator === "," ? "The commas part columns" : "The commas stand inside numbers",
        cells,
      })),
      answer: (i) => {
        close();
        take(tables[i].cells);
      },
    });
  };
  return { paste, question, close };
}
