// The highest winds of a set's steps as data.

/** A wind that something allows: as a reading of the site's instrument, m/s. */
export interface Allowed {
  reading: number;
  /** The check at its limit there, or 'table' or 'chart wind'. */
  what: string;
  subject: string;
  /** Which way it blows; null where that does not matter. */
  toward: "+y" | "-y" | null;
  progress: number;
  source: string;
}

/** What the wind may be in one step; readings of the site's instrument in m/s. */
export interface StepWind {
  /** Index of the step, from 0. */
  step: number;
  /** Its own limit in the plan; null when it has none. */
  stated: number | null;
  /** Force on the set at its own limit, or at the highest wind where it has none, N. */
  force: number;
  /** The first check at its limit, the first line out of plumb, the lowest chart, the table; null for what never comes. */
  checks: Allowed | null;
  plumb: Allowed | null;
  chart: Allowed | null;
  table: Allowed;
  /** The lowest of them. */
  governs: Allowed;
}
