// Structures underfoot: what of any axle line or track stands or passes above one, against what it may carry, or a call
// for a structure check where nobody said what that is.

import type { Plan, Underfoot } from "../../plan/index.ts";
import { type Pose, peak, poseAt, type SetContext, type SetRun } from "../../sequence/index.ts";
import { type Measure, measure, NOT_HERE, type Reading } from "../measure.ts";
import { field, KN, type Recorder } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding, When } from "../types.ts";
import { type Above, type Load, loadersOf, type Over, type Passage } from "./above.ts";
import { type Allowable, allowableAt, recordAllowable } from "./allowable.ts";
import { foundThere, placeWords, whenAt } from "./found.ts";

const CURE =
  "keep off it, bridge it with plates, or have it checked for this load and give the value with its source";

/** A bound this little above what was found is not worth solving a pose for: 0.01 % of the load. */
const CLOSE = 1e-4;
/** Poses just inside the ends of a passage: this part of it, so that they stand above without doubt. */
const INSIDE = 1e-6;
/** Where a load is greatest within a passage is found to this part of the way between two stored poses. */
const EXACT = 1e-3;

/** The worst of one kind of load, with its place. */
interface Worst extends Load {
  at: When;
}

/** What a structure bears: a whole axle line, and a pressure upon it. */
type Kind = "line" | "pressure";
const KINDS: readonly Kind[] = ["line", "pressure"];

/** Everything that stands or passes above one structure in a run: the worst of each machine, and where it first is there. */
interface Passed {
  machine: string;
  first: When;
  line: Worst | null;
  pressure: Worst | null;
}

function passedBy(
  ctx: SetContext,
  run: SetRun,
  stored: readonly Pose[],
  over: Over,
  limits: Limits,
): Passed | null {
  let out: Passed | null = null;
  const look = (above: Above | null, at: When) => {
    if (above === null) return;
    out ??= { machine: over.machine, first: at, line: null, pressure: null };
    for (const kind of KINDS) {
      const now = above[kind];
      if (now !== null && now.value > (out[kind]?.value ?? 0)) out[kind] = { ...now, at };
    }
  };
  stored.forEach((pose, i) => {
    look(over.at(pose), whenAt(run, i));
  });
  const value = (kind: Kind) => (out as Passed | null)?.[kind]?.value ?? 0;
  const limit = (kind: Kind) => limits[kind]?.value ?? 0;
  const worth = (kind: Kind, bound: number) => bound > Math.max(value(kind) * (1 + CLOSE), limit(kind));
  /** Whether it is open that a limit is kept, and a load that may be there would tell. */
  const open = (kind: Kind, bound: number) =>
    limits[kind] !== null && value(kind) <= limit(kind) && bound > limit(kind) * (1 + CLOSE);
  const found: (Passage & { i: number; k: number })[] = [];
  for (let i = 0; i + 1 < stored.length; i++)
    if (run.step[i + 1] === run.step[i])
      found.push(...over.between(stored[i], stored[i + 1], null).map((p, k) => ({ ...p, i, k })));
  found.sort((a, b) => b.line - a.line);
  const solve = (i: number, part: number): Pose => {
    const { step, progress } = whenAt(run, i);
    return poseAt(ctx, run.steps[step], progress + part * (run.progress[i + 1] - progress), stored[i]);
  };
  const lookAt = (i: number, part: number): Above | null => {
    const pose = solve(i, part);
    if (pose.solution.status !== "solved") return null;
    const above = over.at(pose);
    look(above, { step: pose.step, progress: pose.progress });
    return above;
  };
  const middles = new Map<number, Pose>();
  for (const { i, k, from, to, shown, ...loads } of found) {
    const [first, last] = [from + INSIDE * (to - from), to - INSIDE * (to - from)];
    // What comes above or leaves between two poses carries at least what it does at the ends of its passage.
    if (!shown && (out === null || KINDS.some((kind) => worth(kind, loads[kind]))))
      for (const part of [first, last]) lookAt(i, part);
    // Near a limit, what it carries between them is bounded by the pose in their middle, and searched where that is not enough.
    if (!KINDS.some((kind) => open(kind, loads[`${kind}Most`]))) continue;
    const middle = middles.get(i) ?? solve(i, 0.5);
    middles.set(i, middle);
    const closer =
      middle.solution.status === "solved" ? over.between(stored[i], stored[i + 1], middle)[k] : loads;
    for (const kind of KINDS)
      if (open(kind, closer[`${kind}Most`])) {
        if (!shown) for (const part of [first, last]) lookAt(i, part);
        lookAt(
          i,
          peak((part) => lookAt(i, part)?.[kind]?.value ?? 0, first, last, EXACT),
        );
      }
  }
  return out;
}

/** What a structure may carry: a line in N, a pressure in Pa; null where nobody said. */
interface Limits {
  path: string;
  line: { value: number; stated: number } | null;
  pressure: Allowable | null;
}

function limitsOf(plan: Plan, one: Underfoot): Limits {
  const path = `site.underfoot[${plan.site.underfoot.indexOf(one)}]`;
  const line = one.allowedLine_kN;
  return {
    path,
    line: line === undefined ? null : { value: line * 1000, stated: line },
    pressure: allowableAt(path, one),
  };
}

