// The search: a grid of choices by the lever rule, the best of it judged by the solver, then a pattern search from those.

import { boundsOf, type Choice, type Dial, deckSpacing, placesOf } from "./choice.ts";
import { Judge, type Judged } from "./evaluate.ts";
import { quickLook } from "./lever.ts";
import type { Prospect } from "./prospect.ts";

/** How many choices the solver may judge. */
export const BUDGET = 150;
/** Choices of the grid that the solver judges before the pattern search begins, and from how many that one starts. */
const SCREENED = 14;
const STARTS = 2;
const EASY_SHARE = 0.75;
/** Points of the grid along every dial; the last places of the rear train in m. */
const DECKS = 20;
const PICKS = 14;
const SHORTS = [0, 1, 2, 4, 7, 11, 16];
/** A quick use this many times the best one of the grid is not worth a closer look. */
const HOPELESS = 1.4;
/** Two choices nearer than this in every station are the same idea, m. */
const APART = 1.5;
/** Scales of the pattern search; at scale 1 its strides are those below. */
const SCALES = [1, 0.5, 0.25, 0.125];
const STRIDES: Record<Dial, number> = {
  rearDeck: 2,
  frontDeck: 2,
  farPick: 2,
  nearPick: 2,
  shortOf: 2,
  farShare: 0.08,
  nearShare: 0.08,
};
/** A stride must lower the merit by this much to be worth taking. */
const WORTH = 3e-4;
/** Directions: every dial alone, then pairs that balance two supports. */
const DIRECTIONS: Partial<Record<Dial, number>>[] = [
  { rearDeck: 1 },
  { frontDeck: 1 },
  { farPick: 1 },
  { nearPick: 1 },
  { farShare: 1 },
  { nearShare: 1 },
  { shortOf: 1 },
  { rearDeck: 1, frontDeck: 1 },
  { farPick: 1, nearPick: 1 },
  { frontDeck: 1, farPick: 1 },
];

/** A judged choice and the machines it is for. */
export interface Candidate {
  prospect: Prospect;
  judged: Judged;
}

export interface Searched {
  /** Every choice that was judged to its end, best first. */
  ranked: Candidate[];
  evaluations: number;
  /** How many choices of the grid were looked at. */
  looked: number;
  cancelled: boolean;
}

/** True for a choice that can be laid out at all: decks apart, path long enough. */
export function possible(p: Prospect, c: Choice): boolean {
  return c.frontDeck - c.rearDeck >= deckSpacing(p) && placesOf(p, c) !== null;
}

/** True when two candidates are one idea: the same machines and places. */
export function alike(a: Candidate, b: Candidate): boolean {
  const [x, y] = [a.judged.choice, b.judged.choice];
  const stations = ["rearDeck", "frontDeck", "farPick", "nearPick"] as const;
  return a.prospect === b.prospect && stations.every((k) => Math.abs(x[k] - y[k]) < APART);
}

/** Searches the choices of all prospects; the same input gives the same answer. */
export function search(prospects: Prospect[], onJudged: (done: number, best: number) => boolean): Searched {
  const judges = new Map(prospects.map((p) => [p, new Judge(p)]));
  const ranked: Candidate[] = [];
  const known = new Map<Prospect, Set<string>>(prospects.map((p) => [p, new Set()]));
  let evaluations = 0;
  let cancelled = false;
  const spent = () => cancelled || evaluations >= BUDGET;
  const judge = (p: Prospect, choice: Choice, bound?: number): Judged | null => {
    const key = JSON.stringify(Object.values(choice));
    const seen = known.get(p) as Set<string>;
    if (spent() || seen.has(key)) return null;
    seen.add(key);
    const judged = (judges.get(p) as Judge).judge(choice, bound);
    evaluations++;
    if (!judged.cut) ranked.push({ prospect: p, judged });
    const best = ranked.reduce((least, c) => Math.min(least, c.judged.worst), Number.POSITIVE_INFINITY);
    if (!onJudged(evaluations, best)) cancelled = true;
    return judged;
  };

  let looked = 0;
  const ideas: { prospect: Prospect; choice: Choice; use: number }[] = [];
  for (const prospect of prospects) {
    const grid = gridOf(prospect);
    looked += grid.looked;
    ideas.push(...grid.best.map((b) => ({ prospect, ...b })));
  }
  ideas.sort((a, b) => a.use - b.use);
  const chosen: typeof ideas = [];
  for (const idea of ideas) {
    const near = (o: (typeof ideas)[number]) =>
      o.prospect === idea.prospect &&
      Math.abs(o.choice.rearDeck - idea.choice.rearDeck) < APART &&
      Math.abs(o.choice.frontDeck - idea.choice.frontDeck) < APART;
    if (chosen.length < SCREENED && !chosen.some(near)) chosen.push(idea);
  }
  for (const { prospect, choice } of chosen) {
    const judged = judge(prospect, choice);
    // A side or a train that comes free while a hook takes load asks for less on that hook.
    if (judged?.governing.check === "meant to carry")
      judge(prospect, { ...choice, farShare: EASY_SHARE, nearShare: EASY_SHARE });
  }

  const byMerit = (a: Candidate, b: Candidate) => a.judged.merit - b.judged.merit;
  const starts: Candidate[] = [];
  for (const c of [...ranked].sort(byMerit))
    if (starts.length < STARTS && !starts.some((s) => alike(s, c))) starts.push(c);
  for (const start of starts) improve(start.prospect, start.judged, judge, spent);
  ranked.sort((a, b) => a.judged.worst - b.judged.worst || byMerit(a, b));
  return { ranked, evaluations, looked, cancelled };
}

