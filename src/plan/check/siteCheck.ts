// The site taken as a whole: order of faces and bearing lines, rising path, and what is not solved yet, by name.
import type { Bearing, CraneGround, Edge, PathPoint, Seat, Site, Underfoot } from "../schema.ts";
import { type Draft, type Part, refer, rising, unique } from "./draft.ts";
import type { Names } from "./names.ts";
import { checkWind } from "./windCheck.ts";

/** Checks `site` and everything in it. */
export function checkSite(draft: Draft, names: Names): void {
  const skew = draft.sound<number>(["site", "skew_deg"]);
  if (skew !== null && skew !== 0) {
    draft.say(
      ["site", "skew_deg"],
      `a skew of ${skew} deg`,
      "0: skewed bearing lines are not solved by this version",
      "Work with square bearing lines, or leave this bridge to another method.",
    );
  }
  if (draft.sound<boolean>(["site", "path", "curved"]) === true) {
    draft.say(
      ["site", "path", "curved"],
      "a path curved in plan",
      "false: a path curved in plan is not solved by this version",
      "Plan a straight path, or leave this move to another method.",
    );
  }
  checkOrder(draft);
  const points = draft.each<PathPoint>(["site", "path", "points"]);
  rising(
    draft,
    points.map(({ item, path }) => ({ value: item.chainage_m, path: [...path, "chainage_m"] })),
    "chainage",
    "m",
  );
  for (const one of draft.each<Underfoot>(["site", "underfoot"])) checkInPlan(draft, one);
  unique(draft, ["site", "craneGround"], "name", "stretch of ground");
  for (const one of draft.each<CraneGround>(["site", "craneGround"])) checkInPlan(draft, one);
  for (const { item, path } of draft.each<Edge>(["site", "edges"])) {
    if (item.from.chainage_m === item.to.chainage_m && item.from.y_m === item.to.y_m)
      draft.say([...path, "to"], "an edge of no length", "two different points", "Move one of the two.");
  }
  checkPlaces<Seat>(draft, names, "seats", "seat");
  checkPlaces<Bearing>(draft, names, "bearings", "bearing");
  checkStates(draft, names);
  checkWind(draft);
}

/** What lies between two chainages, and between a right and a left edge: each pair in order. */
function checkInPlan(draft: Draft, { item, path }: Part<Underfoot | CraneGround>): void {
  if (item.to_m <= item.from_m)
    draft.say(
      [...path, "to_m"],
      `an end at ${item.to_m} m`,
      `more than its start, ${item.from_m} m`,
      "Exchange start and end.",
    );
  if (item.fromY_m !== undefined && item.toY_m !== undefined && item.toY_m <= item.fromY_m)
    draft.say(
      [...path, "toY_m"],
      `a left edge at ${item.toY_m} m`,
      `more than its right edge, ${item.fromY_m} m`,
      "Exchange the two: y runs to the left.",
    );
}

/** From near to far: backwall, bearing line, face, gap, face, bearing line, backwall. */
function checkOrder(draft: Draft): void {
  const order: (keyof Site)[] = [
    "nearBackwall_m",
    "nearBearing_m",
    "nearFace_m",
    "farFace_m",
    "farBearing_m",
    "farBackwall_m",
  ];
  let before: { key: keyof Site; value: number } | null = null;
  for (const key of order) {
    const value = draft.sound<number>(["site", key]);
    if (value === null) continue;
    const gap = key === "farFace_m" && before?.key === "nearFace_m";
    if (before !== null && (value < before.value || (gap && value === before.value))) {
      draft.say(
        ["site", key],
        `${value} m`,
        `${gap ? "more than" : "not less than"} ${before.key} (${before.value} m): chainage runs from the near side to the far side`,
        "Correct one of the two chainages.",
      );
    }
    before = { key, value };
  }
}

/** Seats and bearings: each on a known girder of a known set, each once. */
function checkPlaces<T extends Seat | Bearing>(
  draft: Draft,
  names: Names,
  field: "seats" | "bearings",
  kind: string,
): void {
  const seen = new Set<string>();
  for (const { item, path } of draft.each<T>(["site", field])) {
    if (item.set !== undefined) refer(draft, [...path, "set"], item.set, names.sets, "set");
    refer(draft, [...path, "girder"], item.girder, names.girdersOf(item.set), "girder");
    const place = JSON.stringify([item.line, item.girder, item.set ?? null]);
    if (seen.has(place)) {
      const of = item.set === undefined ? "" : ` of set ${item.set}`;
      draft.say(
        path,
        `a second ${kind} for ${item.line} ${item.girder}${of}`,
        `one ${kind} for each girder at each bearing line`,
        "Take one of the two out.",
      );
    }
    seen.add(place);
  }
}

function checkStates(draft: Draft, names: Names): void {
  type State = { set?: string; step: string };
  for (const { item, path } of draft.each<State>(["site", "below", "states"])) {
    if (item.set !== undefined) refer(draft, [...path, "set"], item.set, names.sets, "set");
    refer(draft, [...path, "step"], item.step, names.stepsOf(item.set), "step");
  }
}
