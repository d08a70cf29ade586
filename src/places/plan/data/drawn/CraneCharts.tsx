// A crane's load chart as curves, with the radii and hook loads of this plan on it.
import { useMemo, useRef, useState } from "react";
import { colourOf, olderOf } from "../../../../app/index.ts";
import { type Crane, gravityOf } from "../../../../plan/index.ts";
import { useSize } from "../../../../share/index.ts";
import { fromSI, missing, print, printed, signOf, toSI, unitFor } from "../../../../units/index.ts";
import { useApp, useIt, useSome } from "../../../appContext.ts";
import type { OwnFormProps } from "../table.ts";
import { scaleOf, spreadLabels, tickStep, ticksOf, tickText } from "./axes.ts";
import { curvePath, curvesOf, readsBetween, rowFlags } from "./chart.ts";
import { type CraneUse, craneUses } from "./craneUses.ts";
import "./drawn.css";

const HEIGHT = 300;
const [LEFT, RIGHT, TOP, BOTTOM] = [58, 92, 12, 40];
/** Dashes by boom length, in turn, so that curves are told apart without colour. */
const dashes = ["", "7 3", "2 3", "9 3 2 3"];

/** Steps of the plan on this crane's chart; empty while nothing is solved. */
function useUses(crane: string): CraneUse[] {
  const app = useApp();
  const { result, context, cursor } = useSome("result", "context", "cursor");
  const set = result?.sets[cursor.set] ?? null;
  return useMemo(
    () => (context === null || set === null ? [] : craneUses(context, set, crane, app.poseOf)),
    [app, context, set, crane],
  );
}

