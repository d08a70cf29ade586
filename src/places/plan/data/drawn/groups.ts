// Hydraulic groups of a transporter on a drawn plan: where its wheels are, which group each is in, and moving them between groups.
import { baseOf, type PlanPoint } from "../../../../mechanics/index.ts";
import { type Group, type Plan, type PlanSet, renamed, type Transporter } from "../../../../plan/index.ts";
import { freeName } from "../changes.ts";

/** One side of an axle line, m from the deck's centre: x forward, y left. */
export interface Wheel extends PlanPoint {
  /** As the plan names it: `1L`. */
  readonly name: string;
  readonly line: number;
  readonly side: "L" | "R";
}

/** All wheels, from the rear, the left one of each line first. */
export function wheelsOf({ lines, pitch_m, gauge_m }: Transporter): Wheel[] {
  return Array.from({ length: lines }, (_, i): Wheel[] => {
    const x = (i - (lines - 1) / 2) * pitch_m;
    return [
      { name: `${i + 1}L`, line: i + 1, side: "L", x, y: gauge_m / 2 },
      { name: `${i + 1}R`, line: i + 1, side: "R", x, y: -gauge_m / 2 },
    ];
  }).flat();
}

/** Indices of the groups that name a wheel: one in a sound plan. */
export function groupsWith(groups: readonly Group[], wheel: string): number[] {
  return groups.flatMap((group, i) => (group.wheels.includes(wheel) ? [i] : []));
}

/** What is wrong with the groups, each in one sentence; none where every wheel is in exactly one group. */
export function groupProblems(transporter: Transporter): string[] {
  const { groups, lines } = transporter;
  const there = new Set(wheelsOf(transporter).map(({ name }) => name));
  const none = [...there].filter((wheel) => groupsWith(groups, wheel).length === 0);
  const twice = [...there].filter((wheel) => groupsWith(groups, wheel).length > 1);
  const beyond = [...new Set(groups.flatMap(({ wheels }) => wheels.filter((wheel) => !there.has(wheel))))];
  const say = (wheels: string[]) =>
    `${wheels.length === 1 ? "Wheel" : "Wheels"} ${wheels.join(", ")} ${wheels.length === 1 ? "is" : "are"}`;
  return [
    ...(none.length > 0 ? [`${say(none)} in no group: pick and assign.`] : []),
    ...twice.map((wheel) => {
      const names = groupsWith(groups, wheel).map((i) => groups[i].name);
      return `Wheel ${wheel} is in ${names.join(" and in ")}: assign it to one of them.`;
    }),
    ...(beyond.length > 0
      ? [`${say(beyond)} not there: this transporter has ${lines} ${lines === 1 ? "line" : "lines"}.`]
      : []),
  ];
}

const byLine = (a: string, b: string) =>
  Number.parseInt(a, 10) - Number.parseInt(b, 10) || a.localeCompare(b);

/** A step with no name twice in its lists of groups and supports. */
function withoutDoubles<T>(step: T): T {
  const it = step as Record<string, unknown>;
  let out = it;
  for (const key of ["groups", "carries"]) {
    const list = it[key];
    if (!Array.isArray(list) || new Set(list).size === list.length) continue;
    out = { ...out, [key]: [...new Set(list)] };
  }
  if (Array.isArray(it.wayBack)) {
    const back = it.wayBack.map(withoutDoubles);
    if (back.some((one, i) => one !== (it.wayBack as unknown[])[i])) out = { ...out, wayBack: back };
  }
  return out as T;
}

const withGroups = (plan: Plan, index: number, groups: Group[]): Plan => ({
  ...plan,
  transporters: plan.transporters.map((one, i) => (i === index ? { ...one, groups } : one)),
});

/**
 * Picked wheels of the transporter with this index in group `to` (made if there is none of that name), and out of every
 * other. A group that gave all its wheels is gone, and what referred to it refers to the one that has them now.
 */
