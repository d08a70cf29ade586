// The row directly under the bands: where the set falls with one hook or group lost, accepted by name or a stop.
import { type Axis, type SetResult, toX } from "../app/index.ts";
import { lanes, textWidth } from "./frame.ts";
import { Hatch } from "./Hatch.tsx";
import type { Frame } from "./stack.ts";
import { piecesOf } from "./unbacked.ts";

/** Hatches of the row: dense where it is a stop, light inside an outline where it was accepted. */
function Hatches() {
  return (
    <defs>
      <Hatch id="hatch-stop" size={4} line="dense" ground="dense-ground" />
      <Hatch id="hatch-accepted" size={8} line="loose" />
    </defs>
  );
}

/** Words that stand in the row on a plate, where they fit. */
function Words({
  from,
  to,
  y,
  words,
  strong,
}: {
  from: number;
  to: number;
  y: number;
  words: string;
  strong: boolean;
}) {
  const w = textWidth(words) + 2;
  if (to - from < w + 8) return null;
  const x = (from + to) / 2;
  return (
    <g className="band-label">
      <rect x={x - w / 2} y={y + 2} width={w} height={lanes.unbacked - 4} rx="3" />
      <text className={strong ? "strong" : ""} x={x} y={y + 12} textAnchor="middle">
        {words}
      </text>
    </g>
  );
}

/** The row. `y` is its upper edge. */
export function UnbackedRow({
  set,
  axis,
  frame,
  y,
}: {
  set: SetResult;
  axis: Axis;
  frame: Frame;
  y: number;
}) {
  const { backed } = set;
  const xOf = (step: number, progress: number) => frame.left + toX(axis, { step, progress }) * frame.width;
  const pieces = piecesOf(backed?.stretches ?? []);
  const joined: { from: number; to: number; accepted: boolean }[] = [];
  for (const { step, from, to, accepted } of pieces) {
    const [a, b] = [xOf(step, from), xOf(step, to)];
    const last = joined.at(-1);
    if (last !== undefined && last.accepted === accepted && a - last.to < 0.5) last.to = b;
    else joined.push({ from: a, to: b, accepted });
  }
  const quiet = backed === undefined ? "being worked out" : pieces.length === 0 ? "nowhere" : "";
  return (
    <g className="unbacked-row" data-unbacked={backed === undefined ? "pending" : pieces.length}>
      <Hatches />
      <text className="small" x={frame.left - 14} y={y + 12} textAnchor="end">
        unbacked
      </text>
      <rect className="paper" x={frame.left} y={y} width={frame.width} height={lanes.unbacked} />
      {pieces.map((piece) => (
        <rect
          key={`${piece.step} ${piece.from}`}
          className={piece.accepted ? "piece accepted" : "piece stop"}
          data-step={piece.step}
          data-from={piece.from}
          data-to={piece.to}
          x={xOf(piece.step, piece.from)}
          y={y + 2}
          width={Math.max(1.5, xOf(piece.step, piece.to) - xOf(piece.step, piece.from))}
          height={lanes.unbacked - 4}
        />
      ))}
      {joined.map(({ from, to, accepted }) => (
        <Words
          key={from}
          from={from}
          to={to}
          y={y}
          words={accepted ? "accepted by name" : "stop"}
          strong={!accepted}
        />
      ))}
      {quiet !== "" && (
        <text className="small" x={frame.left + 4} y={y + 12}>
          {quiet}
        </text>
      )}
    </g>
  );
}
