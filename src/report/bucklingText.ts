// The buckling of a set as a section of the text for a terminal: every stage with its factor and what goes sideways most.

import type { BucklingStage, SetResult } from "../checks/index.ts";
import { oneLine, type Side, tableLines } from "./table.ts";

/** Lines of the buckling of a set; none where it was not worked out. */
export function bucklingLines(set: SetResult): string[] {
  const { buckling } = set;
  if (buckling === undefined) return [];
  const head = ["step", "progress", "why", "buckles at", "moment kNm", "shape"];
  const sides: Side[] = ["left", "right", "left", "right", "right", "left"];
  const rows = buckling.stages.map((stage) => [
    `${stage.step + 1} ${oneLine(set.steps[stage.step].step.id)}`,
    Number(stage.progress.toFixed(6)).toString(),
    stage.why,
    factorWords(stage),
    stage.moment === null ? "" : (stage.moment / 1000).toFixed(1),
    shapeWords(stage),
  ]);
  const asked =
    buckling.asked === "rests" ? "at rest between steps" : "at rest and where each step bends it most";
  return [
    `buckling, all loads grown together (linear, straight girders, contacts as they carry), ${asked}`,
    ...tableLines(head, rows, sides),
  ];
}

/** At how many times its loads a stage buckles, in words. */
export function factorWords({ factor, moment }: BucklingStage): string {
  if (factor === null) return moment === null ? "no numbers" : "no stiffness";
  return Number.isFinite(factor) ? factor.toFixed(2) : "never";
}

/** What goes sideways most: where, and whether the girders go together. */
export function shapeWords({ shape }: BucklingStage): string {
  let at = 0;
  let girder = "";
  let most = 0;
  for (const g of shape)
    g.x.forEach((x, i) => {
      if (Math.abs(g.sideways[i]) <= Math.abs(most)) return;
      [at, girder, most] = [x, g.girder, g.sideways[i]];
    });
  if (most === 0) return shape.length === 0 ? "" : "upright";
  const with_ = shape.filter((g) => {
    const near = g.x.reduce((best, x, i) => (Math.abs(x - at) < Math.abs(g.x[best] - at) ? i : best), 0);
    return g.girder === girder || g.sideways[near] / most > 0.5;
  });
  const who =
    with_.length === shape.length && shape.length > 1 ? "all girders together" : `girder ${oneLine(girder)}`;
  return `${who}, most at ${at.toFixed(1)} m`;
}