function Drawing(props: { crane: Crane; which: "chart" | "travelChart"; uses: CraneUse[]; gravity: number }) {
  const { crane, which, uses, gravity } = props;
  const system = useIt((state) => state.view.units);
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const chart = crane[which] ?? crane.chart;
  const curves = curvesOf(chart);
  const between = readsBetween(chart);
  const [lengthUnit, loadUnit] = [unitFor("length", system), unitFor("load", system)];
  const r = (m: number) => fromSI(m, lengthUnit);
  const f = (newton: number) => fromSI(newton, loadUnit);
  const load = (t: number) => f(toSI(t, "t") * gravity);
  const radii = [...chart.rows.map((row) => r(row.radius_m)), ...uses.map((use) => r(use.radius))];
  const most = Math.max(...chart.rows.map((row) => load(row.rated_t)), ...uses.map((use) => f(use.gross)));
  const [least, furthest] = [Math.min(...radii), Math.max(...radii)];
  const x = scaleOf(least, furthest, LEFT, width - RIGHT);
  const y = scaleOf(0, most * 1.05, HEIGHT - BOTTOM, TOP);
  const across = ticksOf(least, furthest, 8);
  const up = ticksOf(0, most * 1.05, 6);
  const ends = spreadLabels(
    curves.map(({ rows }) => y(load(rows[rows.length - 1].rated_t))),
    13,
    HEIGHT - BOTTOM,
  );
  const hue = colourOf(`${crane.kind} crane`);
  const says = `${which === "chart" ? "Load chart" : "Chart for travel with load"} of ${crane.id}: ${curves
    .map(
      ({ boom, rows }) =>
        `boom ${print(boom, "length", system)}, ${rows.length} rows from radius ${print(rows[0].radius_m, "length", system)} to ${print(rows[rows.length - 1].radius_m, "length", system)}`,
    )
    .join("; ")}. ${uses.length} steps of the set use it; the table below has them.`;
  return (
    <div ref={place} className="drawn-place" style={{ minHeight: HEIGHT }}>
      {width > LEFT + RIGHT && (
        <svg width={width} height={HEIGHT} role="img" aria-label={says} className="drawn">
          {across.map((at) => (
            <g key={at}>
              <line className="grid" x1={x(at)} x2={x(at)} y1={TOP} y2={HEIGHT - BOTTOM} />
              <text x={x(at)} y={HEIGHT - BOTTOM + 14} textAnchor="middle">
                {tickText(at, tickStep(furthest - least, 8))}
              </text>
            </g>
          ))}
          {up.map((at) => (
            <g key={at}>
              <line className="grid" x1={LEFT} x2={width - RIGHT} y1={y(at)} y2={y(at)} />
              <text x={LEFT - 5} y={y(at) + 4} textAnchor="end">
                {tickText(at, tickStep(most * 1.05, 6))}
              </text>
            </g>
          ))}
          <text className="axis-name" x={(LEFT + width - RIGHT) / 2} y={HEIGHT - 8} textAnchor="middle">
            {`radius, ${signOf("length", system)}`}
          </text>
          <text
            className="axis-name"
            transform={`translate(12 ${(TOP + HEIGHT - BOTTOM) / 2}) rotate(-90)`}
            textAnchor="middle"
          >
            {`rated load, ${signOf("load", system)}`}
          </text>
          {curves.map((curve, i) => {
            const own = Math.abs(curve.boom - crane.boomLength_m) < 1e-9;
            const last = curve.rows[curve.rows.length - 1];
            return (
              <g key={curve.boom} className={own ? "curve own-curve" : "curve"} data-boom={curve.boom}>
                <path
                  d={curvePath(
                    curve,
                    between,
                    (m) => x(r(m)),
                    (t) => y(load(t)),
                  )}
                  strokeDasharray={dashes[i % dashes.length]}
                />
                {curve.rows.map((row) => (
                  <circle
                    key={row.index}
                    cx={x(r(row.radius_m))}
                    cy={y(load(row.rated_t))}
                    r={own ? 2.6 : 1.8}
                  >
                    <title>
                      {`Row ${row.index + 1}: boom ${print(row.boom_m, "length", system)}, radius ${print(row.radius_m, "length", system)}, rated ${print(toSI(row.rated_t, "t") * gravity, "load", system)}`}
                    </title>
                  </circle>
                ))}
                <text x={x(r(last.radius_m)) + 7} y={ends[i] + 4}>
                  {`boom ${print(curve.boom, "length", system)}`}
                </text>
              </g>
            );
          })}
          {uses.map((use) => (
            <g key={use.step} className="used" data-step={use.id}>
              {use.rated !== null && (
                <line x1={x(r(use.radius))} x2={x(r(use.radius))} y1={y(f(use.gross))} y2={y(f(use.rated))} />
              )}
              <rect x={x(r(use.radius)) - 4} y={y(f(use.gross)) - 4} width="8" height="8" fill={hue}>
                <title>
                  {`${use.id}: radius ${print(use.radius, "length", system)}, on the hook ${print(use.gross, "load", system)}, rated ${print(use.rated, "load", system)}`}
                </title>
              </rect>
            </g>
          ))}
        </svg>
      )}
      <p className="drawn-legend">
        <span className="swatch" style={{ background: hue }} />
        {
          " load on the hook where a step uses the limit most; the line from it up to the rated load is the margin. "
        }
        {between
          ? "Between rows the rating lies on a line, as the quoted page allows."
          : "Between rows the rating of the next larger radius counts: no page is quoted that allows more."}
      </p>
    </div>
  );
}

