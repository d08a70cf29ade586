// The set's own shape under way, against its owner's limits: twist of its four bearing points, and changes of its slopes.
//
// Utah DOT, section 03253: twist is how far one corner lies out of the plane through the other three; changes of the
// longitudinal and of the transverse slope are measured from the state just before first lift, here the first pose.

import { camberAt, droopAt, slopeAcross, slopeAlong, twistOf } from "../../mechanics/index.ts";
import { type Pose, planeLevel, type SetContext, solvePose, startSituation } from "../../sequence/index.ts";
import { type Limit, limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { ownersLimits } from "./limits.ts";

type Corners = [number, number, number, number];

/** Stations of the points that are watched: where the set bears at the end, else its ends, m. */
const pointsOf = (ctx: SetContext) => ctx.set.soleStations_m ?? { near: 0, far: ctx.length };

/** Elevations of the soffit at those points of the outermost girders: rear left, rear right, front right, front left. */
export function cornersOf(ctx: SetContext, { solution, situation }: Pose): Corners {
  const { near, far } = pointsOf(ctx);
  const { girders } = ctx.model;
  let left = 0;
  let right = 0;
  girders.forEach((g, i) => {
    if (g.y > girders[left].y) left = i;
    if (g.y < girders[right].y) right = i;
  });
  const level = (g: number, s: number) => {
    const { from, to, y } = girders[g];
    const x = Math.min(Math.max(s, from), to);
    return planeLevel(situation, x, y) + droopAt(solution, g, x) + camberAt(ctx.model, g, x);
  };
  return [level(left, near), level(right, near), level(right, far), level(left, far)];
}

/** Twist and changes of slope of a set of two girders or more, each where its owner set a limit. */
export function setShape(ctx: SetContext): Measure[] {
  const ys = ctx.model.girders.map((g) => g.y);
  const width = Math.max(...ys) - Math.min(...ys);
  const length = pointsOf(ctx).far - pointsOf(ctx).near;
  if (!(width > 0) || !(length > 0)) return [];
  let first: Corners | null = null;
  const start = (): Corners | null => {
    if (first === null) {
      const pose = solvePose(ctx, startSituation(ctx), 0, 0);
      if (pose.solution.status === "solved") first = cornersOf(ctx, pose);
    }
    return first;
  };
  const known = new WeakMap<Pose, Corners>();
  const corners = (pose: Pose): Corners => {
    const found = known.get(pose) ?? cornersOf(ctx, pose);
    known.set(pose, found);
    return found;
  };
  const made = (
    check: (typeof ownersLimits)[number],
    unit: string,
    of: (limit: Limit) => Pick<Measure, "factor" | "digits" | "cure" | "read" | "trace">,
  ): Measure[] => {
    const limit = limitOf(ctx.plan, check);
    if (!limit) return [];
    const part = { check, subject: "set", kind: "", level: "caution" as const, unit, watched: false };
    return [measure({ ...part, ...of(limit) }, limit)];
  };
  const slopes = (
    words: string,
    of: (levels: Corners) => number,
    span: number,
    formula: (z: string) => string,
    limit: Limit,
  ) => ({
    factor: 100,
    digits: 2,
    cure: "level the groups or hooks back towards the slope that the set had at first",
    ...traced(ctx, (pose, rec): Reading => {
      const begin = start();
      if (begin === null) return NOT_HERE;
      const now = corners(pose);
      if (rec !== null) {
        names.forEach((name, i) => {
          solved(rec, `z_${i + 1}`, now[i], "m", `elevation of the soffit ${name}`);
          solved(rec, `a_${i + 1}`, begin[i], "m", `the same before first lift, ${name}`);
        });
        constant(rec, "D", span, "m", "distance of the points", "sets[].soleStations_m or girders[].y_m");
        constant(rec, "s_pct", limit.value, "%", `allowed ${words}`, `${limit.source} (${limit.chosenBy})`);
      }
      trace(rec, "s_now", of(now), formula("z"), "1", "slope now");
      trace(rec, "s_first", of(begin), formula("a"), "1", "slope before first lift");
      const value = trace(rec, "s", Math.abs(of(now) - of(begin)), "abs(s_now - s_first)", "1", words);
      trace(rec, "s_a", limit.value / 100, "s_pct/100", "1", `allowed ${words}`);
      rec?.ends("s", "s_a");
      return {
        value,
        limit: limit.value / 100,
        where: `${(of(now) * 100).toFixed(2)} % now, ${(of(begin) * 100).toFixed(2)} % before first lift`,
      };
    }),
  });
  return [
    ...made("set twist", "mm", (limit) => ({
      factor: 1000,
      digits: 0,
      cure: "level the groups or hooks until all four bearing points lie in one plane",
      ...traced(ctx, (pose, rec): Reading => {
        const z = corners(pose);
        const twist = twistOf(...z);
        if (rec !== null) {
          names.forEach((name, i) => {
            solved(rec, `z_${i + 1}`, z[i], "m", `elevation of the soffit ${name}`);
          });
          constant(rec, "mm", limit.value, "mm", "allowed twist", `${limit.source} (${limit.chosenBy})`);
        }
        const value = trace(
          rec,
          "twist",
          Math.abs(twist),
          "abs(z_4 - (z_1 - z_2 + z_3))",
          "m",
          "twist",
          "Utah DOT 03253",
        );
        trace(rec, "twist_a", limit.value / 1000, "mm/1000", "m", "allowed twist");
        rec?.ends("twist", "twist_a");
        return {
          value,
          limit: limit.value / 1000,
          where: `${names[3]} ${twist >= 0 ? "above" : "below"} the plane of the other three`,
        };
      }),
    })),
    ...made("change of slope along", "%", (limit) =>
      slopes(
        "change of the longitudinal slope",
        (z) => slopeAlong(z, length),
        length,
        (z) => `(${z}_3 + ${z}_4 - ${z}_1 - ${z}_2)/(2*D)`,
        limit,
      ),
    ),
    ...made("change of slope across", "%", (limit) =>
      slopes(
        "change of the transverse slope",
        (z) => slopeAcross(z, width),
        width,
        (z) => `(${z}_2 + ${z}_3 - ${z}_1 - ${z}_4)/(2*D)`,
        limit,
      ),
    ),
  ];
}

const names = ["rear left", "rear right", "front right", "front left"];
