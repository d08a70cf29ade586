// What holds the set's lean: groups left and right, bearings, lines, pendulums, lashings, each with its stiffness.

import type { Device, SetModel } from "../mechanics/index.ts";
import { byId, hookName } from "../plan/index.ts";
import type { Pose, SetContext } from "../sequence/index.ts";
import { limitOf } from "./limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "./measure.ts";
import { constant, solved, trace } from "./trace.ts";
import { traced } from "./traced.ts";

/** One thing that holds lean. */
export interface LeanPart {
  what: "groups" | "bearings" | "lines" | "pendulum" | "lashings";
  /** Transporter or crane id, bearing line, or lashing, with the groups or bearings that carry. */
  name: string;
  /** Its part of the stiffness against lean, N m/rad; parts add up to the whole. */
  stiffness: number;
}

/** What holds lean at a pose. */
export interface LeanHold {
  parts: LeanPart[];
  /** Stiffness of the rigid set against lean, all else free to give way, N m/rad. */
  stiffness: number;
  /** Over the set's weight, m: the lean by a centre of gravity that lies `e` off is e over this. */
  perWeight: number;
  /** A bunk or bearing presses on the set. */
  onGround: boolean;
  /** With a single girder the statics hold its lean themselves: nothing is known of what does. */
  assumed: boolean;
}

/** Rotations are scaled by this length, m, so that all unknowns are of one size. */
const LENGTH = 10;
/** Pivots below this part of the greatest are motions without stiffness: what they would take, nothing gives. */
const FREE = 1e-10;

/** How a device moves with the set's own motions and with heave, lean and level of every deck, rotations scaled. */
function gripOf(d: Device, model: SetModel, N: number): Float64Array {
  const own = model.modes.length;
  const g = new Float64Array(N);
  for (let i = 0; i < d.rows.length; i++)
    for (let q = 0; q < own; q++) g[q] += d.factors[i] * d.rows[i].modes[q];
  for (let s = 0; s < d.decks.length; s++)
    for (let q = 0; q < 3; q++) g[own + 3 * d.decks[s] + q] += d.deckFactors[3 * s + q];
  g[model.lean] /= LENGTH;
  g[model.level] /= LENGTH;
  for (let q = own; q < N; q++) if ((q - own) % 3 !== 0) g[q] /= LENGTH;
  return g;
}

/** The set's answer to a unit of lean: which devices act, and the strain energy that each of them takes, N m/rad. */
function energies(pose: Pose): { devices: number[]; energy: number[]; sum: number } {
  const { model, devices, contact, layout } = pose.solution;
  const N = model.modes.length + 3 * layout.trains.length;
  const { lean } = model;
  // The unknowns that give way, and the equations that hold them: everything but lean.
  const n = N - 1;
  const at = (r: number) => (r < lean ? r : r + 1);
  const K = new Float64Array(n * n);
  const b = new Float64Array(n);
  const active: number[] = [];
  const grips: Float64Array[] = [];
  for (let j = 0; j < devices.length; j++) {
    const k = devices[j].stiffness;
    if (!contact.active[j] || k === 0) continue;
    const g = gripOf(devices[j], model, N);
    active.push(j);
    grips.push(g);
    for (let r = 0; r < n; r++) {
      const gr = g[at(r)] * k;
      if (gr === 0) continue;
      b[r] -= gr * g[lean];
      for (let c = 0; c < n; c++) K[r * n + c] += gr * g[at(c)];
    }
  }
  const x = giveWay(K, b, n);
  let sum = 0;
  const energy = grips.map((g, i) => {
    let v = g[lean];
    for (let r = 0; r < n; r++) v += x[r] * g[at(r)];
    // A unit of the scaled unknown turns the set by 1 / LENGTH.
    const e = devices[active[i]].stiffness * v * v * LENGTH * LENGTH;
    sum += e;
    return e;
  });
  return { devices: active, energy, sum };
}

const stiffnesses = new WeakMap<Pose["solution"], number>();

/** Stiffness of the rigid set against lean, all else free to give way, N m/rad; kept with the pose. */
export function leanStiffnessOf(pose: Pose): number {
  let known = stiffnesses.get(pose.solution);
  if (known === undefined) {
    known = energies(pose).sum;
    stiffnesses.set(pose.solution, known);
  }
  return known;
}

/** A bunk or a bearing presses on the set. */
function groundCarries(pose: Pose): boolean {
  const { devices, contact } = pose.solution;
  for (let j = 0; j < devices.length; j++)
    if (contact.F[j] > 0 && (devices[j].kind === "bunk" || devices[j].kind === "bearing")) return true;
  return false;
}

/**
 * What holds the lean of a solved pose. The set and decks are taken rigid and the tensions of the pose kept; heave,
 * level and decks give way freely; every support's part is its share of the strain energy at a unit of lean.
 */
