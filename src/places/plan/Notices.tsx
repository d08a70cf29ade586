// What must be told of the document without being in the way: work that was recovered, changes that are kept nowhere.
import { lazy, Suspense } from "react";
import { changesUnsaved } from "../../app/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { changesWords } from "./times.ts";

const LeftBehind = lazy(() => import("./LeftBehind.tsx").then((it) => ({ default: it.LeftBehind })));

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
  const isLeft = useIt(({ recovered, leftBehind }) => recovered !== null || leftBehind.length > 0);
  return (
    <div className="notices">
      <NotKept />
      {isLeft && (
        <Suspense fallback={null}>
          <LeftBehind />
        </Suspense>
      )}
    </div>
  );
}
