// Witnesses of the checks of transporters: the first two rolls of the demonstration day with limits drawn tight, so that
// each check finds a number that a hand can work out from the plan.

import { expect } from "vitest";
import type { CheckList, Finding, Result } from "../../src/checks/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { onlyStands, readScenario } from "./plans.ts";
import type { Witness } from "./witness.ts";

const REAR = 8.5;
const FRONT = 36;
const G = 9.80665;

/** Limits alone are changed, and travels far longer than what is used of them: the statics are those of the demonstration. */
const tight = readScenario("demo", (plan) => {
  const [set] = plan.sets;
  set.steps = set.steps.slice(0, 4);
  plan.site.path.wheelFriction = 0.05;
  Object.assign(plan.transporters[0], { brakedLines: 3, brakeLimit_kN: 84 });
  for (const t of plan.transporters) {
    t.allowedLine_kN = t.id === "front" ? 150 : 1000;
    t.allowedGrade_pct = 0.4;
    t.allowedCrossfall_pct = 0.3;
    t.allowedTwist_mm = 0.2;
    t.spineMoment_kNm = 900;
    t.strokeUp_mm = 25;
    t.strokeDown_mm = 25;
    t.tyreSquash_mm = 20;
    for (const bunk of t.bunks) bunk.rocks_pct = 0.3;
  }
  const rule = (id: string, value: number, unit: Plan["limits"]["rules"][number]["unit"]) =>
    plan.limits.rules.push({ id, value, unit, source: "invented for this test", chosenBy: "test" });
  plan.limits.rules = [];
  rule("set twist", 1, "mm");
  rule("change of slope along", 0.02, "pct");
  rule("change of slope across", 0.02, "pct");
  rule("acceleration along", 30, "pct");
  rule("tip angle", 12, "deg");
  rule("tip load", 60, "pct");
});

/** Wheels on a path that turns its crossfall from 1 to -2 % within 7 m: the outermost ones of 8 lines stand in a twist. */
const turned = readScenario("demo", (plan) => {
  const [set] = plan.sets;
  set.steps = set.steps.slice(0, 3);
  plan.transporters[1].allowedTwist_mm = 50;
  plan.site.path.points = [
    { chainage_m: 120, elevation_m: 30.5, crossfall_pct: 1 },
    { chainage_m: 180, elevation_m: 30.5, crossfall_pct: 1 },
    { chainage_m: 187, elevation_m: 30.5, crossfall_pct: -2 },
    { chainage_m: 210.5, elevation_m: 30.5, crossfall_pct: -2 },
  ];
});

/** What nobody stated. */
const bare = readScenario("demo", (plan) => {
  const [set] = plan.sets;
  set.steps = set.steps.slice(0, 4);
  plan.limits.rules = [];
  plan.site.path.wheelFriction = undefined;
  for (const t of plan.transporters) {
    t.tyreSquash_mm = undefined;
    t.brakedLines = undefined;
  }
});

const thrown = readScenario("demo", (plan) => {
  plan.sets[0].steps = plan.sets[0].steps.slice(0, 3);
  const across = { id: "acceleration across", value: 30, unit: "pct" as const };
  plan.limits.rules.push({ ...across, source: "invented for this test", chosenBy: "test" });
});

/** A girder of 40 m on trains at 3 m and 22 m, 18 m of it beyond the front one. */
const overhanging = readScenario("one-girder", (plan) => {
  const [set] = plan.sets;
  set.length_m = 40;
  set.girders[0].pieces[0].to_m = 40;
  set.soleStations_m = undefined;
  set.ledger = [];
  set.start.rearEnd_m = 5;
  set.onTransporters[0].deckAt_m = 3;
  set.onTransporters[1].deckAt_m = 22;
  set.picks[0].at_m = 38;
  const carries = plan.transporters.flatMap((t) => t.groups.map((g) => g.name));
  set.steps = [{ id: "stand", do: "hold", releasedBy: "", evidence: "", carries }];
});

/** A path that rises by 60 mm within half a metre and falls as fast. */
const crest = readScenario("demo", (plan) => {
  plan.sets[0].steps = plan.sets[0].steps.slice(2, 3);
  for (const t of plan.transporters) Object.assign(t, { strokeUp_mm: 50, strokeDown_mm: 50 });
  const points: [number, number][] = [
    [120, 30.5],
    [183.5, 30.5],
    [184, 30.56],
    [184.5, 30.5],
    [210.5, 30.5],
  ];
  plan.site.path.points = points.map(([chainage_m, elevation_m]) => ({
    chainage_m,
    elevation_m,
    crossfall_pct: 0,
  }));
});

