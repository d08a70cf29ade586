// The shape of a level, as part of a drawing: octagon for stop, triangle for caution, circle for note.
import type { Level } from "../app/index.ts";

const octagon = Array.from({ length: 8 }, (_, k) => (Math.PI / 4) * k + Math.PI / 8)
  .map((angle) => `${(Math.cos(angle) * 7).toFixed(2)},${(Math.sin(angle) * 7).toFixed(2)}`)
  .join(" ");

/** A shape of 14 px around the origin, coloured by the style sheet; hollow for what only some corner of the spread has. */
export function LevelShape({ level, hollow = false }: { level: Level; hollow?: boolean }) {
  const look = `shape ${level}${hollow ? " hollow" : ""}`;
  if (level === "stop") return <polygon className={look} points={octagon} />;
  if (level === "caution") return <polygon className={look} points="0,-6.5 7,6 -7,6" />;
  return <circle className={look} r="4.5" />;
}
