// Shared lifts: Queensland, Mobile crane Code of Practice 2006 (PN11180), section 14.3.2; Guidelines for Marine
// Lifting and Lowering Operations, 0027/ND Rev 11.2 (2016), 6.2.2 to 6.2.4 and 13.2.1 (rules read, figures
// recomputed); a sling supplier's example of the lever rule; US Army Corps of Engineers, Form 16-3 to EM 385-1-1
// (all read in the sources).

import { describe, expect, test } from "vitest";
import {
  craneLoad,
  dynamicFactorOnshore,
  hookLoadChain,
  leverRule,
  loadItems,
  minimumCapacityFactor,
} from "../../src/mechanics/index.ts";
import { within } from "./close.ts";
import { lift160 } from "./lift160.ts";

describe("least capacity over the share (Queensland 2006)", () => {
  test("share of 84 t with two, three, four cranes: 100.8, 111.7, 126.0 t", () => {
    within(84 * minimumCapacityFactor(2), 100.8, 1e-12);
    within(84 * minimumCapacityFactor(3), 111.72, 1e-12);
    within(84 * minimumCapacityFactor(4), 126, 1e-12);
    expect(minimumCapacityFactor(7)).toBe(1.5);
    expect(minimumCapacityFactor(1)).toBe(1);
  });
  test("greatest use of the rating: 83.3, 75.2, 66.7 %, to the printed digit", () => {
    for (const [cranes, printed] of [
      [2, 83.3],
      [3, 75.2],
      [4, 66.7],
    ])
      expect(Math.abs(100 / minimumCapacityFactor(cranes) - printed)).toBeLessThanOrEqual(0.05);
  });
  test("no number of cranes but a whole one from 1", () => {
    for (const cranes of [0, -1, 2.5, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => minimumCapacityFactor(cranes)).toThrow(RangeError);
  });
});

describe("hook load chain (0027/ND)", () => {
  test("160 t, 1.10, hooks 56 m apart, CG at 27 m, 6 t of rigging a hook, 1.05: within 0.05 %", () => {
    const loads = hookLoadChain(lift160);
    within(loads.design, 176, 5e-4);
    within(loads.static[0], 97.14, 5e-4);
    within(loads.static[1], 90.86, 5e-4);
    within(loads.dynamic[0], 102, 5e-4);
    within(loads.dynamic[1], 95.4, 5e-4);
    within(loads.static[0] + loads.static[1], 176 + 12, 1e-12);
  });
});

describe("dynamic factor in air, onshore (0027/ND, table 5-1)", () => {
  test.each([
    [3, 1.1],
    [100, 1.1],
    [100.1, 1.05],
    [300, 1.05],
    [300.1, 1.05],
    [1000, 1.05],
    [1000.1, 1.03],
  ])("%f t: %f", (load, factor) => expect(dynamicFactorOnshore(load)).toBe(factor));
  test("no load that is negative or no number", () => {
    for (const bad of [-1, Number.NaN]) expect(() => dynamicFactorOnshore(bad)).toThrow(RangeError);
  });
});

describe("lever rule (sling supplier's example)", () => {
  test("10 000 lb, CG 2 ft from one pick and 8 ft from the other: 8000 and 2000 lb, the nearer takes more", () => {
    expect(leverRule(10000, 2, 8)).toEqual([8000, 2000]);
  });
  test("a CG outside the picks lets the far one hold down", () => {
    expect(leverRule(100, -2, 6)).toEqual([150, -50]);
  });
  test("picks at one place are refused", () => {
    expect(() => leverRule(100, 1, -1)).toThrow(RangeError);
  });
});

describe("what counts as load (Form 16-3)", () => {
  const all = {
    piece: 42,
    "main block": 1.1,
    "auxiliary block": 0.4,
    "lifting beam": 2.5,
    "slings and shackles": 0.8,
    "jib or extension": 1.5,
    "hoist rope": 0.3,
  };
  test("the sum counts every item", () => {
    const { total, missing } = craneLoad(all);
    within(total, 48.6, 1e-12);
    expect(missing).toEqual([]);
  });
  test("leaving out any of them changes the use of a rating and is said", () => {
    for (const item of loadItems) {
      const rest: Partial<typeof all> = { ...all };
      delete rest[item];
      const { total, missing } = craneLoad(rest);
      expect(missing).toEqual([item]);
      within(total / 60, (48.6 - all[item]) / 60, 1e-12);
      expect(total).toBeLessThan(48.6);
    }
  });
  test("an item the crane does not have is 0, and no weight is negative or without end", () => {
    expect(craneLoad({ ...all, "jib or extension": 0 }).missing).toEqual([]);
    for (const bad of [-1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => craneLoad({ ...all, piece: bad })).toThrow(RangeError);
  });
});
