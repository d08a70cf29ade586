// What each section tells, for a list to choose from. Apart from the sections themselves, so that a page can show the list
// without loading them.

export const sectionTitles: Readonly<Record<string, string>> = {
  clearance: "clearances: least distances of booms, tails, set, transporters and site, step by step",
  ground: "ground: pressures below tracks and axle lines, mats, distances to walls and edges",
  landing: "landing and fit: seats, temperature, order, shims, packing",
  rigging: "rigging: parts used against rated, legs, the hung set against its seats, slings proposed",
  wind: "wind: the highest in which each step passes, and what governs it (some seconds)",
  coverage: "coverage: what is computed, shown or asked of all that an erection plan must answer",
};
