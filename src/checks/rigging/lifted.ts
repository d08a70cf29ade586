// What is lifted, by its data: tag lines, loose parts, lift points not confirmed, and which end goes forward.

import { leverRule } from "../../mechanics/index.ts";
import {
  byId,
  gravityOf,
  hookName,
  isWithin,
  type Plan,
  type PlanSet,
  setLength,
  takeOff,
  unconfirmedIn,
} from "../../plan/index.ts";
import { dataFindings, dataMeasure } from "../dataMeasure.ts";
import { finding } from "../finding.ts";
import type { DataMeasure } from "../measure.ts";
import { constant, field, METRE, trace } from "../trace.ts";
import type { Finding } from "../types.ts";

/** Steps in which a set hangs from its hooks. */
const LIFTS = ["hoist up", "hoist down", "bring over", "trial lift", "land"];

/** Sets that hang from their hooks in some step. */
const hung = (plan: Plan): PlanSet[] =>
  plan.sets.filter((set) => set.picks.length > 0 && set.steps.some((step) => LIFTS.includes(step.do)));

/** What the data of every set that is lifted leave open. */
export function liftedFindings(plan: Plan): Finding[] {
  const open = hung(plan).flatMap((set) => [...tagLines(set), ...loose(set), ...unconfirmed(plan, set)]);
  return [...open, ...dataFindings(liftedMeasures(plan))];
}

/** The numbers of sets that are lifted. */
export function liftedMeasures(plan: Plan): DataMeasure[] {
  return hung(plan).flatMap((set) => endForEnd(plan, set));
}

/** A set that hangs is held from turning by lines at both ends. */
function tagLines(set: PlanSet): Finding[] {
  const lines = set.tagLines ?? [];
  const middle = setLength(set) / 2;
  const ends = ["rear", "front"].filter(
    (_, i) => !lines.some((l) => (i === 0 ? l.at_m < middle : l.at_m > middle)),
  );
  if (ends.length === 0) return [];
  return [
    finding({
      level: "caution",
      check: "tag lines",
      set: set.id,
      subject: ends.length === 2 ? "set" : `${ends[0]} half`,
      words: `${set.name || set.id} hangs with no tag line on ${ends.length === 2 ? "either half" : `its ${ends[0]} half`}: nothing holds it from turning`,
      cure: "put a tag line at each end, and name them in the set's tagLines",
      chosenBy: "plan",
      source:
        "29 CFR 1926.1417(w): a tag line where the turning of the load is a hazard; one at each end is common practice, no source",
    }),
  ];
}

/** Something that may shift, and nothing said of what holds it. */
function loose(set: PlanSet): Finding[] {
  return (set.looseParts ?? [])
    .filter((part) => part.heldBy.trim() === "")
    .map((part) =>
      finding({
        level: "caution",
        check: "loose part",
        set: set.id,
        subject: part.name,
        words: `'${part.name}' may shift or fall while ${set.name || set.id} is lifted: nothing is said to hold it`,
        cure: "fix it or take it off, and say so in looseParts",
        chosenBy: "plan",
        source: "ASME P30.1, 5-2.1(b): parts that may shift in the lift are found and fixed",
      }),
    );
}

/** Picks among what nobody has confirmed: copied from another set, or chosen by a proposal. */
function unconfirmed(plan: Plan, set: PlanSet): Finding[] {
  const index = plan.sets.indexOf(set);
  return unconfirmedIn(plan)
    .filter((one) =>
      one.set === null ? isWithin(one.path ?? [], ["sets", index, "picks"]) : one.set === index,
    )
    .map((one) => one.place)
    .filter((place) => /\bpicks?\b|\blift/i.test(place))
    .map((place) =>
      finding({
        level: "caution",
        check: "lift point",
        set: set.id,
        subject: place,
        words: `'${place}' of ${set.name || set.id} is not confirmed: no lift before it is`,
        cure: "confirm the lift points against this set's own drawings, and take them off the list",
        chosenBy: "plan",
        source: "ASME P30.1, 5-2.1(c): load points are suitable",
      }),
    );
}

/** What a set put in end for end would do, where no mark says which end goes forward. */
function endForEnd(plan: Plan, set: PlanSet): DataMeasure[] {
  if ((set.forwardMark ?? "").trim() !== "") return [];
  const length = setLength(set);
  const { cg } = takeOff(set);
  const shift = length - 2 * cg[0];
  const marks = set.girders
    .flatMap((g) => g.pieces)
    .filter((piece) => (piece.mark ?? "").trim() === "").length;
  const last = set.girders[0].pieces.length - 1;
  const path = `sets[${plan.sets.indexOf(set)}].girders[0].pieces[${last}].to_m`;
  return [
    dataMeasure(
      {
        level: "note",
        check: "end for end",
        set: set.id,
        subject: "forwardMark",
        unit: "m",
        factor: 1,
        digits: 2,
        words: ({ value }) =>
          `no mark on ${set.name || set.id} says which end goes forward${marks > 0 ? `, and ${marks} of its pieces have no mark of their own` : ""}: turned end for end, its CG would lie ${value.toFixed(2)} m further ${shift > 0 ? "forward" : "back"}${sharesTurned(plan, set)}`,
        cure: "mark 'this end forward' on the steel, and name the mark in the set's forwardMark",
      },
      (rec) => {
        field(rec, "L", length, "length of the set", path, length, METRE);
        constant(rec, "x", cg[0], "m", "centre of gravity from the rear end", "take-off of the plan");
        const words = "from the centre of gravity to where it would lie with the set turned";
        const value = trace(rec, "dx", Math.abs(shift), "abs(L - 2*x)", "m", words);
        rec?.ends("dx", null);
        return { value, limit: Number.NaN };
      },
      {
        source:
          "Ohio DOT Construction and Material Specifications, 501.05: marks, place and direction of every member on the plan",
        chosenBy: "plan",
      },
    ),
  ];
}

/** What the far hook would carry of a turned set, in words; '' without both hooks. */
function sharesTurned(plan: Plan, set: PlanSet): string {
  const picks = set.picks.map((p) => ({ p, crane: byId(plan.cranes, p.crane) }));
  const far = picks.find(({ crane }) => crane.kind === "far");
  const near = picks.find(({ crane }) => crane.kind === "near");
  if (far === undefined || near === undefined || far.p.at_m === near.p.at_m) return "";
  const { mass, cg } = takeOff(set);
  const weight = mass * gravityOf(plan);
  const on = (x: number) => leverRule(weight, far.p.at_m - x, x - near.p.at_m)[0] / 1000;
  return `, and ${hookName(far.crane)} would carry ${on(setLength(set) - cg[0]).toFixed(0)} kN instead of ${on(cg[0]).toFixed(0)} kN of it`;
}
