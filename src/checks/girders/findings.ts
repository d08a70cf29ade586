// What the girder checks say beside their readings: the rule set that stands when none was chosen, field pieces that are
// slender alone, and the stages to which the formula for a two-girder set does not apply.

import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { dataFindings } from "../dataMeasure.ts";
import { finding } from "../finding.ts";
import type { Finding } from "../types.ts";
import { girdersOf } from "./data.ts";
import { girderRuleIds, standingRules } from "./rules.ts";
import { fieldPieces } from "./slenderness.ts";
import { stageOf, TWO_GIRDERS } from "./twoGirders.ts";

/** Findings of the girders of a set that are no reading beyond a limit. */
export function girderFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return [...standingFinding(ctx), ...dataFindings(fieldPieces(ctx)), ...notJudged(ctx, run, stored)];
}

function note(ctx: SetContext, part: Pick<Finding, "check" | "subject" | "words" | "cure">): Finding {
  return finding({ level: "note", set: ctx.set.id, ...part });
}

function standingFinding(ctx: SetContext): Finding[] {
  if (ctx.plan.limits.use.some((id) => girderRuleIds.includes(id))) return [];
  return [
    note(ctx, {
      check: "limit not set",
      subject: "strength of girders",
      words: `no rule set for the strength of girders was chosen: ${standingRules} stands`,
      cure: `choose one or more of ${girderRuleIds.join(", ")} in limits.use; the lowest governs`,
    }),
  ];
}

/** One note for every unbroken stretch of stored poses in which a two-girder set is not judged as one unit. */
function notJudged(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const girders = girdersOf(ctx);
  if (girders.length !== 2) return [];
  const whys = stored.map((pose) => {
    const stage = stageOf(ctx, girders, pose);
    return "why" in stage ? stage.why : "";
  });
  const out: Finding[] = [];
  for (let i = 0; i < whys.length; i++) {
    const why = whys[i];
    if (why === "") continue;
    let end = i;
    while (end + 1 < whys.length && whys[end + 1] === why) end++;
    const at = (k: number) => ({ step: run.step[k], progress: run.progress[k] });
    const one = note(ctx, {
      check: TWO_GIRDERS,
      subject: "set",
      words: `${TWO_GIRDERS}: ${why}; it is not judged as one unit here`,
      cure: "have an engineer look at the overhang, or let the program look for buckling at these poses",
    });
    out.push({
      ...one,
      id: `${one.id}:${run.step[i]}:${run.progress[i]}`,
      from: at(i),
      to: at(end),
      worst: at(i),
    });
    i = end;
  }
  return out;
}
