// What is kept of the clearances of a set: the least distance of every pair in every step.

/** The least distance of a pair over one whole step. */
export interface Clearance {
  step: number;
  /** As 'boom of far-crane to set'. */
  subject: string;
  /** Name of its limit, or 'overhead line'. */
  kind: string;
  /** m; below zero by how far both overlap. */
  distance: number;
  /** Progress at which it was found. */
  progress: number;
  /** The distance is nowhere in the step less than this much below, m. */
  within: number;
  /** m, without sway; null where nobody set one. */
  limit: number | null;
  source: string;
  chosenBy: string;
  /** Allowance for sway in this step, added to the limit, m. */
  sway: number;
  /** Names of both bodies, and their points that are nearest (chainage, y, elevation), m. */
  bodies: [string, string];
  points: [[number, number, number], [number, number, number]];
  /** Where it is below its limit with sway, from and to, progress; none where it never is. */
  below: [number, number][];
}

/** All clearances of a set, step by step. */
export interface SetClearances {
  list: Clearance[];
  /** How many poses were solved beyond the stored ones. */
  solved: number;
}
