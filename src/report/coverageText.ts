// What is covered of all that an erection plan must answer, as a table.

import { type Requirement, requirements } from "../checks/index.ts";
import type { Table } from "./sections/form.ts";
import { linesOfTable } from "./sections/lines.ts";

/** How many rows of each way there are, in words. */
function countWords(rows: readonly Requirement[]): string {
  const ways = ["computed", "shown", "asked", "not covered"] as const;
  return ways.map((way) => `${rows.filter((r) => r.way === way).length} ${way}`).join(", ");
}

/** The table of coverage. */
export function coverageTable(): Table {
  return {
    title: "What this program covers of an erection plan",
    words: [
      countWords(requirements),
      "computed: worked out and judged; shown: from the plan or the result; asked: a place in the plan, open when blank",
      "what is shown or asked names the test that fails when it is taken away",
      "each check named has a test that fails when the check is taken out: tests/coverage, by the name of the check",
    ],
    head: ["id", "what is asked for", "how", "checks, or test", "where, or why not"],
    sides: ["left", "left", "left", "left", "left"],
    rows: requirements.map((r) => [r.id, r.asks, r.way, r.test || r.checks.join(", "), r.words]),
  };
}

/** The same as lines for a terminal. */
export function coverageText(): string {
  return `${linesOfTable(coverageTable()).join("\n")}\n`;
}
