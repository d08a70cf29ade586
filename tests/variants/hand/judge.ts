// Findings of a plan against hand statics: those that must be there, where and how large; and none where none may be.

import type { Finding, Result } from "../../../src/checks/index.ts";
import type { Plan } from "../../../src/plan/index.ts";
import { type Entry, entriesAt, entriesInWind } from "./entries.ts";
import { across } from "./lean.ts";
import { type Train, trainOf } from "./levers.ts";
import { hull, type Span } from "./span.ts";
import { type Stance, walk } from "./stance.ts";
import { type Weight, weigh } from "./weights.ts";

export interface Verdict {
  /** What is wrong, in words; none when the findings answer to hand statics. */
  wrong: string[];
  /** Findings that hand statics asked for, by check. */
  asked: Map<string, number>;
  /** Checks of a subject of which hand statics exclude any finding. */
  excluded: number;
  /** Those on which they are silent somewhere: within the few percent around a limit, or hidden between two stances. */
  open: number;
}

interface Moment {
  step: number;
  progress: number;
}

/** An entry of a check at a stance, by its place in the walk. */
interface Placed {
  at: Moment;
  index: number;
  entry: Entry;
}

const order = (a: Moment, b: Moment): number => a.step - b.step || a.progress - b.progress;
/** Numbers of a finding at their printing and the solver's own residual. */
const PRINT = 1e-6;

type Word = "yes" | "no" | "open";

/** Beyond the limit, within it, or neither for sure. */
function beyond(e: Entry): Word {
  const [v, l] = [e.value, e.limit];
  if (e.least) return v.high < l.low ? "yes" : v.low > l.high ? "no" : "open";
  return v.low > l.high ? "yes" : v.high < l.low ? "no" : "open";
}

/** Least use of the limit that an entry leaves open. */
const useOf = (e: Entry): number => (e.least ? e.limit.low / e.value.high : e.value.low / e.limit.high);

class Judge {
  readonly verdict: Verdict = { wrong: [], asked: new Map(), excluded: 0, open: 0 };
  private readonly plan: Plan;
  private readonly findings: Finding[];

  constructor(plan: Plan, findings: Finding[]) {
    this.plan = plan;
    this.findings = findings;
  }

  private place({ step, progress }: Moment): string {
    return `${this.plan.sets[0].steps[step]?.id ?? step} at ${progress.toFixed(4)}`;
  }

  private ask(check: string): void {
    this.verdict.asked.set(check, (this.verdict.asked.get(check) ?? 0) + 1);
  }

  /** One check of one subject over the whole operation. */
  over(check: string, subject: string, entries: Placed[]): void {
    const name = `${check} of ${subject}`;
    const found = this.findings.filter((f) => f.check === check && f.subject === subject && f.from);
    const words = entries.map(({ entry }) => beyond(entry));
    const covers = (f: Finding, at: Moment) =>
      f.from && f.to && order(f.from, at) <= 0 && order(at, f.to) <= 0;
    entries.forEach(({ at, entry }, i) => {
      if (words[i] === "yes" && !found.some((f) => covers(f, at)))
        this.verdict.wrong.push(
          `${name}: by hand ${print(entry.value)} is beyond ${print(entry.limit)} in ${this.place(at)}, and nothing is found there`,
        );
    });
    for (const f of found) {
      const inside = entries.filter(({ at }) => covers(f, at));
      const no = inside.find(({ entry }) => beyond(entry) === "no");
      if (no)
        this.verdict.wrong.push(
          `${name}: found ${f.value} from ${this.place(f.from as Moment)} to ${this.place(f.to as Moment)}, ` +
            `but by hand ${print(no.entry.value)} keeps ${print(no.entry.limit)} in ${this.place(no.at)}`,
        );
      const certain = inside.filter(({ entry }) => beyond(entry) === "yes");
      if (certain.length === 0) continue;
      this.ask(check);
      this.worst(name, f, entries, Math.max(...certain.map(({ entry }) => useOf(entry))));
    }
    if (!words.includes("yes")) {
      if (words.includes("open")) this.verdict.open++;
      else this.verdict.excluded++;
    }
  }

  /** The same in the wind of the steps: what is beyond its limit in the calm is told there alone. */
  inWind(check: string, subject: string, entries: Placed[]): void {
    const windy = `in the wind: ${check}`;
    const of = (name: string) => this.findings.find((f) => f.check === name && f.subject === subject);
    if (of(check) === undefined) this.over(windy, subject, entries);
    else if (of(windy) !== undefined)
      this.verdict.wrong.push(`${windy} of ${subject}: told although the calm has it`);
  }

  /** The worst value of a finding, and its limit, against those by hand on either side of it. */
  private worst(name: string, f: Finding, entries: Placed[], use: number): void {
    const at = f.worst as Moment;
    const before = entries.filter((e) => order(e.at, at) <= 0).at(-1);
    const after = entries.find((e) => order(e.at, at) >= 0);
    // Between two stances of which hand statics know only one, the worst may be anything.
    if (!before || !after || after.index > before.index + 1) return;
    const beside = [before.entry, after.entry];
    const value = hull(...beside.map((e) => e.value));
    const limit = hull(...beside.map((e) => e.limit));
    const within = (v: number | null, s: Span) =>
      v !== null && v >= s.low - PRINT * Math.abs(s.low) && v <= s.high + PRINT * Math.abs(s.high);
    if (!within(f.value, value))
      this.verdict.wrong.push(`${name}: worst is ${f.value} in ${this.place(at)}, by hand ${print(value)}`);
    if (!within(f.limit, limit))
      this.verdict.wrong.push(`${name}: limit is ${f.limit} in ${this.place(at)}, by hand ${print(limit)}`);
    if (!((f.use ?? 0) >= use * (1 - PRINT)))
      this.verdict.wrong.push(
        `${name}: worst use is ${f.use} in ${this.place(at)}, by hand ${use.toFixed(4)} or more`,
      );
  }

