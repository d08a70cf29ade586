// The clearance of every pair at one pose, with its trace: the distance of two points from their coordinates.

import type { Pose, SetContext } from "../../sequence/index.ts";
import { shapeOf, sweptBodies } from "../../shape/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE } from "../measure.ts";
import { constant, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import { hangs, swings } from "./clearances.ts";
import { CLEARANCE } from "./findings.ts";
import { type Least, type Look, lookAt, newLeast, takeDistance } from "./look.ts";
import { type ClearancePair, pairsOf } from "./pairs.ts";

/** Measures of all pairs of a set, asked for pose by pose. */
export function clearances(ctx: SetContext): Measure[] {
  let last: Look | null = null;
  const at = (pose: Pose): Look => {
    if (last?.pose !== pose) last = lookAt(ctx, pose.progress, pose.situation, pose, shapeOf(ctx, pose));
    return last;
  };
  return pairsOf(ctx).map((pair) =>
    measure(
      {
        check: CLEARANCE,
        subject: pair.subject,
        kind: "",
        level: "caution",
        sense: "least",
        unit: "m",
        factor: 1,
        digits: 3,
        watched: false,
        cure: "make room, or choose another way",
        ...traced(ctx, (pose, rec) => {
          const look = at(pose);
          const { limit } = pair;
          if (limit === null || look.there[pair.a] === 0 || look.there[pair.b] === 0) return NOT_HERE;
          if (!pair.applies(pose.situation)) return { ...NOT_HERE, why: "both are meant to touch here" };
          const least = newLeast();
          takeDistance(ctx, look, pair, least);
          const [p, q] = least.points;
          const between = Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2 + (q[2] - p[2]) ** 2);
          // Of the two points as they are told: the same number but for rounding.
          least.distance = least.distance < 0 ? 0 - between : between;
          const swaying = swings(ctx, pair.a) || swings(ctx, pair.b) ? hangs(ctx, look) : 0;
          const part = (limitOf(ctx.plan, "sway allowance")?.value ?? 0) / 100;
          if (rec !== null) record(ctx, rec, pair, least, swaying, part);
          const { bodies } = sweptBodies(ctx);
          return {
            value: least.distance,
            limit: limit.value + part * swaying,
            where: `${bodies[least.bodyA].name} and ${bodies[least.bodyB].name}`,
          };
        }),
      },
      pair.limit ?? undefined,
    ),
  );
}

function record(
  ctx: SetContext,
  rec: Recorder,
  { limit }: ClearancePair,
  least: Least,
  hanging: number,
  part: number,
): void {
  const { bodies } = sweptBodies(ctx);
  const names = [bodies[least.bodyA].name, bodies[least.bodyB].name];
  const axes = ["chainage", "y", "elevation"];
  least.points.forEach((point, i) => {
    point.forEach((x, k) => {
      solved(
        rec,
        `${"xyz"[k]}_${i + 1}`,
        x,
        "m",
        `${axes[k]} of the point of ${names[i]} nearest to ${names[1 - i]}`,
      );
    });
  });
  const squares = "(x_2 - x_1)^2 + (y_2 - y_1)^2 + (z_2 - z_1)^2";
  const words = `${names[0]} to ${names[1]}`;
  if (least.distance >= 0) trace(rec, "d", least.distance, `sqrt(${squares})`, "m", words);
  else trace(rec, "d", least.distance, `0 - sqrt(${squares})`, "m", `${words}: how deep they overlap`);
  if (limit === null) return;
  constant(rec, "d_0", limit.value, "m", "least clearance", `${limit.source} (${limit.chosenBy})`);
  constant(
    rec,
    "sway",
    part,
    "1",
    "sway per length of line",
    "limit 'sway allowance', none where it is not set",
  );
  solved(rec, "h", hanging, "m", "length of the longest line while the set hangs free, else nothing");
  trace(rec, "d_a", limit.value + part * hanging, "d_0 + sway*h", "m", "least clearance with sway");
  rec.ends("d", "d_a");
}
