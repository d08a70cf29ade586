// A proposed sequence as a short text for a terminal: what was chosen, what governs, who came second and why it lost.

import type { Proposal } from "../checks/index.ts";
import type { PlanSet, Step } from "../plan/index.ts";
import { caution } from "./origin.ts";
import { oneLine, tableLines } from "./table.ts";

/** The whole text of a proposal for a set. */
export function proposalText(proposal: Proposal, setId: string): string {
  const { plan, worstUse, governing, runnerUp } = proposal;
  const set = plan?.sets.find((s) => s.id === setId);
  const out: string[] = [];
  if (set === undefined) out.push(`set ${oneLine(setId)}: no sequence proposed`);
  else {
    const use = worstUse === null ? "it does not solve to its end" : `worst use ${percent(worstUse)}`;
    out.push(`set ${oneLine(setId)}: proposed sequence, ${use}`, "", ...stepLines(set), "");
    out.push(`chosen: ${proposal.choice}`);
    if (governing) out.push(`governs: ${oneLine(governing.words)}`);
  }
  if (proposal.impossible !== undefined) out.push(`impossible: ${oneLine(proposal.impossible)}`);
  for (const stop of proposal.stops) out.push(`stop: ${oneLine(stop)}`);
  if (runnerUp) out.push(`runner-up: ${runnerUp.choice}`, `  it lost: ${oneLine(runnerUp.why)}`);
  if (proposal.toAccept.length > 0)
    out.push(
      `unbacked, so each is a stop until somebody accepts it by name: ${proposal.toAccept.map(oneLine).join(", ")}`,
    );
  out.push(`method: ${proposal.method} Judged here: ${proposal.evaluations}.`);
  out.push("", "A proposal is a start for the engineer who plans the lift, and no plan yet.", caution);
  return `${out.join("\n")}\n`;
}

function stepLines(set: PlanSet): string[] {
  const rows = set.steps.map((s, i) => [String(i + 1), oneLine(s.id), s.do, numbersOf(s)]);
  return tableLines(["no", "step", "does", "with"], rows, ["right", "left", "left", "left"]);
}

/** The numbers of a step that a proposal chooses. */
function numbersOf(s: Step): string {
  switch (s.do) {
    case "roll":
      return `${s.distance_m} m`;
    case "roll together":
      return `${s.distance_m} m in bites of ${s.bite_m} m`;
    case "take load":
      return "load_kN" in s.until
        ? `${oneLine(s.crane)} to ${s.until.load_kN} kN, caps ${s.loadCap_kN} kN and ${s.heightCap_mm} mm`
        : oneLine(s.crane);
    case "jack down":
      return "gap_mm" in s.until ? `gap ${s.until.gap_mm} mm` : "";
    case "drive out":
      return `${s.toward} by ${s.distance_m} m`;
    case "hoist up":
    case "hoist down":
      return s.hooks.map((h) => `${oneLine(h.crane)} ${h.height_mm} mm`).join(", ");
    case "bring over":
      return `${s.dx_m} m along, ${s.dy_m} m across`;
    case "land":
      return `${s.order.map(oneLine).join(", then ")}; stages ${(s.stages_kN ?? []).join(", ")} kN`;
    default:
      return "";
  }
}

const percent = (use: number) => `${(100 * use).toFixed(1)} %`;
