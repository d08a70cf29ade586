// Values that are not confirmed, in the tables of plan data: marked where they stand, confirmed cell by cell, by the entry, and by being given.
import { expect, test } from "vitest";
import { planParts } from "../../src/app/index.ts";
import type { DataEdit } from "../../src/places/plan/data/changes.ts";
import { confirmedWords, doubtsByPart, doubtWords } from "../../src/places/plan/data/doubts.ts";
import { type DataGround, type DataTableModel, tableOf } from "../../src/places/plan/data/table.ts";
import { confirm, type Plan, type PlanPath, printPath } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";

const why = "starter value";
const places = [
  "site.seats[0].design_m",
  "site.seats[1].design_m",
  "site.seats[1].asBuilt_m",
  "cranes[0].charts",
];
const doubted = (): Plan => ({ ...samplePlan(), unconfirmed: [{ why, places }] });

/** A table of a plan, and what its edits make of the plan. */
function bench(plan: Plan, path: PlanPath, across = false) {
  const done = { plan, label: "" };
  const take = ({ label, change }: DataEdit) => Object.assign(done, { label, plan: change(done.plan) });
  const ground: DataGround = {
    plan,
    errors: [],
    system: "SI",
    edit: take,
    doubt: doubtWords(plan),
    confirm: (paths, of) => {
      const label = `Confirm ${confirmedWords(plan, paths, of)}`;
      take({ label, change: (draft) => confirm(draft, null, paths.map(printPath)) });
      return "";
    },
    open: () => {},
  };
  const model = tableOf(ground, { path, words: "Seats", rowWord: "seat", survey: false, across });
  return { model, done };
}

const columnOf = (model: DataTableModel, key: string) => model.columns.findIndex((one) => one.key === key);
const left = ({ unconfirmed }: Plan) => unconfirmed?.flatMap((group) => group.places) ?? [];

test("a cell says why it is not confirmed, and a cell that opens says how many values in it are not", () => {
  const { model } = bench(doubted(), ["site", "seats"]);
  const column = columnOf(model, "design_m");
  expect(model.cell({ row: 0, column }).doubt).toBe("Not confirmed: starter value.");
  expect(model.cell({ row: 2, column }).doubt).toBe("");
  const words = doubtWords(doubted());
  expect(words(["site", "seats", 1])).toBe("Not confirmed: 2 values in it.");
  expect(words(["site", "seats", 2])).toBe("");
  expect(words(["cranes", 0, "charts", 0, "rows"])).toBe("Not confirmed: starter value.");
});

test("cells are confirmed as they stand, and an entry as one", () => {
  const { model, done } = bench(doubted(), ["site", "seats"]);
  const column = columnOf(model, "design_m");
  model.confirm?.([{ row: 0, column }]);
  expect(left(done.plan)).toEqual(places.slice(1));
  expect(done.label).toMatch(/^Confirm near L: .+ of seats$/);
  expect(model.entry?.doubted({ row: 1, column: 0 })).toBe(true);
  expect(model.entry?.doubted({ row: 2, column: 0 })).toBe(false);
  model.entry?.confirm({ row: 1, column: 0 });
  expect(left(done.plan)).toEqual(places.slice(3));
  expect(done.label).toBe("Confirm near R of seats");
});

test("what is typed, filled down or pasted confirms its cells alone, also where the value is the same, and says so", () => {
  const typed = bench(doubted(), ["site", "seats"]);
  const column = columnOf(typed.model, "design_m");
  typed.model.change("set", [{ spot: { row: 0, column }, value: 12.5 }], 0);
  expect(left(typed.done.plan)).toEqual(places.slice(1));
  expect(typed.done.label).toMatch(/ to 12\.5 m, confirmed$/);
  const filled = bench(doubted(), ["site", "seats"]);
  const same = doubted().site.seats[1].design_m;
  filled.model.change(
    "fill down",
    [1, 2].map((row) => ({ spot: { row, column }, value: same })),
    0,
  );
  expect(left(filled.done.plan)).toEqual([places[0], ...places.slice(2)]);
  expect(filled.done.label).toBe("seats: fill down, 2 cells, 1 of them confirmed");
  const plain = bench(samplePlan(), ["site", "seats"]);
  plain.model.change("set", [{ spot: { row: 0, column }, value: 12.5 }], 0);
  expect(plain.done.label).not.toMatch(/confirmed/);
});

test("rows pasted in place of all take what was not confirmed of the old ones along", () => {
  const { model, done } = bench(doubted(), ["site", "seats"]);
  model.replace?.("paste", [{ spot: { row: 0, column: columnOf(model, "design_m") }, value: 1 }], 1);
  expect(left(done.plan)).toEqual(["cranes[0].charts"]);
});

test("entries that stand side by side are confirmed by their column", () => {
  const { model, done } = bench(doubted(), ["cranes"], true);
  expect(model.entry?.doubted({ row: 0, column: 0 })).toBe(true);
  expect(model.entry?.doubted({ row: 0, column: 1 })).toBe(false);
  model.entry?.confirm({ row: 3, column: 0 });
  expect(left(done.plan)).toEqual(places.slice(0, 3));
});

test("every part counts what is not confirmed in it", () => {
  const counts = doubtsByPart(doubted(), planParts, 0);
  expect([...counts].map(([part, paths]) => [part, paths.length])).toEqual([
    ["seats", 3],
    ["cranes", 1],
  ]);
});
