// The steps of a set: every name in them is the name of something, and every command can be meant only one way.
import { listOf, type PlanPath } from "../reading/planError.ts";
import type { Bearing, Crane, Pick, Step, WayBackStep } from "../schema.ts";
import { bunksOnSet } from "./bunks.ts";
import { type Draft, noRepeats, refer } from "./draft.ts";
import type { Names } from "./names.ts";

/** Names that the steps of one set may use. */
interface Here {
  names: Names;
  /** Cranes with a pick on this set. */
  picks: string[] | null;
  supports: string[] | null;
  girders: string[] | null;
  length: number | null;
}

/** Checks the steps of the set at path `at`, ways back included. */
export function checkSteps(
  draft: Draft,
  names: Names,
  at: PlanPath,
  id: string,
  length: number | null,
): void {
  const picks = draft.names([...at, "picks"], "crane");
  const here: Here = {
    names,
    picks: picks === null ? null : [...new Set(picks)],
    supports: supportsHere(draft, names, at, id),
    girders: names.girdersOf(id),
    length,
  };
  const seen = new Set<string>();
  const once = (step: string, path: PlanPath) => {
    if (seen.has(step)) {
      const found = JSON.stringify(step);
      draft.say([...path, "id"], found, "an id that no other step of this set has", "Give it another one.");
    }
    seen.add(step);
  };
  const count = draft.count([...at, "steps"]);
  for (const { item, path } of draft.each<Step>([...at, "steps"])) {
    once(item.id, path);
    checkStep(draft, here, item, path);
  }
  for (let i = 0; i < count; i++) {
    for (const { item, path } of draft.each<WayBackStep>([...at, "steps", i, "wayBack"])) {
      once(item.id, path);
      checkStep(draft, here, item, path);
    }
  }
}

/** Names of everything that may carry this set: its hooks, the groups, its bearings. */
function supportsHere(draft: Draft, names: Names, at: PlanPath, id: string): string[] | null {
  const picks = draft.names([...at, "picks"], "crane");
  const lines = draft.names(["site", "bearings"], "line");
  const girders = names.girdersOf(id);
  if (picks === null || lines === null || names.groups === null || girders === null) return null;
  const cranes = draft.each<Crane>(["cranes"]);
  const hooks = draft.each<Pick>([...at, "picks"]).flatMap(({ item }) => {
    const crane = cranes.find((c) => c.item.id === item.crane);
    return crane === undefined ? [] : [`${crane.item.kind} crane`];
  });
  const bearings = draft
    .each<Bearing>(["site", "bearings"])
    .filter(({ item }) => (item.set === undefined ? girders.includes(item.girder) : item.set === id))
    .map(({ item }) => `${item.line} ${item.girder}`);
  const told = hooks.length === picks.length && cranes.length === names.cranes?.length;
  if (!told || draft.sound(["site", "bearings"]) === null) return null;
  return [...hooks, ...names.groups, ...bearings];
}

function checkStep(draft: Draft, here: Here, step: Step | WayBackStep, path: PlanPath): void {
  const { names } = here;
  const each = (field: string, list: readonly string[] | undefined, known: string[] | null, kind: string) => {
    for (const [i, value] of (list ?? []).entries()) refer(draft, [...path, field, i], value, known, kind);
    noRepeats(draft, [...path, field], list ?? []);
  };
  const crane = (at: PlanPath, value: string) => {
    const inPlan = names.cranes?.includes(value) ?? false;
    if (inPlan && here.picks !== null && !here.picks.includes(value)) {
      const allowed = `a crane with a pick on this set: ${listOf(here.picks, "or")}`;
      draft.say(
        at,
        `crane ${value}, which has no pick on this set`,
        allowed,
        "Add its pick to the set's picks.",
      );
    } else refer(draft, at, value, names.cranes, "crane");
  };
  each("carries", step.carries, here.supports, "support");
  each("brakes", step.brakes, names.transporters, "transporter");
  if (step.channel !== undefined && step.channel !== "" && names.channels !== null) {
    refer(draft, [...path, "channel"], step.channel, names.channels, "channel");
  }
  if (step.see !== undefined && (step.see.low ?? -Infinity) > (step.see.high ?? Infinity)) {
    const found = `a low end of ${step.see.low} above the high end, ${step.see.high}`;
    draft.say([...path, "see"], found, "low not above high", "Exchange the two.");
  }
  switch (step.do) {
    case "hook up":
    case "unhook":
    case "take load":
    case "trial lift":
    case "walk":
      crane([...path, "crane"], step.crane);
      if (step.do === "take load" && "frees" in step.until) {
        refer(draft, [...path, "until", "frees"], step.until.frees, here.supports, "support");
      }
      break;
    case "lash":
    case "unlash":
      each("lashings", step.lashings, names.lashings, "lashing");
      break;
    case "roll together":
      for (const [i, value] of step.cranes.entries()) crane([...path, "cranes", i], value);
      noRepeats(draft, [...path, "cranes"], step.cranes);
      break;
    case "jack up":
    case "jack down":
      oneTarget(draft, step, path);
      each("groups", step.groups, names.groups, "group");
      if (step.transporter !== undefined) {
        refer(draft, [...path, "transporter"], step.transporter, names.transporters, "transporter");
      }
      break;
    case "level":
      each("groups", step.groups, names.groups, "group");
      break;
    case "drive out":
      refer(draft, [...path, "transporter"], step.transporter, names.transporters, "transporter");
      break;
    case "rebunk":
      refer(draft, [...path, "transporter"], step.transporter, names.transporters, "transporter");
      bunksOnSet(draft, names, step.transporter, step.deckAt_m, [...path, "deckAt_m"], here.length);
      for (const girder of Object.keys(step.packing_mm ?? {})) {
        refer(draft, [...path, "packing_mm", girder], girder, here.girders, "girder of this set");
      }
      break;
    case "hoist up":
    case "hoist down": {
      const hooks = step.hooks.map((hook) => hook.crane);
      for (const [i, value] of hooks.entries()) crane([...path, "hooks", i, "crane"], value);
      noRepeats(draft, [...path, "hooks"], hooks);
      break;
    }
    case "land":
      for (const [i, value] of step.order.entries()) crane([...path, "order", i], value);
      noRepeats(draft, [...path, "order"], step.order);
      break;
    case "brace":
      for (const [i, item] of step.items.entries()) {
        if (item.count <= item.of) continue;
        const found = `${item.count} of ${item.of} ${item.what}`;
        draft.say([...path, "items", i, "count"], found, `at most ${item.of}`, "Correct the count.");
      }
      break;
    case "hold":
    case "rest":
      for (const support of Object.keys(step.settlement_mm ?? {})) {
        refer(draft, [...path, "settlement_mm", support], support, here.supports, "support");
      }
      break;
    default:
      break;
  }
}

function oneTarget(
  draft: Draft,
  step: { groups?: string[] | undefined; transporter?: string | undefined },
  path: PlanPath,
): void {
  if ((step.groups === undefined) !== (step.transporter === undefined)) return;
  draft.say(
    path,
    step.groups === undefined ? "neither groups nor transporter" : "both groups and transporter",
    "exactly one of groups and transporter",
    step.groups === undefined ? "Say what is jacked." : "Take one of the two out.",
  );
}
