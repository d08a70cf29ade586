// The proposed sequence: a first one that solves, searched for the lowest worst use, with the runner-up and why it lost.

import type { Plan } from "../../plan/index.ts";
import { completeResult } from "../complete.ts";
import { solvePlan } from "../solvePlan.ts";
import type { Finding, Result } from "../types.ts";
import { planOf } from "./build.ts";
import { choiceWords } from "./choice.ts";
import type { Governing } from "./evaluate.ts";
import { prospectsOf } from "./prospect.ts";
import { alike, BUDGET, type Candidate, search } from "./search.ts";

/** The second best idea, and why it lost. */
export interface RunnerUp {
  plan: Plan;
  worstUse: number;
  governing: Governing;
  choice: string;
  why: string;
}

/** What the search found. Nothing of it is a lift plan: it is a first sequence for an engineer to judge. */
export interface Proposal {
  /** A whole plan with positions, picks and steps of the set; null when none could even be laid out. */
  plan: Plan | null;
  /** The largest use over all strips of the solved plan; null without a plan that solves. */
  worstUse: number | null;
  governing: Governing | null;
  choice: string;
  runnerUp: RunnerUp | null;
  method: string;
  /** How many choices the solver judged. */
  evaluations: number;
  /** Findings of level stop in the proposed plan, in words. */
  stops: string[];
  /** True when every step of the proposed plan has an equilibrium. */
  solves: boolean;
  /** Steps that stand on one hook or group alone: a person has to accept them by name before they are no stop. */
  toAccept: string[];
  /** Set when nothing passes: the limit that makes it impossible, in words. */
  impossible?: string;
  cancelled: boolean;
}

/** How many of the best are solved in full before one is proposed. */
const SOLVED_IN_FULL = 4;
/** How many other ideas are solved in full to find a runner-up. */
const OTHERS = 2;

/**
 * Proposes positions and steps of a set from its steel, the site, the machines and the limits alone: what the set says of
 * positions and steps is replaced, but for the machines, rigging and pick heights that its lists name. Pure and
 * deterministic. `onProgress` is called after every judged choice with how many there were, the budget, and the best worst
 * use so far; returning false ends the search. Throws when the plan has no such set.
 */
export function proposeSequence(
  plan: Plan,
  setId: string,
  onProgress: (done: number, of: number, best: number) => boolean = () => true,
): Proposal {
  const nothing = {
    plan: null,
    worstUse: null,
    governing: null,
    choice: "",
    runnerUp: null,
    method: METHOD,
    evaluations: 0,
    stops: [],
    solves: false,
    toAccept: [],
    cancelled: false,
  };
  const prospects = prospectsOf(plan, setId);
  if (typeof prospects === "string") return { ...nothing, impossible: prospects };
  const { ranked, evaluations, cancelled } = search(prospects, (done, best) =>
    onProgress(done, BUDGET, best),
  );
  if (cancelled) return { ...nothing, evaluations, cancelled };
  if (ranked.length === 0) return { ...nothing, evaluations, impossible: NO_ROOM };

  const solved: Solved[] = [];
  for (const candidate of ranked) {
    if (solved.length === SOLVED_IN_FULL) break;
    // The first full solve mostly confirms the coarse one; others are solved only when they may beat it.
    const best = solved.reduce((least, s) => Math.min(least, s.rank), Number.POSITIVE_INFINITY);
    if (best <= candidate.judged.worst) break;
    solved.push(solveInFull(candidate, setId));
  }
  solved.sort(byRank);
  // The runner-up is another idea, not a neighbour of the best; one that solves is preferred.
  const others: Solved[] = [];
  for (const candidate of ranked) {
    if (others.length === OTHERS || others.some((s) => s.stops.length === 0)) break;
    if ([...solved.slice(0, 1), ...others].every((s) => !alike(candidate, s.candidate)))
      others.push(solved.find((s) => s.candidate === candidate) ?? solveInFull(candidate, setId));
  }
  const [winner, second] = [solved[0], ...others.sort(byRank).slice(0, 1)].sort(byRank);
  const stops = winner.stops.map((f) => f.words);
  return {
    plan: winner.plan,
    worstUse: winner.result.complete ? winner.worstUse : null,
    governing: winner.governing,
    choice: choiceWords(winner.candidate.judged.choice),
    runnerUp: second ? runnerUpOf(second, winner) : null,
    method: METHOD,
    evaluations,
    stops,
    solves: winner.result.complete,
    toAccept: unbackedIn(winner),
    ...(stops.length > 0 ? { impossible: impossibleWords(winner) } : {}),
    cancelled,
  };
}

const METHOD = `Grid of train places, picks and last place of the rear train, looked at with rigid levers, charts and tipping; the best of it judged by the solver in coarse runs (ends, quarters and marks of every step); pattern search from the two best of those, over train places, picks, last place, loads taken before jacking down, and the end that lands first; at most ${BUDGET} judged choices; the best solved in full. The aim is the lowest worst use over all strips with no finding of level stop.`;

