// The list of checks, area by area: a new check is a new maker and one line in the list of its area.

import { backedFindings } from "./backedFindings.ts";
import { clearanceChecks } from "./clearance/list.ts";
import { askedItems } from "./coverage/asked.ts";
import { craneChecks } from "./cranes/list.ts";
import { girderChecks } from "./girders/list.ts";
import { groundChecks } from "./ground/list.ts";
import { landingChecks } from "./landing/list.ts";
import { leanRestraint } from "./lean.ts";
import { leftOnFindings } from "./leftOn.ts";
import type { CheckList } from "./measure.ts";
import { metMeasures } from "./metTrace.ts";
import { planFindings } from "./planFindings.ts";
import { rateFindings, rateMeasures } from "./rates.ts";
import { riggingChecks } from "./rigging/list.ts";
import { endFindings, happeningFindings } from "./runFindings.ts";
import { bearingLoads, lashingLoads, outOfLevel, residuals, tipping, uplift } from "./set.ts";
import { transporterChecks } from "./transporters/list.ts";
import { wayBackFindings } from "./wayBackFindings.ts";
import { weightMeasures } from "./weights.ts";
import { windChecks } from "./wind/list.ts";

const setChecks: Partial<CheckList> = {
  makers: [bearingLoads, lashingLoads, tipping, outOfLevel, leanRestraint, uplift, residuals],
  onRun: [rateMeasures, metMeasures],
  onPlan: [weightMeasures],
  runChecks: [endFindings, happeningFindings, rateFindings, leftOnFindings],
  planChecks: [planFindings, askedItems],
  backedChecks: [backedFindings],
  wayBackChecks: [wayBackFindings],
};

const machines = [craneChecks, riggingChecks, transporterChecks, groundChecks, setChecks];
const atPoses: Partial<CheckList>[] = [...machines, landingChecks, clearanceChecks, girderChecks];

const makersOf = (areas: readonly Partial<CheckList>[]) => areas.flatMap((area) => area.makers ?? []);

/** Areas in the order of the list; those of wind read the others anew in it. */
const areas: Partial<CheckList>[] = [...atPoses, windChecks(makersOf(machines), makersOf(atPoses))];

const all = <K extends keyof CheckList>(kind: K): CheckList[K] =>
  areas.flatMap((area): CheckList[K][number][] => area[kind] ?? []) as CheckList[K];

/** Every check there is. */
export const checkList: CheckList = {
  makers: all("makers"),
  onDemand: all("onDemand"),
  onRun: all("onRun"),
  onPlan: all("onPlan"),
  onSet: all("onSet"),
  runChecks: all("runChecks"),
  planChecks: all("planChecks"),
  backedChecks: all("backedChecks"),
  wayBackChecks: all("wayBackChecks"),
  highestChecks: all("highestChecks"),
};

/** The list with one check taken out, by its name: nothing of it is made. */
export function checksWithout(check: string, list: CheckList = checkList): CheckList {
  const others = <T extends { check: string }>(made: T[]): T[] => made.filter((m) => m.check !== check);
  return {
    makers: list.makers.map((make) => (ctx) => others(make(ctx))),
    onDemand: list.onDemand.map((make) => (ctx) => others(make(ctx))),
    onRun: list.onRun.map((make) => (ctx, run) => others(make(ctx, run))),
    onPlan: list.onPlan.map((make) => (plan) => others(make(plan))),
    onSet: list.onSet.map((make) => (ctx) => others(make(ctx))),
    runChecks: list.runChecks.map((find) => (ctx, run, stored) => others(find(ctx, run, stored))),
    planChecks: list.planChecks.map((find) => (plan) => others(find(plan))),
    backedChecks: list.backedChecks.map((find) => (ctx, set, backed) => others(find(ctx, set, backed))),
    wayBackChecks: list.wayBackChecks.map((find) => (ctx, set, ways) => others(find(ctx, set, ways))),
    highestChecks: list.highestChecks.map((find) => (ctx, winds) => others(find(ctx, winds))),
  };
}
