// One choice judged by the real solver: a coarse run of its steps, every measure read, given up once it cannot win.

import type { Plan } from "../../plan/index.ts";
import {
  type Pose,
  prepareContext,
  runSet,
  type SetContext,
  type SetRun,
  type Situation,
} from "../../sequence/index.ts";
import { checkList } from "../list.ts";
import { type Measure, marginOf, useOf as shareOfLimit } from "../measure.ts";
import { carryFindings, happeningFinding, sharesAtEnd } from "../runFindings.ts";
import type { Finding } from "../types.ts";
import { planOf } from "./build.ts";
import { type Choice, choiceWords } from "./choice.ts";
import type { Prospect } from "./prospect.ts";
import { FIRST_HEIGHTS, type Heights } from "./steps.ts";

/** What decides about a choice: its greatest use, or what stops it. */
export interface Governing {
  check: string;
  subject: string;
  /** Step id; '' when no step was reached. */
  step: string;
  progress: number;
  /** Null where it is no number. */
  use: number | null;
  words: string;
}

/** A choice with what the solver says of it. */
export interface Judged {
  choice: Choice;
  heights: Heights;
  /** To be made small: the worst use; above 1 with a stop, from NO_NUMBER on with one that is no number. */
  worst: number;
  /** The worst use, eased by the other peaks, so that a search can slide along a ridge. */
  merit: number;
  stop: boolean;
  governing: Governing;
  /** Given up before its end: worse than what was asked for. */
  cut: boolean;
}

/** A stop without a number counts as this use and more; a run that ended early still more. */
export const NO_NUMBER = 2;
const UNSOLVED = 10;
/** Air above the seats from which the landing begins, and least air on the way to them, m. Common practice, no source. */
const LAND_FROM = 0.05;
const LEAST_AIR = 0.1;
/** Air above the bunks on the way out of the rear train, m, when a first try came too near. Common practice, no source. */
const WAY_AIR = 0.05;
/** How often heights are mended after a try. */
const TRIES = 2;
/** Part of the eased peaks in the merit. */
const EASE = 0.05;
const POWER = 12;

/** Judges choices of one prospect; contexts share its frame. */
export class Judge {
  evaluations = 0;
  private readonly prospect: Prospect;
  private base: SetContext | null = null;

  constructor(prospect: Prospect) {
    this.prospect = prospect;
  }

  /** Judges a choice; the run is cut where its use passes `bound`. */
  judge(choice: Choice, bound = Number.POSITIVE_INFINITY): Judged {
    this.evaluations++;
    let tried = this.attempt(choice, { ...FIRST_HEIGHTS }, bound);
    for (let i = 0; i < TRIES && tried.again; i++) tried = this.attempt(choice, tried.again, bound);
    return tried.judged;
  }

  /** The context of a plan of this prospect: only places differ from one to the next. */
  private context(plan: Plan): SetContext {
    const id = this.prospect.set.id;
    this.base ??= { ...prepareContext(plan, id), model: this.prospect.model };
    const set = plan.sets.find((s) => s.id === id) ?? this.prospect.set;
    return { ...this.base, plan, set };
  }

  private attempt(choice: Choice, heights: Heights, bound: number): { judged: Judged; again?: Heights } {
    const plan = planOf(this.prospect, choice, heights);
    if (!plan)
      return {
        judged: failed(choice, heights, UNSOLVED * 10, {
          check: "path",
          subject: "path",
          words: "the path is too short behind the stop line for both trains under the set",
        }),
      };
    const ctx = this.context(plan);
    const tally = new Tally(ctx, bound);
    const over = ctx.set.steps.findIndex((s) => s.do === "bring over");
    const run = tally.run(ctx, 0, over + 1, undefined);
    const end = tally.last;
    const tight = wayTooLow(run, heights);
    if (tight) return { judged: tally.judged(choice, heights), again: tight };
    if (tally.ended || !end) return { judged: tally.judged(choice, heights) };
    // How far the hooks come down follows from the air above the seats.
    const next = lowerings(this.prospect, ctx, choice, end, heights);
    const taken = (id: string) => run.steps.find((s) => s.step.do === "take load" && s.step.crane === id);
    next.farCap = capOf(taken(this.prospect.far.id)?.ends[1]);
    next.nearCap = capOf(taken(this.prospect.near.id)?.ends[1]);
    if (next.lift > heights.lift && heights.lift === FIRST_HEIGHTS.lift)
      return { judged: tally.judged(choice, next), again: { ...heights, lift: next.lift } };
    const lowered = planOf(this.prospect, choice, next) ?? plan;
    const rest = this.context(lowered);
    tally.run(rest, over + 1, rest.set.steps.length, end.situation);
    return { judged: tally.judged(choice, next) };
  }
}

