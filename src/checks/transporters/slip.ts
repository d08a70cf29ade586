// What holds the set on its supports sideways: friction, stops and ties, standing and under way.

import type { Pose, SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { percent } from "./named.ts";
import { deckOf, onDeck, trains, travels } from "./trains.ts";

/** Below this share of the weight on contacts the set hangs: its lines hold it, and their lean is checked instead. */
const HANGS = 0.01;

/** Sideways force on all contacts with a stated friction or stop, against what they hold together. */
export function slips(ctx: SetContext): Measure[] {
  const stated = trains(ctx).filter((t) => t.bunkFriction !== undefined);
  if (stated.length === 0) return [];
  const source = stated.map((t) => `${t.id} ${t.bunkFriction}`).join(", ");
  return [
    measure(
      {
        check: "slip",
        subject: "set",
        kind: "",
        unit: "% of what holds",
        factor: 100,
        digits: 0,
        cure: "chocks or lashings along, or a line kept plumber",
        ...traced(ctx, (pose, rec) => slipUse(ctx, pose, rec)),
      },
      { source: `friction stated for the bunks in the plan: ${source}`, chosenBy: "plan" },
    ),
  ];
}

/** Part of a line's pull out of plumb, N, that it has lost because the set slid towards it. */
const lost = (placed: number, left: number): number =>
  placed > 0 ? Math.min(placed, Math.max(0, placed - left)) : Math.max(placed, Math.min(0, placed - left));

/**
 * Contacts never hold more than their limit: where all of them slip, the set slides towards plumb until its lines ask for
 * no more. What is asked for is the force for it to stay where it stands, with the lines as far out of plumb as they were.
 * Wind that lays a set against its lines is judged by their lean; a set that turns about one contact is not judged here.
 */
function slipUse(ctx: SetContext, pose: Pose, rec: Recorder | null): Reading {
  const { horizontal, holds, contact, layout, tension } = pose.solution;
  if (!horizontal) return NOT_HERE;
  let x = 0;
  let y = 0;
  let limit = 0;
  let normal = 0;
  for (let i = 0; i < holds.length; i++) {
    x += horizontal.holds[2 * i];
    y += horizontal.holds[2 * i + 1];
    limit += holds[i].stated;
    normal += contact.F[holds[i].device];
  }
  if (normal < HANGS * ctx.model.mass * ctx.gravity || !Number.isFinite(limit)) return NOT_HERE;
  const slides = !horizontal.slipping.includes(false);
  for (let i = 0; slides && i < layout.hoists.length; i++) {
    const { ropeLength, offset } = layout.hoists[i];
    if (!ropeLength) continue;
    x -= lost((tension[i] / ropeLength) * (offset?.[0] ?? 0), horizontal.lines[2 * i]);
    y -= lost((tension[i] / ropeLength) * (offset?.[1] ?? 0), horizontal.lines[2 * i + 1]);
  }
  solved(rec, "H_x", x, "N", "force of all contacts along the path for the set to stay where it stands");
  solved(rec, "H_y", y, "N", "the same across the path");
  solved(rec, "H_a", limit, "N", "what friction and stops of these contacts hold at their loads");
  const words = "force sideways over what holds";
  const value = trace(rec, "used", Math.hypot(x, y) / limit, "sqrt(H_x^2 + H_y^2)/H_a", "1", words);
  constant(rec, "all", 1, "1", "all that holds", "friction");
  rec?.ends("used", "all");
  return { value, limit: 1 };
}

/** Start, stop and turns while the trains travel: the set's own mass against friction at its bunks and its ties. */
export function slipsUnderWay(ctx: SetContext): Measure[] {
  const along = limitOf(ctx.plan, "acceleration along");
  const across = limitOf(ctx.plan, "acceleration across");
  if (!along || !across) return [];
  const list = trains(ctx);
  const ties = ctx.plan.lashings.filter((l) => l.set === undefined || l.set === ctx.set.id);
  return [
    measure({
      check: "slip under way",
      subject: "set",
      kind: "",
      level: "caution",
      unit: "% of what holds",
      factor: 100,
      digits: 0,
      watched: false,
      perStep: true,
      source: `friction and ties of the plan; acceleration ${along.value} % of gravity along (${along.source}), ${across.value} % across (${across.source})`,
      chosenBy: along.chosenBy,
      cure: "ties that hold along or across, chocks, or slower starts and stops",
      ...traced(ctx, (pose, rec): Reading => {
        if (!travels(ctx, pose)) return NOT_HERE;
        const { horizontal, holds, model } = pose.solution;
        let friction = 0;
        for (const t of list) {
          const deck = deckOf(pose, t.id);
          const N = deck < 0 ? 0 : onDeck(pose, deck);
          if (N === 0) continue;
          if (t.bunkFriction === undefined)
            return { ...NOT_HERE, why: `no friction is stated for the bunks of ${t.id}` };
          friction += t.bunkFriction * N;
        }
        if (friction === 0) return NOT_HERE;
        let x = 0;
        let y = 0;
        for (let i = 0; horizontal && i < holds.length; i++) {
          x += horizontal.holds[2 * i];
          y += horizontal.holds[2 * i + 1];
        }
        let tiesAlong = 0;
        let tiesAcross = 0;
        for (const l of ties) {
          if (!pose.situation.lashed.includes(l.id)) continue;
          tiesAlong += (l.holdsAlong_kN ?? 0) * 1000;
          tiesAcross += (l.holdsAcross_kN ?? 0) * 1000;
        }
        const weight = model.mass * ctx.gravity;
        const ax = percent(rec, "a_x", along, "start or stop, part of gravity");
        const ay = percent(rec, "a_y", across, "turns and uneven ground, part of gravity");
        solved(rec, "W", weight, "N", "weight of the set");
        solved(rec, "H_x", x, "N", "force of all contacts on the set along the path");
        solved(rec, "H_y", y, "N", "force of all contacts on the set across the path");
        solved(rec, "H_f", friction, "N", "friction of the bunks at their loads");
        constant(
          rec,
          "T_x",
          tiesAlong,
          "N",
          "ties on, along",
          "lashings[].holdsAlong_kN of those that are on",
        );
        constant(
          rec,
          "T_y",
          tiesAcross,
          "N",
          "ties on, across",
          "lashings[].holdsAcross_kN of those that are on",
        );
        const inX = (Math.abs(x) + ax * weight) / (friction + tiesAlong);
        const inY = (Math.abs(y) + ay * weight) / (friction + tiesAcross);
        trace(rec, "used_x", inX, "(abs(H_x) + a_x*W)/(H_f + T_x)", "1", "used along");
        trace(rec, "used_y", inY, "(abs(H_y) + a_y*W)/(H_f + T_y)", "1", "used across");
        const value = trace(
          rec,
          "used",
          Math.max(inX, inY),
          "max(used_x, used_y)",
          "1",
          "used, the worse way",
        );
        constant(rec, "all", 1, "1", "all that holds", "friction and ties");
        rec?.ends("used", "all");
        return {
          value,
          limit: 1,
          get where() {
            const [way, a, H, T] = inX >= inY ? ["along", ax, x, tiesAlong] : ["across", ay, y, tiesAcross];
            const kN = (F: number) => (F / 1000).toFixed(0);
            return `${way}: ${kN(Math.abs(H))} kN standing and ${kN(a * weight)} kN for ${(a * 100).toFixed(1)} % of gravity, held by friction ${kN(friction)} and ties ${kN(T)} kN`;
          },
        };
      }),
    }),
  ];
}
