// The table that a file of these tests prints when it has run.

/** Collects rows under a heading, and gives them as text with aligned columns. */
export function table(heading: readonly string[]): { add(row: readonly string[]): void; text(): string } {
  const rows: (readonly string[])[] = [heading];
  return {
    add: (row) => void rows.push(row),
    text: () => {
      const widths = heading.map((_, i) => Math.max(...rows.map((row) => row[i].length)));
      // Words to the left, numbers to the right.
      const line = (row: readonly string[]) =>
        row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("  ");
      return `${rows.map(line).join("\n")}\n`;
    },
  };
}

/** A share as per cent. */
export const percent = (x: number, digits = 2): string => (100 * x).toFixed(digits);
