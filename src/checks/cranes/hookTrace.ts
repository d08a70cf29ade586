// How a hook load and its limit came about, written down part by part.

import { byId, type Crane, gravityOf, pickOf, standardGravity } from "../../plan/index.ts";
import { hookAbovePicks, type Pose, type SetContext } from "../../sequence/index.ts";
import { constant, type FieldUnit, field, type Recorder, solved, TONNE, trace } from "../trace.ts";
import type { Governing } from "./rules.ts";

/** What hangs below the boom tip, N, part by part (USACE Form 16-3 counts all of them). */
export interface HookLoad {
  net: number;
  rigging: number;
  block: number;
  rope: number;
  auxiliary: number;
  gross: number;
}

const PER_METRE: FieldUnit = { unit: "kg/m", si: "kg/m", change: "" };
const COUNT: FieldUnit = { unit: "1", si: "1", change: "" };

/** Gravity at the site, m/s2. */
export function gravityTrace(rec: Recorder, ctx: SetContext): void {
  const { gravity_m_per_s2: stated } = ctx.plan.site;
  const g = gravityOf(ctx.plan);
  if (stated === undefined) constant(rec, "g", standardGravity, "m/s2", "standard gravity", "ISO 80000-3");
  else
    field(rec, "g", g, "gravity at the site", "site.gravity_m_per_s2", stated, {
      unit: "m/s2",
      si: "m/s2",
      change: "",
    });
}

/** Writes down what hangs below the boom tip, part by part and as the symbol `F`. */
export function recordGross(rec: Recorder, ctx: SetContext, crane: Crane, pose: Pose, load: HookLoad): void {
  const { plan, set } = ctx;
  const pick = pickOf(set, crane.id);
  const hoist = (pose.state.hoists ?? []).find((h) => h.name === crane.id);
  if (pick === null || hoist === undefined) return;
  const rig = byId(plan.rigging, pick.rigging);
  const path = `cranes[${plan.cranes.indexOf(crane)}]`;
  const { block_t, auxiliary_t, rope_kg_per_m } = crane.deductions;
  gravityTrace(rec, ctx);
  solved(rec, "F_net", load.net, "N", `net load of ${crane.id} on its picks`);
  const weight = (symbol: string, value: number, mass: string, words: string) =>
    trace(rec, symbol, value, `${mass}*g`, "N", words);
  field(
    rec,
    "m_rig",
    rig.mass_t * 1000,
    `rigging '${rig.id}'`,
    `rigging[${plan.rigging.indexOf(rig)}].mass_t`,
    rig.mass_t,
    TONNE,
  );
  weight("F_rig", load.rigging, "m_rig", "weight of the rigging");
  field(rec, "m_block", block_t * 1000, "block", `${path}.deductions.block_t`, block_t, TONNE);
  weight("F_block", load.block, "m_block", "weight of the block");
  if (auxiliary_t === undefined) constant(rec, "m_aux", 0, "kg", "auxiliary block", "the plan names none");
  else
    field(
      rec,
      "m_aux",
      auxiliary_t * 1000,
      "auxiliary block",
      `${path}.deductions.auxiliary_t`,
      auxiliary_t,
      TONNE,
    );
  weight("F_aux", load.auxiliary, "m_aux", "weight of the auxiliary block");
  field(
    rec,
    "w_rope",
    rope_kg_per_m,
    "one metre of one part of line",
    `${path}.deductions.rope_kg_per_m`,
    rope_kg_per_m,
    PER_METRE,
  );
  field(rec, "n_line", crane.partsOfLine, "parts of line", `${path}.partsOfLine`, crane.partsOfLine, COUNT);
  const below = Math.max(0, (hoist.ropeLength ?? 0) - hookAbovePicks(rig));
  solved(rec, "l_rope", below, "m", "boom tip to hook");
  trace(rec, "F_rope", load.rope, "w_rope*n_line*g*l_rope", "N", "weight of the rope below the boom tip");
  trace(
    rec,
    "F",
    load.gross,
    "F_net + F_rig + F_block + F_rope + F_aux",
    "N",
    "hook load",
    "USACE EM 385-1-1 Form 16-3: all that hangs below the boom tip",
  );
}

/** Writes down the rated load that a chart gives, as the symbol `F_rated`. */
export function recordRatedLoad(rec: Recorder, rated: number, chart: string, radius: number): void {
  solved(rec, "F_rated", rated, "N", `rated load of ${chart}, at radius ${radius.toFixed(3)} m`);
}

/** Writes down what the lowest of the rules in force allows, as the symbol `F_a`; `F_rated` must stand there. */
export function recordRules(rec: Recorder, limit: number, { parts }: Governing): void {
  for (const { limit: one, symbol, words } of parts)
    constant(rec, symbol, one.value, "%", words, `${one.source} (${one.chosenBy})`);
  const formulas = parts.map((one) => one.formula);
  const part = formulas.length > 1 ? `min(${formulas.join(", ")})` : formulas[0];
  trace(rec, "F_a", limit, `F_rated*(${part})`, "N", "lowest of the limits in force");
}