/** A structure's line is told of under its name, the pressure upon it beside it. */
const subjectOf = (one: Underfoot, kind: Kind): string =>
  kind === "line" ? one.name : `${one.name}, pressure`;

const UNIT = { line: "kN", pressure: "kPa" } as const;

/** Everything that stands above structures, each at its worst. */
export function underfootFindings(ctx: SetContext, run: SetRun, stored: readonly Pose[]): Finding[] {
  return ctx.plan.site.underfoot.flatMap((one) => {
    const limits = limitsOf(ctx.plan, one);
    const passed = loadersOf(ctx, one).flatMap((over) => passedBy(ctx, run, stored, over, limits) ?? []);
    if (limits.line === null && limits.pressure === null)
      return passed.map((p) => uncheckedFinding(ctx, run, one, p));
    return KINDS.flatMap((kind) => overFindings(ctx, run, one, kind, limits[kind]?.value, passed));
  });
}

/** What is above the limit of a structure: the worst of it, with the other machines that are above it too. */
function overFindings(
  ctx: SetContext,
  run: SetRun,
  one: Underfoot,
  kind: Kind,
  limit: number | undefined,
  passed: readonly Passed[],
): Finding[] {
  if (limit === undefined) return [];
  const over = passed
    .flatMap(({ machine, [kind]: worst }) => (worst ? [{ machine, ...worst }] : []))
    .filter(({ value }) => value > limit * (1 + 1e-9))
    .sort((a, b) => b.value - a.value);
  if (over.length === 0) return [];
  const [worst, ...others] = over;
  const unit = UNIT[kind];
  const said = (load: (typeof over)[number]) =>
    `${load.machine}${kind === "line" ? `, ${load.name},` : ""} with ${(load.value / 1000).toFixed(1)} ${unit} (${placeWords(run, load.at)})`;
  const too = others.length > 0 ? `; so is ${others.map(said).join(", and ")}` : "";
  return [
    foundThere(ctx, worst.at, {
      ...base(one),
      id: `structure underfoot:${ctx.set.id}:${one.name}:${kind}`,
      subject: subjectOf(one, kind),
      level: "stop",
      value: worst.value / 1000,
      limit: limit / 1000,
      unit,
      words: `${said(worst)} stands above ${one.name}: beyond the ${(limit / 1000).toFixed(1)} ${unit} that it may carry${too}`,
    }),
  ];
}

const base = (one: Underfoot) =>
  ({ check: "structure underfoot", cure: CURE, source: one.source ?? "plan" }) as const;

/** What stands above a structure of which nobody said what it may carry. */
function uncheckedFinding(ctx: SetContext, run: SetRun, one: Underfoot, passed: Passed): Finding {
  const { machine, line, pressure, first } = passed;
  const numbers = [
    line ? `${line.name} of ${(line.value / 1000).toFixed(1)} kN` : "",
    pressure ? `${(pressure.value / 1000).toFixed(0)} kPa` : "no pressure known",
  ].filter((w) => w !== "");
  const at = pressure?.at ?? line?.at ?? first;
  const signed = one.signedOff;
  const words = `${machine} stands above ${one.name} with ${numbers.join(", ")} (${placeWords(run, at)})`;
  return foundThere(ctx, at, {
    ...base(one),
    id: `structure underfoot:${ctx.set.id}:${one.name}:${machine}`,
    subject: one.name,
    level: signed ? "note" : "caution",
    chosenBy: signed?.by ?? "plan",
    words: signed
      ? `${words}: signed for by ${signed.by}`
      : `${words}, and nothing says what it may carry: it needs a structure check`,
  });
}

/** The greatest axle line, and the greatest pressure, above structures at one pose, for their traces. */
export function loadsAbove(ctx: SetContext): Measure[] {
  return ctx.plan.site.underfoot.flatMap((one) => {
    const limits = limitsOf(ctx.plan, one);
    const loaders = loadersOf(ctx, one);
    return KINDS.flatMap((kind): Measure[] => {
      const limit = limits[kind]?.value;
      if (limit === undefined) return [];
      return [
        measure({
          ...base(one),
          subject: subjectOf(one, kind),
          kind: "",
          unit: UNIT[kind],
          watched: false,
          chosenBy: "plan",
          ...traced(ctx, (pose, rec): Reading => {
            let most: Load | null = null;
            for (const over of loaders) {
              const now = over.at(pose)?.[kind] ?? null;
              if (now !== null && (most === null || now.value > most.value)) most = now;
            }
            if (most === null) return NOT_HERE;
            if (rec !== null) recordEnds(rec, most, limits, kind);
            return { value: most.value, limit, where: most.name };
          }),
        }),
      ];
    });
  });
}

function recordEnds(rec: Recorder, load: Load, limits: Limits, kind: Kind): void {
  const symbol = load.record(rec);
  if (symbol === null) return;
  const { line, pressure, path } = limits;
  if (kind === "line" && line !== null)
    field(
      rec,
      "F_a",
      line.value,
      "line that the structure allows",
      `${path}.allowedLine_kN`,
      line.stated,
      KN,
    );
  else if (pressure !== null) recordAllowable(rec, pressure);
  rec.ends(symbol, kind === "line" ? "F_a" : "q_a");
}
