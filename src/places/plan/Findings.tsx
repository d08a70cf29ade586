// The list of findings and of open items: choosing one goes where and when it is worst.
import { memo } from "react";
import type { Finding, Result } from "../../app/index.ts";
import { LevelShape } from "../../share/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { groupsOf, whereOf } from "./findings.ts";

const plural: Readonly<Record<string, string>> = { stop: "stops", caution: "cautions", note: "notes" };

function Item({ finding, result }: { finding: Finding; result: Result }) {
  const app = useApp();
  const chosen = useIt((state) => state.finding) === finding.id;
  return (
    <li>
      <button
        type="button"
        className={`finding ${finding.level}`}
        data-finding={finding.id}
        aria-current={chosen ? "true" : undefined}
        onClick={() => app.chooseFinding(finding)}
      >
        <span className="level">
          <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true">
            <LevelShape level={finding.level} />
          </svg>
          {finding.level}
        </span>
        <span className="where">{whereOf(result, finding)}</span>
        <span className="words">{finding.words}</span>
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

/** All findings of the plan, the worst first. */
export const Findings = memo(function Findings() {
  const result = useIt((state) => state.result);
  const spreads = useIt((state) => state.spreads);
  if (result === null) return null;
  const { groups, open } = groupsOf([
    ...result.findings,
    ...Object.values(spreads).flatMap((spread) => spread.findings),
  ]);
  return (
    <section className="findings" aria-label="Findings">
      {groups.length === 0 && <p className="quiet">No finding with a place in the operation.</p>}
      {groups.map(({ level, findings }) => (
        <details key={level} open={level !== "note"}>
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
  );
});
