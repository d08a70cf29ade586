// Walking cranes: soft stretches that they pass between two stored poses, and ways of which the plan does not say what they bear.

import { hookName } from "../../plan/index.ts";
import { type Pose, peak, poseAt, type SetContext, type SetRun } from "../../sequence/index.ts";
import { type Measure, useOf as partOfLimit, type Reading } from "../measure.ts";
import type { Finding, When } from "../types.ts";
import { foundAt, foundThere, placeWords, poseWords, whenAt } from "./found.ts";
import { covered, meetDuring, type Part } from "./meet.ts";
import { craneAreasAt, movedAt, swept } from "./standing.ts";
import { pressuresOverSwing, pressuresUnloaded } from "./swing.ts";
import { type Judged, judgedOf, trackPressures } from "./trackPressure.ts";
import { groundAround, type Stretch, stretchesOf } from "./way.ts";

/** Places just inside the ends of a passage: this part of it, so that the tracks stand on the stretch without doubt. */
const INSIDE = 1e-6;
/** Where on a passage a crane presses most is found to this part of the way between two stored poses. */
const EXACT = 1e-3;
/** A use this near to 1 at a stored pose may be above it before the next one: a sixteenth of the step or less further on. */
const NEAR = 0.05;

/** Stored poses between which a crane walks: each is followed by the next. */
function* walking(t: Judged, run: SetRun, stored: readonly Pose[]): Generator<number> {
  for (let i = 0; i + 1 < stored.length; i++) {
    if (run.step[i] !== run.step[i + 1]) continue;
    const [a, b] = [movedAt(t.crane, stored[i]), movedAt(t.crane, stored[i + 1])];
    if (a[0] !== b[0] || a[1] !== b[1]) yield i;
  }
}

/** When the tracks of a crane stand on a stretch between two poses: for each of both tracks a part of the way. */
function passages(t: Judged, a: Pose, b: Pose, { area }: Stretch): NonNullable<Part>[] {
  const [from, to] = [movedAt(t.crane, a), movedAt(t.crane, b)];
  const way = [to[0] - from[0], to[1] - from[1]] as const;
  return craneAreasAt(t.crane, from).flatMap((track) => {
    const part = meetDuring(track, way, area);
    return part === null ? [] : [part];
  });
}

interface Worst {
  use: number;
  reading: Reading;
  at: When;
}

/**
 * Stretches on which a walking crane presses too much between two stored poses that do not show it: those that it passes
 * whole between them, and those on which it comes near to the limit at one of them. The way over them is searched.
 */
export function softStretches(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const stretches = stretchesOf(ctx.plan);
  if (stretches.length === 0) return [];
  const measures = [trackPressures, pressuresOverSwing, pressuresUnloaded].map((make) => make(ctx));
  return judgedOf(ctx).flatMap((t, k) =>
    measures.flatMap((made) =>
      stretches.flatMap((stretch) => passedFinding(ctx, run, stored, t, made[k], stretch)),
    ),
  );
}

function passedFinding(
  ctx: SetContext,
  run: SetRun,
  stored: readonly Pose[],
  t: Judged,
  m: Measure,
  stretch: Stretch,
): Finding[] {
  let worst: Worst | null = null;
  const partAt = (pose: Pose) => partOfLimit(m, m.read(pose)) || 0;
  for (const i of walking(t, run, stored)) {
    const { step, progress } = whenAt(run, i);
    const long = run.progress[i + 1] - progress;
    const look = (part: number): number => {
      const pose = poseAt(ctx, run.steps[step], progress + part * long, stored[i]);
      if (pose.solution.status !== "solved") return 0;
      const reading = m.read(pose);
      const use = partOfLimit(m, reading) || 0;
      if (use > (worst?.use ?? 1 + 1e-9)) worst = { use, reading, at: { step, progress: pose.progress } };
      return use;
    };
    for (const [from, to] of passages(t, stored[i], stored[i + 1], stretch)) {
      if (from <= 0 || to >= 1) {
        const shown = Math.max(from <= 0 ? partAt(stored[i]) : 0, to >= 1 ? partAt(stored[i + 1]) : 0);
        if (shown < 1 - NEAR || shown > 1 + 1e-9) continue;
      }
      const [first, last] = [from + INSIDE * (to - from), to - INSIDE * (to - from)];
      look(first);
      look(last);
      look(peak(look, first, last, EXACT));
    }
  }
  if (worst === null) return [];
  const { reading: r, at } = worst as Worst;
  const [value, limit] = [r.value * m.factor, r.limit * m.factor];
  return [
    foundThere(ctx, at, {
      id: `${m.check}:${ctx.set.id}:${m.subject}:${stretch.name}`,
      level: m.level,
      check: m.check,
      subject: m.subject,
      value,
      limit,
      unit: m.unit,
      source: r.source ?? m.source,
      chosenBy: r.chosenBy ?? m.chosenBy,
      words: `${m.check} of ${m.subject}: ${value.toFixed(m.digits)} is above ${limit.toFixed(m.digits)} ${m.unit} where it walks over '${stretch.name}', ${placeWords(run, at)} (${r.where})`,
      cure: m.cure,
    }),
  ];
}

/** The first place of every walk at which tracks stand where the plan says nothing of the ground. */
export function bareWays(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return judgedOf(ctx).flatMap((t) => {
    const known = groundAround(ctx.plan, t.crane);
    const told = new Set<number>();
    const out: Finding[] = [];
    for (const i of walking(t, run, stored)) {
      if (told.has(run.step[i])) continue;
      const [a, b] = [i, i + 1].map((k) => craneAreasAt(t.crane, movedAt(t.crane, stored[k])));
      if (covered(swept(a, b), known)) continue;
      told.add(run.step[i]);
      const name = hookName(t.crane);
      out.push(
        foundAt(ctx, run, i, {
          id: `missing data:${ctx.set.id}:site.craneGround:${t.crane.id}:${run.step[i]}`,
          level: "caution",
          check: "missing data",
          subject: "site.craneGround",
          words: `site.craneGround: blank along the way of ${name}: after ${poseWords(run, i)} its tracks stand where nothing says what the ground may bear, and the ${(t.allowable.value / 1000).toFixed(1)} kPa of its own place stand in`,
          cure: "give the ground along the way in stretches, each with its allowable pressure and the source",
        }),
      );
    }
    return out;
  });
}
