// What the command line says of itself: its commands, what their options mean, the exit codes and the caution.

import { caution } from "./origin.ts";
import { sections } from "./sections/list.ts";

/** The list of commands, what the options mean, the exit codes and the caution. */
export function usageText(
  commands: readonly { readonly usage: string; readonly summary: string }[],
  version: string,
): string {
  return [
    `Handspan ${version}: erection plan of bridge girder sets. Use: npm run --silent handspan -- COMMAND ...`,
    "",
    ...commands.flatMap((command) => [`  ${command.usage}`, `      ${command.summary}`]),
    "",
    "  --csv FILE      reactions of every pose; FILE-metadata.json beside it describes the columns",
    "  --json FILE     the whole answer, numbers in full precision and SI",
    "  --set ID        this set only; all sets when left out",
    "  --spread chosen|all",
    "                  low and high of everything over the corners of what is uncertain, each with its corner,",
    "                  also in the CSV: those that govern, or every combination (thousands, some minutes)",
    "  --buckling rests|stages",
    "                  at how many times its loads the set buckles: at rest between steps, or also where each step",
    "                  bends its girders most",
    "  --also NAMES    further tables, names with commas between, or all:",
    ...sections.map(({ name, title }) => `                  ${name.padEnd(10)} ${title}`),
    "  --out FILE      the plan with the proposed sequence in it",
    "  --diagrams FILE moment, shear and torsion of the girders: greatest over all steps, or with --at of that pose",
    "  --trace CHECK:SUBJECT",
    "                  how a number came about, from the plan's own up: such as 'girder bending:girder L', with --at",
    "                  or where its use is greatest",
    "  --at STEP:PROGRESS --state FILE",
    "                  writes the physical state of that pose: STEP is a step's id, or its number from 1;",
    "                  PROGRESS is 0 to 1. 'state FILE' then gives the same reactions",
    "",
    "Exit codes: 0 solved, no stop; 1 a finding of level stop; 2 bad input; 3 no equilibrium somewhere.",
    caution,
    "",
  ].join("\n");
}
