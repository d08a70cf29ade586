// Asking for a proposed sequence: in a thread of its own, which is started for it and ended with it.
import { proxy, wrap } from "comlink";
import type { ProposedSets, SetProposal } from "../checks/index.ts";
import type { Proposer } from "../proposer.ts";
import type { Plan } from "./types.ts";

/** A search under way. */
export interface Proposing {
  /** The plan with its proposed steps; null when it was stopped. Rejects when the thread fails. */
  done: Promise<ProposedSets | null>;
  stop(): void;
}

/** Begins a search for positions and steps of the named sets. `progress` is told a part 0..1 of the whole, and words. */
export function beginProposal(
  plan: Plan,
  sets: readonly string[],
  progress: (part: number, words: string) => void,
): Proposing {
  const worker = new Worker(new URL("../proposer.ts", import.meta.url), { type: "module", name: "proposer" });
  let ended = false;
  let stop = () => {};
  const told = (set: number, of: number, done: number, budget: number) => {
    const which = of > 1 ? `set ${set + 1} of ${of}: ` : "";
    if (!ended)
      progress(
        (set + Math.min(1, done / budget)) / of,
        `${which}${done} of at most ${budget} choices judged`,
      );
  };
  const done = new Promise<ProposedSets | null>((resolve, reject) => {
    const end = (work: () => void) => {
      if (ended) return;
      ended = true;
      worker.terminate();
      work();
    };
    stop = () => end(() => resolve(null));
    worker.onerror = (event) =>
      end(() => reject(new Error(`The proposal's thread broke off: ${event.message || "no reason given"}.`)));
    wrap<Proposer>(worker)
      .propose(plan, sets, proxy(told))
      .then(
        (found) => end(() => resolve(found)),
        (error: unknown) => end(() => reject(error)),
      );
  });
  return { done, stop: () => stop() };
}

/** What was found for a set, in one sentence. */
export function proposalWords(name: string, p: SetProposal): string {
  const use = p.worstUse === null ? "" : `, greatest use ${(100 * p.worstUse).toFixed(0)} %`;
  const accept =
    p.toAccept.length === 0
      ? ""
      : ` ${p.toAccept.length} steps stand on one hook or group alone: a person has to accept them by name.`;
  if (p.passes) return `${name}: every step solves with no stop from limits${use}.${accept}`;
  const most = p.choice === "" ? "" : " The best that was found is taken.";
  return `${name}: ${p.reason}${most}`;
}
