// Shims proposed for a set: the least with which every bearing carries the part that the designed seats would give it.

import { leastShims, leastShimsInSteps, seatStiffness } from "../../mechanics/index.ts";
import { bearingName, seatOf } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import { landedAsDesigned, landedOn, topsOf } from "./landed.ts";

/** Shims by bearing, m, and what the landed set then gives, solved with them: forces, N, the worst off its own. */
export interface ShimChoice {
  shims: number[];
  forces: number[];
  /** Greatest part by which a bearing is off the force meant. */
  worst: number;
}

/** What was worked out; arrays in the order of the bearings. */
export interface ShimProposal {
  bearings: string[];
  /** Forces on the designed seats, on the seats as built without shims, and with the shims of the plan, N. */
  meant: number[];
  bare: number[];
  planned: number[];
  /** How far the bare seats are off their design, m. */
  off: number[];
  tolerance: number;
  step: number;
  /** Of any thickness; null where none were found. */
  exact: ShimChoice | null;
  /** In whole steps. */
  stepped: ShimChoice | null;
}

/** Part of the limit on shares that a proposal uses: the other half is left for what the survey was off. */
const USED = 0.5;

/** A proposal, or why there is none. `tolerance` as a part of each bearing's own force, `step` in m. */
export function proposeShims(
  ctx: SetContext,
  tolerance = (USED * (limitOf(ctx.plan, "bearing share")?.value ?? 10)) / 100,
  step = (limitOf(ctx.plan, "shim thickness", true)?.value ?? 1) / 1000,
): ShimProposal | string {
  const meant = landedAsDesigned(ctx);
  if (meant === null)
    return "the set does not come to rest on its designed bearings, or the plan lacks stations of its soles";
  const free = meant.bearings.filter((_, i) => !(meant.forces[i] > 0)).map(bearingName);
  if (free.length > 0) return `on the designed seats ${free.join(", ")} carries nothing`;
  const stiffness = seatStiffness(meant.solution);
  if (stiffness === null) return "the bearings do not hold the set by themselves";
  const designed = topsOf(ctx, "designed");
  const stands = topsOf(ctx, "it stands");
  const bareTops = stands.map(
    (z, i) =>
      z - (seatOf(ctx.plan, ctx.set, meant.bearings[i].line, meant.bearings[i].girder)?.shims_mm ?? 0) / 1000,
  );
  const off = bareTops.map((z, i) => z - designed[i]);
  const asked = { stiffness, meant: meant.forces, off, tolerance };
  const choice = (shims: number[] | null): ShimChoice | null => {
    if (shims === null) return null;
    const forces = landedOn(
      ctx,
      bareTops.map((z, i) => z + shims[i]),
    )?.forces;
    if (forces === undefined) return null;
    const worst = Math.max(...forces.map((F, i) => Math.abs(F / meant.forces[i] - 1)));
    return { shims, forces, worst };
  };
  return {
    bearings: meant.bearings.map(bearingName),
    meant: meant.forces,
    bare: landedOn(ctx, bareTops)?.forces ?? [],
    planned: landedOn(ctx, stands)?.forces ?? [],
    off,
    tolerance,
    step,
    exact: choice(leastShims(asked)),
    stepped: choice(leastShimsInSteps(asked, step)),
  };
}
