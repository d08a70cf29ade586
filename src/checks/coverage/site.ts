// Coverage: ground, wind and weather, tolerances and fit at the bearings.

import { asked, computed, notCovered, type Requirement } from "./form.ts";

export const siteRows: Requirement[] = [
  computed(
    "GR-1",
    "Firm, drained, graded ground below cranes, with what lies under it known.",
    ["ground record", "presumptive bearing"],
    "Allowable pressure with its source for every crane and every stretch of path.",
  ),
  computed(
    "GR-2",
    "Greatest pressure below tracks over the whole swing.",
    ["track pressure", "track pressure over the swing", "track pressure unloaded"],
    "Two tracks on ground that cannot pull; as it stands, over all directions, and unloaded.",
  ),
  computed(
    "GR-3",
    "Mats: area, bending, shear.",
    ["mat bending", "mat shear"],
    "By the published sheet, with the stresses of the plan's material.",
  ),
  computed(
    "GR-4",
    "Distance from slopes, trenches and walls.",
    ["set-back"],
    "By the rule chosen; near an abutment an engineer signs.",
  ),
  computed(
    "GR-5",
    "Settlement is watched, with levels at which something is done.",
    ["settlement", "settlement action level"],
    "What the plan's steps let sink against action levels, and these against the settlement whose effect was looked at (spread.settlement_mm); readings go into the record.",
  ),
  notCovered("GR-6", "How cribbing is stacked.", "Belongs to the step cards, which are not built yet."),
  computed(
    "GR-7",
    "Machines on a structure ask for a check of that structure.",
    ["structure underfoot"],
    "site.underfoot against axle lines and tracks above it.",
  ),
  computed(
    "WX-1",
    "A wind limit for every step, the lowest of all that limit it.",
    ["highest wind"],
    "The highest wind at which each step passes is searched; a limit stated above it is a stop.",
  ),
  computed(
    "WX-2",
    "Force of the wind on set, boom and rigging, and what each crane gets of it.",
    ["in the wind: group load"],
    "Every pose is solved again in the wind of its step, from both sides.",
  ),
  computed(
    "WX-3",
    "Design gust, reduced for how long the steel stands so.",
    ["overnight: group load"],
    "Speed times the factor for the weeks of exposure; pressure falls with its square.",
  ),
  computed(
    "WX-4",
    "A chart's wind limit holds for the sail area of its maker.",
    ["chart wind"],
    "Lowered by the square root of areas and force coefficients.",
  ),
  computed(
    "WX-5",
    "When work stops.",
    ["wind limit"],
    "Standing limits with their source; a plan tightens them.",
  ),
  computed(
    "WX-6",
    "Gusts, and wind on the load and not on the boom alone.",
    ["highest wind"],
    "V is the 3-s gust; averages of an instrument are converted; set, boom and rigging each have their force.",
  ),
  computed(
    "WX-7",
    "A forecast for the whole group of steps with time in hand.",
    ["forecast"],
    "site.wind.forecast against the minutes of the steps, with time in hand.",
  ),
  computed(
    "FT-1",
    "Levels of seats as built, ahead of time.",
    ["seat level", "bearing plane", "bearing share"],
    "As built against design: levels, the plane of the landed set, parts of its bearings; shims proposed by 'solve --also landing'.",
  ),
  asked(
    "FT-2",
    "Line and level checked while steel goes up.",
    "Readings go into the record by set and step.",
    "coverage/asked.test.ts: the plan takes who sealed the drawings in its notes, and readings by set and step",
  ),
  computed(
    "FT-3",
    "How the set lands: grade, gap at backwalls, offset of bearings for its temperature.",
    ["backwall gap", "bearing offset", "bearing side force", "length change"],
    "Ends, soles and what holds them, at the temperature of the landing and as the set hangs.",
  ),
  computed(
    "FT-4",
    "Which end touches first, and how loads go over.",
    ["landing order", "late contact", "bearing share"],
    "From the solved landing; 'solve --also landing' prints it stage by stage.",
  ),
  computed(
    "FT-5",
    "Sweep of straight girders.",
    ["sweep", "sweep and CG"],
    "Against the limit, and what it does to the CG.",
  ),
  computed(
    "FT-6",
    "Fit to the set landed before.",
    ["infill fit"],
    "Difference of levels at the members between, against the load under which they were made to fit.",
  ),
  computed(
    "FT-7",
    "Bolts and pins in before release.",
    ["count not met", "bolted fraction", "release condition"],
    "Counted by 'brace' and 'hold'; part of the holes by splice.",
  ),
  computed(
    "FT-8",
    "Clear of the set beside and of the backwall while it is lowered.",
    ["clearance", "backwall gap", "gap between sets"],
    "Swept over the step, with an allowance for sway.",
  ),
];
