// Packing above the bunks against the final seats: temporary supports at the levels that the bearings will have.

import { bearingName, bearingsOf, byId, camberAt } from "../../plan/index.ts";
import { pathLevel, type SetContext } from "../../sequence/index.ts";
import { limitOf } from "../limits.ts";
import type { Finding } from "../types.ts";
import { found } from "./found.ts";
import { topsOf } from "./landed.ts";

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

/**
 * What every girder needs above the bunks of its transporters, so that the unstressed set stands on them as it will on
 * its final seats: the line from its near to its far seat, and its camber, against a deck that lies on the path where it
 * starts. Only what differs between the girders of one transporter counts; groups make up for the rest.
 */
export function packingOf(ctx: SetContext): PackingRow[] {
  const { plan, set } = ctx;
  const soles = set.soleStations_m;
  if (soles === undefined) return [];
  const tops = topsOf(ctx, "it stands");
  const bearings = bearingsOf(plan, set);
  const topOf = (name: string) => {
    const i = bearings.findIndex((b) => bearingName(b) === name);
    return i < 0 ? Number.NaN : tops[i];
  };
  return set.onTransporters.flatMap((on) => {
    const machine = byId(plan.transporters, on.transporter);
    const rows = set.girders.map((g): PackingRow => {
      const [near, far] = [topOf(`near ${g.line}`), topOf(`far ${g.line}`)];
      const camber = (s: number) => camberAt(g, s) / 1000;
      const bunks = machine.bunks.map((b) => {
        const s = on.deckAt_m + b.at_m;
        const t = (s - soles.near) / (soles.far - soles.near);
        const chord = near + t * (far - near);
        // The soles lie on the seats: camber counts from the line between them.
        const rise = camber(s) - ((1 - t) * camber(soles.near) + t * camber(soles.far));
        const deck = -pathLevel(plan, set.start.rearEnd_m + on.deckAt_m).crossfall * g.y_m;
        return 1000 * (chord + rise - deck);
      });
      const asked = bunks.reduce((a, b) => a + b, 0) / bunks.length;
      return {
        transporter: on.transporter,
        girder: g.line,
        planned: on.packing_mm[g.line] ?? 0,
        asked,
        bunks,
      };
    });
    const least = Math.min(...rows.map((r) => r.asked));
    return rows.map((r) => ({ ...r, asked: r.asked - least, bunks: r.bunks.map((b) => b - least) }));
  });
}

/** How far the planned packing of a girder is off what is asked for, mm, the mean of its transporter taken off both. */
export function packingOff(rows: readonly PackingRow[], row: PackingRow): number {
  const mine = rows.filter((r) => r.transporter === row.transporter);
  const mean = (of: (r: PackingRow) => number) => mine.reduce((sum, r) => sum + of(r), 0) / mine.length;
  return row.planned - mean((r) => r.planned) - (row.asked - mean((r) => r.asked));
}

/** Transporters on which the girders do not stand as they will on their seats. */
export function packingFindings(ctx: SetContext): Finding[] {
  const limit = limitOf(ctx.plan, "packing");
  if (limit === null) return [];
  const rows = packingOf(ctx).filter((r) => !Number.isNaN(r.asked));
  const transporters = [...new Set(rows.map((r) => r.transporter))];
  return transporters.flatMap((transporter) => {
    const mine = rows.filter((r) => r.transporter === transporter);
    const offs = mine.map((r) => packingOff(rows, r));
    const value = Math.max(...offs.map(Math.abs));
    if (value <= limit.value * (1 + 1e-9)) return [];
    return [
      found(
        ctx.set.id,
        null,
        {
          level: "caution",
          check: "packing",
          subject: transporter,
          value,
          unit: "mm",
          use: value / limit.value,
          words: `packing on ${transporter} is up to ${value.toFixed(1)} mm off the levels of the final seats: asked for are ${mine.map((r) => `${r.girder} ${r.asked.toFixed(1)} mm`).join(", ")}, planned ${mine.map((r) => `${r.girder} ${r.planned} mm`).join(", ")}`,
          cure: "pack the bunks as asked for, so that the set is no more twisted on them than on its seats",
        },
        limit,
      ),
    ];
  });
}
