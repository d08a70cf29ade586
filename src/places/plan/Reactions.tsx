// The table of reactions at the cursor: every number is of the pose on screen, solved for it.
import { memo } from "react";
import { colourOf, storedAt } from "../../app/index.ts";
import { missing, print, printed, type System, signOf } from "../../units/index.ts";
import { useApp, useIt } from "../appContext.ts";
import { type Fold, type TableRow, tableOf } from "./rows.ts";

const percent = (value: number, units: System): string => printed(value, "percent", units).number;

/** Low and high of a share over what is uncertain, in words; '' where they are not known. */
function rangeOf(ends: readonly [number, number], units: System): string {
  const [low, high] = ends.map((end) => printed(end, "load", units).number);
  return ends.some(Number.isNaN) ? "" : `low ${low}, high ${high}`;
}

function BandRow(props: { row: TableRow; weight: number; range: string; units: System }) {
  const { row, weight, range, units } = props;
  const app = useApp();
  const selected = useIt((state) => state.selected) === row.name;
  const carries = Number.isFinite(row.load);
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
        {range !== "" && (
          <small
            className="range"
            title="low and high of the share over what is uncertain, at this place of this step"
          >
            {range}
          </small>
        )}
      </th>
      <td>{printed(row.share, "load", units).number}</td>
      <td>{percent(row.share / weight, units)}</td>
      <td>{printed(row.load, "load", units).number}</td>
      <td title={row.check === "" ? "no limit in force" : row.check}>{percent(row.use, units)}</td>
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
        <td>{known ? printed(sum, "load", units).number : missing}</td>
        <td>{known ? percent(sum / weight, units) : missing}</td>
        <td />
        <td />
      </tr>
      <tr>
        <th scope="row">weight of the set</th>
        <td>{printed(weight, "load", units).number}</td>
        <td colSpan={3} className="quiet">
          {known && `out of balance ${pose.solution.residual.force.toExponential(0)} of it`}
        </td>
      </tr>
    </tfoot>
  );
}

/** Who carries how much at the cursor, in the order of the picture. */
export const Reactions = memo(function Reactions() {
  const app = useApp();
  const { result, document, cursor, pose, noPose, spreads } = useIt((state) => state);
  const units = useIt((state) => state.view.units);
  const set = app.set();
  if (result === null || document === null || set === null || set.steps.length === 0) return null;
  const { bands, folds } = tableOf(result, document.plan, set, cursor.step, pose);
  const load = signOf("load", units);
  // Low and high are known at stored poses only, and never read off between two of them.
  const spread = spreads[set.setId];
  const stored = pose === null ? -1 : storedAt(set, cursor);
  const range = (name: string): string => {
    const j = set.supports.findIndex((support) => support.name === name);
    if (spread === undefined || stored < 0 || j < 0) return "";
    const at = stored * set.supports.length + j;
    return rangeOf([spread.low[at], spread.high[at]], units);
  };
  return (
    <section className="reactions" aria-label="Reactions at the cursor">
      <table>
        <caption>Reactions at the cursor</caption>
        <thead>
          <tr>
            <th scope="col">Support</th>
            <th scope="col">
              Share <small>{load}</small>
            </th>
            <th scope="col">
              of set <small>%</small>
            </th>
            <th scope="col">
              Feels <small>{load}</small>
            </th>
            <th scope="col" title="Highest use of a limit in this step">
              Step's use <small>%</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {bands.map((row) => (
            <BandRow key={row.name} row={row} weight={set.weight} range={range(row.name)} units={units} />
          ))}
        </tbody>
        <Sums bands={bands} weight={set.weight} units={units} />
      </table>
      {noPose !== "" && <p className="no-pose">{noPose}</p>}
      {folds.map((fold) => (
        <FoldRows key={fold.name} fold={fold} units={units} />
      ))}
    </section>
  );
});
