// A small solved set with invented numbers, for tests of what the screen makes of a result.
import type { Finding, Result, SetResult, Support, UseStrip } from "../../src/app/index.ts";
import { MOTIONS, type Situation } from "../../src/sequence/index.ts";
import { samplePlan } from "../plan/sample.ts";

const situation: Situation = {
  rearEnd: 0,
  across: 0,
  plane: { chainage: 0, elevation: 0, grade: 0, crossfall: 0 },
  trains: [],
  groupLift: {},
  cranes: [],
  lashed: [],
  tiedAt: {},
  sunk: {},
  heat: { strain: 0, bow: 0 },
  overSeats: false,
};

const band = (name: string, kind: Support["kind"], what: Support["what"] = "group"): Support => ({
  name,
  force: `${what} ${name}`,
  what,
  kind,
  of: "",
  band: true,
});

/** Bands of the set; the bunk between them carries nothing of its own. */
export const supports: Support[] = [
  band("far crane", "far crane", "hoist"),
  band("rear left", "rear train"),
  { ...band("bunk 1", "rear train", "bunk"), band: false },
  band("rear right", "rear train"),
];

/** Weight of the set, N. */
export const weight = 1000;

/** Stored poses: [step, progress, event, chainage of the rear end, shares of the three bands]. */
type Row = [number, number, string, number, [number, number, number]];
const rows: Row[] = [
  [0, 0, "start", 0, [0, 600, 400]],
  [0, 0.25, "rear left peaks", 5, [0, 650, 350]],
  [0, 1, "end", 20, [0, 600, 400]],
  [1, 0, "start", 20, [0, 600, 400]],
  [1, 0.5, "hook far crane begins to carry; limit passed", 20, [200, 480, 320]],
  [1, 1, "end", 20, [700, 180, 120]],
  [2, 0, "start", 20, [700, 180, 120]],
  [2, 1, "end", 30, [700, 180, 120]],
];

/** Shares as given, and a strip for the crane and for one group. */
export function madeUpSet(): SetResult {
  const plan = samplePlan();
  const steps = plan.sets[0].steps.slice(0, 3);
  const count = rows.length;
  const shares = new Float64Array(count * supports.length);
  const forces = new Float64Array(count * supports.length).fill(Number.NaN);
  const motions = new Float64Array(count * MOTIONS.length);
  rows.forEach(([, , , rearEnd, given], i) => {
    [0, 1, 3].forEach((column, k) => {
      shares[i * supports.length + column] = given[k];
      forces[i * supports.length + column] = given[k];
    });
    motions[i * MOTIONS.length + MOTIONS.indexOf("rearEnd")] = rearEnd;
  });
  const strip = (check: string, subject: string, use: number[]): UseStrip => {
    return { check, subject, kind: "", limitWords: `limit of ${check}`, use: Float64Array.from(use) };
  };
  const no = Number.NaN;
  return {
    setId: plan.sets[0].id,
    name: "made up",
    supports,
    weight,
    cg: [10, 0, 1],
    length: 20,
    steps: steps.map((step, index) => {
      const own = rows.flatMap(([of], i) => (of === index ? [i] : []));
      const minutes = [10, undefined, 30][index];
      const { minutes: _, ...rest } = step;
      return {
        index,
        step: minutes === undefined ? rest : { ...rest, minutes },
        solved: true,
        start: situation,
        ends: [],
        happenings: [],
        first: own[0],
        count: own.length,
        motion: "",
      };
    }),
    count,
    step: Int32Array.from(rows, ([step]) => step),
    progress: Float64Array.from(rows, ([, progress]) => progress),
    events: rows.map(([, , event]) => event),
    forces,
    shares,
    motions,
    strips: [
      strip("hook load", "far crane", [no, no, no, 0, 0.2, 0.7, 0.7, 0.7]),
      strip("line lean", "far crane", [no, no, no, 0.1, 0.1, 0.9, 0.1, 1.2]),
      strip("group load", "rear left", [0.6, 0.65, 0.6, 0.6, 0.5, 0.2, 0.2, 0.2]),
    ],
  };
}

/** A finding with a place; other parts as given. */
export function madeUpFinding(part: Partial<Finding> & { id: string }): Finding {
  const when = { step: 1, progress: 0.5 };
  return {
    level: "stop",
    check: "hook load",
    set: samplePlan().sets[0].id,
    subject: "far crane",
    from: when,
    to: when,
    worst: when,
    value: 1,
    limit: 1,
    unit: "kN",
    use: 1,
    source: "",
    chosenBy: "",
    words: "",
    cure: "",
    ...part,
  };
}

/** A result of one set with these findings. */
export function madeUpResult(findings: Finding[] = []): Result {
  return {
    planHash: "made up",
    solverVersion: "0",
    ruleSet: "none",
    sets: [madeUpSet()],
    findings,
    worst: findings[0]?.level ?? null,
    complete: true,
  };
}
