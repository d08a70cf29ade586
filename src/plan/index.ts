/**
 * plan: what a plan is, how it is read (or every error in it told at once), weighed, hashed and written.
 *
 * ```ts
 * import { canonicalJson, readPlan, sentence, sha256, utf8 } from "./index.ts";
 * const bad = readPlan('{ "format": "handspan-plan", "version": 7 }');
 * bad.ok; // => false
 * bad.ok ? "" : bad.errors[0].path; // => "version"
 * bad.ok ? "" : bad.errors[0].allowed; // => "versions up to 1"
 * sentence({ path: "a", found: "3", allowed: "1 or 2", mend: "Choose." }); // => "a: found 3; allowed: 1 or 2. Choose."
 * canonicalJson({ b: 1e21, a: [1.5, null] }); // => "{\"a\":[1.5,null],\"b\":1e+21}"
 * sha256(utf8("abc")).slice(0, 8); // => "ba7816bf"
 * ```
 */
export * from "./compareSets.ts";
export * from "./copySet.ts";
export * from "./defaults.ts";
export { valueAt, withInserted, withMoved, withRemoved, withValue } from "./edit.ts";
export {
  blankAt,
  type Field,
  type FieldIs,
  fieldOf,
  fieldsIn,
  optionAt,
} from "./fields.ts";
export { canonicalJson, planHash } from "./hash.ts";
export { planJsonSchema } from "./jsonSchema.ts";
export * from "./lookUp.ts";
export { type Mendable, mendable, mendableText } from "./mending.ts";
export { placesMoved } from "./placesMoved.ts";
export { checkPlan, largestFile, type ReadResult, readPlan } from "./read.ts";
export {
  nearest,
  type PlanError,
  type PlanPath,
  printPath,
  readPlace,
  sentence,
} from "./reading/planError.ts";
export { type NameKind, namedAs, type Reference, type Referred, referenceAt } from "./references.ts";
export { renamed } from "./rename.ts";
export { same } from "./same.ts";
export * from "./schema.ts";
export { sha256, utf8 } from "./sha256.ts";
export { readStepPlace, type StepPlace } from "./stepPlace.ts";
export * from "./takeOff.ts";
export * from "./unconfirmed.ts";
export { writePlan } from "./write.ts";
