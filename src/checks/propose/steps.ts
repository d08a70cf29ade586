// The steps of a proposal: one fixed order of work, with the distances, loads and heights that a choice gives.

import { leverRule } from "../../mechanics/index.ts";
import { bearingName, bearingsOf, hookName, pathAt, type Step } from "../../plan/index.ts";
import { boomOf, hookAbovePicks } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import type { Choice, Places } from "./choice.ts";
import { bunkCentre, type Prospect, pickHeight } from "./prospect.ts";
import { waysOut } from "./wayOut.ts";

/** Heights that only a solved pose can tell, mm. */
export interface Heights {
  /** Both hooks up, before the set is brought over. */
  lift: number;
  /** Down again, to just above the seats. */
  lowerFar: number;
  lowerNear: number;
  /** Hook heights at which taking load must end. */
  farCap: number;
  nearCap: number;
  /** The rear train further down than its gap, where the set above its way out asks for it. */
  rearDown: number;
}

/** Heights to begin a search with: the caps are set when the choice is made. */
export const FIRST_HEIGHTS: Heights = {
  lift: 200,
  lowerFar: 0,
  lowerNear: 0,
  farCap: 3000,
  nearCap: 3000,
  rearDown: 0,
};

/** Part of the allowed line lean that a bite may use up. Common practice, no source. */
const BITE_PART = 0.6;
/** Load caps stand this far above the load to be taken. Common practice, no source. */
const CAP = 1.15;
/** The landing in stages: parts of the mean hook load. */
const STAGES = [0.75, 0.5, 0.25];

const round = (x: number, to: number) => Math.round(x / to) * to;
const tidy = (x: number) => Number(x.toFixed(3));

/** Net loads by levers, kN: far hook with the rear train, then both hooks. */
export function leverLoads(p: Prospect, c: Choice) {
  const [cg] = p.cg;
  const [, far] = leverRule(p.weight, cg - c.rearDeck - bunkCentre(p.rear), c.farPick - cg);
  const [near, farTogether] = leverRule(p.weight, cg - c.nearPick, c.farPick - cg);
  return { far: far / 1000, near: near / 1000, farTogether: farTogether / 1000 };
}

/** Bite in which the line leans by no more than its part of the limit, at the shortest rope, m. */
function biteOf(p: Prospect, c: Choice, places: Places): number {
  const limit = (limitOf(p.plan, "line lean")?.value ?? 3) / 100;
  const level =
    (pathAt(p.plan, p.stop)?.elevation_m ?? 0) + p.front.bunkHeight_m + pickHeight(p.set, c.farPick);
  const tip = boomOf(p.far, [places.farTakes + c.farPick, p.across]).tip[2];
  const rope = Math.max(1, tip - level);
  const above = hookAbovePicks(p.farRig);
  return Math.min(2, Math.max(0.1, Math.floor(BITE_PART * limit * Math.max(rope, above) * 10) / 10));
}

