// What is done with the document as a whole: undo, redo, open, save; and where its changes are kept, in words.
import { changesUnsaved } from "../../app/index.ts";
import { FileButton } from "../../controls/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { fullWords } from "./actions/action.ts";
import { actionOf } from "./actions/pageActions.ts";
import { fileField, pickedOtherwise } from "./actions/picking.ts";
import { useAction } from "./actions/useKeys.ts";
import { changesWords, timeWords } from "./times.ts";

const arrows = {
  undo: "M6 3 2.5 6.5 6 10M3 6.5h6a4 4 0 0 1 0 8H7",
  redo: "M10 3 13.5 6.5 10 10M13 6.5H7a4 4 0 0 0 0 8h2",
} as const;

/** Undo or redo, naming what it would take back or bring again. */
function Arrow({ id }: { id: keyof typeof arrows }) {
  const button = useAction(id);
  const label = useIt((state) => fullWords(actionOf(id), state));
  return (
    <button {...button} className="icon small" aria-label={label}>
      <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true" className="hollow">
        <path d={arrows[id]} />
      </svg>
    </button>
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
  const file = useAction("open");
  return (
    <>
      <Arrow id="undo" />
      <Arrow id="redo" />
      <button {...useAction("new")} aria-haspopup="dialog">
        New plan
      </button>
      <FileButton
        words="Open file"
        accept=".json,application/json"
        open={open}
        id={fileField}
        title={file.title}
        keys={file["aria-keyshortcuts"]}
        instead={() => pickedOtherwise(app)}
      />
      <button {...useAction("recent")} aria-haspopup="dialog">
        Recent
      </button>
      <button {...useAction("save")}>Save</button>
    </>
  );
}
