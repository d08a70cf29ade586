// What is left on a landed set when its plan ends: hooks not taken off, lashings not untied.

import { hookName } from "../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../sequence/index.ts";
import { finding } from "./finding.ts";
import type { Finding } from "./types.ts";

/** A support counts as carrying from this share of the set's weight on. */
const CARRIES = 1e-4;

/** The set lies on its bearings and on nothing else. */
function landed(ctx: SetContext, pose: Pose): boolean {
  const least = CARRIES * ctx.model.mass * ctx.gravity;
  let bearings = 0;
  for (const [i, s] of ctx.supports.entries()) {
    if (!s.band || !(pose.shares[i] > least)) continue;
    if (s.what !== "bearing") return false;
    bearings++;
  }
  return bearings > 0;
}

/** One finding for every hook and lashing that is still on when the last step leaves the set on its bearings. */
export function leftOnFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const last = stored[stored.length - 1];
  if (!last || !run.steps.every((s) => s.solved) || !landed(ctx, last)) return [];
  const at = { step: last.step, progress: last.progress };
  const say = (id: string, subject: string, words: string, cure: string): Finding =>
    finding({
      id: `left on:${ctx.set.id}:${id}`,
      level: "caution",
      check: "left on",
      set: ctx.set.id,
      subject,
      from: at,
      to: at,
      worst: at,
      source: "the plan's own steps",
      chosenBy: "plan",
      words,
      cure,
    });
  const hooks = last.situation.cranes
    .filter((c) => c.hooked)
    .map((c) => {
      const crane = ctx.plan.cranes.find((x) => x.id === c.id);
      const name = crane ? hookName(crane) : c.id;
      return say(
        c.id,
        name,
        `the set lies on its bearings, but the plan ends with the hook of ${name} still on it`,
        `add an unhook of ${c.id} after the landing`,
      );
    });
  const ties = last.situation.lashed.map((id) =>
    say(
      id,
      `lashing ${id}`,
      `the set lies on its bearings, but the plan ends with lashing ${id} still on it`,
      `add an unlash of ${id} before its transporter gives up the set`,
    ),
  );
  return [...hooks, ...ties];
}
