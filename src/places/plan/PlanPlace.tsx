// The Plan place: the scene, the operation, who carries what, and beside them the table of reactions and the findings.
import { lazy, Suspense, useCallback, useEffect, useMemo } from "react";
import { allFindings, axisOf, type FileHandle, planOfSet } from "../../app/index.ts";
import { useDrop } from "../../controls/index.ts";
import { caution } from "../../report/index.ts";
import { WhoCarriesWhat } from "../../share/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { OverPlan } from "../Over.tsx";
import { usePageKeys } from "./actions/useKeys.ts";
import { Behind } from "./Behind.tsx";
import { DraftErrors, OldSign } from "./DraftErrors.tsx";
import { Errors } from "./Errors.tsx";
import { Notices } from "./Notices.tsx";
import { Older } from "./Older.tsx";
import { Panels } from "./Panels.tsx";
import { Reactions } from "./Reactions.tsx";
import { Stage } from "./Stage.tsx";
import { Timeline } from "./Timeline.tsx";
import { TopBar } from "./TopBar.tsx";

const Change = lazy(() => import("./Change.tsx").then(({ Change }) => ({ default: Change })));

const DataSheet = lazy(() => import("./data/DataSheet.tsx").then((sheet) => ({ default: sheet.DataSheet })));

/** The operation and its loads; drawn once the set is solved. */
function Operation() {
  const app = useApp();
  const { result, cursor, pose, answered, spreads, bucklings, tables, selected } = useSome(
    "result",
    "cursor",
    "pose",
    "answered",
    "spreads",
    "bucklings",
    "tables",
    "selected",
  );
  const plan = useIt(planOfSet);
  const { width, units, allStrips } = useIt((state) => state.view);
  const findings = useMemo(
    () => allFindings({ result, spreads, bucklings, tables }),
    [result, spreads, bucklings, tables],
  );
  const set = result?.sets[cursor.set] ?? null;
  const axis = useMemo(
    () => (set === null || set.steps.length === 0 ? null : axisOf(set, width)),
    [set, width],
  );
  if (plan === null || set === null) return <div className="operation" />;
  if (axis === null) return <div className="operation quiet">This set has no steps.</div>;
  return (
    <div className={allStrips ? "operation whole" : "operation"}>
      <Timeline axis={axis} />
      <Older what="set" />
      <WhoCarriesWhat
        app={app}
        plan={plan}
        set={set}
        axis={axis}
        findings={findings}
        spread={spreads[set.setId]?.spread ?? null}
        cursor={cursor}
        pose={answered.step === null ? pose : null}
        selected={selected}
        allStrips={allStrips}
        units={units}
      />
    </div>
  );
}

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
        <Operation />
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
