// Answers to the set-up: five fixed bridges and random ones from a seed. Every site, crane and chart is invented.

import type { Answers } from "../../src/checks/index.ts";

/** Random numbers from a seed, 0 to 1 (mulberry32). */
export function random(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Rows of a chart in even steps of radius whose load moment falls a little with the radius; invented. */
export function rows(from: number, to: number, step: number, moment_tm: number) {
  const out = [];
  for (let radius_m = from; radius_m <= to; radius_m += step)
    out.push({ radius_m, rated_t: Number((moment_tm / (radius_m + 3)).toFixed(1)) });
  return out;
}

/** A usual bridge: a gap of 56.8 m, one set of two girders, crawler cranes on both sides. */
export function usual(): Answers {
  return {
    title: "First plan (invented)",
    gap: { kind: "clear", clear_m: 56.8 },
    bearings: { kind: "behind", behind_m: 1 },
    elevation_m: 31,
    grade_pct: 0.5,
    crossfall_pct: 0.5,
    sets: {
      count: 1,
      girders: 2,
      spacing_m: 3.2,
      length_m: 60,
      depth_m: 2.5,
      steel: { kind: "mass", mass_t_per_m: 0.95 },
    },
    transporters: {
      rear: { lines: 6, pitch_m: 1.4, gauge_m: 2.1, allowedLine_kN: 205 },
      front: { lines: 8, pitch_m: 1.4, gauge_m: 2.1, allowedLine_kN: 205 },
    },
    cranes: {
      fromFaces: true,
      far: { chainage_m: 7, y_m: 12.5, boom_m: 78, rows: rows(12, 70, 2, 5500) },
      near: { chainage_m: 15, y_m: 15, boom_m: 42, rows: rows(8, 40, 2, 3200) },
    },
  };
}

/** Answers that a planner might give, from a seed: spans of 20 to 60 m, one to three sets, one to four girders each. */
export function randomAnswers(seed: number): Answers {
  const next = random(seed);
  const draw = (low: number, high: number, to: number) =>
    Number((Math.round((low + (high - low) * next()) / to) * to).toFixed(3));
  const clear = draw(20, 58, 0.2);
  const behind = draw(0.6, 1.4, 0.1);
  const length = Number((clear + 2 * behind + draw(0.6, 1.6, 0.1)).toFixed(2));
  const girders = draw(1, 4, 1);
  const depth = draw(length / 27, length / 21, 0.05);
  // Weight over length grows with the span, as of plate girders of spans like these; invented.
  const mass = Number(((0.1 + 0.014 * length) * draw(0.9, 1.1, 0.01)).toFixed(3));
  const plates = next() < 0.4;
  const flange = draw(20, 40, 2);
  const steel: Answers["sets"]["steel"] = plates
    ? {
        kind: "plates",
        topFlange_mm: [draw(350, 550, 10), flange],
        web_mm: draw(12, 18, 1),
        bottomFlange_mm: [draw(400, 650, 10), flange + 4],
      }
    : { kind: "mass", mass_t_per_m: mass };
  const total = girders * length * (plates ? 1 : mass);
  const line = Math.max(60, Math.round((total * 9.81 * draw(0.9, 1.3, 0.05)) / 6 / 5) * 5);
  const near = draw(50, 400, 1);
  const side = next() < 0.5 ? 1 : -1;
  const boom = Math.ceil(clear + 24);
  return {
    title: `Random ${seed} (invented)`,
    gap:
      next() < 0.5
        ? { kind: "clear", clear_m: clear }
        : { kind: "chainages", nearFace_m: near, farFace_m: Number((near + clear).toFixed(3)) },
    bearings: { kind: "behind", behind_m: behind },
    elevation_m: draw(0, 300, 0.1),
    grade_pct: draw(-1, 1, 0.1),
    crossfall_pct: draw(-0.6, 0.6, 0.1),
    sets: {
      count: draw(1, 3, 1),
      girders,
      spacing_m: draw(2, 3.4, 0.1),
      length_m: length,
      depth_m: depth,
      steel,
    },
    transporters: {
      rear: { lines: draw(4, 8, 1), pitch_m: 1.4, gauge_m: draw(1.8, 2.4, 0.1), allowedLine_kN: line },
      front: { lines: draw(6, 10, 1), pitch_m: 1.4, gauge_m: draw(1.8, 2.4, 0.1), allowedLine_kN: line },
    },
    cranes: {
      fromFaces: true,
      far: {
        chainage_m: draw(5, 9, 0.5),
        y_m: side * draw(10, 14, 0.5),
        boom_m: boom,
        rows: rows(8, clear + 14, 2, total * 45),
      },
      near: {
        chainage_m: draw(12, 18, 0.5),
        y_m: side * draw(12, 16, 0.5),
        boom_m: 40,
        rows: rows(8, 36, 2, total * 28),
      },
    },
  };
}

/** Five bridges: usual; two sets; two girders by plates; a lone girder up a grade; chainages and short charts. */
export const FIXED: Answers[] = [
  usual(),
  (() => {
    const a = usual();
    a.title = "two sets side by side";
    a.sets.count = 2;
    return a;
  })(),
  (() => {
    const a = usual();
    a.title = "two girders by plates";
    a.gap = { kind: "clear", clear_m: 38 };
    a.sets = {
      count: 1,
      girders: 2,
      spacing_m: 2.6,
      length_m: 41,
      depth_m: 1.8,
      steel: { kind: "plates", topFlange_mm: [420, 26], web_mm: 14, bottomFlange_mm: [480, 30] },
    };
    a.cranes.far = { chainage_m: 7, y_m: 12, boom_m: 60, rows: rows(8, 54, 2, 5000) };
    return a;
  })(),
  (() => {
    const a = usual();
    a.title = "a lone girder up a grade";
    a.gap = { kind: "clear", clear_m: 28 };
    a.grade_pct = 1;
    a.crossfall_pct = 0;
    a.sets = {
      count: 1,
      girders: 1,
      spacing_m: 2,
      length_m: 31,
      depth_m: 1.5,
      steel: { kind: "mass", mass_t_per_m: 0.4 },
    };
    for (const t of [a.transporters.rear, a.transporters.front])
      Object.assign(t, { lines: 4, allowedLine_kN: 80 });
    a.cranes.far = { chainage_m: 7, y_m: 8, boom_m: 40, rows: rows(6, 38, 2, 700) };
    a.cranes.near = { chainage_m: 10, y_m: 9, boom_m: 24, rows: rows(5, 22, 1, 500) };
    return a;
  })(),
  (() => {
    const a = usual();
    a.title = "chainages, and charts of two rows";
    a.gap = { kind: "chainages", nearFace_m: 512.4, farFace_m: 552.4 };
    a.bearings = { kind: "chainages", near_m: 511.5, far_m: 553.3 };
    a.sets = { ...a.sets, length_m: 43, depth_m: 1.9, steel: { kind: "mass", mass_t_per_m: 0.7 } };
    a.cranes = {
      fromFaces: false,
      far: {
        chainage_m: 559,
        y_m: -12,
        boom_m: 62,
        rows: [
          { radius_m: 12, rated_t: 150 },
          { radius_m: 48, rated_t: 90 },
        ],
      },
      near: {
        chainage_m: 498,
        y_m: -14,
        boom_m: 40,
        rows: [
          { radius_m: 10, rated_t: 140 },
          { radius_m: 30, rated_t: 80 },
        ],
      },
    };
    return a;
  })(),
];
