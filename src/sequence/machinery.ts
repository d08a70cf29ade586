// What the States of one context have in common: its machines, hooks and seats in SI, looked up once.

import type { StateBearing, StateHoist, StateTrain } from "../mechanics/index.ts";
import {
  bearingName,
  bearingsOf,
  bearingTop,
  byId,
  type Crane,
  hookName,
  type Pick,
  type Plan,
  type PlanSet,
} from "../plan/index.ts";
import { wheelsOf } from "./place.ts";
import type { SetContext, TrainSituation } from "./types.ts";

export const mm = (value: number) => value / 1000;
/** 1 kN/mm = 1e6 N/m. */
export const stiffness = (kN_per_mm: number) => kN_per_mm * 1e6;

/** A wheel on its axle line: its id in a State (`rear:1L`), its y, and the group that it stands on; '' for none. */
interface Wheel {
  key: string;
  y: number;
  group: string;
}

/** A transporter. */
export interface TrainMachine {
  bunkHeight: number;
  bunks: readonly number[];
  /** Axle lines with their x from the deck's centre, rearmost first. */
  lines: readonly { x: number; wheels: readonly Wheel[] }[];
  groups: readonly { name: string; wheels: readonly string[] }[];
  /** As a State has it; standings that are one object give one object. */
  standing: (t: TrainSituation) => StateTrain;
}

/** A hook on its pick. */
export interface HookMachine {
  /** Its name as a support. */
  name: string;
  crane: Crane;
  /** As a State has it, what changes from pose to pose left at nothing. */
  still: StateHoist;
}

/** A bearing on its seat. */
export interface SeatPlace {
  chainage: number;
  /** y of its girder, and elevation of its top as the plan has it. */
  y: number;
  top: number;
  /** As a State has it, station and level left at 0. */
  still: StateBearing;
}

export interface Machinery {
  trains: ReadonlyMap<string, TrainMachine>;
  hooks: ReadonlyMap<string, HookMachine>;
  seats: readonly SeatPlace[];
}

const made = new WeakMap<SetContext, Machinery>();

/** The machinery of a context, made when first asked for. */
export function machineryOf(ctx: SetContext): Machinery {
  const known = made.get(ctx);
  if (known !== undefined) return known;
  const { plan, set } = ctx;
  const found: Machinery = {
    trains: new Map(plan.transporters.map((t) => [t.id, trainMachine(plan, set, t.id)])),
    hooks: new Map(set.picks.map((pick) => [pick.crane, hookMachine(plan, set, pick)])),
    seats: seatPlaces(plan, set),
  };
  made.set(ctx, found);
  return found;
}

function trainMachine(plan: Plan, set: PlanSet, id: string): TrainMachine {
  const machine = byId(plan.transporters, id);
  const lines: { x: number; wheels: Wheel[] }[] = [];
  for (const w of wheelsOf(plan, id)) {
    const group = machine.groups.find((g) => g.wheels.includes(w.id));
    const wheel = { key: `${id}:${w.id}`, y: w.y, group: group?.name ?? "" };
    const line = lines.find(({ x }) => x === w.x);
    if (line) line.wheels.push(wheel);
    else lines.push({ x: w.x, wheels: [wheel] });
  }
  const still: StateTrain = {
    name: id,
    at: 0,
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
  };
  const standings = new WeakMap<TrainSituation, StateTrain>();
  return {
    bunkHeight: machine.bunkHeight_m,
    bunks: still.bunks,
    lines,
    groups: machine.groups.map((g) => ({ name: g.name, wheels: g.wheels.map((w) => `${id}:${w}`) })),
    standing: (t) => {
      let train = standings.get(t);
      if (train === undefined) {
        train = { ...still, at: t.deckAt, packing: t.packing, braked: t.braked };
        standings.set(t, train);
      }
      return train;
    },
  };
}

/** Series stiffness of a hook, N/m: rope, boom with its suspension, ground, slings, at their best values. */
export function hookStiffness(plan: Plan, crane: Crane, pick: Pick): number {
  const s = crane.stiffness;
  const slings = byId(plan.rigging, pick.rigging).slingStiffness_kN_per_mm;
  const compliance =
    1 / s.rope_kN_per_mm.best + 1 / s.boom_kN_per_mm.best + 1 / s.ground_kN_per_mm.best + 1 / slings;
  return stiffness(1 / compliance);
}

function hookMachine(plan: Plan, set: PlanSet, pick: Pick): HookMachine {
  const crane = byId(plan.cranes, pick.crane);
  const rig = byId(plan.rigging, pick.rigging);
  return {
    name: hookName(crane),
    crane,
    still: {
      name: crane.id,
      at: pick.at_m,
      girders: pick.girders ?? set.girders.map((g) => g.line),
      rigging: rig.kind,
      mode: "takeUp",
      takeUp: 0,
      load: null,
      stiffness: hookStiffness(plan, crane, pick),
      pickHeight: pick.height_m,
      pinHeight: rig.hookPinHeight_m,
      ...(pick.slingLonger_mm === undefined ? {} : { longer: longerSlings(pick.slingLonger_mm) }),
      ropeLength: 0,
      offset: [0, 0],
    },
  };
}

/** How much longer the slings of a pick are than its rigging's own length, m by girder. */
function longerSlings(longer_mm: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(Object.entries(longer_mm).map(([girder, by]) => [girder, mm(by)]));
}

/** Bearings as they stand: seats that were not surveyed are taken at their design elevation, shims are on them. */
function seatPlaces(plan: Plan, set: PlanSet): SeatPlace[] {
  return bearingsOf(plan, set).map((b) => {
    const girder = set.girders.find((g) => g.line === b.girder) ?? set.girders[0];
    return {
      chainage: b.line === "near" ? plan.site.nearBearing_m : plan.site.farBearing_m,
      y: girder.y_m,
      top: bearingTop(plan, set, b, "it stands"),
      still: {
        name: bearingName(b),
        girder: b.girder,
        at: 0,
        seat: 0,
        stiffness: stiffness(b.stiffness_kN_per_mm),
        holds: b.holds,
        ...(b.friction === undefined ? {} : { friction: b.friction }),
        ...(b.sideLimit_kN === undefined ? {} : { sideLimit: b.sideLimit_kN * 1000 }),
        ...(b.sideStiffness_kN_per_mm === undefined
          ? {}
          : { sideStiffness: stiffness(b.sideStiffness_kN_per_mm) }),
      },
    };
  });
}
