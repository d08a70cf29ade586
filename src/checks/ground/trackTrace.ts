// How the pressure below a crane's tracks came about, written down part by part.

import type { Pose, SetContext } from "../../sequence/index.ts";
import type { HookedAt } from "../cranes/hookLoad.ts";
import { gravityTrace, recordGross } from "../cranes/hookTrace.ts";
import { recordReach } from "../cranes/reach.ts";
import { constant, field, METRE, MPA, type Recorder, solved, TONNE, trace } from "../trace.ts";
import { belowMats, loadAt, spreadLength, type Tracks } from "./tracks.ts";

/** Load on a hook, N, and its radius, m, with how both came about; null for an empty hook at the least radius. */
export interface Hung {
  hook: number;
  radius: number;
  hooked: HookedAt | null;
}

/** Writes down how the load on the tracks came about: V and e. */
export function recordLoad(
  rec: Recorder,
  ctx: SetContext,
  t: Tracks,
  pose: Pose,
  { hook, radius, hooked }: Hung,
): void {
  const { crane, path } = t;
  gravityTrace(rec, ctx);
  const weight = (symbol: string, tonnes: number, name: string, words: string) => {
    field(rec, `m_${symbol}`, tonnes * 1000, words, `${path}.${name}`, tonnes, TONNE);
    return trace(rec, `W_${symbol}`, tonnes * 1000 * ctx.gravity, `m_${symbol}*g`, "N", words);
  };
  const metre = (symbol: string, value: number, name: string, words: string) =>
    field(rec, symbol, value, words, `${path}.${name}`, value, METRE);
  weight("c", crane.mass_t, "mass_t", "the whole crane");
  metre("c", crane.cgBehind_m ?? 0, "cgBehind_m", "its CG behind the centre of rotation");
  let rest = "W_c";
  let own = "";
  if (crane.ballastBehind_m !== undefined && crane.ballast_t !== undefined) {
    weight("b", crane.ballast_t, "ballast_t", "ballast");
    metre("c_b", crane.ballastBehind_m, "ballastBehind_m", "ballast's CG behind the centre of rotation");
    rest += " - W_b";
    own += " - W_b*c_b";
  }
  if (crane.boomMass_t !== undefined) {
    weight("j", crane.boomMass_t, "boomMass_t", "boom");
    metre("x_f", crane.boomFootForward_m, "boomFootForward_m", "boom foot ahead of the centre of rotation");
    rest += " - W_j";
    own += " + W_j*(x_f + R)/2";
  }
  if (hooked === null) {
    const { block_t } = crane.deductions;
    field(rec, "m_block", block_t * 1000, "block", `${path}.deductions.block_t`, block_t, TONNE);
    trace(rec, "F", hook, "m_block*g", "N", "an empty hook");
    constant(
      rec,
      "R",
      radius,
      "m",
      "radius with the boom up",
      `least radius in ${path}.chart for its boom: how the crane stands is not in the plan`,
    );
  } else {
    recordGross(rec, ctx, crane, pose, hooked.load);
    recordReach(rec, ctx, crane, pose, hooked.reach);
  }
  const load = loadAt(t, hook, radius, { V: 0, ahead: 0 });
  trace(rec, "V", load.V, "W_c + F", "N", "load on the tracks");
  // Its size is that of small differences: judged by the moment, which is not.
  trace(
    rec,
    "M",
    load.ahead * load.V,
    `F*R - (${rest})*c${own}`,
    "N m",
    "moment about the centre of rotation, toward the boom's tip",
  );
  trace(rec, "e", load.ahead, "M/V", "m", "load ahead of the centre of rotation");
}

/** Writes down a pressure of the track that was searched for, part of the tracks lifted or swung to the worst: p. */
export function recordSearched(rec: Recorder, t: Tracks, V: number, p: number, how: string): void {
  const { trackLength_m: l, trackWidth_m: w = 0 } = t.crane;
  const mean = V / t.footing.A;
  recordArea(rec, t, l, w);
  solved(
    rec,
    "k_p",
    p / mean,
    "1",
    `greatest over mean pressure below a rigid crane on ground that cannot pull: ${how}`,
  );
  trace(rec, "p", p, "k_p*V/A_t", "Pa", "greatest pressure below the tracks");
}

