// Stroke: how much of their travel the cylinders use, by cause, and what settlement and tyres may still ask of it.
//
// The deck is straight and the path is not. In a group the mean of the strokes is what its oil was commanded to; about
// that mean a cylinder reaches for where its wheel stands: by the slope of the deck against the path's, along and
// across, and by the path's own bends between. Source: geometry; the parts add up to the stroke of the statics.

import { spreadOf, type Transporter } from "../../plan/index.ts";
import { type Pose, pathLevel, type SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE } from "../measure.ts";
import { constant, field, MM, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { percent } from "./named.ts";
import { deckOf, pathOf, trains } from "./trains.ts";

/** Stroke of one cylinder by cause, m, out positive: the parts add up to the stroke. */
export interface StrokeCauses {
  /** Commanded mean lift of its group. */
  lift: number;
  /** Deck steeper than the path under the whole transporter. */
  slope: number;
  /** Path off the straight line between its first and its last axle line: crests and hollows. */
  curve: number;
  /** Deck leaning otherwise than the path does there. */
  crossfall: number;
  /** What is left: other cylinders of the group at the end of their travel. */
  rest: number;
  /** Slope of the deck and of the path, along and across, and how far the wheel is from the middle of its group, m. */
  slopes: { deck: number; path: number; deckAcross: number };
  off: [number, number];
}

/** Why a cylinder of a pose has the stroke that it has. */
export function strokeCauses(ctx: SetContext, pose: Pose, cylinder: number): StrokeCauses {
  const { solution, situation } = pose;
  const { layout, stroke, contact, model } = solution;
  const c = layout.cylinders[cylinder];
  const train = layout.trains[c.deck];
  const group = c.group < 0 ? null : layout.groups[c.group];
  const ids = group === null ? [cylinder] : group.cylinders;
  const [lean, level] = [1, 2].map((k) => contact.a[model.modes.length + 3 * c.deck + k]);
  const centre = situation.rearEnd + train.at;
  const half = ((train.lines - 1) * train.pitch) / 2;
  const ahead = pathLevel(ctx.plan, centre + half).elevation;
  const behind = pathLevel(ctx.plan, centre - half).elevation;
  const path = half > 0 ? (ahead - behind) / (2 * half) : 0;
  const deck = situation.plane.grade - level;
  const deckAcross = situation.plane.crossfall - lean;
  const here = pathLevel(ctx.plan, centre + c.x);
  let x = 0;
  let y = 0;
  let elevation = 0;
  let fall = 0;
  for (const i of ids) {
    const one = layout.cylinders[i];
    const at = pathLevel(ctx.plan, centre + one.x);
    x += one.x / ids.length;
    y += one.y / ids.length;
    elevation += at.elevation / ids.length;
    fall += (at.crossfall * one.y) / ids.length;
  }
  const off: [number, number] = [c.x - x, c.y - y];
  const lift = group?.lift ?? 0;
  const slope = (deck - path) * off[0];
  const curve = path * off[0] - (here.elevation - elevation);
  const crossfall = here.crossfall * c.y - fall - deckAcross * off[1];
  const rest = stroke[cylinder] - (lift + slope + curve + crossfall);
  return { lift, slope, curve, crossfall, rest, slopes: { deck, path, deckAcross }, off };
}

/** The causes in words, greatest first, in mm; those below half a millimetre are left out. */
export function causeWords(c: StrokeCauses): string {
  const parts: [string, number][] = [
    ["lift of its group", c.lift],
    ["grade", c.slope],
    ["crests and hollows", c.curve],
    ["crossfall", c.crossfall],
    ["cylinders at their ends", c.rest],
  ];
  return parts
    .filter(([, m]) => Math.abs(m) >= 0.0005)
    .sort((a, b) => Math.abs(b[1]) - Math.abs(a[1]))
    .map(([what, m]) => `${what} ${m > 0 ? "+" : "-"}${Math.abs(m * 1000).toFixed(0)}`)
    .join(", ");
}

/** The cylinder of a deck that uses most of its travel, with the part of it used; -1 where there is none. */
function furthest(pose: Pose, deck: number, up: number, down: number): { at: number; part: number } {
  const { layout, stroke } = pose.solution;
  let at = -1;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < stroke.length; i++) {
    if (layout.cylinders[i].deck !== deck) continue;
    const part = stroke[i] >= 0 ? stroke[i] / up : -stroke[i] / down;
    if (part > most) {
      most = part;
      at = i;
    }
  }
  return { at, part: most };
}

export function strokes(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "stroke use");
  if (!limit) return [];
  return trains(ctx).map((t) => {
    const [up, down] = [t.strokeUp_mm / 1000, t.strokeDown_mm / 1000];
    return measure(
      {
        check: "stroke",
        subject: t.id,
        kind: `${t.kind} train`,
        unit: "% of stroke",
        factor: 100,
        digits: 0,
        strip: true,
        cure: "change the packing, or level the transporter before this step",
        ...traced(ctx, (pose, rec) => {
          const { at, part } = furthest(pose, deckOf(pose, t.id), up, down);
          if (at < 0) return NOT_HERE;
          const { id } = pose.solution.layout.cylinders[at];
          const reach = pose.solution.stroke[at];
          if (rec !== null) recordStroke(ctx, rec, pose, t, at, part);
          percent(rec, "use_a", limit, "allowed part of the stroke");
          rec?.ends("part", "use_a");
          return {
            value: part,
            limit: limit.value / 100,
            get where() {
              const why = causeWords(strokeCauses(ctx, pose, at));
              return `${id} ${reach >= 0 ? "out" : "in"} ${Math.abs(reach * 1000).toFixed(0)} mm${why ? `: ${why}` : ""}`;
            },
          };
        }),
      },
      limit,
    );
  });
}

