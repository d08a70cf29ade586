// The list of findings and of open items: choosing one goes where and when it is worst.
import { type KeyboardEvent, memo, useEffect, useMemo, useRef, useState } from "react";
import {
  allFindings,
  type Finding,
  findingNumbers,
  inPlanUnits,
  isOfSpread,
  type Level,
  type Result,
} from "../../app/index.ts";
import { Choice } from "../../controls/index.ts";
import { LevelShape, levels } from "../../share/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { type Filter, filtered, findingKinds, groupsOf, noFilter, whereOf } from "./findings.ts";
import { Older } from "./Older.tsx";

const plural: Readonly<Record<Level, string>> = { stop: "stops", caution: "cautions", note: "notes" };
const kinds = { all: "all findings", ...findingKinds };

/** Value and limit in the chosen units. */
function Numbers({ finding }: { finding: Finding }) {
  const units = useIt((state) => state.view.units);
  const numbers = findingNumbers(finding, units);
  if (numbers === null) return null;
  const { value, limit, use } = numbers;
  return (
    <span className="numbers">
      <b>{value}</b>
      {limit !== "" && `, limit ${limit}`}
      {limit !== "" && finding.chosenBy !== "" && ` (${finding.chosenBy})`}
      {use !== "" && `, ${use}`}
    </span>
  );
}

function Item({ finding, result }: { finding: Finding; result: Result }) {
  const app = useApp();
  const chosen = useIt((state) => state.finding) === finding.id;
  const units = useIt((state) => state.view.units);
  const older = useIt((state) => state.answered.olderFindings.has(finding.id));
  const item = useRef<HTMLButtonElement>(null);
  // One that was chosen by its mark in the picture comes into sight here.
  useEffect(() => {
    if (chosen) item.current?.scrollIntoView({ block: "nearest" });
  }, [chosen]);
  return (
    <li>
      <button
        ref={item}
        type="button"
        className={`finding ${finding.level}${older ? " before" : ""}`}
        title={older ? "before the last change" : undefined}
        data-finding={finding.id}
        aria-current={chosen ? "true" : undefined}
        onClick={() => app.chooseFinding(finding)}
      >
        <span className="level">
          <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true">
            <LevelShape level={finding.level} hollow={isOfSpread(finding)} />
          </svg>
          {finding.level}
        </span>
        <span className="where">{whereOf(result, finding)}</span>
        <Numbers finding={finding} />
        <span className="words">
          {older && <span className="unseen">before the last change: </span>}
          {finding.words}
          {inPlanUnits(finding.words, units) && <small className="plan-units"> (in the plan's units)</small>}
        </span>
        {chosen && (
          <span className="more">
            {finding.cure !== "" && <span>{finding.cure}</span>}
            {finding.source !== "" && (
              <span className="quiet">{`Limit: ${finding.source}; chosen by: ${finding.chosenBy || "nobody"}`}</span>
            )}
          </span>
        )}
      </button>
    </li>
  );
}

/** Levels to show or leave out, the kind, and words to look for. */
function Filters({ filter, change }: { filter: Filter; change: (part: Partial<Filter>) => void }) {
  const { without, kind, words } = filter;
  return (
    <div className="filters" role="toolbar" aria-label="Filter findings">
      {levels.map((level) => (
        <button
          key={level}
          type="button"
          aria-pressed={!without.includes(level)}
          aria-label={`show ${plural[level]}`}
          title={`show ${plural[level]}`}
          onClick={() =>
            change({
              without: without.includes(level) ? without.filter((one) => one !== level) : [...without, level],
            })
          }
        >
          <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true">
            <LevelShape level={level} />
          </svg>
        </button>
      ))}
      <Choice
        label="Kind of finding"
        quiet
        value={kind}
        words={kinds}
        choose={(one) => change({ kind: one })}
      />
      <input
        type="search"
        aria-label="Words in the finding"
        placeholder="words"
        value={words}
        onChange={(event) => change({ words: event.target.value })}
      />
      <Older what="findings" />
    </div>
  );
}

/** Moves the focus to the item above or below; false when a key does not ask for it. */
function moved(list: HTMLElement | null, key: string): boolean {
  const by = { ArrowDown: 1, ArrowUp: -1 }[key];
  if (by === undefined || list === null) return false;
  const items = [...list.querySelectorAll<HTMLElement>("summary, details[open] button.finding")];
  const at = items.indexOf(document.activeElement as HTMLElement);
  if (at < 0) return false;
  items[Math.min(items.length - 1, Math.max(0, at + by))]?.focus();
  return true;
}

/** All findings of the plan, those of the spread among them, the worst first. */
export const Findings = memo(function Findings() {
  const { result, spreads, bucklings, tables } = useSome("result", "spreads", "bucklings", "tables");
  const chosen = useIt((state) => state.finding);
  const [filter, setFilter] = useState<Filter>(noFilter);
  const list = useRef<HTMLElement>(null);
  const all = useMemo(
    () => allFindings({ result, spreads, bucklings, tables }),
    [result, spreads, bucklings, tables],
  );
  if (result === null) return null;
  const seen = filtered(all, filter);
  const { groups, open } = groupsOf(seen);
  const onKeyDown = (event: KeyboardEvent) => {
    if (moved(list.current, event.key)) event.preventDefault();
  };
  return (
    <>
      <Filters filter={filter} change={(part) => setFilter({ ...filter, ...part })} />
      <section ref={list} className="findings" aria-label="Findings" onKeyDown={onKeyDown}>
        {seen.length < all.length && (
          <p className="quiet" role="status">{`${seen.length} of ${all.length} findings shown`}</p>
        )}
        {groups.length === 0 && seen.length === all.length && (
          <p className="quiet">No finding with a place in the operation.</p>
        )}
        {groups.map(({ level, findings }) => (
          <details
            key={level}
            open={level !== "note" || seen.length < all.length || findings.some(({ id }) => id === chosen)}
          >
            <summary
              className={level}
            >{`${findings.length} ${findings.length === 1 ? level : plural[level]}`}</summary>
            <ul>
              {findings.map((finding) => (
                <Item key={finding.id} finding={finding} result={result} />
              ))}
            </ul>
          </details>
        ))}
        {open.length > 0 && (
          <details>
            <summary>{`${open.length} open ${open.length === 1 ? "item" : "items"}`}</summary>
            <ul>
              {open.map((finding) => (
                <Item key={finding.id} finding={finding} result={result} />
              ))}
            </ul>
          </details>
        )}
      </section>
    </>
  );
});
