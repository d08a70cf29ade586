// The transporters of a set as the checks of transporters see them: places in the plan, wheels, what stands on a deck.

import { byId, type Transporter } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";

/** Transporters that a set is on. */
export function trains(ctx: SetContext): Transporter[] {
  return ctx.set.onTransporters.map((on) => byId(ctx.plan.transporters, on.transporter));
}

/** A limit that a transporter's maker set. */
export const makers = (t: Transporter) => ({
  source: `maker's limit of transporter ${t.id}: ${t.source}`,
  chosenBy: "plan",
});

/** Index of a support by its force name; -1 for none. */
export function at(ctx: SetContext, force: string): number {
  return ctx.supportIndex.get(force) ?? -1;
}

/** Place of a transporter in the plan. */
export const pathOf = (ctx: SetContext, t: Transporter): string =>
  `transporters[${ctx.plan.transporters.indexOf(t)}]`;

/** Places of the cylinder forces of every axle line, rearmost first: left and right. */
export function linesOf(ctx: SetContext, t: Transporter): [number, number][] {
  return Array.from({ length: t.lines }, (_, i) => [
    at(ctx, `cylinder ${t.id}:${i + 1}L`),
    at(ctx, `cylinder ${t.id}:${i + 1}R`),
  ]);
}

/** x of an axle line from the deck's centre, m; line 0 is the rearmost. */
export const lineX = (t: Transporter, line: number): number => (line - (t.lines - 1) / 2) * t.pitch_m;

/** Place of a transporter among the decks of a pose; -1 where it is not under the set. */
export function deckOf(pose: Pose, id: string): number {
  const list = pose.solution.layout.trains;
  for (let i = 0; i < list.length; i++) if (list[i].name === id) return i;
  return -1;
}

/** Load that the set brings to a deck through its bunks, N. */
export function onDeck(pose: Pose, deck: number): number {
  const { devices, contact } = pose.solution;
  let N = 0;
  for (let j = 0; j < devices.length; j++)
    if (devices[j].kind === "bunk" && devices[j].of === deck) N += contact.F[j];
  return N;
}

/** Force that the bunks of a deck hold the set by along the path, N; 0 where nothing is held. */
export function heldAlong(pose: Pose, deck: number): number {
  const { horizontal, holds } = pose.solution;
  if (!horizontal) return 0;
  let along = 0;
  for (let i = 0; i < holds.length; i++) if (holds[i].hold.train === deck) along += horizontal.holds[2 * i];
  return along;
}

/** Whether the transporters that carry travel in the step of a pose. */
export function travels(ctx: SetContext, pose: Pose): boolean {
  const kind = ctx.set.steps[pose.step]?.do;
  return kind === "roll" || kind === "roll together";
}
