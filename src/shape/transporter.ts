// A transporter: deck with spine and outriggers, wheels of every axle line and side at their stroke, bunks with packing.
import type { PlanSet, Transporter } from "../plan/index.ts";
import type { Situation, TrainSituation, Vec3, World } from "../sequence/index.ts";
import { type Curve, pointOn } from "./curves.ts";
import type { Pen, Tone } from "./pen.ts";
import { aligned, type Frame, inWorld } from "./vec.ts";

/** Depths (m) that a plan does not give, drawn in proportion: the bunk beam and the deck below it. */
export function deckDepths(t: Transporter): { bunk: number; deck: number } {
  return { bunk: Math.min(0.35, 0.2 * t.bunkHeight_m), deck: Math.min(0.5, 0.26 * t.bunkHeight_m) };
}

/**
 * The deck's frame: its centre at bunk height. Under a set its slopes are those of the datum plane with the deck's own
 * lean (> 0 raises the left side) and level (> 0 lowers the front); on its own it follows the ground under its wheels.
 */
export function deckFrame(t: Transporter, situation: Situation, train: TrainSituation, world: World): Frame {
  const deck = world.decks[t.id];
  const { plane } = situation;
  if (train.under) return tilted(deck.centre, plane.grade - deck.level, deck.lean - plane.crossfall);
  const height = (wheel: string) => world.wheels[`${t.id}:${wheel}`]?.[2] ?? deck.centre[2];
  const [a, b] = ["1", t.lines.toString()];
  const run = 2 * (t.lines - 1) * t.pitch_m;
  const ahead = run > 0 ? (height(`${b}L`) + height(`${b}R`) - height(`${a}L`) - height(`${a}R`)) / run : 0;
  return tilted(deck.centre, ahead, (height(`${a}L`) - height(`${a}R`)) / t.gauge_m);
}

function tilted(o: Vec3, ahead: number, left: number): Frame {
  return aligned(o, [1, 0, ahead], [-ahead, -left, 1]);
}

function drawDeck(pen: Pen, t: Transporter, hue: Tone): void {
  const { bunk, deck } = deckDepths(t);
  const top = -bunk;
  const half = t.deckLength_m / 2;
  const wide = t.deckWidth_m / 2;
  const spine = 0.22 * t.deckWidth_m;
  pen.block([-half, half], [-spine, spine], [top - deck, top], "machine");
  pen.block([-half, half], [-wide, wide], [top - 0.06, top], "machine");
  for (const side of [-1, 1]) {
    const y = [side * wide - 0.05, side * wide + 0.05] as const;
    pen.block([-half, half], y, [top - 0.22, top + 0.02], hue);
  }
  for (const end of [-1, 1]) {
    pen.block([end * half - 0.06, end * half + 0.06], [-wide, wide], [top - 0.3, top], hue);
  }
}

/** One side of one axle line: slewing ring, knee, cylinder, axle and a pair of tyres, from deck to ground contact. */
function drawWheel(pen: Pen, t: Transporter, deck: Frame, line: number, side: 1 | -1, contact: Vec3): void {
  const { bunk, deck: depth } = deckDepths(t);
  const d = t.wheelDiameter_m;
  const x = (line - (t.lines + 1) / 2) * t.pitch_m;
  const y = (side * t.gauge_m) / 2;
  const axle: Vec3 = [contact[0], contact[1], contact[2] + d / 2];
  const under = -bunk - 0.7 * depth;
  const lever = 0.28 * t.pitch_m;
  const ring = inWorld(deck, x, y, under);
  pen.drum(inWorld(deck, x, y, under + 0.12), ring, 0.42, "machine dark");
  const knee = inWorld(deck, x - lever, y, under - 0.18);
  pen.bar(ring, knee, 0.16, 0.16, [0, 1, 0], "machine dark");
  pen.bar(knee, axle, 0.16, 0.14, [0, 1, 0], "machine dark");
  pen.rod(inWorld(deck, x + 0.06, y, under - 0.04), [axle[0] + 0.02, axle[1], axle[2] + 0.1], 0.11, "steel");
  const tyre = 0.38 * d;
  const apart = 0.5 * tyre + 0.09;
  for (const way of [-1, 1]) {
    const at = axle[1] + way * apart;
    pen.drum([axle[0], at - tyre / 2, axle[2]], [axle[0], at + tyre / 2, axle[2]], d, "tyre");
    const rim = at + way * (tyre / 2 + 0.005);
    pen.drum([axle[0], rim - 0.01, axle[2]], [axle[0], rim + 0.01, axle[2]], 0.5 * d, "machine");
  }
  pen.rod([axle[0], axle[1] - apart, axle[2]], [axle[0], axle[1] + apart, axle[2]], 0.12, "machine dark");
}

/** Half the width of the bunk beams: out to the outermost girder and a little more, at least the deck's. */
export function bunkReach(t: Transporter, set: PlanSet): number {
  const outer = Math.max(...set.girders.map((girder) => Math.abs(girder.y_m)));
  return Math.max(t.deckWidth_m / 2, outer + 0.45);
}

function drawBunks(pen: Pen, t: Transporter, set: PlanSet, train: TrainSituation, hue: Tone): void {
  const { bunk } = deckDepths(t);
  const reach = bunkReach(t, set);
  for (const { at_m: x } of t.bunks) {
    pen.box(x, 0, -bunk / 2 - 0.02, 0.3, 2 * reach, bunk - 0.04, hue);
    pen.box(x, 0, -0.02, 0.5, 2 * reach, 0.04, "machine dark");
    if (!train.under) continue;
    for (const girder of set.girders) {
      const packing = train.packing[girder.line] ?? 0;
      if (packing > 0.001) pen.box(x, girder.y_m, packing / 2, 0.5, 0.5, packing, "timber");
    }
  }
}

/** Draws one transporter where the world has it. */
export function drawTransporter(
  pen: Pen,
  t: Transporter,
  set: PlanSet,
  situation: Situation,
  train: TrainSituation,
  world: World,
): void {
  if (world.decks[t.id] === undefined) return;
  const hue: Tone = t.kind === "front" ? "front train" : "rear train";
  const deck = deckFrame(t, situation, train, world);
  pen.part({
    name: t.name === "" ? t.id : t.name,
    what: "transporter",
    supports: t.groups.map((g) => g.name),
  });
  pen.frame = deck;
  drawDeck(pen, t, hue);
  drawBunks(pen, t, set, train, hue);
  for (const group of t.groups) {
    pen.part({ name: group.name, what: "transporter", supports: [group.name] });
    for (const wheel of group.wheels) {
      const contact = world.wheels[`${t.id}:${wheel}`];
      const side = wheel.endsWith("L") ? 1 : -1;
      if (contact !== undefined) drawWheel(pen, t, deck, Number.parseInt(wheel, 10), side, contact);
    }
  }
}

/** A lashing that is on: from the edge of the deck to the girder's bottom flange. */
export function drawLashing(
  pen: Pen,
  t: Transporter,
  deck: Frame,
  at: Frame,
  curve: Curve,
  station: number,
): void {
  const head = pointOn(at, curve, station, 0, 0.05);
  const half = t.deckLength_m / 2;
  const x = Math.max(-half, Math.min(half, head[0] - deck.o[0]));
  const side = curve.girder.y_m >= 0 ? 1 : -1;
  pen.line(inWorld(deck, x, (side * t.deckWidth_m) / 2, -deckDepths(t).bunk), head, "rope");
}
