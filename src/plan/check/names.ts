// The names by which parts of a plan refer to one another, gathered once; faulty parts still lend their names.
import type { Draft } from "./draft.ts";

/** Known names by kind; null where they cannot be told because the list itself is faulty. */
export interface Names {
  transporters: string[] | null;
  cranes: string[] | null;
  rigging: string[] | null;
  lashings: string[] | null;
  groups: string[] | null;
  sets: string[] | null;
  channels: string[] | null;
  /** Girders of one set, or of all sets when `set` is undefined. */
  girdersOf(set: string | undefined): string[] | null;
  /** Steps (and steps of ways back) of one set, or of all sets when `set` is undefined. */
  stepsOf(set: string | undefined): string[] | null;
}

/** Gathers the names of a draft. */
export function namesOf(draft: Draft): Names {
  const sets = draft.names(["sets"], "id");
  const ofSets = (set: string | undefined, inSet: (index: number) => string[] | null): string[] | null => {
    if (sets === null) return null;
    // An unknown set is an error of its own: nothing is said about what it should hold.
    if (set !== undefined && !sets.includes(set)) return null;
    const all: string[] = [];
    for (let i = 0; i < sets.length; i++) {
      if (set !== undefined && sets[i] !== set) continue;
      const names = inSet(i);
      if (names === null) return null;
      all.push(...names);
    }
    return [...new Set(all)];
  };
  const groups = (): string[] | null => {
    const all: string[] = [];
    for (let i = 0; i < draft.count(["transporters"]); i++) {
      const names = draft.names(["transporters", i, "groups"], "name");
      if (names === null) return null;
      all.push(...names);
    }
    return all;
  };
  return {
    transporters: draft.names(["transporters"], "id"),
    cranes: draft.names(["cranes"], "id"),
    rigging: draft.names(["rigging"], "id"),
    lashings: draft.names(["lashings"], "id"),
    groups: groups(),
    sets,
    channels: draft.names(["people", "channels"], "name"),
    girdersOf: (set) => ofSets(set, (i) => draft.names(["sets", i, "girders"], "line")),
    stepsOf: (set) =>
      ofSets(set, (i) => {
        const steps = draft.names(["sets", i, "steps"], "id");
        if (steps === null) return null;
        const back = steps.flatMap((_, j) => draft.names(["sets", i, "steps", j, "wayBack"], "id") ?? []);
        return [...steps, ...back];
      }),
  };
}
