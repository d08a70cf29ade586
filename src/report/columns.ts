// The result columns: one description of each (name, unit, digits, value), which feeds screen, CSV, its metadata and JSON.

import { hookLoadWith, type Result, type SetResult } from "../checks/index.ts";
import { byId, type Plan } from "../plan/index.ts";
import { datumPoint, type Pose, type Support } from "../sequence/index.ts";
import type { Shown } from "../units/index.ts";
import { type Origin, originOf } from "./origin.ts";
import { type Acting, actingIn } from "./places.ts";

/** One support in one pose, with everything that a column may ask for. Made by `rowsOf`. */
export interface Row {
  set: SetResult;
  origin: Origin;
  pose: Pose;
  /** Index of the pose among the stored ones of its set; null when it is another. */
  stored: number | null;
  support: Support | WindAsSupport;
  /** Net force as statics give it, share of the set's weight, and load felt, N; the share is NaN for what is no band. */
  net: number;
  share: number;
  load: number;
  acting: Acting;
  chainage: number;
}

/** Wind, which no plan lists among its supports, as a row of its own. */
export interface WindAsSupport {
  name: "wind";
  force: "wind";
  what: "wind";
  kind: "wind";
  of: "";
  band: false;
}

/** How a column's values are written and read. */
export type ColumnKind = "text" | "user text" | "integer" | "number" | "ratio";

/** One result column. `value` is in the unit that the name carries; NaN and null are 'not known' or 'does not apply'. */
export interface Column {
  name: string;
  title: string;
  kind: ColumnKind;
  /** Unit as in the name; '' for numbers without and for text. */
  unit: string;
  /** Places behind the point in files; null: as many as the number has. */
  digits: number | null;
  /** How a screen shows it, and the factor from the column's unit to SI; null for text and plain numbers. */
  screen: { shown: Shown; toSI: number } | null;
  about: string;
  value: (row: Row) => string | number | null;
}

const text = (name: string, title: string, about: string, value: (row: Row) => string): Column => {
  return { name, title, kind: "text", unit: "", digits: null, screen: null, about, value };
};
const typed = (name: string, title: string, about: string, value: (row: Row) => string): Column => {
  return { ...text(name, title, about, value), kind: "user text" };
};
const integer = (name: string, title: string, about: string, value: (row: Row) => number | null): Column => {
  return { name, title, kind: "integer", unit: "", digits: 0, screen: null, about, value };
};
const ratio = (name: string, title: string, about: string, value: (row: Row) => number | null): Column => {
  return { name, title, kind: "ratio", unit: "", digits: null, screen: null, about, value };
};

interface Scale {
  unit: string;
  digits: number;
  shown: Shown;
  toSI: number;
}
const kN: Scale = { unit: "kN", digits: 6, shown: "load", toSI: 1000 };
const kNm: Scale = { unit: "kNm", digits: 6, shown: "moment", toSI: 1000 };
const metre: Scale = { unit: "m", digits: 9, shown: "length", toSI: 1 };
const percent: Scale = { unit: "pct", digits: 9, shown: "percent", toSI: 0.01 };

/** A column of a quantity; `value` gives SI. */
const quantity = (
  stem: string,
  scale: Scale,
  title: string,
  about: string,
  value: (row: Row) => number,
): Column => ({
  name: `${stem}_${scale.unit}`,
  title,
  kind: "number",
  unit: scale.unit,
  digits: scale.digits,
  screen: { shown: scale.shown, toSI: scale.toSI },
  about,
  value: (row) => value(row) / scale.toSI,
});

const place: Column[] = [
  typed("set", "Set", "Id of the set.", (r) => r.set.setId),
  integer("step_number", "No.", "Number of the step within its set, from 1.", (r) => r.pose.step + 1),
  typed("step", "Step", "Id of the step.", (r) => r.set.steps[r.pose.step].step.id),
  text("do", "Does", "What the step does.", (r) => r.set.steps[r.pose.step].step.do),
  integer("pose", "Pose", "Number of the stored pose within its set, from 1.", (r) =>
    r.stored === null ? null : r.stored + 1,
  ),
  ratio("progress", "Progress", "Part of the step's motion that is done, 0 to 1.", (r) => r.pose.progress),
  typed("event", "Event", "What happens at this pose, where something does.", (r) =>
    r.stored === null ? "" : r.set.events[r.stored],
  ),
];

