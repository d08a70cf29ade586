// Where a plan uses a crane's chart: radius and load on the hook in each step, at the pose that uses the limit most.
import type { Place, Plan, Pose, SetContext, SetResult } from "../../../../app/index.ts";
import { hookLoadOf, radiusOf, ratedLoad } from "../../../../checks/index.ts";
import { gravityOf, hookName } from "../../../../plan/index.ts";

/** One step on the chart. Radius in m, loads in N. */
export interface CraneUse {
  readonly step: number;
  readonly id: string;
  readonly progress: number;
  readonly radius: number;
  readonly gross: number;
  /** By the chart in force in the step, without the part that a rule allows; null beyond its rows. */
  readonly rated: number | null;
  /** Part of what the governing rule allows. */
  readonly use: number;
  /** Read with the chart for travel with load. */
  readonly travels: boolean;
}

/** Steps of a set in which a crane hangs something on its chart. `poseOf` solves a pose anew. */
export function craneUses(
  context: SetContext,
  set: SetResult,
  craneId: string,
  poseOf: (place: Place) => Pose | null,
): CraneUse[] {
  const plan: Plan = context.plan;
  const crane = plan.cranes.find((one) => one.id === craneId);
  if (crane === undefined) return [];
  const strip = set.strips.find((one) => one.check === "hook load" && one.subject === hookName(crane));
  if (strip === undefined) return [];
  return set.steps.flatMap(({ index, step, first, count }): CraneUse[] => {
    let most = -1;
    for (let i = first; i < first + count; i++) {
      if (strip.use[i] >= 0 && (most < 0 || strip.use[i] > strip.use[most])) most = i;
    }
    if (most < 0) return [];
    const progress = set.progress[most];
    const pose = poseOf({ step: index, progress });
    const load = pose === null ? null : hookLoadOf(context, pose, crane);
    if (pose === null || load === null) return [];
    const radius = radiusOf(context, pose, crane);
    if (!Number.isFinite(radius) || !Number.isFinite(load.gross)) return [];
    const travels = step.do === "walk" && step.crane === crane.id && crane.travelChart !== undefined;
    const chart = travels ? (crane.travelChart ?? crane.chart) : crane.chart;
    const rated = ratedLoad(chart, radius, crane.boomLength_m, gravityOf(plan));
    return [
      { step: index, id: step.id, progress, radius, gross: load.gross, rated, use: strip.use[most], travels },
    ];
  });
}
