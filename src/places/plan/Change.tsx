// Old against new, over the scene: loads of the cursor's step before and after the last change, findings gained and lost.
import { useMemo, useState } from "react";
import {
  type Change as Changed,
  compareResults,
  type Finding,
  type LoadChange,
  olderOf,
} from "../../app/index.ts";
import { printed, type System, signOf } from "../../units/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";

/** Changes below this part of a kN are none to anybody, N. */
const SEEN = 50;

const differs = ({ before, after }: LoadChange["most"]): boolean =>
  Number.isNaN(before) !== Number.isNaN(after) || Math.abs(after - before) > SEEN;

/** The one line: the load that changes most in the step, and how many findings come and go. */
function headOf({ known, loads, gained, lost }: Changed, units: System): string {
  const by = ({ most }: LoadChange) => Math.abs((most.after || 0) - (most.before || 0));
  const [first] = loads.filter(({ most }) => differs(most)).sort((a, b) => by(b) - by(a));
  const load = (value: number) => printed(value, "load", units).number;
  const moved = !known
    ? "this step was not there"
    : first === undefined
      ? "no load of this step differs"
      : `${first.support} ${load(first.most.before)} → ${load(first.most.after)} ${signOf("load", units)}`;
  return `${moved}; findings: ${gained.length} more, ${lost.length} gone`;
}

function List({ words, findings }: { words: string; findings: readonly Finding[] }) {
  const app = useApp();
  if (findings.length === 0) return null;
  return (
    <>
      <h3>{words}</h3>
      <ul>
        {findings.map((finding) => (
          <li key={finding.id}>
            {words === "Gone" ? (
              <s>{`${finding.level}: ${finding.words}`}</s>
            ) : (
              <button type="button" className="plain" onClick={() => app.chooseFinding(finding)}>
                {`${finding.level}: ${finding.words}`}
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Shown while the result before the last change is held. */
export function Change() {
  const app = useApp();
  const { before, result, cursor, document, answered } = useSome(
    "before",
    "result",
    "cursor",
    "document",
    "answered",
  );
  const units = useIt((state) => state.view.units);
  const [open, setOpen] = useState(false);
  const { set: older, findings } = olderOf({ document, result, cursor, answered });
  const { set: atSet, step } = cursor;
  const change = useMemo(
    () =>
      before === null || result === null || older
        ? null
        : compareResults(before, result, { set: atSet, step }),
    [before, result, older, atSet, step],
  );
  if (before === null) return null;
  const load = (value: number) => printed(value, "load", units).number;
  return (
    <section className="change" aria-label="The last change, old against new">
      <p>
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)} disabled={change === null}>
          {change === null ? "The change is being solved…" : headOf(change, units)}
        </button>
        <button type="button" aria-label="Put away what was before (Escape)" onClick={app.putBeforeAway}>
          <kbd>Esc</kbd>
        </button>
      </p>
      {open && change !== null && (
        <div className="change-all">
          <table>
            <caption>
              Shares in step {step + 1} <small>{signOf("load", units)}</small>
            </caption>
            <thead>
              <tr>
                <th scope="col">Support</th>
                <th scope="col">most, before</th>
                <th scope="col">now</th>
                <th scope="col">at its end, before</th>
                <th scope="col">now</th>
              </tr>
            </thead>
            <tbody>
              {change.loads.map(({ support, most, atEnd }) => (
                <tr key={support} className={differs(most) || differs(atEnd) ? "differs" : ""}>
                  <th scope="row">{support}</th>
                  <td>{load(most.before)}</td>
                  <td>{load(most.after)}</td>
                  <td>{load(atEnd.before)}</td>
                  <td>{load(atEnd.after)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {findings && <p className="quiet">Some checks are still being made anew.</p>}
          <List words="More" findings={change.gained} />
          <List words="Gone" findings={change.lost} />
        </div>
      )}
    </section>
  );
}
