// Section and 12 x 12 stiffness of one element of the second solver; no code of the first.

import type { StateGirder } from "../../src/mechanics/index.ts";

export interface Section {
  A: number;
  Iy: number;
  Iz: number;
  J: number;
  web: number;
  z: number;
}

/** Three rectangles one on another. */
export function sectionOf(p: StateGirder["pieces"][number]): Section {
  const parts = [
    { b: p.bottomFlange[0], h: p.bottomFlange[1] },
    { b: p.web[1], h: p.web[0] },
    { b: p.topFlange[0], h: p.topFlange[1] },
  ];
  let below = 0;
  const placed = parts.map((r) => {
    const z = below + r.h / 2;
    below += r.h;
    return { ...r, z, A: r.b * r.h };
  });
  const A = placed.reduce((s, r) => s + r.A, 0);
  const z = placed.reduce((s, r) => s + r.A * r.z, 0) / A;
  return {
    A,
    z,
    Iy: placed.reduce((s, r) => s + (r.b * r.h ** 3) / 12 + r.A * (r.z - z) ** 2, 0),
    Iz: placed.reduce((s, r) => s + (r.h * r.b ** 3) / 12, 0),
    J: placed.reduce((s, r) => s + (Math.max(r.b, r.h) * Math.min(r.b, r.h) ** 3) / 3, 0),
    web: p.web[0] * p.web[1],
  };
}

/**
 * 12 x 12 stiffness of a straight element along its own x: u, v, w, rx, ry, rz at both ends. Bending in the vertical
 * plane with shear when GAs is finite (Timoshenko), in plan without.
 */
export function elementStiffness(
  L: number,
  EA: number,
  GJ: number,
  EIy: number,
  EIz: number,
  GAs: number,
): number[][] {
  const k = Array.from({ length: 12 }, () => new Array<number>(12).fill(0));
  const add = (dofs: number[], m: number[][], signs: number[]) => {
    dofs.forEach((a, i) => {
      dofs.forEach((b, j) => {
        k[a][b] += m[i][j] * signs[i] * signs[j];
      });
    });
  };
  const bar = (c: number) => [
    [c, -c],
    [-c, c],
  ];
  add([0, 6], bar(EA / L), [1, 1]);
  add([3, 9], bar(GJ / L), [1, 1]);
  const beam = (EI: number, phi: number) => {
    const c = EI / (L ** 3 * (1 + phi));
    return [
      [12 * c, 6 * L * c, -12 * c, 6 * L * c],
      [6 * L * c, (4 + phi) * L * L * c, -6 * L * c, (2 - phi) * L * L * c],
      [-12 * c, -6 * L * c, 12 * c, -6 * L * c],
      [6 * L * c, (2 - phi) * L * L * c, -6 * L * c, (4 + phi) * L * L * c],
    ];
  };
  // In the vertical plane the slope dw/dx is minus the turn about y.
  add([2, 4, 8, 10], beam(EIy, Number.isFinite(GAs) ? (12 * EIy) / (GAs * L * L) : 0), [1, -1, 1, -1]);
  add([1, 5, 7, 11], beam(EIz, 0), [1, 1, 1, 1]);
  return k;
}
