// What is prepared once for a set: its frame, the list of everything that may carry it, where it starts.

import { prepareSet } from "../mechanics/index.ts";
import {
  bearingName,
  bearingsOf,
  byId,
  gravityOf,
  hookName,
  type Plan,
  type PlanSet,
  same,
  setLength,
} from "../plan/index.ts";
import { setData } from "./idealise.ts";
import { planeUnderTrains } from "./place.ts";
import type { SetContext, Situation, Support } from "./types.ts";

/**
 * Prepares a set of a plan that was read: factorises its frame (some ms) and lists its supports. A context of the set before
 * an edit lends its frame where steel and masses are the same.
 */
export function prepareContext(plan: Plan, setId: string, before?: SetContext): SetContext {
  const set = byId(plan.sets, setId);
  const supports = supportsOf(plan, set);
  const data = setData(set);
  return {
    plan,
    set,
    model: before !== undefined && same(before.model.data, data) ? before.model : prepareSet(data),
    supports,
    supportIndex: new Map(supports.map((s, i) => [s.force, i])),
    length: setLength(set),
    gravity: gravityOf(plan),
  };
}

function supportsOf(plan: Plan, set: PlanSet): Support[] {
  const list: Support[] = [];
  for (const pick of set.picks) {
    const crane = byId(plan.cranes, pick.crane);
    const kind = `${crane.kind} crane` as const;
    list.push({
      name: hookName(crane),
      force: `hoist ${crane.id}`,
      what: "hoist",
      kind,
      of: crane.id,
      band: true,
    });
  }
  for (const on of set.onTransporters) {
    const t = byId(plan.transporters, on.transporter);
    const kind = `${t.kind} train` as const;
    for (const g of t.groups)
      list.push({ name: g.name, force: `group ${g.name}`, what: "group", kind, of: t.id, band: true });
  }
  for (const b of bearingsOf(plan, set)) {
    const name = bearingName(b);
    list.push({
      name,
      force: `bearing ${name}`,
      what: "bearing",
      kind: `${b.line} bearings`,
      of: "",
      band: true,
    });
  }
  for (const pick of set.picks) {
    const crane = byId(plan.cranes, pick.crane);
    const kind = `${crane.kind} crane` as const;
    for (const g of pick.girders ?? set.girders.map((x) => x.line))
      list.push({
        name: `${hookName(crane)} line ${g}`,
        force: `line ${crane.id} ${g}`,
        what: "line",
        kind,
        of: crane.id,
        band: false,
      });
  }
  for (const on of set.onTransporters) {
    const t = byId(plan.transporters, on.transporter);
    const kind = `${t.kind} train` as const;
    t.bunks.forEach((_, b) => {
      for (const g of set.girders) {
        const name = `bunk ${t.id} ${g.line} ${b + 1}`;
        list.push({ name, force: name, what: "bunk", kind, of: t.id, band: false });
      }
    });
    for (let line = 1; line <= t.lines; line++)
      for (const side of ["L", "R"])
        list.push({
          name: `${t.id}:${line}${side}`,
          force: `cylinder ${t.id}:${line}${side}`,
          what: "cylinder",
          kind,
          of: t.id,
          band: false,
        });
  }
  for (const l of plan.lashings) {
    if (l.set !== undefined && l.set !== set.id) continue;
    if (!set.girders.some((g) => g.line === l.girder)) continue;
    list.push({
      name: `lashing ${l.id}`,
      force: `lashing ${l.id}`,
      what: "lashing",
      kind: "lashing",
      of: l.id,
      band: false,
    });
  }
  return list;
}

/** The set as its plan starts: on its transporters, nothing lashed, no crane on. */
export function startSituation(ctx: SetContext): Situation {
  const { plan, set } = ctx;
  const rearEnd = set.start.rearEnd_m;
  const trains = set.onTransporters.map((on) => ({
    id: on.transporter,
    under: true,
    deckAt: on.deckAt_m,
    gone: [0, 0] as [number, number],
    braked: true,
    packing: Object.fromEntries(Object.entries(on.packing_mm).map(([g, mm]) => [g, mm / 1000])),
  }));
  const plane = planeUnderTrains(plan, rearEnd, trains) ?? {
    chainage: rearEnd,
    elevation: 0,
    grade: 0,
    crossfall: 0,
  };
  const groupLift: Record<string, number> = {};
  for (const t of trains) for (const g of byId(plan.transporters, t.id).groups) groupLift[g.name] = 0;
  return {
    rearEnd,
    across: set.start.y_m ?? 0,
    plane,
    trains,
    groupLift,
    cranes: set.picks.map((p) => {
      const crane = byId(plan.cranes, p.crane);
      return {
        id: p.crane,
        hooked: false,
        tautAt: 0,
        heldLoad: null,
        tip: [crane.position.chainage_m, crane.position.y_m] as [number, number],
        moved: [0, 0] as [number, number],
      };
    }),
    lashed: [],
    tiedAt: {},
    sunk: {},
    heat: { strain: 0, bow: 0 },
    overSeats: false,
  };
}
