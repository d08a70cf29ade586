// What a machine puts on a structure below it at a pose: an axle line, a pressure; and what comes above it between two poses.

import { pressureAtDepth, spreads } from "../../mechanics/index.ts";
import { hookName, type Underfoot } from "../../plan/index.ts";
import { type Pose, type SetContext, STRAIGHT } from "../../sequence/index.ts";
import { constant, field, METRE, type Recorder, solved, trace, tracesIn } from "../trace.ts";
import { recordSpread } from "./axlePressure.ts";
import { acrossOf, areaInPlan, during, meet, meetDuring, within } from "./meet.ts";
import { movedAt, type Standing, standingOf } from "./standing.ts";
import { type Judged, judgedOf, trackPress, trackPressures } from "./trackPressure.ts";
import { belowMats, spreadLength } from "./tracks.ts";
import { deckAt, type Train, trainsOf } from "./trains.ts";

/** A load upon a structure. */
export interface Load {
  /** N or Pa. */
  value: number;
  /** What it is, such as 'axle line 3 of front'. */
  name: string;
  /** Writes down how it came about: gives its symbol, null where it has no trace. */
  record: (rec: Recorder) => string | null;
}

/** What of one machine stands above a structure; null for a load that is not known. */
export interface Above {
  line: Load | null;
  pressure: Load | null;
}

/**
 * What is above a structure within a stretch between two poses: when, in parts of the stretch; whether both poses show it;
 * the greater load of both ends; and what it may come to between them.
 */
export interface Passage {
  from: number;
  to: number;
  shown: boolean;
  line: number;
  pressure: number;
  lineMost: number;
  pressureMost: number;
}

/** So much more of the weight on the hook of a crane that stands presses below its tracks by less than this part more. */
const MORE = 0.05;

/**
 * What a quantity may come to between two poses. A curve that turns one way departs from its chord at most twice as far as
 * in the middle; `unknown` stands for that where the middle is not solved.
 */
const mostOf = (a: number, b: number, middle: number | null, unknown: number): number =>
  Math.max(a, b) + (middle === null ? unknown : 2 * Math.abs(middle - (a + b) / 2));

/** One machine over one structure. */
export interface Over {
  machine: string;
  /** What of it stands above at a pose; null for nothing. */
  at: (pose: Pose) => Above | null;
  /** What is above it between two neighbouring poses of a step, in one order; closer with the pose in the middle of both. */
  between: (a: Pose, b: Pose, middle: Pose | null) => Passage[];
}

/** The set's machines over a structure. */
export function loadersOf(ctx: SetContext, one: Underfoot): Over[] {
  const trains = trainsOf(ctx);
  return standingOf(ctx).flatMap((machine) => {
    if (machine.of === "crane") return [craneOver(ctx, machine, one)];
    const train = trains.find((x) => x.t.id === machine.name);
    return train ? [trainOver(ctx, train, one)] : [];
  });
}

/** Writes down how deep a structure lies: z. */
function recordCover(rec: Recorder, ctx: Pick<SetContext, "plan">, one: Underfoot): void {
  const path = `site.underfoot[${ctx.plan.site.underfoot.indexOf(one)}].cover_m`;
  const { cover_m: z } = one;
  if (z === undefined) constant(rec, "z", 0, "m", `cover of ${one.name}`, "not stated: none is counted");
  else field(rec, "z", z, `cover of ${one.name}`, path, z, METRE);
}

/** Where the middle of a deck stands as long as one of its wheels is above. */
interface Reach {
  /** Place of the wheel's force among the supports. */
  column: number;
  along: [number, number];
  across: [number, number];
}

