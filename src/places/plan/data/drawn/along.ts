// What may be moved along a set: picks above it, bunks and decks below, each with its station and the room that it has.
import { type Plan, valueAt } from "../../../../plan/index.ts";
import { lengthOf, type Movable, movablesOf, type Standing, standingOf } from "../../../../scene/index.ts";

/** One of them. `least` and `most` bound its own number, `origin` is the station at which that is nought; all m. */
export interface Slider {
  readonly thing: Movable;
  readonly standing: Standing;
  readonly origin: number;
  readonly least: number;
  readonly most: number;
  /** Half of its length along the set; 0 for what is drawn as a point. */
  readonly half: number;
}

/** Everything that can be moved along a set of the draft, picks first. Nothing is kept off the set's ends but by its bounds. */
export function slidersOf(plan: Plan, set: number): Slider[] {
  const own = plan.sets[set];
  const length = lengthOf(own);
  const sliders = movablesOf(plan, set).flatMap((thing): Slider[] => {
    const standing = standingOf(plan, thing);
    if (standing === null) return [];
    const it = { thing, standing, origin: 0, least: 0, most: length, half: 0 };
    if (thing.is === "pick") return [it];
    const machine = plan.transporters.find(({ id }) => id === thing.of);
    if (machine === undefined) return [];
    const half = machine.deckLength_m / 2;
    if (thing.is === "transporter") return [{ ...it, half, least: -half, most: length + half }];
    if (thing.is !== "bunk") return [];
    const deck = own.onTransporters.findIndex(({ transporter }) => transporter === thing.of);
    const origin = valueAt(plan, ["sets", set, "onTransporters", deck, "deckAt_m"]);
    return typeof origin === "number" ? [{ ...it, origin, least: -half, most: half }] : [];
  });
  const order = ["pick", "bunk", "transporter"];
  return sliders.sort((a, b) => order.indexOf(a.thing.is) - order.indexOf(b.thing.is));
}

/** A number of a slider within its bounds. */
export const within = ({ least, most }: Slider, value: number): number =>
  Math.min(most, Math.max(least, value));

/** Station of a slider at one of its numbers, m from the set's rear end. */
export const stationOf = ({ origin }: Slider, value: number): number => origin + value;
