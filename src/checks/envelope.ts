// Envelopes of a run: greatest and least moment, shear and torsion of every girder, element by element, over all poses.

import {
  type Diagrams,
  diagramsOf,
  greatestIn,
  type SetModel,
  shearAt,
  torsionAt,
} from "../mechanics/index.ts";
import { type Pose, poseAt, type SetContext } from "../sequence/index.ts";
import { type InTurn, toTheEnd } from "./turns.ts";
import type { Band, GirderEnvelope, SetResult } from "./types.ts";

/** Sets with their stored poses: what an envelope needs of a solved set. */
export type PosesOfSet = Pick<SetResult, "steps" | "step" | "progress" | "count">;

/**
 * Envelopes over the stored poses (starts, ends, events, and as many between as the run needed), each solved anew; the
 * moment is exact within every element. Null when `onProgress`, told after each step, broke it off.
 */
export function envelopesOf(
  ctx: SetContext,
  set: PosesOfSet,
  onProgress: (done: number, of: number) => boolean = () => true,
): GirderEnvelope[] | null {
  return toTheEnd(envelopesInTurn(ctx, set), onProgress);
}

/** The same, resting after each step. */
export function* envelopesInTurn(ctx: SetContext, set: PosesOfSet): InTurn<GirderEnvelope[]> {
  const envelopes = ctx.model.girders.map(({ name, elements }): GirderEnvelope => {
    const n = elements.length;
    const last = elements[n - 1];
    return {
      girder: name,
      x: Float64Array.from([...elements.map((e) => e.from), last.from + last.length]),
      moment: bandOf(n),
      shear: bandOf(n),
      torsion: bandOf(n),
    };
  });
  let near: Pose | null = null;
  for (const run of set.steps) {
    for (let i = run.first; i < run.first + run.count; i++) {
      const pose: Pose = poseAt(ctx, run, set.progress[i], near);
      near = pose;
      if (pose.solution.status === "solved") take(envelopes, diagramsOf(pose.solution), ctx.model, i);
    }
    yield { done: run.index + 1, of: set.steps.length };
  }
  return envelopes;
}

function bandOf(n: number): Band {
  return {
    most: new Float64Array(n).fill(Number.NaN),
    least: new Float64Array(n).fill(Number.NaN),
    mostPose: new Int32Array(n).fill(-1),
    leastPose: new Int32Array(n).fill(-1),
  };
}

function take(envelopes: GirderEnvelope[], d: Diagrams, model: SetModel, pose: number): void {
  envelopes.forEach(({ x, moment, shear, torsion }, girder) => {
    const lone = model.girders.length === 1;
    for (let e = 0; e < x.length - 1; e++) {
      const from = x[e];
      const to = x[e + 1];
      const { most, least } = greatestIn(d, girder, from, to);
      note(moment, e, most.M, pose);
      note(moment, e, least.M, pose);
      // Shear falls and torsion runs straight between actions: both are extreme at ends and beside what acts.
      const { points, first } = d.girders[girder];
      note(shear, e, shearAt(d, girder, from, 1), pose);
      note(shear, e, shearAt(d, girder, to, -1), pose);
      for (let p = first[e]; p < first[e + 1]; p++)
        for (const side of [-1, 1] as const) {
          if (points[p].x === from && side < 0) continue;
          note(shear, e, shearAt(d, girder, points[p].x, side), pose);
          if (!lone) note(torsion, e, torsionAt(d, girder, points[p].x, side), pose);
        }
      // What holds the lean of a lone girder is not named, so that its torsion is not known.
      if (lone) continue;
      note(torsion, e, torsionAt(d, girder, from, 1), pose);
      note(torsion, e, torsionAt(d, girder, to, -1), pose);
    }
  });
}

function note({ most, least, mostPose, leastPose }: Band, e: number, value: number, pose: number): void {
  if (!(value <= most[e])) {
    most[e] = value;
    mostPose[e] = pose;
  }
  if (!(value >= least[e])) {
    least[e] = value;
    leastPose[e] = pose;
  }
}
