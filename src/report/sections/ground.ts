// The section on ground: pressures below tracks, axle lines and tyres, mats, and distances to walls and edges.

import { type GroundDistance, type GroundUse, groundUse, type SetResult } from "../../checks/index.ts";
import { atOnce, type Section, type Table } from "./form.ts";
import { sectionTitles } from "./titles.ts";

const place = (set: SetResult, at: GroundUse["at"]): string[] => [
  `${at.step + 1} ${set.steps[at.step].step.id}`,
  Number(at.progress.toFixed(6)).toString(),
];

function useTable(set: SetResult, uses: readonly GroundUse[]): Table {
  return {
    title: "ground, each check where it is used most of all stored poses",
    words: [
      "tracks: a rigid crane on two tracks, ground that gives way in proportion and cannot pull; below mats over the length that they spread",
      "over the swing: the load and radius of that pose, swung all round; unloaded: an empty hook at the least radius of the chart",
      "axle pressure: over a spread area of the plan, or else the shadow of the deck, lines x pitch x width (common practice, no source)",
    ],
    head: ["check", "subject", "value", "allowed", "unit", "use", "step", "progress", "where", "source"],
    sides: ["left", "left", "right", "right", "left", "right", "left", "right", "left", "left"],
    rows: uses.map((u) => [
      u.check,
      u.subject,
      u.value.toFixed(u.digits),
      u.limit.toFixed(u.digits),
      u.unit,
      u.use.toFixed(2),
      ...place(set, u.at),
      u.where,
      u.source,
    ]),
  };
}

function distanceTable(set: SetResult, distances: readonly GroundDistance[]): Table {
  return {
    title: "least distances on the ground to walls and edges",
    words: ["from tyres, tracks and mats, in plan; below 0: beyond the face of a backwall"],
    head: ["machine", "to", "distance m", "step", "progress"],
    sides: ["left", "left", "right", "left", "right"],
    rows: distances.map((d) => [d.machine, d.to, d.distance.toFixed(2), ...place(set, d.at)]),
  };
}

export const groundSection: Section = {
  name: "ground",
  title: sectionTitles.ground,
  begin: atOnce((ctx, set) => {
    const { uses, distances } = groundUse(ctx, set);
    return [useTable(set, uses), distanceTable(set, distances)];
  }),
};
