// Proposed sequences: of the demo without its steps, and of sites drawn at random, against a search without any cleverness.
//
// No published source gives the best sequence of a site; what is compared with is a brute-force search of our own, whose
// choices are judged by the same solver, and the demo's plan made by hand. LONG=1 tries all five sites.
import { expect, test } from "vitest";
import { type Proposal, proposeSequence, solvePlan } from "../../src/checks/index.ts";
import { NO_NUMBER } from "../../src/checks/propose/evaluate.ts";
import { checkPlan, type Plan, sentence } from "../../src/plan/index.ts";
import { bruteForce } from "./bruteForce.ts";
import { demo, siteOf, siteWords, strippedDemo } from "./sites.ts";

const LIMIT_MS = 600_000;
/** The brute-force search may not beat a proposal by more than this part. */
const BEATEN = 0.05;

/** Greatest use over all strips of a plan solved afresh, and its stops but for unbacked poses, which a person accepts. */
function solved(plan: Plan): { worst: number; stops: string[] } {
  const result = solvePlan(plan);
  let worst = 0;
  for (const set of result.sets)
    for (const strip of set.strips) for (const use of strip.use) if (use > worst) worst = use;
  return { worst, stops: result.findings.filter((f) => f.level === "stop").map((f) => f.words) };
}

const percent = (use: number | null | undefined) =>
  use === null || use === undefined ? "none" : `${(100 * use).toFixed(1)} %`;

/** The plan of a proposal, read again by the rules of the file. */
function planOf(proposal: Proposal): Plan {
  const read = checkPlan(structuredClone(proposal.plan));
  if (!read.ok) throw new Error(read.errors.map(sentence).join("\n"));
  return read.plan;
}

test(
  "the demo without steps and positions gets a sequence without a stop, no worse than the one made by hand",
  () => {
    const started = process.cpuUsage();
    const proposal = proposeSequence(strippedDemo(), "set-1");
    const seconds = process.cpuUsage(started).user / 1e6;
    const again = solved(planOf(proposal));
    const hand = solved(demo());
    console.log(
      `demo: proposed ${percent(proposal.worstUse)} (${proposal.governing?.words}), by hand ${percent(hand.worst)}; ` +
        `runner-up ${percent(proposal.runnerUp?.worstUse)}: ${proposal.runnerUp?.why}; ` +
        `${proposal.evaluations} judged in ${seconds.toFixed(1)} s of processor time`,
    );
    expect(proposal.impossible).toBeUndefined();
    expect(again.stops).toEqual([]);
    expect(again.worst).toBeCloseTo(proposal.worstUse as number, 9);
    expect(again.worst).toBeLessThanOrEqual(hand.worst);
    expect(proposal.runnerUp?.why).toMatch(/ of .* at \d+\.\d+ % in step /);
    expect(proposal.runnerUp?.plan).not.toEqual(proposal.plan);
    // Everything that hangs on a hook alone stays to be accepted by a person.
    expect(proposal.toAccept).toContain("over");
    // Lashings come off before a crane takes load, and go on before the roll.
    const kinds = (proposal.plan as Plan).sets[0].steps.map((s) => s.do);
    expect(kinds.indexOf("lash")).toBeLessThan(kinds.indexOf("roll"));
    expect(kinds.indexOf("unlash")).toBeLessThan(kinds.indexOf("take load"));
  },
  LIMIT_MS,
);

/** Seeds of the sites, and by how much their cranes are too weak. */
const sites: [seed: number, weaker: number][] = [
  [3, 1],
  [4, 2],
  ...(process.env.LONG === "1"
    ? ([
        [1, 1],
        [2, 1],
        [5, 1],
      ] as [number, number][])
    : []),
];

test.each(sites)(
  "site of seed %i, cranes weaker by %d: a sequence without a stop, or the limit that forbids it",
  (seed, weaker) => {
    const plan = siteOf(seed, weaker);
    const proposal = proposeSequence(plan, plan.sets[0].id);
    const again = solved(planOf(proposal));
    const brute = bruteForce(plan, 4, 3);
    console.log(
      `site ${seed}, ${siteWords(plan)}, cranes ${weaker} times weaker: ` +
        `proposed ${percent(proposal.worstUse)} (${proposal.governing?.check} of ${proposal.governing?.subject}), ` +
        `brute force ${percent(brute.best?.worst)} of ${brute.judged} (${brute.best?.governing.check}); ` +
        `${proposal.impossible ?? "no stop"}; runner-up: ${proposal.runnerUp?.why}`,
    );
    expect(brute.judged).toBeGreaterThan(20);
    const best = brute.best?.worst ?? Number.POSITIVE_INFINITY;
    if (proposal.impossible === undefined) {
      expect(again.stops).toEqual([]);
      expect(again.worst).toBeLessThanOrEqual(best * (1 + BEATEN));
      expect(again.worst).toBeLessThanOrEqual(1);
      return;
    }
    // What it calls impossible must be so for the brute-force search too, and the words must name a limit that is passed.
    expect(best).toBeGreaterThan(1);
    expect(again.stops.length).toBeGreaterThan(0);
    expect(proposal.impossible).toContain(proposal.governing?.check);
    if (proposal.worstUse !== null && best < NO_NUMBER)
      expect(proposal.worstUse).toBeLessThanOrEqual(best * (1 + BEATEN));
  },
  LIMIT_MS,
);

test("both outcomes are among the sites that are always tried", () => {
  expect(sites.slice(0, 2).map(([, weaker]) => weaker)).toEqual([1, 2]);
});

test("a plan without a near crane gets the missing machine in words, and no plan", () => {
  const plan = strippedDemo();
  plan.cranes = plan.cranes.filter((c) => c.kind !== "near");
  const { plan: none, impossible } = proposeSequence(plan, "set-1");
  expect(none).toBeNull();
  expect(impossible).toMatch(/lacks a near crane/);
});

test("a path too short for both trains gets no plan, and says what would help", () => {
  const plan = strippedDemo();
  plan.site.path.points = plan.site.path.points
    .slice(-2)
    .map((p, i) => (i === 0 ? { ...p, chainage_m: 208 } : p));
  const { plan: none, impossible } = proposeSequence(plan, "set-1");
  expect(none).toBeNull();
  expect(impossible).toMatch(/longer path/);
});

test("the search ends at once when it is told to", () => {
  const seen: number[] = [];
  const proposal = proposeSequence(strippedDemo(), "set-1", (done) => {
    seen.push(done);
    return done < 3;
  });
  expect(seen).toEqual([1, 2, 3]);
  expect(proposal.cancelled).toBe(true);
  expect(proposal.plan).toBeNull();
});
