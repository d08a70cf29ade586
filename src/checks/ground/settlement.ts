// Settlement against the action levels of the plan: what steps let sink, and whether the spread looks as far.

import { hookName, type Plan, spreadOf } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { dataFindings, dataMeasure } from "../dataMeasure.ts";
import { finding } from "../finding.ts";
import { type DataMeasure, type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, MM, solved } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { foundAt, poseWords } from "./found.ts";

/** Machines with their action levels, mm, and the supports whose ground it is. */
function levelsOf(plan: Plan) {
  return [
    ...plan.transporters.map((t, i) => ({
      name: t.id,
      id: t.id,
      path: `transporters[${i}].settlementTrigger_mm`,
      trigger: t.settlementTrigger_mm,
    })),
    ...plan.cranes.map((c, i) => ({
      name: hookName(c),
      id: c.id,
      path: `cranes[${i}].settlementTrigger_mm`,
      trigger: c.settlementTrigger_mm,
    })),
  ];
}

/** A machine with an action level that a set stands on, and how far the ground of one of its supports has sunk at most. */
function sinking(ctx: SetContext) {
  return levelsOf(ctx.plan).flatMap(({ id, trigger, ...level }) => {
    if (trigger === undefined) return [];
    const own = ctx.supports.filter((s) => s.of === id).map((s) => s.name);
    const sunk = ({ situation }: Pose): number =>
      own.reduce((most, support) => Math.max(most, situation.sunk[support] ?? 0), 0);
    return [{ ...level, trigger, sunk, source: `action level of ${level.name}: ${level.path}` }];
  });
}

const CURE = "level before going on, stiffen the ground, or shorten the wait";

/** How far the ground of machines has sunk at one pose against their action levels, for its trace. */
export function settlements(ctx: SetContext): Measure[] {
  return sinking(ctx).map(({ name, path, trigger, sunk, source }) =>
    measure({
      check: "settlement",
      subject: name,
      kind: "",
      level: "caution",
      unit: "mm",
      factor: 1e3,
      watched: false,
      source,
      chosenBy: "plan",
      cure: CURE,
      ...traced(ctx, (pose, rec): Reading => {
        const value = sunk(pose);
        if (value === 0) return NOT_HERE;
        solved(
          rec,
          "w",
          value,
          "m",
          `how far the ground of ${name} has sunk at most in the steps up to here`,
        );
        field(rec, "w_a", trigger / 1000, `action level of ${name}`, path, trigger, MM);
        rec?.ends("w", "w_a");
        return { value, limit: trigger / 1000 };
      }),
    }),
  );
}

/** Ground that a step lets sink beyond the action level of the machine on it. */
export function settlementFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return sinking(ctx).flatMap(({ name, trigger, sunk, source }) => {
    let most = 0;
    let at = -1;
    stored.forEach((pose, i) => {
      const now = sunk(pose);
      if (now <= most) return;
      most = now;
      at = i;
    });
    if (at < 0 || !(most * 1000 > trigger * (1 + 1e-9))) return [];
    return foundAt(ctx, run, at, {
      level: "caution",
      check: "settlement",
      subject: name,
      value: most * 1000,
      limit: trigger,
      unit: "mm",
      source,
      words: `the ground of ${name} sinks by ${(most * 1000).toFixed(1)} mm in the plan's own steps (${poseWords(run, at)}); the crew acts from ${trigger} mm on`,
      cure: CURE,
    });
  });
}

/** Machines without an action level, and levels beyond what the spread has looked at. */
export function settlementItems(plan: Plan): Finding[] {
  const levels = levelsOf(plan);
  const out: Finding[] = [];
  const bare = levels.filter((l) => l.trigger === undefined).map((l) => l.name);
  if (bare.length > 0)
    out.push(
      finding({
        level: "note",
        check: "limit not set",
        set: "",
        subject: "settlement action level",
        words: `settlement action level: none for ${bare.join(", ")}; nobody knows when to stop for settling ground`,
        cure: "give settlementTrigger_mm, from what the spread shows of settlement",
      }),
    );
  return [...out, ...dataFindings(actionLevels(plan))];
}

/** Action levels against the settlement that the spread looks at. */
export function actionLevels(plan: Plan): DataMeasure[] {
  const { spread } = spreadOf(plan);
  return levelsOf(plan).flatMap(({ name, path, trigger }) => {
    if (trigger === undefined) return [];
    return dataMeasure(
      {
        check: "settlement action level",
        set: "",
        subject: name,
        unit: "mm",
        factor: 1e3,
        words: () =>
          `the crew acts on settlement of ${name} from ${trigger} mm on (${path}), but its effect is only looked at up to ${spread.settlement_mm} mm`,
        cure: "a lower action level, or more settlement in the spread",
      },
      (rec) => {
        const value = field(rec, "w_a", trigger / 1000, `action level of ${name}`, path, trigger, MM);
        const words = "settlement that the spread looks at";
        const seen = spread.settlement_mm;
        if (plan.spread.settlement_mm === undefined)
          constant(rec, "w_s", seen / 1000, "m", words, "starter value");
        else field(rec, "w_s", seen / 1000, words, "spread.settlement_mm", seen, MM);
        rec?.ends("w_a", "w_s");
        return { value, limit: seen / 1000 };
      },
      { source: "spread.settlement_mm of the plan", chosenBy: "plan" },
    );
  });
}
