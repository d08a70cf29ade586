// Transporters: pressure on the path over spread areas or the deck's shadow, where each line stands; and under the tyres.

import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, METRE, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { KPA, recordAllowable } from "./allowable.ts";
import { foundAt, poseWords } from "./found.ts";
import { deckAt, type Train, trainsOf, type Wheel, type Zone, zoneAt, zonesOf } from "./trains.ts";

const shadow = "the shadow of the deck, lines x pitch x width: common practice, no source";
const CURE = "plates or fill that spread the load further, more axle lines, or a better path";

const spreadWords = ({ spread }: Train) =>
  `over ${spread.length.toFixed(2)} x ${spread.width.toFixed(2)} m, ${spread.by === "shadow" ? "its part of the deck's shadow" : "its spread area"}`;

/** Writes down over what one axle-line side is spread: l_s along, w_s across. */
export function recordSpread(rec: Recorder, { t, path, spread }: Train): void {
  const metre = (symbol: string, value: number, name: string, words: string) =>
    field(rec, symbol, value, words, `${path}.${name}`, value, METRE);
  metre("s_p", t.pitch_m, "pitch_m", "pitch of the lines");
  if (spread.by === "shadow") {
    metre("w_d", t.deckWidth_m, "deckWidth_m", "width of the deck");
    trace(rec, "l_s", spread.length, "s_p", "m", "one line's part of the shadow, along");
    trace(rec, "w_s", spread.width, "w_d/2", "m", "one side's part of the shadow, across", shadow);
    return;
  }
  metre("g_w", t.gauge_m, "gauge_m", "gauge of the wheels");
  metre("l_a", t.spreadArea?.length_m ?? 0, "spreadArea.length_m", "spread area along");
  metre("w_a", t.spreadArea?.width_m ?? 0, "spreadArea.width_m", "spread area across");
  trace(rec, "l_s", spread.length, "min(l_a, s_p)", "m", "along, no further than the next line's");
  trace(rec, "w_s", spread.width, "min(w_a, g_w)", "m", "across, no further than the other side's");
}

/** Pressure below every axle-line side against the stretch of the path that it stands on; the highest use is read. */
export function axlePressures(ctx: SetContext): Measure[] {
  const zones = zonesOf(ctx.plan);
  if (zones.every((z) => z.allowable === null)) return [];
  return trainsOf(ctx).map((train) => {
    const { t, wheels, spread } = train;
    const area = spread.length * spread.width;
    return measure({
      check: "axle pressure",
      subject: t.id,
      kind: `${t.kind} train`,
      unit: "kPa",
      factor: 1e-3,
      cure: CURE,
      ...traced(ctx, (pose, rec): Reading => {
        const deck = deckAt(train, pose);
        if (deck === null) return NOT_HERE;
        let use = -1;
        let at: Wheel | null = null;
        let on: Zone | null = null;
        for (let i = 0; i < wheels.length; i++) {
          const F = pose.forces[wheels[i].column];
          if (!(F >= 0)) continue;
          const zone = zoneAt(zones, deck[0] + wheels[i].x);
          if (zone === null || zone.allowable === null) continue;
          const u = zone.allowable.value > 0 ? F / zone.allowable.value : Number.POSITIVE_INFINITY;
          if (u > use) {
            use = u;
            at = wheels[i];
            on = zone;
          }
        }
        if (at === null || on === null || on.allowable === null) return NOT_HERE;
        const F = pose.forces[at.column];
        const { id } = at;
        const chainage = deck[0] + at.x;
        if (rec !== null) {
          solved(rec, "F", F, "N", `cylinder ${t.id}:${id}, at chainage ${chainage.toFixed(2)} m`);
          recordSpread(rec, train);
          trace(rec, "q", F / area, "F/(l_s*w_s)", "Pa", "pressure on the path");
          recordAllowable(rec, on.allowable);
          rec.ends("q", "q_a");
        }
        return {
          value: F / area,
          limit: on.allowable.value,
          source: on.allowable.source,
          chosenBy: on.allowable.chosenBy,
          get where() {
            return `axle line side ${id} at chainage ${chainage.toFixed(1)} m, ${spreadWords(train)}`;
          },
        };
      }),
    });
  });
}

