// The one bridge from a plan to the physical State: every modelling assumption of a pose is made here and in machinery.ts.
//
// Assumptions: best values of all data; cranes as springs in series (rope, boom with its suspension, ground, slings);
// unsurveyed seats at their design elevation; transporters hold sideways at their bunks; the path runs straight between its points.

import type { SetData, State, StateBearing, StateHoist, StateTrain } from "../mechanics/index.ts";
import { type PlanSet, steelOf, takeOff } from "../plan/index.ts";
import { modelIn } from "./heat.ts";
import { machineryOf, mm, stiffness, type TrainMachine } from "./machinery.ts";
import { boomOf, pathLevel, planeLevel, plumbOf } from "./place.ts";
import type { SetContext, Situation, TrainSituation } from "./types.ts";

/** The set itself, in SI: plates, frames, point masses. */
export function setData(set: PlanSet): SetData {
  const steel = steelOf(set);
  const weights = takeOff(set);
  const girders = set.girders.map((g) => ({
    name: g.line,
    y: g.y_m,
    camber: g.camber_mm.map(([s, h]) => [s, mm(h)] as const),
    pieces: g.pieces.map((p, i) => ({
      from: p.from_m,
      to: p.to_m,
      topFlange: [mm(p.topFlange_mm[0]), mm(p.topFlange_mm[1])] as const,
      web: [mm(p.web_mm[0]), mm(p.web_mm[1])] as const,
      bottomFlange: [mm(p.bottomFlange_mm[0]), mm(p.bottomFlange_mm[1])] as const,
      massPerMetre: weights.pieces.filter((x) => x.girder === g.line)[i].massPerMetre,
    })),
  }));
  const pointMasses = weights.lines
    .filter((l) => l.kind === "splices" || l.kind === "attachments")
    .map((l) => {
      const girder = l.girder as string;
      const off = l.cg[1] - byLine(set, girder).y_m;
      return { girder, at: l.cg[0], mass: l.mass, height: l.cg[2], ...(off === 0 ? {} : { off }) };
    });
  return {
    E: steel.E,
    G: steel.G,
    shear: true,
    girders,
    crossFrames: set.crossFrames.map((f) => ({
      at: f.at_m,
      area: f.area_mm2 * 1e-6,
      inPlaneInertia: f.inPlaneInertia_m4,
      planInertia: f.planInertia_m4,
      torsion: f.torsion_m4,
      mass: f.mass_t * 1000,
      height: f.height_m,
    })),
    pointMasses,
  };
}

function byLine(set: PlanSet, line: string) {
  return set.girders.find((g) => g.line === line) ?? set.girders[0];
}

/** A train with a bunk beyond an end of the set, which has gone on or back over it, can carry none of it. */
function belowSet(ctx: SetContext, machine: TrainMachine, train: TrainSituation): boolean {
  return machine.bunks.every((at) => train.deckAt + at >= 0 && train.deckAt + at <= ctx.length);
}

/** The State of a situation. Solving it gives the plan's reactions bit for bit. */
export function idealise(ctx: SetContext, situation: Situation): State {
  const { plan } = ctx;
  const { sunk } = situation;
  const data = modelIn(ctx, situation).data;
  const machinery = machineryOf(ctx);
  const groups: Record<string, readonly string[]> = {};
  const groupLift: Record<string, number> = {};
  const ground: Record<string, number> = {};
  const trains: StateTrain[] = [];
  for (const t of situation.trains) {
    const machine = machinery.trains.get(t.id);
    if (machine === undefined || !t.under || !belowSet(ctx, machine, t)) continue;
    trains.push(machine.standing(t));
    for (const g of machine.groups) {
      groups[g.name] = g.wheels;
      groupLift[g.name] = situation.groupLift[g.name];
    }
    for (const line of machine.lines) {
      const s = t.deckAt + line.x;
      const path = pathLevel(plan, situation.rearEnd + s);
      for (const { key, y, group } of line.wheels) {
        const level = path.elevation - path.crossfall * y - (group === "" ? 0 : (sunk[group] ?? 0));
        ground[key] = level - (planeLevel(situation, s, y) - machine.bunkHeight);
      }
    }
  }
  const hoists: StateHoist[] = [];
  for (const c of situation.cranes) {
    const hook = c.hooked ? machinery.hooks.get(c.id) : undefined;
    if (hook === undefined) continue;
    const { crane, name, still } = hook;
    const plumb = plumbOf(ctx, situation, c.id);
    const tip = boomOf(crane, c.tip, c.moved).tip;
    const level = planeLevel(situation, still.at, 0);
    hoists.push({
      ...still,
      mode: c.heldLoad === null ? "takeUp" : "load",
      takeUp: c.tautAt - (sunk[name] ?? 0) - level,
      load: c.heldLoad,
      ropeLength: Math.max(1, tip[2] - level - still.pickHeight),
      offset: [c.tip[0] - plumb[0], c.tip[1] - plumb[1]],
    });
  }
  const bearings: StateBearing[] = [];
  if (situation.overSeats)
    for (const { chainage, y, top, still } of machinery.seats) {
      const at = chainage - situation.rearEnd;
      bearings.push({
        ...still,
        at: Math.min(Math.max(at, 0), ctx.length),
        seat: top - (sunk[still.name] ?? 0) - planeLevel(situation, at, y),
      });
    }
  const lashings = plan.lashings
    .filter((l) => situation.lashed.includes(l.id) && trains.some((t) => t.name === l.transporter))
    .map((l) => {
      // Slack and pretension are those of the moment at which it was tied.
      const k = stiffness(l.stiffness_kN_per_mm);
      const slack = mm(l.slack_mm) + (situation.tiedAt[l.id] ?? 0);
      return {
        train: l.transporter,
        girder: l.girder,
        at: l.at_m,
        stiffness: k,
        slack: Math.max(0, slack),
        pretension: l.pretension_kN * 1000 + k * Math.max(0, -slack),
      };
    });
  return {
    format: "handspan-state",
    version: 1,
    gravity: ctx.gravity,
    E: data.E,
    G: data.G,
    shear: data.shear ?? true,
    girders: data.girders,
    crossFrames: data.crossFrames ?? [],
    pointMasses: data.pointMasses ?? [],
    trains,
    groups,
    groupLift,
    ground,
    hoists,
    lashings,
    bearings,
    grade: situation.plane.grade,
    crossfall: situation.plane.crossfall,
    ask: { droopAt: [0, ctx.length] },
  };
}
