// Two short sections of the text for a terminal: which steps are unbacked, and which have no way back.

import type { SetResult, UnbackedStretch } from "../checks/index.ts";
import { oneLine, type Side, tableLines } from "./table.ts";

/** A line for every unbacked stretch: step, part of it, length, minutes, what is lost, who accepted it. */
export function unbackedLines(set: SetResult): string[] {
  if (set.backed === undefined) return ["unbacked steps: not worked out"];
  const { stretches } = set.backed;
  if (stretches.length === 0) return ["unbacked steps: none; the set stands with any one hook or group lost"];
  const head = ["no", "step", "from", "to", "length", "minutes", "when lost", "accepted by"];
  const sides: Side[] = ["right", "left", "right", "right", "left", "right", "left", "left"];
  const rows = stretches.map((s) => [
    String(s.step + 1),
    oneLine(set.steps[s.step].step.id),
    percent(s.from),
    percent(s.to),
    s.motion === "" ? "-" : `${s.length.toFixed(2)} m ${s.motion}`,
    s.minutes === null ? "not stated" : s.minutes.toFixed(1),
    [...new Set(s.falls.map((f) => oneLine(f.support)))].join(", "),
    acceptedBy(s),
  ]);
  return [
    `unbacked steps, in which the set falls with one hook or group lost: ${stretches.length}`,
    ...tableLines(head, rows, sides),
  ];
}

/** Names of those who accepted a stretch, and of what nobody did. */
function acceptedBy(s: UnbackedStretch): string {
  const names = new Set(s.falls.flatMap((f) => (f.accepted ? [oneLine(f.accepted.by)] : [])));
  const open = new Set(s.falls.flatMap((f) => (f.accepted ? [] : [oneLine(f.support)])));
  if (open.size === 0) return [...names].join(", ");
  return names.size === 0 ? "nobody" : `${[...names].join(", ")}; nobody for ${[...open].join(", ")}`;
}

/** The steps past the point of no return, each with why, and the stated ways back that fail. */
export function wayBackLines(set: SetResult): string[] {
  if (set.waysBack === undefined) return ["steps past the point of no return: not worked out"];
  const lines = (source: "none" | "plan") =>
    (set.waysBack ?? []).flatMap((way) => {
      const bad = way.from.find((f) => !f.ok);
      const step = set.steps[way.step];
      if (way.source !== source || bad === undefined || !step.solved) return [];
      return [
        `  ${way.step + 1} (${oneLine(step.step.id)}) from ${percent(bad.progress)} on: ${oneLine(bad.words)}`,
      ];
    });
  const none = lines("none");
  const fails = lines("plan");
  return [
    none.length === 0
      ? "steps past the point of no return: none"
      : `steps past the point of no return: ${none.length}`,
    ...none,
    ...(fails.length === 0 ? [] : [`stated ways back that fail: ${fails.length}`, ...fails]),
  ];
}

const percent = (progress: number): string => `${(100 * progress).toFixed(0)} %`;
