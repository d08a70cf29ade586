// Every part of the rigging against its own rated load: sling, shackle, beam, clamp; by its place between hook and girder.

import { fourLegTensions, skewFactor } from "../../mechanics/index.ts";
import { hookName, type RiggingPart } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { gravityTrace } from "../cranes/hookTrace.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, KN, NUMBER, type Recorder, solved, TONNE, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { lineGeometry, statedAngle, topGeometry } from "./geometryTrace.ts";
import { greatestLine, type RiggedHook, riggedHooks } from "./legs.ts";

/** Kinds of reckoning: all on the hook, legs above the spreader, lines to the girders. */
type Place = NonNullable<RiggingPart["place"]>;

/** A part with what does not change from pose to pose. */
interface Prepared {
  ctx: SetContext;
  hook: RiggedHook;
  part: RiggingPart;
  path: string;
  place: Place;
  /** Parts that share the load of the hook, of one side, or of one line. */
  share: number;
  /** Legs of one part: two where a sling is laid as a basket. */
  legs: number;
  /** Stated angle of the part from the vertical, rad; null where the geometry gives it. */
  angle: number | null;
  skew: number;
}

/**
 * The load of every part of the rigging on every hook. Read at stored poses: between them a hook's share is nowhere
 * further than 0.5 % of the set's weight from a straight line, and its peaks are stored.
 */
export function partLoads(ctx: SetContext): Measure[] {
  return riggedHooks(ctx).flatMap((hook) =>
    (hook.rig.parts ?? []).map((part, i) => {
      const p = prepare(ctx, hook, part, i);
      return measure({
        check: "part of rigging",
        subject: `${hookName(hook.crane)}: ${part.name}`,
        kind: `${hook.crane.kind} crane`,
        source: `rated load of '${part.name}' of rigging '${hook.rig.id}' in the plan`,
        chosenBy: "plan",
        watched: false,
        cure: "parts of a higher rating, more of them, or steeper legs",
        ...traced(ctx, (pose, rec) => read(p, pose, rec)),
      });
    }),
  );
}

function prepare(ctx: SetContext, hook: RiggedHook, part: RiggingPart, i: number): Prepared {
  const place = part.place ?? "leg";
  const among = place === "leg" || place === "pick" ? hook.lines.length : place === "top leg" ? 2 : 1;
  return {
    ctx,
    hook,
    part,
    path: `${hook.path}.parts[${i}]`,
    place,
    share: Math.max(1, Math.floor(part.count / among)),
    legs: part.hitch === "basket" ? 2 : 1,
    angle: part.angle_deg === undefined ? null : (part.angle_deg * Math.PI) / 180,
    skew: limitOf(ctx.plan, "skew factor")?.value ?? skewFactor,
  };
}

function read(p: Prepared, pose: Pose, rec: Recorder | null): Reading {
  const { hook, part } = p;
  const net = pose.forces[hook.column];
  if (Number.isNaN(net)) return NOT_HERE;
  const limit = field(
    rec,
    "F_a",
    part.ratedLoad_kN * 1000,
    "rated load of the part",
    `${p.path}.ratedLoad_kN`,
    part.ratedLoad_kN,
    KN,
  );
  const whole = p.place === "hook" || p.place === "beam";
  const value = whole
    ? onHook(p, net, rec)
    : p.place === "top leg"
      ? above(p, pose, net, rec)
      : below(p, pose, net, rec);
  rec?.ends("F", "F_a");
  return {
    value,
    limit,
    get where() {
      if (whole) return `net load ${(net / 1000).toFixed(1)} kN and the rigging's own weight`;
      if (p.place === "top leg")
        return `legs ${((p.angle ?? hook.top) * (180 / Math.PI)).toFixed(1)} degrees from the vertical`;
      if (hook.four !== null && p.place === "leg")
        return hook.four.errors === null
          ? `four legs, skew factor ${p.skew}`
          : `four legs, a diagonal pair ${hook.rig.legs?.lengthTolerance_mm} mm longer`;
      return `line to ${hook.lines[greatestLine(hook, pose.forces).index].girder}`;
    },
  };
}

/** Weight of the assembly, written down. */
function ownWeight({ ctx, hook }: Prepared, rec: Recorder | null): number {
  if (rec !== null) {
    gravityTrace(rec, ctx);
    const { mass_t } = hook.rig;
    field(rec, "m_rig", mass_t * 1000, "the rigging", `${hook.path}.mass_t`, mass_t, TONNE);
    trace(rec, "W_rig", hook.weight, "m_rig*g", "N", "weight of the rigging");
  }
  return hook.weight;
}

