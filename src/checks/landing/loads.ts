// What the bearings of a set that stands over its seats carry: their parts of their line, and what pushes them sideways.

import { bearingName, bearingsOf, type Plan } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { notSet } from "../finding.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, KN, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { landedAsDesigned } from "./landed.ts";

/** Parts of the weight below which a support counts as free. */
const CARRIES = 1e-4;

/** Whether the set lies on its bearings and on nothing else. */
export function landed(ctx: SetContext, pose: Pose): boolean {
  if (!pose.situation.overSeats || pose.solution.status !== "solved") return false;
  const least = CARRIES * ctx.model.mass * ctx.gravity;
  let bearings = 0;
  for (const [i, s] of ctx.supports.entries()) {
    if (!s.band || !(pose.shares[i] > least)) continue;
    if (s.what !== "bearing") return false;
    bearings++;
  }
  return bearings > 0;
}

/**
 * The greatest deviation of a part from the part meant, as a fraction of that; of one meant to carry nothing, its part
 * itself. `at` is -1 where the bearings carry nothing.
 */
export function worstShare(
  forces: readonly number[],
  meant: readonly number[],
): { off: number; at: number; part: number; meantPart: number } {
  const sum = forces.reduce((a, b) => a + b, 0);
  const sumMeant = meant.reduce((a, b) => a + b, 0);
  let worst = { off: -1, at: -1, part: 0, meantPart: 0 };
  forces.forEach((F, at) => {
    const [part, meantPart] = [F / sum, meant[at] / sumMeant];
    const off = meantPart > 0 ? Math.abs(part - meantPart) / meantPart : part;
    if (off > worst.off) worst = { off, at, part, meantPart };
  });
  return worst;
}

/** Parts of the bearings of one line against those on the designed seats, when the set lies on them alone. */
export function bearingShares(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "bearing share");
  if (limit === null) return [];
  const all = bearingsOf(ctx.plan, ctx.set);
  return (["near", "far"] as const).flatMap((line) => {
    const mine = all.filter((b) => b.line === line);
    if (mine.length < 2) return [];
    const columns = mine.map((b) => ctx.supportIndex.get(`bearing ${bearingName(b)}`) ?? -1);
    return [
      measure(
        {
          check: "bearing share",
          subject: `${line} bearings`,
          kind: `${line} bearings`,
          level: "caution",
          unit: "%",
          factor: 100,
          watched: false,
          cure: "shims below the bearing that carries too little, before the hooks let go",
          ...traced(ctx, (pose, rec): Reading => {
            const meant = landedAsDesigned(ctx);
            if (meant === null || !landed(ctx, pose)) return NOT_HERE;
            const meantForces = mine.map((b) => meant.forces[meant.bearings.indexOf(b)]);
            const worst = worstShare(
              columns.map((c) => pose.forces[c]),
              meantForces,
            );
            if (worst.at < 0) return NOT_HERE;
            const name = bearingName(mine[worst.at]);
            recordShare(rec, worst, name, limit);
            return { value: worst.off, limit: limit.value / 100, where: `at ${name}` };
          }),
        },
        limit,
      ),
    ];
  });
}

function recordShare(
  rec: Recorder | null,
  worst: ReturnType<typeof worstShare>,
  name: string,
  limit: { value: number; source: string; chosenBy: string },
): void {
  solved(rec, "p", worst.part, "1", `part of its line that bearing ${name} carries`);
  solved(
    rec,
    "p_d",
    worst.meantPart,
    "1",
    `part of its line that bearing ${name} carries on the designed seats`,
  );
  trace(rec, "off", worst.off, "p_d > 0 ? abs(p - p_d)/p_d : p", "1", "off the part meant");
  constant(rec, "allowed", limit.value / 100, "1", "allowed", `${limit.source} (${limit.chosenBy})`);
  rec?.ends("off", "allowed");
}

/**
 * Sideways force on bearings that hold along or across, from line lean, grade, crossfall and friction elsewhere. A bearing
 * at its limit slips and holds no more, so that a part of the limit is what must not be passed.
 */
export function bearingSideForces(ctx: SetContext): Measure[] {
  const use = limitOf(ctx.plan, "bearing side use");
  if (use === null) return [];
  return bearingsOf(ctx.plan, ctx.set).flatMap((b) => {
    const { sideLimit_kN } = b;
    if (b.holds === "free" || sideLimit_kN === undefined) return [];
    const name = bearingName(b);
    const path = `site.bearings[${ctx.plan.site.bearings.indexOf(b)}].sideLimit_kN`;
    const allowed = (use.value / 100) * (sideLimit_kN * 1000);
    return [
      measure(
        {
          check: "bearing side force",
          subject: name,
          kind: `${b.line} bearings`,
          unit: "kN",
          factor: 1e-3,
          digits: 1,
          watched: false,
          cure: "plumb the lines before more load comes on, land this bearing last, or block the set to the seat",
          ...traced(ctx, (pose, rec): Reading => {
            const { horizontal, holds } = pose.solution;
            const i = holds.findIndex((h) => h.name === `bearing ${name}`);
            if (!pose.situation.overSeats || horizontal === null || i < 0) return NOT_HERE;
            const along = solved(rec, "H_x", horizontal.holds[2 * i], "N", `force of bearing ${name} along`);
            const across = solved(
              rec,
              "H_y",
              horizontal.holds[2 * i + 1],
              "N",
              `force of bearing ${name} across`,
            );
            const size = Math.sqrt(along ** 2 + across ** 2);
            trace(rec, "H", size, "sqrt(H_x^2 + H_y^2)", "N", "sideways force");
            constant(rec, "u", use.value / 100, "1", "part of the limit", `${use.source} (${use.chosenBy})`);
            field(rec, "H_l", sideLimit_kN * 1000, "limit sideways", path, sideLimit_kN, KN);
            trace(rec, "H_a", allowed, "u*H_l", "N", "allowed sideways");
            rec?.ends("H", "H_a");
            return {
              value: size,
              limit: allowed,
              where: `${(along / 1000).toFixed(1)} kN along, ${(across / 1000).toFixed(1)} kN across`,
            };
          }),
        },
        { source: `sideways limit of the bearing in the plan; ${use.source}`, chosenBy: use.chosenBy },
      ),
    ];
  });
}

/** Bearings that hold sideways without a stated limit. */
export function loadsOpen(plan: Plan): Finding[] {
  const bare = plan.site.bearings.filter((b) => b.holds !== "free" && b.sideLimit_kN === undefined);
  if (bare.length === 0) return [];
  return [
    notSet(
      "",
      "bearing side force",
      `bearings ${bare.map(bearingName).join(", ")} hold sideways without a stated limit; what pushes them is not judged`,
      "take sideLimit_kN from the bearings' drawings",
    ),
  ];
}
