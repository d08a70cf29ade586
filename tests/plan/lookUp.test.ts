// Looking things up in a plan, what stands in where it is blank, and the tour at the head of the layer.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import * as layer from "../../src/plan/index.ts";
import { samplePlan } from "./sample.ts";

const { bearingsOf, byId, camberAt, jackedGroups, openItems, pathAt, pickOf, seatOf, setLength, spreadOf } =
  layer;

describe("looking up", () => {
  const plan = samplePlan();
  const set = plan.sets[0];

  test("length, camber, path: straight between points", () => {
    expect(setLength(set)).toBe(36);
    expect([-1, 0, 9, 18, 27, 40].map((s) => camberAt(set.girders[0], s))).toEqual([0, 0, 30, 60, 30, 0]);
    expect(camberAt({ ...set.girders[0], camber_mm: [] }, 5)).toBe(0);
    expect(pathAt(plan, -30)).toEqual({
      elevation_m: expect.closeTo(100.3, 9),
      grade_pct: expect.closeTo(1, 9),
      crossfall_pct: 0.5,
    });
    expect(pathAt(plan, -60)?.elevation_m).toBe(100);
    expect(pathAt(plan, 40.6)?.grade_pct).toBe(0);
    expect(pathAt(plan, 41)).toBeNull();
  });

  test("supports of a set by name; a set of its own bearings when sets share girder names", () => {
    expect(layer.supportNames(plan, set)).toEqual([
      "far crane",
      "near crane",
      "rear left",
      "rear right",
      "front left",
      "front right",
      "near L",
      "near R",
      "far L",
      "far R",
    ]);
    expect(seatOf(plan, set, "near", "L")?.asBuilt_m).toBe(98.203);
    expect(seatOf(plan, set, "near", "M")).toBeNull();
    const other = samplePlan();
    other.site.bearings[0].set = "S2";
    expect(bearingsOf(other, set)).toHaveLength(3);
  });

  test("groups that a jacking step moves", () => {
    const groups = set.steps.map((step) => jackedGroups(plan, step));
    expect(groups[6]).toEqual(["front left", "front right"]);
    expect(groups[7]).toEqual(["rear left", "rear right"]);
    expect(groups[0]).toEqual([]);
  });

  test("an id that is none says which there are", () => {
    expect(pickOf(set, "far-1")?.at_m).toBe(33);
    expect(pickOf(set, "far-2")).toBeNull();
    expect(() => byId(plan.cranes, "far-2")).toThrow('found no "far-2"; known are far-1, near-1');
  });
});

