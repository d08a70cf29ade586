// Settlement against the action levels of the plan: what steps let sink, and whether the spread looks as far.

import { hookName, type Plan, spreadOf } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
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

/** Ground that a step lets sink beyond the action level of the machine on it. */
export function settlementFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return levelsOf(ctx.plan).flatMap(({ name, id, path, trigger }) => {
    if (trigger === undefined) return [];
    const own = ctx.supports.filter((s) => s.of === id).map((s) => s.name);
    let most = 0;
    let at = -1;
    stored.forEach((pose, i) => {
      const { sunk } = pose.situation;
      for (const support of own)
        if ((sunk[support] ?? 0) > most) {
          most = sunk[support];
          at = i;
        }
    });
    if (at < 0 || !(most * 1000 > trigger * (1 + 1e-9))) return [];
    return foundAt(ctx, run, at, {
      level: "caution",
      check: "settlement",
      subject: name,
      value: most * 1000,
      limit: trigger,
      unit: "mm",
      source: `action level of ${name}: ${path}`,
      words: `the ground of ${name} sinks by ${(most * 1000).toFixed(1)} mm in the plan's own steps (${poseWords(run, at)}); the crew acts from ${trigger} mm on`,
      cure: "level before going on, stiffen the ground, or shorten the wait",
    });
  });
}

/** Machines without an action level, and levels beyond what the spread has looked at. */
export function settlementItems(plan: Plan): Finding[] {
  const levels = levelsOf(plan);
  const { spread } = spreadOf(plan);
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
  for (const { name, path, trigger } of levels)
    if (trigger !== undefined && trigger > spread.settlement_mm * (1 + 1e-9))
      out.push(
        finding({
          level: "caution",
          check: "settlement",
          set: "",
          subject: name,
          value: trigger,
          limit: spread.settlement_mm,
          unit: "mm",
          use: spread.settlement_mm > 0 ? trigger / spread.settlement_mm : null,
          source: "spread.settlement_mm of the plan",
          words: `the crew acts on settlement of ${name} from ${trigger} mm on (${path}), but its effect is only looked at up to ${spread.settlement_mm} mm`,
          cure: "a lower action level, or more settlement in the spread",
        }),
      );
  return out;
}
