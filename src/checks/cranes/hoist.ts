// The hoist: pull of its line, wraps left on the drum at the lowest hook, room below the boom tip at the highest.

import { byId, type Crane, hookName, pickOf } from "../../plan/index.ts";
import { boomOf, hookAbovePicks, type Pose, type SetContext } from "../../sequence/index.ts";
import { type Limit, limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, KN, METRE, MM, NUMBER, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { cranesOf, hookReader } from "./hookLoad.ts";
import { recordGross } from "./hookTrace.ts";
import { craneField } from "./reach.ts";

/**
 * From hook to boom tip, m, as the rope is paid out: the hook where its line is just taut, without the stretch of the
 * line under load. While the operator holds a load, from where the set was. NaN when the hook is not on.
 */
export function hookToTip(ctx: SetContext, crane: Crane): (pose: Pose) => number {
  const pick = pickOf(ctx.set, crane.id);
  if (pick === null) return () => Number.NaN;
  const above = hookAbovePicks(byId(ctx.plan.rigging, pick.rigging));
  return (pose) => {
    for (const c of pose.situation.cranes) {
      if (c.id !== crane.id) continue;
      if (!c.hooked) break;
      if (c.heldLoad === null) return boomOf(crane, c.tip, c.moved).tip[2] - c.tautAt - pick.height_m - above;
      for (const hoist of pose.state.hoists ?? [])
        if (hoist.name === crane.id) return (hoist.ropeLength ?? 0) - above;
    }
    return Number.NaN;
  };
}

/** Pull of the hoist line: hook load over parts of line and efficiency of the reeving, against its rating. */
export function linePulls(ctx: SetContext): Measure[] {
  return cranesOf(ctx).flatMap((crane) => {
    const { hoistLine: line, partsOfLine } = crane;
    if (line === undefined) return [];
    const hooked = hookReader(ctx, crane);
    const path = craneField(ctx, crane);
    return measure(
      {
        check: "line pull",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        cure: "more parts of line, or less load on this hook",
        ...traced(ctx, (pose, rec): Reading => {
          const hook = hooked(pose);
          if (hook === null) return NOT_HERE;
          const value = hook.load.gross / (partsOfLine * line.efficiency);
          const limit = line.ratedPull_kN * 1000;
          if (rec !== null) {
            recordGross(rec, ctx, crane, pose, hook.load);
            const eta = line.efficiency;
            field(rec, "eta", eta, "efficiency of the reeving", `${path}.hoistLine.efficiency`, eta, NUMBER);
            trace(rec, "S", value, "F/(n_line*eta)", "N", "pull of the line at the drum");
            const place = `${path}.hoistLine.ratedPull_kN`;
            field(rec, "S_a", limit, "rated pull of the line", place, line.ratedPull_kN, KN);
            rec.ends("S", "S_a");
          }
          return { value, limit };
        }),
      },
      { source: `rated line pull of ${crane.id}: ${line.source}`, chosenBy: "plan" },
    );
  });
}

/** Full wraps of rope left on the drum. */
export function wrapsLeft(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "wraps left", true);
  if (limit === null) return [];
  return cranesOf(ctx).flatMap((crane) => (crane.hoistLine === undefined ? [] : wrapsOf(ctx, crane, limit)));
}

function wrapsOf(ctx: SetContext, crane: Crane, limit: Limit): Measure[] {
  const { hoistLine: line, partsOfLine: parts } = crane;
  if (line === undefined) return [];
  const path = craneField(ctx, crane);
  const lead = line.lead_m ?? crane.boomLength_m;
  const diameter = line.drumDiameter_mm / 1000;
  const below = hookToTip(ctx, crane);
  return [
    measure(
      {
        check: "wraps left",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        sense: "least",
        unit: "wraps",
        factor: 1,
        digits: 1,
        cure: "a longer rope, fewer parts of line, or a shorter boom",
        ...traced(ctx, (pose, rec): Reading => {
          const d = below(pose);
          if (Number.isNaN(d)) return NOT_HERE;
          const left = line.rope_m - lead - parts * d;
          const value = left / (Math.PI * diameter);
          if (rec !== null) {
            field(rec, "L_rope", line.rope_m, "whole rope", `${path}.hoistLine.rope_m`, line.rope_m, METRE);
            const [place, words] =
              line.lead_m === undefined
                ? [`${path}.boomLength_m`, "drum to boom tip: the boom's length stands in"]
                : [`${path}.hoistLine.lead_m`, "drum to boom tip"];
            field(rec, "L_lead", lead, words, place, lead, METRE);
            field(rec, "n_line", parts, "parts of line", `${path}.partsOfLine`, parts, NUMBER);
            solved(rec, "d_hook", d, "m", "hook to boom tip, as the rope is paid out");
            trace(rec, "L_left", left, "L_rope - L_lead - n_line*d_hook", "m", "rope left on the drum");
            const drum = `${path}.hoistLine.drumDiameter_mm`;
            field(rec, "D", diameter, "drum, to the middle of the rope", drum, line.drumDiameter_mm, MM);
            trace(rec, "n_wraps", value, "L_left/(pi*D)", "1", "wraps left on the drum");
            constant(rec, "n_a", limit.value, "1", "least wraps", `${limit.source} (${limit.chosenBy})`);
            rec.ends("n_wraps", "n_a");
          }
          return {
            value,
            limit: limit.value,
            get where() {
              return `hook ${d.toFixed(1)} m below the boom tip`;
            },
          };
        }),
      },
      limit,
    ),
  ];
}

/** Least distance of the hook from the boom tip, for cranes whose plan states one. */
export function hookUnderTip(ctx: SetContext): Measure[] {
  return cranesOf(ctx).flatMap((crane) => {
    const least = crane.leastHookToTip_m;
    if (least === undefined) return [];
    const below = hookToTip(ctx, crane);
    return measure(
      {
        check: "hook under tip",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        sense: "least",
        unit: "m",
        factor: 1,
        digits: 2,
        cure: "a longer boom, shorter slings, or a lower lift: the block would meet the boom tip",
        ...traced(ctx, (pose, rec): Reading => {
          const value = below(pose);
          if (Number.isNaN(value)) return NOT_HERE;
          if (rec !== null) {
            solved(rec, "d_hook", value, "m", "hook to boom tip, as the rope is paid out");
            field(
              rec,
              "d_a",
              least,
              "least distance of hook and boom tip",
              `${craneField(ctx, crane)}.leastHookToTip_m`,
              least,
              METRE,
            );
            rec.ends("d_hook", "d_a");
          }
          return { value, limit: least };
        }),
      },
      { source: `maker's least distance of ${crane.id} between block and boom tip`, chosenBy: "plan" },
    );
  });
}
