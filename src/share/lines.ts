// Lines over the stored poses as SVG paths, broken where there is no number.

/** Pieces of poses that follow one another with numbers in every one of the lines. */
export function piecesWith(lines: readonly Float64Array[]): [number, number][] {
  const n = lines[0]?.length ?? 0;
  const known = (i: number) => lines.every((line) => Number.isFinite(line[i]));
  const pieces: [number, number][] = [];
  for (let i = 0; i < n; i++) {
    if (!known(i)) continue;
    const from = i;
    while (i + 1 < n && known(i + 1)) i++;
    pieces.push([from, i]);
  }
  return pieces;
}

const round = (px: number): number => Math.round(px * 10) / 10;

/** A line through points given in px; broken where there is no number. */
export function lineThrough(
  line: Float64Array,
  px: (i: number) => number,
  py: (value: number) => number,
): string {
  return piecesWith([line])
    .map(([from, to]) => {
      const points = Array.from({ length: to - from + 1 }, (_, k) => from + k);
      return `M${points.map((i) => `${round(px(i))} ${round(py(line[i]))}`).join("L")}`;
    })
    .join("");
}

/** What lies between two lines, in px. */
export function areaBetween(
  lower: Float64Array,
  upper: Float64Array,
  px: (i: number) => number,
  py: (value: number) => number,
): string {
  return piecesWith([lower, upper])
    .map(([from, to]) => {
      const points = Array.from({ length: to - from + 1 }, (_, k) => from + k);
      const along = points.map((i) => `${round(px(i))} ${round(py(upper[i]))}`);
      const back = points.reverse().map((i) => `${round(px(i))} ${round(py(lower[i]))}`);
      return `M${[...along, ...back].join("L")}Z`;
    })
    .join("");
}
