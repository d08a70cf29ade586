// Seats of a set: design against as built by girder, in m, with what shims add; what was not surveyed stays unknown.
import { type BearingLine, type Plan, type PlanSet, seatsOf } from "../../../../plan/index.ts";

/** One seat. Differences in m: positive where it stands higher than designed. */
export interface SeatLevel {
  readonly line: BearingLine;
  readonly girder: string;
  readonly design: number;
  readonly asBuilt: number | null;
  /** As built less design; null until it was surveyed. */
  readonly off: number | null;
  /** Thickness of the shims on it. */
  readonly shims: number;
  readonly date: string;
}

/** Seats of one bearing line, from the left girder to the right one. */
export interface SeatRow {
  readonly line: BearingLine;
  readonly seats: readonly SeatLevel[];
  /**
   * How far the tops (as built, with shims) depart from a plane parallel to the designed one: greatest less least
   * difference, m. Null while a seat was not surveyed.
   */
  readonly apart: number | null;
}

/** Seats below a set, the near line first. */
export function seatRows(plan: Plan, set: PlanSet): SeatRow[] {
  const y = (girder: string) => set.girders.find(({ line }) => line === girder)?.y_m ?? 0;
  const all = seatsOf(plan, set).map(
    ({ line, girder, design_m, asBuilt_m, shims_mm, date }): SeatLevel => ({
      line,
      girder,
      design: design_m,
      asBuilt: asBuilt_m,
      off: asBuilt_m === null ? null : asBuilt_m - design_m,
      shims: (shims_mm ?? 0) / 1000,
      date,
    }),
  );
  return (["near", "far"] as const).flatMap((line): SeatRow[] => {
    const seats = all.filter((seat) => seat.line === line).sort((a, b) => y(b.girder) - y(a.girder));
    if (seats.length === 0) return [];
    const tops = seats.map(({ off, shims }) => (off === null ? null : off + shims));
    const known = tops.filter((top) => top !== null);
    const apart = known.length < tops.length ? null : Math.max(...known) - Math.min(...known);
    return [{ line, seats, apart }];
  });
}
