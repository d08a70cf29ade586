// The strips below the bands, one per subject: how much of its governing limit is used, with low, high and the 100 % line.
import { memo, useMemo } from "react";
import { type Axis, colourOf, type Finding, type SetResult, type SpreadResult, toX } from "../app/index.ts";
import { cut, gutter } from "./frame.ts";
import { bandOfUse, mostDrawn, type Strip, stripArea, stripPath } from "./governing.ts";

interface Props {
  set: SetResult;
  axis: Axis;
  /** Those to draw, in their order. */
  strips: readonly Strip[];
  findings: readonly Finding[];
  /** Low and high over what is uncertain; null until they are worked out. */
  spread: SpreadResult | null;
  /** Subject that is drawn marked; '' for none. */
  chosen: string;
  width: number;
  /** Width of the picture above, on whose axis the strips stand. */
  inner: number;
  /** Height of one strip. */
  height: number;
}

/** Strips at least so high have room for the words of the limit that governs, px. */
const roomForRule = 26;

/** The limit that governs where the use is highest. */
function ruleWords({ use, governs, checks, most }: Strip): string {
  const limit = checks[governs[use.indexOf(most)]];
  return limit === undefined ? "" : `${limit.check}: ${limit.limitWords}`;
}

const whole = (use: number): string => String(Math.round(use * 100));

/** The strips as one drawing. A use above its limit is red only where a stop was found. */
export const Strips = memo(function Strips(props: Props) {
  const { set, axis, strips, findings, spread, chosen, width, inner, height } = props;
  const x = useMemo(
    () => Float64Array.from(set.progress, (progress, i) => toX(axis, { step: set.step[i], progress })),
    [set, axis],
  );
  const bands = useMemo(
    () => (spread === null ? null : strips.map(({ subject }) => bandOfUse(spread, subject, set.count))),
    [spread, strips, set],
  );
  const right = gutter.left + inner;
  if (strips.length === 0) return <p className="quiet">No limit with a use is in force for this set.</p>;
  return (
    <svg className="strips" width={width} height={strips.length * height + 2} aria-hidden="true">
      {strips.map((strip, k) => {
        const top = k * height + 3;
        const drawn = height - 5;
        const limit = top + drawn * (1 - 1 / mostDrawn);
        const stops = findings.some(
          (one) => one.level === "stop" && one.set === set.setId && one.subject === strip.subject,
        );
        const over = strip.most > 1 && stops;
        const frame = { left: gutter.left, width: inner, top, height: drawn };
        const band = bands?.[k];
        const high = band === undefined || band.worst < 0 ? "" : whole(band.high[band.worst]);
        const middle = top + drawn / 2 + 4;
        return (
          <g
            key={strip.subject}
            className={["strip", over ? "over" : "", chosen === strip.subject ? "chosen" : ""]
              .join(" ")
              .trim()}
            data-strip={strip.subject}
          >
            <rect className="row" x="0" y={top - 2} width={width} height={height} />
            <rect className="swatch" x="4" y={middle - 9} width="9" height="9" fill={colourOf(strip.kind)} />
            <text x="18" y={middle}>
              {cut(strip.subject, gutter.left - 20)}
            </text>
            <line className="base" x1={gutter.left} x2={right} y1={top + drawn} y2={top + drawn} />
            <line className="limit" x1={gutter.left} x2={right} y1={limit} y2={limit} />
            {band !== undefined && (
              <g className="spread">
                <path className="between" d={stripArea(band.low, band.high, x, frame)} />
                <path className="low" d={stripPath(band.low, x, frame)} />
                <path className="high" d={stripPath(band.high, x, frame)} />
              </g>
            )}
            <path className="use" d={stripPath(strip.use, x, frame)} />
            {height >= roomForRule && (
              <text className="rule" x={gutter.left + 5} y={top + 9}>
                {ruleWords(strip)}
              </text>
            )}
            <text
              className={over ? "strong" : ""}
              x={right + 6}
              y={middle}
              data-use={whole(strip.most)}
              data-high={high}
            >
              {high === "" ? whole(strip.most) : `${whole(strip.most)} / ${high}`}
            </text>
          </g>
        );
      })}
    </svg>
  );
});