/** The same as a table: radius, load, rated load and use of every step. */
function Uses({ uses }: { uses: CraneUse[] }) {
  const app = useApp();
  const system = useIt((state) => state.view.units);
  if (uses.length === 0)
    return <p className="quiet">No step of this set hangs a load on this crane, or nothing is solved yet.</p>;
  return (
    <table className="drawn-table">
      <caption className="unseen">Radius and load by step</caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col" className="number">{`Radius, ${signOf("length", system)}`}</th>
          <th scope="col" className="number">{`On the hook, ${signOf("load", system)}`}</th>
          <th scope="col" className="number">{`Rated, ${signOf("load", system)}`}</th>
          <th scope="col" className="number">
            Of rated, %
          </th>
          <th scope="col" className="number" title="Under the rule that governs">
            Of limit, %
          </th>
        </tr>
      </thead>
      <tbody>
        {uses.map((use) => (
          <tr key={use.step}>
            <th scope="row">
              <button type="button" className="plain" onClick={() => app.setCursor(use)}>
                {use.id}
              </button>
              {use.travels && <small> chart for travel</small>}
            </th>
            <td className="number">{printed(use.radius, "length", system).number}</td>
            <td className="number">{printed(use.gross, "load", system).number}</td>
            <td className="number">{printed(use.rated, "load", system).number}</td>
            <td className="number">
              {use.rated === null ? missing : printed(use.gross / use.rated, "percent", system).number}
            </td>
            <td className="number">{printed(use.use, "percent", system).number}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The form: which crane and chart, the curves, rows that need a look, and the steps on it. */
export function CraneCharts({ ground }: OwnFormProps) {
  const { plan, system } = ground;
  const [chosen, choose] = useState(0);
  const [travel, setTravel] = useState(false);
  const older = useIt((state) => olderOf(state).set);
  const index = Math.min(chosen, plan.cranes.length - 1);
  const crane = plan.cranes[index] as Crane | undefined;
  const uses = useUses(crane?.id ?? "");
  if (crane === undefined) return <p className="quiet">The plan has no crane. Add one below.</p>;
  const which = travel && crane.travelChart !== undefined ? "travelChart" : "chart";
  const gravity = gravityOf(plan);
  const rows = crane[which]?.rows ?? [];
  const flags = rowFlags(
    crane[which] ?? crane.chart,
    (m) => print(m, "length", system),
    (t) => print(toSI(t, "t") * gravity, "load", system),
  );
  const shown = uses.filter((use) => use.travels === (which === "travelChart"));
  return (
    <section className="drawn-form" aria-label="Load chart">
      <div className="grid-tools">
        <label className="choice">
          Crane
          <select value={index} onChange={(event) => choose(Number(event.target.value))}>
            {plan.cranes.map((one, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a crane is told by its place; its name may be blank while it is typed.
              <option key={i} value={i}>
                {one.id}
              </option>
            ))}
          </select>
        </label>
        {crane.travelChart !== undefined && (
          <label className="choice">
            Chart
            <select value={which} onChange={(event) => setTravel(event.target.value === "travelChart")}>
              <option value="chart">load chart</option>
              <option value="travelChart">for travel with load</option>
            </select>
          </label>
        )}
        <button type="button" onClick={() => ground.open(["cranes", index, which, "rows"])}>
          Rows: type or paste
        </button>
        <button type="button" onClick={() => ground.open(["cranes", index, which])}>
          Page and interpolation
        </button>
        {crane[which]?.invented && <span className="quiet">Invented chart: no maker's data.</span>}
      </div>
      {rows.length === 0 ? (
        <p className="quiet">This chart has no rows. Paste them from the chart's page.</p>
      ) : (
        <Drawing crane={crane} which={which} uses={shown} gravity={gravity} />
      )}
      {flags.length > 0 && (
        <ul className="flags" aria-label="Rows that need a look">
          {flags.slice(0, 20).map((flag) => (
            <li key={`${flag.index} ${flag.why}`}>
              <button
                type="button"
                className="plain"
                onClick={() => ground.open(["cranes", index, which, "rows"])}
              >
                {`◆ ${flag.words}`}
              </button>
            </li>
          ))}
          {flags.length > 20 && <li>{`and ${flags.length - 20} more rows`}</li>}
        </ul>
      )}
      {older && <p className="quiet">Radii and loads are those before the last change.</p>}
      <Uses uses={shown} />
    </section>
  );
}
