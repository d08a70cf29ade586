// How far a search for a sequence is, with a button that stops it; and what it found.
import { proposalWords } from "../../app/index.ts";
import type { Search } from "./useProposal.ts";

/** Progress while the search runs; its end in words. `nameOf` gives the name of a set. */
export function SearchSigns({
  search,
  stop,
  nameOf,
}: {
  search: Search;
  stop: () => void;
  nameOf: (id: string) => string;
}) {
  return (
    <div className="search" role="status">
      {search.is === "running" && (
        <>
          <progress value={search.part} max={1} aria-label="Search for a sequence" />
          <span>{`Searching for a sequence: ${search.words}`}</span>
          <button type="button" onClick={stop}>
            Stop
          </button>
        </>
      )}
      {search.is === "stopped" && <p>The search was stopped. Nothing was changed.</p>}
      {search.is === "failed" && <p>{`▲ The search failed: ${search.words}`}</p>}
      {search.is === "done" && (
        <ul>
          {search.found.sets.map((one) => (
            <li key={one.set}>{`${one.passes ? "✓" : "▲"} ${proposalWords(nameOf(one.set), one)}`}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
