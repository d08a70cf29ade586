// What can be done with a step, at first the one under the cursor: a new one behind it, a copy, a split; each one edit.
import { useState } from "react";
import { QuantityField } from "../../../controls/index.ts";
import { type PlanPath, type Step, valueAt } from "../../../plan/index.ts";
import { useIt } from "../../appContext.ts";
import { splitLength, stepAdded, stepCopied, stepKinds, stepSplit } from "./stepEdits.ts";
import type { DataGround } from "./table.ts";

/** Buttons over the table of steps. */
export function StepTools({ ground, path }: { ground: DataGround; path: PlanPath }) {
  const { plan, system } = ground;
  const steps = (valueAt(plan, path) ?? []) as Step[];
  const cursor = useIt((state) => state.cursor.step);
  const [chosen, choose] = useState(cursor);
  const index = Math.min(chosen, steps.length - 1);
  const step = steps[index] as Step | undefined;
  const [kind, setKind] = useState("roll");
  const [said, setSaid] = useState("");
  const length = step === undefined ? null : splitLength(step);
  return (
    <div className="grid-tools">
      <label className="choice">
        Step
        <select value={index} onChange={(event) => choose(Number(event.target.value))}>
          {steps.map((one, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is told by its place; its name may be blank while it is typed.
            <option key={i} value={i}>
              {`${one.id} ${one.do}`}
            </option>
          ))}
        </select>
      </label>
      <label className="choice">
        <span className="unseen">Action of a new step</span>
        <select value={kind} onChange={(event) => setKind(event.target.value)}>
          {stepKinds(plan).map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </label>
      <button
        type="button"
        onClick={() => {
          ground.edit(stepAdded(plan, path, index + 1, kind));
          choose(index + 1);
          ground.open([...path, index + 1]);
        }}
      >
        Add it behind
      </button>
      {step !== undefined && (
        <>
          <button type="button" onClick={() => ground.edit(stepCopied(plan, path, index))}>
            Copy step
          </button>
          <button type="button" onClick={() => ground.open([...path, index])}>
            All of the step
          </button>
        </>
      )}
      {length !== null && (
        <QuantityField
          key={`${index} ${length.value}`}
          label={`Split after, of ${length.value} ${length.unit}`}
          value={null}
          keptIn={length.unit}
          shown={length.unit === "m" ? "length" : "smallLength"}
          system={system}
          problem={said}
          commit={(at) => {
            const edit = stepSplit(plan, path, index, at);
            if (typeof edit === "string") setSaid(edit);
            else {
              setSaid("");
              ground.edit(edit);
            }
          }}
        />
      )}
    </div>
  );
}
