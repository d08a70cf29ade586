// Transporters and cranes as drawn: counts, sizes and places from the plan's numbers. Closed forms; no source needed.
import { describe, expect, test } from "vitest";
import {
  centreOf,
  craneSizes,
  deckDepths,
  distance,
  type Instances,
  inWorld,
  numberOf,
  type Pen,
  type Tone,
  volumeOf,
} from "../../src/shape/index.ts";
import { posed } from "./posed.ts";

/** Indices of the instances of one form with a tone, of parts that `belongs` picks. */
function found(
  pen: Pen,
  of: Instances,
  tone: Tone,
  belongs: (name: string) => boolean = () => true,
): number[] {
  return Array.from({ length: of.count }, (_, i) => i).filter(
    (i) => of.tones[i] === numberOf(tone) && belongs(pen.parts[of.parts[i]].name),
  );
}

/** Lengths of the three axes of an instance, m. */
function sizes(of: Instances, i: number): number[] {
  return [0, 4, 8].map((k) => Math.hypot(...of.matrices.slice(16 * i + k, 16 * i + k + 3)));
}

describe("transporters, half-way through the roll", () => {
  const { pen, world, ctx, pose } = posed(1, 0.5);

  test("a pair of tyres per axle line and side: 2 trains x 4 lines x 2 sides x 2", () => {
    expect(found(pen, pen.drums, "tyre").length).toBe(2 * 4 * 2 * 2);
  });

  test("every tyre has the plan's diameter and stands on its contact, between the two of its pair (0.1 mm)", () => {
    const tyres = found(pen, pen.drums, "tyre");
    for (const contact of Object.values(world.wheels)) {
      const pair = tyres
        .map((i) => centreOf(pen, pen.drums, i))
        .filter((c) => Math.abs(c[0] - contact[0]) < 1e-3 && Math.abs(c[1] - contact[1]) < 0.5);
      expect(pair.length).toBe(2);
      expect(Math.abs((pair[0][1] + pair[1][1]) / 2 - contact[1])).toBeLessThan(1e-4);
      for (const c of pair) expect(Math.abs(c[2] - 0.75 / 2 - contact[2])).toBeLessThan(1e-4);
    }
    for (const i of tyres) {
      expect(Math.abs(sizes(pen.drums, i)[1] - 0.75)).toBeLessThan(1e-6);
    }
  });

  test("wheels of a group belong to that group, so that pointing at one tells what the group carries", () => {
    const left = found(pen, pen.drums, "tyre", (name) => name === "front left");
    expect(left.length).toBe(8);
    for (const i of left) expect(centreOf(pen, pen.drums, i)[1]).toBeGreaterThan(0);
  });

  test("the deck hangs below the bunk tops by the bunk's depth, at the slope of the set", () => {
    const deck = found(pen, pen.boxes, "machine", (name) => name === "front train")[0];
    const { bunk, deck: depth } = deckDepths(ctx.plan.transporters[1]);
    const c = centreOf(pen, pen.boxes, deck);
    expect(Math.abs(world.decks.front.centre[2] - c[2] - bunk - depth / 2)).toBeLessThan(2e-3);
    const m = pen.boxes.matrices;
    const slope = m[16 * deck + 2] / m[16 * deck];
    expect(Math.abs(slope - pose.situation.plane.grade + world.decks.front.level)).toBeLessThan(1e-6);
  });

  test("packing is drawn in its height: 10 and 14 mm at the front, 4 mm under one girder at the rear", () => {
    const packs = found(pen, pen.boxes, "timber", (name) => / train$/.test(name)).map(
      (i) => sizes(pen.boxes, i)[2],
    );
    const mm = packs.map((h) => Math.round(1e3 * h)).sort((a, b) => a - b);
    expect(mm).toEqual([4, 4, 10, 10, 14, 14]);
  });
});