/** A train: whole axle lines, and the pressure of one side over its print or shadow, spread two to one through the cover. */
function trainOver(ctx: SetContext, train: Train, one: Underfoot): Over {
  const { t, print, wheels } = train;
  const on = t.tyrePrint ? print : train.spread;
  const cover = one.cover_m ?? 0;
  const press = (F: number) => pressureAtDepth(F, on.length, on.width, cover, spreads.twoToOne);
  const [y0, y1] = acrossOf(one);
  // Where the middle of the deck stands as long as a wheel's print is above: between these, along and across.
  const reach = wheels.map(
    (w): Reach => ({
      column: w.column,
      along: [one.from_m - print.length / 2 - w.x, one.to_m + print.length / 2 - w.x],
      across: [y0 - print.width / 2 - w.y, y1 + print.width / 2 - w.y],
    }),
  );
  // A group's cylinders share its force alike: each goes as straight as the group.
  const crooked = STRAIGHT * ctx.model.mass * ctx.gravity;
  const first = Math.min(...reach.map((r) => r.along[0]));
  const last = Math.max(...reach.map((r) => r.along[1]));
  const record = (rec: Recorder, F: number, name: string): string => {
    solved(rec, "F", F, "N", name);
    if (t.tyrePrint) {
      const { length_m, width_m } = t.tyrePrint;
      field(rec, "l_s", length_m, "print along", `${train.path}.tyrePrint.length_m`, length_m, METRE);
      field(rec, "w_s", width_m, "print across", `${train.path}.tyrePrint.width_m`, width_m, METRE);
    } else recordSpread(rec, train);
    recordCover(rec, ctx, one);
    trace(rec, "q", press(F), "F/((l_s + z)*(w_s + z))", "Pa", `pressure on ${one.name}, ${TWO_TO_ONE}`);
    return "q";
  };
  return {
    machine: t.id,
    at: (pose) => {
      const deck = deckAt(train, pose);
      if (deck === null || deck[0] <= first || deck[0] >= last) return null;
      const [x, y] = deck;
      let line = -1;
      let heavy = 0;
      let side = -1;
      let name = "";
      for (let k = 0; k < wheels.length; k += 2) {
        let sum = 0;
        let any = false;
        for (let n = k; n < k + 2; n++) {
          const { column, along, across } = reach[n];
          const F = pose.forces[column];
          if (!(F >= 0) || x <= along[0] || x >= along[1] || y <= across[0] || y >= across[1]) continue;
          any = true;
          sum += F;
          if (F > side) {
            side = F;
            name = wheels[n].id;
          }
        }
        if (any && sum > line) {
          line = sum;
          heavy = wheels[k].line;
        }
      }
      if (line < 0) return null;
      const lineName = `axle line ${heavy}`;
      const sideName = `axle line side ${name} of ${t.id}`;
      return {
        line: {
          value: line,
          name: lineName,
          record: (rec) => {
            solved(rec, "F", line, "N", `${lineName} of ${t.id}, what of it is above ${one.name}`);
            return "F";
          },
        },
        pressure: { value: press(side), name: sideName, record: (rec) => record(rec, side, sideName) },
      };
    },
    between: (a, b, middle) => {
      const [p, q] = [deckAt(train, a), deckAt(train, b)];
      const out: Passage[] = [];
      if (p === null || q === null) return out;
      if (Math.max(p[0], q[0]) <= first || Math.min(p[0], q[0]) >= last) return out;
      for (let k = 0; k < reach.length; k += 2) {
        const sides = [reach[k], reach[k + 1]].flatMap(({ column, along, across }) => {
          const time = within(during(p[0], q[0], along), during(p[1], q[1], across));
          const [Fa, Fb] = [a.forces[column], b.forces[column]];
          const F = Math.max(Fa, Fb);
          if (time === null || !(F >= 0)) return [];
          return [{ time, F, most: mostOf(Fa, Fb, middle?.forces[column] ?? null, crooked) }];
        });
        const all = (of: "F" | "most") => sides.reduce((sum, side) => sum + side[of], 0);
        const heavier = (of: "F" | "most") => press(Math.max(0, ...sides.map((side) => side[of])));
        for (const { time } of sides)
          out.push({
            from: time[0],
            to: time[1],
            shown: time[0] <= 0 && time[1] >= 1,
            line: all("F"),
            pressure: heavier("F"),
            lineMost: all("most"),
            pressureMost: heavier("most"),
          });
      }
      return out;
    },
  };
}

/** A crane: the most pressed strip of its track, spread two to one. */
function craneOver(ctx: SetContext, machine: Extract<Standing, { of: "crane" }>, one: Underfoot): Over {
  const t = judgedOf(ctx).find((c) => hookName(c.crane) === machine.name);
  const onGround = trackPressures(ctx).find((m) => m.subject === machine.name);
  const area = areaInPlan(one);
  const name = `track of ${machine.name}`;
  const load = (crane: Judged, pose: Pose): Load | null => {
    const value = trackBelow(crane, trackPress(crane, pose), one.cover_m ?? 0);
    if (!(value > 0)) return null;
    const record = (rec: Recorder): string | null => {
      const own = onGround?.trace?.(pose)?.value;
      if (own === undefined) return null;
      const { path, mats } = crane;
      const { trackLength_m: l, trackWidth_m: w = 0 } = crane.crane;
      rec.put(own);
      field(rec, "l_t", l, "length of a track", `${path}.trackLength_m`, l, METRE);
      // Of what the pressure on the ground was worked out of, the length that its mats spread it over.
      for (const part of tracesIn(own)) if (part.symbol === "L_e") rec.put(part);
      if (mats === null) field(rec, "L_e", w, "width of a track", `${path}.trackWidth_m`, w, METRE);
      recordCover(rec, ctx, one);
      const words = `pressure on ${one.name}, ${TWO_TO_ONE}`;
      trace(rec, "q_z", value, `${own.symbol}*L_e*l_t/((L_e + z)*(l_t + z))`, "Pa", words);
      return "q_z";
    };
    return { value, name, record };
  };
  const pressAt = (pose: Pose): number => (t ? (load(t, pose)?.value ?? 0) : 0);
  const { crane } = machine;
  return {
    machine: machine.name,
    at: (pose) =>
      machine.areas(pose).some((a) => meet(a, area))
        ? { line: null, pressure: t ? load(t, pose) : null }
        : null,
    between: (a, b, middle) => {
      const [p, q] = [movedAt(crane, a), movedAt(crane, b)];
      const [before, after] = [pressAt(a), pressAt(b)];
      const unknown =
        p[0] === q[0] && p[1] === q[1] ? MORE * Math.max(before, after) : Number.POSITIVE_INFINITY;
      const pressureMost = mostOf(before, after, middle && pressAt(middle), unknown);
      return machine.areas(a).flatMap((track): Passage[] => {
        const part = meetDuring(track, [q[0] - p[0], q[1] - p[1]], area);
        if (part === null) return [];
        const [from, to] = part;
        const loads = { line: 0, lineMost: 0, pressure: Math.max(before, after), pressureMost };
        return [{ from, to, shown: from <= 0 && to >= 1, ...loads }];
      });
    },
  };
}

const TWO_TO_ONE = "spread two to one through its cover";

/** Pressure of a crane's track on a structure below a cover, Pa, for that right below the track, Pa; NaN for none. */
function trackBelow(t: Judged, press: number, cover: number): number {
  if (!Number.isFinite(press)) return press;
  const { trackLength_m: length, trackWidth_m = 0 } = t.crane;
  const width = t.mats ? spreadLength(t.mats, press) : trackWidth_m;
  return (belowMats(t.mats, press) * width * length) / ((width + cover) * (length + cover));
}
