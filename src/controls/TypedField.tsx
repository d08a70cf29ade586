// A field that is typed: its label, unit, and the sentence beneath that says why a text was refused. What was typed stays.
import { useEffect, useId, useRef, useState } from "react";
import type { CellRead } from "./gridModel.ts";

export interface TypedFieldProps {
  label: string;
  /** Sign of the unit beside the field; "" for none. */
  unit: string;
  /** What stands there now, in full. */
  text: string;
  read: (text: string) => CellRead;
  commit: (value: unknown) => void;
  /** What is wrong with the value that stands there; "" for nothing. */
  problem?: string;
  /** What the field is about. */
  says?: string;
  /** Shown while nothing is set. */
  whenEmpty?: string;
  number?: boolean;
  multiline?: boolean;
}

/** Commits once, on Enter, Tab or when the focus leaves; Escape brings back what stood there. */
export function TypedField(props: TypedFieldProps) {
  const { label, unit, text, read, commit, problem = "", says = "", whenEmpty, number, multiline } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const [refusal, setRefusal] = useState("");
  const id = useId();
  const committed = useRef<string | null>(null);
  // What stands there was changed from elsewhere, as by undo: a text that was taken is forgotten.
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is the change of the text that matters.
  useEffect(() => {
    committed.current = null;
  }, [text]);
  const take = () => {
    if (typed === null || typed === committed.current) return;
    if (typed === text) {
      setTyped(null);
      setRefusal("");
      return;
    }
    const got = read(typed);
    if (!got.ok) {
      setRefusal(got.problem);
      return;
    }
    committed.current = typed;
    setTyped(null);
    setRefusal("");
    commit(got.value);
  };
  const words = refusal || problem;
  const shared = {
    id,
    value: typed ?? text,
    placeholder: whenEmpty,
    "aria-invalid": words !== "",
    "aria-describedby": `${id}-says ${id}-problem`,
    onBlur: take,
    onChange: (event: { target: { value: string } }) => {
      committed.current = null;
      setTyped(event.target.value);
    },
  };
  const back = () => {
    setTyped(null);
    setRefusal("");
  };
  return (
    <div className="typed-field">
      <label htmlFor={id}>{label}</label>
      <span className="typed-box">
        {multiline ? (
          <textarea
            {...shared}
            rows={2}
            onKeyDown={(event) => {
              if (event.key !== "Escape" || typed === null) return;
              back();
              event.preventDefault();
            }}
          />
        ) : (
          <input
            {...shared}
            type="text"
            autoComplete="off"
            className={number ? "number" : ""}
            onKeyDown={(event) => {
              if (event.key === "Enter") take();
              else if (event.key === "Escape" && typed !== null) back();
              else return;
              event.preventDefault();
            }}
          />
        )}
        {unit !== "" && (
          <span className="unit">
            <span className="unseen"> in </span>
            {unit}
          </span>
        )}
      </span>
      <span id={`${id}-says`} className="says">
        {says}
      </span>
      <span id={`${id}-problem`} className="problem" role={refusal === "" ? undefined : "alert"}>
        {words !== "" && `▲ ${refusal === "" ? "Error" : "Not taken"}: ${words}`}
      </span>
    </div>
  );
}
