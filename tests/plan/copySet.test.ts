// A set copied from another: what it inherits is listed until it is confirmed, names are its own, the plan still reads.
// Bookkeeping; no outside source.
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  bearingsOf,
  checkPlan,
  compareSets,
  confirm,
  copySet,
  leavesAt,
  openItems,
  type Plan,
  placesInPlan,
  placesMoved,
  placesToConfirm,
  printPath,
  readPlace,
  readPlan,
  seatsOf,
  sentence,
  unconfirmedIn,
  withInserted,
  withMoved,
  withoutSet,
  withRemoved,
} from "../../src/plan/index.ts";
import { samplePlan } from "./sample.ts";

function demo(): Plan {
  const read = readPlan(readFileSync(new URL("../../scenarios/demo.json", import.meta.url), "utf8"));
  if (!read.ok) throw new Error(read.errors.map(sentence).join("\n"));
  return read.plan;
}

function reads(plan: Plan): Plan {
  const read = checkPlan(JSON.parse(JSON.stringify(plan)));
  if (!read.ok) throw new Error(read.errors.map(sentence).join("\n"));
  return read.plan;
}

const listed = (plan: Plan) => unconfirmedIn(plan).length;

describe("copies", () => {
  const plan = demo();
  const two = copySet(plan, "set-1", "set-2", "Set 2");
  const [first, second] = two.sets;

  test("the plan reads; the first set is as it was, and everything of it is shared or alike", () => {
    reads(two);
    expect(first).toBe(plan.sets[0]);
    const { unconfirmed: _, start: __, steps: ___, name: ____, id: _____, ...rest } = second;
    const { start, steps, name, id, times, ...mine } = first;
    expect(rest).toEqual(mine);
    // Two girders 3.2 m apart lie from -1.6 to 1.6 m: the copy begins one spacing beyond.
    expect(second.start.y_m).toBeCloseTo((start.y_m ?? 0) + 6.4, 9);
    expect([name, id, times === undefined, steps.length]).toEqual([
      "Set 1",
      "set-1",
      false,
      second.steps.length,
    ]);
  });

  test("every value is listed but names and times; the steps as one", () => {
    const places = new Set(second.unconfirmed);
    for (const path of leavesAt(second, [])) {
      const place = printPath(path);
      const named =
        /^(id|name|unconfirmed|steps)|\.(line|girder|transporter|crane|rigging|name|item|covers|kind)$/;
      expect(places.has(place), place).toBe(!named.test(place));
    }
    expect(places.has("steps")).toBe(true);
  });

  test("seats, bearings and lashings are its own, aside; seats are not surveyed", () => {
    expect(bearingsOf(two, first).map((b) => b.set)).toEqual(["set-1", "set-1", "set-1", "set-1"]);
    expect(bearingsOf(two, second).map((b) => b.y_m)).toEqual([8, 4.8, 8, 4.8]);
    expect(seatsOf(two, second).map((s) => s.asBuilt_m)).toEqual([null, null, null, null]);
    const ids = two.lashings.map((l) => l.id);
    expect(new Set(ids).size).toBe(8);
    const used = second.steps.flatMap((s) => (s.do === "lash" || s.do === "unlash" ? s.lashings : []));
    for (const id of used) expect(two.lashings.find((l) => l.id === id)?.set).toBe("set-2");
  });

  test("a third copy gives a seat shared by two sets to each of them", () => {
    const three = reads(copySet(two, "set-2", "set-3", "Set 3"));
    expect(three.site.seats.map((s) => s.set)).toEqual(
      ["set-1", "set-2", "set-3"].flatMap((id) => [id, id, id, id]),
    );
    expect(bearingsOf(three, three.sets[2]).map((b) => b.y_m)).toEqual([14.4, 11.2, 14.4, 11.2]);
  });

  test("an id that is taken, or a set that is not there, changes nothing", () => {
    expect(copySet(plan, "set-1", "set-1", "again")).toBe(plan);
    expect(copySet(plan, "set-9", "set-2", "none")).toBe(plan);
  });

  test("taking the copy out again leaves as many places, seats and lashings as before", () => {
    const back = reads(withoutSet(two, "set-2"));
    expect(back.sets).toEqual(plan.sets);
    expect(back.lashings.map((l) => l.id)).toEqual(plan.lashings.map((l) => l.id));
    expect(back.site.bearings).toHaveLength(4);
    expect(listed(back)).toBe(listed(plan));
  });
});