/** For every pair of train places the best picks and last place by the quick look, and how many it looked at. */
function gridOf(p: Prospect): { best: { choice: Choice; use: number }[]; looked: number } {
  const bounds = boundsOf(p);
  const look = quickLook(p);
  const best: { choice: Choice; use: number }[] = [];
  let looked = 0;
  let least = Number.POSITIVE_INFINITY;
  const picks = { far: spaced(bounds.farPick, PICKS), near: spaced(bounds.nearPick, PICKS) };
  for (const rearDeck of spaced(bounds.rearDeck, DECKS))
    for (const frontDeck of spaced(bounds.frontDeck, DECKS)) {
      let here: { choice: Choice; use: number } | null = null;
      for (const farPick of picks.far)
        for (const nearPick of picks.near)
          for (const shortOf of SHORTS) {
            const choice: Choice = {
              rearDeck,
              frontDeck,
              farPick,
              nearPick,
              shortOf,
              farShare: bounds.farShare[1],
              nearShare: bounds.nearShare[1],
              landFirst: "far",
            };
            if (shortOf === 0 && !possible(p, choice)) break;
            looked++;
            // Pairs of places far behind the best one are not looked into any further.
            const use = look(choice, Math.min(here?.use ?? HOPELESS * least, HOPELESS * least));
            if (here === null || use < here.use) here = { choice, use };
          }
      if (here === null) continue;
      best.push(here);
      least = Math.min(least, here.use);
    }
  return { best, looked };
}

/** Evenly spaced values of a range on half metres, both ends about included. */
function spaced([low, high]: readonly [number, number], most: number): number[] {
  const from = Math.ceil(low * 2) / 2;
  const to = Math.floor(high * 2) / 2;
  if (from > to) return low <= high ? [low] : [];
  const stride = Math.max(0.5, Math.ceil(((to - from) / (most - 1)) * 2) / 2);
  const out: number[] = [];
  for (let x = from; x <= to + 1e-9; x += stride) out.push(x);
  if (to - out[out.length - 1] > 1e-9) out.push(to);
  return out;
}

/** Pattern search on the merit from one judged choice: strides along every direction, halved when none helps. */
function improve(
  p: Prospect,
  start: Judged,
  judge: (p: Prospect, choice: Choice, bound?: number) => Judged | null,
  spent: () => boolean,
): Judged {
  const bounds = boundsOf(p);
  let at = start;
  const tryOut = (choice: Choice): boolean => {
    if (!possible(p, choice)) return false;
    const judged = judge(p, choice, at.merit);
    if (!judged || judged.cut || !(judged.merit < at.merit - WORTH)) return false;
    at = judged;
    return true;
  };
  for (const scale of SCALES) {
    for (let helped = true; helped && !spent(); ) {
      helped = tryOut({ ...at.choice, landFirst: at.choice.landFirst === "far" ? "near" : "far" });
      for (const direction of DIRECTIONS)
        for (const sign of [1, -1]) {
          let reach = scale * sign;
          // A direction that helps is followed with growing strides.
          while (tryOut(moved(at.choice, direction, reach, bounds))) {
            helped = true;
            reach *= 2;
          }
        }
    }
  }
  return at;
}

function moved(
  c: Choice,
  direction: Partial<Record<Dial, number>>,
  reach: number,
  bounds: ReturnType<typeof boundsOf>,
): Choice {
  const out = { ...c };
  for (const [key, part] of Object.entries(direction)) {
    const dial = key as Dial;
    const [low, high] = bounds[dial];
    const x = c[dial] + part * reach * STRIDES[dial];
    out[dial] = Number(Math.min(Math.max(x, low), high).toFixed(dial.endsWith("Share") ? 3 : 2));
  }
  return out;
}
