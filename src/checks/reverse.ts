// The steps that undo a step: proposed where its motion can be run the other way, cut to the part that was done.

import type { Step, WayBackStep } from "../plan/index.ts";
import type { Situation, StepRun } from "../sequence/index.ts";
import { hookMoves } from "./extent.ts";

/** A step without its id and what it carries, which all proposals share. */
type Bare<S = WayBackStep> = S extends WayBackStep ? Omit<S, "id" | "carries" | "brakes"> : never;

/** Least height that a step may state, mm. */
const LEAST = 0.1;

/**
 * Steps that lead from a situation within a step back to its start; null where no kind of step undoes it, empty where
 * nothing is commanded to move. `carries` are the supports that carried at its start.
 */
export function reverseOf(run: StepRun, here: Situation, carries: string[]): WayBackStep[] | null {
  const bare = undo(run.step, run.start, here);
  if (bare === null) return null;
  const { id, brakes } = run.step;
  return bare.map((part, i) => {
    const name = `${id} back${bare.length > 1 ? ` ${i + 1}` : ""}`;
    const whole = { id: name, ...part, carries, ...(brakes === undefined ? {} : { brakes }) };
    return whole as WayBackStep;
  });
}

function undo(step: Step, start: Situation, here: Situation): Bare[] | null {
  const back = start.rearEnd - here.rearEnd;
  switch (step.do) {
    case "roll":
      return [{ do: "roll", distance_m: back }];
    case "roll together": {
      const { cranes, hold, bite_m, load_kN, follow } = step;
      const more = {
        ...(load_kN === undefined ? {} : { load_kN }),
        ...(follow === undefined ? {} : { follow }),
      };
      return [{ do: "roll together", distance_m: back, cranes, hold, bite_m, ...more }];
    }
    case "bring over": {
      const { tolerance_mm, bites } = step;
      const more = {
        ...(tolerance_mm === undefined ? {} : { tolerance_mm }),
        ...(bites === undefined ? {} : { bites }),
      };
      return [{ do: "bring over", dx_m: back, dy_m: start.across - here.across, ...more }];
    }
    case "take load":
    case "trial lift":
    case "hoist up":
    case "hoist down":
    case "land":
      return hoistBack(start, here);
    case "unhook": {
      const off = here.cranes.some((c) => c.id === step.crane && !c.hooked);
      return off ? [{ do: "hook up", crane: step.crane }] : hoistBack(start, here);
    }
    case "hook up":
      return [{ do: "unhook", crane: step.crane }];
    case "jack up":
    case "jack down":
    case "level":
      return jackBack(start, here);
    case "walk": {
      const at = (s: Situation) => s.cranes.find((c) => c.id === step.crane)?.moved ?? [0, 0];
      const [a, b] = [at(start), at(here)];
      const { do: kind, crane, boomOver, hook } = step;
      const more = {
        ...(boomOver === undefined ? {} : { boomOver }),
        ...(hook === undefined ? {} : { hook }),
      };
      return [{ do: kind, crane, dx_m: a[0] - b[0], dy_m: a[1] - b[1], ...more }];
    }
    case "lash": {
      const on = here.lashed.filter((id) => !start.lashed.includes(id));
      return on.length === 0 ? [] : [{ do: "unlash", lashings: on }];
    }
    case "unlash": {
      const off = start.lashed.filter((id) => !here.lashed.includes(id));
      return off.length === 0 ? [] : [{ do: "lash", lashings: off }];
    }
    case "drive out":
    case "rebunk": {
      // It drives back under the set to where it stood; one that was not under the set then has no such place.
      const train = start.trains.find((t) => t.id === step.transporter);
      if (!train?.under) return null;
      const packing_mm = Object.fromEntries(Object.entries(train.packing).map(([g, m]) => [g, m * 1000]));
      return [{ do: "rebunk", transporter: train.id, deckAt_m: train.deckAt, packing_mm }];
    }
    case "hold":
    case "brace":
    case "rest":
      return [];
    default:
      return null;
  }
}

/** Every hook back by as much as it was moved, all of them together; first those that go up. */
function hoistBack(start: Situation, here: Situation): Bare[] {
  const moves = hookMoves(start, here).map((m) => ({ crane: m.crane, height_mm: -m.up * 1000 }));
  const up = moves.filter((m) => m.height_mm >= LEAST);
  const down = moves
    .filter((m) => m.height_mm <= -LEAST)
    .map((m) => ({ crane: m.crane, height_mm: -m.height_mm }));
  return [
    ...(up.length > 0 ? [{ do: "hoist up" as const, hooks: up }] : []),
    ...(down.length > 0 ? [{ do: "hoist down" as const, hooks: down }] : []),
  ];
}

/** Groups back by as much as they were jacked, those of one height in one step. */
function jackBack(start: Situation, here: Situation): Bare[] {
  const byHeight = new Map<number, string[]>();
  for (const group of Object.keys(here.groupLift)) {
    const by = (start.groupLift[group] - here.groupLift[group]) * 1000;
    if (Math.abs(by) < LEAST) continue;
    byHeight.set(by, [...(byHeight.get(by) ?? []), group]);
  }
  return [...byHeight].map(([by, groups]) => ({
    do: by > 0 ? ("jack up" as const) : ("jack down" as const),
    groups,
    until: { height_mm: Math.abs(by) },
  }));
}

/** A stated way back cut to a part of its step: distances and heights in proportion, all else as stated. */
export function cutTo(list: readonly WayBackStep[], part: number): WayBackStep[] {
  return list.map((step): WayBackStep => {
    switch (step.do) {
      case "roll":
      case "roll together":
        return { ...step, distance_m: step.distance_m * part };
      case "bring over":
      case "walk":
        return { ...step, dx_m: step.dx_m * part, dy_m: step.dy_m * part };
      case "hoist up":
      case "hoist down":
        return { ...step, hooks: step.hooks.map((h) => ({ ...h, height_mm: h.height_mm * part })) };
      case "trial lift":
        return { ...step, height_mm: step.height_mm * part };
      case "take load":
      case "jack up":
      case "jack down":
        return "height_mm" in step.until
          ? ({ ...step, until: { height_mm: step.until.height_mm * part } } as WayBackStep)
          : step;
      default:
        return step;
    }
  });
}
