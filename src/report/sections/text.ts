// Sections as lines for a terminal.

import { type Finding, inOrder, type Result } from "../../checks/index.ts";
import type { Contexts } from "../csv.ts";
import { oneLine } from "../table.ts";
import type { Section } from "./form.ts";
import { linesOfTable } from "./lines.ts";
import { sections } from "./list.ts";

/** Sections by name, in a list with commas or `all`; a sentence when one is not known. */
export function sectionsNamed(list: string): Section[] | string {
  if (list === "all") return [...sections];
  const out: Section[] = [];
  for (const name of list.split(",")) {
    const found = sections.find((s) => s.name === name.trim());
    if (found === undefined)
      return `found '${name.trim()}'; allowed: all, or some of ${sections.map((s) => s.name).join(", ")}. Choose among them.`;
    out.push(found);
  }
  return out;
}

/** Works the sections out for every set of a result, with the findings that they add. */
export function withSections(
  result: Result,
  contexts: Contexts,
  asked: readonly Section[],
): { result: Result; lines: string[] } {
  const lines: string[] = [];
  const found: Finding[] = [];
  for (const set of result.sets) {
    const ctx = contexts.get(set.setId);
    if (ctx === undefined) continue;
    for (const section of asked) {
      const work = section.begin(ctx, set);
      while (work.next());
      found.push(...work.findings());
      for (const table of work.tables()) {
        const title = { ...table, title: `set ${oneLine(set.setId)}: ${table.title}` };
        lines.push("", ...linesOfTable(title));
      }
    }
  }
  const findings = inOrder([...result.findings, ...found]);
  const worst = findings.length > 0 ? findings[0].level : null;
  return { result: found.length === 0 ? result : { ...result, findings, worst }, lines };
}
