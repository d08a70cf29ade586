// The weight ledger against the take-off: each line as a band, the sum, the CG, and which value feeds the solver.
import { useRef } from "react";
import type { PlanSet, TakeOff } from "../../../../plan/index.ts";
import { useSize } from "../../../../share/index.ts";
import { fromSI, print, type System, signOf, unitFor } from "../../../../units/index.ts";
import type { OwnFormProps } from "../table.ts";
import { scaleOf, tickStep, ticksOf, tickText } from "./axes.ts";
import { LedgerTable, TakeOffTable, verdictOf } from "./WeightTables.tsx";
import { ledgerRows, ledgerSum, weighed } from "./weights.ts";
import "./drawn.css";

const LANE = 34;
const [LEFT, RIGHT, BOTTOM] = [12, 14, 34];

/** Every compared line as a band from low to high, with its best value and what the take-off finds. */
function Bands({ set, takeOff, system }: { set: PlanSet; takeOff: TakeOff; system: System }) {
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const rows = ledgerRows(set, takeOff);
  const mass = (kg: number) => fromSI(kg, unitFor("mass", system));
  const most = Math.max(...rows.flatMap(({ high, takeOff: own }) => [mass(high), mass(own ?? 0)])) * 1.05;
  const x = scaleOf(0, most, LEFT, width - RIGHT);
  const height = rows.length * LANE + BOTTOM;
  const says = rows
    .map(
      (row) =>
        `${row.item}: ${print(row.takeOff, "mass", system)} by the take-off, ${verdictOf(row, system)}.`,
    )
    .join(" ");
  if (rows.length === 0) return null;
  return (
    <div ref={place} className="drawn-place" style={{ minHeight: height }}>
      {width > 60 && (
        <svg width={width} height={height} role="img" aria-label={says} className="drawn">
          {ticksOf(0, most, 8).map((at) => (
            <g key={at}>
              <line className="grid" x1={x(at)} x2={x(at)} y1="0" y2={height - BOTTOM} />
              <text x={x(at)} y={height - BOTTOM + 14} textAnchor="middle">
                {tickText(at, tickStep(most, 8))}
              </text>
            </g>
          ))}
          {rows.map((row, i) => {
            const top = i * LANE + 14;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a line is told by its place; its name may be blank while it is typed.
              <g key={i} className="band" transform={`translate(0 ${top})`}>
                <text x={LEFT} y="-2">
                  {row.item}
                </text>
                <rect
                  x={x(mass(row.low))}
                  width={Math.max(1, x(mass(row.high)) - x(mass(row.low)))}
                  y="3"
                  height="10"
                />
                <line x1={x(mass(row.best))} x2={x(mass(row.best))} y1="0" y2="16" />
                {row.takeOff !== null && (
                  <path d={`M${x(mass(row.takeOff))} 1l6 7l-6 7l-6-7z`}>
                    <title>{`take-off ${print(row.takeOff, "mass", system)}`}</title>
                  </path>
                )}
              </g>
            );
          })}
          <text x={width - RIGHT} y={height - 4} textAnchor="end" className="faint">
            {`mass, ${signOf("mass", system)}`}
          </text>
        </svg>
      )}
      <p className="drawn-legend">
        Bar: low to high of the ledger; stroke: its best value; diamond: take-off.
      </p>
    </div>
  );
}

/** The sum of the ledger, or which parts no line covers; and how far the take-off is from it. */
function sumWords(set: PlanSet, takeOff: TakeOff, system: System): string {
  const sum = ledgerSum(set, takeOff);
  if ("missing" in sum)
    return `The ledger does not weigh the whole set: no line covers ${sum.missing.join(" or ")}.`;
  const apart = takeOff.mass - sum.best;
  return `Whole set by the ledger, ${sum.by === "whole" ? "its own line" : "sum of the lines for its parts"}: ${print(sum.best, "mass", system)}, between ${print(sum.low, "mass", system)} and ${print(sum.high, "mass", system)}. The take-off is ${print(Math.abs(apart), "mass", system)} (${((100 * Math.abs(apart)) / sum.best).toFixed(1)} %) ${apart >= 0 ? "above" : "below"} its best value.`;
}

export function LedgerForm({ ground, set: index }: OwnFormProps) {
  const { plan, system } = ground;
  const set = plan.sets[index];
  const all = weighed(set);
  if (!all.ok)
    return (
      <section className="drawn-form" aria-label="Weights">
        <p className="flags">{`◆ ${all.words}`}</p>
      </section>
    );
  const { takeOff } = all;
  const [along, left, up] = takeOff.cg;
  return (
    <section className="drawn-form" aria-label="Weights">
      <p>
        <span className="strong">{`The solver weighs the take-off: ${print(takeOff.mass, "mass", system)}.`}</span>
        {
          " No line of the ledger feeds it; the ledger is what the take-off is checked against, and what the reading of a trial lift is compared with. Low and high of the weight in the spread of the data are their own values."
        }
      </p>
      <p>{sumWords(set, takeOff, system)}</p>
      <p>
        {`CG by the take-off: ${print(along, "length", system)} from the rear end, ${print(Math.abs(left), "smallLength", system)} ${left >= 0 ? "left" : "right"} of the set's axis, ${print(up, "length", system)} above the soffit. The ledger states no CG.`}
      </p>
      <Bands set={set} takeOff={takeOff} system={system} />
      <LedgerTable set={set} takeOff={takeOff} system={system} sources />
      <TakeOffTable takeOff={takeOff} system={system} />
    </section>
  );
}
