// Holds what the scene last told of its eye, for what is drawn over it: the eye moves without the place being drawn anew.
import type { Sight } from "../../../scene/index.ts";

export interface Sights {
  get(): Sight | null;
  set(sight: Sight): void;
  /** Calls back after every change; gives the function that ends it. */
  subscribe(heard: () => void): () => void;
}

/** A holder that was told nothing yet. */
export function sightHolder(): Sights {
  let held: Sight | null = null;
  const hearers = new Set<() => void>();
  return {
    get: () => held,
    set: (sight) => {
      held = sight;
      for (const heard of hearers) heard();
    },
    subscribe: (heard) => {
      hearers.add(heard);
      return () => {
        hearers.delete(heard);
      };
    },
  };
}
