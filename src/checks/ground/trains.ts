// Transporters on the ground: where every axle line stands, what it stands on, and what it puts there.

import { rectangle } from "../../mechanics/index.ts";
import { byId, type Plan, type Transporter } from "../../plan/index.ts";
import { type Pose, type SetContext, wheelsOf } from "../../sequence/index.ts";
import { type Allowable, allowableAt } from "./allowable.ts";

/** One axle-line side. */
export interface Wheel {
  id: string;
  line: number;
  /** From the middle of the deck, m. */
  x: number;
  y: number;
  /** Place of its force among the supports. */
  column: number;
}

/** A transporter with what of its ground is the same at all poses. */
export interface Train {
  t: Transporter;
  /** Place in the plan, as `transporters[0]`. */
  path: string;
  wheels: Wheel[];
  /** Area over which one axle-line side is spread, m: along and across, and what it is. */
  spread: { length: number; width: number; by: "spread area" | "shadow" };
  /** What touches the ground of one axle-line side, m: its tyre print, or else a wheel's diameter by its part of the deck. */
  print: { length: number; width: number };
}

/** The set's transporters. */
export function trainsOf(ctx: SetContext): Train[] {
  return ctx.set.onTransporters.map((on) => {
    const t = byId(ctx.plan.transporters, on.transporter);
    const { spreadArea, tyrePrint } = t;
    // Spread areas reach at most to those of the next line and of the other side.
    const spread: Train["spread"] = spreadArea
      ? {
          length: Math.min(spreadArea.length_m, t.pitch_m),
          width: Math.min(spreadArea.width_m, t.gauge_m),
          by: "spread area",
        }
      : { length: t.pitch_m, width: t.deckWidth_m / 2, by: "shadow" };
    const side = Math.max(t.deckWidth_m - t.gauge_m, 0);
    return {
      t,
      path: `transporters[${ctx.plan.transporters.indexOf(t)}]`,
      wheels: wheelsOf(ctx.plan, t.id).map((w) => ({
        ...w,
        line: Number.parseInt(w.id, 10),
        column: ctx.supportIndex.get(`cylinder ${t.id}:${w.id}`) ?? -1,
      })),
      spread,
      print: tyrePrint
        ? { length: tyrePrint.length_m, width: tyrePrint.width_m }
        : { length: t.wheelDiameter_m, width: side },
    };
  });
}

/** Chainage and y of the middle of a train's deck at a pose; null where it is not part of it. */
export function deckAt(train: Train, pose: Pick<Pose, "situation">): [number, number] | null {
  const { situation } = pose;
  for (const one of situation.trains)
    if (one.id === train.t.id)
      return [situation.rearEnd + one.deckAt + one.gone[0], situation.across + one.gone[1]];
  return null;
}

/** Rectangle around all tyres of a train. */
export function trainArea(train: Train, [x, y]: readonly [number, number]) {
  const { t, print } = train;
  return rectangle(x, y, (t.lines - 1) * t.pitch_m + print.length, t.gauge_m + print.width);
}

/** A stretch of the path between two of its points, with the lower of what both allow. */
export interface Zone {
  from: number;
  to: number;
  /** Null where one of both points says nothing. */
  allowable: Allowable | null;
}

/** The stretches of the path in order. */
export function zonesOf(plan: Plan): Zone[] {
  const { points } = plan.site.path;
  return points.slice(1).map((b, i) => {
    const a = points[i];
    const first = allowableAt(`site.path.points[${i}]`, a);
    const second = allowableAt(`site.path.points[${i + 1}]`, b);
    const allowable = first && second ? (second.value < first.value ? second : first) : null;
    return { from: a.chainage_m, to: b.chainage_m, allowable };
  });
}

/** The stretch that a chainage lies on; null beyond the path. */
export function zoneAt(zones: readonly Zone[], x: number): Zone | null {
  for (const zone of zones) if (x <= zone.to) return x >= zone.from ? zone : null;
  return null;
}
