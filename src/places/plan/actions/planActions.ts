// Actions that the open plan brings: its steps, the parts of its data, findings, supports, sets; and the bundled plans.
import { type AppState, allFindings, planOfSet, planParts, stepWords } from "../../../app/index.ts";
import { sectionTitles } from "../../../report/index.ts";
import { bundledPlans, openBundled } from "../../bundled.ts";
import { partWords } from "../data/parts.ts";
import { whereOf } from "../findings.ts";
import type { Action } from "./action.ts";

/** Other names under which somebody may look for a part of the plan data. */
const partNames: Readonly<Partial<Record<(typeof planParts)[number], string>>> = {
  site: "gap span elevation soil temperature",
  path: "profile ground slope crossfall survey haul road",
  seats: "survey levels abutment pier bearings",
  surroundings: "obstacles power lines walls edges clearance",
  transporters: "spmt modules axle lines trains groups hydraulic",
  cranes: "load chart boom radius counterweight hook",
  rigging: "slings shackles spreader beams block",
  girders: "plates pieces webs flanges section camber",
  frames: "diaphragms cross-frames bracing stiffeners",
  ledger: "weights mass take-off weighing",
  onTransporters: "bunks packing",
  picks: "lifting points hooks lines",
  steps: "sequence order operation add step",
  limits: "rules rule set override tighten use",
  spread: "uncertainty low high tolerance",
  people: "roles radio channels meeting stop word",
  accepted: "accepted findings expected record unconfirmed",
};

/** Whatever of the state these actions are made of. */
export type ActionGround = Pick<
  AppState,
  "document" | "result" | "spreads" | "bucklings" | "tables" | "cursor" | "view" | "answered" | "context"
>;

/** All of them as things stand. */
export function planActions(state: ActionGround): Action[] {
  const { document, result, cursor, view, context } = state;
  const out: Action[] = [];
  const editing = document !== null ? planParts : [];
  for (const part of editing)
    out.push({
      id: `edit ${part}`,
      kind: "data",
      words: `Edit ${partWords[part].toLowerCase()}`,
      also: `plan data change table form ${partNames[part] ?? ""}`,
      run: (app) => app.setView({ data: part }),
    });
  for (const [section, title] of Object.entries(sectionTitles))
    out.push({
      id: `table ${section}`,
      kind: "panel",
      words: `Tables about ${title.toLowerCase()}`,
      also: `work out ${section}`,
      not: ({ result: solved, tabling }) =>
        solved === null
          ? "the plan is not solved yet"
          : tabling.is === "running"
            ? "other tables are under way"
            : "",
      run: (app) => {
        app.setView({ panel: "tables", section });
        app.tabulate(section);
      },
    });
  const set = result?.sets[cursor.set];
  const plan = planOfSet(state as AppState);
  if (set !== undefined && plan !== null)
    set.steps.forEach(({ step }, i) => {
      const words = stepWords(plan, step, view.units);
      out.push({
        id: `step ${i}`,
        kind: "step",
        words: `Go to step ${i + 1}: ${step.title ?? words}`,
        also: `${step.id} ${step.title === undefined ? "" : words} ${step.do} ${step.notes ?? ""}`,
        not: ({ cursor: now }) => (now.step === i && now.progress === 0 ? "the cursor is there" : ""),
        run: (app) => app.setCursor({ step: i, progress: 0 }),
      });
    });
  if (result !== null)
    for (const finding of allFindings(state))
      out.push({
        id: `finding ${finding.id}`,
        kind: "finding",
        words: `${finding.level}: ${finding.words}`,
        also: `finding go to ${finding.check} ${whereOf(result, finding)}`,
        run: (app) => {
          app.chooseFinding(finding);
          globalThis.document
            ?.querySelector<HTMLElement>(`[data-finding="${CSS.escape(finding.id)}"]`)
            ?.focus();
        },
      });
  for (const { name } of context?.supports ?? [])
    out.push({
      id: `support ${name}`,
      kind: "support",
      words: `Look at ${name}`,
      also: "choose select support scene reactions load",
      run: (app) => app.select(name),
    });
  result?.sets.forEach(({ setId, name }, i) => {
    out.push({
      id: `set ${setId}`,
      kind: "set",
      words: `Go to set ${name || setId}`,
      also: `${setId} choose set`,
      not: ({ cursor: now }) => (now.set === i ? "it is looked at already" : ""),
      run: (app) => app.chooseSet(i),
    });
  });
  for (const name of bundledPlans)
    out.push({
      id: `plan ${name}`,
      kind: "plan",
      words: `Open the bundled plan ${name.replace(/\.json$/, "").replaceAll("-", " ")}`,
      also: "example scenario",
      run: (app) => void openBundled(app, name),
    });
  return out;
}
