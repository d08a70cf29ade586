// Grade, crossfall and twist that a transporter is driven over and stands at, against what its maker allows.

import { twistOf } from "../../mechanics/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, MM, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { deckOf, makers, pathOf, trains } from "./trains.ts";

/** Steepest grade and crossfall of the path between two chainages, as tangents without sign. */
export function steepest(
  ctx: SetContext,
): (from: number, to: number) => { grade: number; crossfall: number } {
  const points = ctx.plan.site.path.points.map((p) => ({
    x: p.chainage_m,
    z: p.elevation_m,
    c: p.crossfall_pct / 100,
  }));
  const last = points.length - 1;
  return (from, to) => {
    let grade = 0;
    let crossfall = 0;
    for (let i = 0; i < last; i++) {
      const [a, b] = [points[i], points[i + 1]];
      // Beyond its ends the path runs on at the last slope.
      if ((to < a.x && i > 0) || (from > b.x && i < last - 1)) continue;
      grade = Math.max(grade, Math.abs((b.z - a.z) / (b.x - a.x)));
      for (const x of [Math.max(from, a.x), Math.min(to, b.x)]) {
        const part = Math.min(1, Math.max(0, (x - a.x) / (b.x - a.x)));
        crossfall = Math.max(crossfall, Math.abs(a.c + part * (b.c - a.c)));
      }
    }
    return { grade, crossfall };
  };
}

/** Grade and crossfall of every transporter: the path under its axle lines, and its deck, the steeper of both. */
export function transporterSlopes(ctx: SetContext): Measure[] {
  const under = steepest(ctx);
  return trains(ctx).flatMap((t) => {
    const half = ((t.lines - 1) * t.pitch_m) / 2;
    const path = pathOf(ctx, t);
    const read = (pose: Pose, across: boolean) => {
      const { situation, solution } = pose;
      const stands = situation.trains.find((one) => one.id === t.id);
      if (stands === undefined) return null;
      const centre = situation.rearEnd + stands.deckAt + stands.gone[0];
      const { grade, crossfall } = under(centre - half, centre + half);
      const ground = across ? crossfall : grade;
      const deck = deckOf(pose, t.id);
      if (deck < 0) return { ground, deck: ground };
      const turn = solution.contact.a[solution.model.modes.length + 3 * deck + (across ? 1 : 2)];
      return { ground, deck: (across ? situation.plane.crossfall : situation.plane.grade) - turn };
    };
    return (["grade", "crossfall"] as const).map((check) => {
      const across = check === "crossfall";
      const [name, allowed] = across
        ? (["allowedCrossfall_pct", t.allowedCrossfall_pct] as const)
        : (["allowedGrade_pct", t.allowedGrade_pct] as const);
      return measure(
        {
          check,
          subject: t.id,
          kind: `${t.kind} train`,
          unit: "%",
          factor: 100,
          digits: 2,
          watched: false,
          cure: "a flatter path, or the deck levelled by its groups",
          ...traced(ctx, (pose, rec): Reading => {
            const slopes = read(pose, across);
            if (slopes === null) return NOT_HERE;
            const value = Math.max(slopes.ground, Math.abs(slopes.deck));
            constant(
              rec,
              "s_path",
              slopes.ground,
              "1",
              `steepest ${check} of the path under ${t.id}`,
              "site.path.points",
            );
            solved(rec, "s_deck", slopes.deck, "1", `${check} of the deck of ${t.id}`);
            trace(rec, "s", value, "max(s_path, abs(s_deck))", "1", "the steeper of both");
            constant(rec, "s_pct", allowed, "%", `allowed ${check}`, `${path}.${name}`);
            trace(rec, "s_a", allowed / 100, "s_pct/100", "1", `allowed ${check}`);
            rec?.ends("s", "s_a");
            return {
              value,
              limit: allowed / 100,
              where: value > slopes.ground ? "of the deck" : "of the path",
            };
          }),
        },
        makers(t),
      );
    });
  });
}

/**
 * Twist of the ground under the outermost wheels of a transporter: how far one lies above or below the plane through the
 * other three. Its deck is taken as rigid, so that all of it goes into strokes and, with four groups, into loads.
 */
export function twists(ctx: SetContext): Measure[] {
  return trains(ctx)
    .filter((t) => t.allowedTwist_mm !== undefined && t.lines > 1)
    .map((t) => {
      const allowed = t.allowedTwist_mm ?? 0;
      const path = `${pathOf(ctx, t)}.allowedTwist_mm`;
      const wheels = ["1L", "1R", `${t.lines}R`, `${t.lines}L`];
      const ids = wheels.map((w) => `${t.id}:${w}`);
      return measure(
        {
          check: "twist",
          subject: t.id,
          kind: `${t.kind} train`,
          unit: "mm",
          factor: 1000,
          digits: 0,
          cure: "level the path between its crossfalls, or take the turn of crossfall over a longer way",
          ...traced(ctx, (pose, rec): Reading => {
            const ground = pose.state.ground;
            if (ground === undefined || ground[ids[0]] === undefined) return NOT_HERE;
            const [a, b, c, d] = [ground[ids[0]], ground[ids[1]], ground[ids[2]], ground[ids[3]]];
            const twist = twistOf(a, b, c, d);
            if (rec !== null) {
              [a, b, c, d].forEach((z, i) => {
                constant(
                  rec,
                  `z_${i + 1}`,
                  z,
                  "m",
                  `ground under wheel ${wheels[i]} over the plane of the bunks' tops less their height`,
                  "site.path.points and settlement",
                );
              });
              trace(
                rec,
                "twist",
                Math.abs(twist),
                "abs(z_4 - (z_1 - z_2 + z_3))",
                "m",
                `wheel ${wheels[3]} out of the plane of the others`,
                "Utah DOT 03253",
              );
              field(rec, "twist_a", allowed / 1000, "allowed twist", path, allowed, MM);
              rec.ends("twist", "twist_a");
            }
            return {
              value: Math.abs(twist),
              limit: allowed / 1000,
              get where() {
                return `wheel ${wheels[3]} ${twist >= 0 ? "above" : "below"} the plane of the other three corners`;
              },
            };
          }),
        },
        makers(t),
      );
    });
}