const who: Column[] = [
  typed("support", "Support", "Name of the support, as in the plan's steps.", (r) => r.support.name),
  text("support_kind", "Kind", "Kind of the support.", (r) => r.support.kind),
  text(
    "what",
    "What",
    "hoist, line, group, bunk, cylinder, bearing, lashing or wind.",
    (r) => r.support.what,
  ),
  typed(
    "part_of",
    "Part of",
    "Id of the crane, transporter or lashing; blank for bearings.",
    (r) => r.support.of,
  ),
  text("band", "Band", "yes: one of the supports that together carry the set; add up only these.", (r) =>
    r.support.band ? "yes" : "no",
  ),
  quantity(
    "station",
    metre,
    "Station",
    "Where it acts, forward of the set's rear end.",
    (r) => r.acting.station,
  ),
  quantity("y", metre, "Y", "Where it acts, left of the set's axis.", (r) => r.acting.y),
  quantity(
    "height",
    metre,
    "Height",
    "Where its sideways force acts, above the soffit.",
    (r) => r.acting.height,
  ),
  quantity("chainage", metre, "Chainage", "Where it acts in the world, along the path.", (r) => r.chainage),
];

const forces: Column[] = [
  quantity(
    "share",
    kN,
    "Share",
    "Part of the set's weight on it, tare and rigging taken off.",
    (r) => r.share,
  ),
  quantity(
    "load",
    kN,
    "Load",
    "Load that it feels: a hook with rigging, block and rope; a group or cylinder with its part of the deck; a lashing's tension, which pulls the set down.",
    (r) => r.load,
  ),
  quantity("net_hook", kN, "Net on picks", "Of a hook: the load on its picks, along true vertical.", (r) =>
    r.support.what === "hoist" ? r.net : Number.NaN,
  ),
  quantity(
    "side_x",
    kN,
    "Along",
    "Force on the set along the path, forward positive.",
    (r) => r.acting.sideX,
  ),
  quantity("side_y", kN, "Across", "Force on the set across the path, left positive.", (r) => r.acting.sideY),
  quantity(
    "moment_x",
    kNm,
    "Moment along",
    "Moment on the set about the axis along it, beyond forces times levers: lean of what hangs (second order), and the pull across at the hook pin.",
    (r) => r.acting.momentX,
  ),
  quantity(
    "moment_y",
    kNm,
    "Moment across",
    "The same about the axis across: level of what hangs (second order).",
    (r) => r.acting.momentY,
  ),
];

const judged: Column[] = [
  ratio(
    "use",
    "Use",
    "Worst use of a limit of this support at this pose; 1 is at the limit.",
    (r) => useOf(r).use,
  ),
  text("use_check", "Limit", "The check whose limit that is.", (r) => useOf(r).check),
  quantity(
    "grade",
    percent,
    "Grade",
    "Of the datum plane of the set, rising forward.",
    (r) => r.pose.state.grade ?? 0,
  ),
  quantity(
    "crossfall",
    percent,
    "Crossfall",
    "Of the datum plane of the set, falling to the left.",
    (r) => r.pose.state.crossfall ?? 0,
  ),
  ratio(
    "residual_force",
    "Residual of force",
    "Greatest force out of balance, as a part of the set's weight.",
    (r) => r.pose.solution.residual.force,
  ),
  ratio(
    "residual_moment",
    "Residual of moment",
    "Greatest moment out of balance, as a part of weight times length.",
    (r) => r.pose.solution.residual.moment,
  ),
];

const origins: Column[] = [
  typed("plan_title", "Plan", "Title of the plan.", (r) => r.origin.title),
  typed("plan_revision", "Revision", "Revision of the plan.", (r) => r.origin.revision),
  text(
    "plan_hash",
    "Hash",
    "SHA-256 of the plan as canonical JSON, its record left out.",
    (r) => r.origin.planHash,
  ),
  typed("rule_set", "Rules", "The rules in force.", (r) => r.origin.ruleSet),
  text("solver_version", "Solver", "Version of the solver.", (r) => r.origin.solverVersion),
  text("caution", "Caution", "What these numbers are no substitute for.", (r) => r.origin.caution),
];