/** A height cap a third above what was needed, on whole 50 mm. */
function capOf(height: number | undefined): number {
  return height === undefined ? FIRST_HEIGHTS.farCap : Math.max(50, Math.ceil((height * 1300) / 50) * 50);
}

/** Hook heights down to just above the seats, both ends together; a greater lift when the seats are too near. */
function lowerings(p: Prospect, ctx: SetContext, c: Choice, pose: Pose, heights: Heights): Heights {
  const air = { near: Number.POSITIVE_INFINITY, far: Number.POSITIVE_INFINITY };
  const { devices, contact } = pose.solution;
  for (const s of ctx.supports) {
    if (s.what !== "bearing") continue;
    const j = devices.findIndex((d) => d.name === s.force);
    if (j < 0) continue;
    const gap = contact.F[j] > 0 ? 0 : contact.v[j] - devices[j].datum;
    const line = s.kind === "near bearings" ? "near" : "far";
    air[line] = Math.min(air[line], gap);
  }
  if (!Number.isFinite(air.near) || !Number.isFinite(air.far)) return { ...heights };
  const least = Math.min(air.near, air.far);
  if (least < LEAST_AIR)
    return { ...heights, lift: heights.lift + Math.ceil(((LEAST_AIR - least) * 1000 + 50) / 50) * 50 };
  const { nearBearing_m, farBearing_m } = p.plan.site;
  const at = (pick: number) => {
    const t = (p.seated + pick - nearBearing_m) / (farBearing_m - nearBearing_m);
    const down = air.near + t * (air.far - air.near) - LAND_FROM;
    return Math.max(0, Math.floor(down * 100) * 10);
  };
  return { ...heights, lowerFar: at(c.farPick), lowerNear: at(c.nearPick) };
}

/** Heights with the rear train lower, when its bunks came too near to the set on their way out and it was not lowered yet. */
function wayTooLow(run: SetRun, heights: Heights): Heights | null {
  if (heights.rearDown > 0) return null;
  for (const s of run.steps)
    for (const h of s.happenings)
      if (s.step.do === "drive out" && h.kind === "not clear" && h.limit !== null && h.value !== null)
        if (h.value < h.limit && h.limit < WAY_AIR)
          return { ...heights, rearDown: Math.ceil((WAY_AIR - h.value) * 100) * 10 };
  return null;
}

function failed(
  choice: Choice,
  heights: Heights,
  worst: number,
  what: Pick<Governing, "check" | "subject" | "words">,
): Judged {
  const governing = { ...what, step: "", progress: 0, use: null };
  return { choice, heights, worst, merit: worst, stop: true, governing, cut: false };
}

/** Peaks of every measure over a run, and the first thing that stops it. */
class Tally {
  last: Pose | null = null;
  ended = false;
  private readonly bound: number;
  private readonly peaks: number[];
  private readonly measures: Measure[];
  private worst = 0;
  private stops = 0;
  private stop = false;
  private cut = false;
  private governing: Governing;

  constructor(ctx: SetContext, bound: number) {
    this.bound = bound;
    this.measures = checkList.makers.flatMap((make) => make(ctx));
    this.peaks = this.measures.map(() => 0);
    this.governing = {
      check: "none",
      subject: "set",
      step: "",
      progress: 0,
      use: null,
      words: "nothing is limited",
    };
  }

