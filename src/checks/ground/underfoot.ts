// Structures underfoot: what of any axle line or track stands or passes above one, against what it may carry, or a call
// for a structure check where nobody said what that is.

import { type Area, pressureAtDepth, rectangle, spreads } from "../../mechanics/index.ts";
import { hookName, type Plan, type Underfoot } from "../../plan/index.ts";
import type { Pose, SetContext, SetRun } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, KN, solved } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { allowableAt } from "./allowable.ts";
import { foundAt, poseWords } from "./found.ts";
import { meet } from "./meet.ts";
import { standingOf } from "./standing.ts";
import { type Judged, judgedOf, pressuresOver } from "./trackPressure.ts";
import { spreadLength } from "./tracks.ts";
import { deckAt, type Train, trainsOf } from "./trains.ts";

const CURE =
  "keep off it, bridge it with plates, or have it checked for this load and give the value with its source";

/** Half of a width that stands for right across. */
const ACROSS = 1e4;

/** The ground above a structure. */
function above(one: Underfoot): Area {
  const [y0, y1] = [one.fromY_m ?? -ACROSS, one.toY_m ?? ACROSS];
  return rectangle((one.from_m + one.to_m) / 2, (y0 + y1) / 2, one.to_m - one.from_m, y1 - y0);
}

/** What stands above a structure at most, N and Pa, and the stored poses at which it does; -1 for nothing. */
interface Worst {
  line: number;
  atLine: number;
  lineName: string;
  pressure: number;
  atPressure: number;
}

const nothing = (): Worst => ({ line: 0, atLine: -1, lineName: "", pressure: 0, atPressure: -1 });

/** Pressure on the structure below one axle-line side, Pa: over its print or shadow, spread two to one through the cover. */
const sidePressure = ({ t, print, spread }: Train, cover: number, F: number): number => {
  const on = t.tyrePrint ? print : spread;
  return pressureAtDepth(F, on.length, on.width, cover, spreads.twoToOne);
};

/** The worst of a train above a structure, between all neighbouring stored poses: the greater load of both counts. */
function worstOfTrain(train: Train, one: Underfoot, stored: readonly Pose[], run: SetRun): Worst {
  const out = nothing();
  const { print, wheels } = train;
  const [y0, y1] = [one.fromY_m ?? -ACROSS, one.toY_m ?? ACROSS];
  for (let i = 0; i < stored.length; i++) {
    const a = deckAt(train, stored[i]);
    const same = i + 1 < stored.length && run.step[i + 1] === run.step[i];
    const b = same ? deckAt(train, stored[i + 1]) : a;
    if (a === null || b === null) continue;
    const [low, high] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
    const [right, left] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
    for (let k = 0; k < wheels.length; k += 2) {
      // A line: its left wheel and its right one.
      if (
        low + wheels[k].x - print.length / 2 >= one.to_m ||
        high + wheels[k].x + print.length / 2 <= one.from_m
      )
        continue;
      for (const j of same ? [i, i + 1] : [i]) {
        let line = 0;
        for (const w of [wheels[k], wheels[k + 1]]) {
          if (left + w.y + print.width / 2 <= y0 || right + w.y - print.width / 2 >= y1) continue;
          const F = stored[j].forces[w.column];
          if (!(F >= 0)) continue;
          line += F;
          const p = sidePressure(train, one.cover_m ?? 0, F);
          if (p > out.pressure) {
            out.pressure = p;
            out.atPressure = j;
          }
        }
        if (line > out.line) {
          out.line = line;
          out.atLine = j;
          out.lineName = `axle line ${wheels[k].line}`;
        }
      }
    }
  }
  return out;
}

/** Pressure of a crane's track on a structure below a cover, Pa; the most pressed strip spreads two to one. */
function trackBelow(t: Judged, pressure: number, cover: number): number {
  const width = t.mats ? spreadLength(t.mats, pressure) : (t.crane.trackWidth_m ?? 0);
  const { trackLength_m: length } = t.crane;
  return (pressure * width * length) / ((width + cover) * (length + cover));
}

/** Everything that stands above a structure, machine by machine. */
export function underfootFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  const { plan } = ctx;
  if (plan.site.underfoot.length === 0) return [];
  const trains = trainsOf(ctx);
  const cranes = judgedOf(ctx);
  const pressures = pressuresOver(ctx, stored);
  return plan.site.underfoot.flatMap((one) => {
    const limits = limitsOf(plan, one);
    const area = above(one);
    return standingOf(ctx).flatMap((machine) => {
      let worst = nothing();
      let unknown = -1;
      if (machine.of === "train") {
        const train = trains.find((x) => x.t.id === machine.name);
        if (train) worst = worstOfTrain(train, one, stored, run);
      } else {
        const crane = cranes.find((t) => hookName(t.crane) === machine.name);
        const known = pressures.get(machine.name);
        stored.forEach((pose, i) => {
          if (!machine.areas(pose).some((a) => meet(a, area))) return;
          if (unknown < 0) unknown = i;
          const p = crane && known ? trackBelow(crane, known[i], one.cover_m ?? 0) : Number.NaN;
          if (p > worst.pressure) {
            worst.pressure = p;
            worst.atPressure = i;
          }
        });
      }
      return said(ctx, run, one, limits, machine.name, worst, unknown);
    });
  });
}