const unyielding = readScenario("demo", (plan) => {
  plan.sets[0].steps = plan.sets[0].steps.slice(0, 1);
  plan.transporters[1].bunks = [{ at_m: 0, kind: "fixed", length_mm: 500 }];
});

/** Ice on a path of 0.6 %; half of the lines brake. */
const slippery = readScenario("demo", (plan) => {
  plan.sets[0].steps = plan.sets[0].steps.slice(0, 1);
  plan.transporters[0].brakedLines = 3;
  plan.site.path.wheelFriction = 0.002;
});

/** On a path of 3 % the rear train alone brakes; bunks of friction 0.01 hardly hold the front one of 7 t. */
const released = readScenario("one-girder", (plan) => {
  onlyStands(plan, ["rear"]);
  plan.site.path.points = [0, 60].map((chainage_m) => ({
    ...plan.site.path.points[0],
    chainage_m,
    elevation_m: 10 + 0.03 * chainage_m,
  }));
  plan.transporters[1].bunkFriction = 0.01;
});

const of = (result: Result, check: string, subject: string): Finding => {
  const found = result.findings.find((f) => f.check === check && f.subject === subject);
  expect(found, `${check} of ${subject}`).toBeDefined();
  return found as Finding;
};
/** A finding's value lies within a part of a number worked out by hand. */
const near = (f: Finding, hand: number, part: number): void => {
  const value = f.value ?? Number.NaN;
  expect(Math.abs(value - hand), `${f.words}; by hand ${hand}`).toBeLessThanOrEqual(part * Math.abs(hand));
};

/** Load of the set on the front train, N, by levers about the rear one. */
function onFront({ sets: [set] }: Result): number {
  return (set.weight * (set.cg[0] - REAR)) / (FRONT - REAR);
}
const ownFront = 32.8 * 1000 * G;
const sees =
  (plan: Plan, look: (result: Result) => void): Witness["sees"] =>
  (solve: (plan: Plan) => Result, _checks: CheckList) =>
    look(solve(plan));

