// The section on a landing: seats, temperature, order and loads stage by stage, shims, packing, fit to sets that stand.

import {
  backwallGaps,
  gapsBetweenSets,
  type Landing,
  landedAsDesigned,
  landedOn,
  landingsOf,
  leanWords,
  type Measure,
  misfitOf,
  offPlane,
  packingOf,
  packingOff,
  proposeShims,
  type SetResult,
  type ShimChoice,
  seatOff,
  soleOffset,
  topsOf,
  touchesOf,
} from "../../checks/index.ts";
import { bearingName, bearingsOf, seatOf } from "../../plan/index.ts";
import { type Pose, poseAt, type SetContext } from "../../sequence/index.ts";
import type { Side } from "../table.ts";
import { atOnce, type Section, type Table } from "./form.ts";
import { sectionTitles } from "./titles.ts";

const mm = (m: number | null | undefined, digits = 1): string =>
  m === null || m === undefined || Number.isNaN(m)
    ? ""
    : (1000 * m).toFixed(digits).replace(/^-(0\.?0*)$/, "$1");
const kN = (N: number): string => (Number.isNaN(N) ? "" : (N / 1000).toFixed(1).replace(/^-0\.0$/, "0.0"));
const percent = (tangent: number): string => (100 * tangent).toFixed(3).replace(/^-(0\.0*)$/, "$1");
const right = (n: number): Side[] => Array.from({ length: n }, () => "right" as const);

/** The pose in which the set is left at the end of its first landing; null where it does not land. */
function endOfLanding(ctx: SetContext, set: SetResult): Pose | null {
  const step = set.steps.find((s) => s.solved && s.step.do === "land");
  return step === undefined ? null : poseAt(ctx, step, 1);
}

function seatTable(ctx: SetContext): Table {
  const { plan, set } = ctx;
  const [stands, designed] = [landedOn(ctx, topsOf(ctx, "it stands")), landedAsDesigned(ctx)];
  const words = ["a seat that was not surveyed is taken at its design level"];
  if (stands !== null && designed !== null) {
    const off = offPlane(stands, designed);
    words.push(
      `on its bearings as they stand the landed set is ${percent(off.lean)} % off in lean and ${percent(off.level)} % in level`,
    );
  }
  const rows = bearingsOf(plan, set).map((b, i) => {
    const seat = seatOf(plan, set, b.line, b.girder);
    return [
      bearingName(b),
      seat === null ? "" : seat.design_m.toFixed(4),
      seat === null || seat.asBuilt_m === null ? "not surveyed" : seat.asBuilt_m.toFixed(4),
      seat?.shims_mm === undefined ? "" : seat.shims_mm.toFixed(1),
      seat === null ? "" : mm(seatOff(null, plan, seat)),
      designed === null ? "" : kN(designed.forces[i]),
      stands === null ? "" : kN(stands.forces[i]),
    ];
  });
  return {
    title: "seats",
    words,
    head: [
      "bearing",
      "design m",
      "as built m",
      "shims mm",
      "off mm",
      "load as designed kN",
      "load as it stands kN",
    ],
    sides: ["left", ...right(6)],
    rows,
  };
}

function roomTable(ctx: SetContext, pose: Pose | null): Table {
  const { plan, set } = ctx;
  const degrees = (t: number | undefined) => (t === undefined ? "not stated" : `${t} C`);
  const rows =
    pose === null
      ? []
      : [
          ...bearingsOf(plan, set).map((b) => [
            `sole on bearing ${bearingName(b)}, forward of the middle of its play`,
            mm(soleOffset(null, ctx, pose, b)) || "not known",
            b.play_mm === undefined ? "not stated" : `${b.play_mm} either way`,
          ]),
          ...[...backwallGaps(ctx), ...gapsBetweenSets(ctx)].map((m) => gapRow(m, pose)),
        ];
  return {
    title: "room at the end of the landing",
    words: [
      `steel ${degrees(set.temperature_C)} at its start, drawn for ${degrees(plan.site.temperature_C)}; steps of hold and rest change it`,
      "ends of girders are square to their axes, which turn with camber, bending and grade",
    ],
    head: ["where", "mm", "limit mm"],
    sides: ["left", "right", "right"],
    rows,
  };
}

function gapRow(m: Measure, pose: Pose): string[] {
  const { value, limit } = m.read(pose);
  return [`gap, ${m.subject}`, mm(value, 0) || "not known", `at least ${mm(limit, 0)}`];
}

function touchTable(ctx: SetContext, set: SetResult): Table {
  const rows = touchesOf(ctx, set).map(({ bearing, at }, i) => [
    String(i + 1),
    bearing,
    at === null ? "never" : `${at.step + 1} ${set.steps[at.step].step.id}`,
    at === null ? "" : at.progress.toFixed(4),
    at === null ? "" : kN(at.hooks),
    at === null ? "" : ((100 * at.hooks) / set.weight).toFixed(1),
  ]);
  return {
    title: "bearings in the order in which they first carry",
    words: ["seats as they stand, by geometry and stiffness"],
    head: ["no", "bearing", "step", "progress", "on the hooks kN", "% of the weight"],
    sides: ["right", "left", "left", "right", "right", "right"],
    rows,
  };
}

