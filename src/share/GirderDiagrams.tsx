// Moment, shear or torsion of every girder at the cursor, with the envelope of all steps behind it and its supports.
import { memo, type PointerEvent, useMemo, useState } from "react";
import type { GirderEnvelope, System } from "../app/index.ts";
import type { DiagramLine, DiagramMark } from "../report/index.ts";
import { print, printed, type Shown, signOf } from "../units/index.ts";
import { type Action, diagramPath, envelopePath, type Lane, nearest, peakOf, scaleOf } from "./diagram.ts";
import { cut } from "./frame.ts";

interface Props {
  lines: readonly DiagramLine[];
  envelopes: readonly GirderEnvelope[];
  marks: readonly DiagramMark[];
  /** Stations of field splices. */
  splices: readonly { girder: string; x: number }[];
  action: Action;
  units: System;
  width: number;
}

const shownAs: Readonly<Record<Action, Shown>> = { moment: "moment", shear: "load", torsion: "moment" };
const LANE = 92;
const [LEFT, RIGHT] = [30, 12];

/** One lane for every girder, all on one scale; the moment is drawn on the side that it stretches. */
export const GirderDiagrams = memo(function GirderDiagrams(props: Props) {
  const { lines, envelopes, marks, splices, action, units, width } = props;
  const [hover, setHover] = useState<number | null>(null);
  const scale = useMemo(() => scaleOf(lines, envelopes, action), [lines, envelopes, action]);
  const stations = lines.flatMap(({ points }) => points.map((p) => p.x));
  if (stations.length === 0 || width <= LEFT + RIGHT) return null;
  const [from, to] = [Math.min(...stations), Math.max(...stations)];
  const inner = width - LEFT - RIGHT;
  const x = (station: number) => LEFT + ((station - from) / (to - from)) * inner;
  const onMove = (event: PointerEvent<SVGSVGElement>) => {
    const { left } = event.currentTarget.getBoundingClientRect();
    const station = from + ((event.clientX - left - LEFT) / inner) * (to - from);
    setHover(station >= from && station <= to ? station : null);
  };
  const shown = shownAs[action];
  return (
    <figure className="girder-diagrams">
      <svg
        width={width}
        height={lines.length * LANE}
        role="img"
        aria-label={lines.map((line) => sentence(line, action, units)).join(" ")}
        onPointerMove={onMove}
        onPointerLeave={() => setHover(null)}
      >
        {lines.map((line, i) => {
          const middle = i * LANE + LANE / 2;
          const half = LANE / 2 - 15;
          const down = action === "moment" ? 1 : -1;
          const lane: Lane = { x, y: (value) => middle + down * (value / scale) * half };
          const envelope = envelopes.find((one) => one.girder === line.girder);
          return (
            <g key={line.girder} data-girder={line.girder}>
              <text className="name" x="4" y={middle + 4}>
                {cut(line.girder, LEFT - 6)}
              </text>
              {envelope !== undefined && (
                <path className="envelope" d={envelopePath(envelope, action, lane)} />
              )}
              <path className="now" d={diagramPath(line, action, lane)} />
              <line className="axis" x1={x(from)} x2={x(to)} y1={middle} y2={middle} />
              {splices
                .filter((one) => one.girder === line.girder)
                .map((one) => (
                  <line
                    key={one.x}
                    className="splice"
                    x1={x(one.x)}
                    x2={x(one.x)}
                    y1={middle - half}
                    y2={middle + half}
                  />
                ))}
              {marks
                .filter((one) => one.girder === line.girder)
                .map((one) => (
                  <path
                    key={`${one.support} ${one.x}`}
                    className="support"
                    transform={`translate(${x(one.x)} ${middle})`}
                    d={one.force > 0 ? "M0 1L4 9H-4Z" : "M0-1L4-9H-4Z"}
                  >
                    <title>{`${one.support}: ${print(one.force, "load", units)}`}</title>
                  </path>
                ))}
              {([1, -1] as const).map((sign) => {
                const peak = peakOf(line, action, sign);
                if (peak === null || Math.abs(peak.value) < 0.01 * scale) return null;
                const px = x(peak.x);
                const anchor = px < width * 0.15 ? "start" : px > width * 0.85 ? "end" : "middle";
                return (
                  <text
                    key={sign}
                    className="peak"
                    x={px}
                    y={lane.y(peak.value) + (sign * down > 0 ? 11 : -3)}
                    textAnchor={anchor}
                  >
                    {printed(peak.value, shown, units).number}
                  </text>
                );
              })}
            </g>
          );
        })}
        {hover !== null && (
          <line className="hover-line" x1={x(hover)} x2={x(hover)} y1="0" y2={lines.length * LANE} />
        )}
      </svg>
      <figcaption aria-live="off">
        {hover === null
          ? `${words[action]}, ${signOf(shown, units)}; pale: greatest and least of all steps`
          : `${print(hover, "length", units)} from the rear end: ${lines
              .map((line) => `${line.girder} ${print(nearest(line, hover)[action], shown, units)}`)
              .join(", ")}`}
      </figcaption>
    </figure>
  );
});

const words: Readonly<Record<Action, string>> = {
  moment: "Moment, sagging below the line",
  shear: "Shear, upward behind the section above the line",
  torsion: "Torsion about the girder's length",
};

function sentence(line: DiagramLine, action: Action, units: System): string {
  const shown = shownAs[action];
  const parts = ([1, -1] as const).flatMap((sign) => {
    const peak = peakOf(line, action, sign);
    if (peak === null) return [];
    return [`${print(peak.value, shown, units)} at ${print(peak.x, "length", units)}`];
  });
  return `Girder ${line.girder}, ${action}: ${parts.length === 0 ? "none" : parts.join(", ")}.`;
}
