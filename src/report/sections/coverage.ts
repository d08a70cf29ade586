// What the program covers of all that an erection plan must answer, as a section like any other.

import { coverageTable } from "../coverageText.ts";
import { atOnce, type Section } from "./form.ts";
import { sectionTitles } from "./titles.ts";

export const coverageSection: Section = {
  name: "coverage",
  title: sectionTitles.coverage,
  begin: atOnce(() => [coverageTable()]),
};
