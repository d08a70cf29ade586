// Files with errors that forms can mend, and those that they cannot, each with why.
import { describe, expect, test } from "vitest";
import { checkPlan, mendableText, withRemoved, withValue } from "../../src/plan/index.ts";
import { scenario } from "../sequence/plans.ts";

const plan = scenario("demo");
const text = (path: (string | number)[], value: unknown) => JSON.stringify(withValue(plan, path, value));

describe("can be opened to be mended, and has errors:", () => {
  test.each<[string, string]>([
    ["a number beyond its bounds", text(["transporters", 0, "mass_t"], -3)],
    ["a name that nothing has", text(["sets", 0, "picks", 0, "crane"], "nobody")],
    ["a number that is missing", text(["transporters", 0, "mass_t"], undefined)],
    ["a number that is null, as NaN is written", text(["cranes", 0, "mass_t"], null)],
    ["a text that is missing", text(["cranes", 0, "source"], undefined)],
    ["a choice that there is not", text(["cranes", 0, "kind"], "middle")],
    ["a list that is too short", text(["sets"], [])],
    [
      "a girder that is taken out while others name it",
      JSON.stringify(withRemoved(plan, ["sets", 0, "girders"], 0)),
    ],
    ["a byte order mark", `\ufeff${text(["transporters", 0, "mass_t"], -3)}`],
  ])("%s", (_, file) => {
    const got = mendableText(file);
    if (!got.ok) throw new Error(got.why);
    expect(got.draft).toEqual(JSON.parse(file.replace(/^\ufeff/, "")));
    expect(checkPlan(got.draft).ok).toBe(false);
  });
});

describe("cannot be mended here, with why:", () => {
  test.each<[string, string, RegExp]>([
    ["a cut file", text(["header", "title"], "x").slice(0, 500), /it is not JSON\.$/],
    ["a list", "[]", /not a plan of a version/],
    ["another version", text(["version"], 99), /not a plan of a version/],
    ["no format", text(["format"], undefined), /does not say "format"/],
    [
      "a text for a number",
      text(["site", "nearBearing_m"], "12,5 m"),
      /at site\.nearBearing_m stands something/,
    ],
    ["an object for a list", text(["sets"], {}), /at sets stands something of another kind/],
    ["no site", text(["site"], undefined), /at site stands something/],
    ["no girders", text(["sets", 0, "girders"], undefined), /at sets\[0\]\.girders/],
    ["a step of no kind", text(["sets", 0, "steps", 0, "do"], "jump"), /at sets\[0\]\.steps\[0\]/],
    ["a field that nothing knows", text(["site", "colour"], "grey"), /a field that no form shows/],
    ["a field twice", text(["version"], 1).replace('"format"', '"format":"x","format"'), /stands twice/],
  ])("%s", (_, file, why) => {
    const got = mendableText(file);
    expect(got.ok ? "it can" : got.why).toMatch(why);
  });
});
