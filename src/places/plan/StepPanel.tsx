// What is to be known of the cursor's step beside its loads: whether the set would fall in it, and the way back.
import { memo } from "react";
import {
  inPlanUnits,
  type Plan,
  planOfSet,
  type SetResult,
  type System,
  stepWords,
  type WayBack,
  type WayBackTry,
} from "../../app/index.ts";
import { allBacked, LevelShape, stretchLines } from "../../share/index.ts";
import { useApp, useIt } from "../appContext.ts";

/** A sentence of the solver; it says so when its numbers stay in the plan's units. */
function Sentence({ words, units }: { words: string; units: System }) {
  return (
    <p>
      {words}
      {inPlanUnits(words, units) && <small className="plan-units"> (in the plan's units)</small>}
    </p>
  );
}

function Backed({ set, step, units }: { set: SetResult; step: number; units: System }) {
  const { backed } = set;
  if (backed === undefined) return <p className="quiet">Still being worked out.</p>;
  if (backed.stretches.length === 0) return <p>{allBacked}</p>;
  const own = backed.stretches.filter((stretch) => stretch.step === step);
  if (own.length === 0) return <p>Backed throughout this step: any one hook or group may be lost.</p>;
  return own.map((stretch) => (
    <div key={stretch.from} className={stretch.accepted ? "stretch" : "stretch stop"}>
      {stretchLines(stretch, units).map((line) => (
        <Sentence key={line} words={line} units={units} />
      ))}
    </div>
  ));
}

/** From where in the step, whether it works, by which commands, and how it ends. */
function Try({ plan, one, units }: { plan: Plan; one: WayBackTry; units: System }) {
  return (
    <tr data-try={one.progress} data-ok={one.ok}>
      <th scope="row">{`${Math.round(one.progress * 100)} %`}</th>
      <td className={one.ok ? "" : "strong"}>{one.ok ? "works" : "fails"}</td>
      <td>
        {one.steps.length > 0 && (
          <ol>
            {one.steps.map((step) => (
              <li key={step.id}>{stepWords(plan, step, units)}</li>
            ))}
          </ol>
        )}
        <Sentence words={one.words} units={units} />
      </td>
    </tr>
  );
}

const sources: Readonly<Record<WayBack["source"], string>> = {
  plan: "stated in the plan",
  proposed: "not stated; proposed: the step's motion the other way",
  none: "none: past the point of no return",
};

function Back({ plan, set, step, units }: { plan: Plan; set: SetResult; step: number; units: System }) {
  if (set.waysBack === undefined) return <p className="quiet">Still being worked out.</p>;
  const way = set.waysBack.find((one) => one.step === step);
  if (way === undefined) return <p className="quiet">Not tried for this step.</p>;
  const bad = way.source !== "proposed" && way.from.some(({ ok }) => !ok);
  return (
    <>
      <p data-source={way.source}>
        {bad && (
          <svg width="16" height="16" viewBox="-8 -8 16 16" aria-hidden="true">
            <LevelShape level={way.source === "plan" ? "stop" : "note"} />
          </svg>
        )}
        {sources[way.source]}
        {bad && way.source === "plan" && ", and it fails"}
      </p>
      <table className="way-back">
        <thead>
          <tr>
            <th scope="col">from</th>
            <th scope="col">verdict</th>
            <th scope="col">commands, and how it ends</th>
          </tr>
        </thead>
        <tbody>
          {way.from.map((one) => (
            <Try key={one.progress} plan={plan} one={one} units={units} />
          ))}
        </tbody>
      </table>
    </>
  );
}

/** The panel of one step. */
export const StepPanel = memo(function StepPanel() {
  const app = useApp();
  const result = useIt((state) => state.result);
  const plan = useIt(planOfSet);
  const step = useIt((state) => state.cursor.step);
  const units = useIt((state) => state.view.units);
  const set = app.set();
  const run = set?.steps[step];
  if (plan === null || result === null || set === null || run === undefined) return null;
  const zone = (run.step.exclusion ?? "").trim();
  return (
    <section
      className="step-panel"
      aria-label={`Step ${step + 1}`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
      tabIndex={0}
    >
      <h2>Way back</h2>
      <Back plan={plan} set={set} step={step} units={units} />
      <h2>Backed</h2>
      <Backed set={set} step={step} units={units} />
      <p>
        <span className="quiet">kept empty</span> {zone === "" ? "no zone is named" : zone}
      </p>
    </section>
  );
});
