// Banded matrices: the chain of springs, whose answers are known in closed form; common practice, no source.

import { describe, expect, test } from "vitest";
import { banded, bandedAdd, bandedFactor, bandedMultiply, bandedSolve } from "../../src/numeric/index.ts";

/** Masses in a row, a spring of stiffness k[i] between i and i + 1. */
function chain(k: readonly number[]) {
  const m = banded(k.length + 1, 1);
  k.forEach((value, i) => {
    bandedAdd(m, i, i, value);
    bandedAdd(m, i + 1, i + 1, value);
    bandedAdd(m, i, i + 1, -value);
  });
  return m;
}

describe("a chain of springs", () => {
  test("held at one end and pulled at the other stretches by F / k, spring by spring, within 1e-13", () => {
    const k = [3, 1, 4, 1, 5, 9, 2, 6];
    const f = bandedFactor(chain(k), [0]);
    expect(f.singular).toEqual([]);
    const x = new Float64Array(9);
    x[0] = 1e9; // whatever stands at a held unknown is passed over
    x[8] = 2;
    bandedSolve(f, x);
    let sum = 0;
    expect(x[0]).toBe(0);
    k.forEach((value, i) => {
      sum += 2 / value;
      expect(Math.abs(x[i + 1] - sum)).toBeLessThan(1e-13 * sum);
    });
  });
  test("held in its middle carries loads on both sides apart", () => {
    const f = bandedFactor(chain([1, 1, 1, 1]), [2]);
    const x = Float64Array.of(1, 0, 5, 0, 0);
    bandedSolve(f, x);
    expect([...x]).toEqual([2, 1, 0, 0, 0]);
  });
  test("held nowhere reports the one motion that nothing stiffens", () => {
    const f = bandedFactor(chain([1, 1, 1]), []);
    expect(f.singular).toEqual([3]);
    expect(f.held[3]).toBe(1);
  });
  test("broken in the middle reports one motion for each loose part", () => {
    const f = bandedFactor(chain([1, 0, 1]), [0]);
    expect(f.singular).toEqual([3]);
    expect(bandedFactor(chain([1, 0, 1, 0]), []).singular).toEqual([1, 3, 4]);
  });
});

describe("wider bands", () => {
  test("the solution put back in gives the load, within 1e-12", () => {
    const n = 60;
    const band = 7;
    const m = banded(n, band);
    for (let i = 0; i < n; i++)
      for (let j = Math.max(0, i - band); j <= i; j++)
        bandedAdd(m, i, j, i === j ? 20 + Math.sin(i) : Math.cos(3 * i + 5 * j));
    const before = m.a.slice();
    const load = Float64Array.from({ length: n }, (_, i) => Math.sin(7 * i));
    const x = load.slice();
    bandedSolve(bandedFactor(m, []), x);
    const back = bandedMultiply(m, x);
    for (let i = 0; i < n; i++) expect(Math.abs(back[i] - load[i])).toBeLessThan(1e-12);
    expect(m.a).toEqual(before);
  });
  test("an entry given from either side lands in the same place", () => {
    const a = banded(5, 2);
    const b = banded(5, 2);
    bandedAdd(a, 3, 1, 4);
    bandedAdd(b, 1, 3, 4);
    expect(a.a).toEqual(b.a);
    expect([...bandedMultiply(a, Float64Array.of(0, 1, 0, 0, 0))]).toEqual([0, 0, 0, 4, 0]);
  });
});
