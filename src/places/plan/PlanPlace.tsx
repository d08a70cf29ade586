// The Plan place: the scene, the operation, who carries what, and beside them the table of reactions and the findings.
import { lazy, Suspense, useCallback, useEffect } from "react";
import type { FileHandle } from "../../app/index.ts";
import { useDrop } from "../../controls/index.ts";
import { caution } from "../../report/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { OverPlan } from "../Over.tsx";
import { usePageKeys } from "./actions/useKeys.ts";
import { Behind } from "./Behind.tsx";
import { DraftErrors, OldSign } from "./DraftErrors.tsx";
import { Errors } from "./Errors.tsx";
import { Notices } from "./Notices.tsx";
import { Panels } from "./Panels.tsx";
import { Reactions } from "./Reactions.tsx";
import { Stage } from "./Stage.tsx";
import { TopBar } from "./TopBar.tsx";

// Fetched at once, since it is drawn as soon as there is an answer; apart, so that the page stands before it has come.
const operation = import("./Operation.tsx");
const Operation = lazy(() => operation.then((part) => ({ default: part.Operation })));

const Change = lazy(() => import("./Change.tsx").then(({ Change }) => ({ default: Change })));

const DataSheet = lazy(() => import("./data/DataSheet.tsx").then((sheet) => ({ default: sheet.DataSheet })));

/** The whole place. */
export function PlanPlace() {
  const app = useApp();
  const theme = useIt((state) => state.view.theme);
  usePageKeys(app);
  const changed = useIt((state) => state.before !== null);
  const isOld = useIt((state) => (state.document?.errors.length ?? 0) > 0);
  useEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
  const open = useCallback((file: File) => void app.openFile(file), [app]);
  const drop = useCallback(
    (file: File, handle: unknown) => void app.openFile(file, handle as FileHandle | null),
    [app],
  );
  const over = useDrop(drop);
  const data = useIt((state) => state.view.data !== null);
  return (
    <div className={over ? "plan-place over" : "plan-place"}>
      <TopBar open={open} />
      <main className={data ? "with-data" : ""}>
        <Stage />
        <Suspense fallback={<div className="operation" />}>
          <Operation />
        </Suspense>
        <OldSign />
        {changed && (
          <Suspense fallback={null}>
            <Change />
          </Suspense>
        )}
        <Notices />
        {data && (
          <div className="data-place">
            <Suspense fallback={<p className="waiting">Opening the plan's data…</p>}>
              <DataSheet />
            </Suspense>
          </div>
        )}
      </main>
      <aside aria-label="Numbers and findings">
        <Reactions />
        <Panels />
      </aside>
      <footer>
        {isOld ? <DraftErrors /> : <span title={caution}>{caution}</span>}
        <Behind />
      </footer>
      <Errors />
      <OverPlan />
      {over && <div className="drop-sign">Drop the plan file here to open it</div>}
    </div>
  );
}