  /** A finding of a check and subject in one step that must be there, or must not. */
  at(check: string, subject: string, step: number, word: "yes" | "no" | "maybe"): void {
    const there = this.findings.some(
      (f) => f.check === check && f.subject === subject && f.from?.step === step,
    );
    const place = this.plan.sets[0].steps[step].id;
    if (word === "yes") {
      this.ask(check);
      if (!there) this.verdict.wrong.push(`${check} of ${subject}: asked for by hand in ${place}, not found`);
    } else if (word === "no" && there)
      this.verdict.wrong.push(`${check} of ${subject}: found in ${place}, excluded by hand`);
  }

  /** The set's whole weight against its ledger. */
  weight(w: Weight): void {
    const tonnes = w.W / 9806.65;
    for (const line of this.plan.sets[0].ledger) {
      if (line.covers !== "whole set") continue;
      const { low, high } = line.mass_t;
      const off = tonnes < low || tonnes > high;
      const found = this.findings.find((f) => f.check === "weight check" && f.subject === line.item);
      if (off) this.ask("weight check");
      if (off !== (found !== undefined))
        this.verdict.wrong.push(`weight check of ${line.item}: ${tonnes} t against ${low} to ${high} t`);
      if (found && Math.abs((found.value ?? 0) / tonnes - 1) > PRINT)
        this.verdict.wrong.push(`weight check of ${line.item}: found ${found.value} t, by hand ${tonnes} t`);
    }
  }
}

const print = (s: Span): string =>
  s.low === s.high ? s.low.toFixed(2) : `${s.low.toFixed(2)} to ${s.high.toFixed(2)}`;

/** Which groups, hooks and bearings carry part of the set at a stance: yes, no, or not known. */
function carriers(plan: Plan, w: Weight, s: Stance): Map<string, Word> {
  const out = new Map<string, Word>();
  const least = 1e-4 * w.W;
  const word = (x: Span | null): Word =>
    x === null || x.high <= least ? "no" : x.low > least ? "yes" : "open";
  for (const kind of ["far", "near"] as const) out.set(`${kind} crane`, word(s.hooks[kind]));
  const { moments } = across(plan, w, s);
  for (const id of ["rear", "front"] as Train[]) {
    const share = s.trains[id];
    const t = trainOf(plan, id);
    const M = moments[id];
    for (const g of t.groups) {
      if (share === null || share.high === 0 || g.name.endsWith("aft")) {
        out.set(g.name, word(share));
        continue;
      }
      const part = g.wheels.length / (2 * t.lines);
      const sign = g.name.endsWith("left") ? 1 : -1;
      const turn = M ? [M.low, M.high].map((m) => (sign * m) / t.gauge_m) : [-1e9, 1e9];
      out.set(
        g.name,
        word({ low: share.low * part + Math.min(...turn), high: share.high * part + Math.max(...turn) }),
      );
    }
  }
  for (const b of plan.site.bearings) {
    const pair = s.bearings?.[b.line] ?? null;
    // Which of the two of a line touches first is a matter of millimetres.
    out.set(`${b.line} ${b.girder}`, pair && pair.low > 0 ? "open" : word(pair));
  }
  return out;
}

/** Entries of all stances by check and subject, in the order of the walk. */
function placed(stances: readonly Stance[], of: (s: Stance) => Entry[]): Placed[][] {
  const by = new Map<string, Placed[]>();
  stances.forEach((s, index) => {
    for (const entry of of(s)) {
      const key = `${entry.check}|${entry.subject}`;
      const list = by.get(key) ?? [];
      list.push({ at: s, index, entry });
      by.set(key, list);
    }
  });
  return [...by.values()];
}

/** All findings of a result against the hand walk of its plan. */
export function judge(plan: Plan, result: Result): Verdict {
  const w = weigh(plan);
  const { stances, met } = walk(plan, w);
  const j = new Judge(plan, result.findings);
  for (const list of placed(stances, (s) => entriesAt(plan, w, s)))
    j.over(list[0].entry.check, list[0].entry.subject, list);
  for (const list of placed(stances, (s) => entriesInWind(plan, w, s)))
    j.inWind(list[0].entry.check, list[0].entry.subject, list);
  for (const m of met) j.at(m.check, m.subject, m.step, m.word);
  for (const s of stances.filter((x) => x.progress === 1)) {
    const meant = plan.sets[0].steps[s.step].carries;
    for (const [subject, carries] of carriers(plan, w, s)) {
      const wanted = meant.includes(subject);
      const word = (check: boolean) => (carries === "open" ? "maybe" : check ? "yes" : "no");
      j.at("meant to carry", subject, s.step, word(wanted && carries === "no"));
      j.at("meant to be free", subject, s.step, word(!wanted && carries === "yes"));
    }
  }
  j.weight(w);
  return j.verdict;
}
