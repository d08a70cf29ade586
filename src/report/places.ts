// Where every support of a pose acts, and with which forces and moments, in the coordinates of the set.

import type { Solution } from "../mechanics/index.ts";

/**
 * A support as statics see it: x forward, y left, z up and normal to the path, on the undeformed set.
 * Forces and moments act on the set; those of groups and cylinders on their deck, as the ground pushes it.
 */
export interface Acting {
  /** Station from the rear end, distance left of the axis, height above the straight soffit, m. */
  station: number;
  y: number;
  height: number;
  /** Sideways force along and across the path, N; NaN where statics do not say how supports share it. */
  sideX: number;
  sideY: number;
  /** Moments about the axes along and across, N m, that come on top of force times lever (hanging parts). */
  momentX: number;
  momentY: number;
}

const none = { momentX: 0, momentY: 0 };

/**
 * All supports of a solved pose by the names of their forces (`hoist far`, `bunk rear L 1`, `cylinder rear:1L`, ...);
 * lashings by the names of the statics (`lashing L 5`).
 */
export function actingIn(solution: Solution): Map<string, Acting> {
  const { layout, devices, state, holds, horizontal } = solution;
  const acting = new Map<string, Acting>();
  const side = new Map<string, { sideX: number; sideY: number }>();
  holds.forEach(({ name }, i) => {
    if (horizontal) side.set(name, { sideX: horizontal.holds[2 * i], sideY: horizontal.holds[2 * i + 1] });
  });
  const still = { sideX: 0, sideY: 0 };
  for (const d of devices) {
    if (d.kind !== "bunk" && d.kind !== "bearing" && d.kind !== "lashing") continue;
    acting.set(d.name, { station: d.x, y: d.y, height: 0, ...(side.get(d.name) ?? still), ...none });
  }
  const unknown = { sideX: Number.NaN, sideY: Number.NaN };
  for (const c of layout.cylinders) {
    const train = layout.trains[c.deck];
    acting.set(`cylinder ${c.id}`, {
      station: train.at + c.x,
      y: c.y,
      height: -train.bunkHeight,
      ...unknown,
      ...none,
    });
  }
  for (const group of layout.groups) {
    const wheels = group.cylinders.map((c) => {
      const cylinder = layout.cylinders[c];
      const train = layout.trains[cylinder.deck];
      return { station: train.at + cylinder.x, y: cylinder.y, height: -train.bunkHeight };
    });
    acting.set(`group ${group.name}`, {
      station: mean(wheels.map((w) => w.station)),
      y: mean(wheels.map((w) => w.y)),
      height: mean(wheels.map((w) => w.height)),
      ...unknown,
      ...none,
    });
  }
  (state.hoists ?? []).forEach((_, i) => {
    addHoist(solution, i, acting);
  });
  addWind(solution, acting);
  return acting;
}

/** A hoist with the moments of its leaning spreader and of its lever about the set's CG; and its lines. */
function addHoist(solution: Solution, index: number, acting: Map<string, Acting>): void {
  const { layout, devices, contact, model, horizontal, tension } = solution;
  const hoist = layout.hoists[index];
  const girders = layout.hoistGirders[index].map((g) => model.girders[g]);
  const y = mean(girders.map((g) => g.y));
  const T = tension[index];
  const sideX = T * layout.up[0] + (horizontal ? horizontal.lines[2 * index] : 0);
  const sideY = T * layout.up[1] + (horizontal ? horizontal.lines[2 * index + 1] : 0);
  // The pull across acts at the hook pin, the pull along at the picks: the couple between the two heights.
  const pin = hoist.rigging === "separate" || girders.length < 2 ? 0 : (hoist.pinHeight ?? 0);
  let momentX = -sideY * pin;
  let momentY = 0;
  devices.forEach((d, j) => {
    if (d.of !== index) return;
    if (d.kind === "lean of hoist") momentX += contact.F[j];
    else if (d.kind === "level of hoist") momentY += contact.F[j];
    else if (d.kind === "hoist") momentX += contact.F[j] * layout.up[2] * (d.y - y);
  });
  const at = { station: hoist.at, height: hoist.pickHeight };
  acting.set(`hoist ${hoist.name}`, { ...at, y, sideX, sideY, momentX, momentY });
  for (const girder of girders) {
    const name = `line ${hoist.name} ${girder.name}`;
    acting.set(name, { ...at, y: girder.y, sideX: Number.NaN, sideY: Number.NaN, ...none });
  }
}

/** The side force of wind, as if it were a support, under the name `wind`. */
function addWind({ state, model }: Solution, acting: Map<string, Acting>): void {
  const wind = state.wind;
  const blow = wind && model.wind.get(wind.toward);
  if (!wind || !blow || wind.pressure === 0) return;
  const sideY = wind.pressure * wind.factor * blow.force;
  acting.set("wind", { station: blow.x, y: 0, height: blow.height, sideX: 0, sideY, ...none });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
