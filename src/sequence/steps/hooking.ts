// hook up, unhook, lash, unlash: rigging and ties put on or taken off, nothing commanded to move.

import { byId } from "../../plan/index.ts";
import { planeLevel, plumbOf } from "../place.ts";
import type { SetContext, Situation } from "../types.ts";
import { deckLevel, happening, hookForce, type MotionOf, slackOf, soffitLevel, withCrane } from "./kind.ts";

/** Slack left in the line when the rigging has been fixed, m. */
const FIRST_SLACK = 0.05;

export const hookUp: MotionOf<"hook up"> = {
  find: (ctx, step, start, probe) => {
    const crane = start.cranes.find((c) => c.id === step.crane);
    const happenings = crane?.hooked
      ? [happening("out of order", step.crane, `${step.crane} is hooked up already`)]
      : [];
    // Where the picks hang now, so that the line starts just short of taut.
    const trial = attach(ctx, start, step.crane, -10);
    const slack = slackOf(probe(trial), step.crane);
    return { ends: [Number.isFinite(slack) ? -10 + slack - FIRST_SLACK : -10], happenings };
  },
  at: (ctx, step, start, ends, progress) => (progress < 1 ? start : attach(ctx, start, step.crane, ends[0])),
};

function attach(ctx: SetContext, s: Situation, id: string, takeUp: number): Situation {
  const pick = ctx.set.picks.find((p) => p.crane === id);
  const level = planeLevel(s, pick?.at_m ?? 0, 0);
  return withCrane(s, id, () => ({
    hooked: true,
    tautAt: level + takeUp,
    heldLoad: null,
    tip: plumbOf(ctx, s, id),
  }));
}

export const unhook: MotionOf<"unhook"> = {
  find: (ctx, step, start, probe) => {
    const crane = start.cranes.find((c) => c.id === step.crane);
    if (!crane?.hooked)
      return {
        ends: [0],
        happenings: [happening("out of order", step.crane, `${step.crane} is not hooked up`)],
      };
    const F = hookForce(ctx, probe(start), step.crane);
    // Lower until slack; the slack is what the step watches before the rigging comes off.
    let down = 0;
    for (let reach = 0.001; reach < 5; reach *= 2) {
      down = reach;
      const pose = probe(lowered(start, step.crane, reach));
      if (pose.solution.status !== "solved" || hookForce(ctx, pose, step.crane) === 0) break;
    }
    const happenings =
      F > 0.02 * ctx.model.mass * ctx.gravity
        ? [
            happening(
              "out of order",
              step.crane,
              `${step.crane} still carries ${(F / 1000).toFixed(1)} kN when it is unhooked`,
              { value: F, limit: 0.02 * ctx.model.mass * ctx.gravity, unit: "N" },
            ),
          ]
        : [];
    return { ends: [down], happenings };
  },
  at: (_ctx, step, start, ends, progress) =>
    progress < 1
      ? lowered(start, step.crane, progress * ends[0])
      : withCrane(lowered(start, step.crane, ends[0]), step.crane, () => ({ hooked: false, heldLoad: null })),
};

function lowered(s: Situation, id: string, down: number): Situation {
  return withCrane(s, id, (c) => ({ tautAt: c.tautAt - down, heldLoad: null }));
}

export const lash: MotionOf<"lash"> = {
  // Where every tie finds its two ends when it is made fast.
  find: (ctx, step, start, probe) => {
    const pose = probe(start);
    const gone: string[] = [];
    const ends = step.lashings.map((id) => {
      const l = byId(ctx.plan.lashings, id);
      const girder = ctx.model.girders.findIndex((g) => g.name === l.girder);
      const train = byId(start.trains, l.transporter);
      const deck = deckLevel(pose, l.transporter, l.at_m - train.deckAt, ctx.model.girders[girder].y);
      if (!Number.isNaN(deck)) return soffitLevel(pose, girder, l.at_m) - deck;
      gone.push(id);
      return 0;
    });
    return {
      ends,
      happenings: gone.map((id) =>
        happening("out of order", id, `lashing ${id} ties to a transporter that is not under the set`),
      ),
    };
  },
  at: (_ctx, step, start, ends, progress) => {
    if (progress < 1) return start;
    const tiedAt = { ...start.tiedAt };
    step.lashings.forEach((id, i) => {
      if (!start.lashed.includes(id)) tiedAt[id] = ends[i];
    });
    return { ...start, lashed: [...new Set([...start.lashed, ...step.lashings])], tiedAt };
  },
};

export const unlash: MotionOf<"unlash"> = {
  find: (_ctx, step, start) => ({
    ends: [],
    happenings: step.lashings
      .filter((id) => !start.lashed.includes(id))
      .map((id) => happening("out of order", id, `lashing ${id} is not on`)),
  }),
  at: (_ctx, step, start, _ends, progress) =>
    progress < 1
      ? start
      : {
          ...start,
          lashed: start.lashed.filter((id) => !step.lashings.includes(id)),
          tiedAt: Object.fromEntries(
            Object.entries(start.tiedAt).filter(([id]) => !step.lashings.includes(id)),
          ),
        },
};
