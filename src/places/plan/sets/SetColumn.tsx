// The head of a set's column: its name, how much of it is not confirmed, and what can be done with it.
import { useState } from "react";
import type { PlanSet } from "../../../app/index.ts";

/** Heads a column. Nothing can be confirmed while nobody has said who confirms. */
export function SetColumn({
  set,
  open,
  canConfirm,
  alone,
  busy,
  confirmAll,
  copy,
  propose,
  remove,
}: {
  set: PlanSet;
  open: number;
  canConfirm: boolean;
  alone: boolean;
  busy: boolean;
  confirmAll: () => void;
  copy: () => void;
  propose: () => void;
  remove: () => void;
}) {
  const [asked, setAsked] = useState(false);
  const name = set.name || set.id;
  return (
    <th scope="col">
      <span className="set-name">{name}</span>
      <span className={open > 0 ? "doubt" : "quiet"}>
        {open > 0 ? `◇ ${open} not confirmed` : "all confirmed"}
      </span>
      <span className="set-does">
        <button type="button" disabled={open === 0 || !canConfirm || busy} onClick={confirmAll}>
          Confirm all<span className="unseen">{` of ${name}`}</span>
        </button>
        <button type="button" disabled={busy} onClick={copy}>
          Copy<span className="unseen">{` ${name}`}</span>
        </button>
        <button
          type="button"
          disabled={busy}
          onClick={propose}
          title="Propose positions and steps of this set anew"
        >
          Propose anew<span className="unseen">{` for ${name}`}</span>
        </button>
        {asked ? (
          <button
            type="button"
            ref={(it) => it?.focus()}
            onBlur={() => setAsked(false)}
            onClick={() => {
              setAsked(false);
              remove();
            }}
          >
            {`Really delete ${name}`}
          </button>
        ) : (
          <button type="button" disabled={alone || busy} onClick={() => setAsked(true)}>
            Delete<span className="unseen">{` ${name}`}</span>
          </button>
        )}
      </span>
    </th>
  );
}
