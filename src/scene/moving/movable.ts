// What a planner may move in the scene: cranes, transporters, the set's start, picks and bunks, each with its place in the plan.
import { type Plan, type PlanPath, type PlanSet, setLength, valueAt, withValue } from "../../plan/index.ts";
import type { Situation } from "../../sequence/index.ts";

export type MovableIs = "crane" | "transporter" | "start" | "pick" | "bunk";

/** Something that can be moved. `along` and `across` are the places of its two numbers in the plan; most have one only. */
export interface Movable {
  /** The same for the same thing in any plan that has it. */
  key: string;
  is: MovableIs;
  /** What it is called. */
  name: string;
  /** Its crane or transporter; the set's id for its start. */
  of: string;
  along: PlanPath;
  across: PlanPath | null;
  /** What `along` counts, as on its field. */
  alongWords: string;
}

/** Where something stands by its plan, m: what its numbers say, not a place in the world. */
export interface Standing {
  along: number;
  /** y to the left; null for what moves along one line. */
  across: number | null;
}

/** Fineness (m) to which a place is kept when a pointer gave it. */
const kept = 1e-3;

/** Everything of a plan that can be moved while one of its sets is looked at. `set` is an index into its sets. */
export function movablesOf(plan: Plan, set: number): Movable[] {
  const own: PlanSet | undefined = plan.sets[set];
  const cranes = plan.cranes.map(
    ({ id }, i): Movable => ({
      key: `crane ${id}`,
      is: "crane",
      name: id,
      of: id,
      along: ["cranes", i, "position", "chainage_m"],
      across: ["cranes", i, "position", "y_m"],
      alongWords: "Chainage",
    }),
  );
  if (own === undefined) return cranes;
  const transporters = own.onTransporters.map(
    ({ transporter }, i): Movable => ({
      key: `transporter ${transporter}`,
      is: "transporter",
      name: `transporter ${transporter}`,
      of: transporter,
      along: ["sets", set, "onTransporters", i, "deckAt_m"],
      across: null,
      alongWords: "Deck centre from the set's rear end",
    }),
  );
  const bunks = plan.transporters.flatMap(({ id, bunks: all }, i) =>
    own.onTransporters.some(({ transporter }) => transporter === id)
      ? all.map(
          (_, k): Movable => ({
            key: `bunk ${id} ${k}`,
            is: "bunk",
            name: all.length === 1 ? `bunk of ${id}` : `bunk ${k + 1} of ${id}`,
            of: id,
            along: ["transporters", i, "bunks", k, "at_m"],
            across: null,
            alongWords: "Forward of the deck's centre",
          }),
        )
      : [],
  );
  const picks = own.picks.map(
    ({ crane }, i): Movable => ({
      key: `pick ${crane}`,
      is: "pick",
      name: `pick of ${crane}`,
      of: crane,
      along: ["sets", set, "picks", i, "at_m"],
      across: null,
      alongWords: "From the set's rear end",
    }),
  );
  const start: Movable = {
    key: `start ${own.id}`,
    is: "start",
    name: `start of ${own.id}`,
    of: own.id,
    along: ["sets", set, "start", "rearEnd_m"],
    across: null,
    alongWords: "Chainage of the rear end",
  };
  return [start, ...transporters, ...bunks, ...picks, ...cranes];
}

/** Where a thing stands by a plan; null where a number is missing, as in a draft with errors. */
export function standingOf(plan: Plan, thing: Movable): Standing | null {
  const along = valueAt(plan, thing.along);
  const across = thing.across === null ? null : valueAt(plan, thing.across);
  if (typeof along !== "number") return null;
  if (across !== null && typeof across !== "number") return null;
  return { along, across };
}

/** A place without what no one meant to give, m: to the millimetre. */
export function rounded(value: number): number {
  const round = Math.round(value / kept) * kept;
  return Number(round.toFixed(3)) + 0;
}

/** The plan with a thing elsewhere; the very same plan where it stands there already. */
export function movedTo(plan: Plan, thing: Movable, { along, across }: Standing): Plan {
  const there = withValue(plan, thing.along, along);
  return thing.across === null || across === null ? there : withValue(there, thing.across, across);
}

/** A place that takes in what comes near it: a station of the set in m from its rear end, or a y. */
export interface Mark {
  at: number;
  words: string;
}

/** The axis of the bridge, for what moves across it. */
export const axisMarks: readonly Mark[] = [{ at: 0, words: "axis of the bridge" }];

/** Splices, cross-frames and stiffeners of a set, each station once: what carries most is named. */
export function marksOf(set: PlanSet): Mark[] {
  const found = new Map<number, string>();
  const note = (at: number, words: string) => {
    if (!found.has(at)) found.set(at, words);
  };
  for (const { at_m } of set.crossFrames) note(at_m, "cross-frame");
  for (const { at_m } of set.stiffeners ?? []) note(at_m, "stiffener");
  for (const { at_m } of set.splices) note(at_m, "splice");
  return [...found].map(([at, words]) => ({ at, words })).sort((a, b) => a.at - b.at);
}

/** The marks at which a thing snaps in, in its own numbers. Cranes have none along the path. */
export function marksFor(set: PlanSet, thing: Movable): Mark[] {
  if (thing.is === "pick") return marksOf(set);
  if (thing.is !== "bunk") return [];
  const deck = set.onTransporters.find(({ transporter }) => transporter === thing.of)?.deckAt_m;
  if (deck === undefined) return [];
  return marksOf(set).map(({ at, words }) => ({ at: at - deck, words }));
}

/**
 * Why a thing cannot be moved at a pose, or "" where it can: a transporter that stands elsewhere under the set than at its
 * start, or under it no more, is not where its number in the plan puts it.
 */
export function whyFixed(set: PlanSet, thing: Movable, situation: Situation | null): string {
  if (situation === null || (thing.is !== "transporter" && thing.is !== "bunk")) return "";
  const train = situation.trains.find(({ id }) => id === thing.of);
  if (train === undefined) return `${thing.of} is not under the set here`;
  if (thing.is === "bunk") return "";
  if (!train.under || train.gone.some((by) => by !== 0)) return `${thing.of} has left the set here`;
  const start = set.onTransporters.find(({ transporter }) => transporter === thing.of);
  return start !== undefined && train.deckAt !== start.deckAt_m
    ? `${thing.of} stands elsewhere under the set here than at its start`
    : "";
}

/** Length of a set, m; 0 while its girders have no pieces. */
export function lengthOf(set: PlanSet): number {
  return (set.girders[0]?.pieces.length ?? 0) === 0 ? 0 : setLength(set);
}
