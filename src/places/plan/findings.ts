// Findings in the order of the list: by level, then by place; those without a place are open items of the plan.
import { type Finding, type Level, type Result, stepName } from "../../app/index.ts";
import { byWeight, levels } from "../../share/index.ts";

/** Findings of one level. */
export interface Group {
  level: Level;
  findings: Finding[];
}

/** Splits findings into those with a place in the operation, by level, and open items without one. */
export function groupsOf(findings: readonly Finding[]): { groups: Group[]; open: Finding[] } {
  const sorted = [...findings].sort(byWeight);
  const placed = sorted.filter(({ worst, from }) => worst !== null || from !== null);
  const groups = levels
    .map((level) => ({ level, findings: placed.filter((one) => one.level === level) }))
    .filter((group) => group.findings.length > 0);
  return { groups, open: sorted.filter(({ worst, from }) => worst === null && from === null) };
}

/** Where a finding is worst: "set A, step 4 Roll, 37 %". */
export function whereOf(result: Result, finding: Finding): string {
  const set = result.sets.find((one) => one.setId === finding.set);
  const when = finding.worst ?? finding.from;
  if (set === undefined) return "whole plan";
  const name = result.sets.length > 1 ? `${set.name || set.setId}, ` : "";
  if (when === null) return name === "" ? "whole set" : `${name}whole set`;
  const run = set.steps[when.step];
  return `${name}step ${when.step + 1} ${stepName(run.step)}, ${Math.round(when.progress * 100)} %`;
}