/** The spread of a share over the corners of what is uncertain; only where it was asked for. */
const spread: Column[] = (["low", "high"] as const).map((end) =>
  quantity(
    `share_${end}`,
    kN,
    `Share, ${end}`,
    `${end === "low" ? "Least" : "Greatest"} share over the corners of what is uncertain, at the same place of the same step.`,
    (r) => shareOver(r, end),
  ),
);

const all: readonly Column[] = [...place, ...who, ...forces, ...judged, ...origins];
const allWithSpread: readonly Column[] = [
  ...place,
  ...who,
  ...forces.slice(0, 1),
  ...spread,
  ...forces.slice(1),
  ...judged,
  ...origins,
];

/**
 * The columns of a result, left to right: place, support, forces, judgement, and where the numbers come from. With
 * `withSpread`, low and high stand behind the share.
 */
export function columnsOf(withSpread = false): readonly Column[] {
  return withSpread ? allWithSpread : all;
}

/** Low or high of a band's share at a stored pose, N; NaN where there is none. */
function shareOver({ set, stored, support }: Row, end: "low" | "high"): number {
  if (stored === null || set.spread === undefined || !support.band) return Number.NaN;
  const j = set.supports.findIndex(({ name }) => name === support.name);
  return set.spread[end][stored * set.supports.length + j];
}

/** The worst use of a limit by a support at a stored pose. */
function useOf(r: Row): { use: number | null; check: string } {
  let worst: { use: number | null; check: string } = { use: null, check: "" };
  if (r.stored === null) return worst;
  for (const strip of r.set.strips) {
    const use = strip.use[r.stored];
    if (strip.subject !== r.support.name || !Number.isFinite(use)) continue;
    if (worst.use === null || use > worst.use) worst = { use, check: strip.check };
  }
  return worst;
}

/**
 * The rows of one pose: every support that is part of it, in the order of the set's supports; then `wind` where it
 * blows. `stored` is the pose's index among the stored ones of its set, null for a pose in between.
 */
export function rowsOf(result: Result, plan: Plan, set: SetResult, pose: Pose, stored: number | null): Row[] {
  const origin = originOf(result, plan);
  const acting = actingIn(pose.solution);
  const rows: Row[] = [];
  const base = { set, origin, pose, stored };
  const chainageOf = (a: Acting) => datumPoint(pose.situation, a.station, a.y, a.height)[0];
  set.supports.forEach((support, j) => {
    const net = stored === null ? pose.forces[j] : set.forces[stored * set.supports.length + j];
    const at = acting.get(support.what === "lashing" ? lashingForce(plan, support) : support.force);
    if (Number.isNaN(net) || at === undefined) return;
    const shares = stored === null ? pose.shares[j] : set.shares[stored * set.supports.length + j];
    const share = support.band ? shares : Number.NaN;
    const load =
      support.what === "hoist"
        ? (hookLoadWith(plan, byId(plan.sets, set.setId), pose, byId(plan.cranes, support.of), net)?.gross ??
          net)
        : net;
    rows.push({ ...base, support, net, share, load, acting: at, chainage: chainageOf(at) });
  });
  const wind = acting.get("wind");
  if (wind) {
    const support: WindAsSupport = {
      name: "wind",
      force: "wind",
      what: "wind",
      kind: "wind",
      of: "",
      band: false,
    };
    const [net, share, load] = [Number.NaN, Number.NaN, Number.NaN];
    rows.push({ ...base, support, net, share, load, acting: wind, chainage: chainageOf(wind) });
  }
  return rows;
}

/** Name by which statics know a lashing: its girder and station. */
function lashingForce(plan: Plan, support: Support): string {
  const { girder, at_m } = byId(plan.lashings, support.of);
  return `lashing ${girder} ${at_m}`;
}
