// A solution put into names: what the command line prints, and what a checking engineer reads.

import { bandedSolve, vector } from "../numeric/index.ts";
import { leanAside, pullAside } from "./devices.ts";
import type { HorizontalResult } from "./horizontal.ts";
import { flexibility, makeRow, rowAt, rowValue } from "./rows.ts";
import type { SetModel, SetRow } from "./setModel.ts";
import { horizontalOf, type NamedHold } from "./sideways.ts";
import type { Solution } from "./solution.ts";
import type { HorizontalAnswer, StateAnswer } from "./state/types.ts";
import { tippingOf } from "./tipping.ts";

/** Vertical displacement of a row in a solved pose, from the forces that act on it. */
export function rowDisplacement(s: Solution, row: SetRow): number {
  const { model, devices, contact, layout } = s;
  const g = s.state.gravity;
  let w = g * (layout.up[2] * row.sag[0] - layout.up[1] * row.sag[1] - layout.up[0] * row.sag[2]);
  const wind = s.state.wind;
  if (wind && wind.pressure !== 0) {
    const c = model.wind.get(wind.toward);
    if (c) w += wind.pressure * wind.factor * rowValue(row, c.field);
  }
  for (let j = 0; j < devices.length; j++) {
    const F = contact.F[j];
    if (F === 0) continue;
    const { rows, factors } = devices[j];
    for (let i = 0; i < rows.length; i++) w += F * factors[i] * flexibility(model, row, rows[i]);
  }
  for (const l of s.loads) w += l.value * flexibility(model, row, l.row);
  for (let q = 0; q < model.modes.length; q++) w += contact.a[q] * row.modes[q];
  return w;
}

/** Displacement field (w, thetaX, thetaY per node) of the set in a solved pose; for pictures and diagrams. */
export function recoverField(s: Solution): Float64Array {
  const { model, devices, contact, layout } = s;
  const n = model.factor.n;
  // The forces of devices and loads first, then what the held set gives under all of them at once.
  const q = vector(n);
  const push = ({ dofs, coefficients }: SetRow, force: number) => {
    for (let i = 0; i < dofs.length; i++) q[dofs[i]] += force * coefficients[i];
  };
  devices.forEach((d, j) => {
    if (contact.F[j] === 0) return;
    for (let i = 0; i < d.rows.length; i++) push(d.rows[i], contact.F[j] * d.factors[i]);
  });
  for (const l of s.loads) push(l.row, l.value);
  bandedSolve(model.factor, q);
  const g = s.state.gravity;
  const [down, side, along] = model.sagFields;
  const [z, y, x] = [g * layout.up[2], -g * layout.up[1], -g * layout.up[0]];
  for (let i = 0; i < n; i++) q[i] += z * down[i] + y * side[i] + x * along[i];
  const wind = s.state.wind;
  const blown = wind && wind.pressure !== 0 ? model.wind.get(wind.toward) : undefined;
  if (wind && blown) addScaled(blown.field, wind.pressure * wind.factor, q);
  for (let m = 0; m < model.modes.length; m++) addScaled(model.modes[m], contact.a[m], q);
  return q;
}

function addScaled(field: Float64Array, factor: number, to: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] += factor * field[i];
}

/** Rows that measure the best plane through all nodes: lean (about x) and level (about y). */
function planeRows(model: SetModel): { lean: SetRow | null; level: SetRow } {
  if (model.plane) return model.plane;
  const n = model.nodeX.length;
  let mx = 0;
  let my = 0;
  for (let i = 0; i < n; i++) {
    mx += model.nodeX[i] / n;
    my += model.nodeY[i] / n;
  }
  let xx = 0;
  let yy = 0;
  let xy = 0;
  for (let i = 0; i < n; i++) {
    const x = model.nodeX[i] - mx;
    const y = model.nodeY[i] - my;
    xx += x * x;
    yy += y * y;
    xy += x * y;
  }
  const dofs = Array.from({ length: n }, (_, i) => 3 * i);
  const det = xx * yy - xy * xy;
  const slope = (x: number, y: number, first: boolean) =>
    model.lean < 0 ? x / xx : first ? (yy * x - xy * y) / det : (xx * y - xy * x) / det;
  const row = (first: boolean) =>
    makeRow(
      model,
      dofs,
      dofs.map((_, i) => (first ? -1 : 1) * slope(model.nodeX[i] - mx, model.nodeY[i] - my, first)),
    );
  model.plane = { lean: model.lean < 0 ? null : row(false), level: row(true) };
  return model.plane;
}

/** Lean of the set (> 0 raises the left side), of the best plane through its nodes, rad; 0 for one girder, NaN unsolved. */
export function leanOf(s: Solution): number {
  if (s.status !== "solved") return Number.NaN;
  const { lean } = planeRows(s.model);
  return lean ? rowDisplacement(s, lean) : 0;
}

/** Level of the set (> 0 lowers the nose), of the best plane through its nodes, rad; NaN unsolved. */
export function levelOf(s: Solution): number {
  if (s.status !== "solved") return Number.NaN;
  return rowDisplacement(s, planeRows(s.model).level);
}

/** Lean and level of the set, rad. */
export function attitudeOf(s: Solution): { lean: number; level: number } {
  return { lean: leanOf(s), level: levelOf(s) };
}

/** Vertical displacement of a girder's soffit from the straight datum at a station, up positive, m. */
export function droopAt(s: Solution, girder: number, station: number): number {
  return rowDisplacement(s, rowAt(s.model, girder, station, "w"));
}