describe("cranes, far crane on the hook", () => {
  const { pen, world, ctx, drawn } = posed(5, 1);
  const far = ctx.plan.cranes[0];

  test("boom tip to foot is the boom's length (1e-9 m), its foot where the plan says", () => {
    for (const crane of ctx.plan.cranes) {
      const { foot, tip } = world.cranes[crane.id];
      expect(Math.abs(distance(foot, tip) - crane.boomLength_m)).toBeLessThan(1e-9);
      expect(foot[2]).toBeCloseTo(crane.position.elevation_m + crane.boomFootHeight_m, 9);
      const { chainage_m, y_m } = crane.position;
      expect(Math.hypot(foot[0] - chainage_m, foot[1] - y_m)).toBeCloseTo(crane.boomFootForward_m, 9);
    }
  });

  test("four chords of lattice reach from foot to tip: their lengths add up to four booms within 2 %", () => {
    const chords = found(pen, pen.rods, "far crane", (name) => name === "far crane");
    const total = chords.reduce((sum, i) => sum + sizes(pen.rods, i)[0], 0);
    expect(total / (4 * far.boomLength_m)).toBeGreaterThan(0.98);
    expect(total / (4 * far.boomLength_m)).toBeLessThan(1.02);
  });

  test("as many rope parts as the plan has parts of line, from the tip down", () => {
    const tip = world.cranes["far-1"].tip;
    let parts = 0;
    for (let i = 0; i < pen.lines.count; i++) {
      const [x, y, z, , , low] = pen.lines.positions.slice(6 * i, 6 * i + 6);
      const top = [x + pen.origin[0], y + pen.origin[1], z + pen.origin[2]] as const;
      const near = Math.hypot(top[0] - tip[0], top[1] - tip[1], top[2] - tip[2]) < 0.5;
      const hook = world.cranes["far-1"].hook?.[2] ?? Number.NaN;
      if (near && Math.abs(low + pen.origin[2] - hook) < 2) parts += 1;
    }
    expect(parts).toBe(far.partsOfLine);
  });

  test("ballast has the volume of its mass at 7 t/m3, less the joints of 20 mm", () => {
    const slabs = found(pen, pen.boxes, "ballast", (name) => name === "far crane");
    const volume = slabs.reduce((sum, i) => sum + volumeOf(pen.boxes, i), 0);
    expect(volume).toBeLessThan(80 / 7);
    expect(volume).toBeGreaterThan(0.93 * (80 / 7));
  });

  test("tracks have the plan's gauge and length, the tail its radius", () => {
    const tracks = found(pen, pen.boxes, "machine dark", (name) => name === "far crane")
      .map((i) => ({ c: centreOf(pen, pen.boxes, i), s: sizes(pen.boxes, i) }))
      .filter(({ s }) => Math.abs(s[0] - (far.trackLength_m - craneSizes(far).trackHeight)) < 1e-6);
    expect(tracks.length).toBe(2);
    expect(Math.abs(tracks[0].c[1] - tracks[1].c[1])).toBeCloseTo(far.trackGauge_m, 4);
    const slab = found(pen, pen.boxes, "ballast", (name) => name === "far crane")[0];
    const m = pen.boxes.matrices;
    const c = centreOf(pen, pen.boxes, slab);
    const back = [0, 1].map((k) => c[k] - m[16 * slab + k] / 2);
    const radius = Math.hypot(back[0] - far.position.chainage_m, back[1] - far.position.y_m);
    expect(radius).toBeCloseTo(far.tailRadius_m, 3);
  });

  test("slings end at the picks: on the girders at the pick's station and height", () => {
    const at = ctx.set.picks[0];
    for (const curve of drawn.curves) {
      const level = curve.rise(at.at_m) + at.height_m;
      const pick = inWorld(drawn.frame, at.at_m, curve.girder.y_m, level);
      const ends = found(pen, pen.rods, "rope").map((i) => {
        const c = centreOf(pen, pen.rods, i);
        const m = pen.rods.matrices;
        return [0, 1, 2].map((k) => c[k] + m[16 * i + k] / 2);
      });
      const nearest = Math.min(
        ...ends.map((e) => Math.hypot(e[0] - pick[0], e[1] - pick[1], e[2] - pick[2])),
      );
      expect(nearest).toBeLessThan(0.01);
    }
  });

  test("an idle crane's boom points at its last pick and is as long as the plan says", () => {
    const { foot, tip } = world.cranes["near-1"];
    const near = ctx.plan.cranes[1];
    // Rear end in the end: near bearing 40 less sole 0.5; its pick 3 m on.
    expect(Math.hypot(tip[0] - 42.5, tip[1])).toBeLessThan(1e-9);
    expect(distance(foot, tip)).toBeCloseTo(near.boomLength_m, 9);
  });
});
