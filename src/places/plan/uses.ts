// Uses of limits in one pose, read from it anew. Comes as a chunk of its own: it brings the checks of the strips with it.

import type { Pose } from "../../app/index.ts";
import { type Measure, useOf as partOfLimit } from "../../checks/index.ts";
import type { Use } from "./rows.ts";

/** The measures of a set that are drawn as strips: the same whose highest use in the step stands beside. */
export { stripMeasures } from "../../checks/index.ts";

/** Highest use of a limit of every subject in one pose, read from that pose anew. */
export function usesHere(measures: readonly Measure[], pose: Pose): Map<string, Use> {
  const uses = new Map<string, Use>();
  for (const measure of measures) {
    const use = partOfLimit(measure, measure.read(pose));
    if (!Number.isFinite(use) || use <= (uses.get(measure.subject)?.use ?? Number.NEGATIVE_INFINITY))
      continue;
    uses.set(measure.subject, { use, check: measure.check });
  }
  return uses;
}
