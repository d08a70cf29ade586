// A group of plan data as a form: each field with its words, unit and description; what is inside opens below.
import { useState } from "react";
import { NamesField, TypedField } from "../../../controls/index.ts";
import { blankAt, type Field, fieldOf, optionAt, type PlanPath, valueAt } from "../../../plan/index.ts";
import { cellsIn, type DataCell } from "./cells.ts";
import { labelOf, withTyped } from "./changes.ts";
import { choicesOf, type DataGround, namesFor, problemAt } from "./table.ts";
import { emptyText, fullText, openText, readField, unitOf } from "./typed.ts";

/** The whole value with another form of an either: what both forms have is kept. */
function inOtherForm(ground: DataGround, path: PlanPath, option: string): unknown {
  const before = valueAt(ground.plan, path) as Record<string, unknown>;
  const blank = blankAt(path, ground.plan, option) as Record<string, unknown>;
  const shared = Object.entries(before ?? {}).filter(
    ([key]) => key !== "do" && (Object.hasOwn(blank, key) || (key !== "until" && fieldIsCommon(key))),
  );
  return { ...blank, ...Object.fromEntries(shared), ...("do" in blank ? { do: blank.do } : {}) };
}

const commonKeys = [
  "title",
  "notes",
  "who",
  "voice",
  "channel",
  "see",
  "carries",
  "brakes",
  "windLimit_m_per_s",
  "exclusion",
  "minutes",
  "wayBack",
];
const fieldIsCommon = (key: string) => commonKeys.includes(key);

/** A list to choose from, in the form of a field. */
function Chosen(props: {
  label: string;
  value: string;
  choices: readonly string[];
  says: string;
  problem: string;
  empty: string;
  choose: (value: string) => void;
}) {
  const { label, value, choices, says, problem, empty, choose } = props;
  const all = value === "" || choices.includes(value) ? choices : [value, ...choices];
  return (
    <div className="typed-field">
      <label>
        <span>{label}</span>
        <span className="typed-box">
          <select
            value={value}
            aria-invalid={problem !== ""}
            onChange={(event) => choose(event.target.value)}
          >
            <option value="">{`– ${empty} –`}</option>
            {all.map((one) => (
              <option key={one} value={one}>
                {one}
              </option>
            ))}
          </select>
        </span>
      </label>
      <span className="says">{says}</span>
      <span className="problem">{problem === "" ? "" : `▲ Error: ${problem}`}</span>
    </div>
  );
}

/** One field of a form; with a button, and Ctrl+Enter, that confirms its value where that is not confirmed. */
function FormField({ ground, cell }: { ground: DataGround; cell: DataCell }) {
  const { path, words } = cell;
  const [said, setSaid] = useState("");
  const doubted = ground.doubt(path) !== "";
  const confirm = () => setSaid(ground.confirm([path], partAround(path, ground)));
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the key comes from the field inside.
    <div
      className="form-field"
      onKeyDown={(event) => {
        if (!doubted || event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
        event.preventDefault();
        confirm();
      }}
    >
      <FieldInput ground={ground} cell={cell} />
      {doubted && (
        <button
          type="button"
          className="doubt"
          title="It is right as it stands (Ctrl+Enter)"
          onClick={confirm}
        >
          ◇ Confirm<span className="unseen">{` ${words}`}</span>
        </button>
      )}
      {doubted && said !== "" && (
        <span className="problem" role="alert">
          {`▲ Not done: ${said}`}
        </span>
      )}
    </div>
  );
}

/** The words of the group around a field, for the history. */
function partAround(path: PlanPath, { plan }: DataGround): string {
  return (fieldOf(path.slice(0, -1), plan)?.words ?? "the plan").toLowerCase();
}

