// A draft saved with errors in it is opened again: refused as a plan, taken to be mended, kept, and solved once it is whole.
import { expect, test } from "vitest";
import { type AppState, changesUnsaved, createApp, type Ground } from "../../src/app/index.ts";
import { type Plan, writePlan } from "../../src/plan/index.ts";
import { samplePlan } from "../plan/sample.ts";
import { madeUpBrowser } from "./madeUpDesk.ts";

function pageOf(browser: ReturnType<typeof madeUpBrowser>, name: string) {
  const it = browser.page(name);
  const solved: Plan[] = [];
  const client = {
    solve: (plan: Plan) => {
      solved.push(plan);
      return new Promise<never>(() => {});
    },
  } as unknown as Ground["client"];
  const nothing = () => {
    throw new Error("nothing is solved here");
  };
  const app = createApp({
    ...{ client, desk: it.desk, prepare: nothing, poseAt: nothing, whenIdle: () => {} },
    ...{ now: Date.now, nextFrame: () => {}, stillness: () => true },
  });
  return { ...it, app, solved, state: (): AppState => app.store.getState() };
}

const titled = (title: string) => (plan: Plan) => ({ ...plan, header: { ...plan.header, title } });
const mass =
  (mass_t: number) =>
  (plan: Plan): Plan => {
    const [first, ...rest] = plan.transporters;
    return { ...plan, transporters: [{ ...first, mass_t }, ...rest] };
  };
const faultyText = writePlan(mass(-3)(titled("to mend")(samplePlan())));
const file = (text: string) => new File([text], "draft.json");

/** A page with work of its own that no file holds, on which the faulty file was refused. */
async function refused() {
  const browser = madeUpBrowser();
  const page = pageOf(browser, "a");
  page.app.openPlan(samplePlan(), "mine.json");
  page.app.edit("Title changed", titled("mine"));
  const before = page.state().document;
  expect(await page.app.openFile(file(faultyText))).toBe(false);
  expect(page.state().document).toBe(before);
  expect(page.state().failure).toMatchObject({ name: "draft.json", beyond: "" });
  return { browser, ...page };
}

test("it becomes a document of its own without a plan, and what was open goes to the list of plans", async () => {
  const { app, state, solved } = await refused();
  const number = state().document?.number ?? 0;
  expect(await app.openRefused()).toBe(true);
  const { document, failure, result, solving, filed, history } = state();
  expect(failure).toBeNull();
  expect(document).toMatchObject({ plan: null, name: "draft.json", number: number + 1 });
  expect(document?.draft.header.title).toBe("to mend");
  expect(document?.errors.map(({ path }) => path)).toEqual(["transporters[0].mass_t"]);
  expect([result, solving.is, filed?.name]).toEqual([null, "idle", "draft.json"]);
  expect(changesUnsaved(history)).toBe(0);
  expect(solved.some((plan) => plan.header.title === "to mend")).toBe(false);
  await app.flush();
  await app.listRecent();
  const mine = state().recent.find(({ name }) => name === "mine.json");
  expect(mine).toMatchObject({ title: "mine", changes: 2 });
  await app.openRecent(mine?.key ?? "");
  expect(state().document?.plan?.header.title).toBe("mine");
});

test("edited until it has no error it is solved; undone it has errors again, and then a last good plan", async () => {
  const { app, state, solved } = await refused();
  await app.openRefused();
  app.edit("Title changed", titled("nearly"));
  expect(state().document?.plan).toBeNull();
  app.edit("Mass 30 t", mass(30));
  expect(state().document).toMatchObject({ errors: [] });
  expect(state().document?.plan).toBe(state().document?.draft);
  expect(solved.at(-1)).toBe(state().document?.draft);
  app.undo();
  expect(state().document?.errors).toHaveLength(1);
  expect(state().document?.plan?.transporters[0].mass_t).toBe(30);
});

test("a page that ends amid the mending leaves it to the next one", async () => {
  const { app, browser, end } = await refused();
  await app.openRefused();
  app.edit("Title changed", titled("half mended"));
  await app.flush();
  end(false);
  const next = pageOf(browser, "b");
  await next.app.begin({ address: "", named: false, open: async () => {} });
  expect(next.state().document).toMatchObject({ plan: null, name: "draft.json" });
  expect(next.state().document?.draft.header.title).toBe("half mended");
  expect(next.state().document?.errors).toHaveLength(1);
});

test("nothing is opened of a file whose shape is beyond mending, and it is said why", async () => {
  const { app, state } = await refused();
  const before = state().document;
  await app.openFile(file(faultyText.replace('"transporters"', '"wagons"')));
  expect(state().failure).toMatchObject({ draft: null });
  expect(state().failure?.beyond).toMatch(/^It cannot be mended here: at /);
  expect(await app.openRefused()).toBe(false);
  expect(state().document).toBe(before);
});
