// Ground that cannot pull: equilibrium of the exact answer, and the same from many small springs written here anew.

import { describe, expect, test } from "vitest";
import { type Area, footingOf, pressing, pressUnder, rectangle } from "../../src/mechanics/index.ts";

/** Numbers between 0 and 1 from a seed (Lehmer). */
function random(seed: number): () => number {
  let s = seed;
  return () => {
    s = (s * 16807) % 2147483647;
    return s / 2147483647;
  };
}

/** Springs at the middles of cells: x, y, area in one flat list. */
function cells(rectangles: readonly [number, number, number, number][], n: number): Float64Array {
  const out: number[] = [];
  for (const [x, y, length, width] of rectangles)
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        out.push(
          x + ((i + 0.5) / n - 0.5) * length,
          y + ((j + 0.5) / n - 0.5) * width,
          (length * width) / n / n,
        );
  return Float64Array.from(out);
}

/** Cramer's rule. */
function solve3(m: number[], r: number[]): number[] {
  const det = (a: number[]) =>
    a[0] * (a[4] * a[8] - a[5] * a[7]) -
    a[1] * (a[3] * a[8] - a[5] * a[6]) +
    a[2] * (a[3] * a[7] - a[4] * a[6]);
  const d = det(m);
  return [0, 1, 2].map((k) => det(m.map((v, i) => (i % 3 === k ? r[(i - k) / 3] : v))) / d);
}

/** Plane of the springs that balances V at (x, y): those below zero are let go, in steps that lower the energy. */
function bySprings(springs: Float64Array, V: number, x: number, y: number): number[] {
  const energyAt = (q: number[]) => {
    let e = -V * (q[0] + q[1] * x + q[2] * y);
    for (let i = 0; i < springs.length; i += 3) {
      const p = q[0] + q[1] * springs[i] + q[2] * springs[i + 1];
      if (p > 0) e += (springs[i + 2] * p * p) / 2;
    }
    return e;
  };
  let q = [1, 0, 0];
  let e = Number.POSITIVE_INFINITY;
  for (let pass = 0; pass < 200; pass++) {
    const m = new Array(9).fill(0);
    for (let i = 0; i < springs.length; i += 3) {
      const [u, v, A] = [springs[i], springs[i + 1], springs[i + 2]];
      if (!(q[0] + q[1] * u + q[2] * v > 0)) continue;
      m[0] += A;
      m[1] += A * u;
      m[2] += A * v;
      m[4] += A * u * u;
      m[5] += A * u * v;
      m[8] += A * v * v;
    }
    m[3] = m[1];
    m[6] = m[2];
    m[7] = m[5];
    const full = solve3(m, [V, V * x, V * y]);
    let t = 1;
    let to = full;
    let lower = energyAt(to);
    while (lower > e && t > 1e-4) {
      t /= 2;
      to = q.map((v, k) => v + t * (full[k] - v));
      lower = energyAt(to);
    }
    const change = Math.max(...to.map((v, k) => Math.abs(v - q[k]))) / Math.max(...to.map(Math.abs));
    q = to;
    e = lower;
    if (change < 1e-9) return q;
  }
  throw new Error("the springs did not settle");
}

describe("300 random loads against 120 x 120 springs an area (seed 31)", () => {
  const next = random(31);
  const cases = Array.from({ length: 300 }, (_, i) => {
    const length = 4 + 8 * next();
    const width = i % 2 === 0 ? 2 + 6 * next() : 0.8 + next();
    const gauge = 4 + 4 * next();
    const areas: [number, number, number, number][] =
      i % 2 === 0
        ? [[0, 0, length, width]]
        : [
            [0, gauge / 2, length, width],
            [0, -gauge / 2, length, width],
          ];
    const across = i % 2 === 0 ? width : gauge + width;
    return { areas, x: 0.4 * length * (2 * next() - 1), y: 0.4 * across * (2 * next() - 1) };
  });

  test("the same greatest pressure and contact", () => {
    let lifted = 0;
    let worst = 0;
    for (const { areas, x, y } of cases) {
      const f = footingOf(areas.map(([u, v, l, w]) => rectangle(u, v, l, w)));
      const V = 4e6;
      const o = pressUnder(f, V, x, y, pressing());
      expect(o.status).toBe("solved");
      expect(o.residual).toBeLessThan(1e-10);
      const q = bySprings(cells(areas, 120), V, x, y);
      const corners = areas.flatMap(([u, v, l, w]) => rectangle(u, v, l, w));
      const most = Math.max(...corners.map(([u, v]) => q[0] + q[1] * u + q[2] * v));
      worst = Math.max(worst, Math.abs(most - o.most) / o.most);
      if (o.least === 0) lifted++;
    }
    // A contact that reaches over m cells has its second moments wrong by some 1/m^2; loads at 0.4 of the length from
    // the middle leave a contact of 0.3 of it, 36 cells, in each direction, and corners about as many: 3/36^2 = 0.23 %,
    // and as much again where the line of lift-off cuts cells.
    expect(worst).toBeLessThan(5e-3);
    expect(lifted).toBeGreaterThan(100);
  });
});

test("2000 loads up to the very edge of two tracks settle, and are balanced (seed 32)", () => {
  const next = random(32);
  let most = 0;
  for (let i = 0; i < 2000; i++) {
    const areas = [rectangle(0, 3, 8, 1.2), rectangle(0, -3, 8, 1.2)];
    const x = 3.99 * (2 * next() - 1);
    const y = 3.59 * (2 * next() - 1);
    const o = pressUnder(footingOf(areas), 1, x, y, pressing());
    expect(o.status, `${x} ${y}`).toBe("solved");
    expect(o.residual).toBeLessThan(1e-10);
    most = Math.max(most, o.passes);
  }
  expect(most).toBeLessThan(100);
});

test("along one axis up to 1 mm from the edge: 2P/3B(L/2 - e)", () => {
  const f = footingOf([rectangle(0, 0, 6, 2)]);
  for (const e of [1.5, 2, 2.5, 2.9, 2.99, 2.999]) {
    const o = pressUnder(f, 1e6, e, 0, pressing());
    expect(Math.abs(o.most / (2e6 / (3 * 2 * (3 - e))) - 1)).toBeLessThan(1e-9);
  }
});

test("no answer is given where the load lies outside all ground; turned and moved it stays the same (seed 33)", () => {
  const next = random(33);
  for (let i = 0; i < 100; i++) {
    const areas = [rectangle(0, 3, 8, 1.2), rectangle(0, -3, 8, 1.2)];
    const angle = 7 * next();
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const turn = ([x, y]: readonly [number, number]): [number, number] => [
      200 + c * x - s * y,
      -30 + s * x + c * y,
    ];
    const turned: Area[] = areas.map((area) => area.map(turn));
    const load: [number, number] = [5 * (2 * next() - 1), 4.5 * (2 * next() - 1)];
    const a = pressUnder(footingOf(areas), 3e6, ...load, pressing());
    const b = pressUnder(footingOf(turned), 3e6, ...turn(load), pressing());
    const inside = Math.abs(load[0]) < 4 && Math.abs(load[1]) < 3.6;
    expect(a.status).toBe(inside ? "solved" : "overturned");
    expect(b.status).toBe(a.status);
    // Chainages of 200 m cost three digits.
    if (inside) expect(Math.abs(b.most - a.most)).toBeLessThan(1e-8 * a.most);
  }
});
