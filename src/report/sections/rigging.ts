// The section on rigging: every part used against rated, legs with their angles, the hung set against its seats, slings
// proposed for it.

import { type LegUse, type PartUse, proposeSlings, riggingUse, type SetResult } from "../../checks/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import type { Side } from "../table.ts";
import { atOnce, type Section, type Table } from "./form.ts";
import { sectionTitles } from "./titles.ts";

const kN = (N: number): string => (N / 1000).toFixed(1).replace(/^-0\.0$/, "0.0");
const mm = (m: number, digits = 1): string => (1000 * m).toFixed(digits).replace(/^-(0\.?0*)$/, "$1");
const right = (n: number): Side[] => Array.from({ length: n }, () => "right" as const);
const place = (set: SetResult, at: PartUse["at"]): string[] => [
  `${at.step + 1} ${set.steps[at.step].step.id}`,
  Number(at.progress.toFixed(6)).toString(),
];

function partTable(set: SetResult, parts: readonly PartUse[]): Table {
  return {
    title: "parts of the rigging, each where it is used most, the lowest factor first",
    words: [
      "load of one part by statics; on the hook and in a beam with the rigging's own weight; no dynamic factor",
      parts.length === 0
        ? "the plan lists no parts: only the whole assembly is judged, as 'rigging load'"
        : `lowest factor: ${parts[0].subject}, ${(parts[0].rated / parts[0].load).toFixed(2)}`,
    ],
    head: ["part", "load kN", "rated kN", "factor", "step", "progress", "where"],
    sides: ["left", ...right(3), "left", "right", "left"],
    rows: parts.map((p) => [
      p.subject,
      kN(p.load),
      kN(p.rated),
      (p.rated / p.load).toFixed(2),
      ...place(set, p.at),
      p.where,
    ]),
  };
}

function legTable(set: SetResult, legs: readonly LegUse[]): Table {
  return {
    title: "legs of the rigging where their hook carries most",
    words: [
      "all legs of a girder together; stretch of one of them, by its EA or as a wire rope of its diameter",
    ],
    head: [
      "hook",
      "girder",
      "line kN",
      "from plumb deg",
      "tension kN",
      "horizontal kN",
      "stretch mm",
      "step",
      "progress",
    ],
    sides: ["left", "left", ...right(5), "left", "right"],
    rows: legs.map((l) => [
      l.hook,
      l.girder,
      kN(l.line),
      ((l.angle * 180) / Math.PI).toFixed(1),
      kN(l.tension),
      kN(l.horizontal),
      l.stretch === null ? "not known" : mm(l.stretch),
      ...place(set, l.at),
    ]),
  };
}

function slingTables(ctx: SetContext, set: SetResult): Table[] {
  const p = proposeSlings(ctx, set);
  const title = "the hung set against its seats";
  const head = ["bearing", "gap mm", "with the proposal mm"];
  const sides: Side[] = ["left", "right", "right"];
  if (typeof p === "string") return [{ title, words: [`not looked at: ${p}`], head, sides, rows: [] }];
  const least = (gaps: typeof p.before) => Math.min(...gaps.map((g) => g.gap));
  const [before, after] = [least(p.before), least(p.after)];
  return [
    {
      title,
      words: [
        `gaps between soles and bearings where step ${p.step + 1} ${set.steps[p.step].step.id} begins, above the least of them; camber, droop, twist and seats as they stand in them`,
        `with the slings below, in a new run of the plan, and ${p.hook} ${mm(Math.abs(p.raise), 0)} mm ${p.raise < 0 ? "lower" : "higher"} there`,
      ],
      head,
      sides,
      rows: p.before.map((g, i) => [g.bearing, mm(g.gap - before), mm(p.after[i].gap - after)]),
    },
    {
      title: "slings proposed for grade and crossfall",
      words: [
        "how much longer than the rigging's own length, slingLonger_mm of a pick; a set that is lowered one end first needs the hook's height only as far as it is meant to hang level with its seats",
      ],
      head: ["hook", "girder", "now mm", "proposed mm", "line kN now", "line kN then"],
      sides: ["left", "left", ...right(4)],
      rows: p.picks.flatMap((pick) =>
        p.lines
          .filter((l) => l.name.startsWith(`${pick.hook} line `))
          .map((l) => {
            const girder = l.name.slice(`${pick.hook} line `.length);
            return [
              pick.hook,
              girder,
              mm(pick.now[girder] ?? 0, 0),
              mm(pick.longer[girder] ?? 0, 0),
              kN(l.before),
              kN(l.after),
            ];
          }),
      ),
    },
  ];
}

export const riggingSection: Section = {
  name: "rigging",
  title: sectionTitles.rigging,
  begin: atOnce((ctx, set) => {
    const { parts, legs } = riggingUse(ctx, set);
    return [partTable(set, parts), legTable(set, legs), ...slingTables(ctx, set)];
  }),
};
