// Travel with load: over which end the boom stands, and what the plan says of the way, the chart and the maker's leave.

import { type Crane, hookName, type Step } from "../../plan/index.ts";
import { boomOf, type Pose, type SetContext, type SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import type { Finding } from "../types.ts";

/** What hangs on a hook below this, N, is no load: rounding. */
const NOTHING = 1;

type End = "front" | "rear" | "side";

/**
 * Over which end of its tracks a boom stands: over an end while it points between the corners of that end. Common
 * practice, no source. Angles in degrees, 0 forward, 90 left.
 */
export function boomOver(crane: Crane, facing_deg: number, heading_deg: number): End {
  const off = (heading_deg - facing_deg) * (Math.PI / 180);
  const corner = Math.atan2(crane.trackGauge_m, crane.trackLength_m);
  const turned = Math.abs(Math.atan2(Math.sin(off), Math.cos(off)));
  if (turned <= corner + 1e-9) return "front";
  return turned >= Math.PI - corner - 1e-9 ? "rear" : "side";
}

/** What the plan leaves open of a walk with load, and a boom that does not stand where the plan says. */
export function walkFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return run.steps.flatMap((one) => {
    const { step } = one;
    if (step.do !== "walk") return [];
    const crane = ctx.plan.cranes.find((c) => c.id === step.crane);
    const column = ctx.supportIndex.get(`hoist ${step.crane}`) ?? -1;
    const poses = stored.slice(one.first, one.first + one.count);
    if (crane === undefined || !poses.some((p) => p.forces[column] > NOTHING)) return [];
    return [...openOf(ctx, one.index, step, crane), ...overFindings(ctx, one.index, step, crane, poses)];
  });
}

type Walk = Extract<Step, { do: "walk" }>;

/** Notes on what a walk with load should state and does not. */
function openOf(ctx: SetContext, index: number, step: Walk, crane: Crane): Finding[] {
  const [at, machine] = [
    `sets[${ctx.plan.sets.findIndex((s) => s.id === ctx.set.id)}].steps[${index}]`,
    `cranes[${ctx.plan.cranes.indexOf(crane)}]`,
  ];
  const lacks: [unknown, string, string][] = [
    [crane.travelChart, `${machine}.travelChart`, "the load chart stands for travel with load as well"],
    [
      step.outOfLevel_pct,
      `${at}.outOfLevel_pct`,
      "the crane is taken to stand along the way as at its place",
    ],
    [step.boomOver, `${at}.boomOver`, "over which end of the tracks the boom stands is not judged"],
    [step.minutes, `${at}.minutes`, "whether the crane travels within its speed is not judged"],
    ...(step.boomOver === undefined
      ? []
      : ([[crane.facing_deg, `${machine}.facing_deg`, "where the tracks point is not known"]] as [
          unknown,
          string,
          string,
        ][])),
  ];
  return lacks.flatMap(([value, path, words]) =>
    value === undefined
      ? [
          finding({
            level: "note",
            check: "missing data",
            set: ctx.set.id,
            subject: path,
            from: { step: index, progress: 0 },
            to: { step: index, progress: 1 },
            worst: { step: index, progress: 0 },
            words: `${path}: blank: ${words}`,
            cure: "give the value with its source",
          }),
        ]
      : [],
  );
}

/** The first place at which a boom stands over another end than stated. It turns one way only as the crane passes its hook. */
function overFindings(
  ctx: SetContext,
  index: number,
  step: Walk,
  crane: Crane,
  poses: readonly Pose[],
): Finding[] {
  const { facing_deg } = crane;
  if (step.boomOver === undefined || facing_deg === undefined) return [];
  for (const pose of poses) {
    const c = pose.situation.cranes.find((x) => x.id === crane.id);
    if (c === undefined) continue;
    const { centre } = boomOf(crane, c.tip, c.moved);
    const heading = Math.atan2(c.tip[1] - centre[1], c.tip[0] - centre[0]) * (180 / Math.PI);
    const over = boomOver(crane, facing_deg, heading);
    if (over === step.boomOver) continue;
    const at = { step: index, progress: pose.progress };
    return [
      finding({
        id: `boom over:${ctx.set.id}:${crane.id}:${index}`,
        level: "caution",
        check: "boom over",
        set: ctx.set.id,
        subject: hookName(crane),
        from: at,
        to: { step: index, progress: 1 },
        worst: at,
        source: "the step's own words; over an end while the boom points between the corners of that end",
        chosenBy: "plan",
        words: `${hookName(crane)} is to travel with its boom over the ${step.boomOver}, but at ${pose.progress.toFixed(2)} of the step it stands over the ${over}`,
        cure: "turn the tracks or choose another way, so that the boom stands where the maker allows travel with load",
      }),
    ];
  }
  return [];
}