/** Writes down the area of both tracks: A_t. */
export function recordArea(rec: Recorder, t: Tracks, l: number, w: number): void {
  field(rec, "l_t", l, "length of a track", `${t.path}.trackLength_m`, l, METRE);
  field(rec, "w_t", w, "width of a track", `${t.path}.trackWidth_m`, w, METRE);
  trace(rec, "A_t", t.footing.A, "2*l_t*w_t", "m2", "area of both tracks");
}

/** Writes down what the ground feels of a pressure p of the track: q. */
export function recordMats(rec: Recorder, t: Tracks, p: number): void {
  const { mats: m, path, crane } = t;
  const q = belowMats(m, p);
  if (m === null) {
    trace(rec, "q", q, "p", "Pa", "pressure on the ground, without mats");
    return;
  }
  const metre = (symbol: string, value: number, name: string, words: string) =>
    field(rec, symbol, value, words, `${path}.${name}`, value, METRE);
  metre("C", m.track, "trackWidth_m", "width of the track");
  metre("B", m.width, "mat.width_m", "width of a mat, along the track");
  metre("L_m", m.mat.length_m, "mat.length_m", "length of a mat, across the track");
  metre("s", crane.trackGauge_m, "trackGauge_m", "gauge of the tracks");
  trace(rec, "L", m.length, "min(L_m, s)", "m", "length before the mats of both tracks meet");
  field(rec, "m_m", m.mat.mass_t * 1000, "mass of a mat", `${path}.mat.mass_t`, m.mat.mass_t, TONNE);
  trace(rec, "P", p * m.track * m.width, "p*C*B", "N", "load of the track on one mat");
  const { thickness_m: d, bending_MPa, shear_MPa, section } = m.mat;
  if (d === undefined || bending_MPa === undefined || shear_MPa === undefined) {
    trace(
      rec,
      "L_e",
      spreadLength(m, p),
      "min(L, C)",
      "m",
      "no spread is counted without thickness and stresses",
    );
  } else {
    metre("d", d, "mat.thickness_m", "thickness of a mat");
    field(rec, "f_b", bending_MPa * 1e6, "allowable bending", `${path}.mat.bending_MPa`, bending_MPa, MPA);
    field(rec, "f_v", shear_MPa * 1e6, "allowable shear", `${path}.mat.shear_MPa`, shear_MPa, MPA);
    if (section === undefined) {
      trace(rec, "M_a", m.moment, "f_b*B*d^2/6", "N m", "allowable moment of a mat");
      trace(rec, "V_a", m.shear, "f_v*B*d/1.5", "N", "allowable shear of a mat");
    } else {
      const made = (symbol: string, value: number, name: "modulus_cm3" | "shearArea_cm2", words: string) =>
        constant(rec, symbol, value, "SI", words, `${path}.mat.section.${name} of the plan`);
      made("Z", section.modulus_cm3 * 1e-6, "modulus_cm3", "section modulus of a mat");
      made("A_s", section.shearArea_cm2 * 1e-4, "shearArea_cm2", "shear area of a mat");
      trace(rec, "M_a", m.moment, "f_b*Z", "N m", "allowable moment of a mat");
      trace(rec, "V_a", m.shear, "f_v*A_s", "N", "allowable shear of a mat");
    }
    const h = trace(
      rec,
      "h",
      m.track + (4 * m.moment) / (p * m.track * m.width),
      "C + 4*M_a/P",
      "m",
      "of bending",
    );
    trace(rec, "L_b", h + Math.sqrt(h * h - m.track ** 2), "h + sqrt(h*h - C*C)", "m", "length by bending");
    trace(
      rec,
      "L_e",
      spreadLength(m, p),
      "max(min(L, C), min(L, min(L_b, V_a >= P/2 ? L : (C + 2*d)/(1 - 2*V_a/P))))",
      "m",
      "length that spreads, by bending and by shear at d",
      "Duerr (2010), effective length of a mat, as quoted elsewhere",
    );
  }
  trace(rec, "w_m", m.own, "m_m*g/(L_m*B)", "Pa", "own weight of the mats");
  trace(rec, "q", q, "p*C/L_e + w_m", "Pa", "pressure on the ground below the mats");
}
