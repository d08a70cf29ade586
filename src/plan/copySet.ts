// A set as the sibling of another: everything inherited and listed as unconfirmed, names and references made its own.
import { bearingsOf } from "./lookUp.ts";
import { placesMoved } from "./placesMoved.ts";
import { type PlanPath, printPath } from "./reading/planError.ts";
import type { Lashing, Plan, PlanSet, Step, WayBackStep } from "./schema.ts";
import { copied, leavesAt } from "./unconfirmed.ts";

/** Fields of a set that no drawing gives: its names, what is listed as unconfirmed, its times, and the steps, listed as one. */
const NOT_LISTED = ["id", "name", "unconfirmed", "times", "steps"];
/** Names in parts of a set: they tell which part is meant, and are nothing to confirm. */
const NAMES = [
  "line",
  "girder",
  "transporter",
  "crane",
  "rigging",
  "name",
  "item",
  "covers",
  "kind",
  "to",
  "toGirder",
];

/** Places of a set that a drawing, a survey or a plan of its own must confirm, from the top of the set. */
export function placesToConfirm(set: PlanSet): string[] {
  const paths = leavesAt(set, []).filter((path) => {
    const last = path[path.length - 1];
    return !NOT_LISTED.includes(String(path[0])) && !(path.length > 2 && NAMES.includes(String(last)));
  });
  return [...paths.map(printPath), ...(set.steps.length > 0 ? ["steps"] : [])];
}

/** A name that the list does not hold yet. */
function freeName(wish: string, taken: readonly string[]): string {
  let name = wish.slice(0, 80);
  for (let i = 2; taken.includes(name); i++) name = `${wish.slice(0, 74)} (${i})`;
  return name;
}

interface Owned {
  girder: string;
  set?: string | undefined;
}

/** Sets to which a seat, bearing or lashing without `set` belongs: all that have its girder. */
const ownersOf = (plan: Plan, one: Owned): string[] =>
  one.set !== undefined
    ? [one.set]
    : plan.sets.filter((s) => s.girders.some((girder) => girder.line === one.girder)).map((s) => s.id);

/**
 * Seats or bearings with those of the copy added at the end. One that several sets would share by the name of its girder is
 * given to each by name first. `from` keeps track of where each entry stood, so that listed places go along.
 */
function ownEach<T extends Owned>(
  plan: Plan,
  list: readonly T[],
  fromId: string,
  toId: string,
  own: (one: T) => T,
) {
  const kept = list.flatMap((one, i) => {
    const owners = ownersOf(plan, one);
    if (one.set !== undefined || !owners.includes(fromId)) return [{ one, from: i }];
    return owners.map((set) => ({ one: { ...one, set }, from: i }));
  });
  const mine = kept.filter(({ one }) => one.set === fromId);
  return {
    list: [...kept.map((k) => k.one), ...mine.map(({ one }) => own({ ...one, set: toId }))],
    from: kept.map((k) => k.from),
    added: mine.length,
  };
}

/** How far across the bridge all sets of a plan reach over their seats, and where one of them lies: lowest and highest y, m. */
function acrossOf(plan: Plan, set: PlanSet): [number, number] {
  const ys = set.girders.map((girder) => {
    const bearing = bearingsOf(plan, set).find((b) => b.girder === girder.line);
    return bearing?.y_m ?? girder.y_m;
  });
  return [Math.min(...ys), Math.max(...ys)];
}

/**
 * How far to the left of a set (m) its copy comes to lie when nothing is said: beyond all that lie there already, by the
 * spacing of its girders (or 2 m for a lone one).
 */
export function besideOf(plan: Plan, fromId: string): number {
  const set = plan.sets.find((s) => s.id === fromId);
  if (set === undefined) return 0;
  const [low, high] = acrossOf(plan, set);
  const spacing = set.girders.length > 1 ? (high - low) / (set.girders.length - 1) : 2;
  const furthest = Math.max(...plan.sets.map((s) => acrossOf(plan, s)[1]));
  return Number((furthest + spacing - low).toFixed(3));
}

