// Hand values of the checks at a stance, each with the limit it meets.

import type { Plan } from "../../../src/plan/index.ts";
import { type Across, across, distance, leanAt } from "./lean.ts";
import { type Train, trainOf } from "./levers.ts";
import { chartEnd, hangs, pickOf, radius, rated } from "./reach.ts";
import { about, exactly, hull, less, plus, pushed, type Span, size, times } from "./span.ts";
import type { Hook, Stance } from "./stance.ts";
import { tippingRatio } from "./tipping.ts";
import type { Weight } from "./weights.ts";
import { pushOf } from "./wind.ts";

const G = 9.80665;

/** Value and limit of a check, in the unit of its findings; `least` is a value that must not be fallen below. */
export interface Entry {
  check: string;
  subject: string;
  value: Span;
  limit: Span;
  least?: boolean;
}

const kN = (s: Span): Span => times(s, 1e-3);

/** Part of the chart with two hooks carrying: 75 % of it, or 20 % more capacity than load; the lower rule governs. */
const TANDEM = Math.min(0.75, 1 / 1.2);

function hookEntries(plan: Plan, s: Stance): Entry[] {
  const out: Entry[] = [];
  const { far, near } = s.hooks;
  for (const kind of ["far", "near"] as Hook[]) {
    const net = s.hooks[kind];
    if (!net) continue;
    const subject = `${kind} crane`;
    const tip = s.tips[kind];
    const rope = s.between ? 0.02 : 0.01;
    const gross = plus(net, about(hangs(plan, kind, tip, s.picks), rope));
    const r = radius(plan, kind, tip, gross);
    out.push({ check: "chart left", subject, value: r, limit: exactly(chartEnd(plan, kind)) });
    const rig = plan.rigging.find((x) => x.id === pickOf(plan, kind).rigging);
    out.push({
      check: "rigging load",
      subject,
      value: kN(net),
      limit: exactly(rig?.ratedLoad_kN ?? Number.NaN),
    });
    const chart = rated(plan, kind, r);
    if (!chart) continue;
    const both = far && near && far.low > 0 && near.low > 0;
    const one = !far || !near || far.high === 0 || near.high === 0;
    const limit = both ? times(chart, TANDEM) : one ? chart : { low: chart.low * TANDEM, high: chart.high };
    out.push({ check: "hook load", subject, value: kN(gross), limit: kN(limit) });
  }
  return out;
}

function trainEntries(plan: Plan, s: Stance, moment: Partial<Record<Train, Span>>): Entry[] {
  const out: Entry[] = [];
  for (const id of ["rear", "front"] as Train[]) {
    const share = s.trains[id];
    if (!share) continue;
    const t = trainOf(plan, id);
    const gross = plus(share, exactly(t.mass_t * 1000 * G));
    const wheels = 2 * t.lines;
    const side = t.allowedSide_kN ?? Number.NaN;
    // Grade and the pull of a leaning line turn the deck: 11 kN at bunk height over the 4 m between its groups.
    const put = (check: string, subject: string, value: Span, limit: number) => {
      out.push({ check, subject, value: kN(value), limit: exactly(limit) });
    };
    const aft = t.groups.find((g) => g.name === `${id} aft`)?.wheels.length ?? Number.NaN;
    const fore = t.groups.find((g) => g.name === `${id} left`)?.wheels.length ?? Number.NaN;
    const deck = { low: -6e3, high: 6e3 };
    // Bunks at the middle of the deck: every wheel the same but for the moment, which the fore groups hold.
    const behind = plus(times(gross, aft / wheels), deck);
    put("group load", `${id} aft`, behind, side * aft);
    const M = moment[id];
    if (M) {
      const turn = times(M, 1 / t.gauge_m);
      const quarter = plus(times(gross, fore / wheels), deck);
      const left = pushed(plus(quarter, turn));
      const right = pushed(less(quarter, turn));
      put("group load", `${id} left`, left, side * fore);
      put("group load", `${id} right`, right, side * fore);
      const per = [times(behind, 1 / aft), times(left, 1 / fore), times(right, 1 / fore)];
      put(
        "side load",
        id,
        { low: Math.max(...per.map((x) => x.low)), high: Math.max(...per.map((x) => x.high)) },
        side,
      );
      put(
        "line load",
        id,
        {
          low: Math.max(2 * per[0].low, per[1].low + per[2].low),
          high: Math.max(2 * per[0].high, (2 * quarter.high) / fore),
        },
        t.allowedLine_kN,
      );
      const arm = t.gauge_m / 2;
      out.push({
        check: "left-right",
        subject: id,
        value: times({ low: size(M).low / (arm * gross.high), high: size(M).high / (arm * gross.low) }, 100),
        limit: exactly(25),
      });
      if (t.bunkRated_kN !== undefined) {
        // At the bunks: half, and the moment over the girders' distance; less of it than at the path, as they are higher.
        const couple = times(hull(M, exactly(0)), 1 / distance(plan));
        put(
          "bunk load",
          id,
          { low: share.low / 2, high: share.high / 2 + size(couple).high + 15e3 },
          t.bunkRated_kN,
        );
      }
    }
    const stroke = s.strokes[id];
    out.push({
      check: "stroke",
      subject: id,
      value: times(stroke ?? { low: 0, high: 0.55 * (t.strokeDown_mm / 1000) }, 1e5 / t.strokeDown_mm),
      limit: exactly(95),
    });
  }
  return out;
}

