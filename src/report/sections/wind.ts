// The section on wind: step by step the limit of the plan, the force that it brings, and the highest wind of everything.

import {
  type Allowed,
  MOST_WIND,
  type SetResult,
  type SetWindLimits,
  type WindSearch,
  windForces,
  windOver,
} from "../../checks/index.ts";
import { poseAt, type SetContext } from "../../sequence/index.ts";
import type { Side } from "../table.ts";
import type { Section, Table } from "./form.ts";
import { sectionTitles } from "./titles.ts";

const speed = (V: number | undefined | null): string => (V === undefined || V === null ? "" : V.toFixed(1));
const kN = (N: number): string => (N / 1000).toFixed(1);
const right = (n: number): Side[] => Array.from({ length: n }, () => "right" as const);

/** What governs, in words. */
function governing({ what, subject, toward, progress }: Allowed): string {
  const way =
    toward === null ? "" : `, ${toward === "+y" ? "to the left" : "to the right"} at ${progress.toFixed(3)}`;
  return `${what}, ${subject}${way}`;
}

function highestTable(set: SetResult, found: SetWindLimits): Table {
  const sides: Side[] = ["left", ...right(7), "left"];
  return {
    title: "highest wind of each step",
    words: [
      "readings of the site's instrument; every stored pose solved again in the wind, across the path, either way",
      `a blank under checks or plumb: nothing at its limit up to ${MOST_WIND} m/s; under chart: no hook on, or no wind limit in the plan`,
      "checks: the first of all checks of level stop; plumb: the first line out of plumb; chart: for the sail on its hook; table: the standing limit",
    ],
    head: ["step", "limit m/s", "force kN", "highest m/s", "checks", "plumb", "chart", "table", "governs"],
    sides,
    rows: found.steps.map((one) => [
      `${one.step + 1} ${set.steps[one.step].step.id}`,
      one.stated === null ? "none" : speed(one.stated),
      kN(one.force),
      speed(one.governs.reading),
      speed(one.checks?.reading),
      speed(one.plumb?.reading),
      speed(one.chart?.reading),
      speed(one.table.reading),
      governing(one.governs),
    ]),
  };
}

function forceTable(ctx: SetContext, set: SetResult): Table {
  const rows: string[][] = [];
  for (const step of set.steps) {
    const V = step.step.windLimit_m_per_s;
    if (V === undefined || step.count === 0) continue;
    const { wind, booms } = windForces(ctx, poseAt(ctx, step, 1), V);
    for (const b of booms)
      rows.push([
        `${step.index + 1} ${step.step.id}`,
        kN(wind),
        b.crane,
        b.boom === null ? "" : kN(b.boom),
        kN(b.rigging),
        kN(b.line),
      ]);
  }
  return {
    title: "wind on set, booms and rigging, at the end of each step with a crane on, at its own limit",
    words: [
      "a boom is blank where the plan lacks its width or solidity; its wind is part of what its chart's wind limit stands for",
      "side load: what the line pulls across at the boom tip in the wind, of both ways the greater",
    ],
    head: ["step", "set kN", "crane", "boom kN", "block and rope kN", "side load kN"],
    sides: ["left", "right", "left", ...right(3)],
    rows,
  };
}

export const windSection: Section = {
  name: "wind",
  title: sectionTitles.wind,
  begin: (ctx, set) => {
    const search: WindSearch = windOver(ctx, set);
    return {
      done: search.done,
      of: search.of,
      next: search.next,
      tables: () => [highestTable(set, search.result()), forceTable(ctx, set)],
      findings: () => search.result().findings,
    };
  },
};
