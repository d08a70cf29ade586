// The pairs that must keep clear of each other, by rule: what is meant to touch (a set on its bunks and bearings, rigging
// on its set, a machine on its ground) is no pair while it does.

import type { SetContext, Situation } from "../../sequence/index.ts";
import { type BodyGroup, type BodyKind, sweptBodies } from "../../shape/index.ts";
import { type Limit, limitOf } from "../limits.ts";
import { lineLimit } from "./limits.ts";

/** Two groups of bodies with the limit of their distance. */
export interface ClearancePair {
  /** Places among the groups of the swept bodies. */
  a: number;
  b: number;
  /** As 'boom of far-crane to set'. */
  subject: string;
  /** Name of its limit, or 'overhead line'. */
  kind: string;
  /** m; null where nobody set it. */
  limit: Limit | null;
  /** False while both are meant to touch. */
  applies: (s: Situation) => boolean;
}

/** Kinds that keep clear of each other: limit, and whether both must belong to different machines or to the same. */
interface Rule {
  a: BodyKind;
  b: readonly BodyKind[];
  limit: string;
  of?: "same" | "others";
}

const rules: readonly Rule[] = [
  { a: "boom", b: ["set", "landed set"], limit: "clearance boom to set" },
  { a: "boom", b: ["boom"], limit: "clearance boom to boom", of: "others" },
  { a: "boom", b: ["obstacle", "overhead line"], limit: "clearance obstacle" },
  {
    a: "tail",
    b: ["set", "landed set", "train", "abutment", "backwall", "obstacle"],
    limit: "clearance tail swing",
  },
  { a: "tail", b: ["tail", "tracks", "boom"], limit: "clearance tail swing", of: "others" },
  { a: "tracks", b: ["train"], limit: "clearance transporter" },
  { a: "tracks", b: ["set"], limit: "clearance set to structure" },
  { a: "line", b: ["boom"], limit: "clearance line", of: "others" },
  { a: "line", b: ["obstacle", "overhead line"], limit: "clearance line" },
  { a: "rigging", b: ["boom"], limit: "clearance rigging to boom" },
  { a: "rigging", b: ["obstacle", "overhead line"], limit: "clearance obstacle" },
  { a: "set", b: ["abutment", "backwall", "landed set"], limit: "clearance set to structure" },
  { a: "set", b: ["path"], limit: "clearance set to path" },
  { a: "set", b: ["obstacle", "overhead line"], limit: "clearance obstacle" },
  { a: "set", b: ["train"], limit: "clearance transporter below set" },
  { a: "train", b: ["train"], limit: "clearance transporter", of: "others" },
  { a: "train", b: ["obstacle"], limit: "clearance transporter" },
];

/** Whether two groups may be nearer than any limit because they are meant to touch. */
function appliesTo(a: BodyGroup, b: BodyGroup): (s: Situation) => boolean {
  if (a.kind === "set" && b.kind === "abutment") return (s) => !s.overSeats;
  if (a.kind === "set" && b.kind === "train") return (s) => s.trains.some((t) => t.id === b.of && !t.under);
  return () => true;
}

function limitFor(ctx: SetContext, rule: Rule, b: BodyGroup): Limit | null {
  const obstacle = ctx.plan.site.obstacles.find((o) => o.name === b.of);
  if (b.kind === "overhead line" && obstacle !== undefined) return lineLimit(obstacle);
  if (b.kind === "obstacle" && obstacle?.clearance_m !== undefined)
    return {
      value: obstacle.clearance_m,
      source: `clearance stated for ${obstacle.name} in the plan`,
      chosenBy: "plan",
    };
  return limitOf(ctx.plan, rule.limit, true);
}

const made = new WeakMap<SetContext, ClearancePair[]>();

/** All pairs of a set that are looked at. */
export function pairsOf(ctx: SetContext): ClearancePair[] {
  const known = made.get(ctx);
  if (known !== undefined) return known;
  const { groups } = sweptBodies(ctx);
  const out: ClearancePair[] = [];
  for (const rule of rules)
    groups.forEach((one, a) => {
      if (one.kind !== rule.a) return;
      groups.forEach((other, b) => {
        if (!rule.b.includes(other.kind) || a === b) return;
        if (one.kind === other.kind && b < a) return;
        if (rule.of === "others" && one.of === other.of) return;
        out.push({
          a,
          b,
          subject: `${one.name} to ${other.name}`,
          kind: other.kind === "overhead line" ? "overhead line" : rule.limit,
          limit: limitFor(ctx, rule, other),
          applies: appliesTo(one, other),
        });
      });
    });
  made.set(ctx, out);
  return out;
}
