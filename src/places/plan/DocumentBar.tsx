// What is done with the document as a whole: undo, redo, open, save; and where its changes are kept, in words.
import { lazy, Suspense, useState } from "react";
import { changesUnsaved } from "../../app/index.ts";
import { FileButton } from "../../controls/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { fileField, pickedOtherwise } from "./documentKeys.ts";
import { changesWords, timeWords } from "./times.ts";

const RecentPlans = lazy(() => import("./RecentPlans.tsx").then((it) => ({ default: it.RecentPlans })));

/** Undo and redo, each naming what it would take back or bring again. */
function BackAndForth() {
  const app = useApp();
  const { entries, index } = useIt((state) => state.history);
  const [last, next] = [index > 0 ? entries[index] : undefined, entries[index + 1]];
  return (
    <>
      <button
        type="button"
        className="icon small"
        aria-label={last === undefined ? "Undo" : `Undo: ${last.label}`}
        title={last === undefined ? "Nothing to undo" : `Undo: ${last.label} (Ctrl+Z)`}
        aria-keyshortcuts="Control+Z"
        disabled={last === undefined}
        onClick={app.undo}
      >
        <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" className="hollow">
          <path d="M6 3 2.5 6.5 6 10M3 6.5h6a4 4 0 0 1 0 8H7" />
        </svg>
      </button>
      <button
        type="button"
        className="icon small"
        aria-label={next === undefined ? "Redo" : `Redo: ${next.label}`}
        title={next === undefined ? "Nothing to redo" : `Redo: ${next.label} (Ctrl+Y)`}
        aria-keyshortcuts="Control+Y"
        disabled={next === undefined}
        onClick={app.redo}
      >
        <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" className="hollow">
          <path d="M10 3 13.5 6.5 10 10M13 6.5H7a4 4 0 0 0 0 8h2" />
        </svg>
      </button>
    </>
  );
}

/** Where the changes are, in a few words; the whole of it under the pointer. */
export function KeptWords() {
  const { document, history, keeping, filed } = useSome("document", "history", "keeping", "filed");
  if (document === null) return null;
  const changes = changesUnsaved(history);
  const now = Date.now();
  const how = { opened: "opened", saved: "saved to", downloaded: "downloaded as" };
  const file = filed === null ? "" : `${how[filed.is]} ${filed.name} ${timeWords(filed.at, now)}`;
  const behind =
    filed === null
      ? `${changesWords(changes)}, in no file yet`
      : `${changesWords(changes)} since it was ${file}`;
  const [words, whole] = ((): [string, string] => {
    if (changes === 0) return [file || "no changes", file || `${document.name}, without changes`];
    if (keeping.is === "failed") return ["kept nowhere", `${behind}. Not kept: ${keeping.words}.`];
    if (keeping.is === "idle") return ["being kept…", behind];
    return [`kept in this browser ${timeWords(keeping.at, now)}`, behind];
  })();
  const errors = filed?.is !== "opened" && changes === 0 ? (filed?.errors ?? 0) : 0;
  return (
    <span className={keeping.is === "failed" && changes > 0 ? "strong" : ""} title={whole}>
      <span role="status">{errors > 0 ? `${words}, with ${errors} errors in it` : words}</span>
    </span>
  );
}

/** Opening and saving. `open` is told of a file that was picked by the form, where the browser has no picker of its own. */
export function DocumentBar({ open }: { open: (file: File) => void }) {
  const app = useApp();
  const isOpen = useIt((state) => state.document !== null);
  const [listed, setListed] = useState(false);
  return (
    <>
      <BackAndForth />
      <button
        type="button"
        title="A new plan by a short set-up; plans that come with the program (N)"
        aria-keyshortcuts="N"
        aria-haspopup="dialog"
        onClick={() => app.store.setState({ over: "start" })}
      >
        New plan
      </button>
      <FileButton
        words="Open file"
        accept=".json,application/json"
        open={open}
        id={fileField}
        title="Open a plan file (Ctrl+O)"
        keys="Control+O"
        instead={() => pickedOtherwise(app)}
      />
      <button
        type="button"
        title="Plans that were open lately"
        aria-haspopup="dialog"
        onClick={() => setListed(true)}
      >
        Recent
      </button>
      <button
        type="button"
        aria-keyshortcuts="Control+S"
        title="Save to the plan's file (Ctrl+S); to another one (Ctrl+Shift+S)"
        disabled={!isOpen}
        onClick={() => void app.save()}
      >
        Save
      </button>
      {listed && (
        <Suspense fallback={null}>
          <RecentPlans close={() => setListed(false)} />
        </Suspense>
      )}
    </>
  );
}