/** Stroke of a cylinder by cause, and the part of its travel that it is. */
function recordStroke(
  ctx: SetContext,
  rec: Recorder,
  pose: Pose,
  t: Transporter,
  cylinder: number,
  part: number,
): void {
  const c = strokeCauses(ctx, pose, cylinder);
  const { id } = pose.solution.layout.cylinders[cylinder];
  const path = pathOf(ctx, t);
  const points = "site.path.points under the transporter";
  solved(rec, "lift", c.lift, "m", `commanded mean lift of the group of ${id}`);
  solved(rec, "s_deck", c.slopes.deck, "1", "slope of the deck along");
  constant(
    rec,
    "s_path",
    c.slopes.path,
    "1",
    "slope of the path from the first to the last axle line",
    points,
  );
  constant(rec, "x_off", c.off[0], "m", `${id} ahead of the middle of its group`, `${path}.pitch_m, .groups`);
  trace(rec, "z_slope", c.slope, "(s_deck - s_path)*x_off", "m", "stroke for the grade");
  constant(rec, "z_curve", c.curve, "m", "stroke for crests and hollows of the path", points);
  solved(rec, "z_cross", c.crossfall, "m", "stroke for the crossfall: deck against path across");
  solved(rec, "z_rest", c.rest, "m", "stroke that cylinders at the end of their travel leave");
  const stroke = pose.solution.stroke[cylinder];
  trace(
    rec,
    "z",
    stroke,
    "lift + z_slope + z_curve + z_cross + z_rest",
    "m",
    `stroke of ${id}, out positive`,
  );
  field(rec, "up", t.strokeUp_mm / 1000, "travel out", `${path}.strokeUp_mm`, t.strokeUp_mm, MM);
  field(rec, "down", t.strokeDown_mm / 1000, "travel in", `${path}.strokeDown_mm`, t.strokeDown_mm, MM);
  trace(rec, "part", part, "z >= 0 ? z/up : -z/down", "1", "part of its travel used");
}

/** Stroke with what settling ground and tyres may still ask for, against all of the travel, either way. */
export function strokeBudgets(ctx: SetContext): Measure[] {
  const { spread, assumed } = spreadOf(ctx.plan);
  const settles = spread.settlement_mm / 1000;
  const started = assumed.includes("settlement_mm");
  return trains(ctx).map((t) => {
    const path = pathOf(ctx, t);
    const squash = t.tyreSquash_mm;
    const [up, down] = [t.strokeUp_mm / 1000, t.strokeDown_mm / 1000];
    const more = settles + (squash ?? 0) / 1000;
    return measure({
      check: "stroke budget",
      subject: t.id,
      kind: `${t.kind} train`,
      level: "caution",
      unit: "% of stroke",
      factor: 100,
      digits: 0,
      watched: false,
      source:
        "travel of the cylinders in the plan; settlement of the spread and tyre squash on top of the stroke",
      chosenBy: "plan",
      cure: "change the packing, or level the transporter before this step, so that both ways have room left",
      ...traced(ctx, (pose, rec) => {
        const deck = deckOf(pose, t.id);
        const { layout, stroke } = pose.solution;
        let most = Number.NEGATIVE_INFINITY;
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i < stroke.length; i++) {
          if (layout.cylinders[i].deck !== deck) continue;
          if (stroke[i] > most) most = stroke[i];
          if (stroke[i] < least) least = stroke[i];
        }
        if (!(most >= least)) return NOT_HERE;
        const value = Math.max((most + more) / up, (settles - least) / down);
        if (rec !== null) {
          solved(rec, "z_out", most, "m", "greatest stroke, out positive");
          solved(rec, "z_in", least, "m", "least stroke, out positive");
          if (started)
            constant(
              rec,
              "settles",
              settles,
              "m",
              "settlement",
              "spread.settlement_mm is blank: its starter value",
            );
          else field(rec, "settles", settles, "settlement", "spread.settlement_mm", spread.settlement_mm, MM);
          const squashed = `${path}.tyreSquash_mm`;
          if (squash === undefined)
            constant(
              rec,
              "squash",
              0,
              "m",
              "tyre squash, which the plan does not state",
              `${squashed} is blank: nothing stands in`,
            );
          else field(rec, "squash", squash / 1000, "tyre squash", squashed, squash, MM);
          field(rec, "up", up, "travel out", `${path}.strokeUp_mm`, t.strokeUp_mm, MM);
          field(rec, "down", down, "travel in", `${path}.strokeDown_mm`, t.strokeDown_mm, MM);
          const all = "max((z_out + settles + squash)/up, (settles - z_in)/down)";
          trace(rec, "budget", value, all, "1", "part of the travel asked for, the worse way");
          constant(rec, "all", 1, "1", "all of the travel", "geometry");
          rec.ends("budget", "all");
        }
        return {
          value,
          limit: 1,
          get where() {
            const mm = (m: number) => (m * 1000).toFixed(0);
            const tyres = squash === undefined ? "tyre squash not stated" : `tyres ${squash}`;
            return `left ${mm(up - most - more)} mm out and ${mm(down + least - settles)} mm in, after settlement ${mm(settles)} and ${tyres} mm`;
          },
        };
      }),
    });
  });
}
