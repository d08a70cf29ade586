// Sites drawn at random for the proposals: gap, weight, machines and load charts from a seed. All of it is invented.

import { readFileSync } from "node:fs";
import { checkPlan, type Plan, readPlan, sentence, setLength, takeOff } from "../../src/plan/index.ts";

/** Random numbers from a seed, 0 to 1 (mulberry32). */
function random(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function demo(): Plan {
  const result = readPlan(readFileSync(new URL("../../scenarios/demo.json", import.meta.url), "utf8"));
  if (!result.ok) throw new Error(result.errors.map(sentence).join("\n"));
  return structuredClone(result.plan);
}

function checked(plan: Plan): Plan {
  const result = checkPlan(structuredClone(plan));
  if (!result.ok) throw new Error(result.errors.map(sentence).join("\n"));
  return result.plan;
}

/** Takes everything out of a plan that a proposal puts in: steps, positions, picks, start. */
export function stripped(plan: Plan): Plan {
  const copy = structuredClone(plan);
  for (const set of copy.sets) {
    set.steps = [];
    set.onTransporters = [];
    set.picks = [];
    set.start = { rearEnd_m: 0 };
  }
  delete copy.site.below.states;
  delete copy.expected;
  copy.accept = [];
  return checked(copy);
}

export const strippedDemo = () => stripped(demo());

/** A site of a seed: one two-girder set without positions or steps. `weaker` divides what the cranes are rated for. */
export function siteOf(seed: number, weaker = 1): Plan {
  const next = random(seed);
  const draw = (low: number, high: number, to = 0.01) =>
    Number((Math.round((low + (high - low) * next()) / to) * to).toFixed(4));
  const plan = stripped(demo());
  const span = draw(34, 62, 0.2);
  const length = Number((span + 1.2).toFixed(2));
  const near = 200;
  const far = near + span;
  const set = plan.sets[0];

  const depth = draw(length / 28, length / 22, 0.05) * 1000;
  const flange = draw(24, 44, 2);
  set.length_m = length;
  set.soleStations_m = { near: 0.6, far: length - 0.6 };
  set.girders = (["L", "R"] as const).map((line, i) => ({
    line,
    y_m: i === 0 ? 1.5 : -1.5,
    camber_mm: [
      [0, 0],
      [Number((length / 2).toFixed(2)), Math.round(length * 1.6)],
      [length, 0],
    ],
    pieces: [
      {
        from_m: 0,
        to_m: length,
        topFlange_mm: [480, flange + 2 * i],
        web_mm: [Math.round(depth), 16],
        bottomFlange_mm: [540, flange + 4 + 2 * i],
      },
    ],
  }));
  const bays = Math.round(length / 7);
  set.crossFrames = Array.from({ length: bays + 1 }, (_, i) => ({
    ...set.crossFrames[0],
    at_m: Number((0.6 + (i * span) / bays).toFixed(3)),
    height_m: depth / 2000,
  }));
  set.splices = [];
  set.attachments = [
    {
      name: "walkway",
      girder: "L",
      at_m: draw(0.3 * length, 0.7 * length),
      mass_t: draw(0.5, 3, 0.1),
      height_m: 2,
    },
  ];
  set.ledger = [];
  delete set.stiffeners;
  delete set.lateralBracing;
  delete set.tagLines;
  const mass = takeOff(set).mass / 1000;
  const weight = mass * 9.80665;

  const rise = draw(-0.2, 0.7, 0.05);
  const end = 30;
  plan.site = {
    ...plan.site,
    nearBearing_m: near,
    farBearing_m: far,
    nearFace_m: near + 1,
    farFace_m: far - 1,
    nearBackwall_m: near - 1.2,
    farBackwall_m: far + 1.2,
    path: {
      clearRight_m: 20,
      points: [near - 30 - length, near - 40, near - 18, near - 1.5].map((chainage_m, i) => ({
        chainage_m: Number(chainage_m.toFixed(2)),
        elevation_m: Number((end - ((3 - i) * 17 * rise) / 100 + draw(-0.02, 0.02)).toFixed(3)),
        crossfall_pct: draw(0, 0.6, 0.1),
      })),
    },
    stopLines: [{ name: "front axle", chainage_m: near - 2.5 }],
    underfoot: [],
    seats: plan.site.seats.map((s) => {
      const level = end + (s.line === "far" ? draw(-0.1, 0.4) : 0) + draw(-0.01, 0.01, 0.001);
      return { ...s, design_m: level, asBuilt_m: level };
    }),
    bearings: plan.site.bearings.map((b) => ({ ...b, ratedLoad_kN: Math.round(weight * 0.45) })),
  };

  for (const t of plan.transporters) {
    t.lines = t.kind === "front" ? 8 : 6;
    t.allowedLine_kN = Math.round(((weight * draw(0.9, 1.25)) / t.lines + 50) / 5) * 5;
    t.allowedSide_kN = Math.round(t.allowedLine_kN * 0.55);
    t.bunkRated_kN = Math.round(weight * 0.6);
  }
  for (const r of plan.rigging) r.ratedLoad_kN = Math.round(weight);

  const [farCrane, nearCrane] = ["far", "near"].map((kind) => {
    const crane = plan.cranes.find((c) => c.kind === kind);
    if (!crane) throw new Error(`the demo has no ${kind} crane`);
    return crane;
  });
  farCrane.position = { chainage_m: far + draw(5, 9, 0.5), y_m: draw(9, 13, 0.5), elevation_m: end };
  nearCrane.position = { chainage_m: near - draw(8, 14, 0.5), y_m: draw(11, 15, 0.5), elevation_m: end };
  chart(farCrane, span + 12, (weight * 0.6 * draw(1.0, 1.5)) / 9.80665 / weaker, span * 0.9);
  chart(nearCrane, 40, (weight * 0.6 * draw(1.5, 2.2)) / 9.80665 / weaker, 20);
  return checked(plan);
}

/** A chart in steps of 2 m up to a reach, falling like 1 / radius through a rating (t) at a radius. */
function chart(crane: Plan["cranes"][number], reach: number, rated: number, at: number): void {
  const boom = Math.ceil(Math.hypot(reach, 30));
  crane.boomLength_m = boom;
  const rows = [];
  for (let radius_m = 8; radius_m <= reach; radius_m += 2)
    rows.push({
      radius_m,
      boom_m: boom,
      rated_t: Number(((rated * (at + 3)) / (radius_m + 3)).toFixed(1)),
    });
  crane.chart = { invented: true, page: "invented", interpolation: false, rows };
}

/** What was drawn, in one line. */
export function siteWords(plan: Plan): string {
  const set = plan.sets[0];
  const span = plan.site.farBearing_m - plan.site.nearBearing_m;
  const t = takeOff(set).mass / 1000;
  return `span ${span.toFixed(1)} m, set ${setLength(set)} m and ${t.toFixed(0)} t`;
}
