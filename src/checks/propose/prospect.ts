// What a proposal has to work with: the machines that can be used, the weight, and the places that the site fixes.

import { prepareSet, type SetModel } from "../../mechanics/index.ts";
import {
  asideOf,
  bearingsOf,
  byId,
  type Crane,
  gravityOf,
  type Plan,
  type PlanSet,
  pieceSection,
  type Rigging,
  setLength,
  type Transporter,
} from "../../plan/index.ts";
import { setData } from "../../sequence/index.ts";

/** One choice of machines for a set, and all that does not depend on where they stand. SI. */
export interface Prospect {
  plan: Plan;
  set: PlanSet;
  model: SetModel;
  length: number;
  /** Weight of the set, N, and its CG along and across, m. */
  weight: number;
  cg: [number, number];
  rear: Transporter;
  front: Transporter;
  far: Crane;
  near: Crane;
  farRig: Rigging;
  nearRig: Rigging;
  /** No axle line goes beyond this chainage. */
  stop: number;
  /** First chainage of the path. */
  pathStart: number;
  /** Chainage of the rear end once the set stands over its seats. */
  seated: number;
  /** y of the set's axis on the path and over its seats. */
  across: number;
  seatedAcross: number;
}

/** Pick stations keep this much steel behind them, m. Common practice, no source. */
export const PICK_END = 1;
/** Bunks keep this much steel behind them, m. Common practice, no source. */
export const BUNK_END = 0.5;
/** Air between the decks of two transporters, m. Common practice, no source. */
export const DECK_AIR = 1;
/** Most choices of machines that are looked at. */
const MOST = 16;

/** Every choice of machines for a set; or, in words, what is missing for any. */
export function prospectsOf(plan: Plan, setId: string): Prospect[] | string {
  const set = byId(plan.sets, setId);
  const named = <T extends { id: string }>(all: T[], ids: string[]) => {
    const those = all.filter((x) => ids.includes(x.id));
    return those.length > 0 ? those : all;
  };
  const trains = (kind: Transporter["kind"]) =>
    named(
      plan.transporters.filter((t) => t.kind === kind),
      set.onTransporters.map((on) => on.transporter),
    );
  const cranes = (kind: Crane["kind"]) =>
    named(
      plan.cranes.filter((c) => c.kind === kind),
      set.picks.map((p) => p.crane),
    );
  const missing = [
    ...(["rear", "front"] as const).filter((k) => trains(k).length === 0).map((k) => `a ${k} transporter`),
    ...(["far", "near"] as const).filter((k) => cranes(k).length === 0).map((k) => `a ${k} crane`),
    ...(plan.rigging.length === 0 ? ["rigging"] : []),
    ...(["near", "far"] as const)
      .filter((line) => !bearingsOf(plan, set).some((b) => b.line === line))
      .map((line) => `bearings of set ${set.id} at the ${line} line`),
  ];
  if (missing.length > 0)
    return `no sequence can be proposed: the plan lacks ${missing.join(", ")}. Add what is missing.`;

  const length = setLength(set);
  const { nearBearing_m: nearLine, farBearing_m: farLine } = plan.site;
  const span = farLine - nearLine;
  if (length < span)
    return `no sequence can be proposed: the set is ${length} m long and the bearing lines are ${span.toFixed(2)} m apart. It cannot lie on both.`;
  const sole = set.soleStations_m?.near ?? (length - span) / 2;
  const model = prepareSet(setData(set));
  const weight = model.mass * gravityOf(plan);
  const points = plan.site.path.points;
  const ends = [
    ...plan.site.stopLines.map((l) => l.chainage_m),
    points[points.length - 1].chainage_m,
    plan.site.nearFace_m,
  ];
  const common = {
    plan,
    set,
    model,
    length,
    weight,
    cg: [model.cg[0], model.cg[1]] as [number, number],
    stop: Math.min(...ends),
    pathStart: points[0].chainage_m,
    seated: nearLine - sole,
    across: set.start.y_m ?? 0,
    seatedAcross: asideOf(plan, set),
  };
  const out: Prospect[] = [];
  for (const rear of trains("rear"))
    for (const front of trains("front"))
      for (const far of cranes("far"))
        for (const near of cranes("near")) {
          const [farRig, nearRig] = rigsFor(plan, set, far, near, weight);
          if (out.length < MOST) out.push({ ...common, rear, front, far, near, farRig, nearRig });
        }
  return out;
}

/** Rigging of both hooks: what the set's picks name; else two assemblies, those that bear half the weight first. */
function rigsFor(plan: Plan, set: PlanSet, far: Crane, near: Crane, weight: number): [Rigging, Rigging] {
  const named = (crane: Crane) => {
    const pick = set.picks.find((p) => p.crane === crane.id);
    return pick ? byId(plan.rigging, pick.rigging) : undefined;
  };
  const strong = (r: Rigging) => (r.ratedLoad_kN * 1000 >= weight / 2 ? 0 : 1);
  const order = [...plan.rigging].sort((a, b) => strong(a) - strong(b));
  const first = named(far) ?? order.find((r) => r !== named(near)) ?? order[0];
  return [first, named(near) ?? order.find((r) => r !== first) ?? first];
}

/** Height of the picks: the top of the highest girder at a station, m. */
export function pickHeight(set: PlanSet, at: number): number {
  const tops = set.girders.map((g) => {
    const piece = g.pieces.find((p) => at <= p.to_m) ?? g.pieces[g.pieces.length - 1];
    return pieceSection(piece).depth;
  });
  return Math.ceil(Math.max(...tops) * 1000 - 1e-6) / 1000;
}

/** From a deck's centre to its outermost axle line, m. */
export function halfAxles(t: Transporter): number {
  return ((t.lines - 1) / 2) * t.pitch_m;
}

/** Mean place of a transporter's bunks, forward of its deck's centre, m. */
export function bunkCentre(t: Transporter): number {
  return t.bunks.reduce((sum, b) => sum + b.at_m / t.bunks.length, 0);
}
