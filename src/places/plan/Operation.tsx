// The operation with its time line and who carries what, from the answer of the solver.
import { useMemo } from "react";
import { allFindings, axisOf, planOfSet } from "../../app/index.ts";
import { WhoCarriesWhat } from "../../share/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { Older } from "./Older.tsx";
import { Timeline } from "./Timeline.tsx";

/** The operation and its loads; drawn once the set is solved. */
export function Operation() {
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
