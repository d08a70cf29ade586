// walk: a crane travels on its tracks, with or without load.

import { byId } from "../../plan/index.ts";
import { boomOf } from "../place.ts";
import type { Happening, Situation } from "../types.ts";
import { happening, hookForce, type MotionOf, type Probe, sunkLess, withCrane } from "./kind.ts";

type Walk = Parameters<MotionOf<"walk">["find"]>[1];

/** What hangs on a hook below this, N, is no load: rounding. */
const NOTHING = 1;
/** Travel after which a crane has left the hollow that it stood in, m. Common practice, no source. */
const HOLLOW = 1;

function walked(step: Walk, start: Situation, part: number): Situation {
  const [dx, dy] = [part * step.dx_m, part * step.dy_m];
  return withCrane(start, step.crane, (c) => ({
    moved: [c.moved[0] + dx, c.moved[1] + dy],
    // A hook on the set stays over its picks, unless the plan lets it go along; an idle boom always goes along.
    tip: c.hooked && step.hook !== "goes along" ? c.tip : [c.tip[0] + dx, c.tip[1] + dy],
  }));
}

export const walk: MotionOf<"walk"> = {
  find: (ctx, step, start, probe: Probe) => {
    const crane = byId(ctx.plan.cranes, step.crane);
    const here = byId(start.cranes, step.crane);
    const happenings: Happening[] = [];
    const F = here.hooked ? hookForce(ctx, probe(start), step.crane) : 0;
    if (F > NOTHING && !crane.travelWithLoad)
      happenings.push(
        happening(
          "out of order",
          step.crane,
          `${step.crane} walks with ${(F / 1000).toFixed(1)} kN of the set on its hook, which its maker does not allow`,
          { value: F, limit: 0, unit: "N" },
        ),
      );
    if (F > NOTHING && crane.travelWithLoad && (crane.travelSource ?? "").trim() === "")
      happenings.push(
        happening("missing data", step.crane, `${step.crane}: no source of the leave to travel with load`, {
          level: "caution",
        }),
      );
    const reaches = (part: number) => {
      const c = byId(walked(step, start, part).cranes, step.crane);
      return boomOf(crane, c.tip, c.moved).inReach;
    };
    // Distance from a fixed hook has no second minimum along a straight way: the last place in reach is found by halves.
    let part = 1;
    if (here.hooked && !reaches(1)) {
      let [good, bad] = [0, 1];
      for (let i = 0; i < 50; i++) {
        const middle = (good + bad) / 2;
        if (reaches(middle)) good = middle;
        else bad = middle;
      }
      part = good;
      const way = Math.hypot(step.dx_m, step.dy_m);
      happenings.push(
        happening(
          "end not reached",
          step.crane,
          `the boom of ${step.crane} no longer reaches its hook after ${(part * way).toFixed(2)} m of ${way.toFixed(2)} m`,
          { value: way, limit: part * way, unit: "m", progress: 1 },
        ),
      );
    }
    return { ends: [part], happenings };
  },
  at: (ctx, step, start, ends, progress) => {
    if (progress === 0) return start;
    const part = progress * ends[0];
    const way = part * Math.hypot(step.dx_m, step.dy_m);
    const hook = ctx.supports.filter((s) => s.what === "hoist" && s.of === step.crane).map((s) => s.name);
    return { ...walked(step, start, part), sunk: sunkLess(start.sunk, hook, way / HOLLOW) };
  },
};
