// Cranes: pressure on the ground below the tracks, as the boom points at a pose.

import { type Pressing, pressing, pressUnder } from "../../mechanics/index.ts";
import { hookName } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type HookedAt, hookReader } from "../cranes/hookLoad.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, METRE, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { type Allowable, recordAllowable } from "./allowable.ts";
import { belowMats, type CraneLoadOn, loadAt, type Tracks, tracksOf } from "./tracks.ts";
import { type Hung, recordArea, recordLoad, recordMats, recordSearched } from "./trackTrace.ts";
import { type Below, groundBelow } from "./way.ts";

/** A crane whose ground can be judged: what its own place allows, what it stands on at a pose, what is on its hook there. */
export type Judged = Tracks & {
  allowable: Allowable;
  below: (pose: Pick<Pose, "situation">) => Below;
  hooked: (pose: Pose) => HookedAt | null;
};

/** The set's cranes whose ground can be judged; others are open items. */
export function judgedOf(ctx: SetContext): Judged[] {
  return ctx.set.picks.flatMap((pick) => {
    const crane = ctx.plan.cranes.find((c) => c.id === pick.crane);
    const tracks = crane && tracksOf(ctx.plan, crane);
    if (!tracks?.allowable) return [];
    const { allowable } = tracks;
    const below = groundBelow(ctx, tracks.crane, allowable);
    return [{ ...tracks, allowable, below, hooked: hookReader(ctx, tracks.crane) }];
  });
}

const solvedNow = pressing();

/** Load on a crane's hook at a pose, N, its radius, m, and where the boom points against the tracks, rad. */
export interface Boom extends Hung {
  angle: number;
}

/** Where a hooked crane's boom points and what it carries; null where it is not hooked, or has no numbers. */
export function boomAt(t: Judged, pose: Pose): Boom | null {
  const hooked = t.hooked(pose);
  if (hooked === null) return null;
  for (const c of pose.situation.cranes) {
    if (c.id !== t.crane.id) continue;
    const { position } = t.crane;
    const dx = c.tip[0] - position.chainage_m - c.moved[0];
    const dy = c.tip[1] - position.y_m - c.moved[1];
    const angle = Math.atan2(dy, dx) - t.facing;
    return { hook: hooked.load.gross, radius: hooked.reach.radius, angle, hooked };
  }
  return null;
}

const load: CraneLoadOn = { V: 0, ahead: 0 };

/** How the tracks press on what is right below them, under a load on the hook; `load` is then what the tracks carry. */
function pressedBy(t: Judged, boom: Boom): Pressing {
  const { V, ahead } = loadAt(t, boom.hook, boom.radius, load);
  return pressUnder(t.footing, V, ahead * Math.cos(boom.angle), ahead * Math.sin(boom.angle), solvedNow);
}

/** Greatest pressure right below a crane's tracks at a pose, Pa; Infinity where its load lies outside them, NaN unhooked. */
export function trackPress(t: Judged, pose: Pose): number {
  const boom = boomAt(t, pose);
  if (boom === null) return Number.NaN;
  const o = pressedBy(t, boom);
  return o.status === "solved" ? o.most : Number.POSITIVE_INFINITY;
}

/** What all checks of a crane's ground share. */
export const common = (t: Judged) => ({
  subject: hookName(t.crane),
  kind: `${t.crane.kind} crane`,
  unit: "kPa",
  factor: 1e-3,
  digits: 0,
  source: t.allowable.source,
  chosenBy: t.allowable.chosenBy,
  cure: "more or stronger mats, a smaller radius, another way to face the tracks, or better ground",
});

/** What a reading says of the ground below the tracks. */
export const onGround = ({ allowable }: Below) => ({
  limit: allowable.value,
  source: allowable.source,
  chosenBy: allowable.chosenBy,
});

/** The stretch that governs, in words. */
export const onWords = ({ name }: Below): string => (name === "" ? "" : `, on '${name}'`);

/** The pressure on the ground below the tracks as the boom points at a pose. */
export function trackPressures(ctx: SetContext): Measure[] {
  return judgedOf(ctx).map((t) =>
    measure({
      check: "track pressure",
      ...common(t),
      ...traced(ctx, (pose, rec): Reading => {
        const boom = boomAt(t, pose);
        if (boom === null) return NOT_HERE;
        const o = pressedBy(t, boom);
        const { V, ahead } = load;
        const x = ahead * Math.cos(boom.angle);
        const y = ahead * Math.sin(boom.angle);
        const below = t.below(pose);
        if (o.status !== "solved")
          return {
            ...onGround(below),
            value: Number.POSITIVE_INFINITY,
            where: "its load lies outside its tracks",
          };
        const value = belowMats(t.mats, o.most);
        const { least } = o;
        if (rec !== null) {
          const { trackGauge_m: s, trackLength_m: l, trackWidth_m: w = 0 } = t.crane;
          recordLoad(rec, ctx, t, pose, boom);
          solved(rec, "phi", boom.angle, "rad", `direction of the boom of ${t.crane.id} against its tracks`);
          trace(rec, "x", x, "e*cos(phi)", "m", "load along the tracks from their middle");
          trace(rec, "y", y, "e*sin(phi)", "m", "load across the tracks from their middle");
          if (least > 0) {
            field(rec, "s_t", s, "gauge of the tracks", `${t.path}.trackGauge_m`, s, METRE);
            recordArea(rec, t, l, w);
            trace(
              rec,
              "p",
              o.most,
              "V/A_t*(1 + 6*abs(x)/l_t + abs(y)*(s_t/2 + w_t/2)/(s_t^2/4 + w_t^2/12))",
              "Pa",
              "greatest pressure below a rigid crane, both tracks pressing all over",
            );
          } else recordSearched(rec, t, V, o.most, `V at ${x.toFixed(3)} m along, ${y.toFixed(3)} m across`);
          recordMats(rec, t, o.most);
          recordAllowable(rec, below.allowable);
          rec.ends("q", "q_a");
        }
        return {
          value,
          ...onGround(below),
          get where() {
            const lifted = least > 0 ? "all of both tracks presses" : "part of the tracks lifts";
            return `${(V / 1000).toFixed(0)} kN ${Math.hypot(x, y).toFixed(2)} m off their middle, ${lifted}${onWords(below)}`;
          },
        };
      }),
    }),
  );
}

const known = new WeakMap<readonly Pose[], Map<string, Float64Array>>();

/** Pressures of every judged crane at the stored poses of a run, Pa, by its name; NaN where it is not hooked. Kept with the poses. */
export function pressuresOver(ctx: SetContext, stored: readonly Pose[]): Map<string, Float64Array> {
  let found = known.get(stored);
  if (found === undefined) {
    found = new Map(
      trackPressures(ctx).map((m) => [m.subject, Float64Array.from(stored, (pose) => m.read(pose).value)]),
    );
    known.set(stored, found);
  }
  return found;
}
