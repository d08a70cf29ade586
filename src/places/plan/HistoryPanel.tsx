// The history of the document in words, newest first: any entry can be gone to, by pointer and by keyboard.
import { type KeyboardEvent, useEffect, useRef } from "react";
import { changesUnsaved } from "../../app/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { changesWords, timeWords } from "./times.ts";

/** Where the keys of a list lead from one of its entries; null for any other key. */
function toward(key: string, from: number, last: number): number | null {
  if (key === "ArrowUp") return Math.max(0, from - 1);
  if (key === "ArrowDown") return Math.min(last, from + 1);
  if (key === "Home") return 0;
  return key === "End" ? last : null;
}

/** The list. Entries that were undone stand above the one that the document is at, until another edit takes their place. */
export function HistoryPanel() {
  const app = useApp();
  const history = useIt((state) => state.history);
  const filed = useIt((state) => state.filed);
  const { entries, index, saved } = history;
  const list = useRef<HTMLOListElement>(null);
  const last = entries.length - 1;
  useEffect(() => {
    list.current?.querySelector(`[data-entry="${index}"]`)?.scrollIntoView({ block: "nearest" });
  }, [index]);
  const onKeyDown = (event: KeyboardEvent<HTMLOListElement>) => {
    const line = event.target instanceof HTMLElement ? event.target.closest("[data-entry]") : null;
    if (!(line instanceof HTMLElement)) return;
    const to = toward(event.key, last - Number(line.dataset.entry), last);
    if (to === null) return;
    event.preventDefault();
    list.current?.querySelector<HTMLElement>(`[data-entry="${last - to}"]`)?.focus();
  };
  const changes = changesUnsaved(history);
  return (
    <div className="history">
      <p className="quiet">
        {`${changesWords(last)} in this session${last > index ? `, ${last - index} of them undone` : ""}; ${
          changes === 0 ? "none" : changes
        } not in a file.`}
      </p>
      <ol ref={list} aria-label="History, newest first" onKeyDown={onKeyDown}>
        {entries
          .map(({ label, at }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: an entry is known by its place in the history.
            <li key={i}>
              <button
                type="button"
                data-entry={i}
                className={i > index ? "entry undone" : "entry"}
                aria-current={i === index ? "step" : undefined}
                tabIndex={i === index ? 0 : -1}
                onClick={() => app.toEntry(i)}
              >
                <span>{label}</span>
                <span className="quiet">
                  {[
                    i > index ? "undone" : "",
                    filed !== null && saved.away === 0 && saved.index === i ? `in ${filed.name}` : "",
                    timeWords(at, Date.now()),
                  ]
                    .filter((part) => part !== "")
                    .join(", ")}
                </span>
              </button>
            </li>
          ))
          .reverse()}
      </ol>
    </div>
  );
}
