// Files: any valid plan saved and opened is equal; thirty broken files leave the plan on screen and say what is wrong.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type AppState,
  changesUnsaved,
  createApp,
  type FileToRead,
  fileName,
  type Ground,
} from "../../src/app/index.ts";
import { checkPlan, type Plan, planHash, sentence, writePlan } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { chance, varied } from "../sequence/chance.ts";
import { scenario } from "../sequence/plans.ts";
import { kinds, variants } from "../variants/variants.ts";
import { brokenFiles } from "./brokenFiles.ts";
import { madeUpBrowser } from "./madeUpDesk.ts";

function pageOf() {
  const browser = madeUpBrowser();
  const it = browser.page("page");
  const client = { solve: () => new Promise<never>(() => {}) } as unknown as Ground["client"];
  const nothing = () => {
    throw new Error("nothing is solved here");
  };
  const app = createApp({
    client,
    desk: it.desk,
    prepare: nothing,
    poseAt: nothing,
    whenIdle: () => {},
    now: Date.now,
    nextFrame: () => {},
    stillness: () => true,
  });
  return { ...it, browser, app, state: (): AppState => app.store.getState() };
}

/** Texts that a form may hold: any letters, signs of JSON, line ends, and halves of letters that UTF-8 has no room for. */
const words = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 30 }),
  fc.constantFrom('"', "\\", "\u2028", "\u0000", "é́", "𝔸"),
);
const masses = fc.double({ min: 0.1, max: 900, noNaN: true });

/** Valid plans: seeded changes of the scenarios, with any title, notes and masses. */
const plans = fc
  .record({
    seed: fc.nat(),
    of: fc.constantFrom("varied", ...kinds),
    title: words,
    notes: words,
    mass: masses,
  })
  .map(({ seed, of, title, notes, mass }): Plan => {
    const base =
      of === "varied" ? varied("demo", chance(seed)) : allVariants[of][seed % allVariants[of].length].plan;
    const [first, ...rest] = base.transporters;
    return {
      ...base,
      header: { ...base.header, title, notes },
      transporters: [{ ...first, mass_t: mass }, ...rest],
    };
  });
const allVariants = Object.fromEntries(kinds.map((kind) => [kind, variants(kind)])) as Record<
  (typeof kinds)[number],
  ReturnType<typeof variants>
>;

test("any valid plan saved to a file and opened from it is equal, with the same hash", async () => {
  let valid = 0;
  await fc.assert(
    fc.asyncProperty(plans, async (plan) => {
      if (!checkPlan(plan).ok) return;
      valid += 1;
      const { app, files, state } = pageOf();
      expect(app.openPlan(plan, "a plan")).toBe(true);
      files.next = "a plan.json";
      await app.save();
      const text = files.texts.get("a plan.json") ?? "";
      const other = pageOf();
      expect(await other.app.openFile(new File([text], "a plan.json"))).toBe(true);
      const opened = other.state().document?.plan ?? samplePlan();
      expect(opened).toEqual(JSON.parse(JSON.stringify(plan)));
      expect(planHash(opened)).toBe(planHash(plan));
      expect(writePlan(opened)).toBe(text);
      expect(state()).toMatchObject({ notFiled: "", filed: { is: "saved" } });
    }),
    { numRuns: 60 },
  );
  // The generator makes valid plans, but for a text that the reader refuses.
  expect(valid).toBeGreaterThan(30);
}, 120_000);

/** Thirty files that are no plan, each in its own way. */
function filesToOpen(): [string, FileToRead][] {
  const files = brokenFiles(scenario("demo")).map(([name, body]): [string, FileToRead] => [
    name,
    new File([body], `${name}.json`),
  ]);
  const never = () => Promise.reject(new Error("it must not be read"));
  files.push(["60 MB", { name: "60 MB.json", size: 60e6, text: never }]);
  const gone = new DOMException("gone", "NotFoundError");
  files.push(["a file that is gone", { name: "gone.json", size: 10, text: () => Promise.reject(gone) }]);
  return files;
}

