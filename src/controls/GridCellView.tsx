// One cell of a table as it is seen: chosen or not, at fault or not, opened by a second tap.
import { useRef } from "react";
import type { GridCell } from "./gridModel.ts";

/** `children` is what stands in the cell while it is edited. `choose` is told whether Shift was held. */
export function GridCellView(props: {
  cell: GridCell;
  here: boolean;
  chosen: boolean;
  describedBy: string | undefined;
  choose: (shift: boolean) => void;
  /** The focus came by other means, as by a screen reader. */
  focused: () => void;
  begin: () => void;
  children: React.ReactNode;
}) {
  const { cell, here, chosen, describedBy, choose, focused, begin, children } = props;
  const edited = Boolean(children);
  const wasHere = useRef(false);
  const classes = [
    cell.number ? "number" : "",
    cell.missing ? "missing" : "",
    cell.problem === "" ? "" : "faulty",
    chosen ? "chosen" : "",
  ];
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: keys are heard by the table, which knows the cell that has the focus.
    <td
      // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a cell of a native table that is edited is an ARIA grid cell.
      role="gridcell"
      tabIndex={here ? 0 : -1}
      className={classes.filter((one) => one !== "").join(" ")}
      aria-selected={chosen}
      aria-invalid={cell.problem !== ""}
      aria-describedby={describedBy}
      aria-readonly={cell.is === "fixed"}
      onFocus={focused}
      onPointerDown={(event) => {
        if (edited || event.button !== 0) return;
        wasHere.current = here;
        choose(event.shiftKey);
      }}
      onDoubleClick={edited ? undefined : begin}
      onClick={(event) => {
        const touched = "pointerType" in event.nativeEvent && event.nativeEvent.pointerType === "touch";
        if (!edited && wasHere.current && (touched || cell.is === "open")) begin();
      }}
    >
      {edited ? (
        children
      ) : (
        <>
          {cell.problem !== "" && <span className="mark">▲ error </span>}
          {cell.problem === "" && cell.doubt !== "" && (
            <span className="mark">
              ◇ <span className="unseen">not confirmed </span>
            </span>
          )}
          {cell.text}
          {cell.is === "open" && <span aria-hidden="true"> ▸</span>}
        </>
      )}
    </td>
  );
}
