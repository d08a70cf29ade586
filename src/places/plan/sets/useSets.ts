// What is done with sets as siblings, each as one entry of the history that says who did it and when.
import type { App, Plan } from "../../../app/index.ts";
import { confirm, copySet, placesInPlan, withoutSet } from "../../../plan/index.ts";

const nameOf = (plan: Plan, id: string): string => plan.sets.find((set) => set.id === id)?.name || id;

/** Who confirms, and the day, as it stands in the history. */
export const signed = (who: string): string => `${who.trim()}, ${new Date().toISOString().slice(0, 10)}`;

/** Confirms places of sets, as `compareSets` names them: one value, a row, a part, all of a set. */
export function confirmPlaces(
  app: App,
  which: { set: string; places: string[] }[],
  what: string,
  who: string,
): void {
  const plan = app.store.getState().document?.draft;
  if (plan === undefined) return;
  const names = which.map(({ set }) => nameOf(plan, set)).join(", ");
  app.edit(`Confirm ${what} of ${names} (${signed(who)})`, (draft) =>
    which.reduce((next, { set, places }) => confirm(next, null, placesInPlan(next, set, places)), draft),
  );
}

/** An id that no set has yet: set-2, set-3 and so on. */
export function freeId(plan: Plan): string {
  let n = plan.sets.length + 1;
  while (plan.sets.some((set) => set.id === `set-${n}`)) n++;
  return `set-${n}`;
}

/** Copies a set under a new id, `aside` m to its left. */
export function copyOf(app: App, from: string, id: string, name: string, aside: number): void {
  app.edit(`Copy ${nameOf(app.store.getState().document?.draft as Plan, from)} to ${name}`, (draft) =>
    copySet(draft, from, id, name, aside),
  );
}

/** Deletes a set with its seats, bearings and lashings. */
export function deleteSet(app: App, id: string): void {
  app.edit(`Delete ${nameOf(app.store.getState().document?.draft as Plan, id)}`, (draft) =>
    withoutSet(draft, id),
  );
}