describe("a broken file leaves the plan as it is, and says where, what, what is allowed and how to mend it:", () => {
  const { app, state } = pageOf();
  app.openPlan(scenario("demo"), "demo.json");
  app.edit("Title changed", (plan) => ({ ...plan, header: { ...plan.header, title: "mine" } }));
  const before = state();
  test.each(filesToOpen())("%s", async (_, file) => {
    expect(await app.openFile(file)).toBe(false);
    const { failure, document, history } = state();
    expect(document).toBe(before.document);
    expect(history).toBe(before.history);
    expect(failure?.name).toBe(file.name);
    expect(failure?.errors.length).toBeGreaterThan(0);
    for (const error of failure?.errors ?? []) {
      for (const part of [error.path, error.found, error.allowed, error.mend]) expect(part).not.toBe("");
      expect(sentence(error).length).toBeLessThan(600);
    }
    app.closeFailure();
    app.edit("and on", (plan) => ({ ...plan, header: { ...plan.header, notes: "still editable" } }));
    app.undo();
    expect(state().document?.draft).toBe(before.document?.draft);
    app.store.setState({ document: before.document, history: before.history });
  });
});

test("saving goes to the file that was opened or named, until another one is named", async () => {
  const { app, files, state } = pageOf();
  app.openPlan(samplePlan(), "sample");
  files.next = "first.json";
  await app.save();
  files.next = "second.json";
  app.edit("one", (plan) => ({ ...plan, header: { ...plan.header, title: "one" } }));
  expect(state().history.saved.index).not.toBe(state().history.index);
  await app.save();
  expect([...files.texts.keys()]).toEqual(["first.json"]);
  expect(JSON.parse(files.texts.get("first.json") ?? "").header.title).toBe("one");
  await app.saveAs();
  expect([...files.texts.keys()]).toEqual(["first.json", "second.json"]);
  expect(state()).toMatchObject({
    filed: { is: "saved", name: "second.json" },
    document: { name: "second.json" },
  });
});

test("a file that cannot be written is said, and the changes go on being counted as in no file", async () => {
  const { app, browser, files, state } = pageOf();
  app.openPlan(samplePlan(), "sample");
  files.next = "x.json";
  await app.save();
  app.edit("one", (plan) => ({ ...plan, header: { ...plan.header, title: "one" } }));
  browser.refuses = new DOMException("no room on the disk", "QuotaExceededError");
  await app.save();
  expect(state().notFiled).toMatch(/not written.*no room on the disk/);
  expect(changesUnsaved(state().history)).toBe(1);
  browser.refuses = null;
  await app.save();
  expect(state().notFiled).toBe("");
  expect(changesUnsaved(state().history)).toBe(0);
});

test("the list of plans holds the last twelve files, newest first, and each can be taken off", async () => {
  const { app, state } = pageOf();
  for (let i = 1; i <= 15; i++) await app.openFile(new File([JSON.stringify(samplePlan())], `${i}.json`));
  await app.listRecent();
  expect(state().recent).toHaveLength(12);
  expect(state().recent.map(({ name }) => name)).toContain("15.json");
  expect(state().recent.map(({ name }) => name)).not.toContain("3.json");
  await app.forgetRecent(state().recent[0].key);
  expect(state().recent).toHaveLength(11);
  await app.openRecent(state().recent[0].key);
  expect(state().document?.name).toBe(state().recent[0].name);
});

test("names of files have no signs that file systems refuse, and the ending of plan files", () => {
  expect(fileName("demo.json")).toBe("demo.json");
  expect(fileName("Span 3 / set 1")).toBe("Span 3 - set 1.json");
  expect(fileName("..")).toBe("plan.json");
  expect(fileName("Brücke: Süd")).toBe("Brücke- Süd.json");
});
