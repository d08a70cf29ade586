// Errors of the draft while it is edited: told at the foot of the page, with each place; the last good plan stays.
import { useEffect, useState } from "react";
import { useApp, useIt } from "../appContext.ts";

/** The mark over the scene: what is drawn there is older than the draft. */
export function OldSign() {
  const isOld = useIt(
    ({ document }) => document !== null && document.plan !== null && document.errors.length > 0,
  );
  if (!isOld) return null;
  return <p className="old-sign">Old: the last plan without errors</p>;
}

/** The bar at the foot, in the place of the caution; a list of all errors opens above it. */
export function DraftErrors() {
  const app = useApp();
  const errors = useIt((state) => state.document?.errors);
  const solved = useIt((state) => state.document?.plan != null);
  const [listed, setListed] = useState(false);
  const count = errors?.length ?? 0;
  useEffect(() => {
    if (count === 0) setListed(false);
  }, [count]);
  if (errors === undefined || count === 0) return null;
  const [first] = errors;
  const words = `${count} ${count === 1 ? "error" : "errors"} in the plan`;
  return (
    <div className="draft-errors">
      <span className="unseen" role="status">
        {words}
      </span>
      <button
        type="button"
        aria-expanded={listed}
        aria-controls="draft-errors-list"
        onClick={() => setListed(!listed)}
      >
        <strong>{words}</strong>
        <span>{`${first.path}: found ${first.found}; allowed: ${first.allowed}.`}</span>
      </button>
      {listed && (
        <section id="draft-errors-list" className="draft-errors-list" aria-label="Errors in the plan">
          <p>
            {solved
              ? "What is on screen is solved for the last plan without errors. Nothing that was typed is lost."
              : "Nothing is solved before these are mended: choose a place to go there."}
          </p>
          <ul>
            {errors.map(({ path, found, allowed, mend }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: one place may have several errors, in a fixed order.
              <li key={i} data-place={path}>
                <button
                  type="button"
                  className="plain"
                  onClick={() => {
                    const { data } = app.store.getState().view;
                    app.setView({ data: data ?? "header", dataAt: path });
                    setListed(false);
                  }}
                >
                  <code>{path}</code>
                </button>
                {`: found ${found}; allowed: ${allowed}. ${mend}`}
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
