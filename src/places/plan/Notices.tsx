// What must be told of the document without being in the way: work that was recovered, changes that are kept nowhere.
import { changesUnsaved, type Recovered } from "../../app/index.ts";
import { useApp, useSome } from "../appContext.ts";
import { changesWords, timeWords } from "./times.ts";

const which = ({ title, name, at, changes }: Recovered): string =>
  `${title || name}, last changed ${timeWords(at, Date.now())}, ${changesWords(changes)} not saved to a file`;

/** Work of pages that are gone: what is open of it now, and what else there is. */
function LeftBehind() {
  const app = useApp();
  const { recovered, leftBehind } = useSome("recovered", "leftBehind");
  if (recovered === null && leftBehind.length === 0) return null;
  const last = recovered?.labels.at(-1);
  return (
    <section className="notice" aria-labelledby="recovered-title">
      <h2 id="recovered-title">{recovered === null ? "Work was left" : "Recovered"}</h2>
      {recovered !== null && (
        <>
          <p>{`${which(recovered)}.`}</p>
          {last !== undefined && <p className="quiet">{`Last: ${last}`}</p>}
        </>
      )}
      {leftBehind.length > 0 && (
        <ul>
          {leftBehind.map((one) => (
            <li key={one.key}>
              <span>{which(one)}</span>
              <button type="button" onClick={() => void app.openWork(one.key)}>
                Open it
              </button>
            </li>
          ))}
        </ul>
      )}
      <p className="buttons">
        <button type="button" className="strong" onClick={() => void app.keepRecovered()}>
          {recovered === null ? "Leave it on the list of plans" : "Keep working on it"}
        </button>
        {recovered !== null && (
          <button type="button" onClick={() => void app.putRecoveredAway()}>
            Put it away
          </button>
        )}
      </p>
      {recovered !== null && (
        <p className="quiet">Put away, it stays under Recent until it is deleted there.</p>
      )}
    </section>
  );
}

/** Changes that this browser does not keep, or a file that was not written. */
function NotKept() {
  const app = useApp();
  const { keeping, history, notFiled } = useSome("keeping", "history", "notFiled");
  const changes = changesUnsaved(history);
  const failed = keeping.is === "failed" && changes > 0;
  if (!failed && notFiled === "") return null;
  return (
    <section className="notice" aria-labelledby="not-kept-title" role="alert">
      <h2 id="not-kept-title">{notFiled === "" ? "Changes are not kept" : "Not saved"}</h2>
      {notFiled !== "" && <p>{notFiled}</p>}
      {failed && (
        <p>{`${changesWords(changes)} would be lost with this page: ${keeping.words}. Editing goes on, and keeping is tried again.`}</p>
      )}
      <p className="buttons">
        <button type="button" className="strong" onClick={app.downloadPlan}>
          Download the plan
        </button>
      </p>
    </section>
  );
}

/** All of them, over the scene: nothing on the page is moved by them. */
export function Notices() {
  return (
    <div className="notices">
      <NotKept />
      <LeftBehind />
    </div>
  );
}
