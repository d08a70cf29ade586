// What the clearances of a run say: every pair that comes nearer than its limit, where from and to, and how near at most.

import { bearingsOf, seatOf } from "../../plan/index.ts";
import type { SetContext, StepRun } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import { limitOf } from "../limits.ts";
import { ofPieces, type PlanCheck } from "../measure.ts";
import type { Finding } from "../types.ts";
import { clearancesOf } from "./clearances.ts";
import { lineLimit } from "./limits.ts";
import type { Clearance } from "./types.ts";

export const CLEARANCE = "clearance";

const cures: Record<string, string> = {
  "overhead line": "have the line shut off and earthed, or keep further away from it",
  "clearance boom to set": "a longer or steeper boom, another place of the crane, or longer slings",
  "clearance tail swing": "another place of the crane, or swing the other way round",
  "clearance transporter below set": "jack the transporter further down before it drives out",
};
const CURE = "make room, or choose another way";

/** One unbroken stretch below the limit, over one step or several. */
interface Stretch {
  from: { step: number; progress: number };
  to: { step: number; progress: number };
  worst: Clearance;
}

/** Distances that differ by less are told as one, m. */
const SAME = 1e-6;

/** Stretches of one pair, joined across steps where one ends below and the next begins below. */
function stretchesOf(list: readonly Clearance[]): Stretch[] {
  const out: Stretch[] = [];
  for (const c of list)
    for (const [from, to] of c.below) {
      const last = out[out.length - 1];
      const goesOn =
        last !== undefined && from === 0 && last.to.progress === 1 && last.to.step === c.step - 1;
      // Within one step the least distance belongs to one of its stretches; the others are told by it too.
      if (goesOn) {
        last.to = { step: c.step, progress: to };
        if (c.distance - c.sway < last.worst.distance - last.worst.sway - SAME) last.worst = c;
      } else
        out.push({ from: { step: c.step, progress: from }, to: { step: c.step, progress: to }, worst: c });
    }
  return out;
}

/** Whether the motion of one of some steps has told already that one of a pair is not clear. */
function told(runs: readonly StepRun[], subject: string): boolean {
  return runs.some((run) =>
    run.happenings.some(
      (h) => h.kind === "not clear" && h.level === undefined && subject.includes(h.subject),
    ),
  );
}

/** Findings of the clearances of a run. */
export const clearanceFindings = ofPieces(function* clearanceFindings(ctx, run, stored) {
  const { list } = yield* clearancesOf(ctx, run, stored);
  const subjects = new Map<string, Clearance[]>();
  for (const c of list) {
    if (c.below.length === 0) continue;
    const own = subjects.get(c.subject);
    if (own === undefined) subjects.set(c.subject, [c]);
    else own.push(c);
  }
  return [...subjects.values()].flatMap((own) =>
    stretchesOf(own)
      .filter(({ from, to, worst }) => !told(run.steps.slice(from.step, to.step + 1), worst.subject))
      .map((stretch) => one(ctx, stretch)),
  );
});

function one(ctx: SetContext, { from, to, worst: c }: Stretch): Finding {
  const limit = (c.limit ?? 0) + c.sway;
  const into = c.distance < 0;
  // A usual distance that nobody chose is a warning; what a rule, a plan or steel in steel says is a stop.
  const stop = into || c.kind === "overhead line" || c.chosenBy !== "default";
  const [a, b] = c.bodies;
  const what = into
    ? `${c.subject}: ${c.distance.toFixed(3)} m, ${a} lies ${(-c.distance).toFixed(3)} m within ${b}`
    : `${c.subject}: ${a} comes to ${c.distance.toFixed(3)} m of ${b}, nearer than ${limit.toFixed(3)} m`;
  const sway = c.sway > 0 ? ` (${c.sway.toFixed(3)} m of it for sway)` : "";
  return {
    ...finding({
      level: stop ? "stop" : "caution",
      check: CLEARANCE,
      set: ctx.set.id,
      subject: c.subject,
      words: `${what}${sway}`,
      cure: cures[c.kind] ?? CURE,
    }),
    id: `${CLEARANCE}:${ctx.set.id}:${c.subject}:${from.step}:${from.progress}`,
    from,
    to,
    worst: { step: c.step, progress: c.progress },
    value: c.distance,
    limit,
    unit: "m",
    use: c.distance > 0 ? limit / c.distance : null,
    source: c.source,
    chosenBy: c.chosenBy,
  };
}

/** What a plan leaves open about clearances. */
export const openClearances: PlanCheck = (plan) => {
  const out: Finding[] = [];
  plan.site.obstacles.forEach((o, i) => {
    if (o.kind !== "overhead line" || o.clearance_m !== undefined) return;
    const path = `site.obstacles[${i}].voltage_kV`;
    if (o.voltage_kV === undefined)
      out.push(
        finding({
          level: "note",
          check: "missing data",
          set: "",
          subject: path,
          words: `${path}: the voltage of ${o.name} is not stated; 20 ft stand in`,
          cure: "ask the owner of the line",
        }),
      );
    else if (lineLimit(o) === null)
      out.push(
        finding({
          level: "note",
          check: "limit not set",
          set: "",
          subject: `clearance of ${o.name}`,
          words: `${o.name}: no distance is known for ${o.voltage_kV} kV; it is measured and not judged`,
          cure: "state the distance that its owner asks for, as clearance_m",
        }),
      );
  });
  for (const set of plan.sets.slice(0, -1))
    if (
      set.soleStations_m === undefined ||
      bearingsOf(plan, set).some((b) => seatOf(plan, set, b.line, b.girder) === null)
    )
      out.push(
        finding({
          level: "note",
          check: "missing data",
          set: "",
          subject: `place of ${set.id}`,
          words: `${set.id}: without sole stations and seats nobody knows where it lies; later sets are not kept clear of it`,
          cure: "give soleStations_m of the set and site.seats of its girders",
        }),
      );
  if (limitOf(plan, "sway allowance") === null && plan.cranes.length > 0)
    out.push(
      finding({
        level: "note",
        check: "limit not set",
        set: "",
        subject: "sway allowance",
        words:
          "sway allowance: nobody said how far a hanging set may sway; clearances are those of a set at rest",
        cure: "set the limit 'sway allowance', in percent of the length of the longest line",
      }),
    );
  return out;
};
