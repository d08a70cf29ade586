// Cranes with boom, tail, tracks, line and rigging, and transporters with deck and bunks, as convex bodies: laid out from
// the plan's numbers. Sizes that a plan does not give are in proportion, as they are drawn.

import { byId, type Crane, type Pick, type Rigging, type Transporter } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { craneSizes } from "../crane.ts";
import { deckDepths } from "../transporter.ts";
import type { BodyKind, Draft, SweptBody } from "./form.ts";

const body = (name: string, first: number, count: number, radius = 0, disc = 0): SweptBody => ({
  name,
  first,
  count,
  radius,
  disc,
});

/** Half of a wire rope sling with its fittings, m. */
const SLING = 0.03;
/** Half of a spreader beam, m. */
const BEAM = 0.18;

export const blockSize = (c: Crane): number => Math.min(1.3, 0.45 + 0.05 * c.partsOfLine);
/** Half the width of all parts of line beside each other, m. */
const ropeRadius = (c: Crane): number =>
  (Math.min(0.16, 0.7 / c.partsOfLine) * (c.partsOfLine - 1)) / 2 + 0.02;

/** What hangs from a crane onto how many picks, each on one girder by its index. */
export interface Hung {
  crane: Crane;
  pick: Pick;
  rigging: Rigging;
  girders: number[];
}

export function hungOf(ctx: SetContext, id: string): Hung | null {
  const pick = ctx.set.picks.find((p) => p.crane === id);
  if (pick === undefined) return null;
  const lines = pick.girders ?? ctx.set.girders.map((g) => g.line);
  const girders = lines.map((line) => ctx.set.girders.findIndex((g) => g.line === line));
  return { crane: byId(ctx.plan.cranes, id), pick, rigging: byId(ctx.plan.rigging, pick.rigging), girders };
}

/** Cranes that the sequence moves: those with a pick on this set. */
const cranesOf = (ctx: SetContext): Crane[] => ctx.plan.cranes.filter((c) => hungOf(ctx, c.id) !== null);

function craneGroups(ctx: SetContext, c: Crane): Draft[] {
  const group = (kind: BodyKind, what: string, bodies: SweptBody[], points: number): Draft => ({
    kind,
    of: c.id,
    name: `${what} of ${c.id}`,
    bodies,
    points,
  });
  const hung = hungOf(ctx, c.id) as Hung;
  const n = hung.girders.length;
  const separate = hung.rigging.kind === "separate";
  const lines = separate ? n : 1;
  const block = 0.4 * blockSize(c);
  const blocks = Array.from({ length: lines }, (_, i) => body("block", 2 * i, 2, block));
  const slings = hung.girders.map((g, i) =>
    body(`sling to girder ${ctx.set.girders[g].line}`, 2 * lines + 2 * i, 2, SLING),
  );
  const spread = hung.rigging.kind === "spreader" && n > 1;
  const beam = spread ? [body("spreader", 2 * (lines + n), 3, BEAM)] : [];
  return [
    group("boom", "boom", [body("boom", 0, 16)], 16),
    group("tail", "tail swing", [body("circle of the tail", 0, 2, 0, c.tailRadius_m)], 2),
    group("tracks", "tracks", [body("tracks", 0, 8)], 8),
    group(
      "line",
      "line",
      Array.from({ length: lines }, (_, i) => body("parts of line", 2 * i, 2, ropeRadius(c))),
      2 * lines,
    ),
    group("rigging", "rigging", [...blocks, ...slings, ...beam], 2 * (lines + n) + (spread ? 3 : 0)),
  ];
}

function trainGroup(ctx: SetContext, t: Transporter): Draft {
  const bodies = [body(`deck of ${t.id}`, 0, 8)];
  let points = 8;
  for (const b of t.bunks) {
    bodies.push(body(`bunk of ${t.id} at ${b.at_m} m`, points, 8));
    points += 8;
    for (const g of ctx.set.girders) {
      bodies.push(body(`packing of ${t.id} below girder ${g.line}`, points, 8));
      points += 8;
    }
  }
  return { kind: "train", of: t.id, name: t.id, bodies, points };
}

/** Groups of all machines of a set, cranes first, in the order in which `placeMachines` puts them. */
export function machineGroups(ctx: SetContext): Draft[] {
  const trains = ctx.set.onTransporters.map((on) => byId(ctx.plan.transporters, on.transporter));
  return [...cranesOf(ctx).flatMap((c) => craneGroups(ctx, c)), ...trains.map((t) => trainGroup(ctx, t))];
}

/** Levels (m above the ground) between which a tail swings: from the floor of the house to the top of house or ballast. */
export function tailLevels(c: Crane): [number, number] {
  const { floor, houseHeight, ballastHeight } = craneSizes(c);
  return [floor, floor + Math.max(houseHeight, ballastHeight)];
}

/** Depths of a deck below the tops of its bunks: its top, and its wheels down to just above the ground, m. */
export function deckLevels(t: Transporter): [number, number] {
  return [-deckDepths(t).bunk, -(t.bunkHeight_m - 0.05)];
}
