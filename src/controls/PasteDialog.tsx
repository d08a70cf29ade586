// The questions that a paste may raise: which table it is, what its commas mean, where its columns go, and what was refused.
import { useEffect, useRef } from "react";
import type { Cells } from "./clipboard.ts";
import type { GridColumn, HeadMatch, Refused } from "./gridModel.ts";
import type { RowsFound } from "./rowNames.ts";

/** One question; `answer` is told which of the ways was chosen. */
export type PasteQuestion =
  | {
      readonly is: "ways";
      readonly title: string;
      readonly words: string;
      readonly ways: readonly { words: string; cells: Cells }[];
      readonly answer: (index: number) => void;
    }
  | {
      readonly is: "columns";
      readonly cells: Cells;
      readonly heads: readonly string[] | null;
      readonly match: readonly HeadMatch[];
      readonly rows: number;
      /** The rows of the table that the pasted ones name; null where they go by their place. */
      readonly found: RowsFound | null;
      readonly canAdd: boolean;
      readonly canReplace: boolean;
      readonly rematch: (index: number, column: number | null) => void;
      readonly answer: (how: "here" | "named" | "named and new" | "replace") => void;
    }
  | { readonly is: "refused"; readonly refused: readonly Refused[]; readonly of: number };

/** Rows and columns that a preview shows. */
const shownRows = 4;
const shownColumns = 8;

function Preview({ cells }: { cells: Cells }) {
  return (
    <table className="preview">
      <tbody>
        {cells.slice(0, shownRows).map((row, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows of a pasted text have no other name and never move.
          <tr key={i}>
            {row.slice(0, shownColumns).map((cell, j) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: cells of a pasted text have no other name and never move.
              <td key={j}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Which pasted columns go nowhere. */
function LeftOut(props: { heads: readonly string[] | null; match: readonly HeadMatch[]; cells: Cells }) {
  const { heads, match, cells } = props;
  const out = match.flatMap(({ column }, j) =>
    column === null && cells.some((row) => (row[j] ?? "").trim() !== "")
      ? [heads?.[j]?.trim() || `column ${j + 1}`]
      : [],
  );
  if (out.length === 0) return null;
  return <p>{`▲ Not pasted, since no column was chosen for it: ${out.join(", ")}.`}</p>;
}

const many = (count: number, word: string) => `${count} ${word}${count === 1 ? "" : "s"}`;

/** Rows found by their names, those that were not and why, and what can be done. */
function ByNames(props: {
  found: RowsFound;
  rowWord: string;
  question: Extract<PasteQuestion, { is: "columns" }>;
}) {
  const { found, rowWord, question } = props;
  const count = found.rows.filter((row) => row !== null).length;
  const fresh = found.not.filter((one) => one.isNew).length;
  return (
    <>
      <p>{`${count} of ${many(question.rows, "row")} found by name, in whatever order they come. Blank cells change nothing.`}</p>
      {found.not.length > 0 && (
        <>
          <p>{`▲ ${many(found.not.length, "row")} not found:`}</p>
          <ul>
            {found.not.slice(0, 10).map((one) => (
              <li key={one.row}>{`Row ${one.row + 1}: ${one.problem}.`}</li>
            ))}
          </ul>
          {found.not.length > 10 && <p>{`and ${found.not.length - 10} more.`}</p>}
        </>
      )}
      <div className="answers">
        <button type="button" disabled={count === 0} onClick={() => question.answer("named")}>
          {found.not.length === 0 ? "Paste by name" : `Paste the ${count} found by name alone`}
        </button>
        {question.canAdd && (
          <button type="button" onClick={() => question.answer("named and new")}>
            {`Paste them, and add ${many(fresh, `new ${rowWord}`)}`}
          </button>
        )}
        {question.canReplace && (
          <button type="button" onClick={() => question.answer("replace")}>
            In place of all rows
          </button>
        )}
      </div>
    </>
  );
}

/** Open while there is a question. `close` takes nothing. */
export function PasteDialog(props: {
  question: PasteQuestion | null;
  columns: readonly GridColumn[];
  rowWord: string;
  close: () => void;
}) {
  const { question, columns, rowWord, close } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const it = dialog.current;
    if (it === null) return;
    if (question !== null && !it.open) it.showModal();
    if (question === null && it.open) it.close();
  }, [question]);
  return (
    <dialog ref={dialog} className="paste" aria-label="Paste" onClose={close}>
      {question?.is === "ways" && (
        <>
          <h2>{question.title}</h2>
          <p>{question.words}</p>
          {question.ways.map((way, i) => (
            <div key={way.words} className="way">
              <Preview cells={way.cells} />
              <button type="button" onClick={() => question.answer(i)}>
                {way.words}
              </button>
            </div>
          ))}
        </>
      )}
      {question?.is === "columns" && (
        <>
          <h2>{`Paste ${question.rows} ${rowWord}${question.rows === 1 ? "" : "s"}`}</h2>
          <p>
            {question.heads === null
              ? "There are no heads: columns are taken by their place. Correct what is wrong before taking them."
              : "Columns are matched by their heads. Correct what is wrong before taking them."}
          </p>
          <div className="preview-scroll">
            <table className="preview">
              <thead>
                <tr>
                  {question.match.map((one, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: columns of a pasted text never move.
                    <th key={i} scope="col">
                      {question.heads !== null && <span className="quiet">{question.heads[i]}</span>}
                      <select
                        aria-label={`Pasted column ${i + 1} goes to`}
                        value={one.column ?? -1}
                        onChange={(event) => {
                          const to = Number(event.target.value);
                          question.rematch(i, to < 0 ? null : to);
                        }}
                      >
                        <option value={-1}>– leave out –</option>
                        {columns.map((column, j) => (
                          <option key={column.key} value={j}>
                            {column.head}
                          </option>
                        ))}
                      </select>
                      {one.column !== null && columns[one.column].number && (
                        <span className="quiet">{one.unit || columns[one.column].unit}</span>
                      )}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {question.cells.slice(0, shownRows).map((row, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: rows of a pasted text never move.
                  <tr key={i}>
                    {question.match.map((_, j) => (
                      // biome-ignore lint/suspicious/noArrayIndexKey: cells of a pasted text have no other name and never move.
                      <td key={j}>{row[j] ?? ""}</td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <LeftOut heads={question.heads} match={question.match} cells={question.cells} />
          {question.found === null ? (
            <div className="answers">
              <button type="button" onClick={() => question.answer("here")}>
                From the chosen row on
              </button>
              {question.canReplace && (
                <button type="button" onClick={() => question.answer("replace")}>
                  In place of all rows
                </button>
              )}
            </div>
          ) : (
            <ByNames found={question.found} rowWord={rowWord} question={question} />
          )}
        </>
      )}
      {question?.is === "refused" && (
        <>
          <h2>Nothing was pasted</h2>
          <p>{`${question.refused.length} of ${question.of} cells could not be taken:`}</p>
          <ul>
            {question.refused.slice(0, 10).map((one) => (
              <li key={`${one.row} ${one.column}`}>
                {`Row ${one.row + 1}, column ${one.column + 1}: ${one.problem}`}
              </li>
            ))}
          </ul>
          {question.refused.length > 10 && <p>{`and ${question.refused.length - 10} more.`}</p>}
        </>
      )}
      <button type="button" onClick={close}>
        {question?.is === "refused" ? "Close" : "Cancel"}
      </button>
    </dialog>
  );
}
