// What is left out of balance in a solved pose, summed from coordinates and not from the stiffness matrix.

import type { Solution } from "./solve.ts";

/**
 * Out-of-balance force and moments of the set and of every deck, summed from coordinates on the undeformed geometry
 * with the named second-order terms (lean and level of hanging parts); as shares of W and W L.
 */
export function residualOf(
  s: Solution,
  gravity: [number, number, number],
  windLoad: { force: number; height: number } | null,
  windValue: number,
): { force: number; moment: number } {
  const { model, layout, devices, contact, tension, horizontal } = s;
  const { trains, hoists, up, cylinders } = layout;
  const axis = model.axisHeight;
  const set = [0, 0, 0];
  const decks = trains.map(() => [0, 0, 0]);
  const at = (sum: number[], f: number, x: number, y: number) => {
    sum[0] += f;
    sum[1] += f * y;
    sum[2] -= f * x;
  };
  const [cx, cy, cz] = model.cg;
  at(set, -model.mass * gravity[2], cx - model.origin, cy);
  set[1] -= model.mass * gravity[1] * (cz - axis);
  set[2] += model.mass * gravity[0] * (cz - axis);
  if (windLoad) set[1] -= windValue * windLoad.force * (windLoad.height - axis);
  trains.forEach((t, i) => {
    decks[i][0] -= t.mass * gravity[2];
    decks[i][1] -= t.mass * gravity[1] * t.cgHeight;
    decks[i][2] += t.mass * gravity[0] * t.cgHeight;
  });
  devices.forEach((d, j) => {
    const F = contact.F[j];
    if (F === 0) return;
    if (d.kind === "bunk" || d.kind === "lashing") {
      const sign = d.kind === "bunk" ? 1 : -1;
      at(set, sign * F, d.x - model.origin, d.y);
      const deck = d.decks[0];
      at(decks[deck], -sign * F, d.x - trains[deck].at, d.y);
    } else if (d.kind === "bearing") at(set, F, d.x - model.origin, d.y);
    else if (d.kind === "lean of hoist") set[1] += F;
    else if (d.kind === "level of hoist") set[2] += F;
    else if (d.kind === "hoist") at(set, F * up[2], d.x - model.origin, d.y);
  });
  cylinders.forEach((c, i) => {
    at(decks[c.deck], s.cylinderForce[i], c.x, c.y);
  });
  hoists.forEach((h, i) => {
    let y = 0;
    for (const g of layout.hoistGirders[i]) y += model.girders[g].y / layout.hoistGirders[i].length;
    if (h.mode === "load") at(set, tension[i] * up[2], h.at - model.origin, y);
    const fx = tension[i] * up[0] + (horizontal ? horizontal.lines[2 * i] : 0);
    const fy = tension[i] * up[1] + (horizontal ? horizontal.lines[2 * i + 1] : 0);
    const e = h.rigging === "separate" || h.girders.length < 2 ? 0 : (h.pinHeight ?? 0);
    set[1] -= fy * (h.pickHeight + e - axis);
    set[2] += fx * (h.pickHeight - axis);
  });
  if (horizontal)
    s.holds.forEach(({ deck }, i) => {
      const fx = horizontal.holds[2 * i];
      const fy = horizontal.holds[2 * i + 1];
      set[1] += fy * axis;
      set[2] -= fx * axis;
      if (deck >= 0) {
        decks[deck][1] += fy * trains[deck].bunkHeight;
        decks[deck][2] -= fx * trains[deck].bunkHeight;
      }
    });
  const W = model.mass * s.state.gravity || 1;
  let force = Math.abs(set[0]) / W;
  // A one-girder set has its lean held, so the moment about its length is not asked of the supports.
  let moment = Math.max(model.lean >= 0 ? Math.abs(set[1]) : 0, Math.abs(set[2])) / (W * model.length);
  for (const d of decks) {
    force = Math.max(force, Math.abs(d[0]) / W);
    moment = Math.max(moment, Math.abs(d[1]) / (W * model.length), Math.abs(d[2]) / (W * model.length));
  }
  return { force, moment };
}