function stageTable(ctx: SetContext, set: SetResult, { step, stages }: Landing): Table {
  const [first] = stages;
  const bearings = first.bearings.map((b) => b.name);
  const hooks = first.hooks.map((h) => h.name);
  return {
    title: `landing stage by stage, step ${step + 1} ${set.steps[step].step.id}`,
    words: [
      "load kN where a bearing carries, else the gap left in mm; every row is the end of its stage",
      `lean in the end: ${leanWords(ctx, stages[stages.length - 1].lean)}`,
    ],
    head: ["stage", "progress", ...hooks.map((h) => `${h} kN`), ...bearings, "lean held by kNm per %"],
    sides: ["left", ...right(2 + hooks.length + bearings.length)],
    rows: stages.map((s) => [
      s.words,
      s.progress.toFixed(4),
      ...s.hooks.map((h) => kN(h.load)),
      ...s.bearings.map((b) => (b.load > 0 ? `${kN(b.load)} kN` : `${mm(b.gap)} mm`)),
      Number.isFinite(s.lean.stiffness) ? (s.lean.stiffness / 1e5).toFixed(0) : "taken as held",
    ]),
  };
}

function shimTable(ctx: SetContext): Table {
  const title = "shims proposed";
  const head = [
    "bearing",
    "bare seat off mm",
    "load meant kN",
    "without shims kN",
    "with the plan's kN",
    "least mm",
    "then kN",
    "in steps mm",
    "then kN ",
  ];
  const sides: Side[] = ["left", ...right(8)];
  const p = proposeShims(ctx);
  if (typeof p === "string") return { title, words: [`none: ${p}`], head, sides, rows: [] };
  const worst = (choice: ShimChoice | null) =>
    choice === null ? "none found" : `the worst is then ${(100 * choice.worst).toFixed(2)} % off`;
  return {
    title,
    words: [
      `least sum of shims on the bare seats with which every bearing is within ${(100 * p.tolerance).toFixed(1)} % of what the designed seats give it; verified by solving the landed set with them`,
      `of any thickness: ${worst(p.exact)}; in steps of ${mm(p.step, 2)} mm: ${worst(p.stepped)}`,
    ],
    head,
    sides,
    rows: p.bearings.map((name, i) => [
      name,
      mm(p.off[i]),
      kN(p.meant[i]),
      kN(p.bare[i] ?? Number.NaN),
      kN(p.planned[i] ?? Number.NaN),
      p.exact === null ? "" : mm(p.exact.shims[i], 2),
      p.exact === null ? "" : kN(p.exact.forces[i]),
      p.stepped === null ? "" : mm(p.stepped.shims[i], 2),
      p.stepped === null ? "" : kN(p.stepped.forces[i]),
    ]),
  };
}

function packingTable(ctx: SetContext): Table {
  const rows = packingOf(ctx);
  return {
    title: "packing above the bunks for the levels of the final seats",
    words: [
      "from seats as they stand, camber, and the crossfall of the path at the start; the least on each transporter is 0",
      "off: planned less asked, each less the mean of its transporter",
    ],
    head: ["transporter", "girder", "planned mm", "asked mm", "bunk by bunk mm", "off mm"],
    sides: ["left", "left", ...right(4)],
    rows: rows.map((r) => [
      r.transporter,
      r.girder,
      r.planned.toFixed(1),
      Number.isNaN(r.asked) ? "" : r.asked.toFixed(1),
      r.bunks.map((b) => (Number.isNaN(b) ? "" : b.toFixed(1))).join(", "),
      Number.isNaN(r.asked) ? "" : packingOff(rows, r).toFixed(1),
    ]),
  };
}

function fitTable(ctx: SetContext): Table[] {
  const { infill } = ctx.set;
  if (infill === undefined || infill.length === 0) return [];
  return [
    {
      title: "members to sets that stand",
      words: ["drop: how much lower the other girder's soffit is; off: above where the member fits"],
      head: ["member", "to", "made to fit under", "drop mm", "made for mm", "off mm", "allowed mm"],
      sides: ["left", "left", "left", ...right(4)],
      rows: infill.map((one) => {
        const misfit = misfitOf(null, ctx, one);
        return [
          one.name,
          `${one.to} ${one.toGirder}`,
          one.fit,
          mm(misfit?.drop),
          mm(misfit?.made),
          misfit === null ? "not known" : mm(misfit.off),
          one.allowed_mm === undefined ? "not stated" : String(one.allowed_mm),
        ];
      }),
    },
  ];
}

export const landingSection: Section = {
  name: "landing",
  title: sectionTitles.landing,
  begin: atOnce((ctx, set) => {
    const pose = endOfLanding(ctx, set);
    return [
      seatTable(ctx),
      roomTable(ctx, pose),
      touchTable(ctx, set),
      ...landingsOf(ctx, set).map((landing) => stageTable(ctx, set, landing)),
      shimTable(ctx),
      packingTable(ctx),
      ...fitTable(ctx),
    ];
  }),
};
