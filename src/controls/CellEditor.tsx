// What stands in a cell of a table while it is edited: a field to type in, or a list to choose from.
import { useEffect, useRef } from "react";
import type { After, GridCell } from "./gridModel.ts";
import { NamesEditor } from "./Names.tsx";

interface EditorProps {
  cell: GridCell;
  label: string;
  begin: string;
  /** The whole text is chosen, so that typing replaces it. */
  whole: boolean;
  describedBy: string;
  invalid: boolean;
  take: (text: string, after: After) => boolean;
  back: () => void;
  typed: (text: string) => void;
}

/** `begin` is the text it opens with; `take` is told the text and answers false when it was refused. */
export function CellEditor(props: EditorProps) {
  return props.cell.is === "names" ? <NamesEditor {...props} /> : <OneEditor {...props} />;
}

function OneEditor(props: EditorProps) {
  const { cell, label, begin, whole, describedBy, invalid, take, back, typed } = props;
  const field = useRef<HTMLInputElement & HTMLSelectElement>(null);
  const done = useRef(false);
  useEffect(() => {
    field.current?.focus();
    if (whole && field.current instanceof HTMLInputElement) field.current.select();
  }, [whole]);
  const finish = (after: After) => {
    const text = field.current?.value ?? "";
    // Taking it moves the focus, which would take it a second time.
    done.current = true;
    if (!take(text, after)) done.current = false;
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.key === "Enter") finish("down");
    else if (event.key === "Tab") finish(event.shiftKey ? "before" : "next");
    else if (event.key === "Escape") {
      done.current = true;
      back();
    } else {
      // Everything else belongs to the field, and to nothing around it.
      event.stopPropagation();
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  };
  const shared = {
    ref: field,
    "aria-label": label,
    "aria-invalid": invalid,
    "aria-describedby": describedBy,
    onKeyDown,
    onBlur: () => {
      if (!done.current) finish("stay");
    },
  };
  if (cell.is === "choice") {
    const choices = cell.choices.includes(begin) || begin === "" ? cell.choices : [begin, ...cell.choices];
    return (
      <select {...shared} defaultValue={begin} onChange={(event) => typed(event.target.value)}>
        {!choices.includes("") && <option value="">– not set –</option>}
        {choices.map((one) => (
          <option key={one} value={one}>
            {one}
          </option>
        ))}
      </select>
    );
  }
  return (
    <input
      {...shared}
      type="text"
      autoComplete="off"
      className={cell.number ? "number" : ""}
      defaultValue={begin}
      onChange={(event) => typed(event.target.value)}
    />
  );
}
