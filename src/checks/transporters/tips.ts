// Tipping of each transporter and of all together: the angle, the way and the load that are left.

import { AIR, BARE_GIRDERS } from "../../mechanics/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { leanStiffnessOf } from "../lean.ts";
import { type Limit, limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { overturningOf } from "../tilt.ts";
import { constant, field, NUMBER, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { percent } from "./named.ts";
import { bodiesOf, type Motion, motionOf, type Standing, standingOf } from "./standing.ts";

const DEGREES = 180 / Math.PI;

/** Tip angle, tip distance and tip load of every body of a set on its transporters. */
export function tips(ctx: SetContext): Measure[] {
  const motion = motionOf(ctx);
  const least = limitOf(ctx.plan, "tip angle", true);
  const share = limitOf(ctx.plan, "tip load", true);
  if (!motion || !least || !share || ctx.model.lean < 0) return [];
  return [...bodiesOf(ctx)].flatMap(([subject, body]) => {
    const known = new WeakMap<Pose, Standing | null>();
    const at = (pose: Pose): Standing | null => {
      let s = known.get(pose);
      if (s === undefined) {
        s = standingOf(ctx, pose, body, motion);
        known.set(pose, s);
      }
      return s;
    };
    const kind = body.whole ? "" : `${body.list[0].t.kind} train`;
    const common = { subject, kind, sense: "least" as const, watched: false };
    const read = (of: (s: Standing, pose: Pose, rec: Recorder | null) => Reading) =>
      traced(ctx, (pose, rec) => {
        const s = at(pose);
        if (s === null) return NOT_HERE;
        if (rec !== null) recordDistance(ctx, rec, pose, s, motion);
        const reading = of(s, pose, rec);
        return {
          value: reading.value,
          limit: reading.limit,
          get where() {
            return standingWords(s, least.value);
          },
        };
      });
    return [
      measure(
        {
          ...common,
          check: "tip angle",
          level: "caution",
          unit: "deg",
          factor: DEGREES,
          digits: 1,
          cure: "groups further apart, a lower stack on the bunks, the load nearer the middle of its groups, or less wind",
          ...read((s, _pose, rec) => {
            const value = trace(
              rec,
              "angle",
              s.margin.angle,
              "atan(d/h)",
              "rad",
              "further tilt that turns it over",
            );
            if (rec !== null)
              constant(
                rec,
                "least_deg",
                least.value,
                "deg",
                "least angle",
                `${least.source} (${least.chosenBy})`,
              );
            const limit = trace(
              rec,
              "least",
              least.value / DEGREES,
              "least_deg*pi/180",
              "rad",
              "least angle",
            );
            rec?.ends("angle", "least");
            return { value, limit };
          }),
        },
        least,
      ),
      measure({
        ...common,
        check: "tip distance",
        unit: "m",
        factor: 1,
        digits: 3,
        source: "statics: a load outside the lines between the groups that carry it turns over",
        chosenBy: "statics",
        cure: "groups further apart, the load nearer the middle of its groups, less wind, or a hook that steadies the set",
        ...read((s, _pose, rec) => {
          constant(rec, "none", 0, "m", "the line itself", "statics");
          rec?.ends("d", "none");
          return { value: s.margin.distance, limit: 0 };
        }),
      }),
      measure(
        {
          ...common,
          check: "tip load",
          level: "caution",
          digits: 0,
          cure: "the load nearer the middle of its groups, or load added at the group that is nearly free",
          ...read((s, _pose, rec) => {
            const { load, distance } = s.margin;
            const depth = (s.onBase.force * distance) / load;
            solved(rec, "depth", depth, "m", `distance of the centroid of ${s.opposite} from the line`);
            const value = trace(rec, "Q", load, "F*d/depth", "N", `load left at ${s.opposite}`);
            const part = percent(rec, "q_a", share, "least part of an equal share");
            solved(rec, "Q_equal", s.share, "N", `share of ${s.opposite} by its wheels`);
            const limit = trace(rec, "Q_a", part * s.share, "q_a*Q_equal", "N", "least load");
            rec?.ends("Q", "Q_a");
            return { value, limit };
          }),
        },
        share,
      ),
    ];
  });
}

/** Where it tips, what is left of the way and the load, what takes of it, and what to add, in one line. */
export function standingWords(s: Standing, leastDegrees: number): string {
  const { asides: a, margin: m, nx, ny } = s;
  const mm = (metres: number) => (metres * 1000).toFixed(0);
  const parts = [`lean and level ${mm(-(a.levelled * nx + a.leaned * ny))}`];
  if (a.wind > 0) parts.push(`wind of ${a.speed} m/s ${mm(a.wind * Math.abs(ny))}`);
  else if (!a.stated) parts.push("no wind: the step states no wind limit");
  if (a.along + a.across > 0)
    parts.push(`start, stop and turns ${mm(a.along * Math.abs(nx) + a.across * Math.abs(ny))}`);
  const add = s.toReach(leastDegrees / DEGREES);
  const added =
    add === null
      ? `no load at ${s.opposite} makes it ${leastDegrees} deg`
      : add > 0
        ? `${(add / 1000).toFixed(0)} kN more at ${s.opposite} would make it ${leastDegrees} deg`
        : "";
  return [
    `about ${s.edge}: ${(m.angle * DEGREES).toFixed(1)} deg, ${mm(m.distance)} mm left of ${mm(s.plain)} (${parts.join(", ")}; tilts grow ${a.growth.toFixed(2)} times), ${(m.load / 1000).toFixed(0)} kN left at ${s.opposite}`,
    ...(added ? [added] : []),
  ].join("; ");
}

/** The distance that is left, and the height that a tilt works on, from what the statics gave. */
function recordDistance(ctx: SetContext, rec: Recorder, pose: Pose, s: Standing, motion: Motion): void {
  const { asides: a, onBase: p, margin: m } = s;
  const step = ctx.set.steps[pose.step];
  const set = ctx.plan.sets.indexOf(ctx.set);
  solved(rec, "F", p.force, "N", "force of its groups on the ground");
  solved(rec, "d_0", s.plain, "m", `distance of where it acts from the line ${s.edge}, by the group forces`);
  solved(rec, "n_x", s.nx, "1", "part along of the direction from that line to the inside");
  solved(rec, "n_y", s.ny, "1", "part across of it");
  solved(rec, "sum_Wh", overturningOf(pose.solution) ?? 0, "N m", "weights on trains times their heights");
  solved(rec, "k_lean", leanStiffnessOf(pose), "N m", "stiffness of all that holds lean, per radian");
  trace(rec, "growth", a.growth, "1/(1 - sum_Wh/k_lean)", "1", "tilt across over the first tilt");
  solved(rec, "h_along", p.heightAlong, "m", "height that a tilt along works on");
  solved(
    rec,
    "h_rigid",
    p.heightAcross / a.growth,
    "m",
    "height that a tilt across works on, suspension rigid",
  );
  trace(rec, "h_across", p.heightAcross, "h_rigid*growth", "m", "the same on its suspension");
  solved(rec, "e_level", a.levelled, "m", "what level of decks and set carries forward");
  solved(
    rec,
    "e_first",
    a.leaned / a.growth,
    "m",
    "what lean of decks and set carries to the left, at first",
  );
  trace(rec, "e_lean", a.leaned, "e_first*growth", "m", "the same, grown on the suspension");
  if (a.wind > 0 && step?.windLimit_m_per_s !== undefined) {
    const path = `sets[${set}].steps[${pose.step}].windLimit_m_per_s`;
    field(rec, "V", a.speed, "wind limit of the step", path, a.speed, { ...NUMBER, unit: "m/s", si: "m/s" });
    constant(rec, "c_air", AIR, "kg/m3", "pressure over the square of the speed", "ASCE 7: 0.613 in SI");
    constant(
      rec,
      "C_f",
      BARE_GIRDERS,
      "1",
      "force coefficient of bare girders on their depth",
      "from memory",
    );
    solved(rec, "A_h", a.blown, "m3", "area of the windward girder times its height over the ground");
    solved(
      rec,
      "part",
      a.windShare,
      "1",
      "part of the set's weight, and so of the wind on it, that is carried",
    );
    const wind = "c_air*V^2*C_f*A_h*part/F*growth";
    trace(rec, "e_wind", a.wind, wind, "m", "what wind carries aside");
  } else
    constant(
      rec,
      "e_wind",
      0,
      "m",
      "what wind carries aside",
      a.stated ? "the pose's own wind, or a limit of 0" : "the step states no wind limit: calm",
    );
  const still = "0 while nothing travels";
  if (a.along > 0) {
    const factor = (symbol: string, limit: Limit, words: string) => percent(rec, symbol, limit, words);
    factor("a_x", motion.along, "start or stop, part of gravity");
    factor("a_y", motion.across, "turns and uneven ground, part of gravity");
    trace(rec, "e_along", a.along, "a_x*h_along", "m", "what starting and stopping carries along");
    trace(rec, "e_across", a.across, "a_y*h_across", "m", "what turning carries across");
  } else {
    constant(rec, "e_along", 0, "m", "what starting and stopping carries along", still);
    constant(rec, "e_across", 0, "m", "what turning carries across", still);
  }
  trace(
    rec,
    "d",
    m.distance,
    "d_0 + e_level*n_x + e_lean*n_y - e_along*abs(n_x) - (e_wind + e_across)*abs(n_y)",
    "m",
    "distance that is left",
  );
  trace(
    rec,
    "h",
    m.height,
    "h_along*n_x^2 + h_across*n_y^2",
    "m",
    "height that a tilt about the line works on",
  );
}
