// The lane of a chosen support: its own share with low and high, from no load up, on the axis of the picture.
import { memo, useMemo } from "react";
import { type Axis, colourOf, type SetResult, type SpreadResult, type System } from "../app/index.ts";
import { print, printed } from "../units/index.ts";
import { cut, gutter } from "./frame.ts";
import { areaBetween, lineThrough } from "./lines.ts";
import { type OwnLine, ownLineOf } from "./own.ts";

interface Props {
  set: SetResult;
  axis: Axis;
  spread: SpreadResult | null;
  /** Name of the band. */
  name: string;
  units: System;
  width: number;
  inner: number;
  height: number;
}

/** Marks where high is highest and low is lowest: a triangle upward and one downward. */
function Ends({ line, px, py }: { line: OwnLine; px: (i: number) => number; py: (value: number) => number }) {
  const { lowest, highest } = line;
  return (
    <>
      {highest !== null && (
        <path
          className="end"
          transform={`translate(${px(highest.pose)} ${py(highest.value)})`}
          d="M0-1L5 7H-5Z"
        />
      )}
      {lowest !== null && (
        <path
          className="end"
          transform={`translate(${px(lowest.pose)} ${py(lowest.value)})`}
          d="M0 1L5-7H-5Z"
        />
      )}
    </>
  );
}

/** The lane as one drawing: a filled line for the best values, a thick line for high, a dashed one for low. */
export const OwnLane = memo(function OwnLane(props: Props) {
  const { set, axis, spread, name, units, width, inner, height } = props;
  const line = useMemo(() => ownLineOf(set, axis, spread, name), [set, axis, spread, name]);
  if (line === null) return null;
  const kind = set.supports.find((support) => support.name === name)?.kind ?? "";
  const [top, bottom] = [8, height - 6];
  const px = (i: number) => gutter.left + line.x[i] * inner;
  const py = (value: number) => bottom - ((value - line.least) / (line.most - line.least)) * (bottom - top);
  const right = gutter.left + inner;
  const none = line.best.map((share) => (Number.isNaN(share) ? Number.NaN : 0));
  const loads = (ends: number) => printed(ends, "load", units).number;
  return (
    <svg className="own" width={width} height={height} aria-hidden="true" data-own={name}>
      <rect className="swatch" x="4" y="4" width="9" height="9" fill={colourOf(kind)} />
      <text className="strong" x="18" y="13">
        {cut(name, gutter.left - 20)}
      </text>
      <text className="small" x={gutter.left - 8} y={py(0) + 4} textAnchor="end">
        {print(0, "load", units)}
      </text>
      <line className="base" x1={gutter.left} x2={right} y1={py(0)} y2={py(0)} />
      <path className="fill" d={areaBetween(none, line.best, px, py)} fill={colourOf(kind)} />
      {line.low !== null && line.high !== null && (
        <g className="spread">
          <path className="between" d={areaBetween(line.low, line.high, px, py)} />
          <path className="low" d={lineThrough(line.low, px, py)} />
          <path className="high" d={lineThrough(line.high, px, py)} />
          <Ends line={line} px={px} py={py} />
        </g>
      )}
      <path className="use" d={lineThrough(line.best, px, py)} />
      {line.highest !== null && line.lowest !== null && (
        <g className="small" data-lowest={line.lowest.value} data-highest={line.highest.value}>
          <text x={right + 6} y={top + 6}>{`▲ ${loads(line.highest.value)}`}</text>
          <text x={right + 6} y={bottom}>{`▼ ${loads(line.lowest.value)}`}</text>
        </g>
      )}
    </svg>
  );
});
