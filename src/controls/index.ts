/**
 * controls: choosing, typing, tables, picking files, saving them, keys. Know nothing of bridges.
 *
 * ```ts
 * import { keyIsTaken } from "./index.ts";
 * keyIsTaken({ tagName: "SELECT", role: null }, "4"); // => true
 * keyIsTaken({ tagName: "BUTTON", role: null }, "4"); // => false
 * keyIsTaken({ tagName: "BUTTON", role: null }, " "); // => true
 * keyIsTaken(null, " "); // => false
 * ```
 */
export { Choice } from "./Choice.tsx";
export { type Cells, commaQuestion, parse, serialise, tablesIn, withPoint } from "./clipboard.ts";
export { download } from "./download.ts";
export { FileButton } from "./FileButton.tsx";
export { Grid } from "./Grid.tsx";
export {
  type CellChange,
  type CellRead,
  type GridCell,
  type GridColumn,
  type GridModel,
  matchHeads,
  type RowNames,
} from "./gridModel.ts";
export type { Spot } from "./gridMoves.ts";
export { NamesField, namesIn } from "./Names.tsx";
export { QuantityField, readQuantity } from "./QuantityField.tsx";
export { TypedField } from "./TypedField.tsx";
export { type Focused, keyIsTaken } from "./typing.ts";
export { useDrop } from "./useDrop.ts";
