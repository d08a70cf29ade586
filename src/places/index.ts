/**
 * places: the screens for those who use them, made of scene, share and controls. Plan is for the planner at a desk.
 *
 * ```ts
 * import { groupsOf } from "./index.ts";
 * groupsOf([]); // => { groups: [], open: [] }
 * ```
 */
export { AppContext } from "./appContext.ts";
export { type Filter, filtered, groupsOf, kindOf, noFilter, whereOf } from "./plan/findings.ts";
export { PlanPlace } from "./plan/PlanPlace.tsx";
export { highestUse, tableOf } from "./plan/rows.ts";
