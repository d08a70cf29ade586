// Brakes and drive of the transporters: what the machine holds, what its wheels hold at their loads, stops and starts.
//
// Brakes work on all braked lines alike, whatever a line carries: a transporter that is nearly unloaded is asked for its
// part and cannot give it. It also holds its part of trains with released brakes that hold on to the set.
// Source: dry friction; shares by lines, common practice.

import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Limit, limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, KN, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { type Gripping, gripOf, gripping, ownAlong, toMove, type UnderWay, underWay } from "./grip.ts";
import { besidesWords, heldBesides, isBraked } from "./released.ts";
import { deckOf, heldAlong, makers, pathOf, trains, travels } from "./trains.ts";

export function brakes(ctx: SetContext): Measure[] {
  const list = trains(ctx);
  return list
    .filter((t) => t.brakeLimit_kN !== undefined && t.brakeLimit_kN > 0)
    .map((t) => {
      const allowed = t.brakeLimit_kN ?? 0;
      return measure(
        {
          check: "brake",
          subject: t.id,
          kind: `${t.kind} train`,
          cure: "brakes on another transporter too, or a line kept plumber",
          ...traced(ctx, (pose, rec) => {
            const deck = deckOf(pose, t.id);
            if (!pose.solution.horizontal || deck < 0 || !isBraked(pose, t.id)) return NOT_HERE;
            const held = solved(
              rec,
              "H_set",
              heldAlong(pose, deck),
              "N",
              `force of ${t.id} on the set along`,
            );
            // The transporter's own weight on the grade goes into the same brakes.
            const own = ownAlong(ctx, t, pose, rec);
            const besides = heldBesides(ctx, list, t, pose, rec);
            const words = "force in its brakes, all parts taken the same way";
            const value = Math.abs(held) + Math.abs(own) + Math.abs(besides.force);
            const more = besides.of === "" ? "" : " + abs(H_rel)";
            trace(rec, "H", value, `abs(H_set) + abs(H_own)${more}`, "N", words);
            const path = `${pathOf(ctx, t)}.brakeLimit_kN`;
            field(rec, "H_a", allowed * 1000, "force that its brakes hold", path, allowed, KN);
            rec?.ends("H", "H_a");
            return {
              value,
              limit: allowed * 1000,
              get where() {
                return besidesWords(besides);
              },
            };
          }),
        },
        makers(t),
      );
    });
}

const frictionSource = ({ plan }: SetContext): string =>
  `friction of wheels on the path in the plan${plan.site.path.wheelFrictionSource ? ` (${plan.site.path.wheelFrictionSource})` : ""}; which lines are braked or driven is not said: the least loaded are taken`;

/** Wheels that must hold the path, standing: a transporter that carries next to nothing holds next to nothing. */
export function brakeGrips(ctx: SetContext): Measure[] {
  const { wheelFriction: friction } = ctx.plan.site.path;
  if (friction === undefined) return [];
  const list = trains(ctx);
  return gripping(ctx, "brakedLines").map((grip) => {
    const { t } = grip;
    return measure({
      check: "brake grip",
      subject: t.id,
      kind: `${t.kind} train`,
      watched: false,
      source: frictionSource(ctx),
      chosenBy: "plan",
      cure: "chocks, brakes on a transporter that carries more, or a line kept plumber",
      ...traced(ctx, (pose, rec): Reading => {
        const deck = deckOf(pose, t.id);
        if (deck < 0 || !isBraked(pose, t.id)) return NOT_HERE;
        const held = solved(rec, "H_set", heldAlong(pose, deck), "N", `force of ${t.id} on the set along`);
        const own = ownAlong(ctx, t, pose, rec);
        const besides = heldBesides(ctx, list, t, pose, rec);
        const sum = besides.of === "" ? "H_set + H_own" : "H_set + H_own + H_rel";
        const value = Math.abs(held + own + besides.force);
        trace(rec, "H", value, `abs(${sum})`, "N", "force to hold");
        const limit = gripOf(pose, grip, friction, rec, "H_a");
        rec?.ends("H", "H_a");
        return {
          value,
          limit,
          get where() {
            return besidesWords(besides);
          },
        };
      }),
    });
  });
}

