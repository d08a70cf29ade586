// Coverage: sequence, hold points, words between the crews, briefing, documents and cautions.

import { asked, computed, notCovered, type Requirement, shown } from "./form.ts";

export const sequenceRows: Requirement[] = [
  computed(
    "SQ-1",
    "An order of steps for all parts, with what holds the set at each and what it hands over.",
    ["meant to carry", "meant to be free", "out of order", "end not reached", "left on"],
    "Every step names the supports meant to carry at its end; the run compares them with the loads it found.",
  ),
  asked(
    "SQ-2",
    "Order and time of every lift and move, against the time the way is closed.",
    "Minutes of every step; the plan page adds them up. A closure window cannot be entered yet.",
    "coverage/asked.test.ts: a step without minutes is an open item",
  ),
  asked(
    "SQ-3",
    "Hold points that stop the work until released, and witness points that do not.",
    "The step 'hold' has its point, who releases it and on what evidence; blank ones are open items.",
    "coverage/asked.test.ts: a hold point that nobody releases is an open item",
  ),
  notCovered(
    "SQ-4",
    "A briefing of everyone in a lift by several cranes, written down and repeated when people change.",
    "The briefing view and its attendance sheet are not built yet.",
  ),
  asked(
    "SQ-5",
    "Radio channels of crane and transporter crews, who hears both, and their test.",
    "people.channels, people.tests; each step names its channel.",
    "coverage/asked.test.ts: channels, their tests and the channel of each step are asked for",
  ),
  asked(
    "SQ-6",
    "One voice to a crane at a time; a lost voice stops the work.",
    "Each step names the one voice that commands; the card for a lost contact is not printed yet.",
    "coverage/asked.test.ts: a step without a voice that commands is an open item",
  ),
  notCovered(
    "SQ-7",
    "Order of words in a command, and callers who say who they are.",
    "Belongs to the step cards, which are not built yet. No two commands of the steps begin alike.",
  ),
  asked(
    "SQ-8",
    "Moves of transporter and crane together under one director with one stop word.",
    "The step 'roll together' solves every bite; people.stopWord and the channel of both are asked for.",
    "coverage/asked.test.ts: a plan without a word that stops all is told",
  ),
  computed(
    "SQ-9",
    "For every step the way back, or that there is none, and a state in which it may be left.",
    ["way back", "no way back", "unbacked", "unbacked rest", "fall zone", "rest"],
    "Ways back are run and checked from start, middle and end of each step; a rest on hooks or oil is a stop.",
  ),
  asked(
    "SQ-10",
    "Who may be where: nobody below or on a moving set, swing areas fenced.",
    "Each step has its exclusion zone in words; zones are not drawn, people are not counted.",
    "coverage/asked.test.ts: steps that name no zone to keep empty are told",
  ),
  asked(
    "SQ-11",
    "Road, rail or water below is shut while the set is above it.",
    "site.below.states gives the state by step; it is shown, and not compared with where the set is.",
    "coverage/asked.test.ts: a road below without its state by step is told",
  ),
  notCovered(
    "SQ-12",
    "A look before the lift that nothing has changed since the plan was made.",
    "The morning list is not built yet; plan hash and revision stand on every export.",
  ),
  notCovered("BR-1", "One page a step for the meeting before the lift.", "The briefing is not built yet."),
  shown(
    "BR-2",
    "Motion with its numbers on a tablet without a network.",
    "The scene runs through the steps with who carries what; the page works offline once opened.",
    "browser/offline.spec.ts: opens again with the network gone, under another query too",
  ),
  notCovered("BR-3", "What differs from the set before.", "Plans of several sets are not compared yet."),
  computed(
    "DOC-1",
    "Who prepared and who checked the plan, with dates.",
    ["missing data"],
    "header.preparedBy and checkedBy; blank names are open items. Days left are not counted.",
  ),
  asked(
    "DOC-2",
    "Who sealed the drawings.",
    "No field of its own; header.notes takes it.",
    "coverage/asked.test.ts: the plan takes who sealed the drawings in its notes, and readings by set and step",
  ),
  shown(
    "DOC-3",
    "All parts of an erection plan in what is handed over.",
    "CSV, JSON, text of `solve` and the plan file carry them; drawings are not made yet.",
    "cli/cli.test.ts: without a stop: code 0, a table, CSV with metadata, JSON",
  ),
  notCovered(
    "DOC-4",
    "Signatures of everybody concerned, a sheet for each revision.",
    "Signature sheets are not printed yet.",
  ),
  notCovered("DOC-5", "An engineer's name on plans of temporary bracing.", "No field for it yet."),
  shown(
    "DOC-6",
    "Every number can be traced to data, source and formula; revisions can be compared.",
    "`solve --trace CHECK:SUBJECT`; plan hash on every export. Revisions are not compared yet.",
    "cli/cli.test.ts: --trace prints how a number of a check came about, at --at or at its greatest use",
  ),
  shown(
    "DOC-7",
    "A reviewer varies load, wind and share without changing the plan.",
    "The spread runs corners of all that is uncertain; comments cannot be pinned yet.",
    "spread/corners.test.ts: a limit passed at a corner only: once, with value, limit and corner; not where the best run passes it too",
  ),
  shown(
    "CA-1",
    "A planning aid, no substitute for an engineer, makers' documents, limiters, a competent person.",
    "On the page, in the README and in the last columns of every CSV.",
    "report/csv.test.ts: ends with plan, hash, rules, solver and caution on every row",
  ),
  shown(
    "CA-2",
    "Local codes, owners and labour law govern.",
    "README; every default limit says 'default'.",
    "coverage/asked.test.ts: local codes, owners and labour law: the README says that they govern, and each standing limit that it is a default",
  ),
  shown(
    "CA-3",
    "Which standards were not read in full.",
    "Each limit and test says where its value is from, and 'from memory' where it is.",
    "coverage/asked.test.ts: every limit says where its value is from, and what was not read is said to be from memory",
  ),
  shown(
    "CA-4",
    "Charts, axle loads and soil values come from the supplier, never from examples.",
    "Invented data is named so in the plan, on the page and in every source that a finding quotes.",
    "coverage/asked.test.ts: invented data is named with every number that leaves the program",
  ),
  shown(
    "CA-5",
    "Results are quasi-static unless stated.",
    "README and DEVELOPERS; allowances for motion are named factors.",
    "coverage/asked.test.ts: that motion counts only by named allowances is printed with the coverage",
  ),
];
