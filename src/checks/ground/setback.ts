// Set-back from the edges of slopes, trenches and retaining walls: least distance of every machine against the chosen rule.

import { areaToEdge } from "../../mechanics/index.ts";
import type { Edge, Plan } from "../../plan/index.ts";
import { type Pose, type SetContext, type SetRun, situationAt } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, METRE, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding, Level, When } from "../types.ts";
import { foundThere, placeWords, whenAt } from "./found.ts";
import { type Standing, standingOf, swept } from "./standing.ts";

/** The rule in force: distance per depth; the greatest of those chosen. */
export const setbackRule = (plan: Plan) => limitOf(plan, "set-back ratio", true);

/** Least distance of a machine's ground from an edge over a run, m, and the stored pose before it; -1 for none. */
export function leastDistance(
  areas: readonly ReturnType<ReturnType<typeof standingOf>[number]["areas"]>[],
  run: SetRun,
  edge: Edge,
): { distance: number; at: number } {
  const [a, b] = ends(edge);
  let distance = Number.POSITIVE_INFINITY;
  let at = -1;
  let before: (typeof areas)[number] | null = null;
  areas.forEach((now, i) => {
    const moving = i + 1 < areas.length && run.step[i] === run.step[i + 1];
    const ground = moving ? swept(now, areas[i + 1]) : now;
    if (before !== null && same(before, ground)) return;
    before = ground;
    for (const area of ground) {
      const d = areaToEdge(area, a, b);
      if (d >= distance) continue;
      distance = d;
      at = i;
    }
  });
  return { distance, at };
}

const same = (a: readonly (readonly (readonly [number, number])[])[], b: typeof a): boolean =>
  a.length === b.length &&
  a.every(
    (area, i) =>
      area.length === b[i].length && area.every((p, k) => p[0] === b[i][k][0] && p[1] === b[i][k][1]),
  );

const ends = (edge: Edge) => [edge.from, edge.to].map((p) => [p.chainage_m, p.y_m] as const);

/** Distance of a machine's ground from an edge, m; Infinity where it has none. */
function distanceAt(machine: Standing, edge: Edge, pose: Pick<Pose, "situation">): number {
  const [a, b] = ends(edge);
  return Math.min(...machine.areas(pose).map((area) => areaToEdge(area, a, b)));
}

/** Halvings of a stretch between stored poses: far below a millimetre of any of them. */
const HALVINGS = 40;

/**
 * Where a machine is nearest to an edge from a stored pose on to the next of its step. It travels straight, so that its
 * distance falls to its least and rises from there.
 */
function nearest(ctx: SetContext, run: SetRun, machine: Standing, edge: Edge, i: number): When {
  const { step, progress } = whenAt(run, i);
  let low = progress;
  let high = i + 1 < run.count && run.step[i + 1] === step ? run.progress[i + 1] : progress;
  const at = (p: number) => distanceAt(machine, edge, { situation: situationAt(ctx, run.steps[step], p) });
  const corners = [low, high];
  for (let k = 0; k < HALVINGS && high > low; k++) {
    const [p, q] = [low + (high - low) * 0.49, low + (high - low) * 0.51];
    if (at(p) <= at(q)) high = q;
    else low = p;
  }
  const best = [...corners, (low + high) / 2].reduce((p, q) => (at(q) < at(p) - 1e-9 ? q : p));
  return { step, progress: best };
}

/** The distance that is asked for, m; null where no rule was chosen. Writes it down as d_a. */
function askedFor(
  plan: Plan,
  edge: Edge,
  rule: ReturnType<typeof setbackRule>,
  rec: Recorder | null = null,
): number | null {
  // The rules are for free slopes and cuts: a wall that holds the ground back asks for its own engineer from its height on.
  const part = edge.kind === "retained" ? 1 : (rule?.value ?? null);
  if (part === null) return null;
  const path = `site.edges[${plan.site.edges?.indexOf(edge)}].depth_m`;
  field(rec, "h", edge.depth_m, `depth of ${edge.name}`, path, edge.depth_m, METRE);
  constant(rec, "k", part, "1", "distance asked for over depth", sourceOf(edge, rule));
  return trace(rec, "d_a", part * edge.depth_m, "k*h", "m", "distance asked for");
}

