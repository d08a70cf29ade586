// What the table of reactions shows: a row per band in the order of the picture, and the finer supports folded below.
import type { Plan, Pose, Result, SetResult, Support } from "../../app/index.ts";
import { rowsOf } from "../../report/index.ts";
import { bandsOf } from "../../share/index.ts";

/** One support of the table; NaN for what is not part of the pose. Loads in N. */
export interface TableRow {
  name: string;
  kind: string;
  share: number;
  /** Load felt, with tare or rigging. */
  load: number;
  /** Highest use of a limit by it in this pose, and over the stored poses of the step. */
  here: Use;
  inStep: Use;
}

/** Highest use of any limit and which limit that is; NaN and '' where none is in force. */
export interface Use {
  use: number;
  check: string;
}

const noUse: Use = { use: Number.NaN, check: "" };

/** Supports of one kind under one head, with their lowest and highest load. */
export interface Fold {
  name: string;
  kind: string;
  rows: { name: string; load: number }[];
  least: number;
  most: number;
}

/** Highest use of any limit of a subject among the stored poses of a step: every one of them is solved. */
export function highestUse(set: SetResult, step: number, subject: string): Use {
  const { first, count } = set.steps[step];
  let best = noUse;
  for (const strip of set.strips) {
    if (strip.subject !== subject) continue;
    for (let i = first; i < first + count; i++) {
      const use = strip.use[i];
      if (Number.isFinite(use) && !(use <= best.use)) best = { use, check: strip.check };
    }
  }
  return best;
}

/** The head under which a support that is no band is folded. */
function foldName(plan: Plan, support: Pick<Support, "name" | "what" | "of" | "kind">): string {
  if (support.what === "line") return `${support.kind}: lines`;
  if (support.what === "bunk") return `${support.of}: bunks`;
  if (support.what === "lashing") return "lashings";
  const wheel = support.name.slice(support.of.length + 1);
  const transporter = plan.transporters.find((one) => one.id === support.of);
  const group = transporter?.groups.find(({ wheels }) => wheels.includes(wheel));
  return `${group?.name ?? support.of}: cylinders`;
}

/** Rows and folds of one pose; with no pose every number is missing. `uses` are those of the subjects in this pose. */
export function tableOf(
  result: Result,
  plan: Plan,
  set: SetResult,
  step: number,
  pose: Pose | null,
  uses: ReadonlyMap<string, Use>,
): { bands: TableRow[]; folds: Fold[] } {
  const rows = pose === null ? [] : rowsOf(result, plan, set, pose, null);
  const byName = new Map(rows.map((row) => [row.support.name, row]));
  const bands = bandsOf(set.supports)
    .reverse()
    .map(({ name, kind }) => {
      const row = byName.get(name);
      return {
        name,
        kind,
        share: row?.share ?? Number.NaN,
        load: row?.load ?? Number.NaN,
        here: uses.get(name) ?? noUse,
        inStep: highestUse(set, step, name),
      };
    });
  const folds = new Map<string, Fold>();
  for (const { support, load } of rows) {
    if (support.band || support.what === "wind") continue;
    const name = foldName(plan, support);
    const fold = folds.get(name) ?? { name, kind: support.kind, rows: [], least: load, most: load };
    fold.rows.push({ name: support.name, load });
    fold.least = Math.min(fold.least, load);
    fold.most = Math.max(fold.most, load);
    folds.set(name, fold);
  }
  return { bands, folds: [...folds.values()] };
}
