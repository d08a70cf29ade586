// The picture itself: bands, weight line, steps and findings. Drawn anew only when result, axis or size change.
import { memo, useMemo } from "react";
import {
  type Axis,
  colourOf,
  type Finding,
  isOfSpread,
  type SetResult,
  type System,
  toX,
} from "../app/index.ts";
import { print } from "../units/index.ts";
import { cut, gutter, lanes, textWidth } from "./frame.ts";
import { Hatch } from "./Hatch.tsx";
import { LevelShape } from "./LevelShape.tsx";
import { marksOf } from "./marks.ts";
import { Steps } from "./Steps.tsx";
import { bandPaths, type Frame, holePath, labelPlace, stackOf } from "./stack.ts";
import { UnbackedRow } from "./UnbackedRow.tsx";

interface Props {
  set: SetResult;
  axis: Axis;
  findings: readonly Finding[];
  /** Band that is drawn marked; '' for none. */
  chosen: string;
  /** Whether the strips below show the highest over what is uncertain beside the best. */
  highKnown: boolean;
  units: System;
  width: number;
  height: number;
}

/** Hatches that tell bands of one kind apart; the hue shows between the lines. */
function Hatches() {
  return (
    <defs>
      <Hatch id="hatch-left" size={7} line="hatch" />
      <Hatch id="hatch-right" size={7} turn={-45} line="hatch" />
      <Hatch id="hatch-cross" size={7} line="hatch" crossed />
      <Hatch id="hatch-none" size={9} line="hatch-none" />
    </defs>
  );
}

/** The loads at the left and the parts of the weight at the right. */
function Scale({
  frame,
  weight,
  units,
  right,
}: {
  frame: Frame;
  weight: number;
  units: System;
  right: number;
}) {
  return (
    <g className="scale">
      {[0, 0.25, 0.5, 0.75, 1].map((part) => {
        const y = frame.y(part * weight);
        return (
          <g key={part}>
            <line className={part === 1 ? "weight-line" : "tick"} x1={frame.left} x2={right} y1={y} y2={y} />
            {part % 0.5 === 0 && (
              <>
                <text className={part === 1 ? "strong" : ""} x={frame.left - 8} y={y + 4} textAnchor="end">
                  {print(part * weight, "load", units)}
                </text>
                <text x={right + 8} y={y + 4}>{`${part * 100} %`}</text>
              </>
            )}
          </g>
        );
      })}
    </g>
  );
}

