// The swing when the last ground support frees: how far the lines are out of plumb at that moment.

import { hookName } from "../plan/index.ts";
import { type Pose, poseAt, type SetContext, type SetRun } from "../sequence/index.ts";
import { cranesOf } from "./cranes/hookLoad.ts";
import { limitOf } from "./limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "./measure.ts";
import { constant, solved, trace } from "./trace.ts";
import { traced } from "./traced.ts";
import type { Finding } from "./types.ts";

/** A bunk or a bearing presses on the set. */
function onGround(pose: Pose): boolean {
  return pose.solution.devices.some(
    (d, j) => (d.kind === "bunk" || d.kind === "bearing") && pose.solution.contact.F[j] > 0,
  );
}

/** The last contact with the ground ends between two neighbouring poses. */
const frees = (before: Pose, after: Pose): boolean => onGround(before) && !onGround(after);

const cure = "bring the boom over the picks before the last support frees, and hold the set with tag lines";

/** A line that carries, with the boom tip from the plumb above its picks, m: along, across and in all. */
interface OffPlumb {
  crane: string;
  x: number;
  y: number;
  offset: number;
}

/** The lines that carry at a pose. */
function offPlumb(pose: Pose): OffPlumb[] {
  const { layout, hoistForce } = pose.solution;
  return layout.hoists.flatMap((h, i) => {
    if (!(hoistForce[i] > 0)) return [];
    const [x, y] = h.offset ?? [0, 0];
    return [{ crane: h.name, x, y, offset: Math.hypot(x, y) }];
  });
}

/** One finding for every line that lets the set swing by more than allowed when its last contact with the ground ends. */
export function swingFindings(ctx: SetContext, _run: SetRun, stored: readonly Pose[]): Finding[] {
  const limit = limitOf(ctx.plan, "swing");
  if (!limit) return [];
  const out: Finding[] = [];
  for (let i = 1; i < stored.length; i++) {
    const [before, after] = [stored[i - 1], stored[i]];
    if (!frees(before, after)) continue;
    for (const { crane, offset } of offPlumb(after)) {
      if (!(offset * 1000 > limit.value * (1 + 1e-9))) continue;
      const machine = ctx.plan.cranes.find((c) => c.id === crane);
      const name = machine ? hookName(machine) : crane;
      const at = { step: after.step, progress: after.progress };
      out.push({
        id: `swing:${ctx.set.id}:${crane}:${at.step}:${at.progress}`,
        level: "stop",
        check: "swing",
        set: ctx.set.id,
        subject: name,
        from: at,
        to: at,
        worst: at,
        value: offset,
        limit: limit.value / 1000,
        unit: "m",
        use: (offset * 1000) / limit.value,
        source: limit.source,
        chosenBy: limit.chosenBy,
        words: `the last support on the ground frees while the line of ${name} is ${offset.toFixed(2)} m out of plumb: the set swings by that`,
        cure,
      });
    }
  }
  return out;
}

/** The same with its trace, for every line at the poses where the last contact with the ground has just ended. */
export function swingMeasures(ctx: SetContext, run: SetRun): Measure[] {
  const limit = limitOf(ctx.plan, "swing");
  if (limit === null) return [];
  return cranesOf(ctx).map((crane) =>
    measure(
      {
        check: "swing",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        unit: "m",
        factor: 1,
        digits: 2,
        watched: false,
        cure,
        ...traced(ctx, (pose, rec): Reading => {
          const line = offPlumb(pose).find((one) => one.crane === crane.id);
          if (line === undefined || !freesAt(ctx, run, pose))
            return {
              ...NOT_HERE,
              why: "it is no stored pose at which the last support on the ground has just freed",
            };
          if (rec !== null) {
            solved(rec, "x", line.x, "m", `boom tip of ${crane.id} from the plumb above its picks, along`);
            solved(rec, "y", line.y, "m", `boom tip of ${crane.id} from the plumb above its picks, across`);
            trace(rec, "s", line.offset, "sqrt(x^2 + y^2)", "m", "line out of plumb");
            constant(rec, "s_mm", limit.value, "mm", "allowed", `${limit.source} (${limit.chosenBy})`);
            trace(rec, "s_a", limit.value / 1000, "s_mm/1000", "m", "allowed");
            rec.ends("s", "s_a");
          }
          return { value: line.offset, limit: limit.value / 1000 };
        }),
      },
      limit,
    ),
  );
}

/** Whether a pose is a stored one at which the last contact with the ground has just ended. */
function freesAt(ctx: SetContext, run: SetRun, pose: Pose): boolean {
  for (let i = 1; i < run.count; i++) {
    if (run.step[i] !== pose.step || Math.abs(run.progress[i] - pose.progress) > 1e-9) continue;
    if (frees(poseAt(ctx, run.steps[run.step[i - 1]], run.progress[i - 1]), pose)) return true;
  }
  return false;
}
