// Compares an answer of ours with a run of the finite-element program.

import { answerOf, droopAt, type Solution } from "../../src/mechanics/index.ts";
import type { StaticRun } from "./program.ts";
import { supportsOf } from "./supports.ts";

/** What a comparison found; forces in N, lengths in m, differences as shares of 1. */
export interface Comparison {
  /** Greatest force of a support. */
  largest: number;
  /** Worst difference of the forces that are judged, as a share of it, and where. */
  force: number;
  where: string;
  /** The same of single bunks where they are not judged; else null. */
  bunk: number | null;
  /** Worst difference of the droops, as a share of `bend`. */
  droop: number;
  /** Greatest distance of a droop from the straight line through its girder over the outermost supports. */
  bend: number;
  /** Supports that pull, or overlap while our answer says that they are clear. */
  contradictions: string[];
  closed: number;
  open: number;
}

/** Supports; what else is printed (pendulum stiffness, droops) is not a support. */
const support = /^(bunk|group|bearing|hoist|line|lashing) /;

/** Compares the two; `bunksApart` keeps bunks out of the worst difference. */
export function compare(solution: Solution, run: StaticRun, bunksApart: boolean): Comparison {
  const answer = answerOf(solution);
  const found: Comparison = {
    largest: 0,
    force: 0,
    where: "",
    bunk: bunksApart && solution.state.trains ? 0 : null,
    contradictions: [],
    closed: 0,
    open: 0,
    ...compareDroops(solution, run),
  };
  const closed = [...run.forces].filter(([name]) => support.test(name));
  for (const [name] of closed) found.largest = Math.max(found.largest, answer.forces[name]);
  for (const [name, theirs] of closed) {
    found.closed++;
    if (theirs < 0) found.contradictions.push(`${name} pulls with ${theirs} N`);
    const apart = Math.abs(answer.forces[name] - theirs) / found.largest;
    if (Number.isNaN(apart)) throw new Error(`our answer has no force named ${name}`);
    if (bunksApart && name.startsWith("bunk ")) found.bunk = Math.max(found.bunk ?? 0, apart);
    else if (apart > found.force) {
      found.force = apart;
      found.where = name;
    }
  }
  for (const [name, gap] of run.values) {
    if (run.forces.has(name) || !support.test(name)) continue;
    found.open++;
    if (gap < 0) found.contradictions.push(`${name} overlaps by ${-gap} m`);
  }
  return found;
}

/** Droops in total, with what the supports give, against the bending alone: stricter than against the total. */
function compareDroops(solution: Solution, run: StaticRun): { droop: number; bend: number } {
  const { state } = solution;
  let bend = 0;
  let apart = 0;
  state.girders.forEach((g, girder) => {
    const ours = (x: number) => droopAt(solution, girder, x);
    const supports = supportsOf(state, g.name);
    const [rear, front] = [Math.min(...supports), Math.max(...supports)];
    const slope = (ours(front) - ours(rear)) / (front - rear);
    const stations = (state.ask?.droopAt ?? []).filter(
      (x) => x >= g.pieces[0].from && x <= g.pieces[g.pieces.length - 1].to,
    );
    stations.forEach((x, i) => {
      const theirs = run.values.get(`droop ${g.name} ${i}`);
      if (theirs === undefined) throw new Error(`no droop of ${g.name} at ${x} m was printed`);
      bend = Math.max(bend, Math.abs(ours(x) - ours(rear) - slope * (x - rear)));
      apart = Math.max(apart, Math.abs(ours(x) - theirs));
    });
  });
  return { droop: apart / bend, bend };
}
