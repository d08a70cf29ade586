// Small invented plans for the tests of report and command line: a set rolled out on a graded and cross-fallen path.
import type { Plan, Step } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";

const trains = ["rear left", "rear right", "front left", "front right"];
const all = ["far crane", ...trains];
const far: Step = { id: "far on", do: "hook up", crane: "far-1", carries: trains };

/** Steps of the small operation, by what a test wants to see. */
export const steps = {
  tie: { id: "01", do: "lash", lashings: ["tie L", "tie R"], carries: trains },
  roll: { id: "=roll", do: "roll", distance_m: 35, carries: trains },
  far,
  untie: { id: "03", do: "unlash", lashings: ["tie L", "tie R"], carries: trains },
  take: {
    id: "take",
    do: "take load",
    crane: "far-1",
    until: { load_kN: 60 },
    loadCap_kN: 200,
    heightCap_mm: 600,
    carries: all,
  },
  takeTooMuch: {
    id: "too much",
    do: "take load",
    crane: "far-1",
    until: { load_kN: 100 },
    loadCap_kN: 40,
    heightCap_mm: 600,
    carries: all,
  },
  jackDown: {
    id: "down",
    do: "jack down",
    transporter: "front",
    until: { height_mm: 8 },
    carries: all,
  },
  /** Without a crane: the set then stands on a train that is free to pitch, and there is no equilibrium. */
  fall: { id: "fall", do: "drive out", transporter: "front", toward: "forward", distance_m: 20, carries: [] },
} as const satisfies Record<string, unknown>;

/** A fresh plan with these steps, its far crane within reach of the nose. */
export function smallPlan(list: readonly unknown[]): Plan {
  const plan = samplePlan();
  plan.header.title = '=small, "quoted"';
  plan.cranes[0].position = { chainage_m: 66, y_m: 14, elevation_m: 100 };
  plan.site.obstacles = [];
  plan.accept = [];
  delete plan.expected;
  delete plan.record;
  delete plan.site.below.states;
  delete plan.sets[0].unconfirmed;
  plan.sets[0].attachments[0].y_m = -0.4;
  plan.sets[0].steps = structuredClone(list) as Step[];
  return plan;
}

/** Rolled out, taken up in part by the far crane, and the front train let down a little. */
export function goodSteps(): unknown[] {
  return [steps.tie, steps.roll, steps.far, steps.untie, steps.take, steps.jackDown];
}
