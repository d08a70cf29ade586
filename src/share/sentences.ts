// The picture in sentences, for those who do not see it: the place of the cursor, the strips, the chosen support.
import {
  type Cursor,
  cornerWords,
  type Plan,
  type Pose,
  type SetResult,
  type SpreadResult,
  type System,
  stepName,
  type WorstAt,
} from "../app/index.ts";
import { print } from "../units/index.ts";
import { bandOfUse, type Strip } from "./governing.ts";
import { bandsOf } from "./stack.ts";
import { noReturnsOf, stretchLines, unbackedAt } from "./unbacked.ts";

/** Who carries what at the cursor, and whether the set would fall there. */
export function cursorWords(set: SetResult, cursor: Cursor, pose: Pose | null, units: System): string {
  const step = set.steps[cursor.step];
  const where = `step ${cursor.step + 1} of ${set.steps.length}, ${stepName(step.step)}, ${Math.round(cursor.progress * 100)} %`;
  if (pose === null) return `${where}: no numbers`;
  const carried = bandsOf(set.supports)
    .filter(({ column }) => Math.abs(pose.shares[column]) > set.weight * 0.0005)
    .map(({ name, column }) => `${name} ${print(pose.shares[column], "load", units)}`);
  const stretch = unbackedAt(set.backed?.stretches ?? [], cursor);
  const lost = noReturnsOf(set).find((one) => one.step === cursor.step);
  const parts = [
    carried.join(", "),
    ...(stretch === null ? [] : stretchLines(stretch, units)),
    ...(lost === undefined ? [] : [lost.words]),
  ];
  return `${where}: ${parts.join("; ")}`;
}

const percent = (use: number): string => `${Math.round(use * 100)} %`;

function placeOf(set: SetResult, pose: number): string {
  return `step ${set.step[pose] + 1} at ${Math.round(set.progress[pose] * 100)} %`;
}

/** Highest use of a subject, and over what is uncertain with its corner. */
export function stripSentence(plan: Plan, set: SetResult, spread: SpreadResult | null, strip: Strip): string {
  const best = `${strip.subject}: highest use ${percent(strip.most)}`;
  if (spread === null) return best;
  const { high, corner, worst, check } = bandOfUse(spread, strip.subject, set.count);
  if (worst < 0) return best;
  const name = cornerWords(plan, set, spread, corner[worst], worst);
  return `${best}; over what is uncertain ${percent(high[worst])} of ${check} in ${placeOf(set, worst)}, corner: ${name}`;
}

/** Lowest and highest share of a chosen support, each with its place and corner; '' where they are not known. */
export function ownSentence(
  plan: Plan,
  set: SetResult,
  spread: SpreadResult | null,
  name: string,
  units: System,
): string {
  const j = set.supports.findIndex((support) => support.name === name);
  const { low = null, high = null } = spread?.supports[j] ?? {};
  if (spread === null || low === null || high === null) return "";
  const end = (word: string, at: WorstAt) =>
    `${word} ${print(at.value, "load", units)} in ${placeOf(set, at.pose)}, corner: ${cornerWords(plan, set, spread, at.corner, at.pose)}`;
  return `${name}: ${end("highest", high)}; ${end("lowest", low)}`;
}
