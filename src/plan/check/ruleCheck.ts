// Rules, people and acceptances: limits given once, names that exist; and low <= best <= high wherever a band stands.
import type { PlanPath } from "../reading/planError.ts";
import type { Acceptance, Expectation, Override, People, Rule } from "../schema.ts";
import { type Draft, noRepeats, refer, unique } from "./draft.ts";
import type { Names } from "./names.ts";

/** Checks limits, spread, people, acceptances and expected findings. */
export function checkRules(draft: Draft, names: Names): void {
  noRepeats(draft, ["limits", "use"], draft.sound<string[]>(["limits", "use"]) ?? []);
  for (const { item, path } of draft.each<Rule | Override>(["limits", "rules"])) named(draft, item, path);
  for (const { item, path } of draft.each<Rule | Override>(["limits", "overrides"])) named(draft, item, path);
  unique(draft, ["limits", "rules"], "id", "rule");
  unique(draft, ["limits", "overrides"], "limit", "override");
  for (const field of ["weight_pct", "stiffness_pct", "friction"]) {
    const pair = draft.sound<[number, number]>(["spread", field]);
    if (pair !== null && pair[0] > pair[1]) {
      draft.say(
        ["spread", field],
        `low ${pair[0]} above high ${pair[1]}`,
        "low not above high",
        "Exchange the two values.",
      );
    }
  }
  unique(draft, ["people", "channels"], "name", "channel");
  for (const { item, path } of draft.each<People["roles"][number]>(["people", "roles"])) {
    if (item.channel !== undefined) {
      refer(draft, [...path, "channel"], item.channel, names.channels, "channel");
    }
  }
  for (const field of ["accept", "expected"]) {
    for (const { item, path } of draft.each<Acceptance | Expectation>([field])) {
      if (item.set !== undefined) refer(draft, [...path, "set"], item.set, names.sets, "set");
      if (item.step !== undefined) {
        refer(draft, [...path, "step"], item.step, names.stepsOf(item.set), "step");
      }
    }
  }
}

/** A limit without the one who chose it or without a source is not a limit. */
function named(draft: Draft, item: Rule | Override, path: PlanPath): void {
  for (const field of ["source", "chosenBy"] as const) {
    if (item[field].trim() !== "") continue;
    draft.say(
      [...path, field],
      "a blank",
      field === "source" ? "where the value is from" : "who chose the value",
      'Fill it in; "default" and "from memory" are honest answers.',
    );
  }
}

/** Walks all values: bands in order, and no half signs that no file could hold as UTF-8. */
export function checkValues(draft: Draft, data: unknown): void {
  const walk = (value: unknown, path: PlanPath): void => {
    if (typeof value === "string") {
      if (/\p{Cs}/u.test(value)) {
        draft.say(path, "half of a two-part sign (lone surrogate)", "Unicode text", "Write the text again.");
      }
      return;
    }
    if (typeof value !== "object" || value === null) return;
    const { low, best, high } = value as Record<string, unknown>;
    if (typeof low === "number" && typeof best === "number" && typeof high === "number") {
      if (low > best || best > high) {
        const found = `low ${low}, best ${best}, high ${high}`;
        draft.say(path, found, "low not above best, best not above high", "Put the three in order.");
      }
    }
    const entries: [string | number, unknown][] = Array.isArray(value)
      ? [...value.entries()]
      : Object.entries(value);
    for (const [part, inner] of entries) walk(inner, [...path, part]);
  };
  walk(data, []);
}
