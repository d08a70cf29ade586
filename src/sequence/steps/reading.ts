// The reading of a trial lift against the weight ledger: what the hook should carry by the ledger's masses.

import { hookName, type StepOf, takeOff } from "../../plan/index.ts";
import type { Happening, Pose, SetContext } from "../types.ts";
import { happening, hookForce } from "./kind.ts";

/** Mass of the whole set by its ledger, kg: the line for it all, or the sum of lines that cover every part; else null. */
export function ledgerMass(ctx: SetContext): number | null {
  const { set } = ctx;
  const whole = set.ledger.find((l) => l.covers === "whole set");
  if (whole) return whole.mass_t.best * 1000;
  const kinds = new Set<string>(takeOff(set).lines.map((l) => l.kind));
  const counted = set.ledger.filter((l) => l.covers !== undefined && kinds.has(l.covers));
  if ([...kinds].some((kind) => !counted.some((l) => l.covers === kind))) return null;
  return counted.reduce((sum, l) => sum + l.mass_t.best * 1000, 0);
}

/**
 * What the hook carries at the end of a trial lift against what the ledger lets expect. Both stand on the same statics:
 * the ledger's reading is the solved one in proportion to its mass. Nothing is compared without a stated band.
 */
export function readingOff(ctx: SetContext, step: StepOf<"trial lift">, end: Pose): Happening[] {
  if (step.band_pct === undefined || end.solution.status !== "solved") return [];
  const mass = ledgerMass(ctx);
  if (mass === null)
    return [
      happening(
        "missing data",
        step.crane,
        "the ledger does not weigh the whole set: the reading of the trial lift has nothing to be compared with",
        { level: "caution", progress: 1 },
      ),
    ];
  const F = hookForce(ctx, end, step.crane);
  const expected = (F * mass) / ctx.model.mass;
  const off = Math.abs(F / expected - 1) * 100;
  if (!(off > step.band_pct * (1 + 1e-9))) return [];
  const crane = ctx.plan.cranes.find((c) => c.id === step.crane);
  const bound = expected * (1 + (Math.sign(F - expected) * step.band_pct) / 100);
  return [
    happening(
      "reading off",
      step.crane,
      `${crane ? hookName(crane) : step.crane} carries ${(F / 1000).toFixed(1)} kN of the set, ${off.toFixed(1)} % off the ` +
        `${(expected / 1000).toFixed(1)} kN that the ledger gives; ${step.band_pct} % are allowed`,
      { value: F, limit: bound, unit: "N", progress: 1 },
    ),
  ];
}
