// What a plan lacks about wind, and what stands in for it: a note for each.

import { type Plan, pickOf } from "../../plan/index.ts";
import { missing } from "../finding.ts";
import type { Finding } from "../types.ts";

/** Notes on data of wind that are missing; none for a plan without any wind limit. */
export function lacking(plan: Plan): Finding[] {
  if (!plan.sets.some((set) => set.steps.some((step) => step.windLimit_m_per_s !== undefined))) return [];
  const out: Finding[] = [];
  const say = (path: string, words: string) => out.push(missing("", path, words));
  const { wind } = plan.site;
  if (wind?.instrument === undefined)
    say(
      "site.wind.instrument",
      "no height and averaging time of what shows the wind; every wind limit is taken as a 3-s gust at the set",
    );
  else if (wind.exposure === undefined || wind.setHeight_m === undefined) {
    const what = wind.exposure === undefined ? "site.wind.exposure" : "site.wind.setHeight_m";
    say(what, "the wind at the set is taken as that at the instrument, whatever their heights");
  }
  for (const [i, crane] of plan.cranes.entries())
    if (crane.wind === undefined && plan.sets.some((set) => pickOf(set, crane.id) !== null))
      say(`cranes[${i}].wind`, `the wind limit of the chart of ${crane.id} is not known; it is not checked`);
  return out;
}
