// What Escape does: the first of these that there is something to do for. What lies over the scene goes before work is ended.
import type { App, AppState } from "../../../app/index.ts";

export const escapes: readonly {
  readonly words: string;
  readonly when: (state: AppState) => boolean;
  readonly run: (app: App) => void;
}[] = [
  {
    words: "the comparison with the plan before",
    when: ({ before }) => before !== null,
    run: (app) => app.putBeforeAway(),
  },
  {
    words: "the work on tables",
    when: ({ tabling }) => tabling.is === "running",
    run: (app) => app.stopTables(),
  },
  {
    words: "the search for buckling",
    when: ({ buckling }) => buckling.is === "running",
    run: (app) => app.stopBuckling(),
  },
  {
    words: "the work on low and high",
    when: ({ spreading }) => spreading.is === "running" && !spreading.stopping,
    run: (app) => app.stopSpread(),
  },
  {
    words: "the plan data",
    when: ({ view }) => view.data !== null,
    run: (app) => app.setView({ data: null }),
  },
  {
    words: "the strips",
    when: ({ view }) => view.allStrips,
    run: (app) => app.setView({ allStrips: false }),
  },
  {
    words: "the handles in the scene",
    when: ({ view }) => view.moving,
    run: (app) => app.setView({ moving: false }),
  },
  {
    words: "what is chosen in the scene",
    when: ({ selected }) => selected !== "",
    run: (app) => app.select(""),
  },
];
