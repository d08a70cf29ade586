// The hoist line out of plumb: how far in all, and how hard it pulls across the boom.

import { hookName } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { cranesOf, hookReader } from "./hookLoad.ts";
import { recordGross } from "./hookTrace.ts";
import { craneField, PERCENT, plumbAt } from "./reach.ts";

const percent = (tangent: number): string => (100 * tangent).toFixed(1);

/** Line out of plumb, whichever way, as a tangent. */
export function lineLean(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "line lean");
  if (!limit) return [];
  return cranesOf(ctx).map((crane) =>
    measure(
      {
        check: "line lean",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        level: "caution",
        unit: "% out of plumb",
        factor: 100,
        digits: 1,
        cure: "shorter bites, or the boom brought in sooner",
        ...traced(ctx, (pose, rec): Reading => {
          const plumb = plumbAt(crane, pose);
          if (plumb === null) return NOT_HERE;
          if (rec !== null) {
            solved(
              rec,
              "l",
              plumb.total,
              "1",
              `line of ${crane.id} out of plumb: its pull aside over its lift`,
            );
            constant(
              rec,
              "l_pct",
              limit.value,
              "%",
              "allowed out of plumb",
              `${limit.source} (${limit.chosenBy})`,
            );
            trace(rec, "l_a", limit.value / 100, "l_pct/100", "1", "allowed out of plumb");
            rec.ends("l", "l_a");
          }
          return {
            value: plumb.total,
            limit: limit.value / 100,
            get where() {
              const way = plumb.radial < 0 ? "inward" : "outward";
              return `${percent(Math.abs(plumb.radial))} % ${way} along the boom, ${percent(plumb.side)} % across it`;
            },
          };
        }),
      },
      limit,
    ),
  );
}

/**
 * Pull of a leaning line across the boom against a part of the hook load: by the crane's maker where the plan has it
 * (a stop), else the standing limit (a caution). All that hangs is taken to lean with the line.
 */
export function boomSideLoads(ctx: SetContext): Measure[] {
  return cranesOf(ctx).flatMap((crane) => {
    const own = crane.allowedSideLoad_pct;
    const path = `${craneField(ctx, crane)}.allowedSideLoad_pct`;
    const limit =
      own === undefined
        ? limitOf(ctx.plan, "boom side load")
        : { value: own, source: `maker's limit of ${crane.id}, percent of the hook load`, chosenBy: "plan" };
    if (limit === null) return [];
    const hooked = hookReader(ctx, crane);
    return measure(
      {
        check: "boom side load",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        level: own === undefined ? "caution" : "stop",
        cure: "swing the boom over the picks before the load is taken or moved on",
        ...traced(ctx, (pose, rec): Reading => {
          const plumb = plumbAt(crane, pose);
          const hook = plumb === null ? null : hooked(pose);
          if (plumb === null || hook === null) return NOT_HERE;
          const { gross } = hook.load;
          const value = plumb.side * gross;
          const allowed = (limit.value / 100) * gross;
          if (rec !== null) {
            recordGross(rec, ctx, crane, pose, hook.load);
            solved(rec, "l_side", plumb.side, "1", `line of ${crane.id} out of plumb across its boom`);
            trace(rec, "F_side", value, "l_side*F", "N", "pull across the boom");
            if (own !== undefined)
              field(rec, "u_side", own / 100, "allowed part of the hook load", path, own, PERCENT);
            else {
              constant(rec, "u_pct", limit.value, "%", "allowed part", `${limit.source} (${limit.chosenBy})`);
              trace(rec, "u_side", limit.value / 100, "u_pct/100", "1", "allowed part of the hook load");
            }
            trace(rec, "F_a", allowed, "u_side*F", "N", "allowed pull across the boom");
            rec.ends("F_side", "F_a");
          }
          return {
            value,
            limit: allowed,
            get where() {
              return `${percent(plumb.side)} % of the hook load`;
            },
          };
        }),
      },
      limit,
    );
  });
}
