// The few answers that a copy of a set needs: its name, its id, and how far to the left it lies.
import { useId, useState } from "react";
import type { Plan } from "../../../app/index.ts";
import { besideOf } from "../../../plan/index.ts";
import { printFull, readTyped, type System, signOf, unitFor } from "../../../units/index.ts";
import { freeId } from "./useSets.ts";

/** Asks for them; `done` is told null when nothing is to be copied. */
export function CopyForm({
  plan,
  from,
  system,
  done,
}: {
  plan: Plan;
  from: string;
  system: System;
  done: (copy: { id: string; name: string; aside: number } | null) => void;
}) {
  const it = useId();
  const unit = unitFor("length", system);
  const [id, setId] = useState(freeId(plan));
  const [name, setName] = useState(`Set ${plan.sets.length + 1}`);
  const [aside, setAside] = useState(printFull(besideOf(plan, from), "m", unit));
  const read = readTyped(aside, "m", unit);
  const taken = plan.sets.some((set) => set.id === id.trim());
  const wrong =
    id.trim() === ""
      ? "Give the copy an id."
      : taken
        ? `A set "${id.trim()}" is there already: give another id.`
        : read.ok
          ? ""
          : read.problem;
  const source = plan.sets.find((set) => set.id === from);
  return (
    <form
      className="copy-form"
      aria-label={`Copy ${source?.name || from}`}
      onSubmit={(event) => {
        event.preventDefault();
        if (wrong === "" && read.ok) done({ id: id.trim(), name: name.trim(), aside: read.value });
      }}
    >
      <strong>{`Copy ${source?.name || from} to`}</strong>
      <label htmlFor={`${it}-name`}>Name</label>
      <input
        id={`${it}-name`}
        ref={(field) => {
          if (field?.dataset.seen === undefined) field?.focus();
          if (field !== null) field.dataset.seen = "";
        }}
        value={name}
        autoComplete="off"
        onChange={(event) => setName(event.target.value)}
      />
      <label htmlFor={`${it}-id`}>Id</label>
      <input id={`${it}-id`} value={id} autoComplete="off" onChange={(event) => setId(event.target.value)} />
      <label htmlFor={`${it}-aside`}>{`To the left of it, ${signOf("length", system)}`}</label>
      <input
        id={`${it}-aside`}
        className="number"
        value={aside}
        autoComplete="off"
        onChange={(event) => setAside(event.target.value)}
      />
      <button type="submit" className="strong" disabled={wrong !== ""}>
        Make the copy
      </button>
      <button type="button" onClick={() => done(null)}>
        Leave it
      </button>
      <span role="status">{wrong === "" ? "All its values are listed as not confirmed." : `▲ ${wrong}`}</span>
    </form>
  );
}
