// Grade and crossfall of the hung set at its soles against its seats: which seat it would touch first, and by how much.
//
// While hooks alone carry, every bearing has a gap: what is left between the sole and the top of the bearing, camber,
// droop, twist and as-built seats included. Lowering changes all gaps alike; their differences are what slings and hook
// heights make.

import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { type Limit, limitOf } from "../limits.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, type Recorder, solved, trace } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";

/** Gap of one bearing, m. */
export interface BearingGap {
  bearing: string;
  line: "near" | "far";
  girder: string;
  gap: number;
}

/** Gaps of all bearings of a pose in which hooks alone carry over the seats; null in any other. */
export function gapsOf(pose: Pose): BearingGap[] | null {
  const { solution } = pose;
  if (solution.status !== "solved" || !pose.situation.overSeats) return null;
  const { devices, contact, layout } = solution;
  const out: BearingGap[] = [];
  for (let j = 0; j < devices.length; j++) {
    const d = devices[j];
    if (d.kind === "bunk" || d.kind === "bearing" || d.kind === "group" || d.kind === "stop")
      if (contact.F[j] > 0) return null;
    if (d.kind !== "bearing") continue;
    const name = layout.state.bearings?.[d.of].name ?? "";
    const line = name.startsWith("near") ? "near" : "far";
    out.push({
      bearing: name,
      line,
      girder: layout.state.bearings?.[d.of].girder ?? "",
      gap: contact.v[j] - d.datum,
    });
  }
  const hooks = pose.state.hoists?.length ?? 0;
  return out.length > 1 && hooks > 1 ? out : null;
}

const lines = ["near", "far"] as const;
const mean = (gaps: readonly BearingGap[]) => gaps.reduce((sum, g) => sum + g.gap / gaps.length, 0);

/** The bearing of a line with the least gap and the one with the greatest. */
function endsOf(gaps: readonly BearingGap[]): { least: BearingGap; greatest: BearingGap } {
  const sorted = [...gaps].sort((a, b) => a.gap - b.gap);
  return { least: sorted[0], greatest: sorted[sorted.length - 1] };
}

/** Difference of gaps across one bearing line, m. */
function crossfallRead(line: "near" | "far", limit: Limit, pose: Pose, rec: Recorder | null): Reading {
  const gaps = gapsOf(pose)?.filter((g) => g.line === line) ?? [];
  if (gaps.length < 2) return NOT_HERE;
  const { least, greatest } = endsOf(gaps);
  record(rec, [least.gap, `gap at ${least.bearing}`], [greatest.gap, `gap at ${greatest.bearing}`], limit);
  return {
    value: greatest.gap - least.gap,
    limit: limit.value / 1000,
    where: `${least.bearing} first, then ${greatest.bearing}`,
  };
}

/** Difference of the mean gaps of both bearing lines, m. */
function gradeRead(limit: Limit, pose: Pose, rec: Recorder | null): Reading {
  const gaps = gapsOf(pose);
  if (gaps === null) return NOT_HERE;
  const of = lines.map((line) => ({ line, gaps: gaps.filter((g) => g.line === line) }));
  if (of.some((one) => one.gaps.length === 0)) return NOT_HERE;
  const [first, last] = of
    .map((one) => ({ line: one.line, gap: mean(one.gaps) }))
    .sort((a, b) => a.gap - b.gap);
  record(
    rec,
    [first.gap, `mean gap of the ${first.line} bearings`],
    [last.gap, `mean gap of the ${last.line} bearings`],
    limit,
  );
  return { value: last.gap - first.gap, limit: limit.value / 1000, where: `${first.line} end first` };
}

function record(
  rec: Recorder | null,
  least: [number, string],
  greatest: [number, string],
  limit: Limit,
): void {
  if (rec === null) return;
  solved(rec, "g_1", least[0], "m", least[1]);
  solved(rec, "g_2", greatest[0], "m", greatest[1]);
  trace(rec, "D", greatest[0] - least[0], "g_2 - g_1", "m", "difference of the gaps");
  constant(rec, "D_mm", limit.value, "mm", "difference allowed", `${limit.source} (${limit.chosenBy})`);
  trace(rec, "D_a", limit.value / 1000, "D_mm/1000", "m", "difference allowed");
  rec.ends("D", "D_a");
}

/** Grade and crossfall of the hung set against its seats, for one pose and its trace. */
export function hungAttitude(ctx: SetContext): Measure[] {
  const across = limitOf(ctx.plan, "out of crossfall");
  const along = limitOf(ctx.plan, "out of grade");
  const common = { kind: "", level: "caution", unit: "mm", factor: 1000, digits: 0, watched: false } as const;
  return [
    ...(along === null
      ? []
      : [
          measure(
            {
              ...common,
              check: "hung grade",
              subject: "set",
              cure: "hoist the end that is nearer to its seats, or lower the other, before the landing",
              ...traced(ctx, (pose, rec) => gradeRead(along, pose, rec)),
            },
            along,
          ),
        ]),
    ...(across === null
      ? []
      : lines.map((line) =>
          measure(
            {
              ...common,
              check: "hung crossfall",
              subject: `${line} bearings`,
              cure: "slings of other lengths on the two sides, as the proposal of slings says",
              ...traced(ctx, (pose, rec) => crossfallRead(line, across, pose, rec)),
            },
            across,
          ),
        )),
  ];
}

/**
 * One finding for each bearing line and for the grade that is out when the set comes to land. Crossfall is judged at
 * the last stored pose before a bearing touches; grade where that step begins, before one end is lowered on purpose.
 */
export function hungFindings(ctx: SetContext, _run: SetRun, stored: readonly Pose[]): Finding[] {
  const measures = hungAttitude(ctx);
  const out: Finding[] = [];
  let begins: Pose | null = null;
  for (let i = 0; i + 1 < stored.length; i++) {
    const pose = stored[i];
    if (gapsOf(pose) === null) {
      begins = null;
      continue;
    }
    if (begins?.step !== pose.step) begins = pose;
    if (!touches(stored[i + 1])) continue;
    for (const m of measures) {
      const judged = m.check === "hung grade" ? begins : pose;
      const reading = m.read(judged);
      if (reading.value > reading.limit * (1 + 1e-9)) out.push(finding(ctx, m, judged, reading));
    }
  }
  return out;
}

function finding(ctx: SetContext, m: Measure, pose: Pose, { value, limit, where }: Reading): Finding {
  const at = { step: pose.step, progress: pose.progress };
  return {
    id: `${m.check}:${ctx.set.id}:${m.subject}:${at.step}:${at.progress}`,
    level: m.level,
    check: m.check,
    set: ctx.set.id,
    subject: m.subject,
    from: at,
    to: at,
    worst: at,
    value: value * m.factor,
    limit: limit * m.factor,
    unit: m.unit,
    use: value / limit,
    source: m.source,
    chosenBy: m.chosenBy,
    words: `as it comes to land the set is ${(value * m.factor).toFixed(0)} mm out of the plane of its seats, allowed ${(limit * m.factor).toFixed(0)} mm (${where})`,
    cure: m.cure,
  };
}

/** A bearing carries. */
function touches(pose: Pose): boolean {
  const { devices, contact, status } = pose.solution;
  return status === "solved" && devices.some((d, j) => d.kind === "bearing" && contact.F[j] > 0);
}
