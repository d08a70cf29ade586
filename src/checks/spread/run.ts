// The spread of a set: every corner followed along the steps of the best run, and what they bring beside it.

import { type Plan, spreadOf } from "../../plan/index.ts";
import type { Happening, SetContext } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { checkList } from "../list.ts";
import type { CheckList } from "../measure.ts";
import { inOrder } from "../measureFindings.ts";
import { carryFindings, happeningFinding } from "../runFindings.ts";
import type { Finding, Result, SetResult, SpreadResult, SpreadWorst, When, WorstAt } from "../types.ts";
import { type AtCorner, atCorner, type Models } from "./apply.ts";
import { bestName, type Corner, cornerOf } from "./corner.ts";
import { feltIn } from "./felt.ts";
import { bandFindings, ofCorner } from "./findings.ts";
import { type Followed, follow } from "./follow.ts";
import { bestRun, type Gathering, gathering } from "./gather.ts";

/** A spread under way: one corner at each `next`, so that whoever runs it can look up between them. */
export interface Spreading {
  /** Corners run so far, and how many there are. */
  done: () => number;
  of: number;
  /** Runs the next corner; false when there was none left. */
  next: () => boolean;
  /** What the corners run so far bring. */
  result: () => SpreadResult;
}

/** The part of a solved set that its spread needs. */
export type SolvedSet = Pick<SetResult, "setId" | "steps" | "step" | "progress" | "count" | "supports">;

/**
 * Prepares to run corners over a solved set. A pose of a corner is that at the same step and progress as the stored pose
 * of the best run; it is solved, never interpolated.
 */
export function spreadOver(
  ctx: SetContext,
  set: SolvedSet,
  corners: readonly Corner[],
  checks: Pick<CheckList, "makers"> = checkList,
): Spreading {
  const all = gathering(ctx, set.count);
  const models: Models = new Map();
  const followed: Followed = new Map();
  const found = new Map<string, Finding>();
  const known = new Set<string>();
  const when = (pose: number): When => ({ step: set.step[pose], progress: set.progress[pose] });
  const list = [...corners];
  const nameOf = (corner: number, step: number) => cornerName(ctx.plan, set, list, corner, step);
  const add = (finding: Finding, corner: number) => {
    if (corner === bestRun) known.add(finding.id);
    if (known.has(finding.id) || finding.level === "note") return;
    const before = found.get(finding.id);
    if (!before || worse(finding, before))
      found.set(finding.id, ofCorner(finding, nameOf(corner, finding.worst?.step ?? 0)));
  };
  /** Ids of what the best run found, words aside: a corner that finds the same with other numbers finds nothing new. */
  const happened = (step: number, h: Happening, corner: number) => {
    const finding = happeningFinding(ctx, step, h);
    add({ ...finding, id: `${h.kind}:${set.setId}:${h.subject}:${step}` }, corner);
  };
  for (const s of set.steps) for (const h of s.happenings) happened(s.index, h, bestRun);

  /** The corner with a part of its wind: where all of it leaves no equilibrium. Made when first met. */
  const withWind = (index: number, part: number): number => {
    if (part === 1) return index;
    const lee = cornerOf(ctx.plan, { ...list[index], wind: list[index].wind * part });
    const known = list.findIndex((c) => c.name === lee.name);
    return known >= 0 ? known : list.push(lee) - 1;
  };

  const run = (way: AtCorner, index: number, corner: Corner | null) => {
    const at = way.ctx;
    all.begin(checks.makers.flatMap((make) => make(at)));
    follow({ ...way, corner }, set, followed, {
      pose: (i, pose, wind) => {
        const by = withWind(index, wind);
        all.take(i, pose, by);
        const step = set.steps[set.step[i]];
        if (step.solved && i === step.first + step.count - 1)
          for (const f of carryFindings(at, step, pose.shares, at.model.mass * at.gravity)) add(f, by);
      },
      happening: (step, h) => happened(step, h, index),
      lost: (i, pose) => {
        const { step, progress } = when(i);
        const words =
          pose.solution.status === "mechanism"
            ? pose.solution.motion
            : "heights, tensions and sideways forces do not settle together";
        happened(
          step,
          {
            kind: "no equilibrium",
            subject: set.steps[step].step.id,
            progress,
            value: null,
            limit: null,
            unit: "",
            words: `no equilibrium: ${words}`,
          },
          index,
        );
      },
    });
  };

  let done = -1;
  return {
    done: () => Math.max(0, done),
    of: corners.length,
    next: () => {
      if (done >= corners.length) return false;
      if (done < 0) run({ ctx, together: () => {}, gust: () => {} }, bestRun, null);
      else tryCorner(done);
      done++;
      return true;
    },
    result: () => ({
      setId: set.setId,
      corners: list,
      done: Math.max(0, done),
      assumed: spreadOf(ctx.plan).assumed,
      ...all.supports,
      supports: worstOfSupports(set, all),
      worst: worstOfMeasures(all),
      strips: [...all.measures.values()]
        .filter((band) => band.measure.strip)
        .map(({ measure: { check, subject }, low, high, corner }) => {
          return { check, subject, low, high, highCorner: corner };
        }),
      findings: [
        ...[...all.measures.values()].flatMap((band) => bandFindings(set.setId, band, when, nameOf)),
        ...found.values(),
      ],
    }),
  };

  function tryCorner(index: number): void {
    const corner = corners[index];
    let way: AtCorner;
    try {
      way = atCorner(ctx, corner, models);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      found.set(corner.name, impossible(set.setId, corner, error.message));
      return;
    }
    run(way, index, corner);
  }
}

