// The strips below the bands, one per subject: how much of its governing limit is used, with the 100 % line.
import { memo, useMemo } from "react";
import { type Axis, colourOf, type Finding, type SetResult, type SpreadResult, toX } from "../app/index.ts";
import { cut, gutter, stripHeight } from "./frame.ts";
import { highOf, mostDrawn, stripPath, stripsOf } from "./governing.ts";

/** The strips as one drawing, the highest use first. A use above its limit is red only where a stop was found. */
export const Strips = memo(function Strips(props: {
  set: SetResult;
  axis: Axis;
  findings: readonly Finding[];
  /** Low and high over what is uncertain; null until they are worked out. */
  spread: SpreadResult | null;
  width: number;
  /** Width of the picture above, on whose axis the strips stand. */
  inner: number;
}) {
  const { set, axis, findings, spread, width, inner } = props;
  const strips = useMemo(
    () =>
      stripsOf(set)
        .filter((strip) => Number.isFinite(strip.most))
        .sort((a, b) => b.most - a.most),
    [set],
  );
  const x = useMemo(
    () => Float64Array.from(set.progress, (progress, i) => toX(axis, { step: set.step[i], progress })),
    [set, axis],
  );
  const highs = useMemo(
    () => (spread === null ? null : strips.map(({ subject }) => highOf(spread, subject, set.count))),
    [spread, strips, set],
  );
  const right = gutter.left + inner;
  if (strips.length === 0) return <p className="quiet">No limit with a use is in force for this set.</p>;
  return (
    <svg className="strips" width={width} height={strips.length * stripHeight + 2} aria-hidden="true">
      {strips.map((strip, k) => {
        const top = k * stripHeight + 3;
        const height = stripHeight - 5;
        const limit = top + height * (1 - 1 / mostDrawn);
        const stops = findings.some(
          (one) => one.level === "stop" && one.set === set.setId && one.subject === strip.subject,
        );
        const over = strip.most > 1 && stops;
        const words = strip.checks.map(({ check, limitWords }) => `${check}: ${limitWords}`).join("\n");
        return (
          <g key={strip.subject} className={over ? "strip over" : "strip"} data-strip={strip.subject}>
            <title>{`${strip.subject}\n${words}${highs === null ? "" : "\nthin line: highest over what is uncertain"}`}</title>
            <rect className="swatch" x="4" y={top + 3} width="9" height="9" fill={colourOf(strip.kind)} />
            <text x="18" y={top + 12}>
              {cut(strip.subject, gutter.left - 20)}
            </text>
            <line className="base" x1={gutter.left} x2={right} y1={top + height} y2={top + height} />
            <line className="limit" x1={gutter.left} x2={right} y1={limit} y2={limit} />
            {highs !== null && (
              <path
                className="high"
                d={stripPath(highs[k], x, { left: gutter.left, width: inner, top, height })}
              />
            )}
            <path
              className="use"
              d={stripPath(strip.use, x, { left: gutter.left, width: inner, top, height })}
            />
            <text className={over ? "strong" : ""} x={right + 8} y={top + 12}>
              {`${Math.round(strip.most * 100)} %`}
            </text>
          </g>
        );
      })}
    </svg>
  );
});
