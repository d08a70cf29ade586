// Findings in the order of the list: by level, then by place; those without a place are open items of the plan.
import { type Finding, isOfSpread, type Level, type Result, stepName } from "../../app/index.ts";
import { byWeight, levels } from "../../share/index.ts";

/** Findings of one level. */
export interface Group {
  level: Level;
  findings: Finding[];
}

/** Splits findings into those with a place in the operation, by level, and open items without one. */
export function groupsOf(findings: readonly Finding[]): { groups: Group[]; open: Finding[] } {
  const sorted = [...findings].sort(byWeight);
  const placed = sorted.filter(({ worst, from }) => worst !== null || from !== null);
  const groups = levels
    .map((level) => ({ level, findings: placed.filter((one) => one.level === level) }))
    .filter((group) => group.findings.length > 0);
  return { groups, open: sorted.filter(({ worst, from }) => worst === null && from === null) };
}

/** Where a finding is worst: "set A, step 4 at 37 %, Roll". */
export function whereOf(result: Result, finding: Finding): string {
  const set = result.sets.find((one) => one.setId === finding.set);
  const when = finding.worst ?? finding.from;
  if (set === undefined) return "whole plan";
  const name = result.sets.length > 1 ? `${set.name || set.setId}, ` : "";
  if (when === null) return name === "" ? "whole set" : `${name}whole set`;
  const run = set.steps.at(when.step);
  // A finding of the run before an edit stands until the new run has its own; its step may be gone.
  if (run === undefined) return `${name}a step that the plan no longer has`;
  return `${name}step ${when.step + 1} at ${Math.round(when.progress * 100)} %, ${stepName(run.step)}`;
}

/** What a finding is about, for choosing some of them. */
export type FindingKind = "run" | "backed" | "way back" | "spread";

/** The kinds with their words, in the order in which they are chosen from. */
export const findingKinds: Readonly<Record<FindingKind, string>> = {
  run: "limits and statics",
  backed: "backed or unbacked",
  "way back": "ways back",
  spread: "spread",
};

const kindByCheck: Readonly<Record<string, FindingKind>> = {
  unbacked: "backed",
  "unbacked rest": "backed",
  "fall zone": "backed",
  "way back": "way back",
  "no way back": "way back",
};

/** The kind of a finding, by its check. */
export function kindOf(finding: Pick<Finding, "check">): FindingKind {
  if (isOfSpread(finding)) return "spread";
  return kindByCheck[finding.check] ?? "run";
}

/** What the list shows: levels that are left out, one kind or all, and words that must occur. */
export interface Filter {
  without: readonly Level[];
  kind: FindingKind | "all";
  words: string;
}

/** The list as it opens: everything. */
export const noFilter: Filter = { without: [], kind: "all", words: "" };

/** Findings that pass a filter; every one of its words must occur in what the finding says. */
export function filtered(findings: readonly Finding[], { without, kind, words }: Filter): Finding[] {
  const asked = words
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  return findings.filter((finding) => {
    if (without.includes(finding.level) || (kind !== "all" && kindOf(finding) !== kind)) return false;
    const said = `${finding.check} ${finding.subject} ${finding.words}`.toLowerCase();
    return asked.every((word) => said.includes(word));
  });
}
