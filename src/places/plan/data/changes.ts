// Edits of plan data with the words that the history shows of them; names are changed together with all that refers to them.
import {
  blankAt,
  type Field,
  type NameKind,
  namedAs,
  type Plan,
  type PlanPath,
  type Referred,
  renamed,
  supportNames,
  valueAt,
  withInserted,
  withMoved,
  withRemoved,
  withValue,
} from "../../../plan/index.ts";
import type { System } from "../../../units/index.ts";
import { nameAround, nameAt } from "./cells.ts";
import { doubtedOf, givenAt } from "./doubts.ts";
import { shortText, unitOf } from "./typed.ts";

/** One edit: its words for the history, and what it does. */
export interface DataEdit {
  readonly label: string;
  readonly change: (draft: Plan) => Plan;
}

const quoted = (text: string) => (text === "" ? "blank" : text.length > 40 ? `${text.slice(0, 37)}…` : text);

/** "far-crane: mass 780 t to 800 t"; with ", confirmed" where what stood there was not. */
export function labelOf(plan: Plan, field: Field, words: string, value: unknown, system: System): string {
  const name = nameAround(field.path, plan);
  const unit = unitOf(field, system);
  const say = (one: unknown) => {
    if (one === undefined || one === null) return "not set";
    if (typeof one === "object" && !Array.isArray(one)) return "set";
    const text = quoted(shortText(field, one, system));
    return typeof one === "number" && unit !== "" ? `${text} ${unit}` : text;
  };
  const said = `${name === "" ? "" : `${name}: `}${words} ${say(valueAt(plan, field.path))} to ${say(value)}`;
  return doubtedOf(plan, [field.path]).length === 0 ? said : `${said}, confirmed`;
}

/**
 * The draft with a value; a thing's own name is changed together with every reference to it. What a person typed is not in
 * doubt any more: it is taken off the list of what is not confirmed.
 */
export function withTyped(draft: Plan, path: PlanPath, value: unknown): Plan {
  return givenAt(withValueOrName(draft, path, value), [path]);
}

/** The same for many places at once. A value that stands there already is given by it too. */
export function withAllTyped(
  draft: Plan,
  changes: readonly { readonly at: PlanPath; readonly value: unknown }[],
): Plan {
  let out = draft;
  for (const { at, value } of changes) if (valueAt(out, at) !== value) out = withValueOrName(out, at, value);
  return givenAt(
    out,
    changes.map(({ at }) => at),
  );
}

function withValueOrName(draft: Plan, path: PlanPath, value: unknown): Plan {
  const kind: NameKind | null = namedAs(path);
  const before = valueAt(draft, path);
  if (
    kind === null ||
    typeof before !== "string" ||
    typeof value !== "string" ||
    before === "" ||
    value === ""
  )
    return withValue(draft, path, value);
  const set = path[0] === "sets" && typeof path[1] === "number" ? draft.sets[path[1]].id : undefined;
  return namesOf(draft, kind, path).filter((name) => name === before).length > 1
    ? withValue(draft, path, value)
    : renamed(draft, kind, before, value, kind === "set" ? undefined : set);
}

/** Names of one kind that a place may use, in the order of the plan. */
export function namesOf(plan: Plan, kind: Referred, path: PlanPath): string[] {
  const inSet = path[0] === "sets" && typeof path[1] === "number" ? [plan.sets[path[1]]] : plan.sets;
  switch (kind) {
    case "transporter":
      return plan.transporters.map((one) => one.id);
    case "crane":
      return plan.cranes.map((one) => one.id);
    case "rigging":
      return plan.rigging.map((one) => one.id);
    case "lashing":
      return plan.lashings.map((one) => one.id);
    case "set":
      return plan.sets.map((one) => one.id);
    case "channel":
      return (plan.people?.channels ?? []).map((one) => one.name);
    case "group":
      return plan.transporters.flatMap((one) => one.groups.map((group) => group.name));
    case "girder":
      return [...new Set(inSet.flatMap((set) => set.girders.map((girder) => girder.line)))];
    case "step":
      return inSet.flatMap((set) =>
        set.steps.flatMap((step) => [step.id, ...(step.wayBack ?? []).map((back) => back.id)]),
      );
    case "support":
      // A draft may name a crane that is not there yet.
      return [
        ...new Set(
          inSet.flatMap((set) => {
            const picks = set.picks.filter((pick) => plan.cranes.some((crane) => crane.id === pick.crane));
            return supportNames(plan, { ...set, picks });
          }),
        ),
      ];
    default:
      return kind satisfies never;
  }
}

/** A name that none of `taken` has: the base itself, or with the first free number behind it. */
export function freeName(base: string, taken: readonly string[]): string {
  if (!taken.includes(base)) return base;
  const bare = base.replace(/-\d+$/, "");
  for (let n = 2; ; n++) if (!taken.includes(`${bare}-${n}`)) return `${bare}-${n}`;
}

/** A fresh entry of a list, as the format asks for it, with nothing invented in it. */
export function entryAdded(
  plan: Plan,
  list: PlanPath,
  index: number,
  count: number,
  rowWord: string,
): DataEdit {
  const entry = blankAt([...list, 0], plan);
  const name = nameAt(list, plan) || nameAround(list, plan);
  return {
    label: `${name === "" ? "" : `${name}: `}add ${count === 1 ? rowWord : `${count} ${rowWord}s`}`,
    change: (draft) => {
      let out = draft;
      for (let i = 0; i < count; i++) out = withInserted(out, list, index + i, entry);
      return out;
    },
  };
}

/** An entry copied behind itself; its name gets a number that is free. */
export function entryCopied(plan: Plan, list: PlanPath, index: number, rowWord: string): DataEdit {
  const path = [...list, index];
  const entry = valueAt(plan, path) as Record<string, unknown>;
  const own = ["id", "name", "line"].find((key) => namedAs([...path, key]) !== null);
  const all = valueAt(plan, list) as Record<string, unknown>[];
  const copy =
    own === undefined
      ? entry
      : {
          ...entry,
          [own]: freeName(
            String(entry[own]),
            all.map((one) => String(one[own])),
          ),
        };
  return {
    label: `Copy ${rowWord} ${nameAt(path, plan)}`,
    change: (draft) => withInserted(draft, list, index + 1, copy),
  };
}

/** Entries taken out. */
export function entriesRemoved(
  plan: Plan,
  list: PlanPath,
  index: number,
  count: number,
  rowWord: string,
): DataEdit {
  const name =
    count === 1 ? nameAt([...list, index], plan) || String(index + 1) : `${index + 1} to ${index + count}`;
  return {
    label: `Remove ${rowWord} ${name}`,
    change: (draft) => withRemoved(draft, list, index, count),
  };
}

/** An entry moved to another place of its list. */
export function entryMoved(plan: Plan, list: PlanPath, from: number, to: number, rowWord: string): DataEdit {
  const name = nameAt([...list, from], plan) || String(from + 1);
  return {
    label: `Move ${rowWord} ${name} to place ${to + 1}`,
    change: (draft) => withMoved(draft, list, from, to),
  };
}