/**
 * The plan with a sibling of a set behind its last one. Everything is inherited: steel, machines, positions, steps; seats,
 * bearings and lashings are doubled; it starts and lies `aside_m` to the left of `fromId`, so that it rolls in line with its own place. All inherited values are listed as
 * unconfirmed. Acceptances, expected findings and records are not inherited: they were given for another set. The plan is
 * returned as it was when there is no such set, or `toId` is taken already.
 */
export function copySet(
  plan: Plan,
  fromId: string,
  toId: string,
  name: string,
  aside_m: number = besideOf(plan, fromId),
): Plan {
  const source = plan.sets.find((set) => set.id === fromId);
  if (source === undefined || plan.sets.some((set) => set.id === toId)) return plan;
  const mm = (value: number) => Number(value.toFixed(6));
  const seats = ownEach(plan, plan.site.seats, fromId, toId, (seat) => ({
    ...seat,
    asBuilt_m: null,
    source: copied,
    date: "",
  }));
  const bearings = ownEach(plan, plan.site.bearings, fromId, toId, (bearing) => ({
    ...bearing,
    y_m: mm((bearing.y_m ?? source.girders.find((g) => g.line === bearing.girder)?.y_m ?? 0) + aside_m),
  }));
  const ties = lashingsOf(plan, fromId, toId);
  const { unconfirmed: _, times: __, ...inherited } = source;
  const copy: PlanSet = {
    ...inherited,
    id: toId,
    name,
    start:
      aside_m === 0 ? inherited.start : { ...inherited.start, y_m: mm((inherited.start.y_m ?? 0) + aside_m) },
    steps: inherited.steps.map((step) => withLashings(step, ties.names)),
  };
  const states = plan.site.below.states?.flatMap((state) => {
    if (state.set === fromId) return [state, { ...state, set: toId }];
    // A state without a set counts for every set with such a step: the copy has the same steps.
    return [state];
  });
  const sets = [...plan.sets, { ...copy, unconfirmed: placesToConfirm(copy) }];
  const next: Plan = {
    ...plan,
    site: {
      ...plan.site,
      seats: seats.list,
      bearings: bearings.list,
      ...(states === undefined ? {} : { below: { ...plan.site.below, states } }),
    },
    lashings: ties.list,
    sets,
  };
  const kept = placesFollow(
    placesFollow(plan, ["site", "seats"], seats.from),
    ["site", "bearings"],
    bearings.from,
  );
  const places = [
    ...inheritedAt(next, ["site", "seats"], seats),
    ...inheritedAt(next, ["site", "bearings"], bearings),
    ...ties.added.flatMap((i) => leavesAt(next.lashings[i], ["lashings", i])).map(printPath),
  ].filter((place) => !/\.(line|girder|set|id|transporter|source|date|asBuilt_m)$/.test(place));
  const groups = [
    ...(kept.unconfirmed ?? []),
    ...(places.length === 0 ? [] : [{ why: `${copied} (${fromId} to ${toId}), not yet confirmed`, places }]),
  ];
  return groups.length === 0 ? next : { ...next, unconfirmed: groups };
}

/** Places of the entries that a copy added at the end of a list. */
function inheritedAt(
  plan: Plan,
  list: ["site", "seats" | "bearings"],
  own: { from: number[]; added: number },
): string[] {
  const all = plan.site[list[1]];
  return Array.from({ length: own.added }, (_, i) => own.from.length + i)
    .flatMap((i) => leavesAt(all[i], [...list, i]))
    .map(printPath);
}

/** Listed places of a list whose entries were given to several sets: each goes along with every one of them. */
function placesFollow(plan: Plan, list: PlanPath, from: readonly number[]): Plan {
  if (plan.unconfirmed === undefined) return plan;
  const start = printPath(list);
  const groups = plan.unconfirmed.map((group) => ({
    ...group,
    places: group.places.flatMap((place) => {
      const found = place.startsWith(`${start}[`) ? /^\[(\d+)\]/.exec(place.slice(start.length)) : null;
      if (found === null) return [place];
      const rest = place.slice(start.length + found[0].length);
      return from.flatMap((was, now) => (was === Number(found[1]) ? [`${start}[${now}]${rest}`] : []));
    }),
  }));
  return { ...plan, unconfirmed: groups };
}