const sourceOf = (edge: Edge, rule: ReturnType<typeof setbackRule>): string =>
  edge.kind === "retained"
    ? "a wall holds this ground: its surcharge needs a geotechnical engineer; common practice, no source"
    : `${rule?.source}; ${rule?.value} of the depth`;

const CURE = "stand further back, shore the edge, or have a geotechnical engineer sign for it";

/** How a machine at an edge is judged. */
function judged(edge: Edge, rule: ReturnType<typeof setbackRule>) {
  const signed = edge.signedOff;
  const level: Level = signed ? "note" : edge.kind === "retained" ? "caution" : "stop";
  const chosenBy = signed?.by ?? (edge.kind === "retained" ? "default" : (rule?.chosenBy ?? "plan"));
  return { check: "set-back", level, source: sourceOf(edge, rule), chosenBy, cure: CURE } as const;
}

const subjectOf = (machine: Standing, edge: Edge): string => `${machine.name}, ${edge.name}`;

/** Distances of machines from edges at one pose, for their traces. */
export function setbacks(ctx: SetContext): Measure[] {
  const { plan } = ctx;
  const rule = setbackRule(plan);
  return standingOf(ctx).flatMap((machine) =>
    (plan.site.edges ?? []).map((edge) =>
      measure({
        ...judged(edge, rule),
        subject: subjectOf(machine, edge),
        kind: "",
        sense: "least",
        unit: "m",
        factor: 1,
        digits: 2,
        watched: false,
        ...traced(ctx, (pose, rec): Reading => {
          const limit = askedFor(plan, edge, rule, rec);
          const value = distanceAt(machine, edge, pose);
          if (limit === null || !Number.isFinite(value)) return NOT_HERE;
          solved(
            rec,
            "d",
            value,
            "m",
            `least distance in plan of what ${machine.name} has on the ground from ${edge.name}`,
          );
          rec?.ends("d", "d_a");
          return { value, limit };
        }),
      }),
    ),
  );
}

/** Every machine that stands or passes nearer to an edge than the rule says, or near a wall that holds ground. */
export function setbackFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const edges = ctx.plan.site.edges ?? [];
  if (edges.length === 0) return [];
  const rule = setbackRule(ctx.plan);
  return standingOf(ctx).flatMap((machine) => {
    const areas = stored.map((pose) => machine.areas(pose));
    return edges.flatMap((edge) => {
      const { distance: passed, at: before } = leastDistance(areas, run, edge);
      const limit = askedFor(ctx.plan, edge, rule);
      if (before < 0 || limit === null || !(passed < limit * (1 - 1e-9))) return [];
      const at = nearest(ctx, run, machine, edge, before);
      const distance = distanceAt(machine, edge, {
        situation: situationAt(ctx, run.steps[at.step], at.progress),
      });
      const signed = edge.signedOff;
      const words = `${machine.name} comes within ${distance.toFixed(2)} m of ${edge.name} (${edge.depth_m} m deep, ${placeWords(run, at)})`;
      return foundThere(ctx, at, {
        ...judged(edge, rule),
        id: `set-back:${ctx.set.id}:${machine.name}:${edge.name}`,
        subject: subjectOf(machine, edge),
        value: distance,
        limit,
        unit: "m",
        use: distance > 0 ? limit / distance : null,
        words: `${words}: ${limit.toFixed(2)} m is asked for${signed ? `; signed for by ${signed.by}` : ""}`,
      });
    });
  });
}

/** Edges without a rule of set-back. */
export function setbackItems(plan: Plan): Finding[] {
  const open = (plan.site.edges ?? []).filter((e) => e.kind !== "retained");
  if (open.length === 0 || setbackRule(plan)) return [];
  return [
    finding({
      level: "note",
      check: "limit not set",
      set: "",
      subject: "set-back ratio",
      words: `set-back ratio: no rule was chosen for ${open.map((e) => e.name).join(", ")}; distances to them are not judged`,
      cure: "choose a rule of set-back in limits.use, such as setback-1-5",
    }),
  ];
}
