// The swing when the last ground support frees: how far the lines are out of plumb at that moment.

import { hookName } from "../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../sequence/index.ts";
import { limitOf } from "./limits.ts";
import type { Finding } from "./types.ts";

/** A bunk or a bearing presses on the set. */
function onGround(pose: Pose): boolean {
  return pose.solution.devices.some(
    (d, j) => (d.kind === "bunk" || d.kind === "bearing") && pose.solution.contact.F[j] > 0,
  );
}

/** The lines that carry at a pose, with the distance of the boom tip from the plumb above their picks, m. */
export function offPlumb(pose: Pose): { crane: string; offset: number }[] {
  const { layout, hoistForce } = pose.solution;
  return layout.hoists.flatMap((h, i) => {
    if (!(hoistForce[i] > 0)) return [];
    const [x, y] = h.offset ?? [0, 0];
    return [{ crane: h.name, offset: Math.hypot(x, y) }];
  });
}

/** One finding for every line that lets the set swing by more than allowed when its last contact with the ground ends. */
export function swingFindings(ctx: SetContext, _run: SetRun, stored: readonly Pose[]): Finding[] {
  const limit = limitOf(ctx.plan, "swing");
  if (!limit) return [];
  const out: Finding[] = [];
  for (let i = 1; i < stored.length; i++) {
    const [before, after] = [stored[i - 1], stored[i]];
    if (!onGround(before) || onGround(after)) continue;
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
        cure: "bring the boom over the picks before the last support frees, and hold the set with tag lines",
      });
    }
  }
  return out;
}
