// A table that is edited by keyboard, pointer or touch: one cell has the focus, a rectangle can be chosen, copied and filled.
import { useCallback, useEffect, useId, useRef, useState } from "react";
import { CellEditor } from "./CellEditor.tsx";
import { serialise } from "./clipboard.ts";
import { GridCellView } from "./GridCellView.tsx";
import type { After, CellChange, GridModel } from "./gridModel.ts";
import {
  type Area,
  areaOf,
  type Choosing,
  everything,
  isIn,
  moved,
  type Spot,
  spotWithin,
} from "./gridMoves.ts";
import { PasteDialog } from "./PasteDialog.tsx";
import { usePaste } from "./usePaste.ts";

/** A cell that is being edited, and why its text was refused. */
interface Editing {
  readonly spot: Spot;
  readonly begin: string;
  readonly whole: boolean;
  readonly refusal: string;
}

const same = (a: Spot, b: Spot): boolean => a.row === b.row && a.column === b.column;
const top = { row: 0, column: 0 };

function eachIn(area: Area): Spot[] {
  const out: Spot[] = [];
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++) out.push({ row, column });
  return out;
}

/** The cells of a rectangle, as they are copied. */
function textOf(model: GridModel, area: Area): string {
  const rows: string[][] = [];
  for (let row = area.top; row <= area.bottom; row++) {
    const line: string[] = [];
    for (let column = area.left; column <= area.right; column++) line.push(model.cell({ row, column }).full);
    rows.push(line);
  }
  return serialise(rows);
}

/** What emptying or filling cells changes; the first refusal when one of them cannot be. */
function readAll(
  model: GridModel,
  spots: readonly Spot[],
  textFor: (spot: Spot) => string,
): CellChange[] | string {
  const changes: CellChange[] = [];
  for (const spot of spots) {
    const cell = model.cell(spot);
    if (cell.is === "open" || cell.is === "fixed") continue;
    const got = model.read(spot, textFor(spot));
    if (!got.ok) return `${model.columns[spot.column].head}: ${got.problem}`;
    changes.push({ spot, value: got.value });
  }
  return changes;
}

const isDoubted = (model: GridModel, spot: Spot): boolean =>
  spot.row < model.rows.length && spot.column < model.columns.length && model.cell(spot).doubt !== "";

/** What is said of a cell that nothing is wrong with. */
function saysOf(model: GridModel, spot: Spot): string {
  const { doubt, says } = model.cell(spot);
  const words = says || model.columns[spot.column].says;
  return doubt === "" ? words : `◇ ${doubt} ${words}`;
}

function nameOf(model: GridModel, spot: Spot): string {
  const { head, unit } = model.columns[spot.column];
  return `${head}${unit === "" ? "" : ` (${unit})`}, ${model.rows[spot.row]}`;
}

/**
 * `goTo` is a spot to which the focus is led, as from an error, each time `goTo.nonce` is another.
 */