/** Lean of the set's middle against true level, %. */
function leanEntry(plan: Plan, ends: Across["ends"]): Entry[] {
  if (!ends) return [];
  const pieces = plan.sets[0].girders[0].pieces;
  const lean = leanAt(ends, pieces[pieces.length - 1].to_m / 2);
  return [{ check: "set lean", subject: "set", value: times(size(lean), 100), limit: exactly(2) }];
}

function bearingEntries(plan: Plan, s: Stance): Entry[] {
  if (!s.bearings) return [];
  const { near, far } = s.bearings;
  return plan.site.bearings.map((b) => {
    const pair = b.line === "near" ? near : far;
    // Girder by girder, or all on one until the other one touches.
    const value: Span = s.between
      ? { low: 0, high: pair.high }
      : { low: 0.3 * pair.low, high: 0.7 * pair.high };
    return {
      check: "bearing load",
      subject: `${b.line} ${b.girder}`,
      value: kN(value),
      limit: exactly(b.ratedLoad_kN),
    };
  });
}

function tippingEntry(plan: Plan, w: Weight, s: Stance): Entry[] {
  const { rear, front } = s.trains;
  if (!rear || !front || s.hooks.far?.high || s.between) return [];
  const ratio = tippingRatio(plan, w, s.rearEnd);
  return [{ check: "tipping", subject: "set", value: about(ratio, 0.03), limit: exactly(1.5), least: true }];
}

/** Everything that hand statics say at a stance; a check that is not named is not judged there. */
export function entriesAt(plan: Plan, w: Weight, s: Stance): Entry[] {
  const { moments, ends } = across(plan, w, s);
  return [
    ...hookEntries(plan, s),
    ...trainEntries(plan, s, moments),
    ...leanEntry(plan, ends),
    ...bearingEntries(plan, s),
    ...tippingEntry(plan, w, s),
  ];
}

/** What wind does across at once: lean, and the loads of the groups left and right. */
const ACROSS: ReadonlySet<string> = new Set(["set lean", "group load", "side load"]);

/** What hand statics say at a stance in the wind limit of its step, the worse of both ways; nothing where it has none. */
export function entriesInWind(plan: Plan, w: Weight, s: Stance): Entry[] {
  const V = plan.sets[0].steps[s.step].windLimit_m_per_s;
  if (V === undefined) return [];
  const [left, right] = ([1, -1] as const).map((toward) => {
    const { moments, ends } = across(plan, w, s, pushOf(plan, V, toward));
    if (ends === null) return [];
    return [...trainEntries(plan, s, moments), ...leanEntry(plan, ends)].filter((e) => ACROSS.has(e.check));
  });
  return left.flatMap((e) => {
    const other = right.find((o) => o.check === e.check && o.subject === e.subject);
    if (other === undefined) return [];
    const value = {
      low: Math.max(e.value.low, other.value.low),
      high: Math.max(e.value.high, other.value.high),
    };
    return [{ ...e, value }];
  });
}
