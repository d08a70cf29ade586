/**
 * share: the picture 'who carries what', with its strips of use and its marks for findings.
 *
 * ```ts
 * import { outline } from "./index.ts";
 * const stack = { x: Float64Array.of(0, 0.5, 1), stretches: [[0, 3]] as [number, number][] };
 * const frame = { left: 0, width: 100, y: (load: number) => 10 - load };
 * outline(stack, Float64Array.of(0, 0, 0), Float64Array.of(0, 0, 4), frame, 0); // => "M50 10L100 6L100 10L50 10Z"
 * outline(stack, Float64Array.of(0, 0, 0), Float64Array.of(0, 0, 0), frame, 0); // => ""
 * ```
 */
export type { Action } from "./diagram.ts";
export { gutter, stripsThatFit } from "./frame.ts";
export { GirderDiagrams } from "./GirderDiagrams.tsx";
export {
  bandOfUse,
  inOrderOfUse,
  mostDrawn,
  type Strip,
  stripArea,
  stripPath,
  stripsOf,
  type UseBand,
} from "./governing.ts";
export { LevelShape } from "./LevelShape.tsx";
export { areaBetween, lineThrough } from "./lines.ts";
export { byWeight, levels, type Mark, marksOf } from "./marks.ts";
export { type OwnLine, ownLineOf } from "./own.ts";
export { ownSentence, stripSentence } from "./sentences.ts";
export {
  type Band,
  bandPaths,
  bandsOf,
  type Frame,
  holePath,
  labelPlace,
  outline,
  type Pattern,
  type Stack,
  stackOf,
} from "./stack.ts";
export {
  allBacked,
  extentWords,
  type NoReturn,
  noReturnsOf,
  type Piece,
  piecesOf,
  stretchLines,
  unbackedAt,
  unbackedSentences,
} from "./unbacked.ts";
export { useSize } from "./useSize.ts";
export { cursorKey, WhoCarriesWhat } from "./WhoCarriesWhat.tsx";
