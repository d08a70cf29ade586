// How many values of a part are not confirmed, and the button that confirms them all.
import type { PlanPart } from "../../../app/index.ts";
import type { PlanPath } from "../../../plan/index.ts";
import { partWords } from "./parts.ts";
import type { DataGround } from "./table.ts";

/** The line below the head of a part that has such values. */
export function Doubts(props: {
  ground: DataGround;
  part: PlanPart;
  paths: readonly PlanPath[];
  who: string;
  setWho: (who: string) => void;
}) {
  const { ground, part, paths, who, setWho } = props;
  if (paths.length === 0) return null;
  return (
    <div className="data-doubts">
      <span className="mark">{`◇ ${paths.length} not confirmed`}</span>
      <label>
        {"Confirmed by "}
        <input value={who} autoComplete="off" onChange={(event) => setWho(event.target.value)} />
      </label>
      <button
        type="button"
        disabled={who.trim() === ""}
        onClick={() => ground.confirm(paths, partWords[part].toLowerCase())}
      >
        {`Confirm all of ${partWords[part].toLowerCase()}`}
      </button>
      <span className="quiet">
        {who.trim() === ""
          ? "Say who confirms: it stands in the history."
          : "Values marked with ◇ are starter values or copies. Typing one over confirms it."}
      </span>
    </div>
  );
}
