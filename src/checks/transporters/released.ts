// Trains under the set with their brakes released: what holds them on a grade, and whose brakes take them besides.
//
// Nothing holds such a train along the path but the set, by friction at its bunks and by ties; the brakes of the others
// then hold it too, in parts by braked lines. While it is driven, its drive holds it. Source: dry friction; common practice.

import { byId, type Transporter } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, NUMBER, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { gradePart, ownAlong } from "./grip.ts";
import { deckOf, onDeck, pathOf, trains, travels } from "./trains.ts";

/** Whether a transporter stands under the set with its brakes on. */
export const isBraked = (pose: Pose, id: string): boolean => {
  const { under, braked } = byId(pose.situation.trains, id);
  return under && braked;
};

/** What ties that are on hold a train by along the path, N. */
function tiesAlong({ plan, set }: SetContext, t: Transporter, pose: Pose): number {
  let kN = 0;
  for (const l of plan.lashings)
    if (l.transporter === t.id && (l.set ?? set.id) === set.id && pose.situation.lashed.includes(l.id))
      kN += l.holdsAlong_kN ?? 0;
  return kN * 1000;
}

/** What the set holds a released train by at most, N; Infinity where it carries and no friction of its bunks is stated. */
function heldBySet(ctx: SetContext, t: Transporter, pose: Pose, deck: number): number {
  const N = onDeck(pose, deck);
  if (N === 0) return tiesAlong(ctx, t, pose);
  return t.bunkFriction === undefined
    ? Number.POSITIVE_INFINITY
    : t.bunkFriction * N + tiesAlong(ctx, t, pose);
}

/** Lines by which a train takes its part of what is held together. */
const brakedLines = (t: Transporter): number => t.brakedLines ?? t.lines;

/** What the brakes of one train hold of the trains with released brakes: force, N, forward positive, and which they are. */
export interface HeldBesides {
  force: number;
  of: string;
}

const NOTHING: HeldBesides = { force: 0, of: "" };

/** What a braked train holds of others on the grade, written down under H_rel where there is any. */
export function heldBesides(
  ctx: SetContext,
  list: readonly Transporter[],
  t: Transporter,
  pose: Pose,
  rec: Recorder | null,
): HeldBesides {
  let all = 0;
  let lines = 0;
  let of = "";
  for (const other of list) {
    const deck = deckOf(pose, other.id);
    if (deck < 0) continue;
    if (isBraked(pose, other.id)) lines += brakedLines(other);
    else {
      const force = gradePart(ctx, other, pose);
      const held = Math.min(Math.abs(force), heldBySet(ctx, other, pose, deck));
      if (held === 0) continue;
      all += Math.sign(force) * held;
      of += of === "" ? other.id : `, ${other.id}`;
    }
  }
  if (of === "" || lines === 0) return NOTHING;
  if (rec !== null) {
    solved(rec, "H_free", all, "N", `weight of ${of} on the grade, brakes released, that the set passes on`);
    const field = t.brakedLines === undefined ? "lines" : "brakedLines";
    constant(rec, "n_b", brakedLines(t), "1", `braked lines of ${t.id}`, `${pathOf(ctx, t)}.${field}`);
    constant(rec, "n_held", lines, "1", "braked lines of all under the set", `transporters[].${field}`);
  }
  const words = `its part of ${of}, by braked lines`;
  return { force: trace(rec, "H_rel", (all * brakedLines(t)) / lines, "H_free*n_b/n_held", "N", words), of };
}

/** Words on what the brakes hold of others, for a finding; '' for nothing. */
export const besidesWords = ({ force, of }: HeldBesides): string =>
  of === ""
    ? ""
    : `${(Math.abs(force) / 1000).toFixed(1)} kN of it for ${of}, whose brakes are released, through the set`;

/** Trains that stand under the set with released brakes, undriven: their weight on the grade against what the set holds. */
export function releasedTrains(ctx: SetContext): Measure[] {
  return trains(ctx).map((t) =>
    measure({
      check: "released train",
      subject: t.id,
      kind: `${t.kind} train`,
      level: "caution",
      watched: false,
      source: "friction at the bunks and ties along of the plan",
      chosenBy: "plan",
      cure: "its own brakes on, chocks, or ties that hold it along: it rolls away from under the set",
      ...traced(ctx, (pose, rec): Reading => {
        const deck = deckOf(pose, t.id);
        if (deck < 0 || isBraked(pose, t.id)) return NOT_HERE;
        if (drivenAt(ctx, t, pose)) return { ...NOT_HERE, why: "its drive holds it in this step" };
        const N = onDeck(pose, deck);
        if (N > 0 && t.bunkFriction === undefined)
          return { ...NOT_HERE, why: `no friction is stated for the bunks of ${t.id}` };
        const own = ownAlong(ctx, t, pose, rec);
        const value = trace(rec, "H", Math.abs(own), "abs(H_own)", "N", "force to hold it");
        const ties = tiesAlong(ctx, t, pose);
        const mu = t.bunkFriction ?? 0;
        if (rec !== null) {
          const path = `${pathOf(ctx, t)}.bunkFriction`;
          if (N === 0) constant(rec, "mu", mu, "1", "friction at its bunks, which carry nothing", path);
          else field(rec, "mu", mu, "friction at its bunks", path, mu, NUMBER);
          solved(rec, "N", N, "N", `load of the set on ${t.id}`);
          constant(
            rec,
            "T",
            ties,
            "N",
            "its ties on, along",
            "lashings[].holdsAlong_kN of those that are on",
          );
        }
        const limit = trace(rec, "H_a", mu * N + ties, "mu*N + T", "N", "what the set holds it by");
        rec?.ends("H", "H_a");
        return { value, limit };
      }),
    }),
  );
}

/** Whether a train is driven in the step of a pose: with the set, or out from under it. */
function drivenAt(ctx: SetContext, t: Transporter, pose: Pose): boolean {
  const step = ctx.set.steps[pose.step];
  return travels(ctx, pose) || (step?.do === "drive out" && step.transporter === t.id);
}
