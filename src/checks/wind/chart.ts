// The wind that a load chart allows: its own limit at the boom tip, less where more sail hangs on the hook than it reckons with.

import { BLOCK } from "../../mechanics/index.ts";
import { byId, type Crane, hookName } from "../../plan/index.ts";
import { boomOf, type Pose, type SetContext } from "../../sequence/index.ts";
import { hookLoadOf } from "../cranes/hookLoad.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, NUMBER, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { dragArea, gustAtTip, SPEED, sideArea } from "./air.ts";
import { recordLimit } from "./stepLimits.ts";

const AREA = { unit: "m2", si: "m2", change: "" } as const;
const IDEA =
  "FEM 5.016 (from memory): the chart's wind limit holds for its reference load area; V = V_chart sqrt(A_ref C_ref / (A C))";

/** Sail that a hook holds, and that its chart reckons with, both area times force coefficient, m2. */
export interface Sail {
  own: number;
  reference: number;
}

/**
 * Sail on a hook: of the whole set the part that is the hook's part of the weight, with block and rigging. The chart's: as the
 * plan states it, else an area per tonne of what hangs on the hook. Null where the hook carries nothing.
 */
export function sailOf(ctx: SetContext, crane: Crane, pose: Pose, rec: Recorder | null = null): Sail | null {
  const { wind } = crane;
  const column = ctx.supportIndex.get(`hoist ${crane.id}`) ?? -1;
  const net = pose.forces[column];
  if (wind === undefined || !(net > 0)) return null;
  const path = `cranes[${ctx.plan.cranes.indexOf(crane)}].wind`;
  const W = ctx.model.mass * ctx.gravity;
  solved(rec, "F_net", net, "N", `net load of ${crane.id} on its picks`);
  constant(rec, "W", W, "N", "weight of the set", "take-off of the plan");
  const greater = sideArea(ctx.set, "+y") >= sideArea(ctx.set, "-y") ? "+y" : "-y";
  const whole = dragArea(ctx.plan, ctx.set, greater, rec);
  constant(rec, "C_block", BLOCK, "1", "force coefficient of block and rigging", "FEM 1.001 (from memory)");
  const block = wind.blockArea_m2 ?? 0;
  if (wind.blockArea_m2 === undefined)
    constant(rec, "A_block", 0, "m2", "area of block and rigging", "not stated");
  else field(rec, "A_block", block, "area of block and rigging", `${path}.blockArea_m2`, block, AREA);
  const own = trace(
    rec,
    "S",
    (net / W) * whole + BLOCK * block,
    "F_net/W*A_d + C_block*A_block",
    "m2",
    "sail on the hook: its part of the set's by its part of the weight",
  );
  if (wind.loadArea_m2 !== undefined) {
    field(
      rec,
      "A_ref",
      wind.loadArea_m2,
      "load area that the chart reckons with",
      `${path}.loadArea_m2`,
      wind.loadArea_m2,
      AREA,
    );
    const C = wind.loadDrag ?? 1.2;
    if (wind.loadDrag === undefined)
      constant(rec, "C_ref", C, "1", "its force coefficient", "FEM 5.016 (from memory)");
    else field(rec, "C_ref", C, "its force coefficient", `${path}.loadDrag`, C, NUMBER);
    return {
      own,
      reference: trace(rec, "S_ref", wind.loadArea_m2 * C, "A_ref*C_ref", "m2", "sail of the chart"),
    };
  }
  const perTonne = limitOf(ctx.plan, "chart sail");
  const load = hookLoadOf(ctx, pose, crane);
  if (perTonne === null || load === null) return null;
  const tonnes = solved(
    rec,
    "m_h",
    load.gross / ctx.gravity / 1000,
    "t",
    `what hangs on the hook of ${crane.id}`,
  );
  constant(
    rec,
    "s_ref",
    perTonne.value,
    "m2/t",
    "sail per tonne",
    `${perTonne.source} (${perTonne.chosenBy})`,
  );
  return {
    own,
    reference: trace(rec, "S_ref", perTonne.value * tonnes, "s_ref*m_h", "m2", "sail of the chart"),
  };
}

/** Height of a boom tip above the ground at its crane, m. */
export function tipHeight(crane: Crane, pose: Pose): number {
  const c = byId(pose.situation.cranes, crane.id);
  return boomOf(crane, c.tip, c.moved).tip[2] - crane.position.elevation_m;
}

/** Speed at the boom tip that a chart allows with what hangs on its hook, m/s; null where the plan states no limit for it. */
export function chartSpeed(
  ctx: SetContext,
  crane: Crane,
  pose: Pose,
  rec: Recorder | null = null,
): number | null {
  const { wind } = crane;
  if (wind === undefined) return null;
  const path = `cranes[${ctx.plan.cranes.indexOf(crane)}].wind`;
  const sail = sailOf(ctx, crane, pose, rec);
  const V = wind.limit_m_per_s;
  const words = "wind limit of the chart";
  if (sail === null) return field(rec, "V_a", V, words, `${path}.limit_m_per_s`, V, SPEED);
  field(rec, "V_chart", V, words, `${path}.limit_m_per_s`, V, SPEED);
  return trace(
    rec,
    "V_a",
    V * Math.sqrt(Math.min(1, sail.reference / sail.own)),
    "V_chart*sqrt(min(1, S_ref/S))",
    "m/s",
    "wind limit with this sail",
    IDEA,
  );
}

/** The wind of the step at the boom tip against what the chart allows with the sail on the hook. */
export function chartWind(ctx: SetContext): Measure[] {
  const { plan, set } = ctx;
  return set.picks.flatMap((pick): Measure[] => {
    const crane = byId(plan.cranes, pick.crane);
    const { wind } = crane;
    if (wind === undefined) return [];
    return [
      measure({
        check: "chart wind",
        subject: hookName(crane),
        kind: `${crane.kind} crane`,
        unit: "m/s at the boom tip",
        factor: 1,
        digits: 1,
        // Between stored poses the load on the hook runs almost straight, and the boom tip hardly rises.
        watched: false,
        source: `wind limit of the chart of ${crane.id}: ${wind.source}; ${IDEA}`,
        chosenBy: "plan",
        cure: "a lower wind limit in this step, or a chart of a higher one",
        ...traced(ctx, (pose, rec): Reading => {
          const V = set.steps[pose.step]?.windLimit_m_per_s ?? 0;
          if (V === 0 || !pose.situation.cranes.some((c) => c.id === crane.id && c.hooked)) return NOT_HERE;
          const allowed = chartSpeed(ctx, crane, pose, rec);
          if (allowed === null) return NOT_HERE;
          const tip = tipHeight(crane, pose);
          const perReading = gustAtTip(plan, 1, tip);
          const there = V * perReading;
          if (rec !== null) {
            recordLimit(rec, ctx, { index: pose.step, V });
            constant(
              rec,
              "k_tip",
              perReading,
              "1",
              `3-s gust at ${tip.toFixed(1)} m over the instrument's reading`,
              "averaging time and height factors of site.wind",
            );
            trace(rec, "V_tip", there, "V_step*k_tip", "m/s", "gust at the boom tip");
            rec.ends("V_tip", "V_a");
          }
          return {
            value: there,
            limit: allowed,
            get where() {
              const sail = sailOf(ctx, crane, pose);
              return sail === null
                ? ""
                : `sail ${sail.own.toFixed(0)} m2, the chart's ${sail.reference.toFixed(0)} m2`;
            },
          };
        }),
      }),
    ];
  });
}
