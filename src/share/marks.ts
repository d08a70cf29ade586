// Findings as marks along the operation: those that would overlap are joined under the worst of them.
import type { Finding, Level, When } from "../app/index.ts";

/** One mark: the findings that stand there, the worst first. */
export interface Mark {
  x: number;
  level: Level;
  findings: Finding[];
}

/** The levels from the worst down. */
export const levels: readonly Level[] = ["stop", "caution", "note"];

/** Sorts findings by level, the worst first; within a level by place. */
export function byWeight(a: Finding, b: Finding): number {
  const place = (when: When | null) => (when === null ? -1 : when.step + when.progress / 2);
  return levels.indexOf(a.level) - levels.indexOf(b.level) || place(a.worst) - place(b.worst);
}

/** Marks for the findings of one set. `xOf` gives px; marks closer than `apart` px are one. */
export function marksOf(
  findings: readonly Finding[],
  setId: string,
  xOf: (when: When) => number,
  apart: number,
): Mark[] {
  const own = findings.flatMap((finding) =>
    finding.set === setId && finding.worst !== null ? [{ finding, x: xOf(finding.worst) }] : [],
  );
  const marks: { x: number; findings: Finding[] }[] = [];
  // The worst first, so that a stop keeps its place and lesser findings join it.
  for (const { finding, x } of own.sort((a, b) => byWeight(a.finding, b.finding))) {
    const near = marks.find((mark) => Math.abs(mark.x - x) < apart);
    if (near === undefined) marks.push({ x, findings: [finding] });
    else near.findings.push(finding);
  }
  return marks
    .map(({ x, findings: all }) => ({ x, level: all[0].level, findings: all }))
    .sort((a, b) => a.x - b.x);
}