export function Grid({ model, goTo }: { model: GridModel; goTo?: { spot: Spot; nonce: number } | null }) {
  const id = useId();
  const table = useRef<HTMLTableElement>(null);
  const [choosing, setChoosing] = useState<Choosing>({ at: top, from: top });
  const [editing, setEditing] = useState<Editing | null>(null);
  const [said, setSaid] = useState("");
  const size = { rows: model.rows.length, columns: model.columns.length };
  const at = spotWithin(choosing.at, size);
  const area = areaOf({ at, from: spotWithin(choosing.from, size) });
  const focusNext = useRef(false);

  const choose = useCallback((next: Choosing, focus = true) => {
    focusNext.current = focus;
    setChoosing(next);
    setSaid("");
  }, []);
  useEffect(() => {
    if (!focusNext.current || editing !== null) return;
    focusNext.current = false;
    const cell = table.current?.querySelector<HTMLElement>('td[tabindex="0"]');
    cell?.focus();
    cell?.scrollIntoView({ block: "nearest", inline: "nearest" });
  });
  useEffect(() => {
    if (goTo !== undefined && goTo !== null) choose({ at: goTo.spot, from: goTo.spot });
  }, [goTo, choose]);

  const { paste, question, close } = usePaste(
    model,
    (pasted) =>
      choose({
        from: { row: pasted.top, column: pasted.left },
        at: { row: pasted.bottom, column: pasted.right },
      }),
    setSaid,
  );

  const begin = (spot: Spot, text: string | null) => {
    const cell = model.cell(spot);
    if (cell.is === "open") {
      model.open?.(spot);
      return;
    }
    if (cell.is === "fixed") return;
    const choice = cell.is === "choice" || cell.is === "names";
    setEditing({
      spot,
      begin: text === null || choice ? cell.full : text,
      whole: text === null,
      refusal: "",
    });
  };
  const take = (text: string, after: After): boolean => {
    if (editing === null) return true;
    const { spot } = editing;
    const cell = model.cell(spot);
    if (text !== cell.full || cell.problem !== "") {
      const got = model.read(spot, text);
      if (!got.ok) {
        setEditing({ ...editing, refusal: got.problem });
        return false;
      }
      if (text !== cell.full) model.change("set", [{ spot, value: got.value }], 0);
    }
    setEditing(null);
    const key = { down: "ArrowDown", next: "Tab", before: "Tab", stay: "" }[after];
    const next = moved({ at: spot, from: spot }, { key, shift: after === "before", ctrl: false }, size);
    if (after !== "stay") choose(next ?? { at: spot, from: spot });
    return true;
  };
  const fill = () => {
    const whole = area.top === area.bottom ? { ...area, top: Math.max(0, area.top - 1) } : area;
    const spots = eachIn({ ...whole, top: whole.top + 1 });
    const changes = readAll(model, spots, ({ column }) => model.cell({ row: whole.top, column }).full);
    if (typeof changes === "string") setSaid(changes);
    else if (changes.length > 0) model.change("fill down", changes, 0);
  };
  const empty = (words: string) => {
    const changes = readAll(model, eachIn(area), () => "");
    if (typeof changes === "string") setSaid(changes);
    else if (changes.length > 0) model.change(words, changes, 0);
  };
  const doubted = model.confirm === undefined ? [] : eachIn(area).filter((spot) => isDoubted(model, spot));
  const confirm = () => {
    if (doubted.length > 0) setSaid(model.confirm?.(doubted) ?? "");
  };
  const { entry } = model;
  const entryDoubted = size.rows > 0 && size.columns > 0 && entry?.doubted(at) === true;
  const confirmEntry = () => {
    if (entryDoubted) setSaid(entry?.confirm(at) ?? "");
  };
  // The cursor goes to the first of the new rows, to be typed in at once.
  const add = (count: number) => {
    if (model.insert === undefined) return;
    const first = { row: size.rows === 0 ? 0 : at.row + 1, column: 0 };
    model.insert(first.row, count);
    choose({ at: first, from: first });
  };
  const rowKey = (event: React.KeyboardEvent): boolean => {
    const count = area.bottom - area.top + 1;
    if (event.altKey && (event.key === "ArrowUp" || event.key === "ArrowDown") && model.move !== undefined) {
      const to = at.row + (event.key === "ArrowUp" ? -1 : 1);
      if (to < 0 || to >= size.rows) return true;
      model.move(at.row, to);
      choose({ at: { ...at, row: to }, from: { ...at, row: to } });
      return true;
    }
    if (!(event.ctrlKey || event.metaKey)) return false;
    if (event.key === "+" || event.key === "Insert") add(count);
    else if (event.key === "-" || event.key === "Delete") model.remove?.(area.top, count);
    else return false;
    return true;
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (editing !== null || event.target instanceof HTMLButtonElement) return;
    const ctrl = event.ctrlKey || event.metaKey;
    const next = event.altKey
      ? null
      : moved({ at, from: choosing.from }, { key: event.key, shift: event.shiftKey, ctrl }, size);
    if (next !== null) choose(next);
    else if (rowKey(event)) setSaid("");
    else if (ctrl && event.key === "Enter") (event.shiftKey ? confirmEntry : confirm)();
    else if (event.key === "Enter" || event.key === "F2") begin(at, null);
    else if (event.key === "Delete" || event.key === "Backspace") empty("clear");
    else if (ctrl && event.key.toLowerCase() === "d") fill();
    else if (ctrl && event.key.toLowerCase() === "a") choose(everything(size));
    else if (event.key.length === 1 && !ctrl && !event.altKey)
      begin(at, event.key === " " ? null : event.key);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const onCopy = (event: React.ClipboardEvent, cut: boolean) => {
    if (editing !== null) return;
    event.clipboardData.setData("text/plain", textOf(model, area));
    event.preventDefault();
    if (cut) empty("cut");
  };
  const status = editing?.refusal
    ? `▲ Not taken: ${editing.refusal}`
    : said !== ""
      ? `▲ Not done: ${said}`
      : size.rows > 0 && size.columns > 0 && model.cell(at).problem !== ""
        ? `▲ Error: ${model.cell(at).problem}`
        : size.rows > 0 && size.columns > 0
          ? saysOf(model, at)
          : "";
  return (
    <div className="grid">
      <div className="grid-tools">
        {model.insert !== undefined && (
          <button type="button" onClick={() => add(1)}>
            {`Add ${model.rowWord}`}
          </button>
        )}
        {model.remove !== undefined && (
          <button
            type="button"
            disabled={size.rows === 0}
            onClick={() => model.remove?.(area.top, area.bottom - area.top + 1)}
          >
            {`Remove ${model.rowWord}`}
          </button>
        )}
        <button type="button" disabled={area.top === area.bottom && area.top === 0} onClick={fill}>
          Fill down
        </button>
        {model.confirm !== undefined && (
          <button
            type="button"
            title="The chosen values are right as they stand (Ctrl+Enter)"
            disabled={doubted.length === 0}
            onClick={confirm}
          >
            Confirm
          </button>
        )}
        {entry !== undefined && (
          <button
            type="button"
            title={`All of this ${entry.word} is right as it stands (Ctrl+Shift+Enter)`}
            disabled={!entryDoubted}
            onClick={confirmEntry}
          >
            {`Confirm ${entry.word}`}
          </button>
        )}
        <button
          type="button"
          onClick={() =>
            void navigator.clipboard
              .writeText(textOf(model, area))
              .catch((e: unknown) =>
                setSaid(`The browser did not let the clipboard be written (${String(e)}).`),
              )
          }
          disabled={size.rows === 0}
        >
          Copy
        </button>
        <button
          type="button"
          onClick={() =>
            void navigator.clipboard.readText().then(
              (text) => paste(text, area),
              () => setSaid("The browser did not let the clipboard be read: press Ctrl+V in the table."),
            )
          }
        >
          Paste
        </button>
      </div>
      {/* Without a cell that takes the focus the heads must be scrolled by keys all the same. */}
      <div className="grid-scroll" tabIndex={size.rows === 0 ? 0 : undefined}>
        <table
          ref={table}
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a native table that is edited is an ARIA grid.
          role="grid"
          aria-label={model.label}
          aria-rowcount={size.rows + 1}
          aria-colcount={size.columns + 1}
          onKeyDown={onKeyDown}
          onCopy={(event) => onCopy(event, false)}
          onCut={(event) => onCopy(event, true)}
          onPaste={(event) => {
            if (editing !== null) return;
            paste(event.clipboardData.getData("text/plain"), area);
            event.preventDefault();
          }}
        >
          <thead>
            <tr>
              <th scope="col" className="corner">
                <span className="unseen">{model.rowWord}</span>
              </th>
              {model.columns.map((column) => (
                <th
                  key={column.key}
                  scope="col"
                  title={column.says}
                  className={column.number ? "number" : ""}
                >
                  {column.head}
                  {column.unit !== "" && <span className="unit">{column.unit}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {model.rows.map((head, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is told by its place; its name may be blank or doubled.
              <tr key={row}>
                <th scope="row">{head}</th>
                {model.columns.map((column, index) => {
                  const spot = { row, column: index };
                  const here = same(spot, at);
                  const cell = model.cell(spot);
                  const edited = editing !== null && same(editing.spot, spot) ? editing : null;
                  return (
                    <GridCellView
                      key={column.key}
                      cell={cell}
                      here={here}
                      chosen={isIn(area, spot)}
                      describedBy={here ? `${id}-status` : undefined}
                      choose={(shift) =>
                        choose({ at: spot, from: shift ? choosing.from : spot }, editing === null)
                      }
                      focused={() =>
                        setChoosing((now) => (same(now.at, spot) ? now : { at: spot, from: spot }))
                      }
                      begin={() => begin(spot, null)}
                    >
                      {edited !== null && (
                        <CellEditor
                          cell={cell}
                          label={nameOf(model, spot)}
                          begin={edited.begin}
                          whole={edited.whole}
                          describedBy={`${id}-status`}
                          invalid={edited.refusal !== ""}
                          take={take}
                          typed={() => {
                            if (edited.refusal !== "") setEditing({ ...edited, refusal: "" });
                          }}
                          back={() => {
                            setEditing(null);
                            choose({ at: spot, from: spot });
                          }}
                        />
                      )}
                    </GridCellView>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {size.rows === 0 && (
        <p className="quiet">{`There is no ${model.rowWord} yet. Add one, or paste rows of a spreadsheet.`}</p>
      )}
      <p id={`${id}-status`} className="grid-status" role="status">
        {status}
      </p>
      <PasteDialog question={question} columns={model.columns} rowWord={model.rowWord} close={close} />
    </div>
  );
}
