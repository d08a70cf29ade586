// What the drawings show, as lists of sentences beside them.
import { useMemo } from "react";
import type { Plan, SetResult, SpreadResult, System } from "../app/index.ts";
import type { Strip } from "./governing.ts";
import { ownSentence, stripSentence } from "./sentences.ts";
import { unbackedSentences } from "./unbacked.ts";

/** What the drawings show, as lists for those who do not see them. */
export function Told(props: {
  plan: Plan;
  set: SetResult;
  spread: SpreadResult | null;
  units: System;
  /** Band that stands alone; '' for none. */
  chosen: string;
  /** Every strip, in the order of use. */
  strips: readonly Strip[];
}) {
  const { plan, set, spread, units, chosen, strips } = props;
  const lines = useMemo(
    () => ({
      unbacked: unbackedSentences(set, units),
      uses: strips.map((strip) => stripSentence(plan, set, spread, strip)),
    }),
    [plan, set, spread, units, strips],
  );
  const own = ownSentence(plan, set, spread, chosen, units);
  return (
    <div className="unseen">
      <ul aria-label="Unbacked parts and ways back">
        {lines.unbacked.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <ul aria-label="Highest uses of limits">
        {lines.uses.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {own !== "" && <p>{own}</p>}
    </div>
  );
}
