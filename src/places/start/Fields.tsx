// Fields of the set-up: a number with its unit, and rows of a chart; what was typed stays, and what is wrong with it is said.
import { useId } from "react";
import { type System, signOf } from "../../units/index.ts";
import type { Question } from "./questions.ts";

/** One question. `problem` is shown only when `told`: an empty form is no list of errors. */
export function AnswerField({
  q,
  text,
  system,
  problem,
  told,
  type,
}: {
  q: Question;
  text: string;
  system: System;
  problem: string;
  told: boolean;
  type: (text: string) => void;
}) {
  const id = useId();
  const wrong = told && problem !== "";
  const unit = q.shown === null ? q.sign : signOf(q.shown, system);
  return (
    <div className="answer">
      <label htmlFor={id}>{q.label}</label>
      <span className="answer-box">
        <input
          id={id}
          type="text"
          autoComplete="off"
          className="number"
          data-at={q.at}
          value={text}
          aria-invalid={wrong}
          aria-describedby={`${id}-says`}
          onChange={(event) => type(event.target.value)}
        />
        <span className="unit">{unit}</span>
      </span>
      <span id={`${id}-says`} className={wrong ? "says wrong" : "says quiet"}>
        {wrong ? `▲ ${problem}` : (q.says ?? "")}
      </span>
    </div>
  );
}

/** Rows of a crane's chart for its boom. */
export function RowsField({
  at,
  label,
  text,
  system,
  problem,
  told,
  type,
}: {
  at: string;
  label: string;
  text: string;
  system: System;
  problem: string;
  told: boolean;
  type: (text: string) => void;
}) {
  const id = useId();
  const wrong = told && problem !== "";
  return (
    <div className="answer rows">
      <label htmlFor={id}>{label}</label>
      <textarea
        id={id}
        rows={4}
        data-at={at}
        value={text}
        spellCheck={false}
        aria-invalid={wrong}
        aria-describedby={`${id}-says`}
        onChange={(event) => type(event.target.value)}
      />
      <span id={`${id}-says`} className={wrong ? "says wrong" : "says quiet"}>
        {wrong
          ? `▲ ${problem}`
          : `A row a line: radius (${signOf("length", system)}), rating (${signOf("mass", system)}). From the maker's chart, for this boom; the least and the greatest radius as well.`}
      </span>
    </div>
  );
}
