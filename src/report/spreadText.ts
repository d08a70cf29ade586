// The spread of a set as a section of the text for a terminal: low and high of every support, worst uses, each with its corner.

import { bestRun, cornerName, type SetResult, type SpreadResult, type WorstAt } from "../checks/index.ts";
import type { Plan } from "../plan/index.ts";
import { oneLine, type Side, tableLines } from "./table.ts";

/** Lines of the spread of a set; none where it was not worked out. */
export function spreadLines(plan: Plan, set: SetResult): string[] {
  const { spread } = set;
  if (spread === undefined) return [];
  const lee = spread.corners.length - spread.done;
  const less = lee === 0 ? "" : `, and ${lee} with less wind where all of it left no equilibrium`;
  const assumed =
    spread.assumed.length === 0 ? "" : `; starter values stand in for ${spread.assumed.join(", ")}`;
  return [
    `spread over ${spread.done} corners of what is uncertain${less}${assumed}`,
    ...supportLines(plan, set, spread),
    ...limitLines(plan, set, spread),
  ];
}

function supportLines(plan: Plan, set: SetResult, spread: SpreadResult): string[] {
  const head = ["share of the set", "kN", "at", "corner"];
  const sides: Side[] = ["left", "right", "left", "left"];
  const rows: string[][] = [];
  set.supports.forEach((support, j) => {
    if (!support.band) return;
    const { low, high } = spread.supports[j];
    const line = (words: string, at: WorstAt | null) =>
      at === null
        ? []
        : [
            [
              `${oneLine(support.name)} ${words}`,
              kN(at.value),
              whereIn(set, at),
              nameOf(plan, set, spread, at),
            ],
          ];
    rows.push(...line("low", low), ...line("high", high));
  });
  return tableLines(head, rows, sides);
}

function limitLines(plan: Plan, set: SetResult, spread: SpreadResult): string[] {
  const head = ["worst use", "use", "value", "limit", "unit", "at", "corner"];
  const sides: Side[] = ["left", "right", "right", "right", "left", "left", "left"];
  const worst = spread.worst.filter((w) => Number.isFinite(w.use)).toSorted((a, b) => b.use - a.use);
  const rows = worst.map((w) => [
    `${w.check}, ${oneLine(w.subject)}`,
    `${(100 * w.use).toFixed(0)} %`,
    number(w.value),
    number(w.limit),
    w.unit,
    whereIn(set, w),
    nameOf(plan, set, spread, w),
  ]);
  return tableLines(head, rows, sides);
}

function whereIn(set: SetResult, { pose }: WorstAt): string {
  return `step ${set.step[pose] + 1} at ${Number(set.progress[pose].toFixed(6))}`;
}

function nameOf(plan: Plan, set: SetResult, spread: SpreadResult, { corner, pose }: WorstAt): string {
  return corner === bestRun ? "-" : oneLine(cornerName(plan, set, spread.corners, corner, set.step[pose]));
}

const kN = (N: number): string => (N / 1000).toFixed(1).replace(/^-(?=[0.]+$)/, "");
const number = (value: number): string => String(Number(value.toPrecision(4)));
