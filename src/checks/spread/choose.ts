// Which corners are run: one quantity at a time, and the combinations that govern; or every combination, on request.

import { bearingName, bearingsOf, byId, type Plan, type PlanSet, spreadOf } from "../../plan/index.ts";
import { type Corner, type CornerPart, cornerOf } from "./corner.ts";

/** The choices of each quantity beside its best value, as parts of a corner. */
interface Choices {
  weight: CornerPart[];
  along: CornerPart[];
  across: CornerPart[];
  /** All together low and high, then cranes against trains both ways. */
  stiffness: CornerPart[];
  mismatch: CornerPart[];
  settlement: CornerPart[];
  friction: CornerPart[];
  wind: CornerPart[];
}

function choicesOf(plan: Plan, set: PlanSet): Choices {
  const { spread: s } = spreadOf(plan);
  const differ = (pair: readonly [number, number] | readonly number[], best: number | null) =>
    [...new Set([pair[0], pair[1]])].filter((value) => value !== best);
  const both = (value: number) => (value === 0 ? [] : [-value, value]);
  const [soft, stiff] = s.stiffness_pct;
  const together = differ(s.stiffness_pct, 0).map((pct) => ({ cranes_pct: pct, trains_pct: pct }));
  const against =
    soft === stiff
      ? []
      : [
          { cranes_pct: soft, trains_pct: stiff },
          { cranes_pct: stiff, trains_pct: soft },
        ];
  const places = [
    ...set.onTransporters.map((on) => on.transporter),
    ...bearingsOf(plan, set).map((b) => bearingName(b)),
  ];
  const stated = set.onTransporters.map((on) => byId(plan.transporters, on.transporter).bunkFriction);
  const planned = stated.every((value) => value === stated[0]) ? (stated[0] ?? null) : null;
  const blown = set.steps.some((step) => (step.windLimit_m_per_s ?? 0) > 0);
  return {
    weight: differ(s.weight_pct, 0).map((weight_pct) => ({ weight_pct })),
    along: both(s.cgAlong_m).map((cgAlong_m) => ({ cgAlong_m })),
    // The lean of a lone girder is held: where its CG lies across reaches no support.
    across: set.girders.length < 2 ? [] : both(s.cgAcross_m).map((cgAcross_m) => ({ cgAcross_m })),
    stiffness: [...together, ...against],
    mismatch:
      set.picks.length < 2 || s.hookMismatch_mm === 0
        ? []
        : set.picks.map((p) => ({ mismatch: { crane: p.crane, mm: s.hookMismatch_mm } })),
    settlement:
      s.settlement_mm === 0 ? [] : places.map((under) => ({ settlement: { under, mm: s.settlement_mm } })),
    friction:
      set.onTransporters.length === 0 ? [] : differ(s.friction, planned).map((friction) => ({ friction })),
    wind: blown ? [{ wind: -1 }, { wind: 1 }] : [],
  };
}

/** Every way to take one of each list. */
function product<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((all, list) => all.flatMap((a) => list.map((b) => [...a, b])), [[]]);
}

/** Every way to take one part of each list, joined. */
function joined(lists: readonly (readonly CornerPart[])[]): CornerPart[] {
  return product(lists).map((parts) => Object.assign({}, ...parts));
}

/** Soft and stiff cranes on trains as planned. */
function cranesOf({ stiffness }: Choices): CornerPart[] {
  const pcts = new Set(stiffness.map(({ cranes_pct }) => cranes_pct ?? 0));
  return [...pcts].map((cranes_pct) => ({ cranes_pct }));
}

/** Corners without doubles, in their first order. */
function named(plan: Plan, parts: readonly CornerPart[]): Corner[] {
  const seen = new Map<string, Corner>();
  for (const part of parts) {
    const corner = cornerOf(plan, part);
    if (Object.keys(part).length > 0 && !seen.has(corner.name)) seen.set(corner.name, corner);
  }
  return [...seen.values()];
}

/**
 * The corners that are run without being asked for: every quantity alone, low and high, and the combinations below. Of
 * 2,000 random choices inside the box of the demonstration plan none lay outside their band by over 0.5 % of the weight,
 * and 34 by over 0.1 % (tests/spread).
 */
export function chosenCorners(plan: Plan, set: PlanSet): Corner[] {
  const c = choicesOf(plan, set);
  const alone = [
    ...c.weight,
    ...c.along,
    ...c.across,
    ...c.stiffness,
    ...c.mismatch,
    ...c.settlement,
    ...c.friction,
    ...c.wind,
  ];
  return named(plan, [...alone, ...together(c), ...oneEnd(set, c), ...sinking(set, c), ...lowered(c)]);
}

