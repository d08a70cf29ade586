// Plans to go back to: those that were open lately, and work that was put away; each can be taken off the list.
import { useEffect } from "react";
import { useApp, useIt } from "../appContext.ts";
import { useOver } from "./actions/useOver.ts";
import { changesWords, timeWords } from "./times.ts";

/** The list in a dialog. */
export function RecentPlans() {
  const app = useApp();
  const recent = useIt((state) => state.recent);
  const { dialog, close, closed } = useOver("recent");
  useEffect(() => {
    void app.listRecent();
  }, [app]);
  const choose = (key: string) => {
    close();
    void app.openRecent(key);
  };
  return (
    <dialog ref={dialog} className="errors recent" aria-labelledby="recent-title" onClose={closed}>
      <h2 id="recent-title">Plans that were open lately</h2>
      {recent.length === 0 && (
        <p>None yet. A plan stands here once it was opened from a file, saved, or put away with changes.</p>
      )}
      <ul>
        {recent.map(({ key, name, title, at, changes }) => (
          <li key={key}>
            <button type="button" className="plan-line" onClick={() => choose(key)}>
              <span className="strong">{title || "Plan without a title"}</span>
              <span className="quiet">
                {`${name}, ${timeWords(at, Date.now())}${changes > 0 ? `, put away with ${changesWords(changes)} that no file holds` : ""}`}
              </span>
            </button>
            <button
              type="button"
              aria-label={`Take ${title || name} off the list`}
              onClick={() => void app.forgetRecent(key)}
            >
              {changes > 0 ? "Delete" : "Take off"}
            </button>
          </li>
        ))}
      </ul>
      <button type="button" className="strong" onClick={close}>
        Close
      </button>
    </dialog>
  );
}
