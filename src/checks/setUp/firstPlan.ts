// A first plan from the answers of the set-up: whole and readable, everything that was not asked marked as not confirmed.

import { copySet, type Plan, planFormat, planVersion, takeOff } from "../../plan/index.ts";
import { type AnswerError, type Answers, answerErrors, round } from "./answers.ts";
import { craneOf, riggingOf, transporterOf } from "./machines.ts";
import { withDoubts } from "./reasons.ts";
import { placesOf, siteOf } from "./site.ts";
import { firstSet, platesOf } from "./steel.ts";

/** A plan without positions and steps, or what is wrong with the answers. */
export type FirstPlan = { ok: true; plan: Plan } | { ok: false; errors: AnswerError[] };

/**
 * The plan that the answers make. Its sets have no positions, picks or steps yet: `proposedSets` puts them in. Sets stand
 * side by side across the bridge, one girder spacing apart,
 * and each rolls in line with its own place, clear of those that lie already; the one furthest from the near crane is the first, so that no
 * later one passes over it. The second and further ones are copies of the first, with their values unconfirmed.
 */
export function firstPlan(answers: Answers): FirstPlan {
  const errors = answerErrors(answers);
  const plates = platesOf(answers.sets);
  if (plates === null && errors.length === 0)
    errors.push({
      at: "sets.steel.mass_t_per_m",
      words:
        "No plates of this depth have that weight: give another depth or weight, or the plates themselves.",
    });
  if (errors.length > 0 || plates === null) return { ok: false, errors };
  const { count, girders, spacing_m } = answers.sets;
  const apart = round(girders * spacing_m);
  const toward = answers.cranes.near.y_m >= 0 ? 1 : -1;
  const aside = count === 1 ? 0 : round((-toward * (count - 1) * apart) / 2);
  const set = firstSet(answers, plates, aside);
  const mass = takeOff(set).mass / 1000;
  const { rear, front } = answers.transporters;
  const transporters = [transporterOf("rear", rear), transporterOf("front", front)];
  const site = siteOf(answers, set, transporters[0], transporters[1]);
  const first: Plan = {
    shows: "",
    format: planFormat,
    version: planVersion,
    invented: false,
    header: {
      title: answers.title,
      revision: "",
      preparedBy: "",
      checkedBy: "",
      status: "first plan",
      notes: NOTES,
    },
    site: { ...site, ...placesOf(answers, set, aside) },
    transporters,
    cranes: [craneOf("far", answers), craneOf("near", answers)],
    rigging: [riggingOf("far", answers, mass), riggingOf("near", answers, mass)],
    lashings: [],
    sets: [set],
    limits: { use: [], rules: [], overrides: [] },
    spread: {},
    accept: [],
  };
  const listed = withDoubts(first, answers);
  let plan = listed;
  for (let i = 2; i <= count; i++)
    plan = copySet(plan, "set-1", `set-${i}`, `Set ${i}`, round(toward * (i - 1) * apart));
  return { ok: true, plan };
}

const NOTES =
  "Made by the guided set-up. What was not asked stands as a starter value until it is confirmed; the steps are a proposal for an engineer to judge.";
