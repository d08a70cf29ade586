// Transporters: load per axle line, per side, per group, per bunk; left against right.

import type { SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE } from "../measure.ts";
import { constant, field, KN, solved, trace } from "../trace.ts";
import { recordRated, traced } from "../traced.ts";
import { percent } from "./named.ts";
import { at, linesOf, makers, pathOf, trains } from "./trains.ts";

export function lineLoads(ctx: SetContext): Measure[] {
  return trains(ctx).map((t) => {
    const path = pathOf(ctx, t);
    const pairs = linesOf(ctx, t);
    return measure(
      {
        check: "line load",
        subject: t.id,
        kind: `${t.kind} train`,
        strip: true,
        cure: "more axle lines, another place under the set, or less load at this support",
        ...traced(ctx, (pose, rec) => {
          let value = Number.NaN;
          let line = 0;
          pairs.forEach(([l, r], i) => {
            const F = pose.forces[l] + pose.forces[r];
            if (Number.isNaN(value) || F > value) {
              value = F;
              line = i + 1;
            }
          });
          const where = `axle line ${line}`;
          recordRated(rec, value, where, `${path}.allowedLine_kN`, t.allowedLine_kN, "allowed per axle line");
          return { value, limit: t.allowedLine_kN * 1000, where };
        }),
      },
      makers(t),
    );
  });
}

export function sideLoads(ctx: SetContext): Measure[] {
  return trains(ctx)
    .filter((t) => t.allowedSide_kN !== undefined)
    .map((t) => {
      const path = pathOf(ctx, t);
      const wheels = t.groups
        .flatMap((g) => g.wheels)
        .map((w) => [w, at(ctx, `cylinder ${t.id}:${w}`)] as const);
      const allowed = t.allowedSide_kN ?? 0;
      return measure(
        {
          check: "side load",
          subject: t.id,
          kind: `${t.kind} train`,
          cure: "bring the set's CG over the middle of the transporter, or spread the load over more axle lines",
          ...traced(ctx, (pose, rec) => {
            let value = Number.NaN;
            let wheel = "";
            for (const [w, i] of wheels)
              if (Number.isNaN(value) || pose.forces[i] > value) {
                value = pose.forces[i];
                wheel = w;
              }
            const where = `axle line side ${wheel}`;
            recordRated(rec, value, where, `${path}.allowedSide_kN`, allowed, "allowed per axle-line side");
            return { value, limit: allowed * 1000, where };
          }),
        },
        makers(t),
      );
    });
}

export function groupLoads(ctx: SetContext): Measure[] {
  return trains(ctx).flatMap((t) =>
    t.groups.map((g) => {
      const i = at(ctx, `group ${g.name}`);
      const side = t.allowedSide_kN ?? t.allowedLine_kN / 2;
      const path = pathOf(ctx, t);
      const sidePath = `${path}.allowedSide_kN`;
      const linePath = `${path}.allowedLine_kN`;
      const what = `force of group ${g.name}`;
      const sides = `length of ${path}.groups[${t.groups.indexOf(g)}].wheels`;
      return measure(
        {
          check: "group load",
          subject: g.name,
          kind: `${t.kind} train`,
          strip: true,
          cure: "more axle lines in the group, another place under the set, or less load handed to it",
          ...traced(ctx, (pose, rec) => {
            const value = solved(rec, "F", pose.forces[i], "N", what);
            if (t.allowedSide_kN !== undefined)
              field(rec, "F_side", side * 1000, "allowed per axle-line side", sidePath, side, KN);
            else {
              field(
                rec,
                "F_line",
                t.allowedLine_kN * 1000,
                "allowed per axle line",
                linePath,
                t.allowedLine_kN,
                KN,
              );
              trace(
                rec,
                "F_side",
                side * 1000,
                "F_line/2",
                "N",
                "half an axle line's stands in for one side's",
              );
            }
            constant(rec, "n", g.wheels.length, "1", "axle-line sides in the group", sides);
            const limit = side * g.wheels.length * 1000;
            trace(rec, "F_a", limit, "F_side*n", "N", "allowed of the group");
            rec?.ends("F", "F_a");
            return { value, limit };
          }),
        },
        makers(t),
      );
    }),
  );
}

export function bunkLoads(ctx: SetContext): Measure[] {
  return trains(ctx)
    .filter((t) => t.bunkRated_kN !== undefined)
    .map((t) => {
      const path = pathOf(ctx, t);
      const own = ctx.supports
        .map((s, i) => [s, i] as const)
        .filter(([s]) => s.what === "bunk" && s.of === t.id);
      return measure(
        {
          check: "bunk load",
          subject: t.id,
          kind: `${t.kind} train`,
          cure: "a stronger bunk, or packing that shares the load better between the bunks",
          ...traced(ctx, (pose, rec) => {
            let value = Number.NaN;
            let where = "";
            for (const [s, i] of own)
              if (Number.isNaN(value) || pose.forces[i] > value) {
                value = pose.forces[i];
                where = s.name;
              }
            const rated = t.bunkRated_kN ?? 0;
            recordRated(rec, value, where, `${path}.bunkRated_kN`, rated, "rated load of one bunk");
            return { value, limit: rated * 1000, where };
          }),
        },
        makers(t),
      );
    });
}

export function leftRight(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "left-right");
  if (!limit) return [];
  return trains(ctx).map((t) => {
    const wheels = t.groups
      .flatMap((g) => g.wheels)
      .map((w) => [w, at(ctx, `cylinder ${t.id}:${w}`)] as const);
    return measure(
      {
        check: "left-right",
        subject: t.id,
        kind: `${t.kind} train`,
        level: "caution",
        unit: "%",
        factor: 100,
        digits: 0,
        cure: "shift the set across the transporter, pack one bunk, or level the groups",
        ...traced(ctx, (pose, rec) => {
          let left = 0;
          let right = 0;
          for (const [w, i] of wheels)
            if (w.endsWith("L")) left += pose.forces[i];
            else right += pose.forces[i];
          if (!(left + right > 0)) return NOT_HERE;
          solved(rec, "F_left", left, "N", `force of the left wheels of ${t.id}`);
          solved(rec, "F_right", right, "N", `force of the right wheels of ${t.id}`);
          const value = trace(
            rec,
            "apart",
            Math.abs(left - right) / (left + right),
            "abs(F_left - F_right)/(F_left + F_right)",
            "1",
            "difference of the sides over their sum",
          );
          percent(rec, "apart_a", limit, "allowed difference");
          rec?.ends("apart", "apart_a");
          return { value, limit: limit.value / 100 };
        }),
      },
      limit,
    );
  });
}