function limitsOf(plan: Plan, one: Underfoot) {
  const path = `site.underfoot[${plan.site.underfoot.indexOf(one)}]`;
  return { path, line: one.allowedLine_kN, pressure: allowableAt(path, one) };
}

function said(
  ctx: SetContext,
  run: SetRun,
  one: Underfoot,
  limits: ReturnType<typeof limitsOf>,
  machine: string,
  worst: Worst,
  unknown: number,
): Finding[] {
  const at = worst.atPressure >= 0 ? worst.atPressure : worst.atLine >= 0 ? worst.atLine : unknown;
  if (at < 0) return [];
  const out: Finding[] = [];
  const base = { check: "structure underfoot", subject: one.name, cure: CURE, source: one.source ?? "plan" };
  const over = (kind: string, i: number, value: number, limit: number, unit: string, words: string) => {
    if (!(value > limit * (1 + 1e-9)) || i < 0) return;
    out.push(
      foundAt(ctx, run, i, {
        ...base,
        id: `structure underfoot:${ctx.set.id}:${one.name}:${machine}:${kind}`,
        level: "stop",
        value,
        limit,
        unit,
        words: `${machine} above ${one.name}: ${words} ${value.toFixed(1)} ${unit} is above the ${limit.toFixed(1)} ${unit} that it may carry (${poseWords(run, i)})`,
      }),
    );
  };
  if (limits.line !== undefined)
    over("line", worst.atLine, worst.line / 1000, limits.line, "kN", `${worst.lineName} with`);
  if (limits.pressure)
    over(
      "pressure",
      worst.atPressure,
      worst.pressure / 1000,
      limits.pressure.value / 1000,
      "kPa",
      "a pressure of",
    );
  if (limits.line !== undefined || limits.pressure) return out;
  const numbers = [
    worst.atLine >= 0 ? `${worst.lineName} of ${(worst.line / 1000).toFixed(1)} kN` : "",
    worst.atPressure >= 0 ? `${(worst.pressure / 1000).toFixed(0)} kPa` : "no pressure known",
  ].filter((w) => w !== "");
  const signed = one.signedOff;
  out.push(
    foundAt(ctx, run, at, {
      ...base,
      id: `structure underfoot:${ctx.set.id}:${one.name}:${machine}`,
      level: signed ? "note" : "caution",
      chosenBy: signed?.by ?? "plan",
      words: signed
        ? `${machine} stands above ${one.name} with ${numbers.join(", ")} (${poseWords(run, at)}): signed for by ${signed.by}`
        : `${machine} stands above ${one.name} with ${numbers.join(", ")} (${poseWords(run, at)}), and nothing says what it may carry: it needs a structure check`,
    }),
  );
  return out;
}

/** The greatest axle line above a structure at one pose against what it allows, for its trace. */
export function linesAbove(ctx: SetContext): Measure[] {
  const trains = trainsOf(ctx);
  return ctx.plan.site.underfoot.flatMap((one) => {
    const { path, line: allowed } = limitsOf(ctx.plan, one);
    if (allowed === undefined) return [];
    return measure({
      check: "structure underfoot",
      subject: one.name,
      kind: "",
      watched: false,
      source: one.source ?? "plan",
      chosenBy: "plan",
      cure: CURE,
      ...traced(ctx, (pose, rec): Reading => {
        let most = -1;
        let name = "";
        for (const train of trains) {
          const at = deckAt(train, pose);
          if (at === null) continue;
          const half = train.print.length / 2;
          for (let k = 0; k < train.wheels.length; k += 2) {
            const x = at[0] + train.wheels[k].x;
            if (x - half >= one.to_m || x + half <= one.from_m) continue;
            const F = pose.forces[train.wheels[k].column] + pose.forces[train.wheels[k + 1].column];
            if (F > most) {
              most = F;
              name = `axle line ${train.wheels[k].line} of ${train.t.id}`;
            }
          }
        }
        if (most < 0) return NOT_HERE;
        solved(rec, "F", most, "N", name);
        field(
          rec,
          "F_a",
          allowed * 1000,
          "line that the structure allows",
          `${path}.allowedLine_kN`,
          allowed,
          KN,
        );
        rec?.ends("F", "F_a");
        return { value: most, limit: allowed * 1000, where: name };
      }),
    });
  });
}
