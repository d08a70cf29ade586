// What the girders feel at the cursor: moment, shear or torsion along them, and at how many times its loads the set buckles.
import { memo, useMemo, useRef } from "react";
import { leastStage, type SetBuckling, type SetResult } from "../../app/index.ts";
import { Choice } from "../../controls/index.ts";
import { diagramLines, diagramMarks, factorWords, shapeWords } from "../../report/index.ts";
import { type Action, GirderDiagrams, useSize } from "../../share/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import "./girders.css";

const actions: Readonly<Record<Action, string>> = { moment: "Moment", shear: "Shear", torsion: "Torsion" };

function Diagrams({ set }: { set: SetResult }) {
  const app = useApp();
  const { pose, context } = useSome("pose", "context");
  const { action, units } = useIt((state) => state.view);
  const host = useRef<HTMLDivElement>(null);
  const { width } = useSize(host);
  const lines = useMemo(() => (pose === null ? [] : diagramLines(pose)), [pose]);
  const marks = useMemo(() => (pose === null ? [] : diagramMarks(pose)), [pose]);
  const splices = useMemo(
    () => context?.set.splices.map(({ girder, at_m }) => ({ girder, x: at_m })) ?? [],
    [context],
  );
  return (
    <section aria-label="Actions along the girders">
      <Choice
        label="Along the girders"
        value={action}
        words={actions}
        choose={(next) => app.setView({ action: next })}
      />
      <div ref={host}>
        {lines.length === 0 ? (
          <p className="quiet">There is no solved pose here.</p>
        ) : (
          <GirderDiagrams
            lines={lines}
            envelopes={set.envelopes ?? []}
            marks={marks}
            splices={splices}
            action={action}
            units={units}
            width={width}
          />
        )}
      </div>
    </section>
  );
}

/** The stages that were looked at, worst marked; choosing one goes there and shows its shape. */
function Stages({ set, found }: { set: SetResult; found: SetBuckling }) {
  const app = useApp();
  const cursor = useIt((state) => state.cursor);
  const least = leastStage(found.stages);
  return (
    <table className="stages">
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">at</th>
          <th scope="col">buckles at</th>
          <th scope="col">shape</th>
        </tr>
      </thead>
      <tbody>
        {found.stages.map((stage) => {
          const here = stage.step === cursor.step && stage.progress === cursor.progress;
          const key = `${stage.step} ${stage.progress} ${stage.why}`;
          return (
            <tr key={key} className={here ? "selected" : ""} data-stage={key}>
              <th scope="row">
                <button
                  type="button"
                  className="plain"
                  aria-current={here}
                  onClick={() => app.chooseStage(stage)}
                >
                  {`${stage.step + 1} ${set.steps[stage.step].step.id}`}
                </button>
              </th>
              <td>{`${Math.round(stage.progress * 100)} %${stage.why === "rest" ? "" : ", bent most"}`}</td>
              <td className={stage === least ? "strong" : ""} data-factor={stage.factor ?? ""}>
                {`${factorWords(stage)}${stage === least ? " (least)" : ""}`}
              </td>
              <td>{shapeWords(stage)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Buckling({ set }: { set: SetResult }) {
  const app = useApp();
  const { bucklings, buckling } = useSome("bucklings", "buckling");
  const shown = useIt((state) => state.view.buckled);
  const found = bucklings[set.setId];
  const running = buckling.is === "running";
  return (
    <section aria-label="Buckling">
      <h2>Buckling</h2>
      <p className="quiet">
        Factor on all loads together at which the set buckles: linear, straight girders, contacts as they
        carry.
      </p>
      <p>
        {running ? (
          <>
            <span role="status">{`Looking at stage ${buckling.done} of ${buckling.of || "…"} `}</span>
            <button type="button" disabled={buckling.stopping} onClick={app.stopBuckling}>
              Stop
            </button>
          </>
        ) : (
          <button type="button" onClick={app.buckle}>
            {found === undefined ? "Find the factors" : "Find them again"}
          </button>
        )}{" "}
        {found !== undefined && (
          <label>
            <input
              type="checkbox"
              checked={shown}
              onChange={(event) => app.setView({ buckled: event.target.checked })}
            />{" "}
            Draw the buckled shape
          </label>
        )}
      </p>
      {buckling.is === "failed" && (
        <p className="strong">{`It could not be worked out: ${buckling.words}`}</p>
      )}
      {found !== undefined && found.stages.length < found.of && (
        <p>{`Stopped: ${found.stages.length} of ${found.of} stages were looked at.`}</p>
      )}
      {found !== undefined && <Stages set={set} found={found} />}
    </section>
  );
}

/** The whole panel. */
export const GirderPanel = memo(function GirderPanel() {
  const { result, cursor } = useSome("result", "cursor");
  const set = result?.sets[cursor.set] ?? null;
  if (set === null) return null;
  return (
    <div className="girder-panel">
      <Diagrams set={set} />
      <Buckling set={set} />
    </div>
  );
});
