// What is lifted, by its data: tag lines, loose parts, lift points not confirmed, and which end goes forward.

import { leverRule } from "../../mechanics/index.ts";
import { byId, gravityOf, hookName, type Plan, type PlanSet, setLength, takeOff } from "../../plan/index.ts";
import type { Finding } from "../types.ts";
import { told } from "./finding.ts";

/** Steps in which a set hangs from its hooks. */
const LIFTS = ["hoist up", "hoist down", "bring over", "trial lift", "land"];

/** What the data of every set that is lifted leave open. */
export function liftedFindings(plan: Plan): Finding[] {
  return plan.sets.flatMap((set) => {
    const hangs = set.picks.length > 0 && set.steps.some((step) => LIFTS.includes(step.do));
    return hangs ? [...tagLines(set), ...loose(set), ...unconfirmed(set), ...endForEnd(plan, set)] : [];
  });
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
    told({
      level: "caution",
      check: "tag lines",
      set: set.id,
      subject: ends.length === 2 ? "set" : `${ends[0]} half`,
      words: `${set.name || set.id} hangs with no tag line on ${ends.length === 2 ? "either half" : `its ${ends[0]} half`}: nothing holds it from turning`,
      cure: "put a tag line at each end, and name them in the set's tagLines",
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
      told({
        level: "caution",
        check: "loose part",
        set: set.id,
        subject: part.name,
        words: `'${part.name}' may shift or fall while ${set.name || set.id} is lifted: nothing is said to hold it`,
        cure: "fix it or take it off, and say so in looseParts",
        source: "ASME P30.1, 5-2.1(b): parts that may shift in the lift are found and fixed",
      }),
    );
}

/** Picks among what was copied from another set and not confirmed. */
function unconfirmed(set: PlanSet): Finding[] {
  return (set.unconfirmed ?? [])
    .filter((place) => /\bpicks?\b|\blift/i.test(place))
    .map((place) =>
      told({
        level: "caution",
        check: "lift point",
        set: set.id,
        subject: place,
        words: `'${place}' of ${set.name || set.id} is not confirmed: no lift before it is`,
        cure: "confirm the lift points against this set's own drawings, and take them off the list",
        source: "ASME P30.1, 5-2.1(c): load points are suitable",
      }),
    );
}

/** What a set put in end for end would do, where no mark says which end goes forward. */
function endForEnd(plan: Plan, set: PlanSet): Finding[] {
  if ((set.forwardMark ?? "").trim() !== "") return [];
  const length = setLength(set);
  const { mass, cg } = takeOff(set);
  const shift = length - 2 * cg[0];
  const picks = set.picks.map((p) => ({ p, crane: byId(plan.cranes, p.crane) }));
  const far = picks.find(({ crane }) => crane.kind === "far");
  const near = picks.find(({ crane }) => crane.kind === "near");
  let share = "";
  if (far !== undefined && near !== undefined && far.p.at_m !== near.p.at_m) {
    const weight = mass * gravityOf(plan);
    const on = (x: number) => leverRule(weight, far.p.at_m - x, x - near.p.at_m)[0] / 1000;
    share = `, and ${hookName(far.crane)} would carry ${on(length - cg[0]).toFixed(0)} kN instead of ${on(cg[0]).toFixed(0)} kN of it`;
  }
  const marks = set.girders
    .flatMap((g) => g.pieces)
    .filter((piece) => (piece.mark ?? "").trim() === "").length;
  return [
    told({
      level: "note",
      check: "end for end",
      set: set.id,
      subject: "forwardMark",
      value: Math.abs(shift),
      unit: "m",
      words: `no mark on ${set.name || set.id} says which end goes forward${marks > 0 ? `, and ${marks} of its pieces have no mark of their own` : ""}: turned end for end, its CG would lie ${Math.abs(shift).toFixed(2)} m further ${shift > 0 ? "forward" : "back"}${share}`,
      cure: "mark 'this end forward' on the steel, and name the mark in the set's forwardMark",
      source:
        "Ohio DOT Construction and Material Specifications, 501.05: marks, place and direction of every member on the plan",
    }),
  ];
}
