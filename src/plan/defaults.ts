// What stands in where a plan says nothing, and the list of what is still open. Blank is not zero: every stand-in is an
// open item and is shown as one.
import { openRigging } from "./openRigging.ts";
import type { PlanPath } from "./reading/planError.ts";
import { printPath } from "./reading/planError.ts";
import type { Piece, Plan, PlanSet, Spread } from "./schema.ts";
import { unconfirmedItems } from "./unconfirmed.ts";

/** Standard gravity (m/s2), ISO 80000-3. */
export const standardGravity = 9.80665;

/** Steel (kg/m3), EN 1991-1-1 table A.4 gives 77 to 78.5 kN/m3: the upper end. */
export const steelDensity = 7850;

/** Moduli of structural steel (Pa), EN 1993-1-1 3.2.6. */
export const steelE = 210e9;
export const steelG = 81e9;

/** Starter values of the spread: common practice, no source. Each that is used is an open item. */
export const starterSpread: Required<{ [K in keyof Spread]: NonNullable<Spread[K]> }> = {
  weight_pct: [-5, 5],
  cgAlong_m: 0.1,
  cgAcross_m: 0.05,
  stiffness_pct: [-20, 20],
  hookMismatch_mm: 20,
  settlement_mm: 10,
  friction: [0.05, 0.2],
};

/** Gravity at the site (m/s2). */
export function gravityOf(plan: Plan): number {
  return plan.site.gravity_m_per_s2 ?? standardGravity;
}

/** Density (kg/m3) and moduli (Pa) of the set's steel. */
export function steelOf(set: PlanSet): { density: number; E: number; G: number } {
  return {
    density: set.steelDensity_kg_per_m3 ?? steelDensity,
    E: set.E_GPa === undefined ? steelE : set.E_GPa * 1e9,
    G: set.G_GPa === undefined ? steelG : set.G_GPa * 1e9,
  };
}

/** The spread in force, and which of its values are starter values because the plan leaves them blank. */
export function spreadOf(plan: Plan): { spread: typeof starterSpread; assumed: (keyof Spread)[] } {
  const keys = Object.keys(starterSpread) as (keyof Spread)[];
  const given = Object.fromEntries(Object.entries(plan.spread).filter(([, v]) => v !== undefined));
  return {
    spread: { ...starterSpread, ...given },
    assumed: keys.filter((key) => plan.spread[key] === undefined),
  };
}

/** Length of a support along the girder and leg of the flange's weld where a plan leaves them blank (mm): the safe end. */
export const blankBearingLength = 0;
export const blankWeldLeg = 0;

/** Yield stress of a piece of a set (MPa); null where neither the piece nor the set has one: nothing stands in. */
export function yieldOf(set: PlanSet, piece: Piece): number | null {
  return piece.yield_MPa ?? set.yield_MPa ?? null;
}

/** Something a plan still lacks: where, and what. */
export interface OpenItem {
  path: string;
  what: string;
  /** True where a value stands that nobody has confirmed. */
  unconfirmed?: boolean;
}

