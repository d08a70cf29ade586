// Rules and limits: ready-made rules switched on and off, and every limit that the checks know with what governs it.
import { useMemo, useState } from "react";
import {
  isLooser,
  type LimitState,
  limitStates,
  limitTable,
  type ReadyRule,
  readyRules,
} from "../../../../checks/index.ts";
import type { Plan } from "../../../../plan/index.ts";
import type { DataGround, OwnFormProps } from "../table.ts";
import { LimitEditor } from "./LimitEditor.tsx";
import { limitWords, ruleSwitched, unitProblem } from "./limitEdits.ts";
import { chosenWords } from "./words.ts";
import "./limits.css";

/** What a rule sets, in words. */
function setsWords({ limit, value, also = [] }: ReadyRule, ground: DataGround): string {
  return [{ limit, value }, ...also]
    .map((one) => `${one.limit} ${limitWords(limitTable[one.limit], one.value, ground.system)}`)
    .join("; ");
}

/** The limits of a rule that it governs now. */
function governedBy(id: string, states: readonly LimitState[]): string[] {
  return states.filter(({ governs }) => governs?.chosenBy === `rule ${id}`).map(({ name }) => name);
}

function Rules({ ground, states }: { ground: DataGround; states: readonly LimitState[] }) {
  const { plan } = ground;
  return (
    <section aria-label="Ready-made rules" className="rules-known">
      <h3>Ready-made rules</h3>
      <p className="quiet">
        Published rules and common practices that the program knows. Of all that limit the same thing the
        strictest governs.
      </p>
      <ul>
        {Object.entries(readyRules).map(([id, rule]) => {
          const used = plan.limits.use.includes(id);
          const governs = governedBy(id, states);
          return (
            <li key={id}>
              <label>
                <input type="checkbox" checked={used} onChange={() => ground.edit(ruleSwitched(plan, id))} />
                <span>
                  <b>{id}</b>
                  {` ${setsWords(rule, ground)}`}
                  {used && (
                    <span className="strong">
                      {governs.length > 0 ? ", governs now" : ", in use; something stricter governs"}
                    </span>
                  )}
                </span>
              </label>
              {rule.means !== undefined && <p>{`Beyond it: ${rule.means}.`}</p>}
              <p className="quiet">{rule.source}</p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Limit(props: { ground: DataGround; state: LimitState; open: boolean; toggle: () => void }) {
  const { ground, state, open, toggle } = props;
  const { name, governs, override, without } = state;
  const wrongUnit = unitProblem(ground.plan, state);
  const looser = override !== null && without !== null && isLooser(state, override.value, without.value);
  return (
    <li className={open ? "limit opened" : "limit"}>
      <button type="button" className="plain limit-line" aria-expanded={open} onClick={toggle}>
        <span className="limit-name">{name}</span>
        <b className={governs === null ? "quiet" : ""}>
          {governs === null ? "not set" : limitWords(state, governs.value, ground.system)}
        </b>
        <span>
          {governs !== null && chosenWords(governs.chosenBy)}
          {override !== null && (
            <span className="strong">
              {looser ? ", an override, looser than the rules" : ", an override"}
            </span>
          )}
        </span>
      </button>
      {wrongUnit !== "" && <p className="problem">{`▲ Error: ${wrongUnit}`}</p>}
      {open && <LimitEditor ground={ground} state={state} />}
    </li>
  );
}

const shownBy = {
  all: "all limits",
  chosen: "those that somebody chose",
  default: "those that stand by default",
  none: "those that are not set",
} as const;
type ShownBy = keyof typeof shownBy;

function isShown({ governs }: LimitState, by: ShownBy): boolean {
  if (by === "all") return true;
  if (by === "none") return governs === null;
  return governs !== null && (governs.chosenBy === "default") === (by === "default");
}

function Limits({ ground, states }: { ground: DataGround; states: readonly LimitState[] }) {
  const [words, setWords] = useState("");
  const [by, setBy] = useState<ShownBy>("all");
  const [open, setOpen] = useState("");
  const shown = states.filter(
    (state) => isShown(state, by) && `${state.area} ${state.name}`.includes(words.trim().toLowerCase()),
  );
  const areas = [...new Set(shown.map(({ area }) => area))];
  return (
    <section aria-label="Every limit" className="limits-known">
      <h3>Every limit</h3>
      <div className="limit-filter">
        <label className="choice">
          <span>Show</span>
          <select value={by} onChange={(event) => setBy(event.target.value as ShownBy)}>
            {Object.entries(shownBy).map(([key, says]) => (
              <option key={key} value={key}>
                {says}
              </option>
            ))}
          </select>
        </label>
        <label className="choice">
          <span>with the words</span>
          <input type="search" value={words} onChange={(event) => setWords(event.target.value)} />
        </label>
        <span role="status" className="quiet">{`${shown.length} of ${states.length} limits`}</span>
      </div>
      {areas.map((area) => (
        <section key={area} aria-label={`Limits on ${area}`}>
          <h4>{area}</h4>
          <ul>
            {shown
              .filter((state) => state.area === area)
              .map((state) => (
                <Limit
                  key={state.name}
                  ground={ground}
                  state={state}
                  open={open === state.name}
                  toggle={() => setOpen(open === state.name ? "" : state.name)}
                />
              ))}
          </ul>
        </section>
      ))}
    </section>
  );
}

/** The limits of a draft without those whose value is still to be typed. */
function typedOnly({ limits }: Plan): Plan {
  const typed = ({ value }: { value: number }) => Number.isFinite(value);
  const rules = limits.rules.filter(typed);
  return { limits: { use: limits.use, rules, overrides: limits.overrides.filter(typed) } } as Plan;
}

/** The form of the part 'limits', above its tables. */
export function LimitsForm({ ground }: OwnFormProps) {
  const { plan } = ground;
  const states = useMemo(() => limitStates(typedOnly(plan)), [plan]);
  return (
    <div className="limits-form">
      <Rules ground={ground} states={states} />
      <Limits ground={ground} states={states} />
    </div>
  );
}
