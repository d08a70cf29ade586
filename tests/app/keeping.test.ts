// Work that is kept as it is made: nothing lost when a page ends, work of a page that is gone found again, pages apart.
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { type App, createApp, type Ground, type Notes } from "../../src/app/index.ts";
import { type Plan, planHash } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { madeUpBrowser, madeUpNotes } from "./madeUpDesk.ts";

const titled = (title: string) => (plan: Plan) => ({ ...plan, header: { ...plan.header, title } });
const faulty = (plan: Plan): Plan => ({ ...plan, sets: [] });

type Browser = ReturnType<typeof madeUpBrowser>;
let clock = 0;

/** A page with an app on it; `open` is what its address asks for. */
function pageOf(browser: Browser, name: string, ownNotes?: Notes) {
  const it = browser.page(name, ownNotes);
  const client = { solve: () => new Promise<never>(() => {}) } as unknown as Ground["client"];
  const ground: Ground = {
    client,
    desk: it.desk,
    prepare: () => {
      throw new Error("nothing is solved here");
    },
    poseAt: () => {
      throw new Error("nothing is solved here");
    },
    whenIdle: () => {},
    now: () => ++clock,
    nextFrame: () => {},
    stillness: () => true,
  };
  const app = createApp(ground);
  const begin = (address = "", named = false) =>
    app.begin({
      address,
      named,
      open: async () => void app.openText(JSON.stringify(titled("example")(samplePlan())), "example.json"),
    });
  return { ...it, app, begin };
}

const titleOf = (app: App) => app.store.getState().document?.draft.header.title;
const state = (app: App) => app.store.getState();

beforeEach(() => {
  vi.useFakeTimers();
  clock = 1000;
});
afterEach(() => void vi.useRealTimers());

describe("keeping", () => {
  test("every change is on the shelf before the next piece of work, with its labels and its time", async () => {
    const browser = madeUpBrowser();
    const { app, begin } = pageOf(browser, "a");
    await begin();
    expect(browser.boxes.work.size).toBe(0);
    for (let i = 1; i <= 5; i++) {
      app.edit(`change ${i}`, titled(`title ${i}`));
      await vi.advanceTimersByTimeAsync(0);
      const [work] = [...browser.boxes.work.values()] as {
        draft: string;
        labels: string[];
        changes: number;
      }[];
      expect(JSON.parse(work.draft).header.title).toBe(`title ${i}`);
      expect(work.changes).toBe(i);
      expect(work.labels.at(-1)).toBe(`change ${i}`);
    }
    expect(browser.boxes.work.size).toBe(1);
    expect(state(app).keeping).toMatchObject({ is: "kept" });
  });

  test("changes made while one is being written are written together, and the last of them is what stays", async () => {
    const browser = madeUpBrowser();
    const { app, begin } = pageOf(browser, "a");
    await begin();
    browser.waiting = [];
    for (let i = 1; i <= 50; i++) app.edit(`change ${i}`, titled(`title ${i}`));
    for (let i = 0; i < 5; i++) {
      browser.waiting.splice(0).forEach((go) => {
        go();
      });
      await vi.advanceTimersByTimeAsync(0);
    }
    expect(browser.written).toBe(2);
    const [work] = [...browser.boxes.work.values()] as { draft: string }[];
    expect(JSON.parse(work.draft).header.title).toBe("title 50");
  });

  test("what is tried out is kept too, within a second, and told as one change", async () => {
    const browser = madeUpBrowser();
    const { app, begin } = pageOf(browser, "a");
    await begin();
    for (let i = 0; i < 30; i++) {
      app.tryOut(titled(`drag ${i}`));
      await vi.advanceTimersByTimeAsync(30);
    }
    await vi.advanceTimersByTimeAsync(1000);
    expect(browser.written).toBeLessThan(10);
    const [work] = [...browser.boxes.work.values()] as { draft: string; changes: number }[];
    expect(JSON.parse(work.draft).header.title).toBe("drag 29");
    expect(work.changes).toBe(1);
  });

  test("a full disk is said, asked about before leaving, tried again, and editing goes on", async () => {
    const browser = madeUpBrowser();
    const { app, begin, page } = pageOf(browser, "a");
    await begin();
    browser.refuses = new DOMException("", "QuotaExceededError");
    app.edit("one", titled("one"));
    await vi.advanceTimersByTimeAsync(0);
    expect(state(app).keeping).toEqual({ is: "failed", words: "the storage of this browser is full" });
    expect(page.asksBeforeLeaving).toBe(true);
    app.edit("two", titled("two"));
    await vi.advanceTimersByTimeAsync(0);
    expect(titleOf(app)).toBe("two");
    browser.refuses = null;
    await vi.advanceTimersByTimeAsync(60_000);
    expect(state(app).keeping.is).toBe("kept");
    expect(page.asksBeforeLeaving).toBe(false);
    const [work] = [...browser.boxes.work.values()] as { draft: string }[];
    expect(JSON.parse(work.draft).header.title).toBe("two");
  });

  test("where storage is forbidden, that is said and the plan can be edited and downloaded", async () => {
    const browser = madeUpBrowser();
    browser.refuses = new DOMException("", "SecurityError");
    const { app, begin, files } = pageOf(browser, "a");
    await begin();
    app.edit("one", titled("one"));
    await vi.advanceTimersByTimeAsync(0);
    expect(state(app).keeping).toMatchObject({
      is: "failed",
      words: expect.stringMatching(/forbids storage/),
    });
    await app.save();
    expect(files.downloads).toHaveLength(1);
    expect(JSON.parse(files.downloads[0][1]).header.title).toBe("one");
    expect(state(app).filed).toMatchObject({ is: "downloaded", name: "example.json" });
  });
});

