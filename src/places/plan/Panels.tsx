// The panels below the table of reactions, one of them shown: the findings, what is to be known of the step, the girders,
// tables that were asked for, the history of the plan.
import { type KeyboardEvent, lazy, type ReactNode, Suspense } from "react";
import { allFindings, type Panel } from "../../app/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { actionOf } from "./actions/pageActions.ts";
import { Findings } from "./Findings.tsx";

// Not needed for the first picture.
const StepPanel = lazy(() => import("./StepPanel.tsx").then((it) => ({ default: it.StepPanel })));
const GirderPanel = lazy(() => import("./GirderPanel.tsx").then((it) => ({ default: it.GirderPanel })));
const TablePanel = lazy(() => import("./TablePanel.tsx").then((it) => ({ default: it.TablePanel })));
const HistoryPanel = lazy(() => import("./HistoryPanel.tsx").then((it) => ({ default: it.HistoryPanel })));

const order: readonly Panel[] = ["findings", "step", "girders", "tables", "history"];

const keyOf = (panel: Panel): string | undefined => actionOf(`panel ${panel}`).keys?.[0];

/** Tabs with their panel. */
export function Panels() {
  const app = useApp();
  const panel = useIt((state) => state.view.panel);
  const { result, spreads, bucklings, tables } = useSome("result", "spreads", "bucklings", "tables");
  const step = useIt((state) => state.cursor.step);
  if (result === null) return null;
  const words: Readonly<Record<Panel, string>> = {
    findings: `Findings ${allFindings({ result, spreads, bucklings, tables }).length}`,
    step: `${step + 1}: way back`,
    girders: "Girders",
    tables: "Tables",
    history: "History",
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== "ArrowLeft" && event.key !== "ArrowRight") return;
    event.preventDefault();
    const by = event.key === "ArrowRight" ? 1 : order.length - 1;
    const next = order[(order.indexOf(panel) + by) % order.length];
    app.setView({ panel: next });
    document.getElementById(`tab-${next}`)?.focus();
  };
  const shown: Readonly<Record<Panel, ReactNode>> = {
    findings: <Findings />,
    step: <StepPanel />,
    girders: <GirderPanel />,
    tables: <TablePanel />,
    history: <HistoryPanel />,
  };
  return (
    <>
      <div className="tabs" role="tablist" aria-label="Below the reactions">
        {order.map((one) => (
          <button
            key={one}
            id={`tab-${one}`}
            type="button"
            role="tab"
            aria-selected={panel === one}
            aria-controls="panel"
            title={actionOf(`panel ${one}`).words}
            aria-keyshortcuts={keyOf(one)}
            tabIndex={panel === one ? 0 : -1}
            onClick={() => app.setView({ panel: one })}
            onKeyDown={onKeyDown}
          >
            {words[one]} <kbd>{keyOf(one)}</kbd>
          </button>
        ))}
      </div>
      <div id="panel" className="panel" role="tabpanel" aria-labelledby={`tab-${panel}`}>
        <Suspense fallback={null}>{shown[panel]}</Suspense>
      </div>
    </>
  );
}
