// A file that could not be opened: every error in it, with its place and how to mend it. The last good plan stays.
import { useEffect, useRef } from "react";
import type { Failure } from "../../app/index.ts";
import { useApp, useIt } from "../appContext.ts";

/** Whether it can be mended here, as a sentence after others. */
function beyondWords({ draft, beyond }: Failure): string {
  if (draft != null) return " Opened to mend, it takes the place of the plan on screen, which is kept.";
  return beyond ? ` ${beyond}` : "";
}

/** The panel of errors, open while there are some. */
export function Errors() {
  const app = useApp();
  const failure = useIt((state) => state.failure);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const it = dialog.current;
    if (it === null) return;
    if (failure !== null && !it.open) it.showModal();
    if (failure === null && it.open) it.close();
    // Escape closes in the same turn: the event of closing comes later, when another file may have been refused already.
    const onCancel = (event: Event) => {
      event.preventDefault();
      app.closeFailure();
    };
    it.addEventListener("cancel", onCancel);
    return () => it.removeEventListener("cancel", onCancel);
  }, [failure, app]);
  const closed = () => {
    if (dialog.current?.open !== true) app.closeFailure();
  };
  const mend = async () => {
    const first = failure?.errors[0];
    if (first === undefined || !(await app.openRefused())) return;
    app.setView({ data: app.store.getState().view.data ?? "header", dataAt: first.path });
  };
  return (
    <dialog ref={dialog} className="errors" aria-labelledby="errors-title" onClose={closed}>
      {failure !== null && (
        <>
          <h2 id="errors-title">
            {`${failure.name} was not opened: ${failure.errors.length} ${failure.errors.length === 1 ? "error" : "errors"}`}
          </h2>
          <p>{`The plan that was open stays as it is, and so does the file.${beyondWords(failure)}`}</p>
          <section
            className="errors-list"
            aria-label="Errors"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
            tabIndex={0}
          >
            <table>
              <thead>
                <tr>
                  <th scope="col">Place</th>
                  <th scope="col">Found</th>
                  <th scope="col">Allowed</th>
                  <th scope="col">How to mend it</th>
                </tr>
              </thead>
              <tbody>
                {failure.errors.map((error, i) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the list of one failure never changes its order.
                  <tr key={i}>
                    <td>
                      <code>{error.path}</code>
                    </td>
                    <td>{error.found}</td>
                    <td>{error.allowed}</td>
                    <td>{error.mend}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          <div className="errors-buttons">
            {failure.draft != null && (
              <button type="button" onClick={mend}>
                Open it to mend
              </button>
            )}
            <button type="button" className="strong" onClick={app.closeFailure}>
              Close
            </button>
          </div>
        </>
      )}
    </dialog>
  );
}
