// Hand stiffness of the one-girder plan: girder by beam formulas, trains and hooks as springs in series. SI.

import type { Plan } from "../../src/plan/index.ts";
import { pieceSection } from "../../src/plan/index.ts";

/** Bending and web shear stiffness of the girder: E I (N m2) and G A_web (N). */
export function girderStiffness(plan: Plan): { EI: number; GA: number } {
  const [set] = plan.sets;
  const [piece] = set.girders[0].pieces;
  const [t, w, b] = [piece.topFlange_mm, piece.web_mm, piece.bottomFlange_mm].map(([x, y]) => [
    x / 1000,
    y / 1000,
  ]);
  const plates = [
    { area: b[0] * b[1], z: b[1] / 2, own: (b[0] * b[1] ** 3) / 12 },
    { area: w[0] * w[1], z: b[1] + w[0] / 2, own: (w[1] * w[0] ** 3) / 12 },
    { area: t[0] * t[1], z: b[1] + w[0] + t[1] / 2, own: (t[0] * t[1] ** 3) / 12 },
  ];
  const area = plates.reduce((sum, p) => sum + p.area, 0);
  const centre = plates.reduce((sum, p) => sum + p.area * p.z, 0) / area;
  const I = plates.reduce((sum, p) => sum + p.own + p.area * (p.z - centre) ** 2, 0);
  if (Math.abs(pieceSection(piece).area - area) > 1e-12) throw new Error("the take-off has another area");
  return { EI: (set.E_GPa ?? 210) * 1e9 * I, GA: (set.G_GPa ?? 81) * 1e9 * w[0] * w[1] };
}

/** A train under its bunk at the deck centre, N/m: half of a load there goes to either end of the deck. */
export function trainStiffness(plan: Plan, id: string): number {
  const t = plan.transporters.find((x) => x.id === id);
  if (!t) throw new Error(id);
  return 1e6 / (1 / (2 * t.lines * t.cylinderStiffness_kN_per_mm) + 1 / t.bunkStiffness_kN_per_mm);
}

/** A hook's line: rope, boom, ground and slings in series, N/m. */
export function lineStiffness(plan: Plan, id: string): number {
  const crane = plan.cranes.find((x) => x.id === id);
  const pick = plan.sets[0].picks.find((p) => p.crane === id);
  const rig = plan.rigging.find((r) => r.id === pick?.rigging);
  if (!crane || !rig) throw new Error(id);
  const s = crane.stiffness;
  return (
    1e6 /
    (1 / s.rope_kN_per_mm.best +
      1 / s.boom_kN_per_mm.best +
      1 / s.ground_kN_per_mm.best +
      1 / rig.slingStiffness_kN_per_mm)
  );
}

/**
 * Displacement at the pick for 1 N there, m/N, on two trains `a` apart with the pick `c` beyond the front one:
 * c^2 (a + c) / (3 E I) of bending, c (a + c) / (a G A) of shear, and the two trains by the lever.
 */
export function pickFlexibility(plan: Plan, a: number, c: number): number {
  const { EI, GA } = girderStiffness(plan);
  const rear = c / a;
  const front = (a + c) / a;
  return (
    (c ** 2 * (a + c)) / (3 * EI) +
    (c * (a + c)) / (a * GA) +
    rear ** 2 / trainStiffness(plan, "rear") +
    front ** 2 / trainStiffness(plan, "front")
  );
}
