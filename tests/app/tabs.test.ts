// Pages that find each other by asking, where a browser has no locks. Node has the same channel, and no locks either.
import { afterEach, expect, test, vi } from "vitest";
import { browserTabs } from "../../src/app/tabs.ts";

const channels: BroadcastChannel[] = [];
class Channel extends BroadcastChannel {
  constructor(name: string) {
    super(name);
    channels.push(this);
  }
}

afterEach(() => {
  for (const channel of channels.splice(0)) channel.close();
  vi.unstubAllGlobals();
});

test("pages without locks know of each other while they are there, and not after", async () => {
  vi.stubGlobal("navigator", {});
  vi.stubGlobal("BroadcastChannel", Channel);
  const [a, b] = [browserTabs(), browserTabs()];
  expect(a.own).not.toBe(b.own);
  expect([...(await a.open())].sort()).toEqual([a.own, b.own].sort());
  channels[1].close();
  expect([...(await a.open())]).toEqual([a.own]);
});

test("without locks and without a channel a page knows of itself alone", async () => {
  vi.stubGlobal("navigator", {});
  vi.stubGlobal("BroadcastChannel", undefined);
  const tabs = browserTabs();
  expect([...(await tabs.open())]).toEqual([tabs.own]);
});
