// A search for a sequence as a screen follows it: how far it is, its end, and that it ends with the screen.
import { useEffect, useRef, useState } from "react";
import { beginProposal, type Plan, type Proposing } from "../../app/index.ts";
import type { ProposedSets } from "../../checks/index.ts";

/** How far a search is. */
export type Search =
  | { is: "idle" }
  | { is: "running"; part: number; words: string }
  | { is: "stopped" }
  | { is: "done"; found: ProposedSets }
  | { is: "failed"; words: string };

/** Begins and stops a search; `onFound` is told its end once. A search ends when its screen goes. */
export function useProposal(onFound: (found: ProposedSets) => void) {
  const [search, setSearch] = useState<Search>({ is: "idle" });
  const running = useRef<Proposing | null>(null);
  useEffect(() => () => running.current?.stop(), []);
  const begin = (plan: Plan, sets: readonly string[]) => {
    running.current?.stop();
    setSearch({ is: "running", part: 0, words: "starting" });
    const mine = beginProposal(plan, sets, (part, words) => setSearch({ is: "running", part, words }));
    running.current = mine;
    mine.done.then(
      (found) => {
        if (running.current !== mine) return;
        running.current = null;
        if (found === null) setSearch({ is: "stopped" });
        else {
          setSearch({ is: "done", found });
          onFound(found);
        }
      },
      (error: unknown) => {
        if (running.current !== mine) return;
        running.current = null;
        setSearch({ is: "failed", words: error instanceof Error ? error.message : String(error) });
      },
    );
  };
  return { search, begin, stop: () => running.current?.stop() };
}
