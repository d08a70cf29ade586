// A choice made into a whole plan: positions, picks, lashings and steps of one set; everything else stays as it was.

import type { Lashing, Plan, PlanSet, Transporter } from "../../plan/index.ts";
import { camberAt } from "../../plan/index.ts";
import { type Choice, type Places, placesOf } from "./choice.ts";
import { type Prospect, pickHeight } from "./prospect.ts";
import { type Heights, stepsOf } from "./steps.ts";

/** The plan with the set's positions and steps replaced; null when the path is too short for the choice. */
export function planOf(p: Prospect, c: Choice, h: Heights): Plan | null {
  const places = placesOf(p, c);
  if (!places) return null;
  const { lashings, ids } = lashingsOf(p, c);
  const set = setOf(p, c, places, h, ids);
  const sets = p.plan.sets.map((s) => (s.id === set.id ? set : s));
  return keepNames({ ...p.plan, lashings, sets }, set);
}

function setOf(p: Prospect, c: Choice, places: Places, h: Heights, lashings: string[]): PlanSet {
  const pick = (crane: string, rigging: string, at: number) => ({
    crane,
    rigging,
    at_m: at,
    height_m: p.set.picks.find((x) => x.crane === crane)?.height_m ?? pickHeight(p.set, at),
  });
  return {
    ...p.set,
    start: { ...p.set.start, rearEnd_m: places.start },
    onTransporters: [
      { transporter: p.rear.id, deckAt_m: c.rearDeck, packing_mm: packing(p.set, p.rear, c.rearDeck) },
      { transporter: p.front.id, deckAt_m: c.frontDeck, packing_mm: packing(p.set, p.front, c.frontDeck) },
    ],
    picks: [pick(p.far.id, p.farRig.id, c.farPick), pick(p.near.id, p.nearRig.id, c.nearPick)],
    steps: stepsOf(p, c, places, h, lashings),
  };
}

/** Packing that evens out the girders' cambers at the bunks, mm: the lowest soffit gets none. */
function packing(set: PlanSet, t: Transporter, deckAt: number): Record<string, number> {
  const rise = set.girders.map((g) =>
    t.bunks.reduce((sum, b) => sum + camberAt(g, deckAt + b.at_m) / t.bunks.length, 0),
  );
  const low = Math.min(...rise);
  return Object.fromEntries(set.girders.map((g, i) => [g.line, Math.round(rise[i] - low)]));
}

/** Lashings of the set move with their transporters; one that other sets may use too is copied for this set. */
function lashingsOf(p: Prospect, c: Choice): { lashings: Lashing[]; ids: string[] } {
  const { plan, set } = p;
  const lines = set.girders.map((g) => g.line);
  const mine = plan.lashings.filter(
    (l) =>
      (l.set === undefined ? lines.includes(l.girder) : l.set === set.id) &&
      (l.transporter === p.rear.id || l.transporter === p.front.id),
  );
  const shared = (l: Lashing) =>
    l.set === undefined &&
    plan.sets.some((s) => s.id !== set.id && s.girders.some((g) => g.line === l.girder));
  const ids = plan.lashings.map((l) => l.id);
  const moved = mine.map((l): Lashing => {
    const t = l.transporter === p.rear.id ? p.rear : p.front;
    const deckAt = t === p.rear ? c.rearDeck : c.frontDeck;
    const siblings = mine.filter((x) => x.transporter === l.transporter);
    const was =
      set.onTransporters.find((on) => on.transporter === t.id)?.deckAt_m ??
      siblings.reduce((sum, x) => sum + x.at_m / siblings.length, 0);
    const reach = t.deckLength_m / 2;
    const off = Math.min(Math.max(l.at_m - was, -reach), reach);
    const at_m = Number(Math.min(Math.max(deckAt + off, 0), p.length).toFixed(3));
    if (!shared(l)) return { ...l, at_m };
    let id = `${l.id} of ${set.id}`;
    while (ids.includes(id)) id += "'";
    return { ...l, id, set: set.id, at_m };
  });
  const replaced = plan.lashings.map((l) => {
    const i = mine.indexOf(l);
    return i >= 0 && !shared(l) ? moved[i] : l;
  });
  const added = moved.filter((_, i) => shared(mine[i]));
  return { lashings: [...replaced, ...added], ids: moved.map((l) => l.id) };
}

/** What names a step that is no longer there: states below go to the first travel; expected findings and acceptances go. */
function keepNames(plan: Plan, set: PlanSet): Plan {
  const has = (s: PlanSet, step: string) =>
    s.steps.some((x) => x.id === step || (x.wayBack ?? []).some((w) => w.id === step));
  const known = (step: string | undefined, of: string | undefined) =>
    step === undefined || plan.sets.some((s) => (of === undefined || s.id === of) && has(s, step));
  const first = (set.steps.find((s) => s.do === "roll" || s.do === "roll together") ?? set.steps[0]).id;
  const { below } = plan.site;
  const site =
    below.states === undefined
      ? plan.site
      : {
          ...plan.site,
          below: {
            ...below,
            states: below.states.map((s) => (known(s.step, s.set) ? s : { ...s, set: set.id, step: first })),
          },
        };
  return {
    ...plan,
    site,
    accept: plan.accept.filter((a) => known(a.step, a.set)),
    ...(plan.expected === undefined ? {} : { expected: plan.expected.filter((e) => known(e.step, e.set)) }),
  };
}
