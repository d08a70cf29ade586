// Packing above the bunks against the final seats: temporary supports at the levels that the bearings will have.

import {
  type BearingLine,
  bearingName,
  bearingsOf,
  bearingTop,
  byId,
  camberAt,
  type PlanSet,
  seatOf,
} from "../../plan/index.ts";
import { pathLevel, type SetContext } from "../../sequence/index.ts";
import { dataMeasure } from "../dataMeasure.ts";
import { limitOf } from "../limits.ts";
import { type DataMeasure, NOT_HERE, type Reading } from "../measure.ts";
import { constant, field, METRE, MM, type Recorder, trace } from "../trace.ts";
import { limitInMetres } from "./seatLevels.ts";

/** A girder on a transporter at the start: packing as planned and as the final seats ask for, mm. */
export interface PackingRow {
  transporter: string;
  girder: string;
  planned: number;
  /** Mean over its bunks; the girder that needs least on this transporter has 0. */
  asked: number;
  /** The same bunk by bunk, in the order of the transporter's bunks. */
  bunks: number[];
}

/** A transporter that a set stands on at its start. */
type On = PlanSet["onTransporters"][number];

/**
 * What every girder needs above the bunks of its transporters, so that the unstressed set stands on them as it will on
 * its final seats: the line from its near to its far seat, and its camber, against a deck that lies on the path where it
 * starts. Only what differs between the girders of one transporter counts; groups make up for the rest.
 */
export function packingOf(ctx: SetContext): PackingRow[] {
  return ctx.set.onTransporters.flatMap((on) => {
    const rows = ctx.set.girders.flatMap((g, i) => {
      const bunks = levelsOf(null, ctx, on, i);
      if (bunks === null) return [];
      return [{ transporter: on.transporter, girder: g.line, planned: on.packing_mm[g.line] ?? 0, bunks }];
    });
    const means = rows.map((r) => meanOf(r.bunks));
    const least = Math.min(...means);
    return rows.map((r, k) => ({
      ...r,
      asked: 1000 * (means[k] - least),
      bunks: r.bunks.map((b) => 1000 * (b - least)),
    }));
  });
}

const meanOf = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;

/**
 * Level of a girder's soffit above the deck at every bunk of a transporter, m, up to what is the same for all girders;
 * NaN without its bearings, null where the plan does not say which stations come to lie on the bearing lines.
 */
function levelsOf(rec: Recorder | null, ctx: SetContext, on: On, i: number): number[] | null {
  const { plan, set } = ctx;
  const soles = set.soleStations_m;
  if (soles === undefined) return null;
  const g = set.girders[i];
  const machine = byId(plan.transporters, on.transporter);
  const at = `sets[${plan.sets.indexOf(set)}]`;
  const [near, far] = (["near", "far"] as const).map((line) => topOf(rec, ctx, line, i));
  field(
    rec,
    "s_near",
    soles.near,
    "station of the near soles",
    `${at}.soleStations_m.near`,
    soles.near,
    METRE,
  );
  field(rec, "s_far", soles.far, "station of the far soles", `${at}.soleStations_m.far`, soles.far, METRE);
  const deckAt = on.deckAt_m;
  const deck = `${at}.onTransporters[${set.onTransporters.indexOf(on)}].deckAt_m`;
  field(rec, "s_deck", deckAt, "station of the deck's middle", deck, deckAt, METRE);
  field(rec, `y_${i}`, g.y_m, `girder ${g.line} to the left`, `${at}.girders[${i}].y_m`, g.y_m, METRE);
  const { crossfall } = pathLevel(plan, set.start.rearEnd_m + deckAt);
  constant(rec, "q", crossfall, "1", "crossfall of the path below the transporter", "site.path");
  const camber = (symbol: string, s: number) =>
    constant(
      rec,
      symbol,
      camberAt(g, s) / 1000,
      "m",
      `camber of ${g.line} at ${s} m`,
      `${at}.girders[${i}].camber_mm`,
    );
  const [c_near, c_far] = [camber(`c_near_${i}`, soles.near), camber(`c_far_${i}`, soles.far)];
  return machine.bunks.map((b, k) => {
    const path = `transporters[${plan.transporters.indexOf(machine)}].bunks[${k}].at_m`;
    field(rec, `b_${k}`, b.at_m, `bunk ${k + 1} from the deck's middle`, path, b.at_m, METRE);
    const s = deckAt + b.at_m;
    const t = trace(
      rec,
      `t_${k}`,
      (s - soles.near) / (soles.far - soles.near),
      `(s_deck + b_${k} - s_near)/(s_far - s_near)`,
      "1",
      `part of the way from near to far soles at bunk ${k + 1}`,
    );
    // The soles lie on the seats: camber counts from the line between them.
    const c = camber(`c_${i}_${k}`, s);
    const level = (1 - t) * (near - c_near) + t * (far - c_far) + c + crossfall * g.y_m;
    return trace(
      rec,
      `a_${i}_${k}`,
      level,
      `(1 - t_${k})*(z_near_${i} - c_near_${i}) + t_${k}*(z_far_${i} - c_far_${i}) + c_${i}_${k} + q*y_${i}`,
      "m",
      `soffit of ${g.line} above the deck at bunk ${k + 1}, up to what is the same for all`,
    );
  });
}

