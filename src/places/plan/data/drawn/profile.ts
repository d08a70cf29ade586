// The path from the side: its points by chainage, grades between them, and where the transporters of a set stand at its start.
import { type Plan, type PlanSet, pathAt, type Transporter } from "../../../../plan/index.ts";

/** A stretch between two points of the path; slopes in percent, positive rising forward and falling to the left. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly grade_pct: number;
}

/** A transporter where its set begins, chainages in m. */
export interface Footprint {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Chainages of its axle lines, the rearmost first. */
  readonly lines: readonly number[];
  /** Elevation of the path below its deck's centre, m; null where the path does not reach. */
  readonly elevation: number | null;
  readonly bunkHeight: number;
}

/** What stands at one chainage of the site. */
export interface SiteMark {
  readonly at: number;
  readonly words: string;
}

export interface Profile {
  readonly points: readonly { at: number; elevation: number; crossfall_pct: number }[];
  readonly stretches: readonly Stretch[];
  readonly footprints: readonly Footprint[];
  readonly marks: readonly SiteMark[];
  /** What needs a look, in sentences. */
  readonly flags: readonly string[];
}

function footprintOf(plan: Plan, transporter: Transporter, centre: number): Footprint {
  const { lines, pitch_m, deckLength_m, bunkHeight_m } = transporter;
  return {
    id: transporter.id,
    from: centre - deckLength_m / 2,
    to: centre + deckLength_m / 2,
    lines: Array.from({ length: lines }, (_, i) => centre + (i - (lines - 1) / 2) * pitch_m),
    elevation: pathAt(plan, centre)?.elevation_m ?? null,
    bunkHeight: bunkHeight_m,
  };
}

/** The profile with the transporters of one set. `say` prints a length in m. */
export function profileOf(plan: Plan, set: PlanSet, say: (m: number) => string): Profile {
  const { site, transporters } = plan;
  const points = site.path.points.map(({ chainage_m, elevation_m, crossfall_pct }) => ({
    at: chainage_m,
    elevation: elevation_m,
    crossfall_pct,
  }));
  const flags: string[] = [];
  const stretches = points.slice(1).flatMap((b, i): Stretch[] => {
    const a = points[i];
    if (b.at > a.at)
      return [{ from: a.at, to: b.at, grade_pct: (100 * (b.elevation - a.elevation)) / (b.at - a.at) }];
    flags.push(
      `Point ${i + 2} at chainage ${say(b.at)} does not lie ahead of point ${i + 1} at ${say(a.at)}: points run forward.`,
    );
    return [];
  });
  const footprints = set.onTransporters.flatMap(({ transporter: id, deckAt_m }) => {
    const one = transporters.find((machine) => machine.id === id);
    return one === undefined ? [] : [footprintOf(plan, one, set.start.rearEnd_m + deckAt_m)];
  });
  const [first, last] = [points[0].at, points[points.length - 1].at];
  for (const { id, lines } of footprints) {
    const out = lines.filter((at) => at < first - 1e-9 || at > last + 1e-9);
    if (out.length > 0)
      flags.push(
        `${out.length} of ${lines.length} axle lines of ${id} stand beyond the path, which runs from ${say(first)} to ${say(last)}.`,
      );
    const { allowedGrade_pct: most } = transporters.find((machine) => machine.id === id) as Transporter;
    for (const { from, to, grade_pct } of stretches)
      if (Math.abs(grade_pct) > most && to > Math.min(...lines))
        flags.push(
          `Between ${say(from)} and ${say(to)} the path has ${Math.abs(grade_pct).toFixed(1)} % grade; ${id} may stand on ${most} %.`,
        );
  }
  const marks = [
    { at: site.nearFace_m, words: "near face" },
    { at: site.nearBearing_m, words: "near bearings" },
    ...site.stopLines.map(({ name, chainage_m }) => ({ at: chainage_m, words: name })),
  ];
  return { points, stretches, footprints, marks, flags };
}