const NO_ROOM =
  "no sequence can be laid out: both transporters do not find room under the set and behind the stop line. A longer path, shorter transporters or a longer set would.";

interface Solved {
  candidate: Candidate;
  plan: Plan;
  result: Result;
  worstUse: number;
  stops: Finding[];
  /** Worst use, or more than any use when a stop is no number. */
  rank: number;
  governing: Governing;
  /** The greatest use of every strip, greatest first. */
  peaks: Governing[];
}

/** Uses nearer to one another than this count as equal. */
const EQUAL = 1e-4;

/** Lower worst use first; where those are equal, the first of the other peaks that differs decides. */
function byRank(a: Solved, b: Solved): number {
  const i = a.peaks.findIndex((p, k) => Math.abs((p.use ?? 0) - (b.peaks[k]?.use ?? 0)) > EQUAL);
  if (Math.abs(a.rank - b.rank) > EQUAL || i < 0) return a.rank - b.rank;
  return (a.peaks[i].use ?? 0) - (b.peaks[i]?.use ?? 0);
}

function solveInFull(candidate: Candidate, setId: string): Solved {
  const { judged, prospect } = candidate;
  const plan = planOf(prospect, judged.choice, judged.heights) as Plan;
  const result = solvePlan(plan, { sets: [setId] });
  const stops = result.findings.filter((f) => f.level === "stop" && f.set === setId);
  const peaks: Governing[] = [];
  for (const set of result.sets)
    for (const strip of set.strips) {
      let at = -1;
      strip.use.forEach((use, i) => {
        if (!Number.isNaN(use) && (at < 0 || use > strip.use[at])) at = i;
      });
      if (at < 0) continue;
      const use = strip.use[at];
      const step = set.steps[set.step[at]].step.id;
      peaks.push({
        check: strip.check,
        subject: strip.subject,
        step,
        progress: set.progress[at],
        use,
        words: `${strip.check} of ${strip.subject} uses ${percent(use)} of its ${strip.limitWords} in step ${step}`,
      });
    }
  peaks.sort((a, b) => (b.use ?? 0) - (a.use ?? 0));
  const governing = peaks[0] ?? judged.governing;
  const worstUse = governing.use ?? 0;
  const rank = stops.length > 0 || !result.complete ? Math.max(judged.worst, worstUse, 1 + 1e-6) : worstUse;
  return { candidate, plan, result, worstUse, stops, rank, governing, peaks };
}

/** Ids of the steps in which nothing else would hold the set, and nobody has accepted that. */
function unbackedIn({ plan, result }: Solved): string[] {
  const whole = completeResult(plan, result, { waysBack: false, envelopes: false });
  const [set] = whole?.sets ?? [];
  const open = (set?.backed?.stretches ?? []).filter((s) => s.falls.some((f) => f.accepted === null));
  return [...new Set(open.map((s) => set.steps[s.step].step.id))];
}

function runnerUpOf(full: Solved, winner: Solved): RunnerUp {
  const stop = worstStop(full);
  const i = full.peaks.findIndex((p, k) => Math.abs((p.use ?? 0) - (winner.peaks[k]?.use ?? 0)) > EQUAL);
  const peak = (g: Governing) => `${g.check} of ${g.subject} at ${percent(g.use ?? 0)} in step ${g.step}`;
  const equal = i > 0 ? `both have ${peak(full.peaks[0])}; then ` : "";
  const why = stop
    ? `it has a stop${at(full, stop)}: ${stop.words}`
    : i < 0
      ? "it is as good in every strip, and came later"
      : `${equal}it has ${peak(full.peaks[i])} where the proposal has ${peak(winner.peaks[i])}`;
  return {
    plan: full.plan,
    worstUse: full.worstUse,
    governing: full.governing,
    choice: choiceWords(full.candidate.judged.choice),
    why,
  };
}

function impossibleWords(winner: Solved): string {
  const { judged } = winner.candidate;
  const words = judged.stop ? judged.governing.words : (worstStop(winner)?.words ?? "");
  const where = judged.stop && judged.governing.step !== "" ? ` in step ${judged.governing.step}` : "";
  return `nothing that was tried passes every limit. In the best of it ${words}${where}: this is what must change first.`;
}

/** The stop that passes its limit by most; one without a number when no other has one. */
function worstStop(s: Solved): Finding | undefined {
  return [...s.stops].sort((a, b) => (b.use ?? 0) - (a.use ?? 0))[0];
}

/** The step in which a finding stands, in words. */
function at(s: Solved, f: Finding): string {
  const step = f.worst === null ? undefined : s.result.sets[0].steps[f.worst.step];
  return step ? ` in step ${step.step.id} at ${f.worst?.progress.toFixed(3)}` : "";
}

const percent = (use: number) => `${(100 * use).toFixed(2)} %`;