/** Top of a girder's bearing as it stands, m: seat with its shims and the bearing's own height; NaN without a bearing. */
function topOf(rec: Recorder | null, { plan, set }: SetContext, line: BearingLine, i: number): number {
  const { line: girder } = set.girders[i];
  const bearing = bearingsOf(plan, set).find((b) => bearingName(b) === `${line} ${girder}`);
  if (bearing === undefined) return Number.NaN;
  const symbol = `z_${line}_${i}`;
  const seat = seatOf(plan, set, line, girder);
  const surveyed = seat !== null && seat.asBuilt_m !== null;
  const level = (surveyed ? seat.asBuilt_m : seat?.design_m) ?? 0;
  const path = `site.seats[${seat === null ? -1 : plan.site.seats.indexOf(seat)}]`;
  const words = `seat ${line} ${girder}, ${surveyed ? "as built" : "as designed"}`;
  const height = (bearing.height_mm ?? 0) / 1000;
  const shims = (seat?.shims_mm ?? 0) / 1000;
  const parts = [`${symbol}_seat`];
  if (seat === null) constant(rec, parts[0], 0, "m", words, "no seat in the plan");
  else field(rec, parts[0], level, words, `${path}.${surveyed ? "asBuilt_m" : "design_m"}`, level, METRE);
  const stated = (name: string, value: number, words: string, path: string, mm: number | undefined) => {
    if (mm === undefined) return;
    field(rec, `${symbol}_${name}`, value, words, path, mm, MM);
    parts.push(`${symbol}_${name}`);
  };
  const own = `site.bearings[${plan.site.bearings.indexOf(bearing)}].height_mm`;
  stated("bearing", height, "height of the bearing", own, bearing.height_mm);
  stated("shims", shims, "shims on the seat", `${path}.shims_mm`, seat?.shims_mm);
  const top = bearingTop(plan, set, bearing, "it stands");
  return trace(rec, symbol, top, parts.join(" + "), "m", `top of bearing ${line} ${girder}`);
}

/** How far the planned packing of a girder is off what is asked for, mm, the mean of its transporter taken off both. */
export function packingOff(rows: readonly PackingRow[], row: PackingRow): number {
  const mine = rows.filter((r) => r.transporter === row.transporter);
  const mean = (of: (r: PackingRow) => number) => mine.reduce((sum, r) => sum + of(r), 0) / mine.length;
  return row.planned - mean((r) => r.planned) - (row.asked - mean((r) => r.asked));
}

/** Transporters on which the girders do not stand as they will on their seats: the girder that is furthest off. */
export function packingMeasures(ctx: SetContext): DataMeasure[] {
  const limit = limitOf(ctx.plan, "packing");
  if (limit === null) return [];
  const rows = packingOf(ctx).filter((r) => !Number.isNaN(r.asked));
  const of = (on: On) => rows.filter((r) => r.transporter === on.transporter);
  return ctx.set.onTransporters.flatMap((on) => {
    const mine = of(on);
    if (mine.length === 0) return [];
    const asked = mine.map((r) => `${r.girder} ${r.asked.toFixed(1)} mm`).join(", ");
    const planned = mine.map((r) => `${r.girder} ${r.planned} mm`).join(", ");
    return [
      dataMeasure(
        {
          check: "packing",
          set: ctx.set.id,
          subject: on.transporter,
          unit: "mm",
          factor: 1000,
          words: ({ value }) =>
            `packing on ${on.transporter} is up to ${(1000 * value).toFixed(1)} mm off the levels of the final seats: asked for are ${asked}, planned ${planned}`,
          cure: "pack the bunks as asked for, so that the set is no more twisted on them than on its seats",
        },
        (rec) => offReading(rec, ctx, on),
        limit,
      ),
    ];
  });
}

/** The furthest that any girder on a transporter is off what is asked for, each against the mean of them, m. */
function offReading(rec: Recorder | null, ctx: SetContext, on: On): Reading {
  const { plan, set } = ctx;
  const limit = limitOf(plan, "packing");
  const asked: number[] = [];
  const planned: number[] = [];
  for (const [i, g] of set.girders.entries()) {
    const bunks = levelsOf(rec, ctx, on, i);
    if (bunks === null || bunks.some(Number.isNaN)) return NOT_HERE;
    const at = bunks.map((_, k) => `a_${i}_${k}`).join(" + ");
    const words = `mean of it over the bunks, for girder ${g.line}`;
    asked.push(trace(rec, `a_${i}`, meanOf(bunks), `(${at})/${bunks.length}`, "m", words));
    planned.push(plannedOf(rec, ctx, on, g.line, i));
  }
  if (limit === null || asked.length === 0) return NOT_HERE;
  const n = asked.length;
  const all = (name: string) => asked.map((_, i) => `${name}_${i}`).join(" + ");
  const p = trace(rec, "p", meanOf(planned), `(${all("p")})/${n}`, "m", "mean of the planned packing");
  const a = trace(rec, "a", meanOf(asked), `(${all("a")})/${n}`, "m", "mean of the levels asked for");
  const offs = asked.map((own, i) =>
    trace(
      rec,
      `off_${i}`,
      planned[i] - p - (own - a),
      `p_${i} - p - (a_${i} - a)`,
      "m",
      `packing of girder ${set.girders[i].line} off what is asked for`,
    ),
  );
  const formula = `max(${offs.map((_, i) => `abs(off_${i})`).join(", ")})`;
  const value = trace(rec, "off", Math.max(...offs.map(Math.abs)), formula, "m", "the furthest off of them");
  return { value, limit: limitInMetres(rec, limit) };
}

function plannedOf(
  rec: Recorder | null,
  { plan, set }: SetContext,
  on: On,
  girder: string,
  i: number,
): number {
  const mm = on.packing_mm[girder];
  const words = `planned packing of girder ${girder}`;
  if (mm === undefined) return constant(rec, `p_${i}`, 0, "m", words, "none is stated");
  const path = `sets[${plan.sets.indexOf(set)}].onTransporters[${set.onTransporters.indexOf(on)}].packing_mm.${girder}`;
  return field(rec, `p_${i}`, mm / 1000, words, path, mm, MM);
}
