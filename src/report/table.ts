// Plain text tables for a terminal: columns as wide as they need to be, numbers to the right.

/** How a column stands: words to the left, numbers to the right. */
export type Side = "left" | "right";

/** Lines of a table with a header; a blank cell stays blank. Columns in which every row is blank are left out. */
export function tableLines(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  sides: readonly Side[],
): string[] {
  const kept = head.map((_, c) => c).filter((c) => rows.some((r) => r[c] !== ""));
  const width = kept.map((c) => Math.max(head[c].length, ...rows.map((r) => r[c].length)));
  const line = (cells: readonly string[]) =>
    kept
      .map((c, i) => (sides[c] === "left" ? cells[c].padEnd(width[i]) : cells[c].padStart(width[i])))
      .join("  ")
      .trimEnd();
  return [line(head), ...rows.map(line)];
}

/** Text from a user on one line of a terminal: control signs, which could move the cursor, become blanks. */
export function oneLine(text: string): string {
  return text.replace(/\p{Cc}+/gu, " ").trim();
}
