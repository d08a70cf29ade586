// What a proposal chooses, the bounds of it, and the places along the path that follow from it.

import { spreadOf } from "../../plan/index.ts";
import { BUNK_END, bunkCentre, DECK_AIR, halfAxles, PICK_END, type Prospect } from "./prospect.ts";

/** The free choices of a sequence. Stations on the set, m. */
export interface Choice {
  rearDeck: number;
  frontDeck: number;
  farPick: number;
  nearPick: number;
  /** How far before its last place the rear train stops for the near crane, m. */
  shortOf: number;
  /** Part of the load that levers leave on a hook at which taking load ends; jacking down hands over the rest. */
  farShare: number;
  nearShare: number;
  /** The hook that comes down first in landing. */
  landFirst: "far" | "near";
}

/** Least part of a load that a hook takes before the train jacks down. Common practice, no source. */
const LEAST_SHARE = 0.6;
const LIGHT_MARGIN = 0.01;

/** The choices that are numbers. */
export type Dial = Exclude<keyof Choice, "landFirst">;

/** Range of every number of a choice; empty (low above high) when the set is too short for its machines. */
export function boundsOf(p: Prospect): Record<Dial, readonly [number, number]> {
  const reach = (t: Prospect["rear"]) => t.bunks.map((b) => b.at_m);
  const [cg] = p.cg;
  // A load that the lightest set of the spread would not give would lift it off the train before that jacks down.
  const light = 1 + spreadOf(p.plan).spread.weight_pct[0] / 100 - LIGHT_MARGIN;
  const share = [LEAST_SHARE, Math.max(LEAST_SHARE, Number(light.toFixed(3)))] as const;
  return {
    rearDeck: [BUNK_END - Math.min(...reach(p.rear)), cg - bunkCentre(p.rear) - 1],
    frontDeck: [cg - bunkCentre(p.front) + 1, p.length - BUNK_END - Math.max(...reach(p.front))],
    farPick: [cg + 1, p.length - PICK_END],
    nearPick: [PICK_END, cg - 1],
    shortOf: [0, 20],
    farShare: share,
    nearShare: share,
  };
}

/** Distance that the decks' centres must keep, m. */
export function deckSpacing(p: Prospect): number {
  return (p.rear.deckLength_m + p.front.deckLength_m) / 2 + DECK_AIR;
}

/** Chainage of the set's rear end at the stages of a sequence, m. */
export interface Places {
  /** Where the set is taken on to the transporters. */
  start: number;
  /** Front train at the stop line: the far crane takes load. */
  farTakes: number;
  /** Rear train at its last place: the near crane takes load. */
  nearTakes: number;
}

const down = (x: number) => Math.floor(x * 100 + 1e-6) / 100;

/** Places of a choice, to the centimetre; null when the path is too short behind the stop line. */
export function placesOf(p: Prospect, c: Choice): Places | null {
  const farTakes = down(Math.min(p.seated, p.stop - halfAxles(p.front) - c.frontDeck));
  const last = down(Math.min(p.seated, p.stop - halfAxles(p.rear) - c.rearDeck));
  const nearTakes = down(Math.max(farTakes, last - c.shortOf));
  // Behind the abutment with the nose, as far as the path reaches back.
  const behind = (p.plan.site.nearBackwall_m ?? p.plan.site.nearFace_m) - p.length - START_AIR;
  const least = p.pathStart + p.rear.deckLength_m / 2 - c.rearDeck;
  if (least > farTakes) return null;
  const start = Math.min(farTakes, Math.max(Math.ceil(least * 10) / 10, Math.floor(behind * 10) / 10));
  return { start, farTakes, nearTakes };
}

/** Air between the nose and the abutment at the start, m. Common practice, no source. */
const START_AIR = 2;

/** A choice in words. */
export function choiceWords(c: Choice): string {
  const m = (x: number) => `${Number(x.toFixed(2))} m`;
  return [
    `rear train at ${m(c.rearDeck)}, front train at ${m(c.frontDeck)} of the set`,
    `picks at ${m(c.nearPick)} and ${m(c.farPick)}`,
    `the rear train stops ${m(c.shortOf)} before its last place`,
    `hooks take ${Math.round(c.farShare * 100)} % (far) and ${Math.round(c.nearShare * 100)} % (near) before the trains jack down`,
    `the ${c.landFirst} hook lands first`,
  ].join("; ");
}
