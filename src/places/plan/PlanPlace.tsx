// The Plan place: the scene, the operation, who carries what, and beside them the table of reactions and the findings.
import { useCallback, useEffect, useMemo } from "react";
import { type App, axisOf, sceneViews } from "../../app/index.ts";
import { keyIsTaken, useDrop } from "../../controls/index.ts";
import { caution } from "../../report/index.ts";
import { cursorKey, WhoCarriesWhat } from "../../share/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { Errors } from "./Errors.tsx";
import { Findings } from "./Findings.tsx";
import { Reactions } from "./Reactions.tsx";
import { Stage } from "./Stage.tsx";
import { Timeline } from "./Timeline.tsx";
import { TopBar } from "./TopBar.tsx";

/** The keys of the whole page: views by number, running by the blank, the cursor by arrows and pages. */
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
      if (view !== undefined) app.setView({ scene: view });
      else if (event.key === " ") {
        if (app.store.getState().playing) app.pause();
        else app.run();
      } else if (!cursorKey(app, event.key)) return;
      event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [app]);
}

/** The operation and its loads; drawn once the set is solved. */
function Operation() {
  const app = useApp();
  const { result, cursor, pose, spreads } = useIt((state) => state);
  const { width, units } = useIt((state) => state.view);
  const set = result?.sets[cursor.set] ?? null;
  const axis = useMemo(
    () => (set === null || set.steps.length === 0 ? null : axisOf(set, width)),
    [set, width],
  );
  if (result === null || set === null) return <div className="operation" />;
  if (axis === null) return <div className="operation quiet">This set has no steps.</div>;
  return (
    <div className="operation">
      <Timeline axis={axis} />
      <WhoCarriesWhat
        app={app}
        set={set}
        axis={axis}
        findings={result.findings}
        spread={spreads[set.setId] ?? null}
        cursor={cursor}
        pose={pose}
        units={units}
      />
    </div>
  );
}

/** How far the solver is, or by which rules the result was judged. */
function SolverState() {
  const solving = useIt((state) => state.solving);
  const spreading = useIt((state) => state.spreading);
  const ruleSet = useIt((state) => state.result?.ruleSet ?? "");
  const words = () => {
    if (solving.is === "running")
      return solving.of > 0 ? `${solving.words} ${solving.done} of ${solving.of}` : solving.words;
    if (solving.is === "failed") return "not solved";
    const rules = ruleSet === "" ? "" : `rules: ${ruleSet}`;
    if (spreading.is === "running")
      return `${rules}; ${spreading.words} ${spreading.done} of ${spreading.of}`;
    if (spreading.is === "failed") return `${rules}; low and high not worked out: ${spreading.words}`;
    return rules;
  };
  return <span role="status">{words()}</span>;
}

/** The whole place. */
export function PlanPlace() {
  const app = useApp();
  const theme = useIt((state) => state.view.theme);
  usePageKeys(app);
  useEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
  const open = useCallback(
    (file: File) => {
      file.text().then(
        (text) => app.openText(text, file.name),
        (error: unknown) => app.fail(file.name, `the browser could not read it (${String(error)})`),
      );
    },
    [app],
  );
  const over = useDrop(open);
  return (
    <div className={over ? "plan-place over" : "plan-place"}>
      <TopBar open={open} />
      <main>
        <Stage />
        <Operation />
      </main>
      <aside aria-label="Numbers and findings">
        <Reactions />
        <Findings />
      </aside>
      <footer>
        <span>{caution}</span>
        <SolverState />
      </footer>
      <Errors />
      {over && <div className="drop-sign">Drop the plan file here to open it</div>}
    </div>
  );
}