/** Name of a corner as it is felt in a step: what changes nothing there is left out. */
export function cornerName(
  plan: Plan,
  set: Pick<SetResult, "steps">,
  corners: readonly Corner[],
  corner: number,
  step: number,
): string {
  if (corner === bestRun) return bestName;
  const run = set.steps[step];
  return feltIn(plan, corners[corner], run.step, run.start).name;
}

/**
 * Runs corners over a solved set, telling after each how many are done; when that returns false it ends there, and
 * `done` says how far it came. The same plan and corners give the same result.
 */
export function runSpread(
  ctx: SetContext,
  set: SolvedSet,
  corners: readonly Corner[],
  onProgress: (done: number, of: number) => boolean = () => true,
  checks: Pick<CheckList, "makers"> = checkList,
): SpreadResult {
  const spreading = spreadOver(ctx, set, corners, checks);
  while (spreading.next()) if (!onProgress(spreading.done(), spreading.of)) break;
  return spreading.result();
}

/** Further beyond the limit; of two supports meant to carry, the one that carries less. */
function worse(a: Finding, b: Finding): boolean {
  if (a.value === null || b.value === null || a.limit === null) return false;
  return a.value > a.limit ? a.value > b.value : a.value < b.value;
}

/** The result with the spread of one of its sets, and the findings that follow. The given result stays as it is. */
export function withSpread(result: Result, spread: SpreadResult): Result {
  const sets = result.sets.map((set) => (set.setId === spread.setId ? { ...set, spread } : set));
  const findings = inOrder([...result.findings, ...spread.findings]);
  return { ...result, sets, findings, worst: findings.length > 0 ? findings[0].level : null };
}

function impossible(set: string, corner: Corner, words: string): Finding {
  return finding({
    level: "caution",
    check: "in the spread: not possible",
    set,
    subject: corner.name,
    chosenBy: "plan",
    words,
    cure: "state a spread that the set can have",
  });
}

function worstOfSupports(set: SolvedSet, { supports }: Gathering): SpreadResult["supports"] {
  const m = set.supports.length;
  return set.supports.map(({ name }, j) => {
    let low: WorstAt | null = null;
    let high: WorstAt | null = null;
    for (let i = 0; i < set.count; i++) {
      const at = i * m + j;
      if (Number.isNaN(supports.low[at])) continue;
      if (low === null || supports.low[at] < low.value)
        low = { value: supports.low[at], corner: supports.lowCorner[at], pose: i };
      if (high === null || supports.high[at] > high.value)
        high = { value: supports.high[at], corner: supports.highCorner[at], pose: i };
    }
    return { name, low, high };
  });
}

function worstOfMeasures({ measures }: Gathering): SpreadWorst[] {
  const out: SpreadWorst[] = [];
  for (const { measure: m, readings, high, corner } of measures.values()) {
    let at = -1;
    for (let i = 0; i < high.length; i++) if (readings[i] && (at < 0 || high[i] > high[at])) at = i;
    const r = at < 0 ? null : readings[at];
    if (!r) continue;
    out.push({
      check: m.check,
      subject: m.subject,
      kind: m.kind,
      use: high[at],
      value: r.value * m.factor,
      limit: r.limit * m.factor,
      unit: m.unit,
      where: r.where ?? "",
      corner: corner[at],
      pose: at,
    });
  }
  return out;
}