/** What is typed or chosen of one field. */
function FieldInput({ ground, cell }: { ground: DataGround; cell: DataCell }) {
  const { plan, errors, system } = ground;
  const { path, field, words, opens } = cell;
  const value = valueAt(plan, path);
  const problem = problemAt(errors, path, opens || field.is === "list");
  const doubt = ground.doubt(path);
  const says = doubt === "" ? field.says : `◇ ${doubt} ${field.says}`;
  const commit = (next: unknown) =>
    ground.edit({
      label: labelOf(plan, field, words, next, system),
      change: (draft) => withTyped(draft, path, next),
    });
  if (opens) {
    const set = value !== undefined && value !== null;
    return (
      <div className="typed-field">
        <span>{words}</span>
        <span className="typed-box">
          <button type="button" onClick={() => ground.open(path)}>
            {`${openText(field, plan)} ▸`}
          </button>
          {set && field.optional && (
            <button type="button" onClick={() => commit(undefined)} aria-label={`Take ${words} away`}>
              Take away
            </button>
          )}
        </span>
        <span className="says">{says}</span>
        <span className="problem">{problem === "" ? "" : `▲ Error: ${problem}`}</span>
      </div>
    );
  }
  const names = namesFor(field, plan);
  if (names !== null)
    return (
      <NamesField
        label={words}
        choices={names}
        on={(value ?? []) as string[]}
        change={(on) => commit(on.length === 0 && field.optional ? undefined : on)}
        says={says}
        problem={problem}
      />
    );
  const choices = choicesOf(field, plan);
  if (choices !== null)
    return (
      <Chosen
        label={words}
        value={fullText(field, value, system)}
        choices={choices}
        says={says}
        problem={problem}
        empty={emptyText(field, value) || "not set"}
        choose={(text) => {
          const got = readField(field, plan, text, system);
          if (got.ok) commit(got.value);
        }}
      />
    );
  if (field.is === "fixed")
    return (
      <div className="typed-field">
        <span>{words}</span>
        <span>{String(value)}</span>
        <span className="says">{says}</span>
      </div>
    );
  return (
    <TypedField
      label={words}
      unit={unitOf(field, system)}
      text={fullText(field, value, system)}
      read={(text) => readField(field, plan, text, system)}
      commit={commit}
      problem={problem}
      says={field.is === "list" ? `Several are parted by semicolons. ${says}` : says}
      whenEmpty={emptyText(field, value)}
      number={field.is === "number" || field.is === "whole"}
      multiline={field.is === "text" && (field.most ?? 0) > 1000 && String(value ?? "").length > 60}
    />
  );
}

/** A group that is not set: what that means, and the button that sets it. */
function NotSet({ ground, field }: { ground: DataGround; field: Field }) {
  const options = field.is === "either" ? field.choices : [""];
  return (
    <div className="not-set">
      <p>{`Not set. ${field.says}`}</p>
      {options.map((option) => (
        <button
          key={option}
          type="button"
          onClick={() =>
            ground.edit({
              label: labelOf(ground.plan, field, field.words, {}, ground.system),
              change: (draft) => withTyped(draft, field.path, blankAt(field.path, draft, option)),
            })
          }
        >
          {option === "" ? `Set ${field.words}` : `Set ${field.words}: ${option}`}
        </button>
      ))}
    </div>
  );
}

/** The form of a group or an either. `singles`: only what is typed here. */
export function DataForm(props: { ground: DataGround; path: PlanPath; singles?: boolean }) {
  const { ground, path, singles = false } = props;
  const { plan } = ground;
  const field = fieldOf(path, plan);
  if (field === null) return null;
  if (path.length > 0 && valueAt(plan, path) === undefined) return <NotSet ground={ground} field={field} />;
  const cells = cellsIn(path, plan).filter((cell) => !singles || !cell.opens);
  const problem = problemAt(ground.errors, path, false);
  return (
    <div className="data-form">
      {problem !== "" && <p className="problem">{`▲ Error: ${problem}`}</p>}
      {field.is === "either" && (
        <Chosen
          label={path[path.length - 2] === "steps" ? "action" : "kind"}
          value={optionAt(path, plan)}
          choices={field.choices}
          says=""
          problem=""
          empty="not set"
          choose={(option) => {
            if (option === "") return;
            const value = inOtherForm(ground, path, option);
            ground.edit({
              label: `${field.words}: ${option}`,
              change: (draft) => withTyped(draft, path, value),
            });
          }}
        />
      )}
      {cells
        .filter((cell) => !(field.is === "either" && cell.field.is === "fixed"))
        .map((cell) => (
          <FormField key={cell.path.join(".")} ground={ground} cell={cell} />
        ))}
    </div>
  );
}
