// Coverage: the set and its weights, strength and stability.

import { computed, type Requirement, shown } from "./form.ts";

export const setRows: Requirement[] = [
  computed(
    "SW-1",
    "Weight, centre of gravity and size of the load, each with its source.",
    ["weight check"],
    "Take-off from plates and parts against the ledger's low and high, line by line.",
  ),
  computed(
    "SW-2",
    "All rigging and everything fixed to the set counts as load.",
    ["hook load"],
    "Net load, rigging, block, rope below the tip, auxiliary block: part by part in its trace.",
  ),
  computed(
    "SW-3",
    "Weights from sealed computations or from weighing.",
    ["missing data"],
    "Each ledger line has a source and a date; blank ones are open items.",
  ),
  computed(
    "SW-4",
    "Every set is different; what was copied is confirmed for it.",
    ["unconfirmed data"],
    "sets[].unconfirmed holds the places copied from another set until they are confirmed.",
  ),
  computed(
    "SW-5",
    "The spread of weight and centre of gravity is carried into every load.",
    ["in the spread: bearing load"],
    "Corners of weight, CG, stiffness, hooks, settlement, friction and wind, each run through all steps.",
  ),
  computed(
    "SW-6",
    "Parts that may shift are found and fixed; lift points are good for their load.",
    ["loose part", "lift point"],
    "sets[].looseParts and pick stations that were copied and not confirmed; tag lines and temporary bracing by name.",
  ),
  computed(
    "SW-7",
    "Marks as on the shop drawings, and which end goes first.",
    ["end for end"],
    "Marks of the pieces and of the forward end; what an end-for-end swap would do to the CG.",
  ),
  computed(
    "SW-8",
    "The indicated load is compared with the ledger at the first take-up.",
    ["reading off", "indicated load"],
    "The step 'trial lift' compares the reading with the ledger's mass within its band.",
  ),
  computed(
    "ST-1",
    "Loads, stability of girders and set, uplift, supports, bearings, frames and picks at every stage.",
    ["bearing load", "uplift", "girder bending", "set lean", "set level", "lean restraint lost"],
    "Every check at every stored pose; the findings panel and the CSV are the matrix of stages.",
  ),
  computed(
    "ST-2",
    "Temporary supports and cranes are good for their loads at every pick.",
    ["bearing load", "group load"],
    "Every group, bunk and hook against its rated load over the whole movement.",
  ),
  computed(
    "ST-3",
    "The free end beyond a support is not too slender.",
    ["girder slenderness", "girder too slender", "field piece slenderness"],
    "Unbraced length over flange width, caution from 80, stop from 90.",
  ),
  computed(
    "ST-4",
    "Two girders may buckle as one though their frames are close.",
    ["two-girder set", "buckling"],
    "The published formula where it applies, and the eigenvalue of the stage on request.",
  ),
  computed(
    "ST-5",
    "Permanent steel is checked at each stage of this method.",
    ["girder bending", "splice moment", "splice shear"],
    "Moments, shear and splices against the chosen rule set; envelopes on the Girders panel.",
  ),
  computed(
    "ST-6",
    "Web and flange stand the point load at each bunk, pick and bearing.",
    ["web yielding", "web crippling", "stiffener load"],
    "Yielding and crippling between stiffeners, and the stiffener where there is one.",
  ),
  computed(
    "ST-7",
    "The overhang does not turn over, also when a hook lets go.",
    ["tipping", "unbacked", "tip load", "no equilibrium"],
    "Moment ratio about the governing axis at every pose; every hook and group lost in turn.",
  ),
  shown(
    "ST-8",
    "How far the free end droops, and where the hook finds it.",
    "Nose and tail at every pose in the JSON, and the scene, which is drawn elastic.",
    "shape/girders.test.ts: their soffit is at datum plus droop: 1 mm between mesh stations, as droop is drawn straight from one to the next",
  ),
  computed(
    "ST-9",
    "Frames, bolts and blocks counted before a hook lets go.",
    ["count not met", "release condition"],
    "The step 'brace' counts them; conditions of 'unhook' say what must be in before the hook lets go.",
  ),
  computed(
    "ST-10",
    "Bearings blocked while steel is erected.",
    ["release condition"],
    "Blocks are a condition of letting go, and named where they are missing.",
  ),
  computed(
    "ST-11",
    "Girders plumb within the owner's limit before they are released.",
    ["web plumb"],
    "Plumb of each web of the landed set against the limit; one that nobody set is an open item.",
  ),
];
