// The table of reactions at the cursor: every number is of the pose on screen, solved for it.
import { memo, useEffect, useMemo, useState } from "react";
import {
  colourOf,
  cornerWords,
  type Plan,
  planOfSet,
  type SetResult,
  type SpreadResult,
  setOfPose,
  storedAt,
} from "../../app/index.ts";
import { missing, print, printed, type System, signOf } from "../../units/index.ts";
import { useApp, useIt, useSome } from "../appContext.ts";
import { Older } from "./Older.tsx";
import { type Fold, type TableRow, tableOf, type Use } from "./rows.ts";

const percent = (value: number, units: System): string => printed(value, "percent", units).number;
/** Which limit a use is of, and which rule governs it. */
function useTitle({ check }: Use, subject: string, set: SetResult): string {
  if (check === "") return "no limit in force";
  const strip = set.strips.find((one) => one.check === check && one.subject === subject);
  return strip === undefined ? check : `${check}: ${strip.limitWords}`;
}

/** Low and high of a share at a stored pose, N, and the corners that gave them; null where they are not known. */
interface Range {
  low: number;
  high: number;
  corners: string;
}

function rangeOf(
  plan: Plan,
  set: SetResult,
  spread: SpreadResult | null,
  stored: number,
  name: string,
): Range | null {
  const j = set.supports.findIndex((support) => support.name === name);
  if (spread === null || stored < 0 || j < 0) return null;
  const at = stored * set.supports.length + j;
  const corner = (of: Uint16Array) => cornerWords(plan, set, spread, of[at], stored);
  const corners = `low: ${corner(spread.lowCorner)}\nhigh: ${corner(spread.highCorner)}`;
  return Number.isNaN(spread.low[at]) ? null : { low: spread.low[at], high: spread.high[at], corners };
}

function BandRow(props: { row: TableRow; set: SetResult; range: Range | null; units: System }) {
  const { row, set, range, units } = props;
  const { weight } = set;
  const app = useApp();
  const selected = useIt((state) => state.selected) === row.name;
  const carries = Number.isFinite(row.load);
  const load = (value: number | undefined) => printed(value, "load", units).number;
  return (
    <tr className={[carries ? "" : "away", selected ? "selected" : ""].join(" ")} data-support={row.name}>
      <th scope="row">
        <button
          type="button"
          className="plain"
          onClick={() => app.select(selected ? "" : row.name)}
          aria-pressed={selected}
        >
          <span className="swatch" style={{ background: colourOf(row.kind) }} />
          {row.name}
        </button>
      </th>
      <td className="share">{load(row.share)}</td>
      <td className="range low" title={range?.corners}>
        {range === null ? "" : load(range.low)}
      </td>
      <td className="range high" title={range?.corners}>
        {range === null ? "" : load(range.high)}
      </td>
      <td>{percent(row.share / weight, units)}</td>
      <td>{load(row.load)}</td>
      <td className="use here" title={useTitle(row.here, row.name, set)}>
        {percent(row.here.use, units)}
      </td>
      <td className="use step" title={useTitle(row.inStep, row.name, set)}>
        {percent(row.inStep.use, units)}
      </td>
    </tr>
  );
}

