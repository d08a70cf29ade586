// Unbacked parts and steps without a way back, as the picture draws and tells them.
import { type Level, type SetResult, type System, stepName, type UnbackedStretch } from "../app/index.ts";
import { print } from "../units/index.ts";

/** A piece of the row under the bands: a stop where some loss in it is accepted by nobody. */
export interface Piece {
  step: number;
  /** Progress of the step. */
  from: number;
  to: number;
  accepted: boolean;
  stretch: UnbackedStretch;
}

/** The pieces of the row: every unbacked stretch, cut where it comes to be a stop or ceases to be one. */
export function piecesOf(stretches: readonly UnbackedStretch[]): Piece[] {
  return stretches.flatMap((stretch) => {
    const { step } = stretch;
    const open = stretch.falls.filter(({ accepted }) => accepted === null);
    const ends = [stretch.from, stretch.to, ...open.flatMap(({ from, to }) => [from, to])];
    const edges = [...new Set(ends)]
      .filter((edge) => edge >= stretch.from && edge <= stretch.to)
      .sort((a, b) => a - b);
    const pieces: Piece[] = [];
    edges.slice(1).forEach((to, i) => {
      const from = edges[i];
      const middle = (from + to) / 2;
      const accepted = !open.some((fall) => fall.from < middle && middle < fall.to);
      const last = pieces.at(-1);
      if (last?.accepted === accepted) last.to = to;
      else pieces.push({ step, from, to, accepted, stretch });
    });
    return pieces;
  });
}

/** The unbacked stretch at a place of the operation; null where the set stands with any one hook or group lost. */
export function unbackedAt(
  stretches: readonly UnbackedStretch[],
  place: { step: number; progress: number },
): UnbackedStretch | null {
  const at = (s: UnbackedStretch) =>
    s.step === place.step && s.from <= place.progress && place.progress <= s.to;
  return stretches.find(at) ?? null;
}

const percent = (progress: number): string => `${Math.round(100 * progress)} %`;

/** How far the set or its hooks move in a stretch, and how long it takes: "28.00 m rolled, 60 min". */
export function extentWords({ length, motion, minutes }: UnbackedStretch, units: System): string {
  const way = motion === "" ? "nothing moves" : `${print(length, "length", units)} ${motion}`;
  return `${way}, ${minutes === null ? "minutes not stated" : print(minutes * 60, "duration", units)}`;
}

/** What a stretch says, a line each: where and how long; for every loss in it what falls, where, and who accepted it. */
export function stretchLines(stretch: UnbackedStretch, units: System): string[] {
  const head = `unbacked from ${percent(stretch.from)} to ${percent(stretch.to)} of the step: ${extentWords(stretch, units)}`;
  const falls = stretch.falls.map(({ support, at, words, accepted }) => {
    const by =
      accepted === null
        ? "accepted by nobody: a stop"
        : `accepted by ${accepted.by}${accepted.reason === "" ? "" : `: ${accepted.reason}`}`;
    return `with ${support} lost at ${percent(at)}, ${words}; ${by}`;
  });
  return [head, ...falls];
}

/** A step past the point of no return, or one whose stated way back fails. */
export interface NoReturn {
  step: number;
  /** Progress of the step from which there is none. */
  progress: number;
  /** A stop for a stated way back that fails, else a note. */
  level: Level;
  words: string;
}

/** The steps from which there is no good way back, and why. */
export function noReturnsOf(set: Pick<SetResult, "steps" | "waysBack">): NoReturn[] {
  return (set.waysBack ?? []).flatMap(({ step, source, from }) => {
    const bad = from.find(({ ok }) => !ok);
    if (bad === undefined || source === "proposed" || !set.steps[step].solved) return [];
    const stated = source === "plan";
    const words = stated
      ? `the stated way back fails from ${percent(bad.progress)} of the step: ${bad.words}`
      : `past the point of no return from ${percent(bad.progress)} of the step on: ${bad.words}`;
    return [{ step, progress: bad.progress, level: stated ? "stop" : "note", words }];
  });
}

/** All that the row and the marks show, in sentences, for those who do not see them. */
export function unbackedSentences(
  set: Pick<SetResult, "steps" | "waysBack" | "backed">,
  units: System,
): string[] {
  const name = (step: number) => `step ${step + 1} ${stepName(set.steps[step].step)}`;
  const { backed } = set;
  const parts =
    backed === undefined
      ? ["which poses are backed is still being worked out"]
      : backed.stretches.length === 0
        ? [allBacked]
        : backed.stretches.map((s) => `${name(s.step)}: ${stretchLines(s, units).join("; ")}`);
  return [...parts, ...noReturnsOf(set).map(({ step, words }) => `${name(step)}: ${words}`)];
}

/** What is said of a set without an unbacked part. */
export const allBacked = "backed throughout: the set stands with any one hook or group lost";
