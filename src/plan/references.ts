// Which fields of a plan hold the name of something else: one table, by which names are renamed and offered as choices.
import type { PlanPath } from "./reading/planError.ts";

/** Kinds of things that carry a name by which other parts of the plan refer to them. */
export type NameKind =
  | "transporter"
  | "crane"
  | "rigging"
  | "lashing"
  | "group"
  | "set"
  | "girder"
  | "step"
  | "channel";

/** What a field refers to: a kind, or a support: hook, group or bearing by the name that findings use. */
export type Referred = NameKind | "support";

/** Whose names are meant: of all the plan, of the set that holds the field, of the set named beside it in `set` or `to`. */
export type Whose = "plan" | "own set" | "set beside" | "set in to";

/** A place that holds a name. `*` stands for any entry of a list, `@` for the names of a record's entries. */
export interface Reference {
  readonly at: readonly string[];
  readonly to: Referred;
  readonly whose: Whose;
}

/** Where each kind of thing has its own name. */
export const namedAt: Readonly<Record<NameKind, readonly (readonly string[])[]>> = {
  transporter: [["transporters", "*", "id"]],
  crane: [["cranes", "*", "id"]],
  rigging: [["rigging", "*", "id"]],
  lashing: [["lashings", "*", "id"]],
  group: [["transporters", "*", "groups", "*", "name"]],
  set: [["sets", "*", "id"]],
  girder: [["sets", "*", "girders", "*", "line"]],
  step: [
    ["sets", "*", "steps", "*", "id"],
    ["sets", "*", "steps", "*", "wayBack", "*", "id"],
  ],
  channel: [["people", "channels", "*", "name"]],
};

const to = (kind: Referred, whose: Whose, ...places: string[]): Reference[] =>
  places.map((place) => ({ at: place.split(" "), to: kind, whose }));

/** References in a step, from the step on. */
const inSteps: Reference[] = [
  ...to("transporter", "plan", "brakes *", "transporter"),
  ...to("crane", "plan", "crane", "cranes *", "hooks * crane", "order *"),
  ...to("lashing", "plan", "lashings *"),
  ...to("group", "plan", "groups *"),
  ...to("girder", "own set", "packing_mm @"),
  ...to("support", "own set", "carries *", "until frees", "settlement_mm @"),
  ...to("channel", "plan", "channel"),
];

const step = ["sets", "*", "steps", "*"];

/** Every place that holds the name of something else. */
export const references: readonly Reference[] = [
  ...to("transporter", "plan", "transporters * coupledTo", "lashings * transporter"),
  ...to("transporter", "plan", "sets * onTransporters * transporter"),
  ...to("crane", "plan", "sets * picks * crane"),
  ...to("rigging", "plan", "sets * picks * rigging"),
  ...to("set", "plan", "site seats * set", "site bearings * set", "site below states * set"),
  ...to("set", "plan", "lashings * set", "sets * infill * to"),
  ...to("set", "plan", "accept * set", "expected * set", "record * set"),
  ...to("girder", "set beside", "site seats * girder", "site bearings * girder", "lashings * girder"),
  ...to("girder", "own set", "sets * splices * girder", "sets * stiffeners * girder"),
  ...to("girder", "own set", "sets * attachments * girder", "sets * infill * girder"),
  ...to("girder", "own set", "sets * onTransporters * packing_mm @"),
  ...to("girder", "own set", "sets * picks * girders *", "sets * picks * slingLonger_mm @"),
  ...to("girder", "set in to", "sets * infill * toGirder"),
  ...to("step", "set beside", "site below states * step", "accept * step", "expected * step"),
  ...to("step", "set beside", "record * step"),
  ...to("channel", "plan", "people roles * channel", "people tests * channel"),
  ...inSteps.map((one) => ({ ...one, at: [...step, ...one.at] })),
  ...inSteps.map((one) => ({ ...one, at: [...step, "wayBack", "*", ...one.at] })),
];

/** Whether a path is one that a pattern means; a path into a record's entry is its name, `@`. */
export function fits(path: PlanPath, pattern: readonly string[]): boolean {
  if (path.length !== pattern.length) return false;
  return pattern.every((part, i) =>
    part === "*" ? typeof path[i] === "number" : part === "@" || part === path[i],
  );
}

/** What the field at a path refers to, or null. For an entry of a record: what its name refers to. */
export function referenceAt(path: PlanPath): Reference | null {
  return references.find((one) => fits(path, one.at)) ?? null;
}

/** Which kind of thing has its own name at a path, or null. */
export function namedAs(path: PlanPath): NameKind | null {
  const kinds = Object.keys(namedAt) as NameKind[];
  return kinds.find((kind) => namedAt[kind].some((pattern) => fits(path, pattern))) ?? null;
}