/** Under way: a stop at the allowed acceleration, for each transporter by its braked lines, and for all together. */
export function braking(ctx: SetContext): Measure[] {
  const along = limitOf(ctx.plan, "acceleration along");
  const { wheelFriction: friction } = ctx.plan.site.path;
  if (!along || friction === undefined) return [];
  const list = gripping(ctx, "brakedLines");
  const whole = (pose: Pose) =>
    travels(ctx, pose) ? underWay(ctx, pose, list, (id) => isBraked(pose, id)) : null;
  const common: Common = {
    check: "braking",
    level: "caution",
    watched: false,
    perStep: true,
    source: `${frictionSource(ctx)}; a stop at ${along.value} % of gravity (${along.source})`,
    chosenBy: along.chosenBy,
  };
  const single = list.map((grip) => {
    const { t, count } = grip;
    return measure({
      ...common,
      subject: t.id,
      kind: `${t.kind} train`,
      cure: "more load on this transporter, fewer of its lines braked, a slower stop, or a flatter path: its wheels lock and slide",
      ...traced(ctx, (pose, rec): Reading => {
        const all = whole(pose);
        if (all === null || !all.grips.includes(grip)) return NOT_HERE;
        const force = toMove(rec, all, along, null);
        constant(rec, "n", count, "1", `braked lines of ${t.id}`, `${pathOf(ctx, t)}.brakedLines`);
        constant(
          rec,
          "n_all",
          all.lines,
          "1",
          "braked lines of all that travel",
          "transporters[].brakedLines",
        );
        const value = trace(rec, "H", (force * count) / all.lines, "H_all*n/n_all", "N", "its part by lines");
        const limit = gripOf(pose, grip, friction, rec, "H_a");
        rec?.ends("H", "H_a");
        return { value, limit };
      }),
    });
  });
  return list.length > 0 ? [...single, together(ctx, common, friction, whole, along, null)] : [];
}

/** Wheels that drive: grade, start and rolling resistance against the grip of the driven lines. */
export function traction(ctx: SetContext): Measure[] {
  const along = limitOf(ctx.plan, "acceleration along");
  const rolling = limitOf(ctx.plan, "rolling resistance");
  const { wheelFriction: friction } = ctx.plan.site.path;
  const list = gripping(ctx, "drivenLines");
  if (!along || !rolling || friction === undefined || list.length === 0) return [];
  const whole = (pose: Pose) => (travels(ctx, pose) ? underWay(ctx, pose, list, () => true) : null);
  const common: Common = {
    check: "traction",
    level: "caution",
    watched: false,
    perStep: true,
    source: `${frictionSource(ctx)}; a start at ${along.value} % of gravity (${along.source}); rolling resistance ${rolling.value} % (${rolling.source})`,
    chosenBy: along.chosenBy,
  };
  return [together(ctx, common, friction, whole, along, rolling)];
}

type Common = Pick<Measure, "check" | "level" | "watched" | "perStep" | "source" | "chosenBy">;

/** All wheels that grip together against what everything that travels asks for. */
function together(
  ctx: SetContext,
  common: Common,
  friction: number,
  whole: (pose: Pose) => UnderWay | null,
  along: Limit,
  rolling: Limit | null,
): Measure {
  const each = (pose: Pose, grip: Gripping) => gripOf(pose, grip, friction, null, "");
  return measure({
    ...common,
    subject: "set",
    kind: "",
    cure: "more lines, another transporter that helps, slower starts and stops, or a flatter path",
    ...traced(ctx, (pose, rec): Reading => {
      const all = whole(pose);
      if (all === null) return NOT_HERE;
      const value = toMove(rec, all, along, rolling);
      let limit = 0;
      for (const grip of all.grips) limit += each(pose, grip);
      if (rec !== null) {
        const names = all.grips.map((grip, i) => {
          const part = rec.part();
          gripOf(pose, grip, friction, part, `H_${i + 1}`);
          rec.take(part, `H_${i + 1}`);
          return `H_${i + 1}`;
        });
        trace(rec, "H_a", limit, names.join(" + "), "N", "what all of them can pass to the path");
        rec.ends("H_all", "H_a");
      }
      return {
        value,
        limit,
        get where() {
          return all.grips.map((g) => `${g.t.id} ${(each(pose, g) / 1000).toFixed(0)} kN`).join(", ");
        },
      };
    }),
  });
}
