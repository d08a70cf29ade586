// Room for the set in its final place: from its ends to the backwalls, from its flanges to a set that stands already.

import { camberAt, droopAt, leanOf } from "../../mechanics/index.ts";
import type { Plan, PlanSet } from "../../plan/index.ts";
import type { Pose, SetContext, Situation } from "../../sequence/index.ts";
import { missing } from "../finding.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { placeAcross } from "./landed.ts";
import { limitInMetres } from "./seatLevels.ts";
import { stillStation, strainOf } from "./temperature.ts";

/** Over this length (m) the slope of an end is taken. */
const AT_END = 0.1;

/** Depth of a girder at one of its ends, m. */
function endDepth(set: PlanSet, girder: string, end: "tail" | "nose"): number {
  const pieces = set.girders.find((g) => g.line === girder)?.pieces ?? [];
  const piece = pieces[end === "tail" ? 0 : pieces.length - 1];
  return (piece.topFlange_mm[1] + piece.web_mm[0] + piece.bottomFlange_mm[1]) / 1000;
}

/**
 * Chainage that the set's end reaches furthest toward its backwall, m, at a solved pose: the face of every girder is
 * square to its axis, which camber, bending, level and grade turn about the soffit; temperature moves the end where the
 * plan knows it.
 */
export function endReach(
  ctx: SetContext,
  pose: Pose,
  end: "tail" | "nose",
): { reach: number; girder: string } {
  const { model, set, plan } = ctx;
  const { situation, solution } = pose;
  const eps = strainOf(null, ctx, pose) ?? situation.heat.strain;
  const still = stillStation(plan, set)?.station ?? ctx.length / 2;
  let reach = end === "tail" ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  let girder = "";
  model.girders.forEach((g, i) => {
    const s = end === "tail" ? g.from : g.to;
    const inside = end === "tail" ? s + AT_END : s - AT_END;
    const level = (x: number) => droopAt(solution, i, x) + camberAt(solution.model, i, x);
    const slope = situation.plane.grade + (level(inside) - level(s)) / (inside - s);
    const soffit = situation.rearEnd + s + eps * (s - still);
    const top = soffit - slope * endDepth(set, g.name, end);
    const furthest = end === "tail" ? Math.min(soffit, top) : Math.max(soffit, top);
    if (end === "tail" ? furthest < reach : furthest > reach) {
      reach = furthest;
      girder = g.name;
    }
  });
  return { reach, girder };
}

/** Gaps at both backwalls from where the set stands over its seats: while it comes down and when it has landed. */
export function backwallGaps(ctx: SetContext): Measure[] {
  const { site } = ctx.plan;
  const limit = limitOf(ctx.plan, "backwall gap", true);
  if (limit === null) return [];
  return (["near", "far"] as const).flatMap((which) => {
    const wall = which === "near" ? site.nearBackwall_m : site.farBackwall_m;
    if (wall === undefined) return [];
    return [
      measure(
        {
          check: "backwall gap",
          subject: `${which} backwall`,
          kind: `${which} bearings`,
          level: "caution",
          sense: "least",
          unit: "mm",
          factor: 1000,
          watched: false,
          cure: "tag lines and guides at this end, another temperature, or a shorter end of the girders",
          ...traced(ctx, (pose, rec): Reading => {
            if (!pose.situation.overSeats || pose.solution.status !== "solved") return NOT_HERE;
            const { reach, girder } = endReach(ctx, pose, which === "near" ? "tail" : "nose");
            solved(rec, "x_e", reach, "m", `furthest point of the ${which} end, girder ${girder}`);
            solved(rec, "x_w", wall, "m", `face of the ${which} backwall in the plan`);
            const gap = which === "near" ? reach - wall : wall - reach;
            trace(rec, "off", gap, which === "near" ? "x_e - x_w" : "x_w - x_e", "m", "gap");
            return { value: gap, limit: limitInMetres(rec, limit), where: `girder ${girder}` };
          }),
        },
        limit,
      ),
    ];
  });
}

/** Right and left edges of a set's flanges, m from its axis, over all pieces; sweep of its girders counted where known. */
export function edgesOf(set: PlanSet): { right: number; left: number; depth: number } {
  let [right, left, depth] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (const g of set.girders) {
    const sweep = (g.sweep_mm ?? 0) / 1000;
    for (const p of g.pieces) {
      const half = Math.max(p.topFlange_mm[0], p.bottomFlange_mm[0]) / 2000;
      right = Math.min(right, g.y_m - half + Math.min(0, sweep));
      left = Math.max(left, g.y_m + half + Math.max(0, sweep));
      depth = Math.max(depth, (p.topFlange_mm[1] + p.web_mm[0] + p.bottomFlange_mm[1]) / 1000);
    }
  }
  return { right, left, depth };
}

/** Sets of the plan before this one: they stand in their final place. */
export function earlierSets(plan: Plan, set: PlanSet): PlanSet[] {
  return plan.sets.slice(0, plan.sets.indexOf(set));
}

/** Gap in plan between a set at its place and one that stands, m; the lean of the first moves its edges. */
function gapBetween(set: PlanSet, situation: Situation, lean: number, other: PlanSet): number {
  const mine = edgesOf(set);
  const its = edgesOf(other);
  const at = placeAcross(other);
  // Left up moves what is above to the right.
  const tilt = -lean * mine.depth;
  const left = situation.across + mine.left + Math.max(0, tilt);
  const right = situation.across + mine.right + Math.min(0, tilt);
  return Math.max(right - (at + its.left), at + its.right - left);
}

/** Gaps to every set that stands already, from where this one stands over its seats. */
export function gapsBetweenSets(ctx: SetContext): Measure[] {
  const { plan, set } = ctx;
  const limit = limitOf(plan, "gap between sets", true);
  if (limit === null) return [];
  return earlierSets(plan, set).map((other) =>
    measure(
      {
        check: "gap between sets",
        subject: other.id,
        kind: "",
        level: "caution",
        sense: "least",
        unit: "mm",
        factor: 1000,
        watched: false,
        cure: "come down further to the side and bring it over at the last height, or guides between the flanges",
        ...traced(ctx, (pose, rec): Reading => {
          if (!pose.situation.overSeats || pose.solution.status !== "solved") return NOT_HERE;
          const lean = leanOf(pose.solution) - pose.situation.plane.crossfall;
          const gap = gapBetween(set, pose.situation, lean, other);
          solved(
            rec,
            "off",
            gap,
            "m",
            `gap between the flanges of ${set.id} and ${other.id}, lean and sweep counted`,
          );
          return { value: gap, limit: limitInMetres(rec, limit) };
        }),
      },
      limit,
    ),
  );
}

/** Backwalls that the plan does not place. */
export function gapsOpen(plan: Plan): Finding[] {
  if (plan.sets.length === 0 || plan.site.bearings.length === 0) return [];
  return (["nearBackwall_m", "farBackwall_m"] as const).flatMap((field) =>
    plan.site[field] === undefined
      ? [
          missing(
            "",
            `site.${field}`,
            "blank: the gap between the end of a set and this backwall is not judged",
          ),
        ]
      : [],
  );
}
