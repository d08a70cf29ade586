// Work of pages that are gone: what is open of it now, what else there is, and what is to become of it.
import type { Recovered } from "../../app/index.ts";
import { useApp, useSome } from "../appContext.ts";
import { changesWords, timeWords } from "./times.ts";

const which = ({ title, name, at, changes }: Recovered): string =>
  `${title || name}, last changed ${timeWords(at, Date.now())}, ${changesWords(changes)} not saved to a file`;

/** The notice; nothing when there is no such work. */
export function LeftBehind() {
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
