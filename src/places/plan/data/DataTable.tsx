// A list or a record of plan data as a table, with what else can be done with its entries.
import { useMemo, useState } from "react";
import { Grid, type Spot } from "../../../controls/index.ts";
import { fieldOf, type PlanPath, valueAt } from "../../../plan/index.ts";
import { nameAt } from "./cells.ts";
import { entriesRemoved, entryAdded, entryCopied } from "./changes.ts";
import { StepTools } from "./StepTools.tsx";
import { type DataGround, tableOf } from "./table.ts";

/** "seats" is "seat", "entries" stay what they are called. */
function oneOf(words: string): string {
  if (words.endsWith("ies")) return `${words.slice(0, -3)}y`;
  return words.endsWith("s") && !words.endsWith("ss") ? words.slice(0, -1) : `entry of ${words}`;
}

/** What can be done with entries that stand side by side. */
function AcrossTools(props: { ground: DataGround; path: PlanPath; word: string }) {
  const { ground, path, word } = props;
  const { plan } = ground;
  const list = (valueAt(plan, path) ?? []) as unknown[];
  const [chosen, choose] = useState(0);
  const index = Math.min(chosen, Math.max(0, list.length - 1));
  return (
    <div className="grid-tools">
      <button type="button" onClick={() => ground.edit(entryAdded(plan, path, list.length, 1, word))}>
        {`Add ${word}`}
      </button>
      {list.length > 0 && (
        <>
          <label className="choice">
            <span className="unseen">{`Which ${word}`}</span>
            <select value={index} onChange={(event) => choose(Number(event.target.value))}>
              {list.map((_, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: an entry is told by its place; its name may be blank.
                <option key={i} value={i}>
                  {nameAt([...path, i], plan) || String(i + 1)}
                </option>
              ))}
            </select>
          </label>
          <button type="button" onClick={() => ground.edit(entryCopied(plan, path, index, word))}>
            Copy it
          </button>
          <button type="button" onClick={() => ground.edit(entriesRemoved(plan, path, index, 1, word))}>
            Remove it
          </button>
        </>
      )}
    </div>
  );
}

/** The table at a path. `goTo` leads to a cell of it. */
export function DataTable(props: {
  ground: DataGround;
  path: PlanPath;
  words: string;
  across?: boolean;
  survey?: boolean;
  goTo: { path: PlanPath; nonce: number } | null;
}) {
  const { ground, path, words, across = false, survey = false, goTo } = props;
  const { plan } = ground;
  const field = fieldOf(path, plan);
  const rowWord = oneOf(field?.words ?? "entry");
  const isSteps = path[path.length - 1] === "steps";
  const model = useMemo(
    () => tableOf(ground, { path, words, rowWord, across, survey, closed: isSteps }),
    [ground, path, words, rowWord, across, survey, isSteps],
  );
  // Led once to each place: later changes of the table do not draw the focus back.
  const [led, setLed] = useState<{ spot: Spot; nonce: number } | null>(null);
  if (goTo !== null && led?.nonce !== goTo.nonce) {
    const spots = model.rows.flatMap((_, row) => model.columns.map((__, column) => ({ row, column })));
    const spot = spots.find((one) => model.pathOf(one).join() === goTo.path.join());
    if (spot !== undefined) setLed({ spot, nonce: goTo.nonce });
  }
  return (
    <>
      {across && <AcrossTools ground={ground} path={path} word={rowWord} />}
      {isSteps && <StepTools ground={ground} path={path} />}
      <Grid model={model} goTo={led} />
    </>
  );
}
