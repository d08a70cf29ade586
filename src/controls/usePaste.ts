// A paste from the text on the clipboard to changed cells: asks what is doubtful, and takes all cells or none.
import { useState } from "react";
import { type Cells, type CommaMeaning, commaQuestion, tablesIn, withPoint } from "./clipboard.ts";
import { type CellChange, type GridModel, type HeadMatch, matchHeads, readCells } from "./gridModel.ts";
import { type Area, placesFor, type Spot } from "./gridMoves.ts";
import type { PasteQuestion } from "./PasteDialog.tsx";
import { rowsByNames } from "./rowNames.ts";

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

const holds = (text: string): boolean => text.trim() !== "";

/**
 * The paste of one table: `paste` begins it; `question` is what is asked now; `close` gives it up. `done` is told the cells
 * that were pasted, `say` why nothing was.
 */
export function usePaste(model: GridModel, done: (area: Area) => void, say: (why: string) => void) {
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

  /** Columns by heads or by place, rows by their names or by place; shown before they are taken. */
  const bySurvey = (cells: Cells, area: Area) => {
    const heads = matchHeads(cells[0], model.columns);
    const body = (heads === null ? cells : cells.slice(1)).filter((row) => row.some(holds));
    const width = Math.max(...cells.map((row) => row.length));
    const byPlace = Array.from({ length: width }, (_, j): HeadMatch => {
      const column = area.left + j;
      return { column: column < model.columns.length ? column : null, unit: "" };
    });
    const byHeads = heads && byPlace.map((_, j): HeadMatch => heads[j] ?? { column: null, unit: "" });
    const show = (match: readonly HeadMatch[]) => {
      const columnOf = (j: number) => match[j]?.column ?? null;
      const found = rowsByNames(model, body, columnOf);
      const named = [...(model.rowNames?.needed ?? []), ...(model.rowNames?.more ?? [])];
      const take = (rowOf: (row: number) => number | null, rows: number, replace: boolean) => {
        // In a row that is there already its name stays as it is written, and a blank cell says nothing.
        const stays = (row: number, column: number, text: string) =>
          found !== null &&
          !replace &&
          row < model.rows.length &&
          (!holds(text) || (named.includes(column) && holds(model.cell({ row, column }).full)));
        withCommas(body, numbersIn(columnOf), (plain) => {
          const spotOf = (i: number, j: number) => {
            const [row, column] = [rowOf(i), columnOf(j)];
            if (row === null || column === null || stays(row, column, body[i][j] ?? "")) return null;
            return { row, column };
          };
          settle(
            plain,
            spotOf,
            (j) => match[j]?.unit ?? "",
            (changes) => {
              const used = changes.map(({ spot }) => spot.row);
              const whole = {
                top: Math.min(...used),
                bottom: Math.max(...used),
                left: 0,
                right: model.columns.length - 1,
              };
              finish(changes, Math.max(0, rows - model.rows.length), whole, replace ? body.length : null);
            },
          );
        });
      };
      const fresh = (found?.not ?? []).filter((one) => one.isNew).map((one) => one.row);
      setQuestion({
        is: "columns",
        cells: body,
        heads: heads === null ? null : cells[0],
        match,
        rows: body.length,
        found,
        canAdd: model.insert !== undefined && fresh.length > 0,
        canReplace: model.replace !== undefined,
        rematch: (i, column) =>
          show(
            match.map((one, j) =>
              i === j ? { ...one, column } : one.column === column ? { ...one, column: null } : one,
            ),
          ),
        answer: (how) => {
          const count = model.rows.length;
          if (how === "replace") take((i) => i, body.length, true);
          else if (how === "here") take((i) => area.top + i, area.top + body.length, false);
          else if (how === "named") take((i) => found?.rows[i] ?? null, 0, false);
          else {
            const added = (i: number) => (fresh.includes(i) ? count + fresh.indexOf(i) : null);
            take((i) => found?.rows[i] ?? added(i), count + fresh.length, false);
          }
        },
      });
    };
    show(byHeads ?? byPlace);
  };

  const byPlaces = (cells: Cells, area: Area) => {
    const columnOf = (j: number) => (cells.length === 1 && cells[0].length === 1 ? area.left : area.left + j);
    withCommas(cells, numbersIn(columnOf), (plain) => {
      const size = { rows: model.rows.length, columns: model.columns.length };
      const { placed, grown, lost } = placesFor(plain, area, size);
      if (lost > 0 || (grown > 0 && model.insert === undefined)) {
        close();
        say(
          lost > 0
            ? `${lost} of the pasted cells lie beyond the last column. Choose a cell further left, or paste fewer columns.`
            : `${grown} of the pasted rows lie below the last row, and none can be added here. Choose a cell further up, or paste fewer rows.`,
        );
        return;
      }
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