describe("recovering", () => {
  /** A page that makes some changes and ends. */
  async function leftBy(browser: Browser, name: string, title: string, told = true) {
    const it = pageOf(browser, name);
    await it.begin();
    it.app.edit(`to ${title}`, titled(title));
    await vi.advanceTimersByTimeAsync(0);
    it.end(told);
    return it;
  }

  test("the next page goes on with the work, and says which, when, and how many changes no file holds", async () => {
    const browser = madeUpBrowser();
    const before = await leftBy(browser, "a", "mine", false);
    const { app, begin } = pageOf(browser, "b");
    await begin();
    expect(titleOf(app)).toBe("mine");
    expect(state(app).recovered).toMatchObject({
      name: "example.json",
      title: "mine",
      changes: 1,
      labels: ["to mine"],
      at: (state(before.app).keeping as { at: number }).at,
    });
    expect(state(app).history.entries[0].label).toBe("Recovered, last: to mine");
    expect(browser.boxes.work.size).toBe(1);
    await app.keepRecovered();
    expect(state(app).recovered).toBeNull();
    expect(titleOf(app)).toBe("mine");
  });

  test("put away, it stays on the list of plans and can be opened from there; nothing is deleted", async () => {
    const browser = madeUpBrowser();
    await leftBy(browser, "a", "mine");
    const { app, begin } = pageOf(browser, "b");
    await begin();
    await app.putRecoveredAway();
    await vi.advanceTimersByTimeAsync(0);
    expect(titleOf(app)).toBe("example");
    await app.listRecent();
    const [plan] = state(app).recent;
    expect(plan).toMatchObject({ title: "mine", changes: 1 });
    await app.openRecent(plan.key);
    expect(titleOf(app)).toBe("mine");
    // Nor is it opened unasked by the next page.
    await app.putRecoveredAway();
    await vi.advanceTimersByTimeAsync(0);
    const next = pageOf(browser, "c");
    await next.begin();
    expect(titleOf(next.app)).toBe("example");
    await app.listRecent();
    await app.forgetRecent(state(app).recent[0].key);
    expect(state(app).recent).toEqual([]);
  });

  test("a page ended amid its writing has left a note, and the note is the later one", async () => {
    const browser = madeUpBrowser();
    const it = pageOf(browser, "a");
    await it.begin();
    it.app.edit("one", titled("one"));
    await vi.advanceTimersByTimeAsync(0);
    browser.waiting = [];
    it.app.edit("two", titled("two"));
    it.app.edit("three", titled("three"));
    it.end(true);
    browser.waiting.splice(0).forEach((go) => {
      go();
    });
    browser.waiting = null;
    await vi.advanceTimersByTimeAsync(0);
    const { app, begin } = pageOf(browser, "b");
    await begin();
    expect(titleOf(app)).toBe("three");
    await vi.advanceTimersByTimeAsync(0);
    expect([...browser.notes.held.keys()]).toEqual([]);
  });

  test("pages that are open do not touch each other's work, and work is taken over by one page alone", async () => {
    const browser = madeUpBrowser();
    const [a, b] = [pageOf(browser, "a"), pageOf(browser, "b")];
    await Promise.all([a.begin(), b.begin()]);
    a.app.edit("a", titled("of a"));
    b.app.edit("b", titled("of b"));
    await vi.advanceTimersByTimeAsync(0);
    const c = pageOf(browser, "c");
    await c.begin();
    expect([titleOf(a.app), titleOf(b.app), titleOf(c.app)]).toEqual(["of a", "of b", "example"]);
    expect(state(c.app).leftBehind).toEqual([]);
    a.end(false);
    b.end(false);
    c.end(false);
    const [d, e] = [pageOf(browser, "d"), pageOf(browser, "e")];
    await Promise.all([d.begin(), e.begin()]);
    await vi.advanceTimersByTimeAsync(0);
    // The newest is of b; one of the two goes on with it, the other has the example; the work of a is offered.
    expect([titleOf(d.app), titleOf(e.app)].sort()).toEqual(["example", "of b"]);
    const left = [d, e].flatMap(({ app }) => state(app).leftBehind.map(({ title }) => title));
    expect(left).toContain("of a");
    const drafts = ([...browser.boxes.work.values()] as { title: string }[]).map(({ title }) => title);
    expect(drafts.sort()).toEqual(["of a", "of b"]);
  });

  test("an address that names a plan opens that plan, and offers the work that was left", async () => {
    const browser = madeUpBrowser();
    await leftBy(browser, "a", "mine");
    const { app, begin } = pageOf(browser, "b");
    await begin("?example=other", true);
    expect(titleOf(app)).toBe("example");
    const [left] = state(app).leftBehind;
    expect(left).toMatchObject({ title: "mine", changes: 1 });
    await app.openWork(left.key);
    expect(titleOf(app)).toBe("mine");
    expect(state(app).leftBehind).toEqual([]);
  });

  test("the same page loaded anew goes on with what stood there, also with a plan that its file holds whole", async () => {
    const browser = madeUpBrowser();
    const own = madeUpNotes();
    const it = pageOf(browser, "a", own);
    await it.begin("?example=other", true);
    await it.app.openFile(new File([JSON.stringify(titled("from a file")(samplePlan()))], "f.json"));
    await vi.advanceTimersByTimeAsync(0);
    it.end(true);
    const next = pageOf(browser, "b", own);
    await next.begin("?example=other", true);
    expect(titleOf(next.app)).toBe("from a file");
    expect(state(next.app).recovered).toBeNull();
    next.end(true);
    // Another page does not: there is nothing to recover, and the file has it all.
    const other = pageOf(browser, "c");
    await other.begin();
    expect(titleOf(other.app)).toBe("example");
    await vi.advanceTimersByTimeAsync(0);
    expect(browser.boxes.work.size).toBe(0);
    expect(browser.boxes.recent.size).toBe(1);
  });

  test("a draft with errors is found again as it was, with the last good plan beside it", async () => {
    const browser = madeUpBrowser();
    const it = pageOf(browser, "a");
    await it.begin();
    it.app.edit("good", titled("good"));
    it.app.edit("no sets", faulty);
    await vi.advanceTimersByTimeAsync(0);
    const before = state(it.app).document;
    expect(before?.errors.length).toBeGreaterThan(0);
    it.end(false);
    const { app, begin } = pageOf(browser, "b");
    await begin();
    const after = state(app).document;
    expect(after?.errors).toEqual(before?.errors);
    expect(after?.draft).toEqual(before?.draft);
    expect(planHash(after?.plan ?? samplePlan())).toBe(planHash(before?.plan ?? samplePlan()));
  });

  test("work that cannot be read any more is said to be so, and kept", async () => {
    const browser = madeUpBrowser();
    await leftBy(browser, "a", "mine");
    for (const [key, work] of browser.boxes.work)
      browser.boxes.work.set(key, { ...(work as object), draft: '{"format":"handspan-plan","version":99}' });
    const { app, begin } = pageOf(browser, "b");
    await begin();
    await vi.advanceTimersByTimeAsync(0);
    expect(titleOf(app)).toBe("example");
    expect(state(app).failure?.errors[0].path).toBe("version");
    await app.listRecent();
    expect(state(app).recent).toHaveLength(1);
  });

  test("another plan opened in its place puts work away that no file holds", async () => {
    const browser = madeUpBrowser();
    const { app, begin } = pageOf(browser, "a");
    await begin();
    app.edit("mine", titled("mine"));
    app.openPlan(titled("made here")(samplePlan()), "new plan");
    await vi.advanceTimersByTimeAsync(0);
    await app.listRecent();
    expect(state(app).recent.map(({ title, changes }) => [title, changes])).toEqual([["mine", 1]]);
    const titles = ([...browser.boxes.work.values()] as { title: string }[]).map(({ title }) => title);
    expect(titles.sort()).toEqual(["made here", "mine"]);
  });

  test("after saving there is nothing to recover", async () => {
    const browser = madeUpBrowser();
    const it = pageOf(browser, "a");
    await it.begin();
    it.app.edit("mine", titled("mine"));
    it.files.next = "mine.json";
    await it.app.save();
    expect(state(it.app)).toMatchObject({ notFiled: "", filed: { is: "saved", name: "mine.json" } });
    await vi.advanceTimersByTimeAsync(0);
    it.end(false);
    const { app, begin } = pageOf(browser, "b");
    await begin();
    expect(state(app).recovered).toBeNull();
    expect(titleOf(app)).toBe("example");
    await app.listRecent();
    expect(state(app).recent.map(({ name }) => name)).toEqual(["mine.json"]);
  });
});