describe("blank is not zero", () => {
  test("starter values stand in and are told", () => {
    const { spread, assumed } = spreadOf(samplePlan());
    expect(spread.weight_pct).toEqual([-3, 5]);
    expect(spread.stiffness_pct).toEqual(layer.starterSpread.stiffness_pct);
    expect(assumed).toEqual(["cgAcross_m", "stiffness_pct", "hookMismatch_mm", "settlement_mm"]);
  });

  test("open items name their places", () => {
    const items = openItems(samplePlan()).map((item) => item.path);
    expect(items).toEqual([
      "header.preparedBy",
      "header.checkedBy",
      "spread.cgAcross_m",
      "spread.stiffness_pct",
      "spread.hookMismatch_mm",
      "spread.settlement_mm",
      "site.seats[2].asBuilt_m",
      "site.seats[3].asBuilt_m",
      "sets[0].unconfirmed[0]",
      "rigging[0].parts[0].place",
      "sets[0].picks[0].attachment",
      "sets[0].picks[1].attachment",
      "sets[0].looseParts",
    ]);
    const bare = samplePlan();
    delete bare.sets[0].fabricationFactor_pct;
    bare.limits = { use: [], rules: [], overrides: [] };
    expect(openItems(bare).map((item) => item.path)).toContain("sets[0].fabricationFactor_pct");
    expect(openItems(bare).map((item) => item.what)).toContain("no limit set");
  });

  test("what the girders' strength lacks is told once for all parts of one kind, with what stands in", () => {
    const before = openItems(samplePlan()).length;
    const lacking = (change: (plan: ReturnType<typeof samplePlan>) => void) => {
      const plan = samplePlan();
      change(plan);
      const items = openItems(plan);
      expect(items.length).toBe(before + 1);
      const known = openItems(samplePlan()).map((item) => item.path);
      return items.filter((item) => !known.includes(item.path))[0];
    };
    const weak = lacking((plan) => {
      delete plan.sets[0].girders[1].pieces[1].yield_MPa;
    });
    expect(weak.path).toBe("sets[0].girders[1].pieces[1].yield_MPa");
    expect(weak.what).toBe("girder R, 1 of 2 pieces: blank: the strength of this girder is not judged");
    const bunks = lacking((plan) => {
      for (const bunk of plan.transporters[0].bunks) delete bunk.length_mm;
    });
    expect(bunks.path).toBe("transporters[0].bunks[0].length_mm");
    expect(bunks.what).toContain("0 mm stands in");
    const welds = lacking((plan) => {
      for (const piece of plan.sets[0].girders[0].pieces) delete piece.weldLeg_mm;
    });
    expect(welds.what).toContain("girder L, 2 of 2 pieces: blank: 0 mm stands in");
    const paths = [
      lacking((plan) => {
        delete plan.site.bearings[2].length_mm;
      }),
      lacking((plan) => {
        delete plan.sets[0].picks[1].length_mm;
      }),
      lacking((plan) => {
        delete plan.sets[0].splices[1].shear_kN;
      }),
      lacking((plan) => {
        delete plan.sets[0].stiffeners?.[0].thickness_mm;
      }),
    ].map((item) => item.path);
    expect(paths).toEqual([
      "site.bearings[2].length_mm",
      "sets[0].picks[1].length_mm",
      "sets[0].splices[1].shear_kN",
      "sets[0].stiffeners[0]",
    ]);
  });

  test("a set's yield stress stands for its pieces that have none", () => {
    const plan = samplePlan();
    for (const girder of plan.sets[0].girders) for (const piece of girder.pieces) delete piece.yield_MPa;
    const [set] = plan.sets;
    expect(layer.yieldOf(set, set.girders[0].pieces[0])).toBeNull();
    set.yield_MPa = 355;
    expect(layer.yieldOf(set, set.girders[0].pieces[0])).toBe(355);
    expect(openItems(plan).filter((item) => item.path.includes("yield"))).toEqual([]);
  });

  test("steel and gravity stand in by their published values, or come from the plan", () => {
    const plan = samplePlan();
    expect(layer.gravityOf(plan)).toBe(9.80665);
    expect(layer.steelOf(plan.sets[0])).toEqual({ density: 7850, E: 210e9, G: 81e9 });
    plan.site.gravity_m_per_s2 = 9.81;
    plan.sets[0].E_GPa = 200;
    expect(layer.gravityOf(plan)).toBe(9.81);
    expect(layer.steelOf(plan.sets[0]).E).toBe(200e9);
  });
});

describe("the tour", () => {
  test("says what is true", () => {
    const head = readFileSync(new URL("../../src/plan/index.ts", import.meta.url), "utf8");
    const block = /```ts\n([\s\S]*?)```/.exec(head)?.[1] ?? "";
    const lines = block
      .split("\n")
      .map((line) => line.replace(/^ \* ?/, ""))
      .filter((line) => !line.startsWith("import"));
    const told = lines.map((line) => /^(.*); \/\/ => (.*)$/.exec(line));
    const body = lines.map((line, i) => {
      const hit = told[i];
      return hit === null ? line : `told.push([${hit[1]}, ${hit[2]}]);`;
    });
    const run = new Function(...Object.keys(layer), `const told = []; ${body.join("\n")}; return told;`);
    const pairs: [unknown, unknown][] = run(...Object.values(layer));
    expect(pairs.length).toBeGreaterThanOrEqual(6);
    for (const [found, said] of pairs) expect(found).toEqual(said);
  });
});
