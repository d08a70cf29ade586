// Witnesses of what a motion meets on its way, and of what a plan ends with: the one-girder plan, 102.77 kN with its CG at
// 15 m, on trains at 4 and 20 m.

import { expect } from "vitest";
import { type CheckList, completeResult, type Result } from "../../src/checks/index.ts";
import type { Plan, Step } from "../../src/plan/index.ts";
import { about, cutAfter, found, onlyStands, readScenario, shared, step, subjects } from "./plans.ts";
import type { Witness } from "./witness.ts";

/** The plan up to a step, with a change to that step. */
const upTo = (id: string, change: (last: Step, plan: Plan) => void) =>
  shared(() =>
    readScenario("one-girder", (plan) => {
      cutAfter(plan, id);
      plan.accept = [];
      change(plan.sets[0].steps[plan.sets[0].steps.length - 1], plan);
    }),
  );

const capped = upTo("far-takes", (last) => Object.assign(last, { loadCap_kN: 35 }));
const sunk = upTo("roll-out", (_, plan) => {
  plan.sets[0].steps.push(step({ do: "jack down", transporter: "front", until: { gap_mm: 80 } }));
});
const narrow = upTo("front-out", (_, plan) => {
  plan.site.path.clearRight_m = 9;
});
const unknown = upTo("front-out", (last) => Object.assign(last, { toward: "left" }));
const warmed = upTo("roll-out", (_, plan) => {
  plan.sets[0].steps.push(step({ do: "hold", releasedBy: "", evidence: "", minutes: 60, temperature_C: 20 }));
});
const hooked = upTo("far-off", () => {});
/** A night on the rear train's stops and the far hook, which somebody accepted, and for which no zone is named. */
const night = upTo("roll-with-far", (_, plan) => {
  plan.sets[0].steps.push(step({ do: "rest", id: "night", on: ["stops"] }));
  plan.accept = [{ check: "unbacked", subject: "set", step: "night", by: "somebody", reason: "tired" }];
});
const short = upTo("roll-out", (last) => {
  Object.assign(last, { wayBack: [step({ do: "roll", id: "home", distance_m: -8, carries: last.carries })] });
});
const beyond = shared(() =>
  readScenario("one-girder", (plan) => {
    onlyStands(plan);
    plan.sets[0].onTransporters[1].deckAt_m = 12;
  }),
);

/** The result with what is lost, or with the ways back, by the checks handed in. */
function later(
  plan: Plan,
  result: Result,
  checks: CheckList,
  part: { backed?: boolean; waysBack?: boolean },
): Result {
  const whole = completeResult(plan, result, { checks, envelopes: false, ...part });
  if (whole === null) throw new Error("it was broken off");
  return whole;
}

export const happeningWitnesses: Witness[] = [
  {
    check: "cap reached",
    ids: ["CR-4"],
    title: "a hook that is to take 40 kN and may take 35",
    sees: (solve) => {
      const [one] = found(solve(capped()), "cap reached", "stop");
      expect(one).toMatchObject({ subject: "far crane", unit: "kN" });
      about(one.limit, 35, 1e-9);
    },
  },
  {
    check: "end not reached",
    ids: ["SQ-1"],
    title:
      "a train that is to go 80 mm clear of a girder which nothing else holds: the girder follows it down",
    sees: (solve) => expect(subjects(found(solve(sunk()), "end not reached", "stop"))).toEqual(["front aft"]),
  },
  {
    check: "not clear",
    ids: ["TR-8"],
    title: "8 m to the right and half of a deck of 2.6 m need 9.3 m, where 9 m are free",
    sees: (solve) => {
      const [one] = found(solve(narrow()), "not clear", "stop");
      expect(one.subject).toBe("front");
      about(one.value, 8 + 2.6 / 2, 1e-9);
      about(one.limit, 9, 1e-9);
    },
  },
  {
    check: "not provable",
    ids: ["TR-8"],
    title: "a way out to the left, of whose ground the plan says nothing",
    sees: (solve) => {
      const [one] = found(solve(unknown()), "not provable", "stop");
      expect(one.subject).toBe("front");
      expect(one.words).toContain("site.path.clearLeft_m");
    },
  },
  {
    check: "no equilibrium",
    ids: ["ST-7"],
    title: "a girder with its CG at 15 m on trains at 4 and 12 m falls over the front one",
    sees: (solve) => {
      expect(solve(beyond()).complete).toBe(false);
      expect(subjects(found(solve(beyond()), "no equilibrium", "stop"))).toEqual(["stand"]);
    },
  },
  {
    check: "length change",
    ids: ["FT-3"],
    title:
      "29 m between the soles, 20 C warmer, grow by 6.8 mm: 11.7e-6 per C (AASHTO LRFD 6.4.1, from memory)",
    sees: (solve) =>
      about(found(solve(warmed()), "length change", "note")[0]?.value, 11.7e-6 * 20 * 29, 1e-9),
  },
  {
    check: "left on",
    ids: ["SQ-1"],
    title: "a plan that lands the girder and ends with one of its two hooks still on",
    sees: (solve) => expect(subjects(found(solve(hooked()), "left on", "caution"))).toEqual(["near crane"]),
  },
  {
    check: "unbacked rest",
    ids: ["SQ-9"],
    title: "a night in which one hook alone holds the nose, though somebody accepted it",
    sees: (solve, checks) => {
      const whole = later(night(), solve(night()), checks, { waysBack: false });
      expect(subjects(found(whole, "unbacked rest", "stop"))).toEqual(["night"]);
    },
  },
  {
    check: "fall zone",
    ids: ["SQ-9"],
    title: "the same night names no zone that is kept empty",
    sees: (solve, checks) => {
      const whole = later(night(), solve(night()), checks, { waysBack: false });
      expect(subjects(found(whole, "fall zone", "caution"))).toEqual(["night"]);
    },
  },
  {
    check: "way back",
    ids: ["SQ-9"],
    title: "a roll of 10 m out with 8 m back stated ends 2 m from where it began",
    sees: (solve, checks) => {
      const whole = later(short(), solve(short()), checks, { backed: false });
      const [one] = found(whole, "way back", "stop");
      expect(one.subject).toBe("roll-out");
      expect(whole.sets[0].waysBack?.[0].from[2].words).toMatch(/ends 2000 mm from where the step began/);
    },
  },
];
