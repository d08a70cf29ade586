// Edits of a plan by place, over random places: shared structure, undo by the old reference, inverses, renaming.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  canonicalJson,
  checkPlan,
  doubtAt,
  type Plan,
  type PlanPath,
  renamed,
  valueAt,
  withInserted,
  withMoved,
  withRemoved,
  withValue,
} from "../../src/plan/index.ts";
import { namedAt } from "../../src/plan/references.ts";
import { samplePlan } from "./sample.ts";

const plan = samplePlan();

/** Every place of some data, the whole one aside. */
function placesOf(data: unknown, path: PlanPath = []): PlanPath[] {
  if (typeof data !== "object" || data === null) return [path];
  const parts = Array.isArray(data) ? [...data.keys()] : Object.keys(data);
  const inner = parts.flatMap((part) => placesOf(valueAt(data, [part]), [...path, part]));
  return path.length === 0 ? inner : [path, ...inner];
}

const places = placesOf(plan);
const lists = places.filter((path) => Array.isArray(valueAt(plan, path)));
const place = fc.constantFrom(...places);
const list = fc.constantFrom(...lists);

/** Freezes deeply, so that an edit that writes into its plan throws. */
function frozen<T>(data: T): T {
  if (typeof data === "object" && data !== null) {
    Object.values(data).forEach(frozen);
    Object.freeze(data);
  }
  return data;
}

frozen(plan);
const before = canonicalJson(plan);

/** Everything beside the path must be the same object. */
function sharesBeside(a: unknown, b: unknown, path: PlanPath): void {
  for (let i = 0; i < path.length; i++) {
    const [inA, inB] = [valueAt(a, path.slice(0, i)), valueAt(b, path.slice(0, i))] as [object, object];
    for (const key of Object.keys(inA)) {
      if (key === String(path[i])) continue;
      expect(valueAt(inB, [key])).toBe(valueAt(inA, [key]));
    }
  }
}

test("a value is set and everything beside its place is shared; the old reference is the undo", () => {
  fc.assert(
    fc.property(place, (path) => {
      const mark = { mark: 1 };
      const after = withValue(plan, path, mark);
      expect(valueAt(after, path)).toBe(mark);
      sharesBeside(plan, after, path);
      expect(canonicalJson(plan)).toBe(before);
      expect(canonicalJson(withValue(after, path, valueAt(plan, path)))).toBe(before);
    }),
  );
});

test("the value that stands there already gives the very same plan", () => {
  for (const path of places) expect(withValue(plan, path, valueAt(plan, path))).toBe(plan);
});

test("undefined takes a field away, and a path that leads nowhere throws with its place", () => {
  const less = withValue(plan, ["people", "stopWord"], undefined);
  expect(Object.hasOwn(less.people ?? {}, "stopWord")).toBe(false);
  expect(checkPlan(less).ok).toBe(true);
  expect(() => withValue(plan, ["site", "wind", "hills"], 1)).toThrow(/nothing at site\.wind that holds/);
  expect(() => withValue(plan, ["cranes", 9, "id"], "x")).toThrow(/nothing at cranes that holds 9/);
  expect(() => withRemoved(plan, ["cranes"], 2)).toThrow(/allowed are 0 to 1/);
  expect(() => withInserted(plan, ["site"], 0, 1)).toThrow(/no list at site/);
});

test("insert and remove are each other's inverse; entries beside stay the same objects", () => {
  fc.assert(
    fc.property(list, fc.nat(), fc.integer(), (path, n, item) => {
      const old = valueAt(plan, path) as unknown[];
      const index = n % (old.length + 1);
      const more = withInserted(plan, path, index, item);
      const now = valueAt(more, path) as unknown[];
      expect(now).toHaveLength(old.length + 1);
      expect(now[index]).toBe(item);
      old.forEach((one, i) => {
        expect(now[i < index ? i : i + 1]).toBe(one);
      });
      sharesBeside(plan, more, path);
      expect(canonicalJson(withRemoved(more, path, index))).toBe(before);
    }),
  );
});

test("a list that is not set begins with its first entry", () => {
  const more = withInserted(plan, ["site", "edges"], 0, "edge");
  expect(more.site.edges).toEqual(["edge"]);
});

test("an entry moved there and back gives the same plan, and no entry is lost", () => {
  const long = lists.filter((path) => (valueAt(plan, path) as unknown[]).length > 1);
  fc.assert(
    fc.property(fc.constantFrom(...long), fc.nat(), fc.nat(), (path, a, b) => {
      const old = valueAt(plan, path) as unknown[];
      const [from, to] = [a % old.length, b % old.length];
      const moved = withMoved(plan, path, from, to);
      const now = valueAt(moved, path) as unknown[];
      expect(now[to]).toBe(old[from]);
      expect(new Set(now)).toEqual(new Set(old));
      expect(canonicalJson(withMoved(moved, path, to, from))).toBe(before);
    }),
  );
});

/** Every name of the sample with its kind, and its set for girders and steps. */
const names = (Object.keys(namedAt) as (keyof typeof namedAt)[]).flatMap((kind) =>
  namedAt[kind].flatMap((pattern) =>
    places
      .filter((path) => path.length === pattern.length && pattern.every((p, i) => p === "*" || p === path[i]))
      .map((path) => ({ kind, path, name: String(valueAt(plan, path)) })),
  ),
);

