// The Plan place: the scene, the operation, who carries what, and beside them the table of reactions and the findings.
import { lazy, Suspense, useCallback, useEffect, useMemo } from "react";
import {
  type App,
  allFindings,
  axisOf,
  type FileHandle,
  type Panel,
  planOfSet,
  sceneViews,
} from "../../app/index.ts";
import { keyIsTaken, useDrop } from "../../controls/index.ts";
import { caution } from "../../report/index.ts";
import { cursorKey, WhoCarriesWhat } from "../../share/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { OverPlan } from "../Over.tsx";
import { Behind } from "./Behind.tsx";
import { DraftErrors, OldSign } from "./DraftErrors.tsx";
import { useDocumentKeys } from "./documentKeys.ts";
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

/** Shows a panel and brings the focus to it, so that its list can be gone through at once. */
function toPanel(app: App, panel: Panel): void {
  app.setView({ panel });
  document.getElementById(`tab-${panel}`)?.focus();
}

/** Keys that are letters, and Escape: strips, panels, stopping the work on low and high. False for any other. */
function otherKey(app: App, key: string): boolean {
  const { view, spreading, tabling, before } = app.store.getState();
  switch (key.toLowerCase()) {
    case "u":
      app.setView({ allStrips: !view.allStrips });
      return true;
    case "f":
      toPanel(app, "findings");
      return true;
    case "b":
      toPanel(app, "step");
      return true;
    case "g":
      toPanel(app, "girders");
      return true;
    case "t":
      toPanel(app, "tables");
      return true;
    case "e":
      app.setView({ data: view.data === null ? "site" : null });
      return true;
    case "h":
      toPanel(app, "history");
      return true;
    case "n":
      app.store.setState({ over: "start" });
      return true;
    case "s":
      if (app.store.getState().document !== null) app.store.setState({ over: "sets" });
      return true;
    case "escape":
      if (tabling.is === "running") app.stopTables();
      else if (spreading.is === "running") app.stopSpread();
      else if (before !== null) app.putBeforeAway();
      else if (view.data !== null) app.setView({ data: null });
      else if (view.allStrips) app.setView({ allStrips: false });
      else app.select("");
      return true;
    default:
      return false;
  }
}

/** The keys of the whole page: views by number, running by the blank, the cursor by arrows and pages, and letters. */
function usePageKeys(app: App) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey) return;
      if (document.querySelector("dialog[open]") !== null) return;
      const focused = document.activeElement;
      const type = focused instanceof HTMLInputElement ? focused.type : undefined;
      const it =
        focused === null ? null : { tagName: focused.tagName, type, role: focused.getAttribute("role") };
      if (keyIsTaken(it, event.key)) return;
      const view = sceneViews[Number(event.key) - 1];
      if (view !== undefined) app.setView({ scene: view, allStrips: false });
      else if (event.key === " ") {
        if (app.store.getState().playing) app.pause();
        else app.run();
      } else if (!otherKey(app, event.key) && !cursorKey(app, event.key)) return;
      event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [app]);
}

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
  useDocumentKeys(app);
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