function FoldRows({ fold, units }: { fold: Fold; units: System }) {
  const range = `${printed(fold.least, "load", units).number} to ${print(fold.most, "load", units)}`;
  return (
    <details>
      <summary>
        <span className="swatch" style={{ background: colourOf(fold.kind) }} />
        <span className="fold-name">{`${fold.name} (${fold.rows.length})`}</span>
        <span className="number">{range}</span>
      </summary>
      <ul>
        {fold.rows.map((row) => (
          <li key={row.name}>
            <span>{row.name}</span>
            <span className="number">{print(row.load, "load", units)}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Sum of the shares and what is left of equilibrium, below the table. */
function Sums({ bands, weight, units }: { bands: TableRow[]; weight: number; units: System }) {
  const pose = useIt((state) => state.pose);
  const sum = bands.reduce((all, { share }) => all + (Number.isFinite(share) ? share : 0), 0);
  const known = pose !== null;
  return (
    <tfoot>
      <tr>
        <th scope="row">all supports</th>
        <td className="share">{known ? printed(sum, "load", units).number : missing}</td>
        <td colSpan={2} />
        <td>{known ? percent(sum / weight, units) : missing}</td>
        <td colSpan={3} />
      </tr>
      <tr>
        <th scope="row">set's weight</th>
        <td className="share">{printed(weight, "load", units).number}</td>
        <td colSpan={6} className="quiet">
          {known && `out of balance ${pose.solution.residual.force.toExponential(0)} of it`}
        </td>
      </tr>
    </tfoot>
  );
}

type Reader = typeof import("./uses.ts");

/** Uses of limits in the pose at the cursor; none before the checks are loaded. */
function useUses(): ReadonlyMap<string, Use> {
  const { pose, context } = useSome("pose", "context");
  const [reader, setReader] = useState<Reader | null>(null);
  useEffect(() => {
    import("./uses.ts").then(setReader, () => undefined);
  }, []);
  const measures = useMemo(
    () => (reader === null || context === null ? null : reader.stripMeasures(context)),
    [reader, context],
  );
  return useMemo(
    () =>
      reader === null || measures === null || pose === null ? new Map() : reader.usesHere(measures, pose),
    [reader, measures, pose],
  );
}

/** Who carries how much at the cursor, in the order of the picture. */
export const Reactions = memo(function Reactions() {
  const { result, document, cursor, pose, noPose, spreads, answered, context } = useSome(
    "result",
    "document",
    "cursor",
    "pose",
    "noPose",
    "spreads",
    "answered",
    "context",
  );
  const units = useIt((state) => state.view.units);
  const uses = useUses();
  const set = useMemo(() => setOfPose({ result, cursor, answered }), [result, cursor, answered]);
  if (result === null || document === null || set === null || set.steps.length === 0) return null;
  const plan = context?.plan ?? planOfSet({ document, result, cursor, answered });
  if (plan === null) return null;
  const { bands, folds } = tableOf(result, plan, set, cursor.step, pose, uses);
  const load = signOf("load", units);
  // Low and high are known at stored poses only, and never read off between two of them.
  const spread = answered.step === null ? (spreads[set.setId]?.spread ?? null) : null;
  const stored = pose === null ? -1 : storedAt(set, cursor);
  return (
    <section className="reactions" aria-label="Reactions at the cursor">
      <table>
        <caption>
          Reactions at the cursor <small>{`loads in ${load}`}</small> <Older what="pose" />
        </caption>
        <colgroup>
          <col className="name" />
          <col span={3} />
          <col className="part" />
          <col />
          <col className="uses" span={2} />
        </colgroup>
        <thead>
          <tr>
            <th scope="col">Support</th>
            <th scope="col" title="Share of the weight of the set">
              Share
            </th>
            <th
              scope="col"
              title="Low of the share over what is uncertain, at stored places: starts, events, ends"
            >
              Low
            </th>
            <th
              scope="col"
              title="High of the share over what is uncertain, at stored places: starts, events, ends"
            >
              High
            </th>
            <th scope="col" title="Share in percent of the weight of the set">
              of set <small>%</small>
            </th>
            <th scope="col" title="Load with tare or rigging">
              Feels
            </th>
            <th scope="col" title="Highest use of a limit at the cursor">
              use here <small>%</small>
            </th>
            <th scope="col" title="Highest use of a limit in this step">
              step's use <small>%</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {bands.map((row) => (
            <BandRow
              key={row.name}
              row={row}
              set={set}
              range={rangeOf(plan, set, spread, stored, row.name)}
              units={units}
            />
          ))}
        </tbody>
        <Sums bands={bands} weight={set.weight} units={units} />
      </table>
      {noPose !== "" && <p className="no-pose">{noPose}</p>}
      {folds.length > 0 && (
        <details className="finer">
          <summary>Lines, bunks, cylinders and lashings</summary>
          {folds.map((fold) => (
            <FoldRows key={fold.name} fold={fold} units={units} />
          ))}
        </details>
      )}
    </section>
  );
});
