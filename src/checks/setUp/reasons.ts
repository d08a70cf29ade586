// Why each value of a first plan is what it is: typed, not a value at all, or a starter value that follows from something.

import { leavesAt, type Plan, type PlanPath, printPath } from "../../plan/index.ts";
import type { Answers } from "./answers.ts";
import { STARTER } from "./machines.ts";

/** Places without a value to confirm: names, words, what a person decides, what nobody has given yet. */
const NO_VALUES = [
  /^(shows|format|version|invented|header|limits|spread|people|accept|rigging$|lashings$|cranes$|transporters$)\b/,
  /\.(id|name|line|kind|girder|source|date|transporter|crane|rigging)$/,
  /^site\.(underfoot|obstacles|seats|bearings|stopLines)$/,
  /^site\.skew_deg$/,
  /^site\.seats\[\d+\]\.asBuilt_m$/,
  // Where a set starts, lies and is picked, and its steps, come with the proposal, which lists them itself.
  /^sets\[\d+\]\.(ledger|start|picks|onTransporters|steps)\b/,
  /\.chart\.(invented|interpolation)$/,
  /\.travelWithLoad$/,
];

/** Places that the answers hold, by what was answered. */
function typed(answers: Answers): RegExp[] {
  return [
    /^site\.path\.points\[\d+\]\.crossfall_pct$/,
    /^site\.path\.points\[1\]\.elevation_m$/,
    /^transporters\[\d+\]\.(lines|pitch_m|gauge_m|allowedLine_kN)$/,
    /^cranes\[\d+\]\.(position\.(chainage_m|y_m)|boomLength_m)$/,
    /^cranes\[\d+\]\.chart\.rows\[\d+\]\.(radius_m|boom_m|rated_t)$/,
    /^sets\[0\]\.length_m$/,
    /^sets\[0\]\.girders\[\d+\]\.y_m$/,
    /^sets\[0\]\.girders\[\d+\]\.pieces\[0\]\.(from_m|to_m)$/,
    ...(answers.gap.kind === "chainages" ? [/^site\.(near|far)Face_m$/] : []),
    ...(answers.bearings.kind === "chainages" || answers.gap.kind === "chainages"
      ? [/^site\.(near|far)Bearing_m$/]
      : []),
    ...(answers.sets.steel.kind === "plates"
      ? [/^sets\[0\]\.girders\[\d+\]\.pieces\[0\]\.(topFlange_mm|web_mm|bottomFlange_mm)$/]
      : []),
  ];
}

/** What starter values follow from, by place. */
const FOLLOWS: [RegExp, string][] = [
  [
    /^site\.(near|far)(Face|Bearing)_m$/,
    "chainages counted from a near face at 100, since only the clear gap was told",
  ],
  [/^site\.(near|far)Backwall_m$/, "0.3 m of air beyond the ends of the landed set"],
  [/^site\.path\.points/, "from the stated grade, as far back as set and rear transporter need"],
  [/^site\.path\.clear/, "room for the front transporter to leave, away from the near crane"],
  [/^site\.seats/, "level across, near seats at the end of the path, far seats up its grade"],
  [/^site\.bearings\[\d+\]\.holds$/, "one fixed bearing, common practice, no source"],
  [
    /^site\.bearings/,
    "from the weight of the set: twice its part as rating, a third of a mm of give under it",
  ],
  [/^site\.stopLines/, "1.4 m behind the near backwall, common practice, no source"],
  [/^site\.below/, "not asked"],
  [
    /^transporters\[\d+\]\.(mass_t|cylinderStiffness|bunkStiffness|bunkSide)/,
    "in proportion to the allowed line load",
  ],
  [/^transporters\[\d+\]\.(deckLength|deckWidth)/, "from lines, pitch and gauge"],
  [
    /^transporters\[\d+\]\.groups/,
    "three groups: rear half, front left, front right; common practice, no source",
  ],
  [/^transporters/, "common practice, no source"],
  [/^cranes\[\d+\]\.position\.elevation_m$/, "as high as the end of the path"],
  [/^cranes\[\d+\]\.mass_t$/, "0.2 t for each t m of the greatest load moment in the chart as typed"],
  [/^cranes\[\d+\]\.(boomFoot|tailRadius|track)/, "with the cube root of the crane's mass"],
  [
    /^cranes\[\d+\]\.(stiffness|radiusGrowth)/,
    "boom tip gives by 1/60 of the boom under the greatest rating; rope of 35 mm",
  ],
  [/^cranes\[\d+\]\.(deductions|partsOfLine)/, "from the greatest rating, on a rope of 35 mm"],
  [/^cranes/, "common practice, no source"],
  [/^rigging\[\d+\]\.(mass_t|ratedLoad|slingStiffness)/, "from the weight of the set"],
  [/^rigging\[\d+\]\.softeners$/, "edge guards are meant to be put on: no guard, no lift"],
  [/^rigging/, "common practice, no source"],
  [/^sets\[\d+\]\.(steelDensity)/, "EN 1991-1-1 table A.4"],
  [
    /^sets\[\d+\]\.fabricationFactor/,
    "10 % for stiffeners and welds where plates are given, else counted in the weight",
  ],
  [/^sets\[\d+\]\.soleStations/, "the set lies evenly over both bearing lines"],
  [/^sets\[\d+\]\.girders\[\d+\]\.camber_mm$/, "no camber"],
  [/^sets\[\d+\]\.girders/, "plates chosen to match the stated weight per metre"],
  [/^sets\[\d+\]\.crossFrames/, "X-frames of angles 100 x 10 at most 7 m apart, common practice, no source"],
  [/^sets\[\d+\]\.(splices|attachments)/, "none"],
];

/** The plan with every starter value listed as not confirmed, with what it follows from. */
export function withDoubts(plan: Plan, answers: Answers): Plan {
  const known = [...NO_VALUES, ...typed(answers)];
  const groups = new Map<string, string[]>();
  const doubt = (path: PlanPath) => {
    const place = printPath(path);
    if (known.some((pattern) => pattern.test(place))) return;
    const [, why] = FOLLOWS.find(([pattern]) => pattern.test(place)) ?? [null, "not asked"];
    groups.set(why, [...(groups.get(why) ?? []), place]);
  };
  // The values of a copied set are listed in the set itself; its steps are no data, but one proposal.
  for (const path of leavesAt(
    { ...plan, sets: plan.sets.slice(0, 1).map(({ steps: _, ...set }) => set) },
    [],
  ))
    doubt(path);
  const kept = (plan.unconfirmed ?? []).filter((group) => !group.why.startsWith(STARTER));
  const starters = [...groups].map(([why, places]) => ({ why: `${STARTER}: ${why}`, places }));
  return { ...plan, unconfirmed: [...starters, ...kept] };
}
