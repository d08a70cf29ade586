// From boom tip to picks: the rope with its parts, hook block, slings, spreader and clamps.
import type { Crane, Pick, PlanSet, Rigging } from "../plan/index.ts";
import type { Vec3, World } from "../sequence/index.ts";
import { type Curve, pointOn } from "./curves.ts";
import type { Pen, Tone } from "./pen.ts";
import { add, between, type Frame, mean, minus, times, unit } from "./vec.ts";

/** How far (m) the empty hook of a crane that holds nothing is drawn below its tip: no planned number. */
export function parkedHook(c: Crane, tip: Vec3): Vec3 {
  return [tip[0], tip[1], tip[2] - Math.max(4, 0.14 * c.boomLength_m)];
}

/** The picks of a crane as they are drawn: one on every girder that it holds. */
export function picksOf(set: PlanSet, pick: Pick, at: Frame, curves: readonly Curve[]): Vec3[] {
  const lines = pick.girders ?? set.girders.map((girder) => girder.line);
  return curves
    .filter((curve) => lines.includes(curve.girder.line))
    .map((curve) => pointOn(at, curve, pick.at_m, 0, pick.height_m));
}

/** Block with its sheaves above the pin that the rigging hangs from; gives the top where the rope parts enter. */
function drawBlock(pen: Pen, c: Crane, pin: Vec3, across: Vec3, hue: Tone): Vec3 {
  const size = Math.min(1.3, 0.45 + 0.05 * c.partsOfLine);
  const centre: Vec3 = [pin[0], pin[1], pin[2] + 0.35 + size / 2];
  const side = times(across, 0.14 + 0.03 * c.partsOfLine);
  pen.drum(add(centre, side), minus(centre, side), 0.8 * size, "machine dark");
  pen.bar(
    [centre[0], centre[1], centre[2] - size / 2],
    [centre[0], centre[1], centre[2] + size / 2],
    0.16,
    0.5 * size,
    across,
    hue,
  );
  pen.rod([pin[0], pin[1], pin[2] + 0.35], pin, 0.14, "machine dark");
  return [centre[0], centre[1], centre[2] + 0.3 * size];
}

/** The parts of line between tip and block, side by side across the boom, and the lead down the boom to the winch. */
function drawRope(pen: Pen, c: Crane, tip: Vec3, block: Vec3, foot: Vec3, across: Vec3): void {
  const parts = Math.max(1, c.partsOfLine);
  const apart = Math.min(0.16, 0.7 / parts);
  for (let i = 0; i < parts; i++) {
    const shift = times(across, (i - (parts - 1) / 2) * apart);
    pen.line(add(tip, shift), add(block, shift), "rope");
  }
  pen.line(tip, between(foot, tip, 0.06), "rope");
}

/** Slings and spreader from the pin to the picks. */
function drawSlings(pen: Pen, rigging: Rigging, pin: Vec3, picks: readonly Vec3[], hue: Tone): void {
  if (picks.length === 0) return;
  if (rigging.kind === "spreader" && picks.length > 1) {
    const z = pin[2] - rigging.hookPinHeight_m;
    const centre = mean(picks);
    const ends = picks.map((p): Vec3 => [pin[0] + p[0] - centre[0], pin[1] + p[1] - centre[1], z]);
    const [a, b] = [ends[0], ends[ends.length - 1]];
    const beyond = times(unit(minus(b, a)), 0.25);
    pen.bar(minus(a, beyond), add(b, beyond), 0.3, 0.35, [0, 0, 1], hue);
    for (const end of [a, b]) pen.rod(pin, [end[0], end[1], end[2] + 0.18], 0.06, "rope");
    picks.forEach((pick, i) => {
      pen.rod(ends[i], pick, 0.06, "rope");
    });
    return;
  }
  for (const pick of picks) pen.rod(pin, pick, 0.06, "rope");
}

/** A clamp or lug at every pick. */
function drawClamps(pen: Pen, picks: readonly Vec3[], along: Vec3, hue: Tone): void {
  for (const p of picks)
    pen.bar(minus(p, times(along, 0.25)), add(p, times(along, 0.25)), 0.4, 0.3, [0, 0, 1], hue);
}

/** Draws what hangs from a crane: with no hook in the world, an empty block below the tip. */
export function drawRigging(
  pen: Pen,
  c: Crane,
  support: string,
  rigging: Rigging | null,
  place: World["cranes"][string],
  picks: readonly Vec3[],
): void {
  const { tip, foot, hook } = place;
  const hue: Tone = c.kind === "far" ? "far crane" : "near crane";
  const across = unit([tip[1] - foot[1], foot[0] - tip[0], 0]);
  pen.part({ name: support, what: "rigging", supports: [support] });
  const pin = hook ?? parkedHook(c, tip);
  if (hook !== null && rigging !== null && rigging.kind === "separate") {
    for (const pick of picks) {
      const own: Vec3 = [pick[0], pick[1], pick[2] + 1.2];
      drawRope(
        pen,
        { ...c, partsOfLine: Math.ceil(c.partsOfLine / picks.length) },
        tip,
        drawBlock(pen, c, own, across, hue),
        foot,
        across,
      );
      pen.rod(own, pick, 0.06, "rope");
    }
  } else {
    drawRope(pen, c, tip, drawBlock(pen, c, pin, across, hue), foot, across);
    if (hook !== null && rigging !== null) drawSlings(pen, rigging, pin, picks, hue);
  }
  if (hook !== null) drawClamps(pen, picks, [1, 0, 0], hue);
}
