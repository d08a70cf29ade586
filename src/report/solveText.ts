// A solved plan as a short text for a terminal: who carries what at both ends of every step, and the findings.

import type { Finding, Result, SetResult, When } from "../checks/index.ts";
import type { Plan } from "../plan/index.ts";
import { poseAt, type StepRun } from "../sequence/index.ts";
import { bucklingLines } from "./bucklingText.ts";
import { rowsOf } from "./columns.ts";
import { cranesLines } from "./cranesText.ts";
import { type Contexts, contextsOf } from "./csv.ts";
import { envelopeText } from "./diagrams.ts";
import { originOf } from "./origin.ts";
import { unbackedLines, wayBackLines } from "./sparesText.ts";
import { spreadLines } from "./spreadText.ts";
import { oneLine, type Side, tableLines } from "./table.ts";

/** Worst use of any limit within a step, over its stored poses; null where no limit applies. */
export function worstUseIn(
  set: SetResult,
  step: StepRun,
): { use: number; check: string; subject: string } | null {
  let worst: { use: number; check: string; subject: string } | null = null;
  for (const { check, subject, use } of set.strips)
    for (let p = step.first; p < step.first + step.count; p++)
      if (Number.isFinite(use[p]) && (worst === null || use[p] > worst.use))
        worst = { use: use[p], check, subject };
  return worst;
}

/** Stored poses of a set that have no numbers because they did not settle, as places in the operation. */
export function withoutNumbers(set: SetResult): When[] {
  const n = set.supports.length;
  const out: When[] = [];
  for (let p = 0; p < set.count; p++)
    if (n > 0 && set.forces.subarray(p * n, (p + 1) * n).every(Number.isNaN))
      out.push({ step: set.step[p], progress: set.progress[p] });
  return out;
}

/** Whole text: origin, a table for every set, findings, open ends. */
export function solveText(result: Result, plan: Plan, contexts: Contexts = contextsOf(result, plan)): string {
  const origin = originOf(result, plan);
  const title = oneLine(origin.title) || "(no title)";
  const out = [
    `${title}, revision ${oneLine(origin.revision) || "(none)"}${plan.invented ? ", invented data" : ""}`,
    `plan ${origin.planHash}, rules ${oneLine(origin.ruleSet)}, solver ${origin.solverVersion}`,
  ];
  for (const set of result.sets) out.push("", ...setLines(result, plan, set, contexts));
  out.push("", ...findingLines(result), "", origin.caution);
  return `${out.join("\n")}\n`;
}

function setLines(result: Result, plan: Plan, set: SetResult, contexts: Contexts): string[] {
  const ctx = contexts.get(set.setId);
  if (ctx === undefined) throw new Error(`solveText: found no prepared set "${set.setId}"; use contextsOf`);
  const bands = set.supports.filter((support) => support.band);
  const head = ["no", "step", "does", "at", ...bands.map((band) => oneLine(band.name)), "worst use"];
  const sides: Side[] = ["right", "left", "left", "left", ...bands.map((): Side => "right"), "left"];
  const blank = bands.map(() => "");
  const rows: string[][] = [];
  for (const step of set.steps) {
    const name = [String(step.index + 1), oneLine(step.step.id), step.step.do];
    if (step.count > 0) {
      const worst = worstUseIn(set, step);
      const words =
        worst === null ? "no limit" : `${percent(worst.use)} ${worst.check}, ${oneLine(worst.subject)}`;
      const ends = [step.first, step.first + step.count - 1].map((p) => {
        const pose = poseAt(ctx, step, set.progress[p]);
        const load = new Map(rowsOf(result, plan, set, pose, p).map((r) => [r.support.name, r.load]));
        return bands.map((band) => {
          const N = load.get(band.name);
          return N === undefined ? "-" : kN(N);
        });
      });
      rows.push([...name, "start", ...ends[0], ""], ["", "", "", "end", ...ends[1], words]);
    }
    if (!step.solved) {
      const words = step.motion === "" ? "not solved" : `no equilibrium: ${oneLine(step.motion)}`;
      rows.push([...name, "", ...blank, words]);
    }
  }
  const weight = `set ${oneLine(set.setId)} ${oneLine(set.name)}`.trim();
  return [
    `${weight}: weight ${kN(set.weight)} kN, CG ${set.cg.map((value) => value.toFixed(3)).join(" / ")} m; loads in kN`,
    ...tableLines(head, rows, sides),
    ...withoutNumbers(set).map((at) => `no numbers, not settled: ${whereOf(result, set.setId, at)}`),
    ...cranesLines(ctx, set),
    ...unbackedLines(set),
    ...wayBackLines(set),
    ...spreadLines(plan, set),
    ...envelopeText(set),
    ...bucklingLines(set),
  ];
}

/** A line or two for every finding, worst level first: level, check, subject, where, value, limit, source, cure. */
export function findingLines(result: Result): string[] {
  if (result.findings.length === 0) return ["findings: none"];
  const count = (level: Finding["level"]) => result.findings.filter((one) => one.level === level).length;
  const out = [`findings: ${count("stop")} stop, ${count("caution")} caution, ${count("note")} note`];
  for (const level of ["stop", "caution", "note"] as const)
    for (const finding of result.findings) if (finding.level === level) out.push(...linesOf(result, finding));
  return out;
}

function linesOf(result: Result, finding: Finding): string[] {
  const { level, check, subject, worst, value, limit, unit, source, chosenBy, words, cure } = finding;
  const where = whereOf(result, finding.set, worst);
  const parts = [`${level}: ${check}`, oneLine(subject), where];
  if (value !== null) parts.push(`value ${number(value)}${unitOf(unit)}`);
  if (limit !== null) parts.push(`limit ${number(limit)}${unitOf(unit)}`);
  if (source !== "")
    parts.push(`source ${oneLine(source)}${chosenBy === "" ? "" : ` (${oneLine(chosenBy)})`}`);
  const lines = [parts.filter((part) => part !== "").join("; "), `  ${oneLine(words)}`];
  if (cure !== "") lines.push(`  cure: ${oneLine(cure)}`);
  return lines;
}

/** A place in words: set, step with its number, progress. */
export function whereOf(result: Result, setId: string, at: When | null): string {
  const set = result.sets.find((one) => one.setId === setId);
  if (set === undefined) return oneLine(setId);
  if (at === null) return `set ${oneLine(setId)}`;
  const id = set.steps[at.step]?.step.id ?? "";
  return `set ${oneLine(setId)} step ${at.step + 1} (${oneLine(id)}) at ${Number(at.progress.toFixed(9))}`;
}

const percent = (use: number): string => `${(100 * use).toFixed(0)} %`;
const kN = (N: number): string => (N / 1000).toFixed(1).replace(/^-(?=[0.]+$)/, "");
const unitOf = (unit: string): string => (unit === "" || unit === "1" ? "" : ` ${unit}`);
const number = (value: number): string => String(Number(value.toPrecision(6)));
