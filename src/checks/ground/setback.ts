// Set-back from the edges of slopes, trenches and retaining walls: least distance of every machine against the chosen rule.

import { areaToEdge } from "../../mechanics/index.ts";
import type { Edge, Plan } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { limitOf } from "../limits.ts";
import type { Finding } from "../types.ts";
import { foundAt, poseWords } from "./found.ts";
import { standingOf, swept } from "./standing.ts";

/** The rule in force: distance per depth; the greatest of those chosen. */
export const setbackRule = (plan: Plan) => limitOf(plan, "set-back ratio", true);

/** Least distance of a machine's ground from an edge over a run, m, and the stored pose before it; -1 for none. */
export function leastDistance(
  areas: readonly ReturnType<ReturnType<typeof standingOf>[number]["areas"]>[],
  run: SetRun,
  edge: Edge,
): { distance: number; at: number } {
  const [a, b] = [edge.from, edge.to].map((p) => [p.chainage_m, p.y_m] as const);
  let distance = Number.POSITIVE_INFINITY;
  let at = -1;
  let before: (typeof areas)[number] | null = null;
  areas.forEach((now, i) => {
    const moving = i + 1 < areas.length && run.step[i] === run.step[i + 1];
    const ground = moving ? swept(now, areas[i + 1]) : now;
    if (before !== null && same(before, ground)) return;
    before = ground;
    for (const area of ground) {
      const d = areaToEdge(area, a, b);
      if (d >= distance) continue;
      distance = d;
      at = i;
    }
  });
  return { distance, at };
}

const same = (a: readonly (readonly (readonly [number, number])[])[], b: typeof a): boolean =>
  a.length === b.length &&
  a.every(
    (area, i) =>
      area.length === b[i].length && area.every((p, k) => p[0] === b[i][k][0] && p[1] === b[i][k][1]),
  );

/** Every machine that stands or passes nearer to an edge than the rule says, or near a wall that holds ground. */
export function setbackFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const edges = ctx.plan.site.edges ?? [];
  if (edges.length === 0) return [];
  const rule = setbackRule(ctx.plan);
  return standingOf(ctx).flatMap((machine) => {
    const areas = stored.map((pose) => machine.areas(pose));
    return edges.flatMap((edge) => {
      const { distance, at } = leastDistance(areas, run, edge);
      if (at < 0) return [];
      const signed = edge.signedOff;
      const limit = rule ? rule.value * edge.depth_m : null;
      // The rules are for free slopes and cuts: a wall that holds the ground back asks for its own engineer from its height on.
      const near = edge.kind === "retained" ? edge.depth_m : limit;
      if (near === null || !(distance < near * (1 - 1e-9))) return [];
      const words = `${machine.name} comes within ${distance.toFixed(2)} m of ${edge.name} (${edge.depth_m} m deep, ${poseWords(run, at)})`;
      return foundAt(ctx, run, at, {
        id: `set-back:${ctx.set.id}:${machine.name}:${edge.name}`,
        level: signed ? "note" : edge.kind === "retained" ? "caution" : "stop",
        check: "set-back",
        subject: `${machine.name}, ${edge.name}`,
        value: distance,
        limit: near,
        unit: "m",
        use: distance > 0 ? near / distance : null,
        source:
          edge.kind === "retained"
            ? "a wall holds this ground: its surcharge needs a geotechnical engineer; common practice, no source"
            : `${rule?.source}; ${rule?.value} of the depth`,
        chosenBy: signed?.by ?? (edge.kind === "retained" ? "default" : (rule?.chosenBy ?? "plan")),
        words: `${words}: ${near.toFixed(2)} m is asked for${signed ? `; signed for by ${signed.by}` : ""}`,
        cure: "stand further back, shore the edge, or have a geotechnical engineer sign for it",
      });
    });
  });
}

/** Edges without a rule of set-back. */
export function setbackItems(plan: Plan): Finding[] {
  const open = (plan.site.edges ?? []).filter((e) => e.kind !== "retained");
  if (open.length === 0 || setbackRule(plan)) return [];
  return [
    finding({
      level: "note",
      check: "limit not set",
      set: "",
      subject: "set-back ratio",
      words: `set-back ratio: no rule was chosen for ${open.map((e) => e.name).join(", ")}; distances to them are not judged`,
      cure: "choose a rule of set-back in limits.use, such as setback-1-5",
    }),
  ];
}
