// The parts of the sheet of plan data: what each is called and which places of the plan it shows; and the way to any place.
import type { PlanPart } from "../../../app/index.ts";
import { type Plan, type PlanPath, valueAt } from "../../../plan/index.ts";
import { isTable, liesIn, sheetCells } from "./cells.ts";

/** A place that a part shows; `only` leaves out what other parts show. */
export interface Section {
  readonly path: PlanPath;
  readonly words: string;
  /** Machines stand side by side, one in each column: they have many fields and are few. */
  readonly across?: boolean;
  /** Rows pasted into it are a survey or a data sheet: their columns are matched and shown first. */
  readonly survey?: boolean;
  /** Only the single values of the group: its lists and groups are parts of their own. */
  readonly singles?: boolean;
}

export const partWords: Readonly<Record<PlanPart, string>> = {
  header: "Header",
  site: "Site",
  path: "Path",
  seats: "Seats",
  bearings: "Bearings",
  surroundings: "What is near and below",
  wind: "Wind at the site",
  transporters: "Transporters",
  cranes: "Cranes",
  rigging: "Rigging",
  lashings: "Lashings",
  sets: "Sets",
  girders: "Girders and pieces",
  splices: "Splices",
  frames: "Frames and bracing",
  attachments: "Attachments",
  ledger: "Weight ledger",
  onTransporters: "On transporters",
  picks: "Picks",
  steps: "Steps",
  limits: "Limits",
  spread: "Spread of the data",
  people: "People",
  accepted: "Accepted and recorded",
};

/** The sections of a part; those of a set are of the set with this index. */
export function sectionsOf(part: PlanPart, plan: Plan, set: number): Section[] {
  const of = (...path: (string | number)[]): PlanPath => path;
  const mine = (...path: (string | number)[]): PlanPath => ["sets", set, ...path];
  switch (part) {
    case "header":
      return [
        { path: of(), words: "The file", singles: true },
        { path: of("header"), words: "Header" },
      ];
    case "site":
      return [{ path: of("site"), words: "Site", singles: true }];
    case "path":
      return [
        { path: of("site", "path"), words: "Path", singles: true },
        { path: of("site", "path", "points"), words: "Profile", survey: true },
        { path: of("site", "path", "groundAccepted"), words: "Ground accepted" },
      ];
    case "seats":
      return [{ path: of("site", "seats"), words: "Seats", survey: true }];
    case "bearings":
      return [{ path: of("site", "bearings"), words: "Bearings" }];
    case "surroundings":
      return [
        { path: of("site", "stopLines"), words: "Stop lines" },
        { path: of("site", "underfoot"), words: "Structures below the path and cranes" },
        { path: of("site", "craneGround"), words: "Ground along the ways of cranes" },
        { path: of("site", "edges"), words: "Edges" },
        { path: of("site", "wallSignedOff"), words: "Walls signed off" },
        { path: of("site", "below"), words: "Below the gap" },
        { path: of("site", "obstacles"), words: "Obstacles" },
      ];
    case "wind":
      return [{ path: of("site", "wind"), words: "Wind at the site" }];
    case "transporters":
    case "cranes":
    case "rigging":
      return [{ path: of(part), words: partWords[part], across: true }];
    case "lashings":
      return [{ path: of("lashings"), words: "Lashings" }];
    case "sets":
      return [
        { path: of("sets"), words: "All sets", singles: true },
        { path: mine("soleStations_m"), words: "Sole plates" },
        { path: mine("wind"), words: "Set in the wind" },
        { path: mine("times"), words: "Timing" },
        { path: mine("looseParts"), words: "Loose parts" },
        { path: mine("infill"), words: "Members to sets that stand" },
      ];
    case "girders":
      return [
        { path: mine("girders"), words: "Girders", singles: true },
        ...plan.sets[set].girders.flatMap(({ line }, i) => [
          { path: mine("girders", i, "pieces"), words: `Pieces of girder ${line}` },
          { path: mine("girders", i, "camber_mm"), words: `Camber of girder ${line}` },
        ]),
      ];
    case "splices":
      return [{ path: mine("splices"), words: "Splices" }];
    case "frames":
      return [
        { path: mine("crossFrames"), words: "Cross-frames" },
        { path: mine("lateralBracing"), words: "Lateral bracing" },
        { path: mine("stiffeners"), words: "Stiffeners" },
      ];
    case "attachments":
      return [
        { path: mine("attachments"), words: "Attachments" },
        { path: mine("tagLines"), words: "Tag lines" },
      ];
    case "ledger":
      return [{ path: mine("ledger"), words: "Weight ledger", survey: true }];
    case "onTransporters":
      return [{ path: mine("onTransporters"), words: "On transporters" }];
    case "picks":
      return [{ path: mine("picks"), words: "Picks" }];
    case "steps":
      return [{ path: mine("steps"), words: "Steps" }];
    case "limits":
      return [
        { path: of("limits"), words: "Limits", singles: true },
        { path: of("limits", "rules"), words: "Limits set one by one" },
        { path: of("limits", "overrides"), words: "Limits replaced for this job" },
      ];
    case "spread":
      return [{ path: of("spread"), words: "Spread of the data" }];
    case "people":
      return [{ path: of("people"), words: "People" }];
    case "accepted":
      return [
        { path: of("accept"), words: "Accepted findings" },
        { path: of("expected"), words: "Findings that are expected" },
        { path: of("unconfirmed"), words: "Not yet confirmed" },
        { path: of("record"), words: "Readings as done" },
      ];
    default:
      return part satisfies never;
  }
}

/** The part that shows a place, and the set it belongs to (null for none): the one whose section is the nearest around it. */
export function partOf(
  path: PlanPath,
  plan: Plan,
  parts: readonly PlanPart[],
): { part: PlanPart; set: number | null; section: Section } | null {
  const set = path[0] === "sets" && typeof path[1] === "number" ? path[1] : null;
  if (set !== null && set >= plan.sets.length) return null;
  const all = parts.flatMap((part) => sectionsOf(part, plan, set ?? 0).map((section) => ({ part, section })));
  const around = all.filter(({ section }) => liesIn(path, section.path));
  around.sort((a, b) => b.section.path.length - a.section.path.length);
  return around.length === 0 ? null : { ...around[0], set };
}

/** Where a place is typed: the sheet to open, the cell in it (null where the sheet as a whole is meant). */
export interface Way {
  readonly part: PlanPart;
  readonly set: number | null;
  readonly sheet: PlanPath;
  readonly cell: PlanPath | null;
}

/** The way to a place: from the part's section through the sheets that its cells open. Null where no sheet shows it. */
export function wayTo(path: PlanPath, plan: Plan, parts: readonly PlanPart[]): Way | null {
  const start = partOf(path, plan, parts);
  if (start === null) return null;
  let sheet = start.section.path;
  for (;;) {
    const cells = sheetCells(sheet, plan).filter((cell) => liesIn(path, cell.path));
    const typed = cells.find((cell) => !cell.opens);
    const way = { part: start.part, set: start.set };
    if (typed !== undefined) return { ...way, sheet, cell: typed.path };
    const opened = cells.find((cell) => cell.opens && cell.path.length >= sheet.length);
    if (opened === undefined || (opened.path.length === sheet.length && opened.path.join() === sheet.join()))
      return { ...way, sheet, cell: null };
    if (opened.path.length === path.length && valueAt(plan, path) === undefined)
      return { ...way, sheet, cell: opened.path };
    sheet = opened.path;
    // A row that is opened is a form; a table in it is opened from there.
    if (isTable(sheet, plan) && sheet.length === path.length) return { ...way, sheet, cell: null };
  }
}
