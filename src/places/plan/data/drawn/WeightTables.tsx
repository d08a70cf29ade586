// Weights in tables: the take-off by what it counts, and the ledger's lines against it with what the check allows.
import type { PlanSet, TakeOff } from "../../../../plan/index.ts";
import { missing, print, printed, type System, signOf } from "../../../../units/index.ts";
import { type LedgerRow, ledgerRows, sumsOf } from "./weights.ts";

/** Masses by what they count, and the whole. */
export function TakeOffTable({ takeOff, system }: { takeOff: TakeOff; system: System }) {
  return (
    <table className="drawn-table">
      <caption>Take-off of the set</caption>
      <thead>
        <tr>
          <th scope="col">Counts</th>
          <th scope="col" className="number">
            Items
          </th>
          <th scope="col" className="number">{`Mass, ${signOf("mass", system)}`}</th>
          <th scope="col" className="number">
            Part, %
          </th>
        </tr>
      </thead>
      <tbody>
        {sumsOf(takeOff).map(({ counted, mass, lines }) => (
          <tr key={counted}>
            <th scope="row">{counted}</th>
            <td className="number">{lines}</td>
            <td className="number">{printed(mass, "mass", system).number}</td>
            <td className="number">{printed(mass / takeOff.mass, "percent", system).number}</td>
          </tr>
        ))}
        <tr className="strong">
          <th scope="row">whole set</th>
          <td className="number">{takeOff.lines.length}</td>
          <td className="number">{printed(takeOff.mass, "mass", system).number}</td>
          <td className="number">100</td>
        </tr>
      </tbody>
    </table>
  );
}

/** A difference with its sign, in percent. */
const percent = (part: number | null) =>
  part === null ? missing : `${part > 0 ? "+" : part < 0 ? "−" : ""}${Math.abs(100 * part).toFixed(1)} %`;

/** What the check of weights says of a line, by shape and word. */
export function verdictOf({ is, low, high }: LedgerRow, system: System): string {
  const allowed = `${printed(low, "mass", system).number} to ${print(high, "mass", system)} allowed`;
  switch (is) {
    case "inside":
      return `● inside, ${allowed}`;
    case "below":
      return `■ take-off below low, ${allowed}`;
    case "above":
      return `■ take-off above high, ${allowed}`;
    default:
      return "not compared: the line does not say what it covers";
  }
}

/** Every line of the ledger against the take-off of the same parts. */
export function LedgerTable(props: { set: PlanSet; takeOff: TakeOff; system: System; sources?: boolean }) {
  const { set, takeOff, system, sources = false } = props;
  const rows = ledgerRows(set, takeOff);
  if (rows.length === 0)
    return <p className="quiet">The weight ledger has no line: nothing to compare with.</p>;
  const unit = signOf("mass", system);
  return (
    <table className="drawn-table">
      <caption>{`Weight ledger against the take-off, ${unit}`}</caption>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Covers</th>
          <th scope="col" className="number">
            Low
          </th>
          <th scope="col" className="number">
            Best
          </th>
          <th scope="col" className="number">
            High
          </th>
          <th scope="col" className="number">
            Take-off
          </th>
          <th scope="col" className="number" title="Take-off against the best value">
            From best
          </th>
          <th scope="col">Check of weights</th>
          {sources && <th scope="col">Source, date</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line is told by its place; its name may be blank while it is typed.
          <tr key={i} data-verdict={row.is}>
            <th scope="row">{row.item}</th>
            <td>{row.covers || missing}</td>
            {[row.low, row.best, row.high, row.takeOff].map((mass, k) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: four columns that stay.
              <td key={k} className="number">
                {printed(mass, "mass", system).number}
              </td>
            ))}
            <td className="number">{percent(row.apart)}</td>
            <td>{verdictOf(row, system)}</td>
            {sources && <td>{`${row.source || "no source"}, ${row.date || "no date"}`}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