describe("confirming", () => {
  const two = copySet(demo(), "set-1", "set-2", "Set 2");

  test("what is not confirmed stays an open item until it is: one value, a part, all", () => {
    const items = (plan: Plan) => openItems(plan).filter((item) => item.unconfirmed === true).length;
    expect(items(two)).toBeGreaterThan(10);
    const one = confirm(two, "set-2", ["girders[0].camber_mm"]);
    expect(listed(one)).toBe(listed(two) - 1);
    expect(items(one)).toBe(items(two));
    const girder = confirm(one, "set-2", ["girders[0]"]);
    expect(girder.sets[1].unconfirmed?.some((place) => place.startsWith("girders[0]"))).toBe(false);
    expect(items(girder)).toBe(items(two) - 1);
    const all = confirm(girder, "set-2", placesToConfirm(girder.sets[1]));
    expect(all.sets[1].unconfirmed).toBeUndefined();
    const rows = compareSets(all, ["set-2"]);
    const rest = placesInPlan(
      all,
      "set-2",
      rows.filter((row) => row.doubts[0] !== null).map((row) => row.place),
    );
    const whole = confirm(all, null, [...rest, "lashings"]);
    expect(listed(whole)).toBe(0);
    expect(whole.unconfirmed).toBeUndefined();
    reads(whole);
  });

  test("a place that stands for several values is split when one of them is confirmed", () => {
    const plan = samplePlan();
    delete plan.sets[0].unconfirmed;
    plan.unconfirmed = [{ why: "a test", places: ["cranes[0].position", "site.bearings"] }];
    const next = confirm(plan, null, ["cranes[0].position.y_m"]);
    expect(next.unconfirmed?.[0].places).toEqual([
      "cranes[0].position.chainage_m",
      "cranes[0].position.elevation_m",
      "site.bearings",
    ]);
    expect(confirm(next, null, ["cranes", "site"]).unconfirmed).toBeUndefined();
  });

  test("places go along when items of a list are moved or taken out", () => {
    const plan = samplePlan();
    plan.unconfirmed = [{ why: "a test", places: ["cranes[0].mass_t", "cranes[1].mass_t"] }];
    const swapped = placesMoved(plan, ["cranes"], (i) => 1 - i);
    expect(swapped.unconfirmed?.[0].places).toEqual(["cranes[1].mass_t", "cranes[0].mass_t"]);
    const fewer = placesMoved(plan, ["cranes"], (i) => (i === 0 ? null : i - 1));
    expect(fewer.unconfirmed?.[0].places).toEqual(["cranes[0].mass_t"]);
  });

  test("edits of lists take the places along: inserted before, moved, taken out", () => {
    const plan = samplePlan();
    const places = ["cranes[0].mass_t", "cranes[1].mass_t"];
    plan.unconfirmed = [{ why: "a test", places }];
    plan.sets[0].unconfirmed = ["girders[0].camber_mm", "camber"];
    const placesOf = (next: Plan) => next.unconfirmed?.[0].places;
    expect(placesOf(withInserted(plan, ["cranes"], 1, plan.cranes[0]))).toEqual([
      "cranes[0].mass_t",
      "cranes[2].mass_t",
    ]);
    expect(placesOf(withMoved(plan, ["cranes"], 0, 1))).toEqual(["cranes[1].mass_t", "cranes[0].mass_t"]);
    expect(placesOf(withRemoved(plan, ["cranes"], 0))).toEqual(["cranes[0].mass_t"]);
    const girders = ["sets", 0, "girders"];
    const inserted = withInserted(plan, girders, 0, plan.sets[0].girders[0]);
    expect(inserted.sets[0].unconfirmed).toEqual(["girders[1].camber_mm", "camber"]);
    // A list of which nothing is listed leaves the lists as they are, to the very object.
    expect(withMoved(plan, ["rigging"], 0, 0)).toBe(plan);
    expect(withInserted(plan, ["lashings"], 0, plan.lashings[0]).unconfirmed).toBe(plan.unconfirmed);
  });

  test("printed paths are read back; free words are none", () => {
    for (const path of [["sets", 0, "girders", 1, "y_m"], ["a", "b c", 3], ["unconfirmed"]])
      expect(readPlace(printPath(path))).toEqual(path);
    expect(readPlace("pick stations")).toBeNull();
  });
});

describe("sets side by side", () => {
  test("a copy differs in nothing but its place; a change shows with both values and who is not confirmed", () => {
    const two = copySet(demo(), "set-1", "set-2", "Set 2");
    const differing = compareSets(two, ["set-1", "set-2"]).filter((row) => row.differs);
    expect(differing.map((row) => row.place).filter((place) => !/^(seat|bearing) /.test(place))).toEqual([
      "start.y_m",
      "times.starts",
      "times.contingency_min",
    ]);
    const changed: Plan = {
      ...two,
      sets: [two.sets[0], { ...two.sets[1], fabricationFactor_pct: 9 }],
    };
    const row = compareSets(changed, ["set-1", "set-2"]).find((r) => r.place === "fabricationFactor_pct");
    expect(row).toMatchObject({ values: [11, 9], differs: true });
    expect(row?.doubts.map((doubt) => doubt !== null)).toEqual([false, true]);
  });
});
