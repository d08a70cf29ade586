// The sheet of a mat: the length that the ground asks for, and bending and shear of the mat over that length.

import { matActions, matArea, pressing, pressUnder } from "../../mechanics/index.ts";
import { hookName } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, useOf as partOfLimit, type Reading } from "../measure.ts";
import { constant, field, METRE, MPA, type Recorder, solved, TONNE, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { type Allowable, recordAllowable } from "./allowable.ts";
import { foundAt, poseWords } from "./found.ts";
import { boomAt, common, type Judged, judgedOf, pressuresOver } from "./trackPressure.ts";
import { type CraneLoadOn, loadAt, type Mats, matLacks } from "./tracks.ts";
import { byGround } from "./way.ts";

const SHEET = "Duerr (2010), mats below cranes, as quoted elsewhere; ASME P30.1 has the like";
const solvedNow = pressing();
const load: CraneLoadOn = { V: 0, ahead: 0 };

type Kind = "bending" | "shear";

const mattedOf = (ctx: SetContext) =>
  judgedOf(ctx).filter(
    (t): t is Judged & { mats: Mats } => t.mats !== null && matLacks(t.mats.mat).length === 0,
  );

/** Moment and shear of the mat below the most pressed part of a track, over the length that the ground asks for. */
export function matLoads(ctx: SetContext): Measure[] {
  return mattedOf(ctx).flatMap((t) =>
    (["bending", "shear"] as const).map((kind) => {
      const { mats: m } = t;
      return measure({
        ...common(t),
        check: `mat ${kind}`,
        unit: kind === "bending" ? "kNm" : "kN",
        digits: 1,
        watched: false,
        source: m.mat.source ?? `mats of ${t.crane.id} in the plan`,
        cure: "thicker or stronger mats, a second layer, or better ground that asks for less length",
        ...traced(ctx, (pose, rec): Reading => {
          const boom = boomAt(t, pose);
          if (boom === null) return NOT_HERE;
          const { V, ahead } = loadAt(t, boom.hook, boom.radius, load);
          const [x, y] = [ahead * Math.cos(boom.angle), ahead * Math.sin(boom.angle)];
          const o = pressUnder(t.footing, V, x, y, solvedNow);
          if (o.status !== "solved") return NOT_HERE;
          const W = m.own * m.mat.length_m * m.width;
          const P = o.most * m.track * m.width;
          const { allowable } = t.below(pose);
          if (!(allowable.value > 0)) return NOT_HERE;
          const A = matArea(P, W, allowable.value);
          const length = Math.max(m.track, A / m.width);
          const actions = matActions(P, m.width, length, m.track, m.thickness);
          const [value, limit] = kind === "bending" ? [actions.moment, m.moment] : [actions.shear, m.shear];
          if (rec !== null)
            record(rec, ctx, t, kind, { p: o.most, P, W, A, length, value, limit, allowable });
          return {
            value,
            limit,
            get where() {
              return `${(P / 1000).toFixed(0)} kN on a mat asks for ${length.toFixed(2)} m of its ${m.mat.length_m} m`;
            },
          };
        }),
      });
    }),
  );
}

interface Sheet {
  p: number;
  P: number;
  W: number;
  A: number;
  length: number;
  value: number;
  limit: number;
  allowable: Allowable;
}

function record(rec: Recorder, ctx: SetContext, t: Judged & { mats: Mats }, kind: Kind, s: Sheet): void {
  const { mats: m, path } = t;
  const metre = (symbol: string, value: number, name: string, words: string) =>
    field(rec, symbol, value, words, `${path}.${name}`, value, METRE);
  const { mat } = m;
  solved(rec, "p", s.p, "Pa", `greatest pressure below the tracks of ${t.crane.id} (check 'track pressure')`);
  metre("C", m.track, "trackWidth_m", "width of the track");
  metre("B", m.width, "mat.width_m", "width of a mat");
  metre("d", m.thickness, "mat.thickness_m", "thickness of a mat");
  field(rec, "m_m", mat.mass_t * 1000, "mass of a mat", `${path}.mat.mass_t`, mat.mass_t, TONNE);
  constant(rec, "g", ctx.gravity, "m/s2", "gravity", "site.gravity_m_per_s2, or ISO 80000-3");
  recordAllowable(rec, s.allowable);
  trace(rec, "P", s.P, "p*C*B", "N", "load of the track on one mat");
  trace(rec, "W", s.W, "m_m*g", "N", "weight of the mat");
  trace(rec, "A", s.A, "(P + W)/q_a", "m2", "area that the ground asks for", SHEET);
  trace(rec, "L", s.length, "max(C, A/B)", "m", "length that the ground asks for", SHEET);
  trace(rec, "L_c", Math.max(0, (s.length - m.track) / 2), "max(0, (L - C)/2)", "m", "free length", SHEET);
  trace(rec, "q", s.P / (s.length * m.width), "P/(L*B)", "Pa", "pressure that bends the mat", SHEET);
  const { section, bending_MPa = 0, shear_MPa = 0 } = mat;
  const made = (symbol: string, value: number, name: string) =>
    constant(rec, symbol, value, "SI", "of one mat", `${path}.mat.section.${name} of the plan`);
  if (kind === "bending") {
    trace(rec, "M", s.value, "q*B*L_c^2/2", "N m", "moment beside the track", SHEET);
    field(rec, "f_b", bending_MPa * 1e6, "allowable bending", `${path}.mat.bending_MPa`, bending_MPa, MPA);
    if (section) made("Z", section.modulus_cm3 * 1e-6, "modulus_cm3");
    trace(rec, "M_a", s.limit, section ? "f_b*Z" : "f_b*B*d^2/6", "N m", "allowable moment");
    rec.ends("M", "M_a");
    return;
  }
  trace(rec, "V", s.value, "q*B*max(0, L_c - d)", "N", "shear at the mat's depth from the track", SHEET);
  field(rec, "f_v", shear_MPa * 1e6, "allowable shear", `${path}.mat.shear_MPa`, shear_MPa, MPA);
  if (section) made("A_s", section.shearArea_cm2 * 1e-4, "shearArea_cm2");
  trace(rec, "V_a", s.limit, section ? "f_v*A_s" : "f_v*B*d/1.5", "N", "allowable shear");
  rec.ends("V", "V_a");
}

/** Mats that bend or shear too much over the length that the ground asks for, at the worst stored pose of each. */
export function matFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const pressures = pressuresOver(ctx, stored);
  const grounds = new Map(mattedOf(ctx).map((t) => [hookName(t.crane), byGround(t.below, stored)]));
  return matLoads(ctx).flatMap((m) => {
    const known = pressures.get(m.subject);
    let worst = -1;
    let use = 0;
    for (const { poses } of grounds.get(m.subject) ?? []) {
      // On one and the same ground moment and shear grow with the pressure of the track: the pose of its greatest is theirs.
      let [at, most] = [-1, 0];
      for (const i of poses) {
        const p = known?.[i] ?? Number.NaN;
        if (p > most && p < Number.POSITIVE_INFINITY) [at, most] = [i, p];
      }
      if (at < 0) continue;
      const own = partOfLimit(m, m.read(stored[at]));
      if (own > use) [worst, use] = [at, own];
    }
    if (!(use > 1 + 1e-9)) return [];
    const r = m.read(stored[worst]);
    const [value, limit] = [r.value / 1000, r.limit / 1000];
    return foundAt(ctx, run, worst, {
      level: m.level,
      check: m.check,
      subject: m.subject,
      value,
      limit,
      unit: m.unit,
      source: m.source,
      words: `${m.check} of ${m.subject}: ${value.toFixed(1)} is above ${limit.toFixed(1)} ${m.unit} (${r.where}; ${poseWords(run, worst)})`,
      cure: m.cure,
    });
  });
}
