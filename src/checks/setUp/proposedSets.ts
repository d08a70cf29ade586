// The steps of a plan that has none: a proposal for one set after another, with its reason where it has a stop.

import type { Plan } from "../../plan/index.ts";
import { type Proposal, proposeSequence } from "../propose/propose.ts";

/** What was found for one set. */
export interface SetProposal {
  set: string;
  /** What was chosen, in words; '' when nothing could be laid out. */
  choice: string;
  worstUse: number | null;
  /** True when the best that was found has equilibrium in every step and no stop. */
  passes: boolean;
  /** Why nothing passes; '' when the proposal passes. */
  reason: string;
  toAccept: string[];
}

/** A plan with proposed steps, and what was found for each set. */
export interface ProposedSets {
  plan: Plan;
  sets: SetProposal[];
  cancelled: boolean;
}

/** Called after every judged choice: which set, of how many, and how far its search is. Returning false ends it all. */
export type ProposalProgress = (set: number, sets: number, done: number, of: number) => boolean;

/**
 * Proposes positions and steps for the named sets, one after another, each with those before it in place. The best is taken
 * even when it has a stop: its reason says what must change first. Cancelled: the plan as it was.
 */
export function proposedSets(
  plan: Plan,
  ids: readonly string[],
  onProgress: ProposalProgress = () => true,
): ProposedSets {
  let next = plan;
  const sets: SetProposal[] = [];
  for (const [i, id] of ids.entries()) {
    const proposal = proposeSequence(next, id, (done, of) => onProgress(i, ids.length, done, of));
    if (proposal.cancelled) return { plan, sets: [], cancelled: true };
    sets.push(wordsOf(id, proposal));
    if (proposal.plan !== null) next = proposal.plan;
  }
  return { plan: relisted(plan, next, ids), sets, cancelled: false };
}

function wordsOf(set: string, p: Proposal): SetProposal {
  const passes = p.plan !== null && p.solves && p.stops.length === 0;
  const { choice, worstUse, toAccept } = p;
  return {
    set,
    choice,
    worstUse,
    passes,
    reason: passes ? "" : (p.impossible ?? p.stops.join("; ")),
    toAccept,
  };
}

const CHOSEN = "chosen by the proposed sequence, not confirmed";

/**
 * Where a set lies on transporters and is picked is new, and so not confirmed, whatever was listed of it before. What a set
 * inherited of steps and positions is no longer a copy.
 */
function relisted(before: Plan, plan: Plan, ids: readonly string[]): Plan {
  const places = plan.sets.flatMap((set, i) =>
    ids.includes(set.id) && set !== before.sets[i]
      ? ["onTransporters", "picks"].map((field) => `sets[${i}].${field}`)
      : [],
  );
  const replaced = (place: string) => /^(steps|start|onTransporters|picks)\b/.test(place);
  const sets = plan.sets.map((set, i) => {
    if (!ids.includes(set.id) || set === before.sets[i] || set.unconfirmed === undefined) return set;
    const { unconfirmed, ...rest } = set;
    const left = unconfirmed.filter((place) => !replaced(place));
    return left.length === 0 ? rest : { ...rest, unconfirmed: left };
  });
  const groups = (plan.unconfirmed ?? [])
    .map((group) => ({
      ...group,
      places: group.places.filter((place) => !places.some((p) => place === p || place.startsWith(`${p}[`))),
    }))
    .filter((group) => group.places.length > 0);
  if (places.length === 0) return plan;
  return { ...plan, sets, unconfirmed: [...groups, { why: CHOSEN, places }] };
}
