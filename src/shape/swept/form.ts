// The form of swept bodies: convex bodies with names, in groups that keep clear of each other as wholes.

import type { Convex } from "../../numeric/index.ts";

export type BodyKind =
  | "boom"
  | "tail"
  | "tracks"
  | "line"
  | "rigging"
  | "set"
  | "train"
  | "abutment"
  | "backwall"
  | "path"
  | "landed set"
  | "obstacle"
  | "overhead line";

/** One convex body with its name, such as 'deck of front'. */
export interface SweptBody extends Convex {
  name: string;
}

/** Bodies that belong together, and where their points lie in the list of all points. */
export interface BodyGroup {
  kind: BodyKind;
  /** Id of its crane, transporter, set or obstacle; 'near' or 'far' for what stands at an abutment. */
  of: string;
  name: string;
  bodies: SweptBody[];
  /** First of all its points, and how many. */
  first: number;
  points: number;
}

/** A group as it is laid out: its bodies count their points from 0; points of what stands still. */
export interface Draft {
  kind: BodyKind;
  of: string;
  name: string;
  bodies: SweptBody[];
  points: number;
  still?: number[];
}
