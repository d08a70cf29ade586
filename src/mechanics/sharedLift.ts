// Arithmetic of a load on one or more hooks, as codes for shared lifts ask for it: shares, chain of factors, margin.
//
// Any consistent unit of weight does; the functions keep it. The sources are named with each function.

/**
 * Shares of a weight between two picks by the lever rule: [first, second]. `toFirst` and `toSecond` are the distances
 * from the centre of gravity to the picks, m; both positive when it lies between them, one negative when it lies
 * outside on that side (the other pick then has to hold down). Throws a RangeError when the picks coincide.
 */
export function leverRule(weight: number, toFirst: number, toSecond: number): [number, number] {
  const between = toFirst + toSecond;
  if (!(between > 0))
    throw new RangeError(
      `the picks are ${between} m apart; more than 0 m is allowed: measure both distances from the centre of gravity`,
    );
  return [(weight * toSecond) / between, (weight * toFirst) / between];
}

/** What a lift by two hooks is made of. */
export interface SharedLift {
  /** Weight of the load alone. */
  weight: number;
  /** Factor on a weight that may be off: at least 1.10 where it is calculated and not weighed. */
  contingency: number;
  /** Distances from the centre of gravity to the picks, m. */
  toFirst: number;
  toSecond: number;
  /** Rigging and other loads on each hook. */
  rigging: readonly [number, number];
  /** Dynamic factor on the static hook load. */
  dynamicFactor: number;
}

/** Loads along the chain: weight with contingency, then static and dynamic load of each hook. */
export interface HookLoads {
  design: number;
  static: [number, number];
  dynamic: [number, number];
}

/**
 * Load on each of two hooks: weight times contingency, shared by levers, plus rigging, times the dynamic factor; the
 * last is what is compared with the rating at the radius. Source: Guidelines for Marine Lifting and Lowering
 * Operations, 0027/ND Rev 11.2 (2016), 6.2.2 to 6.2.4 and 13.2.1.
 */
export function hookLoadChain(lift: SharedLift): HookLoads {
  const design = lift.weight * lift.contingency;
  const shares = leverRule(design, lift.toFirst, lift.toSecond);
  const still: [number, number] = [shares[0] + lift.rigging[0], shares[1] + lift.rigging[1]];
  return {
    design,
    static: still,
    dynamic: [still[0] * lift.dynamicFactor, still[1] * lift.dynamicFactor],
  };
}

/**
 * Dynamic factor in air, onshore, by static hook load in tonnes: 1.10 up to 100 t, 1.05 up to 1000 t, 1.03 above. Source:
 * 0027/ND Rev 11.2 (2016), table 5-1, which begins at 3 t: lighter loads have the factor of 3 t here. Throws a RangeError
 * on a load that is negative or no number.
 */
export function dynamicFactorOnshore(load_t: number): number {
  if (!(load_t >= 0))
    throw new RangeError(`a hook load of ${load_t} t; 0 or more is allowed: give the static hook load`);
  if (load_t <= 100) return 1.1;
  return load_t <= 1000 ? 1.05 : 1.03;
}

/**
 * Least rated capacity of each crane over its calculated share: 1.20 for two cranes, 1.33 for three, 1.50 for four or
 * more; 1 for a crane alone, whose load is no share. Source: Queensland, Mobile crane Code of Practice 2006
 * (PN11180), section 14.3.2. Throws a RangeError unless `cranes` is a whole number from 1.
 */
export function minimumCapacityFactor(cranes: number): number {
  if (!Number.isInteger(cranes) || cranes < 1)
    throw new RangeError(`${cranes} cranes; a whole number from 1 is allowed: count the cranes on the load`);
  return [1, 1.2, 1.33, 1.5][Math.min(cranes, 4) - 1];
}

/**
 * What counts as load of a crane beside the lifted piece itself. Source: US Army Corps of Engineers, critical lift
 * plan, Form 16-3 (to EM 385-1-1).
 */
export const loadItems = [
  "piece",
  "main block",
  "auxiliary block",
  "lifting beam",
  "slings and shackles",
  "jib or extension",
  "hoist rope",
] as const;

export type LoadItem = (typeof loadItems)[number];

/** Sum of the load on a crane, and the items for which nothing was given: the sum then is a lower bound. */
export interface CraneLoad {
  total: number;
  missing: LoadItem[];
}

/**
 * Adds up the load of a crane. An item that the crane does not have is given as 0; one left out is listed as missing
 * and is not taken as 0 in silence. Throws a RangeError on a negative or non-finite weight.
 */
export function craneLoad(items: Partial<Record<LoadItem, number>>): CraneLoad {
  let total = 0;
  const missing: LoadItem[] = [];
  for (const item of loadItems) {
    const weight = items[item];
    if (weight === undefined) {
      missing.push(item);
      continue;
    }
    if (!(weight >= 0 && Number.isFinite(weight)))
      throw new RangeError(`${item} weighs ${weight}; 0 or more is allowed: give its weight`);
    total += weight;
  }
  return { total, missing };
}
