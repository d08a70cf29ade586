// Cranes: pressure below the tracks over the whole swing, with the load of a pose and without load with the boom up.

import { pressing, pressUnder } from "../../mechanics/index.ts";
import type { Crane } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, useOf as partOfLimit, type Reading } from "../measure.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { recordAllowable } from "./allowable.ts";
import { foundAt } from "./found.ts";
import { boomAt, common, type Judged, judgedOf, onGround, onWords } from "./trackPressure.ts";
import { type CraneLoadOn, loadAt, worstToward } from "./tracks.ts";
import { recordLoad, recordMats, recordSearched } from "./trackTrace.ts";
import { byGround } from "./way.ts";

const solvedNow = pressing();
const load: CraneLoadOn = { V: 0, ahead: 0 };

/** Which load is swung round: that of the pose, or an empty hook at the least radius of the chart. */
type Swung = "over the swing" | "unloaded";

/** Least radius of the chart with the boom there is, m. */
function leastRadius(crane: Crane): number {
  const own = crane.chart.rows.filter((r) => r.boom_m === crane.boomLength_m);
  return Math.min(...(own.length > 0 ? own : crane.chart.rows).map((r) => r.radius_m));
}

/** An empty hook with the boom as steep as the chart goes. */
const idle = (t: Judged) => ({ hook: t.block, radius: leastRadius(t.crane), hooked: null });

function swung(ctx: SetContext, which: Swung): Measure[] {
  return judgedOf(ctx).map((t) =>
    measure({
      check: `track pressure ${which}`,
      ...common(t),
      level: "caution",
      watched: false,
      cure:
        which === "unloaded"
          ? "mats also behind, less ballast, or no swing of the empty boom to that side"
          : "keep the swing within stated sides, more or stronger mats, or better ground",
      ...traced(ctx, (pose, rec): Reading => {
        const boom = which === "unloaded" ? idle(t) : boomAt(t, pose);
        if (boom === null) return NOT_HERE;
        const { hook, radius, hooked } = boom;
        const below = t.below(pose);
        const { V, ahead } = loadAt(t, hook, radius, load);
        const worst = worstToward(t, V, ahead);
        if (rec !== null && Number.isFinite(worst.pressure)) {
          recordLoad(rec, ctx, t, pose, { hook, radius, hooked });
          const o = pressUnder(
            t.footing,
            V,
            ahead * Math.cos(worst.angle),
            ahead * Math.sin(worst.angle),
            solvedNow,
          );
          const degrees = ((worst.angle * 180) / Math.PI).toFixed(1);
          recordSearched(
            rec,
            t,
            V,
            o.most,
            `V at ${Math.abs(ahead).toFixed(3)} m, ${degrees} deg off the tracks`,
          );
          recordMats(rec, t, o.most);
          recordAllowable(rec, below.allowable);
          rec.ends("q", "q_a");
        }
        return {
          value: worst.pressure,
          ...onGround(below),
          get where() {
            const angle = (worst.angle * 180) / Math.PI;
            const end = ahead < 0 ? "counterweight" : "boom";
            return `${end} ${angle.toFixed(0)} deg off the tracks, radius ${radius.toFixed(1)} m, ${(hook / 1000).toFixed(0)} kN on the hook${onWords(below)}`;
          },
        };
      }),
    }),
  );
}

export const pressuresOverSwing = (ctx: SetContext): Measure[] => swung(ctx, "over the swing");
export const pressuresUnloaded = (ctx: SetContext): Measure[] => swung(ctx, "unloaded");

/** Numbers between which the pressure over the swing per newton is looked up, and how many poses are then tried in full. */
const ROWS = 24;
const TRIED = 3;

/** The pose at which a whole swing would press most, of those stored, by a table of distance ahead; -1 for none. */
function worstPose(t: Judged, m: Measure, stored: readonly Pose[], poses: readonly number[]): number {
  const loads = poses.map((i) => {
    const pose = stored[i];
    const boom = boomAt(t, pose);
    return boom && { ...loadAt(t, boom.hook, boom.radius, load) };
  });
  const far = Math.max(0, ...loads.map((l) => (l ? Math.abs(l.ahead) : 0)));
  const mean = Math.max(0, ...loads.map((l) => l?.V ?? 0));
  // Without mats the pressure is in proportion to V; with them the table only sorts.
  const table = Array.from({ length: ROWS + 1 }, (_, i) => worstToward(t, mean, (far * i) / ROWS).pressure);
  const guess = (l: CraneLoadOn) => {
    const i = Math.min(ROWS - 1, Math.floor((Math.abs(l.ahead) / (far || 1)) * ROWS));
    const part = (Math.abs(l.ahead) / (far || 1)) * ROWS - i;
    const [a, b] = [table[i], table[i + 1]];
    return (l.V / mean) * (part > 0 && b !== a ? a + part * (b - a) : a);
  };
  const order = loads
    .map((l, k) => ({ i: poses[k], p: l ? guess(l) : Number.NaN }))
    .filter((one) => !Number.isNaN(one.p))
    .sort((a, b) => b.p - a.p)
    .slice(0, TRIED);
  let best = -1;
  let value = Number.NEGATIVE_INFINITY;
  for (const { i } of order) {
    const r = m.read(stored[i]);
    if (r.value > value) {
      value = r.value;
      best = i;
    }
  }
  return best;
}

/** The worst of the whole swing and of the unloaded crane, where it goes beyond the ground's limit. */
export function swingFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const tracks = judgedOf(ctx);
  const over = pressuresOverSwing(ctx);
  const empty = pressuresUnloaded(ctx);
  return tracks.flatMap((t, k) => {
    const found: Finding[] = [];
    const grounds = byGround(t.below, stored);
    const say = (m: Measure, worstOf: (poses: readonly number[]) => number) => {
      // On one and the same ground the greatest pressure is the worst.
      const all = grounds.flatMap(({ poses }) => {
        const i = worstOf(poses);
        return i < 0 ? [] : [{ i, r: m.read(stored[i]) }];
      });
      if (all.length === 0) return;
      const { i, r } = all.reduce((a, b) => (partOfLimit(m, b.r) > partOfLimit(m, a.r) ? b : a));
      if (!(r.value > r.limit * (1 + 1e-9))) return;
      const [value, limit] = [r.value / 1000, r.limit / 1000];
      found.push(
        foundAt(ctx, run, i, {
          level: m.level,
          check: m.check,
          subject: m.subject,
          value,
          limit,
          unit: "kPa",
          source: r.source ?? m.source,
          chosenBy: r.chosenBy ?? m.chosenBy,
          words: `${m.subject}: ${
            m === over[k]
              ? "this load and radius, swung all round, would press"
              : "the unloaded crane with its boom up, swung all round, presses"
          } with ${value.toFixed(0)} kPa; ${limit.toFixed(0)} is allowed (${r.where})`,
          cure: m.cure,
        }),
      );
    };
    say(over[k], (poses) => worstPose(t, over[k], stored, poses));
    say(empty[k], ([first]) => first);
    return found;
  });
}