export function leanHeldBy(pose: Pose): LeanHold {
  const { model, devices, layout, state } = pose.solution;
  const onGround = groundCarries(pose);
  const endless = Number.POSITIVE_INFINITY;
  if (model.lean < 0) return { parts: [], stiffness: endless, perWeight: endless, onGround, assumed: true };
  const found = energies(pose);
  const parts = new Map<string, LeanPart & { names: Map<string, number> }>();
  found.devices.forEach((j, i) => {
    const energy = found.energy[i];
    if (energy === 0) return;
    const { what, name, of } = partOf(devices[j].kind, devices[j].of, devices[j].name, layout);
    const key = `${what} ${name}`;
    const part = parts.get(key) ?? { what, name, stiffness: 0, names: new Map<string, number>() };
    part.stiffness += energy;
    if (of !== "") part.names.set(of, (part.names.get(of) ?? 0) + energy);
    parts.set(key, part);
  });
  const least = 1e-6 * Math.abs(found.sum);
  const list = [...parts.values()]
    .filter((p) => Math.abs(p.stiffness) > least)
    .sort((p, q) => q.stiffness - p.stiffness)
    .map(({ what, name, stiffness, names }) => {
      const chief = [...names].filter(([, energy]) => energy > 1e-3 * stiffness).map(([one]) => one);
      return { what, name: chief.length > 0 ? `${name} (${chief.join(", ")})` : name, stiffness };
    });
  const weight = model.mass * state.gravity;
  return { parts: list, stiffness: found.sum, perWeight: found.sum / weight, onGround, assumed: false };
}

function partOf(
  kind: Device["kind"],
  of: number,
  device: string,
  layout: Pose["solution"]["layout"],
): { what: LeanPart["what"]; name: string; of: string } {
  const train = (deck: number) => layout.trains[deck].name;
  switch (kind) {
    case "bunk":
      return { what: "groups", name: train(of), of: "" };
    case "group":
    case "stop": {
      const group = layout.groups[of];
      const deck = group ? layout.cylinders[group.cylinders[0]].deck : 0;
      return { what: "groups", name: train(deck), of: group?.name ?? "" };
    }
    case "bearing": {
      const name = layout.state.bearings?.[of]?.name ?? device;
      return { what: "bearings", name: `${name.split(" ")[0]} bearings`, of: name };
    }
    case "lashing":
      return { what: "lashings", name: device, of: "" };
    case "hoist":
      return { what: "lines", name: layout.hoists[of].name, of: "" };
    default:
      return { what: "pendulum", name: layout.hoists[of].name, of: "" };
  }
}

/** Symmetric elimination with diagonal pivots; unknowns without stiffness stay where they are. */
function giveWay(K: Float64Array, b: Float64Array, n: number): Float64Array {
  const order: number[] = [];
  const used = new Uint8Array(n);
  let greatest = 0;
  for (let i = 0; i < n; i++) greatest = Math.max(greatest, Math.abs(K[i * n + i]));
  for (let round = 0; round < n; round++) {
    let p = -1;
    for (let i = 0; i < n; i++)
      if (!used[i] && (p < 0 || Math.abs(K[i * n + i]) > Math.abs(K[p * n + p]))) p = i;
    const pivot = K[p * n + p];
    if (!(Math.abs(pivot) > FREE * greatest)) break;
    used[p] = 1;
    order.push(p);
    for (let i = 0; i < n; i++) {
      if (used[i]) continue;
      const f = K[i * n + p] / pivot;
      if (f === 0) continue;
      for (let j = 0; j < n; j++) if (!used[j]) K[i * n + j] -= f * K[p * n + j];
      b[i] -= f * b[p];
    }
  }
  const x = new Float64Array(n);
  for (let i = order.length - 1; i >= 0; i--) {
    const p = order[i];
    let s = b[p];
    for (let q = i + 1; q < order.length; q++) s -= K[p * n + order[q]] * x[order[q]];
    x[p] = s / K[p * n + p];
  }
  return x;
}

/** What holds lean in words, greatest first, stiffness in kNm per percent of lean. */
export function leanWords(ctx: SetContext, held: LeanHold): string {
  if (held.assumed) return "lean of a single girder is taken as held";
  if (held.parts.length === 0) return "nothing holds lean";
  const words = held.parts.map(({ what, name, stiffness }) => {
    const crane = ctx.plan.cranes.some((c) => c.id === name) ? hookName(byId(ctx.plan.cranes, name)) : name;
    const kind = what === "pendulum" ? " as a pendulum" : what === "lines" ? " lines" : "";
    return `${crane}${kind} ${(stiffness / 1e5).toFixed(stiffness < 1e6 ? 1 : 0)}`;
  });
  return `held by ${words.join(", ")} kNm per % of lean`;
}

/** Nothing but soft pendulums holds lean while a transporter or a bearing carries part of the set. */
export function leanRestraint(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "lean stiffness", true);
  if (!limit) return [];
  return [
    measure(
      {
        check: "lean restraint lost",
        subject: "set",
        kind: "",
        sense: "least",
        unit: "kNm/rad per kN of weight",
        factor: 1,
        digits: 2,
        cure: "keep a train with a group on either side under the set, tie the set to its train, or take it up with both hooks first",
        ...traced(ctx, (pose, rec): Reading => {
          const { model, state } = pose.solution;
          if (model.lean < 0 || !groundCarries(pose)) return NOT_HERE;
          const weight = model.mass * state.gravity;
          const value = leanStiffnessOf(pose) / weight;
          if (rec !== null) {
            solved(
              rec,
              "k",
              leanStiffnessOf(pose),
              "N m",
              "stiffness of all that holds the set's lean, per radian",
            );
            solved(rec, "W", weight, "N", "weight of the set");
            trace(rec, "k_W", value, "k/W", "m", "stiffness against lean over the weight");
            constant(rec, "k_a", limit.value, "m", "least", `${limit.source} (${limit.chosenBy})`);
            rec.ends("k_W", "k_a");
          }
          // The words are made only where they are read: this is asked at every pose of every search.
          return value < limit.value
            ? { value, limit: limit.value, where: leanWords(ctx, leanHeldBy(pose)) }
            : { value, limit: limit.value };
        }),
      },
      limit,
    ),
  ];
}