/** Everything still open: blank names, starter values, unsurveyed seats, missing sources, what is not confirmed. */
export function openItems(plan: Plan): OpenItem[] {
  const items: OpenItem[] = [];
  const open = (path: PlanPath, what: string) => {
    items.push({ path: printPath(path), what });
  };
  for (const field of ["title", "revision", "preparedBy", "checkedBy", "status"] as const) {
    if (plan.header[field].trim() === "") open(["header", field], "blank");
  }
  for (const key of spreadOf(plan).assumed) {
    open(["spread", key], `blank: the starter value ${starterSpread[key].toString()} stands in`);
  }
  plan.site.seats.forEach((seat, i) => {
    const path = ["site", "seats", i];
    if (seat.asBuilt_m === null) {
      open(
        [...path, "asBuilt_m"],
        `seat ${seat.line} ${seat.girder} not surveyed: the design elevation stands in`,
      );
    } else if (seat.source.trim() === "") open([...path, "source"], "blank");
  });
  for (const field of ["transporters", "cranes"] as const) {
    plan[field].forEach((machine, i) => {
      if (machine.source.trim() === "") open([field, i, "source"], `${machine.id}: no source of its data`);
    });
  }
  const blankLength = `blank: ${blankBearingLength} mm stands in where the web above it is judged`;
  plan.transporters.forEach((t, i) => {
    const j = t.bunks.findIndex((bunk) => bunk.length_mm === undefined);
    if (j >= 0) open(["transporters", i, "bunks", j, "length_mm"], `bunks of ${t.id}: ${blankLength}`);
  });
  const bare = plan.site.bearings.findIndex((bearing) => bearing.length_mm === undefined);
  if (bare >= 0) open(["site", "bearings", bare, "length_mm"], `sole plates: ${blankLength}`);
  plan.sets.forEach((set, i) => {
    const path = ["sets", i];
    if (set.fabricationFactor_pct === undefined) {
      open([...path, "fabricationFactor_pct"], "blank: stiffeners and welds are not counted");
    }
    if (set.ledger.length === 0) open([...path, "ledger"], "no weights with a source to compare with");
    set.ledger.forEach((line, j) => {
      if (line.source.trim() === "") open([...path, "ledger", j, "source"], `${line.item}: no source`);
    });
    items.push(...strengthItems(set, i));
  });
  items.push(...unconfirmedItems(plan).map((item) => ({ ...item, unconfirmed: true })));
  items.push(...openRigging(plan));
  if (plan.limits.use.length + plan.limits.rules.length === 0) open(["limits"], "no limit set");
  return items;
}

/** What the strength of a set's girders lacks; one item for all pieces of a girder that lack the same. */
function strengthItems(set: PlanSet, i: number): OpenItem[] {
  const items: OpenItem[] = [];
  const open = (path: PlanPath, what: string) => {
    items.push({ path: printPath(["sets", i, ...path]), what });
  };
  set.girders.forEach((girder, j) => {
    const lacks = (of: (piece: Piece) => unknown) => {
      const places = girder.pieces.map((piece, k) => ((of(piece) ?? null) === null ? k : -1));
      const bare = places.filter((k) => k >= 0);
      return {
        first: bare[0],
        words: `girder ${girder.line}, ${bare.length} of ${places.length} pieces: blank`,
      };
    };
    const strength = lacks((piece) => yieldOf(set, piece));
    if (strength.first !== undefined)
      open(
        ["girders", j, "pieces", strength.first, "yield_MPa"],
        `${strength.words}: the strength of this girder is not judged`,
      );
    const weld = lacks((piece) => piece.weldLeg_mm);
    if (weld.first !== undefined)
      open(
        ["girders", j, "pieces", weld.first, "weldLeg_mm"],
        `${weld.words}: ${blankWeldLeg} mm stands in where the web is judged below a point load`,
      );
  });
  for (const field of ["moment_kNm", "shear_kN"] as const) {
    const bare = set.splices.filter((splice) => splice[field] === undefined);
    if (bare.length > 0)
      open(
        ["splices", set.splices.indexOf(bare[0]), field],
        `${bare.length} of ${set.splices.length} splices: blank: they are not judged`,
      );
  }
  set.picks.forEach((pick, j) => {
    if (pick.length_mm === undefined)
      open(
        ["picks", j, "length_mm"],
        `pick of ${pick.crane}: blank: ${blankBearingLength} mm stands in where the web below it is judged`,
      );
  });
  const stiffeners = set.stiffeners ?? [];
  const bare = stiffeners.findIndex((s) => s.width_mm === undefined || s.thickness_mm === undefined);
  if (bare >= 0)
    open(
      ["stiffeners", bare],
      "no sizes: stiffeners count as being there, but what they carry themselves is not judged",
    );
  return items;
}