export const transporterWitnesses: Witness[] = [
  {
    check: "tipping",
    ids: ["ST-7"],
    title: "40 m of even weight over a front support at 22 m: 22^2 over 18^2, below 1.5",
    sees: sees(overhanging, (result) => {
      const found = of(result, "tipping", "set");
      expect(found.level).toBe("stop");
      near(found, 22 ** 2 / 18 ** 2, 1e-6);
    }),
  },
  {
    check: "stroke",
    ids: ["TR-5"],
    title: "a crest of 60 mm under a train of 50 mm travel: its lines stand on the crest one after the other",
    sees: sees(crest, (result) => {
      const { words } = of(result, "stroke", "front");
      expect(words).toMatch(/front:\dL? ?.*crests and hollows -\d\d/);
    }),
  },
  {
    check: "line load",
    ids: ["TR-1", "TR-2", "TR-3"],
    title:
      "the front train's bunk stands midway between its groups, so that its four rear lines carry half of it alike",
    sees: sees(tight, (result) => {
      // The grade of 0.6 % moves the load of the bunk, 1.6 m up, by a centimetre of 5.6 m between the groups.
      near(of(result, "line load", "front"), (onFront(result) + ownFront) / 2 / 4 / 1000, 0.01);
    }),
  },
  {
    check: "spine moment",
    ids: ["TR-1"],
    title:
      "the front half of the front train's lines bends the spine up about its bunk, its own weight bends it down",
    sees: sees(tight, (result) => {
      const half = (onFront(result) + ownFront) / 2;
      // Four lines at 0.7, 2.1, 3.5 and 4.9 m; own weight over 11.4 m.
      const hand = half * 2.8 - (ownFront / 11.4) * (5.7 ** 2 / 2);
      near(of(result, "spine moment", "front"), hand / 1000, 0.01);
    }),
  },
  {
    check: "line lost",
    ids: ["TR-12"],
    title: "with one of the four rear lines lost, the three others carry a third more each",
    sees: sees(tight, (result) => {
      near(of(result, "line lost", "front"), (onFront(result) + ownFront) / 2 / 3 / 1000, 0.01);
    }),
  },
  {
    check: "tip angle",
    ids: ["TR-4"],
    title: "each train stands on its own triangle of groups: by angle, way and load, with what takes of it",
    sees: sees(tight, (result) => {
      const { level, words, value } = of(result, "tip angle", "front");
      expect(level).toBe("caution");
      // The triangle's slanted side passes 5.6 m long and 1.05 m wide: half-way along, 0.525 m of its width is left.
      const side = (0.525 * 5.6) / Math.hypot(5.6, 1.05);
      expect(value).toBeLessThan((Math.atan(side / 2.6) * 180) / Math.PI);
      expect(words).toMatch(/about front left to front aft: [\d.]+ deg, \d+ mm left of \d+/);
      expect(words).toMatch(/wind of 11 m\/s \d+, start, stop and turns \d+; tilts grow 1\.0\d times/);
      expect(words).toMatch(/kN left at front right; .*would make it 12 deg|no load at front right/);
    }),
  },
  {
    check: "tip load",
    ids: ["TR-4", "ST-7"],
    title: "what is left in the group opposite the line is told in kN",
    sees: sees(tight, (result) => {
      const { value, limit, unit } = of(result, "tip load", "front");
      expect(unit).toBe("kN");
      // Of a quarter of the train: the share of one front group by its wheels.
      const equal = (onFront(result) + ownFront) / 4 / 1000;
      expect(Math.abs((limit ?? 0) - 0.6 * equal)).toBeLessThan(0.02 * equal);
      expect(value).toBeLessThan(0.6 * equal);
    }),
  },
  {
    check: "tip distance",
    ids: ["TR-4"],
    title: "thrown across by 30 % of gravity, a train goes over the side of its groups",
    sees: (solve) => {
      const { level, value } = of(solve(thrown), "tip distance", "front");
      expect(level).toBe("stop");
      expect(value).toBeLessThan(0);
    },
  },
  {
    check: "stroke budget",
    ids: ["TR-5"],
    title: "25 mm of travel is too little once settlement and tyres are counted in",
    sees: sees(tight, (result) => {
      expect(of(result, "stroke budget", "rear").words).toMatch(/after settlement 10 and tyres 20 mm/);
    }),
  },
  {
    check: "grade",
    ids: ["TR-8"],
    title: "the path rises by 0.11 m in 16 m ahead of chainage 180: 0.69 %, more than the 0.4 % allowed here",
    sees: sees(tight, (result) => near(of(result, "grade", "front"), (0.11 / 16) * 100, 0.03)),
  },
  {
    check: "crossfall",
    ids: ["TR-8"],
    title: "the path falls by 0.6 % across at chainage 180",
    sees: sees(tight, (result) => expect(of(result, "crossfall", "rear").value).toBeGreaterThanOrEqual(0.5)),
  },
  {
    check: "twist",
    ids: ["TR-6"],
    title: "outermost wheels 9.8 m apart, 2.1 m wide, over a turn of crossfall by 3 %: 63 mm out of plane",
    sees: sees(turned, (result) => near(of(result, "twist", "front"), 0.03 * 2.1 * 1000, 1e-6)),
  },
  {
    check: "set twist",
    ids: ["TR-6", "TR-7"],
    title: "the bearing points of the set leave the plane of the other three by more than the owner's 1 mm",
    sees: sees(tight, (result) => expect(of(result, "set twist", "set").chosenBy).toBe("test")),
  },
  {
    check: "change of slope along",
    ids: ["TR-6", "TR-7"],
    title: "the set rolls from 0.63 on to 0.69 %: its slope changes by some hundredths",
    sees: sees(tight, (result) =>
      expect(of(result, "change of slope along", "set").words).toMatch(/before first lift/),
    ),
  },
  {
    check: "change of slope across",
    ids: ["TR-6", "TR-7"],
    title: "the crossfall of the path goes from 0.5 to 0.6 % and back, and with it the set's",
    sees: sees(tight, (result) =>
      expect(of(result, "change of slope across", "set").value).toBeLessThan(0.3),
    ),
  },
  {
    check: "bunk rocking",
    ids: ["TR-1"],
    title: "girders that overhang slope against the deck by more than 0.3 %",
    sees: sees(tight, (result) =>
      expect(of(result, "bunk rocking", "front").words).toMatch(/rocking bunk 1, girder [LR]/),
    ),
  },
  {
    check: "bunk edge",
    ids: ["TR-1"],
    title:
      "a fixed bunk of 500 mm under girders that slope by some 0.5 % against its deck bears on its edge alone",
    sees: sees(unyielding, (result) => {
      const found = of(result, "bunk edge", "front");
      near({ ...found, value: found.limit }, 500 / 6, 1e-9);
      expect(found.words).toMatch(/fixed bunk 1, girder [LR] (rises|falls) forward by 0\.\d\d %/);
    }),
  },
  {
    check: "slip under way",
    ids: ["TR-10"],
    title: "started at 30 % of gravity on bunks of friction 0.25: a fifth more than friction, and the grade",
    sees: sees(tight, (result) => {
      const { value, words } = of(result, "slip under way", "set");
      // Start and grade of 0.6 to 0.7 % over friction, the ties' pull on the bunks being 48 kN.
      const weight = result.sets[0].weight;
      const friction = 0.25 * (weight + 48e3);
      expect(value).toBeGreaterThan((0.306 * weight * 100) / friction);
      expect(value).toBeLessThan((0.308 * weight * 100) / friction + 1);
      expect(words).toMatch(/along: /);
    }),
  },
  {
    check: "brake grip",
    ids: ["TR-8", "TR-10"],
    title:
      "on ice of friction 0.002 the three lines of the rear train that brake, half of its load, hold a thousandth of it",
    sees: (solve) => {
      const { limit } = of(solve(slippery), "brake grip", "rear");
      const rear = solve(slippery).sets[0];
      const load = rear.weight - onFront(solve(slippery)) + 24.6 * 1000 * G;
      expect(Math.abs((limit ?? 0) - (0.002 * load) / 2 / 1000)).toBeLessThan((0.03 * (0.001 * load)) / 1000);
    },
  },
  {
    check: "released train",
    ids: ["TR-10"],
    title:
      "on 3 % the set holds a train of 7 t with released brakes by 0.01 of the 70.66 kN on it, and not by 2.06 kN",
    sees: sees(released, (result) => {
      const one = of(result, "released train", "front");
      near(one, (7 * G * 0.03) / Math.hypot(1, 0.03), 1e-3);
      // The set of 102.77 kN with its CG at 15 m on trains at 4 and 20 m.
      near({ ...one, value: one.limit }, 0.01 * 70.66, 0.01);
    }),
  },
  {
    check: "braking",
    ids: ["TR-10"],
    title: "the lightly loaded rear train is asked for three sevenths of the stop, and cannot give it",
    sees: sees(tight, (result) => {
      const rear = of(result, "braking", "rear");
      const all = result.sets[0].weight + (24.6 + 32.8) * 1000 * G;
      near(rear, ((0.3 + 0.0065) * all * 3) / 7 / 1000, 0.01);
      const load = result.sets[0].weight - onFront(result) + 24.6 * 1000 * G;
      expect(rear.limit).toBeLessThanOrEqual((0.05 * load) / 2 / 1000 + 0.1);
    }),
  },
  {
    check: "traction",
    ids: ["TR-10"],
    title: "wheels that grip by 0.05 cannot start at 30 % of gravity",
    sees: sees(tight, (result) => {
      const all = result.sets[0].weight + (24.6 + 32.8) * 1000 * G;
      near(of(result, "traction", "set"), ((0.3 + 0.0065 + 0.02) * all) / 1000, 0.01);
    }),
  },
  {
    check: "limit not set",
    ids: ["TR-7"],
    title: "an owner who set no tolerances for the move is an open item",
    sees: sees(bare, (result) =>
      expect(
        of(result, "limit not set", "set twist, change of slope along, change of slope across").level,
      ).toBe("note"),
    ),
  },
  {
    check: "missing data",
    ids: ["TR-5", "TR-8"],
    title: "friction of the path, tyres and braked lines that nobody stated are open items, each named",
    sees: sees(bare, (result) => {
      for (const subject of [
        "site.path.wheelFriction",
        "transporters tyreSquash_mm",
        "transporters brakedLines",
      ])
        expect(of(result, "missing data", subject).level).toBe("note");
      expect(result.findings.some((f) => f.check === "braking")).toBe(false);
    }),
  },
];
