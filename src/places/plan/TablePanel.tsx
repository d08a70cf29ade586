// Tables on one matter that are worked out when asked for: landing, wind, clearances, slings; and what the program covers.
import { memo } from "react";
import { type HeldTables, type Table, tablesKey } from "../../app/index.ts";
import { Choice } from "../../controls/index.ts";
import { sectionTitles } from "../../report/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import "./tables.css";

function OneTable({ table }: { table: Table }) {
  const kept = table.head.map((_, c) => c).filter((c) => table.rows.some((row) => row[c] !== ""));
  const side = (c: number) => (table.sides[c] === "right" ? "number" : undefined);
  return (
    <section aria-label={table.title}>
      <h2>{table.title}</h2>
      {table.words.length > 0 && (
        <details>
          <summary>how to read it</summary>
          {table.words.map((words) => (
            <p key={words} className="quiet">
              {words}
            </p>
          ))}
        </details>
      )}
      {table.rows.length === 0 ? (
        <p>Nothing to show.</p>
      ) : (
        <section
          className="wide"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls sideways, by keys too
          tabIndex={0}
          aria-label={`${table.title}, rows`}
        >
          <table>
            <thead>
              <tr>
                {kept.map((c) => (
                  <th key={table.head[c]} scope="col" className={side(c)}>
                    {table.head[c]}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row, r) => (
                // Rows of a finished table never change places.
                // biome-ignore lint/suspicious/noArrayIndexKey: two rows may say the same
                <tr key={r}>
                  {kept.map((c) => (
                    <td key={table.head[c]} className={side(c)}>
                      {row[c]}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </section>
  );
}

function Held({ held }: { held: HeldTables }) {
  return (
    <>
      {held.done < held.of && (
        <p className="strong">{`Stopped: ${held.done} of ${held.of} parts are there.`}</p>
      )}
      {held.tables.map((table) => (
        <OneTable key={table.title} table={table} />
      ))}
    </>
  );
}

/** The whole panel. */
export const TablePanel = memo(function TablePanel() {
  const app = useApp();
  const { result, cursor, tables, tabling } = useSome("result", "cursor", "tables", "tabling");
  const section = useIt((state) => state.view.section);
  const set = result?.sets[cursor.set] ?? null;
  if (set === null) return null;
  const key = tablesKey(set.setId, section);
  const held = tables[key];
  const choose = (next: string) => {
    app.setView({ section: next });
    app.tabulate(next);
  };
  return (
    <div className="table-panel">
      <Choice
        label="About"
        value={section}
        words={{ ...(section === "" ? { "": "choose" } : {}), ...sectionTitles }}
        choose={choose}
      />
      {section === "" && <p className="quiet">Choose a matter; it is worked out for this set and kept.</p>}
      {tabling.is === "running" && (
        <p>
          <span role="status">{`Working on part ${tabling.done} of ${tabling.of || "…"} `}</span>
          <button type="button" disabled={tabling.stopping} onClick={app.stopTables}>
            Stop
          </button>
        </p>
      )}
      {tabling.is === "failed" && tabling.key === key && (
        <p className="strong">{`It could not be worked out: ${tabling.words}`}</p>
      )}
      {section !== "" && tabling.is !== "running" && (held === undefined || held.done < held.of) && (
        <p>
          <button type="button" onClick={() => app.tabulate(section)}>
            Work it out
          </button>
        </p>
      )}
      {held !== undefined && <Held held={held} />}
    </div>
  );
});