/** Findings along the operation: a line over the stretch of each stop, and a mark where it is worst. */
function Marks({
  set,
  axis,
  findings,
  frame,
  y,
}: Pick<Props, "set" | "axis" | "findings"> & { frame: Frame; y: number }) {
  const xOf = (when: { step: number; progress: number }) => frame.left + toX(axis, when) * frame.width;
  // Findings of before an edit may lie in steps that are there no more.
  const isThere = (when: { step: number } | null) => when === null || when.step < set.steps.length;
  const there = findings.filter((one) => [one.from, one.to, one.worst].every(isThere));
  const marks = marksOf(there, set.setId, xOf, 17);
  const stretches = there.filter((one) => one.set === set.setId && one.level === "stop");
  return (
    <g className="marks">
      {stretches.map(
        (one) =>
          one.from !== null &&
          one.to !== null && (
            <line
              key={one.id}
              className={isOfSpread(one) ? "stop-stretch in-spread" : "stop-stretch"}
              x1={xOf(one.from)}
              x2={xOf(one.to)}
              y1={y - 9}
              y2={y - 9}
            />
          ),
      )}
      {marks.map((mark, i) => {
        const room =
          Math.min(marks[i + 1]?.x ?? frame.left + frame.width + gutter.right, mark.x + 90) - mark.x;
        const count = mark.findings.length > 1 ? String(mark.findings.length) : "";
        const words =
          [`${mark.level} ${count}`.trim(), count].find((text) => textWidth(text) + 16 < room) ?? "";
        return (
          <g
            key={mark.findings[0].id}
            className="mark"
            data-finding={mark.findings[0].id}
            transform={`translate(${mark.x} ${y})`}
          >
            <title>{mark.findings.map((one) => `${one.level}: ${one.words}`).join("\n")}</title>
            <rect className="mark-target" x="-9" y="-10" width="18" height="20" />
            <LevelShape level={mark.level} hollow={isOfSpread(mark.findings[0])} />
            <text x="11" y="4">
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** The frame of the bands inside a picture of the given size. */
function frameOf(
  width: number,
  height: number,
  least: number,
  most: number,
): { frame: Frame; bottom: number } {
  const bottom = height - lanes.unbacked - lanes.marks - lanes.steps;
  const span = (most - least) * 1.02;
  const y = (load: number) => bottom - ((load - least) / span) * (bottom - lanes.above);
  return { frame: { left: gutter.left, width: Math.max(10, width - gutter.left - gutter.right), y }, bottom };
}

/** Bands, scale, steps and marks as one drawing. */
export const Bands = memo(function Bands(props: Props) {
  const { set, axis, findings, chosen, highKnown, units, width, height } = props;
  const stack = useMemo(() => stackOf(set, (step, progress) => toX(axis, { step, progress })), [set, axis]);
  const { frame, bottom } = frameOf(width, height, stack.least, stack.most);
  const paths = bandPaths(stack, frame);
  const hole = holePath(stack, frame);
  const right = frame.left + frame.width;
  const labels = stack.bands.map(({ name }, b) =>
    labelPlace(stack, b, frame, { width: textWidth(name) + 8, height: 17 }),
  );
  const edgeX = (step: number) => frame.left + axis.edges[step] * frame.width;
  return (
    <svg className="bands" width={width} height={height} aria-hidden="true">
      <Hatches />
      <rect
        className="paper"
        x={frame.left}
        y={lanes.above}
        width={frame.width}
        height={bottom - lanes.above}
      />
      {set.steps.map(
        ({ solved, index, step }) =>
          !solved && (
            <g key={step.id} className="unsolved">
              <rect
                x={edgeX(index)}
                width={edgeX(index + 1) - edgeX(index)}
                y={lanes.above}
                height={bottom - lanes.above}
              />
              <text x={edgeX(index) + 4} y={lanes.above + 16}>
                {cut("no equilibrium", edgeX(index + 1) - edgeX(index))}
              </text>
            </g>
          ),
      )}
      {hole !== "" && <path className="hole" d={hole} data-hole="yes" />}
      {stack.bands.map((band, b) => (
        <g key={band.name} className={band.name === chosen ? "band chosen" : "band"} data-band={band.name}>
          <path d={paths[b]} fill={colourOf(band.kind)} />
          {band.pattern !== "plain" && <path d={paths[b]} fill={`url(#hatch-${band.pattern})`} />}
          <path className="outline" d={paths[b]} />
        </g>
      ))}
      <Scale frame={frame} weight={stack.weight} units={units} right={right} />
      {set.steps.map(
        ({ index }) =>
          index > 0 && (
            <line
              key={index}
              className="edge"
              x1={edgeX(index)}
              x2={edgeX(index)}
              y1={lanes.above}
              y2={bottom}
            />
          ),
      )}
      {stack.bands.map(({ name }, b) => {
        const place = labels[b];
        if (place === null) return null;
        const w = textWidth(name) + 4;
        return (
          <g key={name} className="band-label">
            <rect x={place.x - w / 2} y={place.y - 8} width={w} height="16" rx="3" />
            <text x={place.x} y={place.y + 4} textAnchor="middle">
              {name}
            </text>
          </g>
        );
      })}
      <UnbackedRow set={set} axis={axis} frame={frame} y={bottom} />
      <text className="small" x={frame.left - 14} y={bottom + lanes.unbacked + 15} textAnchor="end">
        findings
      </text>
      <text className="small" x={width - 3} y={height - 5} textAnchor="end">
        {highKnown ? "best / high" : "highest"}
      </text>
      <Marks set={set} axis={axis} findings={findings} frame={frame} y={bottom + lanes.unbacked + 11} />
      <Steps set={set} axis={axis} frame={frame} top={height - lanes.steps + 4} />
    </svg>
  );
});
