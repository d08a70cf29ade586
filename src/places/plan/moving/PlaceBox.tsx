// The small box beside a chosen thing: its numbers to be typed, what is wrong with them, and what the cranes make of it.
import { olderOf } from "../../../app/index.ts";
import { QuantityField } from "../../../controls/index.ts";
import { fieldOf, printPath } from "../../../plan/index.ts";
import { type Handle, lengthWords, type Standing } from "../../../scene/index.ts";
import { print, type System } from "../../../units/index.ts";
import { useIt, useSome } from "../../appContext.ts";
import { craneUses } from "./craneUses.ts";
import type { Move } from "./useMove.ts";

/** Use of the cranes before and now. */
function Uses({ units }: { units: System }) {
  const { result, before, cursor, document, answered } = useSome(
    "result",
    "before",
    "cursor",
    "document",
    "answered",
  );
  const { set: older } = olderOf({ document, result, cursor, answered });
  const uses = result === null ? [] : craneUses(result, before?.result ?? null, cursor);
  if (uses.length === 0) return <p className="quiet">No limit of a crane applies in this step.</p>;
  return (
    <ul className={older ? "uses before" : "uses"} aria-label="Highest use in this step">
      {uses.map(({ subject, limitWords, before: was, now }) => (
        <li key={subject} title={limitWords}>
          {subject}{" "}
          <span>
            {was !== null && !older && `${print(was, "percent", units)} → `}
            <strong>{print(now, "percent", units)}</strong>
          </span>
          {older && " (before the last change)"}
        </li>
      ))}
    </ul>
  );
}

/** Why the draft cannot be solved: errors at this thing first. */
function Problem({ handle }: { handle: Handle }) {
  const errors = useIt((state) => state.document?.errors);
  if (errors === undefined || errors.length === 0) return null;
  const owner = printPath(handle.thing.along.slice(0, -1));
  const error = errors.find(({ path }) => path.startsWith(owner)) ?? errors[0];
  return (
    <p className="place-problem" role="alert">
      {`▲ Error: ${error.path}: found ${error.found}; allowed: ${error.allowed}. ${error.mend} What is drawn and solved is the last plan without errors.`}
    </p>
  );
}

export interface PlaceBoxProps {
  handle: Handle;
  move: Move | null;
  units: System;
  style: { left: number; top: number; width: number };
  commit: (to: Standing) => void;
  back: () => void;
}

/** The box. It is out of the pointer's way while something is dragged. */
export function PlaceBox({ handle, move, units, style, commit, back }: PlaceBoxProps) {
  const { thing, standing, fixed, since } = handle;
  const field = (which: "along" | "across", label: string) => {
    const value = standing[which];
    const path = thing[which];
    if (value === null || path === null) return null;
    const at = fieldOf(path);
    return (
      <QuantityField
        label={label}
        value={value}
        keptIn="m"
        shown="length"
        system={units}
        least={at?.least ?? null}
        most={at?.most ?? null}
        commit={(typed) => commit({ ...standing, [which]: typed })}
      />
    );
  };
  const by =
    move === null
      ? ""
      : [move.to.along - move.from.along, (move.to.across ?? 0) - (move.from.across ?? 0)]
          .map((one) => `${one < 0 ? "−" : "+"}${lengthWords(Math.abs(one), units)}`)
          .slice(0, move.to.across === null ? 1 : 2)
          .join(", ");
  return (
    <section
      className={move === null ? "place-box" : "place-box under-way"}
      style={style}
      aria-label={`Place of ${thing.name}`}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || event.defaultPrevented) return;
        event.preventDefault();
        back();
      }}
    >
      <h3>
        {thing.name}
        <small>{by === "" ? "" : `${by}${move?.at ? `, at ${move.at}` : ""}`}</small>
      </h3>
      {fixed === "" ? (
        <div className="place-fields">
          {field("along", thing.alongWords)}
          {field("across", "y, to the left")}
        </div>
      ) : (
        <p>{`${fixed}: go to an earlier step to move it.`}</p>
      )}
      {since !== "" && <p className="quiet">{since}</p>}
      <Problem handle={handle} />
      <Uses units={units} />
    </section>
  );
}
