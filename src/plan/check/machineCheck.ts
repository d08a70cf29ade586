// The machines taken as a whole: every wheel in exactly one group, charts that can be read, ties to things that exist.
import type { Bunk, Chart, Crane, Group, Lashing, Transporter } from "../schema.ts";
import { type Draft, refer, unique } from "./draft.ts";
import type { Names } from "./names.ts";
import { checkRigging } from "./riggingCheck.ts";

/** Checks transporters, cranes, rigging and lashings. */
export function checkMachines(draft: Draft, names: Names): void {
  for (const field of ["transporters", "cranes", "rigging", "lashings"]) {
    unique(draft, [field], "id", field === "rigging" ? "rigging assembly" : field.slice(0, -1));
  }
  checkGroups(draft);
  checkRigging(draft);
  for (let i = 0; i < draft.count(["transporters"]); i++) checkTransporter(draft, names, i);
  for (const { item, path } of draft.each<Crane>(["cranes"])) {
    checkChart(draft, item.chart, [...path, "chart"]);
    checkParts(draft, item, path);
  }
  for (const { item, path } of draft.each<Lashing>(["lashings"])) {
    refer(draft, [...path, "transporter"], item.transporter, names.transporters, "transporter");
    if (item.set !== undefined) refer(draft, [...path, "set"], item.set, names.sets, "set");
    refer(draft, [...path, "girder"], item.girder, names.girdersOf(item.set), "girder");
  }
}

/** Ballast and boom that have a place of their own are parts of the crane's whole mass. */
function checkParts(draft: Draft, crane: Crane, path: readonly (string | number)[]): void {
  const ballast = crane.ballastBehind_m === undefined ? 0 : (crane.ballast_t ?? 0);
  const parts = ballast + (crane.boomMass_t ?? 0);
  if (parts < crane.mass_t) return;
  draft.say(
    [...path, "mass_t"],
    `a crane of ${crane.mass_t} t whose ballast and boom weigh ${parts} t`,
    "the mass of the whole crane, more than that of its parts",
    "Correct one of them: mass_t counts ballast and boom.",
  );
}

/** Wheels of a transporter by name: `1L`, `1R` and so on, line 1 rearmost. */
function wheelsOf(lines: number): string[] {
  return Array.from({ length: lines }, (_, i) => [`${i + 1}L`, `${i + 1}R`]).flat();
}

function checkTransporter(draft: Draft, names: Names, i: number): void {
  const at = ["transporters", i];
  const lines = draft.sound<number>([...at, "lines"]);
  const groups = draft.each<Group>([...at, "groups"]);
  if (lines !== null) {
    for (const field of ["drivenLines", "brakedLines"]) {
      const count = draft.sound<number>([...at, field]);
      if (count !== null && count > lines) {
        draft.say(
          [...at, field],
          `${count}`,
          `at most the ${lines} lines of this transporter`,
          "Correct the count.",
        );
      }
    }
    const inGroup = new Map<string, string>();
    for (const { item, path } of groups) checkWheels(draft, item, path, lines, inGroup);
    const all = draft.sound<Group[]>([...at, "groups"]);
    const left = wheelsOf(lines).filter((wheel) => !inGroup.has(wheel));
    if (all !== null && left.length > 0) {
      draft.say(
        [...at, "groups"],
        `${left.length === 1 ? "wheel" : "wheels"} ${left.join(", ")} in no group`,
        "every wheel in exactly one group",
        "Add each to a group.",
      );
    }
  }
  const deck = draft.sound<number>([...at, "deckLength_m"]);
  for (const { item, path } of draft.each<Bunk>([...at, "bunks"])) {
    if (item.kind === "fixed" && item.rocks_pct !== undefined)
      draft.say(
        [...path, "rocks_pct"],
        `${item.rocks_pct} % for a fixed bunk`,
        "a slope that a rocking or turning bunk follows",
        "Take it out, or name the bunk's kind.",
      );
    if (deck === null || Math.abs(item.at_m) <= deck / 2 + 1e-9) continue;
    draft.say(
      [...path, "at_m"],
      `a bunk ${item.at_m} m from the deck's centre`,
      `at most half the deck's length, ${deck / 2} m, either way`,
      "Move the bunk on to the deck.",
    );
  }
  const coupled = draft.sound<Transporter["coupledTo"]>([...at, "coupledTo"]);
  if (typeof coupled === "string") {
    refer(draft, [...at, "coupledTo"], coupled, names.transporters, "transporter");
  }
}

function checkWheels(
  draft: Draft,
  group: Group,
  path: readonly (string | number)[],
  lines: number,
  inGroup: Map<string, string>,
): void {
  group.wheels.forEach((wheel, w) => {
    const at = [...path, "wheels", w];
    const taken = inGroup.get(wheel);
    if (Number.parseInt(wheel, 10) > lines) {
      draft.say(
        at,
        `wheel ${wheel}`,
        `wheels 1L to ${lines}R: this transporter has ${lines} ${lines === 1 ? "line" : "lines"}`,
        "Correct the wheel, or the number of lines.",
      );
    } else if (taken !== undefined) {
      draft.say(
        at,
        `wheel ${wheel}, which is in group "${taken}" already`,
        "every wheel in exactly one group",
        "Take it out of one of the two.",
      );
    } else inGroup.set(wheel, group.name);
  });
}

/** Names that the cranes' hooks carry as supports. */
const hookNames = ["far crane", "near crane"];

/** Group names are names of supports: no two alike in the plan, none like a hook or a bearing. */
function checkGroups(draft: Draft): void {
  const seen = new Set<string>();
  for (let i = 0; i < draft.count(["transporters"]); i++) {
    for (const { item, path } of draft.each<Group>(["transporters", i, "groups"])) {
      const taken = seen.has(item.name) || hookNames.includes(item.name) || /^(near|far) /.test(item.name);
      if (taken) {
        draft.say(
          [...path, "name"],
          JSON.stringify(item.name),
          "a name that no other support of the plan has, and that does not begin with near or far",
          "Give the group another name.",
        );
      }
      seen.add(item.name);
    }
  }
}

function checkChart(draft: Draft, chart: Chart, path: readonly (string | number)[]): void {
  if (chart.interpolation && (chart.page ?? "").trim() === "") {
    draft.say(
      [...path, "page"],
      "interpolation without a page",
      "the page of the chart on which the maker allows interpolation",
      "Name the page, or set interpolation to false.",
    );
  }
  const seen = new Set<string>();
  chart.rows.forEach((row, i) => {
    const place = `${row.radius_m} m radius with ${row.boom_m} m boom`;
    if (seen.has(place)) {
      draft.say(
        [...path, "rows", i],
        `${place} a second time`,
        "every radius and boom length once",
        "Take one row out.",
      );
    }
    seen.add(place);
  });
}
