// The measures of a set, each read once at a pose: for the margins that a run watches, for findings and for strips.

import type { Pose, SetContext, SetRun, Watch } from "../sequence/index.ts";
import { type CheckList, type Measure, marginOf, type Reading, useOf } from "./measure.ts";
import { measureFindings } from "./measureFindings.ts";
import type { Finding, UseStrip } from "./types.ts";

/** The measures of one set with what was read of them. */
export interface ReadMeasures {
  watches: Watch[];
  /** Names of the checks. */
  checks: string[];
  /** Check, subject and sense of every watched measure. */
  words: string;
  /** Value and limit of every watched measure at some poses. */
  watchedAt(poses: readonly Pose[]): Float64Array;
  /** Findings over the stored poses of a run. */
  findings(run: SetRun, stored: readonly Pose[]): Finding[];
  strips(stored: readonly Pose[]): UseStrip[];
}

/** Makes the measures that are read at every stored pose. */
export function readMeasures(ctx: SetContext, checks: CheckList): ReadMeasures {
  const measures = checks.makers.flatMap((make) => make(ctx));
  // One reading per measure and pose, shared by the watches, the strips and the findings.
  const readings = new WeakMap<Pose, (Reading | undefined)[]>();
  const read = (pose: Pose, k: number): Reading => {
    let list = readings.get(pose);
    if (!list) {
      list = new Array(measures.length);
      readings.set(pose, list);
    }
    let r = list[k];
    if (!r) {
      r = measures[k].read(pose);
      list[k] = r;
    }
    return r;
  };
  const watched = measures.flatMap((m, k) => (m.watched ? [{ m, k }] : []));
  const usesOf = (k: number, stored: readonly Pose[]) =>
    Float64Array.from(stored, (pose) => useOf(measures[k], read(pose, k)));
  return {
    watches: watched.map(({ m, k }) => ({
      check: m.check,
      subject: m.subject,
      margin: (pose) => {
        const r = read(pose, k);
        return Number.isNaN(r.value) ? Number.NaN : marginOf(m, r);
      },
    })),
    checks: [...new Set(measures.map(({ check }) => check))],
    words: JSON.stringify(watched.map(({ m }) => [m.check, m.subject, m.sense])),
    watchedAt: (poses) => {
      const out = new Float64Array(2 * poses.length * watched.length);
      let at = 0;
      for (const pose of poses)
        for (const { k } of watched) {
          const { value, limit } = read(pose, k);
          out[at++] = value;
          out[at++] = limit;
        }
      return out;
    },
    findings: (run, stored) =>
      measures.flatMap((m, k) => measureFindings(ctx, run, m, (i) => read(stored[i], k), usesOf(k, stored))),
    strips: (stored) =>
      measures.flatMap((m, k) =>
        m.strip
          ? [
              {
                check: m.check,
                subject: m.subject,
                kind: m.kind,
                limitWords: limitWords(
                  m,
                  stored.map((p) => read(p, k)),
                ),
                use: usesOf(k, stored),
              },
            ]
          : [],
      ),
  };
}

/** The limit that governs, and who chose it. */
function limitWords(m: Measure, all: Reading[]): string {
  const whose = m.chosenBy === "" ? "" : ` (${m.chosenBy})`;
  const first = all.find((r) => !Number.isNaN(r.value));
  if (!first) return m.unit;
  const varies = all.some(
    (r) => !Number.isNaN(r.value) && Math.abs(r.limit - first.limit) > 1e-9 * Math.abs(first.limit),
  );
  return varies
    ? `limit by pose, ${m.unit}${whose}`
    : `limit ${(first.limit * m.factor).toFixed(m.digits)} ${m.unit}${whose}`;
}
