// How little capacity is left: what the use of a crane becomes with a little more radius, share or level error, and a caution
// where a hook load comes near the limit that governs. A shared lift at 100 % has nothing left for the smallest tilt.

import { type Crane, hookName } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { chartsOf, cranesOf, type HookedAt, hookReader, hooksCarrying } from "./hookLoad.ts";
import { recordGross, recordRatedLoad, recordRules } from "./hookTrace.ts";
import { levelGrowth, recordReach } from "./reach.ts";
import { hookRules } from "./rules.ts";

/** Changes that a crew may meet: metres of radius, part of the share, percent of level error. Common practice, no source. */
export const CHANGES = { radius: 1, share: 0.05, level_pct: 0.5 } as const;

/** Use of a crane under the rule that governs, as it is and changed a little; null where the chart ends before. */
export interface Sensitivity {
  now: number | null;
  radius: number | null;
  share: number | null;
  level: number | null;
}

type ChangedUse = (
  at: HookedAt,
  pose: Pose,
  change: Partial<Record<keyof typeof CHANGES, number>>,
) => number | null;

/** Use of a crane with more radius (m), share (part of it) and level error (percent). */
function changedUse(ctx: SetContext, crane: Crane): ChangedUse {
  const rules = hookRules(ctx.plan);
  const carrying = hooksCarrying(ctx);
  const charts = chartsOf(ctx, crane);
  return ({ load, reach }, pose, { radius = 0, share = 0, level_pct = 0 }) => {
    const more = share * load.net;
    const growth = (crane.radiusGrowth_mm_per_kN.best / 1000) * (more / 1000);
    const at = reach.radius + radius + growth + levelGrowth(level_pct, reach.height);
    const rated = charts(pose.step).ratedAt(at);
    return rated === null ? null : (load.gross + more) / (rated * rules(carrying(pose)).part);
  };
}

/** Sensitivity of a crane at a pose; null while its hook is not on. */
export function sensitivityAt(ctx: SetContext, crane: Crane, pose: Pose): Sensitivity | null {
  const at = hookReader(ctx, crane)(pose);
  if (at === null) return null;
  const use = changedUse(ctx, crane);
  return {
    now: use(at, pose, {}),
    radius: use(at, pose, { radius: CHANGES.radius }),
    share: use(at, pose, { share: CHANGES.share }),
    level: use(at, pose, { level_pct: CHANGES.level_pct }),
  };
}

const words = (use: number | null): string =>
  use === null ? "off the chart" : `${(100 * use).toFixed(0)} %`;

/** A sensitivity in words. */
export function sensitivityWords(s: Sensitivity): string {
  return `use ${words(s.now)}; with ${CHANGES.radius} m more radius ${words(s.radius)}, with ${100 * CHANGES.share} % more share ${words(s.share)}, ${CHANGES.level_pct} % further out of level ${words(s.level)}`;
}

/** Hook load against the cap (percent of the limit that governs) from which little is left. */
export function capacitiesLeft(ctx: SetContext): Measure[] {
  const cap = limitOf(ctx.plan, "hook load caution");
  if (cap === null) return [];
  const rules = hookRules(ctx.plan);
  const carrying = hooksCarrying(ctx);
  return cranesOf(ctx).map((crane) => {
    const hooked = hookReader(ctx, crane);
    const charts = chartsOf(ctx, crane);
    return measure(
      {
        check: "little capacity left",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        level: "caution",
        cure: "more capacity, or hold radius, level and share closer than the changes named here",
        ...traced(ctx, (pose, rec): Reading => {
          const hook = hooked(pose);
          if (hook === null) return NOT_HERE;
          const chart = charts(pose.step);
          const rated = chart.ratedAt(hook.reach.radius);
          if (rated === null) return NOT_HERE;
          const governing = rules(carrying(pose));
          const limit = rated * governing.part;
          const allowed = (cap.value / 100) * limit;
          if (rec !== null) {
            recordGross(rec, ctx, crane, pose, hook.load);
            recordReach(rec, ctx, crane, pose, hook.reach);
            recordRatedLoad(rec, rated, `${chart.path}, boom ${crane.boomLength_m} m`, hook.reach.radius);
            recordRules(rec, limit, governing);
            constant(rec, "u_cap", cap.value, "%", "part from which little is left", cap.source);
            trace(rec, "F_cap", allowed, "u_cap/100*F_a", "N", "hook load from which little is left");
            rec.ends("F", "F_cap");
          }
          return {
            value: hook.load.gross,
            limit: allowed,
            get where() {
              const s = sensitivityAt(ctx, crane, pose);
              return s === null ? "" : sensitivityWords(s);
            },
          };
        }),
      },
      cap,
    );
  });
}
