// The one bridge from a plan to the physical State: every modelling assumption of a pose is made here.
//
// Assumptions: best values of all data; cranes as springs in series (rope, boom with its suspension, ground, slings);
// unsurveyed seats at their design elevation; transporters hold sideways at their bunks; the path runs straight between its points.

import type { SetData, State, StateHoist, StateTrain } from "../mechanics/index.ts";
import {
  bearingName,
  bearingsOf,
  byId,
  type Crane,
  hookName,
  type Pick,
  type Plan,
  type PlanSet,
  seatOf,
  steelOf,
  takeOff,
} from "../plan/index.ts";
import { modelIn } from "./heat.ts";
import { boomOf, pathLevel, planeLevel, plumbOf, wheelsOf } from "./place.ts";
import type { SetContext, Situation, TrainSituation } from "./types.ts";

const mm = (value: number) => value / 1000;
/** 1 kN/mm = 1e6 N/m. */
const stiffness = (kN_per_mm: number) => kN_per_mm * 1e6;

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

/** Series stiffness of a hook, N/m: rope, boom with its suspension, ground, slings, at their best values. */
export function hookStiffness(plan: Plan, crane: Crane, pick: Pick): number {
  const s = crane.stiffness;
  const slings = byId(plan.rigging, pick.rigging).slingStiffness_kN_per_mm;
  const compliance =
    1 / s.rope_kN_per_mm.best + 1 / s.boom_kN_per_mm.best + 1 / s.ground_kN_per_mm.best + 1 / slings;
  return stiffness(1 / compliance);
}

/** A train with a bunk beyond an end of the set, which has gone on or back over it, can carry none of it. */
function belowSet(ctx: SetContext, train: TrainSituation): boolean {
  return byId(ctx.plan.transporters, train.id).bunks.every(
    (b) => train.deckAt + b.at_m >= 0 && train.deckAt + b.at_m <= ctx.length,
  );
}

/** The State of a situation. Solving it gives the plan's reactions bit for bit. */
export function idealise(ctx: SetContext, situation: Situation): State {
  const { plan, set } = ctx;
  const data = modelIn(ctx, situation).data;
  const sunk = (support: string) => situation.sunk[support] ?? 0;
  const under = situation.trains.filter((t) => t.under && belowSet(ctx, t));
  const groups: Record<string, string[]> = {};
  const groupLift: Record<string, number> = {};
  const ground: Record<string, number> = {};
  const trains = under.map((t): StateTrain => {
    const machine = byId(plan.transporters, t.id);
    for (const g of machine.groups) {
      groups[g.name] = g.wheels.map((w) => `${t.id}:${w}`);
      groupLift[g.name] = situation.groupLift[g.name];
    }
    for (const w of wheelsOf(plan, t.id)) {
      const group = machine.groups.find((g) => g.wheels.includes(w.id));
      const s = t.deckAt + w.x;
      const path = pathLevel(plan, situation.rearEnd + s);
      const level = path.elevation - path.crossfall * w.y - (group ? sunk(group.name) : 0);
      ground[`${t.id}:${w.id}`] = level - (planeLevel(situation, s, w.y) - machine.bunkHeight_m);
    }
    return {
      name: t.id,
      at: t.deckAt,
      lines: machine.lines,
      pitch: machine.pitch_m,
      gauge: machine.gauge_m,
      cylinderStiffness: stiffness(machine.cylinderStiffness_kN_per_mm),
      strokeUp: mm(machine.strokeUp_mm),
      strokeDown: mm(machine.strokeDown_mm),
      mass: machine.mass_t * 1000,
      cgHeight: machine.cgHeight_m,
      bunkHeight: machine.bunkHeight_m,
      bunks: machine.bunks.map((b) => b.at_m),
      bunkGirders: set.girders.map((g) => g.line),
      bunkStiffness: stiffness(machine.bunkStiffness_kN_per_mm),
      bunkSideStiffness: stiffness(machine.bunkSideStiffness_kN_per_mm),
      ...(machine.bunkFriction === undefined ? {} : { bunkFriction: machine.bunkFriction }),
      ...(machine.brakeLimit_kN === undefined ? {} : { brakeLimit: machine.brakeLimit_kN * 1000 }),
      packing: t.packing,
      braked: t.braked,
    };
  });
  const hoists: StateHoist[] = [];
  for (const c of situation.cranes) {
    if (!c.hooked) continue;
    const crane = byId(plan.cranes, c.id);
    const pick = set.picks.find((p) => p.crane === c.id);
    if (!pick) continue;
    const rig = byId(plan.rigging, pick.rigging);
    const plumb = plumbOf(ctx, situation, c.id);
    const tip = boomOf(crane, c.tip, c.moved).tip;
    hoists.push({
      name: c.id,
      at: pick.at_m,
      girders: pick.girders ?? set.girders.map((g) => g.line),
      rigging: rig.kind,
      mode: c.heldLoad === null ? "takeUp" : "load",
      takeUp: c.tautAt - sunk(hookName(crane)) - planeLevel(situation, pick.at_m, 0),
      load: c.heldLoad,
      stiffness: hookStiffness(plan, crane, pick),
      pickHeight: pick.height_m,
      pinHeight: rig.hookPinHeight_m,
      ropeLength: Math.max(1, tip[2] - planeLevel(situation, pick.at_m, 0) - pick.height_m),
      offset: [c.tip[0] - plumb[0], c.tip[1] - plumb[1]],
    });
  }
  const bearings = situation.overSeats
    ? bearingsOf(plan, set).map((b) => {
        const girder = byLine(set, b.girder);
        const at = (b.line === "near" ? plan.site.nearBearing_m : plan.site.farBearing_m) - situation.rearEnd;
        const seat = seatOf(plan, set, b.line, b.girder);
        const level = (seat?.asBuilt_m ?? seat?.design_m ?? 0) + mm(b.height_mm ?? 0) - sunk(bearingName(b));
        return {
          name: bearingName(b),
          girder: b.girder,
          at: Math.min(Math.max(at, 0), ctx.length),
          seat: level - planeLevel(situation, at, girder.y_m),
          stiffness: stiffness(b.stiffness_kN_per_mm),
          holds: b.holds,
          ...(b.friction === undefined ? {} : { friction: b.friction }),
          ...(b.sideLimit_kN === undefined ? {} : { sideLimit: b.sideLimit_kN * 1000 }),
          ...(b.sideStiffness_kN_per_mm === undefined
            ? {}
            : { sideStiffness: stiffness(b.sideStiffness_kN_per_mm) }),
        };
      })
    : [];
  const lashings = plan.lashings
    .filter((l) => situation.lashed.includes(l.id) && under.some((t) => t.id === l.transporter))
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
