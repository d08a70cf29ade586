// Fills that tell groups and pieces apart without colour: a pattern for each, and a letter beside it.

/** Letters of groups in the order of the plan: A, B ... Z, A2, B2 ... */
export function letterOf(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`;
}

/** Strokes of each pattern within 8 by 8. */
const strokes = [
  "",
  "M0 8L8 0",
  "M0 0L8 8",
  "M0 4H8",
  "M4 0V8",
  "M0 8L8 0M0 0L8 8",
  "M0 4H8M4 0V8",
  "M3 4a1 1 0 1 0 2 0a1 1 0 1 0 -2 0",
];

/** The patterns under names that begin with `id`. */
export function Patterns({ id }: { id: string }) {
  return (
    <defs>
      {strokes.map((d, i) => (
        <pattern key={d} id={`${id}-${i}`} width="8" height="8" patternUnits="userSpaceOnUse">
          <rect width="8" height="8" fill="var(--paper)" />
          <path d={d} stroke="var(--faint)" strokeWidth="1.4" fill="none" />
        </pattern>
      ))}
    </defs>
  );
}

/** Fill of the thing with an index. */
export const patternOf = (id: string, index: number): string => `url(#${id}-${index % strokes.length})`;