  /** Runs steps `from` to before `to`, beginning in a situation. */
  run(ctx: SetContext, from: number, to: number, situation: Situation | undefined): SetRun {
    const steps = ctx.set.steps.slice(from, to);
    const part = { ...ctx, set: { ...ctx.set, steps } };
    const run = runSet(part, [], {
      coarse: true,
      ...(situation ? { from: situation } : {}),
      onPose: (pose) => this.read(part, pose),
      onStep: () => this.worst <= this.bound,
    });
    const left = steps.length - run.steps.filter((s) => s.solved).length;
    this.findings(part, run);
    const broken = run.steps.find((s) => !s.solved);
    if (broken) {
      this.ended = true;
      this.governs(UNSOLVED + left, {
        check: "no equilibrium",
        subject: broken.step.id,
        step: broken.step.id,
        progress: 0,
        use: null,
        words: broken.motion,
      });
    } else if (left > 0 || this.worst > this.bound) {
      this.ended = true;
      this.cut = true;
    }
    return run;
  }

  private read(ctx: SetContext, pose: Pose): void {
    this.last = pose;
    for (const [k, m] of this.measures.entries()) {
      if (!m.strip && m.level !== "stop") continue;
      const r = m.read(pose);
      const use = shareOfLimit(m, r);
      if (Number.isNaN(use)) continue;
      const beyond = m.level === "stop" && marginOf(m, r) < 0;
      if (beyond) this.stop = true;
      if (m.strip && use > this.peaks[k]) this.peaks[k] = use;
      if (!(m.strip || beyond) || use <= this.worst) continue;
      const [value, limit] = [r.value * m.factor, r.limit * m.factor];
      this.governs(use, {
        check: m.check,
        subject: m.subject,
        step: ctx.set.steps[pose.step].id,
        progress: pose.progress,
        use,
        words: `${m.check} of ${m.subject} is ${value.toFixed(m.digits)} of ${limit.toFixed(m.digits)} ${m.unit}${r.where ? ` (${r.where})` : ""}, limit from ${r.source ?? m.source}`,
      });
    }
  }

  private governs(worst: number, by: Governing): void {
    if (worst > 1) this.stop = true;
    if (worst <= this.worst) return;
    this.worst = worst;
    this.governing = by;
  }

  /** A stop that is no use of a limit; `byHowMuch` (0 and more) lets a search see which choice is nearer to none. */
  private noNumber(by: Omit<Governing, "use">, byHowMuch = 1): void {
    this.stops += Math.min(1, byHowMuch) + 0.1;
    this.governs(NO_NUMBER + this.stops, { ...by, use: null });
  }

  /** What the motions met, and supports that carry at the end of a step without being meant to, or the other way round. */
  private findings(ctx: SetContext, run: SetRun): void {
    for (const s of run.steps) {
      const say = (f: Finding, byHowMuch?: number) => {
        if (f.level !== "stop" || f.check === "no equilibrium") return;
        const { check, subject, words } = f;
        this.noNumber(
          { check, subject, step: s.step.id, progress: f.worst?.progress ?? 0, words },
          byHowMuch,
        );
      };
      for (const h of s.happenings) say(happeningFinding(ctx, s.index, h));
      for (const f of carryFindings(ctx, s, sharesAtEnd(run, s), run.weight))
        say(f, (10 * Math.abs((f.value ?? 0) - (f.limit ?? 0)) * 1000) / run.weight);
    }
  }

  judged(choice: Choice, heights: Heights): Judged {
    const eased = this.peaks.reduce((sum, u) => sum + Math.min(u, 10) ** POWER, 0) ** (1 / POWER);
    return {
      choice,
      heights,
      worst: this.worst,
      merit: this.worst + EASE * eased,
      stop: this.stop,
      governing: this.governing,
      cut: this.cut,
    };
  }
}

/** A judged choice in one sentence. */
export function judgedWords(j: Judged): string {
  return `${choiceWords(j.choice)}: ${j.governing.words}`;
}
