// Several names chosen from a list, each by a box to tick: in a form, and in a cell of a table.
import { useEffect, useId, useRef, useState } from "react";
import type { After, GridCell } from "./gridModel.ts";

/** What parts names where they stand as one text. */
const between = /\s*;\s*/;

/** The names in a text. */
export const namesIn = (text: string): string[] => text.split(between).filter((one) => one.trim() !== "");

/** Names after one of them was ticked or not: what stood keeps its order, a new one comes last. */
const toggled = (on: readonly string[], name: string): string[] =>
  on.includes(name) ? on.filter((one) => one !== name) : [...on, name];

/** All boxes: the names there are, and those that stand though they are not there. */
function Boxes(props: {
  choices: readonly string[];
  on: readonly string[];
  change: (on: string[]) => void;
  name: string;
}) {
  const { choices, on, change, name } = props;
  const strange = on.filter((one) => !choices.includes(one));
  return (
    <>
      {[...choices, ...strange].map((one) => (
        <label key={one}>
          <input
            type="checkbox"
            name={name}
            checked={on.includes(one)}
            onChange={() => change(toggled(on, one))}
          />
          {` ${one}`}
          {strange.includes(one) && <span className="mark"> ▲ there is none of this name</span>}
        </label>
      ))}
      {choices.length + strange.length === 0 && (
        <span className="quiet">There is nothing to choose from.</span>
      )}
    </>
  );
}

/** The field of a form. Each tick is a change of its own. */
export function NamesField(props: {
  label: string;
  choices: readonly string[];
  on: readonly string[];
  change: (on: string[]) => void;
  says: string;
  problem: string;
}) {
  const { label, choices, on, change, says, problem } = props;
  const id = useId();
  return (
    <div className="typed-field names">
      <span id={id}>{label}</span>
      <fieldset className="names-box" aria-labelledby={id} aria-describedby={`${id}-problem`}>
        <Boxes choices={choices} on={on} change={change} name={id} />
      </fieldset>
      <span className="says">{says}</span>
      <span id={`${id}-problem`} className="problem">
        {problem === "" ? "" : `▲ Error: ${problem}`}
      </span>
    </div>
  );
}

/** The editor of a cell: arrows go from box to box, Space ticks, Enter and Tab take all, Escape brings back what stood. */
export function NamesEditor(props: {
  cell: GridCell;
  label: string;
  describedBy: string;
  take: (text: string, after: After) => boolean;
  back: () => void;
}) {
  const { cell, label, describedBy, take, back } = props;
  const [on, setOn] = useState(() => namesIn(cell.full));
  const box = useRef<HTMLFieldSetElement>(null);
  const done = useRef(false);
  useEffect(() => {
    box.current?.querySelector("input")?.focus();
    box.current?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }, []);
  const finish = (after: After) => {
    done.current = true;
    if (!take(on.join("; "), after)) done.current = false;
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    event.stopPropagation();
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const boxes = [...(box.current?.querySelectorAll("input") ?? [])];
    if (by !== undefined) boxes[boxes.indexOf(event.target as HTMLInputElement) + by]?.focus();
    else if (event.key === "Enter") finish("down");
    else if (event.key === "Tab") finish(event.shiftKey ? "before" : "next");
    else if (event.key === "Escape") {
      done.current = true;
      back();
    } else return;
    event.preventDefault();
  };
  return (
    <fieldset
      ref={box}
      className="names-box in-cell"
      aria-label={label}
      aria-describedby={describedBy}
      tabIndex={cell.choices.length === 0 ? 0 : undefined}
      onKeyDown={onKeyDown}
      onBlur={(event) => {
        if (!done.current && !event.currentTarget.contains(event.relatedTarget)) finish("stay");
      }}
    >
      <Boxes choices={cell.choices} on={on} change={setOn} name={label} />
    </fieldset>
  );
}
