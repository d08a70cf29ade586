// The rigging over a whole run: every part at its worst pose, and the legs of every hook where it carries most.

import { stretch } from "../../mechanics/index.ts";
import { hookName } from "../../plan/index.ts";
import { poseAt, type SetContext, type SetRun } from "../../sequence/index.ts";
import { useOf as partOfLimit } from "../measure.ts";
import type { When } from "../types.ts";
import { riggedHooks, slingEA } from "./legs.ts";
import { partLoads } from "./parts.ts";

/** One part of the rigging where it is used most. */
export interface PartUse {
  /** As `far crane: sling 44 mm`. */
  subject: string;
  /** Load of one, and its rated load, N. */
  load: number;
  rated: number;
  at: When;
  where: string;
}

/** The legs to one girder where their hook carries most. */
export interface LegUse {
  hook: string;
  girder: string;
  at: When;
  /** Load of the line, and tension and horizontal part of all its legs together, N. */
  line: number;
  tension: number;
  horizontal: number;
  /** From the vertical, rad. */
  angle: number;
  /** Stretch of one leg, m; null where the plan gives no stiffness. */
  stretch: number | null;
}

/** Every part at its worst stored pose, that with the lowest factor first; and the legs. */
export function riggingUse(ctx: SetContext, run: SetRun): { parts: PartUse[]; legs: LegUse[] } {
  const measures = partLoads(ctx);
  const parts = new Map<string, { use: number; part: PartUse }>();
  const hooks = riggedHooks(ctx);
  const most = hooks.map(() => 0);
  const legs: LegUse[][] = hooks.map(() => []);
  for (let i = 0; i < run.count; i++) {
    const step = run.steps[run.step[i]];
    const pose = poseAt(ctx, step, run.progress[i]);
    if (pose.solution.status !== "solved") continue;
    const at = { step: run.step[i], progress: run.progress[i] };
    for (const m of measures) {
      const r = m.read(pose);
      const use = partOfLimit(m, r);
      if (Number.isNaN(use) || use <= (parts.get(m.subject)?.use ?? 0)) continue;
      parts.set(m.subject, {
        use,
        part: { subject: m.subject, load: r.value, rated: r.limit, at, where: r.where ?? "" },
      });
    }
    hooks.forEach((hook, h) => {
      const net = pose.forces[hook.column];
      if (!(net > most[h])) return;
      most[h] = net;
      const EA = slingEA(hook.rig);
      const perPick = hook.rig.legs?.perPick ?? 1;
      const rise = hook.rig.kind === "point" ? hook.rig.hookPinHeight_m : hook.rig.slingLength_m;
      legs[h] = hook.lines.map(({ girder, column, cos }) => {
        const line = pose.forces[column];
        const tension = line / cos;
        return {
          hook: hookName(hook.crane),
          girder,
          at,
          line,
          tension,
          horizontal: Math.sqrt(Math.max(0, tension * tension - line * line)),
          angle: Math.acos(cos),
          stretch: EA === null ? null : stretch(tension / perPick, EA, rise / cos),
        };
      });
    });
  }
  const list = [...parts.values()].sort((a, b) => b.use - a.use).map(({ part }) => part);
  return { parts: list, legs: legs.flat() };
}
