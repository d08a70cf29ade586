/**
 * report: one description of every result column, and what is written with it: CSV with its metadata, JSON, plain text.
 *
 * ```ts
 * import { columnsOf, fixed, harmless, row } from "./index.ts";
 * columnsOf().map((column) => column.name).slice(0, 4); // => ["set", "step_number", "step", "do"]
 * columnsOf().filter((column) => column.unit === "kN").map((column) => column.name)[1]; // => "load_kN"
 * fixed(123.4, 6); // => "123.400000"
 * fixed(-1e-9, 3); // => "0.000"
 * harmless("=1+1"); // => "'=1+1"
 * row(["a", 'b "c"', "d,e"]); // => 'a,"b ""c""","d,e"\r\n'
 * ```
 */

export { bucklingLines, factorWords, shapeWords } from "./bucklingText.ts";
export * from "./columns.ts";
export { partOf, readWords } from "./commandWords.ts";
export { coverageTable, coverageText } from "./coverageText.ts";
export * from "./csv.ts";
export * from "./csvMetadata.ts";
export { field, fixed, harmless, row } from "./csvText.ts";
export {
  type DiagramLine,
  type DiagramMark,
  type DiagramPoint,
  diagramCsv,
  diagramLines,
  diagramMarks,
  envelopeCsv,
  envelopeText,
} from "./diagrams.ts";
export * from "./json.ts";
export * from "./origin.ts";
export * from "./places.ts";
export { proposalText } from "./proposalText.ts";
export { atOnce, type Section, type Table, type Work } from "./sections/form.ts";
export { linesOfTable } from "./sections/lines.ts";
export { sections } from "./sections/list.ts";
export { sectionsNamed, withSections } from "./sections/text.ts";
export { sectionTitles } from "./sections/titles.ts";
export * from "./solveText.ts";
export { spreadLines } from "./spreadText.ts";
export * from "./stateText.ts";
export { oneLine } from "./table.ts";
export { readTraced, tracedText, traceLines, traceText } from "./traceText.ts";
export { usageText } from "./usageText.ts";