/** Lashings with those of the copy added, which old id became which, and where the new ones stand. */
function lashingsOf(plan: Plan, fromId: string, toId: string) {
  const names = new Map<string, string>();
  const used = plan.sets.find((set) => set.id === fromId);
  const taken = plan.lashings.map((l) => l.id);
  const added: Lashing[] = [];
  const list = plan.lashings.map((lashing) => {
    const owners = ownersOf(plan, lashing);
    if (!owners.includes(fromId)) return lashing;
    const id = freeName(`${lashing.id} of ${toId}`, taken);
    taken.push(id);
    names.set(lashing.id, id);
    added.push({ ...lashing, id, set: toId });
    // One that others name as well stays without a set, for all that share its girder but the copy.
    return owners.length === 1 && used !== undefined ? { ...lashing, set: fromId } : lashing;
  });
  const first = list.length;
  return { list: [...list, ...added], names, added: added.map((_, i) => first + i) };
}

/** A step, and its way back, with the copy's own lashings. */
function withLashings<T extends Step | WayBackStep>(step: T, names: ReadonlyMap<string, string>): T {
  const own = (ids: readonly string[]) => ids.map((id) => names.get(id) ?? id);
  const tied = step.do === "lash" || step.do === "unlash" ? { ...step, lashings: own(step.lashings) } : step;
  if (!("wayBack" in tied) || tied.wayBack === undefined) return tied;
  return { ...tied, wayBack: tied.wayBack.map((back) => withLashings(back, names)) };
}

/** The plan without a set: its seats, bearings and lashings go with it, and every word that names it. */
export function withoutSet(plan: Plan, id: string): Plan {
  const set = plan.sets.find((s) => s.id === id);
  if (set === undefined || plan.sets.length === 1) return plan;
  const mine = (one: Owned) =>
    ownersOf(plan, one).every((owner) => owner === id) && ownersOf(plan, one).length > 0;
  const index = plan.sets.indexOf(set);
  const others = plan.sets.filter((s) => s !== set);
  const gone = (list: readonly Owned[]) => list.map(mine);
  const out = {
    seats: gone(plan.site.seats),
    bearings: gone(plan.site.bearings),
    lashings: gone(plan.lashings),
  };
  const hasStep = (step: string | undefined) =>
    step === undefined ||
    others.some((s) =>
      s.steps.some((x) => x.id === step || (x.wayBack ?? []).some((back) => back.id === step)),
    );
  const kept = <T extends { set?: string | undefined; step?: string | undefined }>(list: readonly T[]) =>
    list.filter((one) => one.set !== id && (one.set !== undefined || hasStep(one.step)));
  let next = plan;
  next = afterRemoval(next, ["site", "seats"], out.seats);
  next = afterRemoval(next, ["site", "bearings"], out.bearings);
  next = afterRemoval(next, ["lashings"], out.lashings);
  next = afterRemoval(
    next,
    ["sets"],
    plan.sets.map((_, i) => i === index),
  );
  const { unconfirmed, expected, record, ...rest } = next;
  return {
    ...rest,
    ...(unconfirmed === undefined ? {} : { unconfirmed }),
    ...(expected === undefined ? {} : { expected: kept(expected) }),
    ...(record === undefined ? {} : { record: record.filter((entry) => entry.set !== id) }),
    accept: kept(plan.accept),
    site: {
      ...plan.site,
      seats: plan.site.seats.filter((_, i) => !out.seats[i]),
      bearings: plan.site.bearings.filter((_, i) => !out.bearings[i]),
      below: {
        ...plan.site.below,
        ...(plan.site.below.states === undefined ? {} : { states: kept(plan.site.below.states) }),
      },
    },
    lashings: plan.lashings.filter((_, i) => !out.lashings[i]),
    sets: others.map((s) =>
      s.infill === undefined ? s : { ...s, infill: s.infill.filter((member) => member.to !== id) },
    ),
  };
}

/** Listed places after entries of a list went. */
function afterRemoval(plan: Plan, list: PlanPath, gone: readonly boolean[]): Plan {
  const next = gone.map((out, i) => (out ? null : gone.slice(0, i).filter((o) => !o).length));
  return placesMoved(plan, list, (i) => next[i] ?? null);
}