test("every kind of name stands in the sample", () => {
  expect(new Set(names.map((one) => one.kind))).toEqual(new Set(Object.keys(namedAt)));
});

/** Places of a plan whose value, or whose own name in a record, is exactly a word. */
const placesOfWord = (of: Plan, word: string) =>
  placesOf(of).filter((path) => valueAt(of, path) === word || path[path.length - 1] === word);

test("renaming keeps the plan sound, changes every reference, and renaming back gives the same plan", () => {
  const one = fc.constantFrom(...names);
  const word = fc.string({ minLength: 1, maxLength: 20, unit: "grapheme-ascii" }).map((s) => `~${s}`);
  fc.assert(
    fc.property(one, word, ({ kind, name }, to) => {
      const after = renamed(plan, kind, name, to);
      const read = checkPlan(after);
      expect(read.ok ? [] : read.errors).toEqual([]);
      expect(placesOfWord(after, to).length).toBeGreaterThan(0);
      expect(canonicalJson(renamed(after, kind, to, name))).toBe(before);
      expect(canonicalJson(plan)).toBe(before);
    }),
  );
});

test("a thing renamed alone is an error wherever something refers to it; renamed with its references it is none", () => {
  // Records are readings of what was done: the reader does not compare their names with the plan.
  const bare = withValue(plan, ["record"], undefined);
  for (const { kind, path, name } of names) {
    const to = `~${name}`;
    const after = renamed(bare, kind, name, to);
    const referred = placesOfWord(after, to).length > 1;
    expect([kind, name, checkPlan(withValue(bare, path, to)).ok]).toEqual([kind, name, !referred]);
    expect([kind, name, checkPlan(after).ok]).toEqual([kind, name, true]);
  }
  const record = renamed(plan, "step", "05", "5a").record ?? [];
  expect(record[0].step).toBe("5a");
});

test("a girder's bearings are renamed with it where steps, acceptances and settlements name them", () => {
  const after = renamed(plan, "girder", "L", "left");
  const steps = after.sets[0].steps;
  expect(steps.find((step) => step.id === "20")?.carries).toEqual(["far left"]);
  expect(after.site.seats.map((seat) => seat.girder)).toEqual(["left", "R", "left", "R"]);
  expect(after.sets[0].onTransporters[0].packing_mm).toEqual({ left: 0, R: 4 });
});

test("a doubt about an entry that is kept by a girder's name goes along with the name", () => {
  const listed: Plan = {
    ...plan,
    unconfirmed: [{ why: "starter value", places: ["sets[0].onTransporters[0].packing_mm.L", "cranes[0]"] }],
    sets: [{ ...plan.sets[0], unconfirmed: ["onTransporters[1].packing_mm.L", "camber"] }],
  };
  const after = renamed(listed, "girder", "L", "far left");
  const place = 'packing_mm["far left"]';
  expect(after.unconfirmed?.[0].places).toEqual([`sets[0].onTransporters[0].${place}`, "cranes[0]"]);
  expect(after.sets[0].unconfirmed).toEqual([`onTransporters[1].${place}`, "camber"]);
  expect(doubtAt(after, ["sets", 0, "onTransporters", 0, "packing_mm", "far left"])).toBe("starter value");
  expect(renamed(after, "girder", "far left", "L")).toEqual(listed);
  expect(renamed(listed, "girder", "R", "right").unconfirmed).toBe(listed.unconfirmed);
});

/** The sample with a second set of the same girders and steps. */
function twoSets(named: boolean): Plan {
  const sample = samplePlan();
  const second = structuredClone(sample.sets[0]);
  second.id = "S2";
  const both = <T extends object>(items: T[]): T[] =>
    named ? ["S1", "S2"].flatMap((set) => items.map((item) => ({ ...item, set }))) : items;
  return {
    ...sample,
    sets: [sample.sets[0], second],
    lashings: sample.lashings,
    site: { ...sample.site, seats: both(sample.site.seats), bearings: both(sample.site.bearings) },
  };
}

test("of two sets with the same names one alone is renamed where every shared place names its set", () => {
  const two = { ...twoSets(true), lashings: [] };
  const plain = { ...two, sets: two.sets.map((set) => ({ ...set, steps: [] })), accept: [], record: [] };
  const bare: Plan = { ...plain, expected: [], site: { ...plain.site, below: { kind: "road" } } };
  expect(checkPlan(bare).ok).toBe(true);
  const after = renamed(bare, "girder", "L", "left", "S2");
  expect(after.sets.map((set) => set.girders[0].line)).toEqual(["L", "left"]);
  expect(after.sets[0]).toBe(bare.sets[0]);
  expect(after.site.seats.filter((seat) => seat.girder === "left").map((seat) => seat.set)).toEqual([
    "S2",
    "S2",
  ]);
  expect(checkPlan(after).ok).toBe(true);
});

test("of two sets that share seats without naming a set, both are renamed", () => {
  const after = renamed(twoSets(false), "girder", "L", "left", "S2");
  expect(after.sets.map((set) => set.girders[0].line)).toEqual(["left", "left"]);
  expect(checkPlan(after).ok).toBe(true);
});