/** Pressure under the tyres of the heaviest axle-line side against what the transporter's maker or hirer allows. */
export function tyrePressures(ctx: SetContext): Measure[] {
  return trainsOf(ctx).flatMap(({ t, path, wheels }) => {
    const { tyrePrint, allowedGroundPressure_kPa: allowed } = t;
    if (tyrePrint === undefined || allowed === undefined) return [];
    const area = tyrePrint.length_m * tyrePrint.width_m;
    return measure({
      check: "tyre pressure",
      subject: t.id,
      kind: `${t.kind} train`,
      unit: "kPa",
      factor: 1e-3,
      digits: 0,
      source: `allowed under the tyres of transporter ${t.id}: ${t.source}`,
      chosenBy: "plan",
      cure: "more axle lines, less load at this support, or plates below the tyres",
      ...traced(ctx, (pose, rec): Reading => {
        let F = Number.NaN;
        let id = "";
        for (const w of wheels)
          if (Number.isNaN(F) || pose.forces[w.column] > F) {
            F = pose.forces[w.column];
            id = w.id;
          }
        if (!(F >= 0)) return NOT_HERE;
        if (rec !== null) {
          const metre = (symbol: string, value: number, name: string) =>
            field(rec, symbol, value, `tyre print, ${name}`, `${path}.tyrePrint.${name}`, value, METRE);
          solved(rec, "F", F, "N", `cylinder ${t.id}:${id}`);
          metre("l_p", tyrePrint.length_m, "length_m");
          metre("w_p", tyrePrint.width_m, "width_m");
          trace(rec, "q", F / area, "F/(l_p*w_p)", "Pa", "pressure under the tyres");
          const place = `${path}.allowedGroundPressure_kPa`;
          field(rec, "q_a", allowed * 1000, "allowed under the tyres", place, allowed, KPA);
          rec.ends("q", "q_a");
        }
        return { value: F / area, limit: allowed * 1000, where: `axle line side ${id}` };
      }),
    });
  });
}

/**
 * Weak stretches of the path that a line crosses between two stored poses at neither of which it stands there: the
 * greater of its loads at both, over its spread, against what the stretch allows. Poses are stored where loads bend.
 */
export function weakStretches(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const zones = zonesOf(ctx.plan);
  const out = new Map<string, Finding>();
  const uses = new Map<string, number>();
  for (const train of trainsOf(ctx)) {
    const area = train.spread.length * train.spread.width;
    for (let i = 0; i + 1 < stored.length; i++) {
      const [a, b] = [deckAt(train, stored[i]), deckAt(train, stored[i + 1])];
      if (a === null || b === null || a[0] === b[0] || run.step[i] !== run.step[i + 1]) continue;
      for (const w of train.wheels) {
        const [x0, x1] = [Math.min(a[0], b[0]) + w.x, Math.max(a[0], b[0]) + w.x];
        const F = Math.max(stored[i].forces[w.column], stored[i + 1].forces[w.column]);
        if (!(F >= 0)) continue;
        for (const zone of zones) {
          // Those with an end inside are seen at the ends.
          if (zone.allowable === null || zone.from <= x0 || zone.to >= x1) continue;
          const use = F / area / zone.allowable.value;
          const key = `${train.t.id}:${zone.from}`;
          if (!(use > 1 + 1e-9) || use <= (uses.get(key) ?? 0)) continue;
          uses.set(key, use);
          const [value, limit] = [F / area / 1000, zone.allowable.value / 1000];
          out.set(
            key,
            foundAt(ctx, run, i, {
              id: `axle pressure:${ctx.set.id}:${train.t.id}:${zone.from}`,
              level: "stop",
              check: "axle pressure",
              subject: train.t.id,
              value,
              limit,
              unit: "kPa",
              source: zone.allowable.source,
              chosenBy: zone.allowable.chosenBy,
              words: `axle pressure of ${train.t.id}: axle line side ${w.id} crosses chainage ${zone.from} to ${zone.to} m after ${poseWords(run, i)} with ${value.toFixed(1)} kPa; ${limit.toFixed(1)} is allowed there (${spreadWords(train)})`,
              cure: CURE,
            }),
          );
        }
      }
    }
  }
  return [...out.values()];
}