/** All steps of a choice in their order. */
export function stepsOf(p: Prospect, c: Choice, places: Places, h: Heights, lashings: string[]): Step[] {
  const groups = (t: Prospect["rear"]) => t.groups.map((g) => g.name);
  const onTrains = [...groups(p.rear), ...groups(p.front)];
  const far = hookName(p.far);
  const near = hookName(p.near);
  const bearings = bearingsOf(p.plan, p.set).map(bearingName);
  const out = waysOut(p, places, c.rearDeck, c.frontDeck);
  const loads = leverLoads(p, c);
  const both = [p.rear.id, p.front.id];
  const voice = wordsOf(p);
  const steps: Step[] = [];
  const add = (step: Step) => steps.push(step);

  if (lashings.length > 0)
    add({
      id: "lash-down",
      do: "lash",
      title: "Tie the set down on both trains",
      lashings,
      brakes: both,
      ...voice.trains,
      carries: onTrains,
    });
  add({
    id: "brief",
    do: "hold",
    ...voice.all,
    releasedBy: "lift director",
    evidence: "crews briefed, wind below the limit, path walked",
    brakes: both,
    carries: onTrains,
  });
  const first = tidy(places.farTakes - places.start);
  if (first > 0)
    add({
      id: "roll-out",
      do: "roll",
      title: "Roll until the front axle stands at the stop line",
      distance_m: first,
      brakes: both,
      ...minutes(first, p.rear.speed_m_per_min, p.front.speed_m_per_min),
      ...voice.trains,
      carries: onTrains,
    });
  add({
    id: "far-hook-up",
    do: "hook up",
    crane: p.far.id,
    brakes: both,
    ...voice.cranes,
    carries: onTrains,
  });
  if (lashings.length > 0)
    add({ id: "untie", do: "unlash", lashings, brakes: both, ...voice.trains, carries: onTrains });
  add({
    id: "far-takes",
    do: "take load",
    title: "Far crane takes the front",
    crane: p.far.id,
    ...taken(loads.far, c.farShare),
    heightCap_mm: h.farCap,
    brakes: both,
    ...voice.cranes,
    carries: [...onTrains, far],
  });
  add({
    id: "front-down",
    do: "jack down",
    title: "Lower the front train clear of the set",
    transporter: p.front.id,
    until: { gap_mm: out.front.gap_mm },
    brakes: both,
    ...voice.trains,
    carries: [...groups(p.rear), far],
  });
  add({
    id: "front-out",
    do: "drive out",
    title: `Front train leaves to the ${out.front.toward}`,
    transporter: p.front.id,
    toward: out.front.toward,
    distance_m: out.front.distance_m,
    brakes: [p.rear.id],
    ...voice.trains,
    carries: [...groups(p.rear), far],
  });
  const second = tidy(places.nearTakes - places.farTakes);
  if (second > 0)
    add({
      id: "roll-with-far",
      do: "roll together",
      title: "Rear train rolls, far crane follows in bites",
      distance_m: second,
      cranes: [p.far.id],
      hold: "elevation",
      bite_m: biteOf(p, c, places),
      follow: "boom",
      brakes: [p.rear.id],
      ...voice.all,
      carries: [...groups(p.rear), far],
    });
  add({
    id: "near-hook-up",
    do: "hook up",
    crane: p.near.id,
    brakes: [p.rear.id],
    ...voice.cranes,
    carries: [...groups(p.rear), far],
  });
  add({
    id: "near-takes",
    do: "take load",
    title: "Near crane takes the rear",
    crane: p.near.id,
    ...taken(loads.near, c.nearShare),
    heightCap_mm: h.nearCap,
    brakes: [p.rear.id],
    ...voice.cranes,
    carries: [...groups(p.rear), far, near],
  });
  add({
    id: "rear-down",
    do: "jack down",
    title: "Lower the rear train clear of the set",
    transporter: p.rear.id,
    until: { gap_mm: out.rear.gap_mm + h.rearDown },
    brakes: [p.rear.id],
    ...voice.trains,
    carries: [far, near],
  });
  add({
    id: "rear-out",
    do: "drive out",
    title: `Rear train leaves ${out.rear.toward === "back" ? "backwards" : `to the ${out.rear.toward}`}`,
    transporter: p.rear.id,
    toward: out.rear.toward,
    distance_m: out.rear.distance_m,
    ...voice.trains,
    carries: [far, near],
  });
  const hooks = (farHeight: number, nearHeight: number) =>
    [
      { crane: p.far.id, height_mm: farHeight },
      { crane: p.near.id, height_mm: nearHeight },
    ].filter((x) => x.height_mm > 0);
  add({
    id: "lift",
    do: "hoist up",
    title: "Both hooks up together",
    hooks: hooks(h.lift, h.lift),
    ...voice.cranes,
    carries: [far, near],
  });
  add({
    id: "over",
    do: "bring over",
    title: "Bring the set over its seats",
    dx_m: tidy(p.seated - places.nearTakes),
    dy_m: tidy(p.seatedAcross - p.across),
    tolerance_mm: 30,
    ...voice.cranes,
    carries: [far, near],
  });
  const lower = hooks(h.lowerFar, h.lowerNear);
  if (lower.length > 0)
    add({
      id: "lower",
      do: "hoist down",
      title: "Both hooks down to just above the seats",
      hooks: lower,
      ...voice.cranes,
      carries: [far, near],
    });
  const order = c.landFirst === "far" ? [p.far.id, p.near.id] : [p.near.id, p.far.id];
  const mean = (loads.near + loads.farTogether) / 2;
  add({
    id: "landing",
    do: "land",
    title: `Land in stages, ${c.landFirst} end first`,
    order,
    stages_kN: STAGES.map((part) => stage(part * mean)),
    until_kN: 0,
    ...voice.cranes,
    carries: bearings,
  });
  add({
    id: "secure",
    do: "hold",
    ...voice.all,
    releasedBy: "erection engineer",
    evidence: "bearing blocks in, bracing to the bearings bolted, count met",
    carries: bearings,
  });
  const conditions = ["bearing blocks in", "wind below the limit"];
  add({ id: "far-off", do: "unhook", crane: p.far.id, conditions, ...voice.cranes, carries: bearings });
  add({ id: "near-off", do: "unhook", crane: p.near.id, conditions, ...voice.cranes, carries: bearings });
  return steps;
}

/** Load at which taking ends and its cap, kN. */
function taken(lever: number, share: number) {
  const load = tidy(Math.max(0.1, share * lever));
  const grid = load > 100 ? 5 : 0.1;
  const load_kN = tidy(Math.max(grid, round(load, grid)));
  return {
    until: { load_kN },
    loadCap_kN: tidy(Math.max(Math.ceil((CAP * load_kN) / grid) * grid, load_kN)),
  };
}

function stage(load: number): number {
  return tidy(load > 100 ? round(load, 5) : round(load, 0.1));
}

/** Minutes that a travel takes at the slower of the speeds, when they are known. */
function minutes(distance: number, ...speeds: (number | undefined)[]): { minutes?: number } {
  const known = speeds.filter((s) => s !== undefined);
  return known.length === speeds.length ? { minutes: Math.ceil(distance / Math.min(...known)) } : {};
}

/** Who moves and on which channel, as far as the plan's people say. */
function wordsOf(p: Prospect) {
  const channel = (uses: "crane" | "transporter" | "both") => {
    const found = p.plan.people?.channels.find((c) => c.uses === uses);
    return found ? { channel: found.name } : {};
  };
  return {
    trains: { who: "transporter crew", voice: "transporter lead", ...channel("transporter") },
    cranes: { who: "crane crews", voice: "lift director", ...channel("crane") },
    all: { who: "all crews", voice: "lift director", ...channel("both") },
  };
}