export function assigned(plan: Plan, index: number, wheels: readonly string[], to: string): Plan {
  const picked = new Set(wheels);
  const { groups } = plan.transporters[index];
  const target = groups.find((group) => group.name === to) ?? { name: to, wheels: [] };
  const all = groups.includes(target) ? groups : [...groups, target];
  const emptied = groups.filter(
    (group) =>
      group !== target && group.wheels.length > 0 && group.wheels.every((wheel) => picked.has(wheel)),
  );
  const next = all.flatMap((group): Group[] => {
    if (group === target)
      return [{ ...group, wheels: [...new Set([...group.wheels, ...wheels])].sort(byLine) }];
    const left = group.wheels.filter((wheel) => !picked.has(wheel));
    if (left.length === 0) return [];
    return [left.length === group.wheels.length ? group : { ...group, wheels: left }];
  });
  let out = plan;
  for (const { name } of emptied) out = renamed(out, "group", name, to);
  out = withGroups(out, index, next);
  if (emptied.length === 0) return out;
  return { ...out, sets: out.sets.map((set) => ({ ...set, steps: set.steps.map(withoutDoubles) })) };
}

/** A name for a new group: `rear 4`, the first that nothing in the plan has. */
export function newGroupName(plan: Plan, index: number): string {
  const taken = plan.transporters.flatMap((one) => one.groups.map(({ name }) => name));
  const { id, groups } = plan.transporters[index];
  return freeName(`${id} ${groups.length + 1}`, taken);
}

/** The middle of a group's wheels, at which its oil acts as one support; null without wheels. */
export function centroidOf(group: Group, wheels: readonly Wheel[]): PlanPoint | null {
  const own = wheels.filter(({ name }) => group.wheels.includes(name));
  if (own.length === 0) return null;
  const mean = (of: (wheel: Wheel) => number) => own.reduce((sum, wheel) => sum + of(wheel), 0) / own.length;
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) };
}

/** Centroids on one base, with the lines about which what stands on it turns over, and how far the CG lies inside them. */
export interface Standing {
  readonly centroids: readonly (PlanPoint & { name: string; transporter: string })[];
  /** Corners of the base, counter-clockwise; none where the centroids lie on one line. */
  readonly corners: readonly PlanPoint[];
  readonly cg: PlanPoint | null;
  /** From the CG to the nearest of those lines, m; negative outside; null without a base or a CG. */
  readonly inside: number | null;
}

function standing(centroids: Standing["centroids"], cg: PlanPoint | null): Standing {
  const base = centroids.length < 3 ? null : baseOf(centroids);
  const inside =
    base === null || cg === null
      ? null
      : Math.min(...base.edges.map(({ nx, ny, at }) => nx * cg.x + ny * cg.y - at));
  return { centroids, corners: base?.corners ?? [], cg, inside };
}

/** One transporter alone: its centroids from the deck's centre. Without a CG: what it carries of a set hangs on the others too. */
export function standingAlone(transporter: Transporter): Standing {
  const wheels = wheelsOf(transporter);
  const centroids = transporter.groups.flatMap((group) => {
    const at = centroidOf(group, wheels);
    return at === null ? [] : [{ ...at, name: group.name, transporter: transporter.id }];
  });
  return standing(centroids, null);
}

/** All transporters under a set at its start, in stations and to the left of the set's axis, below which they stand, m; with the set's CG. */
export function standingUnder(plan: Plan, set: PlanSet, cg: readonly [number, number, number]): Standing {
  const centroids = set.onTransporters.flatMap(({ transporter: id, deckAt_m }) => {
    const transporter = plan.transporters.find((one) => one.id === id);
    if (transporter === undefined) return [];
    return standingAlone(transporter).centroids.map((one) => ({ ...one, x: one.x + deckAt_m }));
  });
  return standing(centroids, { x: cg[0], y: cg[1] });
}
