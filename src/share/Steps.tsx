// The steps below the bands: number, name and kind, and a mark on those from which there is no way back.
import { type Axis, type Level, type SetResult, stepName } from "../app/index.ts";
import { cut, textWidth } from "./frame.ts";
import type { Frame } from "./stack.ts";
import { noReturnsOf } from "./unbacked.ts";

/** An arrow that turns back, struck through: from here on there is no way back. */
function NoReturnMark({ level, x }: { level: Level; x: number }) {
  return (
    <g className={`no-return ${level}`} transform={`translate(${x} 1)`}>
      <path className="arrow" d="M3.5 6.5L0.5 3.5L3.5 0.5M1 3.5H7.5A2.7 2.7 0 0 1 7.5 9H3" />
      <path className="bar" d="M10.5-0.5L1.5 10.5" />
    </g>
  );
}

/** Letters of the small type are narrower than those of the labels. */
const narrow = 5.9;

/** A kind of step in a width: whole, or its first word, or as many letters of it as fit. */
function shortened(kind: string, width: number): string {
  const letters = Math.floor(width / narrow);
  if (kind.length <= letters) return kind;
  const first = kind.split(" ")[0];
  return first.length <= letters ? first : letters < 2 ? "" : first.slice(0, letters);
}

/** Number and name of each step below the bands, as far as they fit, and a mark where there is no way back. */
export function Steps({ set, axis, frame, top }: { set: SetResult; axis: Axis; frame: Frame; top: number }) {
  const lost = new Map(noReturnsOf(set).map((one) => [one.step, one]));
  return (
    <g className="step-names">
      {set.steps.map(({ step, index }) => {
        const from = frame.left + axis.edges[index] * frame.width;
        const room = (axis.edges[index + 1] - axis.edges[index]) * frame.width;
        const number = String(index + 1);
        const title = stepName(step);
        // The kind always stands below; a name of its own stands beside the number where it fits.
        const own = title.toLowerCase() !== step.do;
        const mark = lost.get(index);
        const after = textWidth(number) + (mark === undefined ? 0 : 16);
        const name = own && cut(title, room - after - 8) === title ? title : "";
        const word = shortened(step.do, room - 5);
        return (
          <g key={step.id} transform={`translate(${from} ${top})`} data-no-return={mark?.level}>
            <line className="edge" x1="0" x2="0" y1="-4" y2="24" />
            <text x="4" y="11">
              <tspan className="strong">{room > textWidth(number) + 2 ? number : ""}</tspan>
            </text>
            {mark !== undefined && (
              <NoReturnMark level={mark.level} x={Math.max(1, Math.min(textWidth(number) + 4, room - 12))} />
            )}
            {name !== "" && (
              <text x={after + 2} y="11">
                {name}
              </text>
            )}
            <text className="small" x="4" y="23">
              {word}
            </text>
          </g>
        );
      })}
    </g>
  );
}
