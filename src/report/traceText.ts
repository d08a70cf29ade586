// How one number of a check came about, as numbered lines for a terminal: what it is worked out of stands before it.

import {
  type Asked,
  type AskedData,
  askedOf,
  dataMeasuresOf,
  type Finding,
  inSpread,
  type Result,
  type Trace,
  type Traced,
  traceOf,
  tracesIn,
} from "../checks/index.ts";
import type { Plan } from "../plan/index.ts";
import type { Contexts } from "./csv.ts";
import { whereOf } from "./solveText.ts";
import { oneLine } from "./table.ts";

/** Digits of a number: enough to work a formula out again. */
const DIGITS = 9;

/** Check and subject of CHECK:SUBJECT; either may hold colons with a blank behind them. */
function splitted(text: string): { check: string; subject: string } | null {
  const colon = text.search(/:(?! )/);
  return colon > 0 ? { check: text.slice(0, colon), subject: text.slice(colon + 1) } : null;
}

/**
 * Reads CHECK:SUBJECT at a place; or, without one, where that check uses most of its limit, where its finding is worst,
 * or of the data alone; a sentence when it cannot be.
 */
export function readTraced(
  plan: Plan,
  result: Result,
  contexts: Contexts,
  text: string,
  at: Pick<Asked, "set" | "step" | "progress"> | null,
): Asked | AskedData | Finding | string {
  const named = splitted(text);
  if (named !== null && at !== null) return { ...named, ...at };
  const { check, subject } = named ?? { check: "", subject: "" };
  for (const set of result.sets) {
    const use = set.strips.find((one) => one.check === check && one.subject === subject)?.use;
    if (use === undefined) continue;
    let worst = -1;
    for (let i = 0; i < use.length; i++)
      if (!Number.isNaN(use[i]) && (worst < 0 || use[i] > use[worst])) worst = i;
    if (worst >= 0)
      return { check, subject, set: set.setId, step: set.step[worst], progress: set.progress[worst] };
  }
  const of = (one: Pick<AskedData, "check" | "subject">) => one.check === check && one.subject === subject;
  const finding = result.findings.find((one) => of(one) && one.value !== null);
  // What only a corner of the spread has is known by its finding alone: that names the corner.
  if (finding !== undefined) return finding.check.startsWith(inSpread) ? finding : askedOf(finding);
  const data = [null, ...contexts.values()].flatMap((ctx) => dataMeasuresOf(plan, ctx)).find(of);
  if (data !== undefined) return { check, subject, set: data.set };
  const strips = result.sets.flatMap((set) => set.strips);
  const found = result.findings.filter((one) => one.value !== null);
  const known = [...strips, ...found].map((one) => `'${one.check}:${one.subject}'`);
  return `found '${text}' without --at; allowed: CHECK:SUBJECT, one of ${[...new Set(known)].join(", ")}. Correct it, or add --at STEP:PROGRESS.`;
}

/** The trace asked for as CHECK:SUBJECT, with a blank line before it; '' when none is; or what is wrong with the words. */
export function tracedText(
  plan: Plan,
  result: Result,
  contexts: Contexts,
  text: string | undefined,
  at: Parameters<typeof readTraced>[4],
): { text: string } | { error: string } {
  if (text === undefined) return { text: "" };
  const asked = readTraced(plan, result, contexts, text, at);
  if (typeof asked === "string") return { error: asked };
  return { text: `\n${traceText(result, traceOf(plan, result, asked, contexts.get(asked.set)))}` };
}

/** The whole trace with its check, place, value and limit; or one line that says why there is none. */
export function traceText(result: Result, traced: Traced): string {
  const { asked } = traced;
  const where = whereOf(result, asked.set, asked.step === undefined ? null : asked);
  const place = [`${oneLine(asked.check)} of ${oneLine(asked.subject)}`, where]
    .filter((s) => s !== "")
    .join(", ");
  if (!traced.found) return `no trace of ${place}: ${oneLine(traced.why)}\n`;
  const { measure, reading, trace, limit } = traced;
  const shown = (value: number) => `${(value * measure.factor).toFixed(measure.digits)} ${measure.unit}`;
  const source = reading.source ?? measure.source;
  const against =
    limit === null
      ? ", no limit"
      : ` against ${shown(reading.limit)}, use ${(100 * trace.value).toFixed(1)} %`;
  const out = [
    `trace of ${place}`,
    `${shown(reading.value)}${against}${reading.where ? `; ${oneLine(reading.where)}` : ""}${traced.corner === undefined ? "" : `; corner: ${oneLine(traced.corner)}`}`,
    `${limit === null ? "source" : "limit by"} ${oneLine(source)} (${oneLine(reading.chosenBy ?? measure.chosenBy)})`,
    ...traceLines(trace),
  ];
  return `${out.join("\n")}\n`;
}

/** A trace as lines: number, symbol, formula and value; below it words, source and the numbers of what it is made of. */
export function traceLines(root: Trace): string[] {
  const all = tracesIn(root);
  const numbers = new Map(all.map((one, i) => [one, i + 1]));
  const width = String(all.length).length;
  return all.flatMap((one) => {
    const unit = one.unit === "1" ? "" : ` ${one.unit}`;
    const formula = one.formula === undefined ? "" : ` = ${one.formula}`;
    const head = `${String(numbers.get(one)).padStart(width)}  ${one.symbol}${formula} = ${number(one.value)}${unit}`;
    const made = one.from.map((from) => `${from.symbol} (${numbers.get(from)})`);
    const parts = [
      oneLine(one.words),
      [one.source, one.clause].filter((part) => part !== undefined && part !== "").join(" "),
      origin(one),
      made.length > 0 ? `from ${made.join(", ")}` : "",
    ];
    return [head, `${" ".repeat(width)}  ${parts.filter((part) => part !== "").join("; ")}`];
  });
}

function origin({ leaf }: Trace): string {
  if (leaf === undefined) return "";
  if ("path" in leaf) return `plan: ${oneLine(leaf.path)}`;
  if ("constant" in leaf) return oneLine(leaf.constant);
  const { set, step, progress } = leaf.at;
  if (step === "") return `statics of set ${oneLine(set)}, no step run`;
  return `statics of set ${oneLine(set)}, step ${oneLine(step)} at ${number(progress)}`;
}

const number = (value: number): string => String(Number(value.toPrecision(DIGITS)));
