// What of a corner can be felt in a step: the rest leaves every pose of it as it is, and is left out of its name.

import type { Plan, Step } from "../../plan/index.ts";
import type { Situation } from "../../sequence/index.ts";
import { type Corner, cornerOf } from "./corner.ts";

/** The corner with all that cannot be felt in a step at its best value, `start` being the situation at its start. */
export function feltIn(plan: Plan, corner: Corner, step: Step, start: Situation): Corner {
  const comes = step.do === "rebunk";
  const below = (id: string) => start.trains.some((t) => t.id === id && (t.under || comes));
  const anyTrain = start.trains.some((t) => t.under || comes);
  const hooks = start.cranes.filter((c) => c.hooked).length + (step.do === "hook up" ? 1 : 0);
  const seats = start.overSeats || step.do === "bring over";
  const { under } = corner.settlement;
  const train = plan.transporters.some((t) => t.id === under);
  return cornerOf(plan, {
    ...corner,
    cranes_pct: hooks > 0 ? corner.cranes_pct : 0,
    trains_pct: anyTrain ? corner.trains_pct : 0,
    mismatch: hooks > 1 ? corner.mismatch : { crane: "", mm: 0 },
    settlement: (train ? below(under) : seats) ? corner.settlement : { under: "", mm: 0 },
    friction: anyTrain ? corner.friction : null,
    wind: (step.windLimit_m_per_s ?? 0) > 0 ? corner.wind : 0,
  });
}
