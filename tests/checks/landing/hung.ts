// The demonstration's set hung over its seats by both hooks, as a plan of its landing alone: cheap to run, changed by a test.

import type { CheckList, Finding } from "../../../src/checks/index.ts";
import { landedOn, topsOf } from "../../../src/checks/index.ts";
import type { Plan } from "../../../src/plan/index.ts";
import {
  type Pose,
  planeLevel,
  plumbOf,
  prepareContext,
  runSet,
  type SetContext,
  type SetRun,
  type Situation,
} from "../../../src/sequence/index.ts";
import { scenario } from "../../sequence/plans.ts";

/** The demonstration from its landing on, changed. */
export function landingPlan(change: (plan: Plan) => void = () => {}): Plan {
  return scenario("demo", (plan) => {
    const [set] = plan.sets;
    set.start.y_m = 0;
    set.steps = set.steps.slice(set.steps.findIndex((s) => s.id === "landing"));
    change(plan);
  });
}

/** A third girder in the middle, with its seats and bearings; levels between those of the other two. */
export function withMiddle(plan: Plan): void {
  const [set] = plan.sets;
  const [L] = set.girders;
  set.girders.splice(1, 0, { ...structuredClone(L), line: "M", y_m: 0 });
  set.ledger = [];
  for (const line of ["near", "far"] as const) {
    const pair = plan.site.seats.filter((s) => s.line === line);
    const mean = (of: (s: (typeof pair)[number]) => number) => (of(pair[0]) + of(pair[1])) / 2;
    plan.site.seats.push({
      ...pair[0],
      girder: "M",
      design_m: mean((s) => s.design_m),
      asBuilt_m: mean((s) => s.design_m),
    });
    const bearing = plan.site.bearings.find(
      (b) => b.line === line && b.girder === "R",
    ) as Plan["site"]["bearings"][number];
    plan.site.bearings.push({ ...bearing, girder: "M" });
  }
  for (const step of set.steps) step.carries = step.carries.concat(["near M", "far M"]);
}

/** Both hooks hold the set this far above its seats, m, all lines plumb; `lower` says how much lower single hooks are. */
function hanging(ctx: SetContext, above: number, lower: Readonly<Record<string, number>>): Situation {
  const landed = landedOn(ctx, topsOf(ctx, "it stands"));
  if (landed === null) throw new Error("the set does not come to rest on its bearings");
  const { plane } = landed.situation;
  const situation = { ...landed.situation, plane: { ...plane, elevation: plane.elevation + above } };
  return {
    ...situation,
    cranes: situation.cranes.map((c) => {
      const pick = ctx.set.picks.find((p) => p.crane === c.id);
      return {
        ...c,
        hooked: true,
        tautAt: planeLevel(situation, pick?.at_m ?? 0, 0) + 0.8 - (lower[c.id] ?? 0),
        tip: plumbOf(ctx, situation, c.id),
      };
    }),
  };
}

export interface Landed {
  ctx: SetContext;
  run: SetRun;
  stored: Pose[];
}

/** Runs the landing of a plan, from where its set hangs above its seats, some hooks lower than others, m. */
export function landingRun(
  plan: Plan,
  setId = plan.sets[0].id,
  lower: Readonly<Record<string, number>> = {},
): Landed {
  const ctx = prepareContext(plan, setId);
  const stored: Pose[] = [];
  const run = runSet(ctx, [], { from: hanging(ctx, 0.1, lower), onPose: (pose) => stored.push(pose) });
  return { ctx, run, stored };
}

/** What lists of checks found of a landing: a list is run over it once. */
const known = new WeakMap<Landed, WeakMap<Partial<CheckList>, Finding[]>>();

/** What the checks of whole runs, and of the plan, find of one name. */
export function findingsIn(landed: Landed, checks: Partial<CheckList>, check: string): Finding[] {
  const { ctx, run, stored } = landed;
  const lists = known.get(landed) ?? new WeakMap<Partial<CheckList>, Finding[]>();
  known.set(landed, lists);
  const all = lists.get(checks) ?? [
    ...(checks.planChecks ?? []).flatMap((find) => find(ctx.plan)),
    ...(checks.runChecks ?? []).flatMap((find) => find(ctx, run, stored)),
  ];
  lists.set(checks, all);
  return all.filter((f) => f.check === check);
}

const short = 12;

/** Girders A, B, C, 12 m long and 3 m apart, over level seats at 10.1 m, and their landing; small enough to solve densely. */
export function shortPlan(change: (plan: Plan) => void = () => {}): Plan {
  return scenario("one-girder", (plan) => {
    const { site } = plan;
    const [set] = plan.sets;
    const [G] = set.girders;
    const lines = ["A", "B", "C"];
    site.farBearing_m = 61;
    site.farFace_m = 60.2;
    site.farBackwall_m = 61.8;
    set.length_m = short;
    set.soleStations_m = { near: 0.5, far: 11.5 };
    set.ledger = [];
    set.tagLines = [];
    set.girders = lines.map((line, i) => ({
      ...structuredClone(G),
      line,
      y_m: 3 - 3 * i,
      pieces: [{ ...structuredClone(G.pieces[0]), to_m: short }],
    }));
    set.crossFrames = [0.5, 6, 11.5].map((at_m) => ({
      at_m,
      mass_t: 0.2,
      area_mm2: 3000,
      inPlaneInertia_m4: 4e-4,
      planInertia_m4: 1e-6,
      torsion_m4: 1e-7,
      height_m: 0.8,
    }));
    const packing_mm = Object.fromEntries(lines.map((line) => [line, 0]));
    set.onTransporters = set.onTransporters.map((on, i) => ({ ...on, deckAt_m: 3 + 6 * i, packing_mm }));
    set.picks = set.picks.map((pick) => ({ ...pick, at_m: pick.crane === "far-crane" ? 11 : 1 }));
    const spread = <T extends { line: string; girder: string }>(list: T[]) =>
      list.flatMap((one) => lines.map((girder) => ({ ...one, girder })));
    site.seats = spread(site.seats);
    site.bearings = spread(site.bearings).map((b) => ({ ...b, ratedLoad_kN: 500, sideLimit_kN: 500 }));
    const carries = lines.flatMap((line) => [`near ${line}`, `far ${line}`]);
    set.steps = set.steps
      .slice(set.steps.findIndex((s) => s.id === "landing"))
      .map((s) => ({ ...s, carries, ...(s.do === "land" ? { stages_kN: [30] } : {}) }));
    change(plan);
  });
}

/** Puts the seats of a plan off their design by these levels, m, by name of their bearing. */
export function warpSeats(plan: Plan, off: Readonly<Record<string, number>>): void {
  for (const seat of plan.site.seats)
    seat.asBuilt_m = seat.design_m + (off[`${seat.line} ${seat.girder}`] ?? 0);
}
