// What is left out of balance in a solved pose, summed from coordinates and not from the stiffness matrix.

import { meanY } from "./devices.ts";
import type { Acting } from "./sideways.ts";
import type { Solution } from "./solution.ts";

/** Sums of the set first, then of every deck: force, moment about x, moment about y. */
let sums = new Float64Array(12);

/** Adds a vertical force at (x, y) to the three sums of a body that begin at `at`. */
function add(at: number, f: number, x: number, y: number): void {
  sums[at] += f;
  sums[at + 1] += f * y;
  sums[at + 2] -= f * x;
}

/**
 * Out-of-balance force and moments of the set and of every deck, summed from coordinates on the undeformed geometry
 * with the named second-order terms (lean and level of hanging parts); as shares of W and W L.
 */
export function residualOf(
  s: Solution,
  { gravity, wind }: Pick<Acting, "gravity" | "wind">,
): { force: number; moment: number } {
  const { model, layout, devices, contact, tension, horizontal, holds, cylinderForce } = s;
  const { trains, hoists, up, cylinders } = layout;
  const axis = model.axisHeight;
  const size = 3 + 3 * trains.length;
  if (sums.length < size) sums = new Float64Array(size);
  sums.fill(0);
  const [cx, cy, cz] = model.cg;
  add(0, -model.mass * gravity[2], cx - model.origin, cy);
  sums[1] -= model.mass * gravity[1] * (cz - axis);
  sums[2] += model.mass * gravity[0] * (cz - axis);
  if (wind) sums[1] -= wind.value * wind.force * (wind.height - axis);
  for (let i = 0; i < trains.length; i++) {
    const t = trains[i];
    sums[3 * i + 3] -= t.mass * gravity[2];
    sums[3 * i + 4] -= t.mass * gravity[1] * t.cgHeight;
    sums[3 * i + 5] += t.mass * gravity[0] * t.cgHeight;
  }
  for (let j = 0; j < devices.length; j++) {
    const F = contact.F[j];
    if (F === 0) continue;
    const d = devices[j];
    const x = d.x - model.origin;
    if (d.kind === "bunk" || d.kind === "lashing") {
      const push = d.kind === "bunk" ? F : -F;
      const deck = d.decks[0];
      add(0, push, x, d.y);
      add(3 * deck + 3, -push, d.x - trains[deck].at, d.y);
    } else if (d.kind === "bearing") add(0, F, x, d.y);
    else if (d.kind === "lean of hoist") sums[1] += F;
    else if (d.kind === "level of hoist") sums[2] += F;
    else if (d.kind === "hoist") add(0, F * up[2], x, d.y);
  }
  for (let i = 0; i < cylinders.length; i++) {
    const c = cylinders[i];
    add(3 * c.deck + 3, cylinderForce[i], c.x, c.y);
  }
  for (let i = 0; i < hoists.length; i++) {
    const h = hoists[i];
    if (h.mode === "load")
      add(0, tension[i] * up[2], h.at - model.origin, meanY(model, layout.hoistGirders[i]));
    const fx = tension[i] * up[0] + (horizontal ? horizontal.lines[2 * i] : 0);
    const fy = tension[i] * up[1] + (horizontal ? horizontal.lines[2 * i + 1] : 0);
    const e = h.rigging === "separate" || h.girders.length < 2 ? 0 : (h.pinHeight ?? 0);
    sums[1] -= fy * (h.pickHeight + e - axis);
    sums[2] += fx * (h.pickHeight - axis);
  }
  if (horizontal)
    for (let i = 0; i < holds.length; i++) {
      const { deck } = holds[i];
      const fx = horizontal.holds[2 * i];
      const fy = horizontal.holds[2 * i + 1];
      sums[1] += fy * axis;
      sums[2] -= fx * axis;
      if (deck < 0) continue;
      sums[3 * deck + 4] += fy * trains[deck].bunkHeight;
      sums[3 * deck + 5] -= fx * trains[deck].bunkHeight;
    }
  const W = model.mass * s.state.gravity || 1;
  let force = 0;
  let moment = 0;
  for (let i = 0; i < size; i += 3) {
    force = Math.max(force, Math.abs(sums[i]) / W);
    // A one-girder set has its lean held, so the moment about its length is not asked of the supports.
    const about = i === 0 && model.lean < 0 ? 0 : Math.abs(sums[i + 1]);
    moment = Math.max(moment, about / (W * model.length), Math.abs(sums[i + 2]) / (W * model.length));
  }
  return { force, moment };
}
