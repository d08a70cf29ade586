// Wind taken as a whole: forecasts that end after they begin, a factor that says where it is from.
import type { Forecast, SiteWind } from "../schema.ts";
import type { Draft } from "./draft.ts";

/** Checks `site.wind`. */
export function checkWind(draft: Draft): void {
  for (const { item, path } of draft.each<Forecast>(["site", "wind", "forecast"])) {
    // Local times of this form stand in the order of the alphabet.
    if (item.to <= item.from)
      draft.say(
        [...path, "to"],
        `an end at ${item.to}`,
        `later than its start, ${item.from}`,
        "Exchange start and end.",
      );
  }
  const design = draft.sound<NonNullable<SiteWind["design"]>>(["site", "wind", "design"]);
  if (design?.factor !== undefined && (design.factorSource ?? "").trim() === "")
    draft.say(
      ["site", "wind", "design", "factor"],
      "a factor without its source",
      "a factor with factorSource",
      "Say in factorSource where it is from, or leave it out and state the days.",
    );
}
