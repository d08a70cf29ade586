// Coverage: transporters, cranes and rigging.

import { asked, computed, notCovered, type Requirement } from "./form.ts";

export const machineRows: Requirement[] = [
  computed(
    "TR-1",
    "How many transporters: by stability, by the strength of their frames, by what their cylinders carry.",
    ["line load", "side load", "spine moment"],
    "Every axle line, side and group at every pose, the bending of each spine; groups as pressure where cylinderArea_mm2 is given.",
  ),
  computed(
    "TR-2",
    "Legs on one oil circuit carry alike and act as one support.",
    ["group load"],
    "Hydraulic groups are part of the statics; each is one support at the middle of its wheels.",
  ),
  computed(
    "TR-3",
    "Loads for every overhang, before and after every hand-over.",
    ["group load", "change per 10 mm"],
    "Every pose is solved; the bands show the shares, changes faster than the crew can follow are findings.",
  ),
  computed(
    "TR-4",
    "How far from tipping, with lean, wind, braking, spread of the CG and soft suspension.",
    ["tip load", "tip angle", "tip distance", "tilt growth"],
    "As a load, an angle and a distance, with the second order of soft trains; never a lone pass.",
  ),
  computed(
    "TR-5",
    "Stroke in use against stroke there is, over the whole path.",
    ["stroke", "stroke budget"],
    "Grade, vertical curve, crossfall, settlement, tyres and packing, at every pose.",
  ),
  computed(
    "TR-6",
    "Change of slope along and across, and twist of four corners.",
    ["twist"],
    "Twist as the fourth corner's height over the plane of three; limits by the owner.",
  ),
  asked(
    "TR-7",
    "Tolerances by the owner, and how they are measured.",
    "limits.rules and overrides take every limit with its source; a limit that nobody set says so.",
  ),
  computed(
    "TR-8",
    "The path: grade, crossfall, bearing, obstacles.",
    ["axle pressure"],
    "path.points by chainage with pressure and its source; boxes and lines beside it; curves are refused.",
  ),
  computed(
    "TR-9",
    "Packing in staging gives the relative levels of the final seats.",
    ["packing"],
    "Packing is proposed from seats, camber, grade and crossfall, and compared with the plan's.",
  ),
  computed(
    "TR-10",
    "Starting, stopping and turning load the set and its bunks.",
    ["slip under way", "braking"],
    "A named acceleration along and across, against friction and ties.",
  ),
  computed(
    "TR-11",
    "Edge distance at the abutment, surcharge on its walls.",
    ["edge distance"],
    "Nearest wheel and track to each edge, pressure there, and who signed for it.",
  ),
  computed(
    "TR-12",
    "A pump, hose, tyre or group that fails.",
    ["unbacked", "line lost"],
    "Every group is lost in turn; an axle line lost hands its load to the rest of its group.",
  ),
  notCovered(
    "TR-13",
    "The mover's own experience.",
    "Names stand in people.roles; past work is not asked for.",
  ),
  computed(
    "CR-1",
    "Place, radius and chart of each crane for every pick.",
    ["hook load", "chart left"],
    "Charts as rows with their page, one configuration a crane, position and boom from the plan.",
  ),
  computed(
    "CR-2",
    "Use of the crane over the whole way, not at its ends.",
    ["hook load"],
    "Read at every pose; where it crosses its limit is found as an event.",
  ),
  computed(
    "CR-3",
    "A lift by several cranes has a qualified planner and one director.",
    ["several cranes"],
    "people.roles and header; what is blank is said.",
  ),
  computed(
    "CR-4",
    "Limit of each crane in a lift by several, by the rule that holds there.",
    ["hook load"],
    "Ready-made rules in limits.use, with what crossing them means; the lowest governs and is named.",
  ),
  computed(
    "CR-5",
    "Over a railway: 150 % of the pick with its rigging.",
    ["hook load"],
    "A ready-made rule.",
  ),
  computed(
    "CR-6",
    "No plan without capacity in hand.",
    ["hook load in hand"],
    "Near the limit it says what a larger radius, a lean or a greater share would make of it.",
  ),
  computed(
    "CR-7",
    "Shares move with heights of hooks, CG, radius and plumb.",
    ["line lean", "boom side load"],
    "Solved at every pose; side and radial parts of a leaning line.",
  ),
  asked(
    "CR-8",
    "Like cranes, raising rather than lowering booms, a rehearsal.",
    "Steps and notes of the plan; a rehearsal is a 'hold'.",
  ),
  computed(
    "CR-9",
    "Speeds of hoist, boom and swing.",
    ["hoist speed"],
    "Speeds of each crane against height and minutes of the step.",
  ),
  computed(
    "CR-10",
    "Travel with load only where the maker allows it.",
    ["out of order"],
    "The step 'walk' has its own checks and chart.",
  ),
  computed(
    "CR-11",
    "Level within the maker's limit; a crane leans and its radius grows.",
    ["crane level"],
    "Level error and growth under load go into the radius of the chart.",
  ),
  computed(
    "CR-12",
    "Every part of the rigging against its rating.",
    ["part of rigging", "sling angle"],
    "Legs by geometry and by stretch, spreader, shackles: used against rated.",
  ),
  computed("CR-13", "Slings kept from edges.", ["edge guard"], "No guard, no lift."),
  computed(
    "CR-14",
    "The set hangs with the grade and crossfall of its seats.",
    ["hung pose"],
    "Hung set against the plane of its bearings; lengths of slings are proposed.",
  ),
  computed(
    "CR-15",
    "Attachments bolted or welded for the lift.",
    ["lift attachment"],
    "How, for what load, and how it comes off again.",
  ),
  computed(
    "CR-16",
    "Obstacles, power lines, tail swing, the other crane.",
    ["clearance"],
    "Least distance of bodies over each step, with its place and both bodies.",
  ),
  computed(
    "CR-17",
    "Two full wraps on the drum; tag lines; anybody may stop the lift.",
    ["wraps left", "tag lines"],
    "Rope on the drum at the lowest hook; tag lines of the set; the stop word.",
  ),
];