/** Forces of the pair of lines under a hoist: [left, right], N. */
export function lineForces(s: Solution, hoist: number): number[] {
  const { devices, contact, layout, model } = s;
  const h = layout.hoists[hoist];
  const girders = layout.hoistGirders[hoist];
  const T = s.hoistForce[hoist];
  if (h.rigging === "separate" && h.mode === "takeUp")
    return girders.map((g) => {
      let F = 0;
      devices.forEach((d, j) => {
        if (d.kind === "hoist" && d.of === hoist && d.part === model.girders[g].name) F += contact.F[j];
      });
      return F;
    });
  if (girders.length === 1) return [T];
  // Moment that the leaning spreader or bridle passes on as a couple, with that of the sideways pull at its pin.
  const e = h.rigging === "separate" ? 0 : (h.pinHeight ?? 0);
  const left = model.girders[girders[0]].y;
  const right = model.girders[girders[girders.length - 1]].y;
  let turn = 0;
  devices.forEach((d, j) => {
    if (d.kind === "lean of hoist" && d.of === hoist) turn = contact.v[j] - d.datum;
  });
  // A lean counts from where the slings, unequal as they may be, would leave the spreader level.
  turn += leanAside(h, model, girders);
  const aside = pullAside(h, model, girders);
  const fy = T * layout.up[1] + (s.horizontal ? s.horizontal.lines[2 * hoist + 1] : 0);
  const couple = (-T * e * turn - T * aside - fy * e) / (left - right);
  return girders.map(
    (_, i) => T / girders.length + (i === 0 ? couple : i === girders.length - 1 ? -couple : 0),
  );
}

/** The answer of state.md's form: forces, strokes, gaps and droop by name. With a mechanism, no numbers. */
export function answerOf(s: Solution): StateAnswer {
  const { model, devices, contact, layout, state } = s;
  const notes: string[] = [];
  if (model.lean < 0) notes.push("a set of one girder has no lean of its own: its lean is held");
  const base: StateAnswer = {
    status: s.status,
    notes,
    weight: model.mass * state.gravity,
    cg: [...model.cg],
    forces: {},
    strokes: {},
    gaps: {},
    droop: {},
    lean: 0,
    level: 0,
    horizontal: null,
    tipping: null,
    residual: s.residual,
    passes: s.passes,
  };
  if (s.status === "mechanism") return { ...base, motion: s.motion };
  if (s.status === "unsettled") return base;
  devices.forEach((d, j) => {
    if (d.kind === "bunk" || d.kind === "bearing" || d.kind === "lashing") {
      base.forces[d.name] = contact.F[j];
      if (contact.F[j] === 0 && d.kind !== "lashing") base.gaps[d.name] = contact.v[j] - d.datum;
    }
  });
  layout.groups.forEach((g) => {
    let sum = 0;
    for (const c of g.cylinders) sum += s.cylinderForce[c];
    base.forces[`group ${g.name}`] = sum;
  });
  layout.cylinders.forEach((c, i) => {
    base.forces[`cylinder ${c.id}`] = s.cylinderForce[i];
    base.strokes[c.id] = s.stroke[i];
  });
  layout.hoists.forEach((h, i) => {
    base.forces[`hoist ${h.name}`] = s.hoistForce[i];
    const lines = lineForces(s, i);
    layout.hoistGirders[i].forEach((g, k) => {
      base.forces[`line ${h.name} ${model.girders[g].name}`] = lines[k];
    });
  });
  model.girders.forEach((g, i) => {
    base.droop[g.name] = (state.ask?.droopAt ?? [])
      .filter((x) => x >= g.from && x <= g.to)
      .map((x) => droopAt(s, i, x));
  });
  const attitude = attitudeOf(s);
  base.lean = attitude.lean;
  base.level = attitude.level;
  base.horizontal = horizontalAnswer(s);
  base.tipping = tippingOf(s);
  return base;
}

/**
 * Sideways forces of a solved pose and the contacts that hold them. Where none exist the solver left them out; what
 * is held and what is free is worked out here.
 */
export function sidewaysOf(s: Solution): { result: HorizontalResult; holds: NamedHold[] } {
  if (s.horizontal) return { result: s.horizontal, holds: s.holds };
  const { up } = s.layout;
  const g = s.state.gravity;
  const gravity = [-up[0] * g, -up[1] * g, up[2] * g] as const;
  return horizontalOf(s.layout, s.devices, s.contact, s.tension, { gravity, wind: null });
}

function horizontalAnswer(s: Solution): HorizontalAnswer {
  const { result: h, holds } = sidewaysOf(s);
  const { layout } = s;
  const out: HorizontalAnswer = {
    lines: {},
    contacts: {},
    brakes: {},
    motion: h.motion,
    free: h.free,
    slipping: [],
  };
  layout.hoists.forEach((hoist, i) => {
    const fx = h.lines[2 * i];
    const fy = h.lines[2 * i + 1];
    const T = s.hoistForce[i];
    out.lines[hoist.name] = { lean: T > 0 ? [fx / T, fy / T] : [0, 0], force: [fx, fy] };
  });
  const along = layout.trains.map(() => 0);
  holds.forEach(({ hold, stated, name }, i) => {
    const force: [number, number] = [h.holds[2 * i], h.holds[2 * i + 1]];
    const used = Number.isFinite(stated) ? Math.hypot(force[0], force[1]) / stated : null;
    out.contacts[name] = { force, used };
    if (h.slipping[i]) out.slipping.push(name);
    if (hold.train >= 0) along[hold.train] += force[0];
  });
  layout.trains.forEach((t, i) => {
    out.brakes[t.name] = { force: along[i], used: t.brakeLimit ? Math.abs(along[i]) / t.brakeLimit : null };
  });
  return out;
}