/**
 * Heavy or light, with the CG toward the end whose hook hangs high: the most and the least that a hook gets. The most
 * once more on stiff cranes: while the set was landed, random choices found up to 0.65 % more on a hook there.
 */
function oneEnd(set: PlanSet, c: Choices): CornerPart[] {
  const middle = set.picks.reduce((sum, { at_m }) => sum + at_m / set.picks.length, 0);
  return c.mismatch.flatMap((high) => {
    const at = set.picks.find(({ crane }) => crane === high.mismatch?.crane)?.at_m ?? middle;
    const toward = c.along.filter(({ cgAlong_m }) => (cgAlong_m ?? 0) * (at - middle) > 0);
    return [...c.weight, ...joined([heaviest(c), stiffest(c)])].flatMap((part) =>
      toward.map((along) => ({ ...part, ...along, ...high })),
    );
  });
}

const heaviest = ({ weight }: Choices) => weight.filter(({ weight_pct }) => (weight_pct ?? 0) > 0).slice(-1);
const stiffest = (c: Choices) => cranesOf(c).filter(({ cranes_pct }) => (cranes_pct ?? 0) > 0);
const softest = (c: Choices) => cranesOf(c).filter(({ cranes_pct }) => (cranes_pct ?? 0) < 0);

/**
 * Heavy on soft cranes with the CG at either side: the most that a bearing gets while hooks still carry, by up to 0.64 %
 * of the weight more than the corners above give it.
 */
function lowered(c: Choices): CornerPart[] {
  return joined([heaviest(c), softest(c), c.across]);
}

/**
 * A train that settles while the hook further from it hangs high, on soft and on stiff cranes: both turn the set the same
 * way, and heights that were lost under one end come back as load when the other one is handed over.
 */
function sinking(set: PlanSet, c: Choices): CornerPart[] {
  const cranes = cranesOf(c);
  return set.onTransporters.flatMap(({ transporter, deckAt_m }) => {
    const settled = c.settlement.find(({ settlement }) => settlement?.under === transporter);
    const away = (part: CornerPart) =>
      Math.abs((set.picks.find(({ crane }) => crane === part.mismatch?.crane)?.at_m ?? 0) - deckAt_m);
    const high = c.mismatch.toSorted((a, b) => away(b) - away(a))[0];
    return settled && high ? cranes.map((part) => ({ ...settled, ...high, ...part })) : [];
  });
}

/**
 * Combinations that govern: heavy or light, CG at either end and side, cranes soft or stiff, either hook high; and heavy or
 * light, CG at either end, and at the side toward which the wind blows. Of five together that half of all combinations in
 * which the last follows from the others, so that any four of them meet in every way (half fraction: Box, Hunter and
 * Hunter, Statistics for Experimenters, 1978, chapter 12; from memory). With wind all are run: what a side group loses to
 * wind and CG together hangs on which end carries it, and half of them left random choices outside by up to 0.55 %.
 */
function together(c: Choices): CornerPart[] {
  const some = (...lists: CornerPart[][]) => lists.filter((list) => list.length > 0);
  const hooks = some(c.weight, c.along, c.across, cranesOf(c).slice(0, 2), c.mismatch);
  const sides = c.across.map((part) => ({
    ...part,
    ...c.wind.find(({ wind }) => (wind ?? 0) * (part.cgAcross_m ?? 0) > 0),
  }));
  const blown = some(c.weight, c.along, sides.length > 0 ? sides : c.wind);
  return [
    ...(hooks.length < 5 ? joined(some(c.weight, c.along, c.across)) : []),
    ...(hooks.length < 5 ? joined(hooks) : halfOf(hooks)),
    ...(c.wind.length === 0 ? [] : joined(blown)),
  ];
}

/** Every other combination: those in which an even number of quantities stand at their second end. */
function halfOf(lists: readonly (readonly CornerPart[])[]): CornerPart[] {
  return product(lists.map((list) => list.map((part, end) => ({ part, end }))))
    .filter((way) => way.reduce((sum, { end }) => sum + end, 0) % 2 === 0)
    .map((way) => Object.assign({}, ...way.map(({ part }) => part)));
}

/**
 * Every combination of low, best and high of every quantity, for each hook that may hang high and each support that may
 * settle. Thousands of corners: some minutes for a two-girder set. The best values alone are not among them.
 */
export function allCorners(plan: Plan, set: PlanSet): Corner[] {
  const c = choicesOf(plan, set);
  const lists = [c.weight, c.along, c.across, c.stiffness, c.mismatch, c.settlement, c.friction, c.wind];
  return named(plan, joined(lists.map((list) => [{}, ...list])));
}
