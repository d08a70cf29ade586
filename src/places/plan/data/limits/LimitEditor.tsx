// One limit opened: all that is said of it with the one that governs, and the form that tightens or overrides it.
import { useState } from "react";
import type { Limit, LimitState } from "../../../../checks/index.ts";
import { QuantityField, TypedField } from "../../../../controls/index.ts";
import { read } from "../../../../units/index.ts";
import type { DataGround } from "../table.ts";
import {
  limitSet,
  limitTaken,
  limitWords,
  needsOverride,
  problemOf,
  quantityOf,
  restOf,
  unitSign,
  valueWords,
} from "./limitEdits.ts";
import { chosenWords } from "./words.ts";

/** One thing that is said of a limit. */
function Said(props: {
  state: LimitState;
  limit: Limit;
  what: string;
  ground: DataGround;
  take?: () => void;
}) {
  const { state, limit, what, ground, take } = props;
  const { governs } = state;
  const isIt =
    governs !== null &&
    governs.value === limit.value &&
    governs.chosenBy === limit.chosenBy &&
    governs.source === limit.source;
  return (
    <li>
      <span>
        <b>{limitWords(state, limit.value, ground.system)}</b>
        {`, ${limit.chosenBy.startsWith("rule ") ? "" : `${what}, `}${chosenWords(limit.chosenBy)}`}
        {isIt && <span className="strong">: governs</span>}
      </span>
      <span className="quiet">{limit.source}</span>
      {take !== undefined && (
        <button type="button" onClick={take}>
          {`Take the ${what} away`}
        </button>
      )}
    </li>
  );
}

/** All that is said of the limit. */
function All({ ground, state }: { ground: DataGround; state: LimitState }) {
  const { plan } = ground;
  const taken = (list: "rules" | "overrides") => () => {
    const edit = limitTaken(plan, state.name, list);
    if (edit !== null) ground.edit(edit);
  };
  const { standing, chosen, override } = state;
  return (
    <ul className="limit-said">
      {override !== null && (
        <Said state={state} limit={override} what="override" ground={ground} take={taken("overrides")} />
      )}
      {chosen.map((limit) =>
        limit.chosenBy.startsWith("rule ") ? (
          <Said key={limit.chosenBy} state={state} limit={limit} what="ready-made rule" ground={ground} />
        ) : (
          <Said
            key={limit.chosenBy}
            state={state}
            limit={limit}
            what="own limit"
            ground={ground}
            take={taken("rules")}
          />
        ),
      )}
      {standing === null ? (
        <li className="quiet">No value stands by itself: while nobody sets one, nothing is limited by it.</li>
      ) : (
        <Said state={state} limit={standing} what="standing value" ground={ground} />
      )}
    </ul>
  );
}

/** A limit in a unit of its own, or a plain number. */
function readPlain(text: string) {
  const got = read(text, "ratio");
  return got.ok ? { ok: true as const, value: got.value } : got;
}

function ValueField(props: {
  ground: DataGround;
  state: LimitState;
  value: number | null;
  set: (value: number) => void;
}) {
  const { ground, state, value, set } = props;
  const quantity = quantityOf(state);
  const says = state.least ? "Higher is stricter." : "Lower is stricter.";
  if (quantity !== null)
    return (
      <QuantityField
        label="value"
        {...quantity}
        system={ground.system}
        value={value}
        commit={set}
        says={says}
      />
    );
  return (
    <TypedField
      label="value"
      number
      unit={unitSign(state, ground.system)}
      text={value === null ? "" : String(value)}
      read={readPlain}
      commit={(got) => set(got as number)}
      says={says}
    />
  );
}

const text = (typed: string) => ({ ok: true as const, value: typed });

/** What is typed of a limit at first. */
const nothing: { value: number | null; source: string; chosenBy: string } = {
  value: null,
  source: "",
  chosenBy: "",
};

/** Sets the limit anew. What is looser than all else that limits is set as an override, and the button says so. */
function SetIt({ ground, state }: { ground: DataGround; state: LimitState }) {
  const { plan, system } = ground;
  const [own, setOwn] = useState(nothing);
  const [said, setSaid] = useState("");
  const change = (part: Partial<typeof own>) => {
    setOwn((before) => ({ ...before, ...part }));
    setSaid("");
  };
  const looser = own.value !== null && needsOverride(plan, state.name, own.value);
  const rest = restOf(plan, state.name).governs;
  const press = () => {
    const problem = problemOf(own);
    setSaid(problem);
    if (problem !== "" || own.value === null) return;
    ground.edit(limitSet(plan, state.name, { ...own, value: own.value }, system));
    setOwn(nothing);
  };
  return (
    <fieldset>
      <legend>{`Tighten or override ${state.name}`}</legend>
      <ValueField ground={ground} state={state} value={own.value} set={(value) => change({ value })} />
      <TypedField
        label="source"
        unit=""
        text={own.source}
        read={text}
        commit={(got) => change({ source: got as string })}
        says="Document and clause, or where else the value is from."
      />
      <TypedField
        label="chosen by"
        unit=""
        text={own.chosenBy}
        read={text}
        commit={(got) => change({ chosenBy: got as string })}
        says="Who answers for it."
      />
      <p className="limit-words">
        {own.value !== null &&
          rest !== null &&
          (looser
            ? `${valueWords(state, own.value, system)} is looser than ${valueWords(state, rest.value, system)} (${chosenWords(rest.chosenBy)}). It can only stand as an override, for which somebody answers by name.`
            : `As strict as ${valueWords(state, rest.value, system)} (${chosenWords(rest.chosenBy)}), or stricter: a limit of the plan's own.`)}
        {own.value !== null &&
          !looser &&
          state.override !== null &&
          " The override still governs until it is taken away."}
      </p>
      <p className="limit-set">
        <button type="button" className="strong" onClick={press}>
          {looser ? "Override the limit" : "Set the limit"}
        </button>
        <span className="problem" role="alert">
          {said !== "" && `▲ Not set: ${said}`}
        </span>
      </p>
    </fieldset>
  );
}

/** The opened limit. */
export function LimitEditor({ ground, state }: { ground: DataGround; state: LimitState }) {
  return (
    <div className="limit-editor">
      <All ground={ground} state={state} />
      <SetIt ground={ground} state={state} />
    </div>
  );
}
