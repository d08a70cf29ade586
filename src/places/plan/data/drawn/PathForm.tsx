// The path of the transporters drawn from the side: elevation exaggerated, crossfall below it, trains where the set begins.
import { useRef } from "react";
import { colourOf } from "../../../../app/index.ts";
import type { Plan } from "../../../../plan/index.ts";
import { useSize } from "../../../../share/index.ts";
import { fromSI, print, type System, signOf, unitFor } from "../../../../units/index.ts";
import type { OwnFormProps } from "../table.ts";
import { roundFactor, scaleOf, tickStep, ticksOf, tickText } from "./axes.ts";
import { type Profile, profileOf } from "./profile.ts";
import "./drawn.css";

const [LEFT, RIGHT, TOP, HIGH, LANE] = [62, 16, 62, 120, 58];
const HEIGHT = TOP + HIGH + 22 + LANE + 34;

function Drawing({ plan, it, system }: { plan: Plan; it: Profile; system: System }) {
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const { points, stretches, footprints, marks } = it;
  const chainages = [...points.map(({ at }) => at), ...footprints.flatMap(({ from, to }) => [from, to])];
  const drawnFrom = Math.min(...chainages);
  // What stands a little beyond the path's end, as the face of the abutment, is drawn too.
  const beyond = 0.15 * (Math.max(...chainages) - drawnFrom);
  const end = Math.max(...chainages);
  const near = marks.map(({ at }) => at).filter((at) => at > end && at < end + beyond);
  const [first, last] = [drawnFrom, Math.max(end, ...near)];
  const levels = points.map(({ elevation }) => elevation);
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  const x = scaleOf(first, last, LEFT, width - RIGHT);
  const perMetre = x(first + 1) - x(first);
  const factor = roundFactor(HIGH / (Math.max(0.05, high - low) * perMetre));
  const y = (elevation: number) => TOP + HIGH - (elevation - low) * perMetre * factor;
  const length = (m: number) => fromSI(m, unitFor("length", system));
  const metre = 1 / length(1);
  const across = ticksOf(length(first), length(last), 8);
  const up = ticksOf(length(low), length(low + HIGH / perMetre / factor), 4);
  const steepest = Math.max(0.5, ...points.map(({ crossfall_pct }) => Math.abs(crossfall_pct)));
  const base = TOP + HIGH + 22 + LANE / 2;
  const c = scaleOf(-steepest, steepest, base + LANE / 2 - 8, base - LANE / 2 + 8);
  const trains = footprints.map(
    ({ id, from, to }) => `${id} from ${print(from, "length", system)} to ${print(to, "length", system)}`,
  );
  const says = `Path by chainage: ${points
    .map(
      ({ at, elevation, crossfall_pct }) =>
        `${print(at, "length", system)} at elevation ${print(elevation, "length", system)}, crossfall ${crossfall_pct} %`,
    )
    .slice(0, 40)
    .join("; ")}. At the start: ${trains.join(", ") || "no transporter"}.`;
  return (
    <div ref={place} className="drawn-place" style={{ minHeight: HEIGHT }}>
      {width > 120 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={says} className="drawn">
          {across.map((at) => (
            <g key={at}>
              <line className="grid" x1={x(at * metre)} x2={x(at * metre)} y1={TOP} y2={HEIGHT - 34} />
              <text x={x(at * metre)} y={HEIGHT - 20} textAnchor="middle">
                {tickText(at, tickStep(length(last) - length(first), 8))}
              </text>
            </g>
          ))}
          {up.map((at) => (
            <g key={at}>
              <line className="grid" x1={LEFT} x2={width - RIGHT} y1={y(at * metre)} y2={y(at * metre)} />
              <text x={LEFT - 5} y={y(at * metre) + 4} textAnchor="end">
                {tickText(at, tickStep(length(low + HIGH / perMetre / factor) - length(low), 4))}
              </text>
            </g>
          ))}
          {marks
            .filter(({ at }) => at >= first && at <= last)
            .map(({ at, words }, i) => (
              <g key={words} className="site-mark">
                <line x1={x(at)} x2={x(at)} y1={14 + 13 * i} y2={HEIGHT - 34} />
                <text x={x(at) - 4} y={12 + 13 * i} textAnchor="end" className="faint">
                  {words}
                </text>
              </g>
            ))}
          {footprints.map(({ id, from, to, lines, elevation, bunkHeight }) => {
            const ground = y(elevation ?? low);
            const kind = plan.transporters.find((one) => one.id === id)?.kind ?? "front";
            const tall = Math.min(34, Math.max(16, bunkHeight * perMetre));
            return (
              <g key={id} className="footprint">
                <rect
                  x={x(from)}
                  width={x(to) - x(from)}
                  y={ground - tall}
                  height={tall - 8}
                  fill={colourOf(`${kind} train`)}
                />
                {lines.map((at) => (
                  <circle key={at} cx={x(at)} cy={ground - 4} r="3.5" />
                ))}
                <text x={x((from + to) / 2)} y={ground - tall - 5} textAnchor="middle">
                  {id}
                </text>
              </g>
            );
          })}
          <path
            className="ground"
            d={`M${points.map(({ at, elevation }) => `${x(at).toFixed(1)} ${y(elevation).toFixed(1)}`).join("L")}`}
          />
          {points.map(({ at, elevation }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is told by its place; two may have one chainage while typed.
            <circle key={i} className="point" cx={x(at)} cy={y(elevation)} r="2.6" />
          ))}
          {stretches
            .filter(({ from, to }) => x(to) - x(from) > 46)
            .map(({ from, to, grade_pct }) => (
              <text
                key={from}
                x={x((from + to) / 2)}
                y={TOP + HIGH + 15}
                textAnchor="middle"
                className="faint"
              >
                {`${grade_pct.toFixed(2)} %`}
              </text>
            ))}
          <text x="4" y={TOP + HIGH + 15} className="faint">
            grade
          </text>
          <line className="straight" x1={LEFT} x2={width - RIGHT} y1={base} y2={base} />
          <path
            className="ground"
            d={`M${points.map(({ at, crossfall_pct }) => `${x(at).toFixed(1)} ${c(crossfall_pct).toFixed(1)}`).join("L")}`}
          />
          <text x="4" y={c(steepest) + 4} className="faint">
            {`${steepest} % left`}
          </text>
          <text x="4" y={base + 4} className="faint">
            crossfall
          </text>
          <text x="4" y={c(-steepest) + 4} className="faint">
            {`${steepest} % right`}
          </text>
          <text x={width - RIGHT} y={HEIGHT - 5} textAnchor="end" className="faint">
            {`chainage, ${signOf("length", system)}`}
          </text>
          <text x="4" y={TOP - 8} className="faint">
            {`elevation, ${signOf("length", system)}`}
          </text>
        </svg>
      )}
      <p className="drawn-legend">
        {`Elevation is drawn ${factor} times as large as chainage; transporters where the set begins, not to that scale in height. Crossfall above its line falls to the left.`}
      </p>
    </div>
  );
}

export function PathForm({ ground, set }: OwnFormProps) {
  const { plan, system } = ground;
  const { points } = plan.site.path;
  const sound = points.every(({ chainage_m, elevation_m }) => Number.isFinite(chainage_m + elevation_m));
  if (points.length < 2 || !sound)
    return (
      <section className="drawn-form" aria-label="Path from the side">
        <p className="quiet">Type or paste at least two points of the path to see it drawn.</p>
      </section>
    );
  const it = profileOf(plan, plan.sets[set], (m) => print(m, "length", system));
  return (
    <section className="drawn-form" aria-label="Path from the side">
      <Drawing plan={plan} it={it} system={system} />
      {it.flags.length > 0 && (
        <ul className="flags" aria-label="What needs a look">
          {it.flags.map((words) => (
            <li key={words}>{`◆ ${words}`}</li>
          ))}
        </ul>
      )}
    </section>
  );
}
