// Transporters: load per axle line, per side, per group, per bunk; stroke; left against right; brakes.

import { byId, type Transporter } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE } from "../measure.ts";
import { constant, field, KN, solved, trace } from "../trace.ts";
import { recordRated, traced } from "../traced.ts";

const makers = (t: Transporter) => ({
  source: `maker's limit of transporter ${t.id}: ${t.source}`,
  chosenBy: "plan",
});

/** Index of a support by its force name. */
function at(ctx: SetContext, force: string): number {
  return ctx.supportIndex.get(force) ?? -1;
}

/** Place of a transporter in the plan. */
const pathOf = (ctx: SetContext, t: Transporter): string =>
  `transporters[${ctx.plan.transporters.indexOf(t)}]`;

function trains(ctx: SetContext): Transporter[] {
  return ctx.set.onTransporters.map((on) => byId(ctx.plan.transporters, on.transporter));
}

export function lineLoads(ctx: SetContext): Measure[] {
  return trains(ctx).map((t) => {
    const path = pathOf(ctx, t);
    const pairs = Array.from({ length: t.lines }, (_, i) => [
      at(ctx, `cylinder ${t.id}:${i + 1}L`),
      at(ctx, `cylinder ${t.id}:${i + 1}R`),
    ]);
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
      const wheels = t.groups
        .flatMap((g) => g.wheels)
        .map((w) => [w, at(ctx, `cylinder ${t.id}:${w}`)] as const);
      return measure(
        {
          check: "side load",
          subject: t.id,
          kind: `${t.kind} train`,
          cure: "bring the set's CG over the middle of the transporter, or spread the load over more axle lines",
          read: (pose) => {
            let value = Number.NaN;
            let where = "";
            for (const [w, i] of wheels)
              if (Number.isNaN(value) || pose.forces[i] > value) {
                value = pose.forces[i];
                where = `axle line side ${w}`;
              }
            return { value, limit: (t.allowedSide_kN ?? 0) * 1000, where };
          },
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

export function strokes(ctx: SetContext): Measure[] {
  const limit = limitOf(ctx.plan, "stroke use");
  if (!limit) return [];
  return trains(ctx).map((t) =>
    measure(
      {
        check: "stroke",
        subject: t.id,
        kind: `${t.kind} train`,
        unit: "% of stroke",
        factor: 100,
        digits: 0,
        strip: true,
        cure: "change the packing, or level the transporter before this step",
        read: (pose) => {
          const { layout, stroke } = pose.solution;
          const deck = layout.trains.findIndex((train) => train.name === t.id);
          let value = Number.NaN;
          let at = -1;
          for (let i = 0; i < stroke.length; i++) {
            if (layout.cylinders[i].deck !== deck) continue;
            const part =
              stroke[i] >= 0 ? stroke[i] / (t.strokeUp_mm / 1000) : -stroke[i] / (t.strokeDown_mm / 1000);
            if (Number.isNaN(value) || part > value) {
              value = part;
              at = i;
            }
          }
          if (at < 0) return NOT_HERE;
          const { id } = layout.cylinders[at];
          const reach = stroke[at];
          return {
            value,
            limit: limit.value / 100,
            get where() {
              return `${id} ${reach >= 0 ? "out" : "in"} ${Math.abs(reach * 1000).toFixed(0)} mm`;
            },
          };
        },
      },
      limit,
    ),
  );
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
        read: (pose) => {
          let left = 0;
          let right = 0;
          for (const [w, i] of wheels)
            if (w.endsWith("L")) left += pose.forces[i];
            else right += pose.forces[i];
          const sum = left + right;
          return { value: sum > 0 ? Math.abs(left - right) / sum : Number.NaN, limit: limit.value / 100 };
        },
      },
      limit,
    );
  });
}

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
        read: (pose) => slipUse(ctx, pose),
      },
      { source: `friction stated for the bunks in the plan: ${source}`, chosenBy: "plan" },
    ),
  ];
}

function slipUse(ctx: SetContext, pose: Pose) {
  const { horizontal, holds, contact } = pose.solution;
  if (!horizontal) return NOT_HERE;
  let x = 0;
  let y = 0;
  let limit = 0;
  let normal = 0;
  holds.forEach(({ stated, device }, i) => {
    x += horizontal.holds[2 * i];
    y += horizontal.holds[2 * i + 1];
    limit += stated;
    normal += contact.F[device];
  });
  if (normal < HANGS * ctx.model.mass * ctx.gravity || !Number.isFinite(limit)) return NOT_HERE;
  return { value: Math.hypot(x, y) / limit, limit: 1 };
}

export function brakes(ctx: SetContext): Measure[] {
  return trains(ctx)
    .filter((t) => t.brakeLimit_kN !== undefined && t.brakeLimit_kN > 0)
    .map((t) =>
      measure(
        {
          check: "brake",
          subject: t.id,
          kind: `${t.kind} train`,
          cure: "brakes on another transporter too, or a line kept plumber",
          read: (pose) => {
            const { horizontal, holds, layout } = pose.solution;
            const deck = layout.trains.findIndex((x) => x.name === t.id);
            if (!horizontal || deck < 0) return NOT_HERE;
            let along = 0;
            holds.forEach(({ hold }, i) => {
              if (hold.train === deck) along += horizontal.holds[2 * i];
            });
            // The transporter's own weight on the grade goes into the same brakes.
            const own = Math.abs(layout.up[0]) * t.mass_t * 1000 * ctx.gravity;
            return { value: Math.abs(along) + own, limit: (t.brakeLimit_kN ?? 0) * 1000 };
          },
        },
        makers(t),
      ),
    );
}