/** How many parts share, written down. */
function sharing(
  { part, share, legs, path }: Prepared,
  rec: Recorder | null,
  among: number,
  words: string,
): number {
  if (rec !== null) {
    field(rec, "n_parts", part.count, "parts of this kind", `${path}.count`, part.count, NUMBER);
    constant(rec, "n_among", among, "1", words, "the rigging's form");
    constant(rec, "n_legs", legs, "1", "legs of one part", `hitch: ${part.hitch ?? "straight"}`);
    // Whole parts only: what is left over counts for nothing.
    constant(rec, "n_odd", part.count - share * among, "1", "parts left over", "the rigging's form");
    trace(
      rec,
      "n",
      share * legs,
      share * among === part.count ? "n_legs*n_parts/n_among" : "n_legs*max(1, (n_parts - n_odd)/n_among)",
      "1",
      "legs that share it",
    );
  }
  return share * legs;
}

function onHook(p: Prepared, net: number, rec: Recorder | null): number {
  if (rec !== null) solved(rec, "F_net", net, "N", `net load of ${p.hook.crane.id} on its picks`);
  const W = ownWeight(p, rec);
  const n = sharing(p, rec, 1, "all hang below the hook");
  return trace(rec, "F", (net + W) / n, "(F_net + W_rig)/n", "N", "load of one part");
}

/** Cosine of a stated angle, or of the geometry that another function writes down. */
function cosOf(p: Prepared, rec: Recorder | null, geometry: () => number): number {
  if (p.angle === null) return geometry();
  if (rec !== null) statedAngle(rec, `${p.path}.angle_deg`, p.part.angle_deg ?? 0, p.angle);
  return Math.cos(p.angle);
}

/** A leg above the spreader: the heavier side, with half of the rigging's weight. */
function above(p: Prepared, pose: Pose, net: number, rec: Recorder | null): number {
  const { hook } = p;
  const two = hook.lines.length === 2;
  const side = two ? Math.max(pose.forces[hook.lines[0].column], pose.forces[hook.lines[1].column]) : net / 2;
  if (rec !== null)
    solved(rec, "F_side", side, "N", `load of ${hook.crane.id} on the heavier end of its spreader`);
  const W = ownWeight(p, rec);
  const n = sharing(p, rec, 2, "ends of the spreader");
  const c = cosOf(p, rec, () => {
    if (rec !== null) topGeometry(rec, hook);
    return Math.cos(hook.top);
  });
  return trace(rec, "F", (side + W / 2) / (n * c), "(F_side + W_rig/2)/(n*c)", "N", "tension of one leg");
}

/** A leg, or what fixes it, below the spreader or the hook: the line that pulls most. */
function below(p: Prepared, pose: Pose, net: number, rec: Recorder | null): number {
  const { hook } = p;
  if (hook.four !== null && p.place === "leg" && p.angle === null) return ofFour(p, net, rec);
  const { index, force } = greatestLine(hook, pose.forces);
  const line = hook.lines[index];
  if (rec !== null) solved(rec, "F_line", force, "N", `load of ${hook.crane.id} on girder ${line.girder}`);
  const n = sharing(p, rec, hook.lines.length, "girders that it holds");
  const c = cosOf(p, rec, () => {
    if (rec !== null) lineGeometry(rec, hook, line.y, line.cos);
    return line.cos;
  });
  return trace(rec, "F", force / (n * c), "F_line/(n*c)", "N", "load of one part");
}

/** The heaviest of four slings to one hook: by stretch and error of length, or by the rule of the skew factor. */
function ofFour(p: Prepared, net: number, rec: Recorder | null): number {
  const { four } = p.hook;
  if (four === null) return Number.NaN;
  const each = Math.max(1, Math.floor((p.part.count * p.legs) / 4));
  const { unit } = four.legs;
  if (four.errors === null) {
    const u = Math.max(...unit);
    if (rec !== null) {
      solved(rec, "F_net", net, "N", `net load of ${p.hook.crane.id} on its picks`);
      constant(
        rec,
        "u",
        u,
        "1",
        "tension of a leg over the whole load",
        "statics of four legs alike, from the plan's geometry",
      );
      constant(rec, "s", p.skew, "1", "skew load factor", limitOf(p.ctx.plan, "skew factor")?.source ?? "");
      constant(rec, "n", each, "1", "parts in a leg", `${p.path}.count over four legs`);
    }
    return trace(rec, "F", (net * u * p.skew) / each, "F_net*u*s/n", "N", "load of the loaded pair");
  }
  let most = 0;
  for (const errors of four.errors) {
    const T = fourLegTensions(four.legs, Math.max(0, net), errors);
    if (T !== null) most = Math.max(most, ...T);
  }
  if (rec !== null) {
    solved(
      rec,
      "T_leg",
      most,
      "N",
      "heaviest of four legs by their stretch, either diagonal pair longer by the tolerance",
    );
    constant(rec, "n", each, "1", "parts in a leg", `${p.path}.count over four legs`);
  }
  return trace(rec, "F", most / each, "T_leg/n", "N", "load of one part");
}
