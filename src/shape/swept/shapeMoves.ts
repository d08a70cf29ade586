// How far a change of the solved shape alone can move the bodies of each group: what lies between two solved poses.

import { byId } from "../../plan/index.ts";
import type { SetContext } from "../../sequence/index.ts";
import { sweptBodies } from "./groups.ts";
import { setMoves, setShapeSize } from "./set.ts";

/** The hook stands on the line from the picks to the tip: it moves with the picks, and a little more when they turn. */
const HOOK = 1.2;

/** Writes how far at most (m) the points of every group move when the solved shape changes by `change`. */
export function shapeMoves(ctx: SetContext, change: Float64Array, out: Float64Array): void {
  const { groups } = sweptBodies(ctx);
  const set = setMoves(ctx, change);
  groups.forEach(({ kind, of }, g) => {
    out[g] = 0;
    if (kind === "set") out[g] = set;
    else if (kind === "line" || kind === "rigging") out[g] = HOOK * set;
    else if (kind === "train") {
      const t = byId(ctx.plan.transporters, of);
      const at = setShapeSize(ctx) + 3 * ctx.set.onTransporters.findIndex((on) => on.transporter === of);
      // Its bunks may reach further aside than its deck.
      const wide = Math.max(t.deckWidth_m / 2, ...ctx.set.girders.map((one) => Math.abs(one.y_m) + 0.5));
      out[g] =
        Math.abs(change[at]) +
        wide * Math.abs(change[at + 1]) +
        (t.deckLength_m / 2) * Math.abs(change[at + 2]);
    }
  });
}
