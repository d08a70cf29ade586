// What is blank of rigging, lift attachments and lifted sets is told with its place; what is given is not.

import { expect, test } from "vitest";
import { openItems, type Plan } from "../../src/plan/index.ts";
import { scenario } from "../sequence/plans.ts";

const paths = (change: (plan: Plan) => void): string[] =>
  openItems(scenario("demo", change)).map((item) => item.path);
const mine = (list: string[]): string[] =>
  list.filter((path) => /^rigging|\.picks\[\d\]\.attachment|looseParts|\.mark$/.test(path));

test("the demonstration leaves nothing of it open", () => {
  expect(mine(paths(() => {}))).toEqual([]);
});

test.each<[string, (plan: Plan) => void, string[]]>([
  ["no parts", (p) => Object.assign(p.rigging[0], { parts: undefined }), ["rigging[0].parts"]],
  [
    "a part without place",
    (p) => Object.assign(p.rigging[1].parts?.[2] ?? {}, { place: undefined }),
    ["rigging[1].parts[2].place"],
  ],
  [
    "custom gear untested",
    (p) => Object.assign(p.rigging[0], { custom: {} }),
    ["rigging[0].custom.proofTest_kN", "rigging[0].custom.marked"],
  ],
  [
    "a welded lug by its name alone",
    (p) => Object.assign(p.sets[0].picks[1], { attachment: { kind: "lug", fixing: "welded" } }),
    ["capacity_kN", "detail", "removal", "removedBy"].map((field) => `sets[0].picks[1].attachment.${field}`),
  ],
  [
    "a lug",
    (p) => Object.assign(p.sets[0].picks[0].attachment ?? {}, { fixing: undefined }),
    ["sets[0].picks[0].attachment.fixing"],
  ],
  [
    "a sling needs no capacity",
    (p) => Object.assign(p.sets[0].picks[0], { attachment: { kind: "sling" } }),
    [],
  ],
  [
    "a clamp needs one",
    (p) => Object.assign(p.sets[0].picks[0], { attachment: { kind: "clamp" } }),
    ["sets[0].picks[0].attachment.capacity_kN"],
  ],
  [
    "loose parts not looked for",
    (p) => Object.assign(p.sets[0], { looseParts: undefined }),
    ["sets[0].looseParts"],
  ],
  [
    "a piece without its mark",
    (p) => Object.assign(p.sets[0].girders[1].pieces[2], { mark: " " }),
    ["sets[0].girders[1].pieces[2].mark"],
  ],
])("%s", (_, change, expected) => {
  expect(mine(paths(change))).toEqual(expected);
});

test("rigging that no pick names, and a set that is not lifted, leave nothing open", () => {
  const open = paths((plan) => {
    plan.rigging.push({ ...plan.rigging[0], id: "spare", parts: undefined } as Plan["rigging"][number]);
  });
  expect(mine(open)).toEqual([]);
});
