// What an erection plan must answer, and how this program answers it: the form of one row of the table of coverage.

/**
 * computed: a check works it out from the plan; shown: it stands on screen or on paper, from the plan's words or the
 * Result; asked: the plan has a place for it, and says when it is left open; not covered: the words say why.
 */
export type Way = "computed" | "shown" | "asked" | "not covered";

export interface Requirement {
  /** As `TR-4`: letters of the area, and a number. */
  id: string;
  /** What is asked for, in one sentence. */
  asks: string;
  way: Way;
  /** Names of the checks that answer it; none unless it is computed. Each has a witness under tests/coverage. */
  checks: string[];
  /** Of what is shown or asked: the test that fails when it is taken away, as `FILE: TITLE`; '' for all others. */
  test: string;
  /** What answers it and where it is seen; for what is not covered, why. */
  words: string;
}

/** Makes rows from their parts, so that a table of them reads as one. */
export const computed = (id: string, asks: string, checks: string[], words: string): Requirement => ({
  id,
  asks,
  way: "computed",
  checks,
  test: "",
  words,
});
export const shown = (id: string, asks: string, words: string, test: string): Requirement => ({
  id,
  asks,
  way: "shown",
  checks: [],
  test: `tests/${test}`,
  words,
});
export const asked = (id: string, asks: string, words: string, test: string): Requirement => ({
  id,
  asks,
  way: "asked",
  checks: [],
  test: `tests/${test}`,
  words,
});
export const notCovered = (id: string, asks: string, words: string): Requirement => ({
  id,
  asks,
  way: "not covered",
  checks: [],
  test: "",
  words,
});
