// What a plan is asked for and no check reads: who releases a hold point, who speaks on which channel, what is shut and
// kept empty. Blank, each is an open item, one for all steps that lack it.

import type { Plan, PlanSet, Step } from "../../plan/index.ts";
import { finding } from "../finding.ts";
import type { Finding } from "../types.ts";

const blank = (text: string | undefined): boolean => (text ?? "").trim() === "";

function note(set: string, subject: string, words: string, cure: string): Finding {
  return finding({ level: "note", check: "missing data", set, subject, words: `${subject}: ${words}`, cure });
}

/** What every step has a place for, with what its blank leaves open and how it is mended. */
const ofSteps: [field: string, lacks: (step: Step) => boolean, words: string, cure: string][] = [
  [
    "minutes",
    (s) => s.minutes === undefined,
    "how long they take is not said",
    "state the minutes of the step",
  ],
  [
    "voice",
    (s) => blank(s.voice),
    "nobody is named whose voice commands",
    "name the one voice that commands",
  ],
  ["channel", (s) => blank(s.channel), "no radio channel is named", "name the channel of those at work"],
  [
    "exclusion",
    (s) => blank(s.exclusion),
    "no zone is named that is kept empty",
    "say which zone is kept empty",
  ],
  [
    "releasedBy",
    (s) => s.do === "hold" && blank(s.releasedBy),
    "nobody is named who releases the point",
    "name who releases it",
  ],
  [
    "evidence",
    (s) => s.do === "hold" && blank(s.evidence),
    "on what evidence the point is released is not said",
    "state the evidence",
  ],
];

function stepItems(plan: Plan, set: PlanSet): Finding[] {
  const path = `sets[${plan.sets.indexOf(set)}].steps`;
  return ofSteps.flatMap(([field, lacks, words, cure]) => {
    const ids = set.steps.filter(lacks).map((step) => step.id);
    return ids.length === 0 ? [] : [note(set.id, `${path} ${field}`, `${words}: ${ids.join(", ")}`, cure)];
  });
}

/** Words between the crews: a channel of either, its test, and the word that stops all. */
function peopleItems({ people }: Plan): Finding[] {
  const out: Finding[] = [];
  for (const crew of ["crane", "transporter"] as const)
    if (!people?.channels.some((c) => c.uses === crew || c.uses === "both"))
      out.push(
        note(
          "",
          "people.channels",
          `no channel of the ${crew} crews`,
          "name their channel in people.channels",
        ),
      );
  const tested = new Set(people?.tests?.filter((t) => !blank(t.result)).map((t) => t.channel));
  const untested = people?.channels.map((c) => c.name).filter((name) => !tested.has(name)) ?? [];
  if (untested.length > 0)
    out.push(
      note(
        "",
        "people.tests",
        `no test is recorded of channel ${untested.join(", ")}`,
        "test each channel and record it",
      ),
    );
  if (blank(people?.stopWord))
    out.push(
      note(
        "",
        "people.stopWord",
        "no word is named that stops all work",
        "name one word that anybody may say",
      ),
    );
  return out;
}

/** Everything that a plan with steps is asked for beside what the checks read. */
export function askedItems(plan: Plan): Finding[] {
  const sets = plan.sets.filter((set) => set.steps.length > 0);
  if (sets.length === 0) return [];
  const { below } = plan.site;
  const open =
    below !== undefined && below.kind !== "ground" && (below.states ?? []).length === 0
      ? [
          note(
            "",
            "site.below.states",
            `from which step on the ${below.kind} below is shut is not said`,
            "state it by step in site.below.states",
          ),
        ]
      : [];
  return [...peopleItems(plan), ...open, ...sets.flatMap((set) => stepItems(plan, set))];
}
