// Findings about unbacked stretches: those that nobody accepted, those somebody did, rest in them, no zone kept empty.

import type { SetContext } from "../sequence/index.ts";
import { type Found, finding } from "./finding.ts";
import type { Fall, Finding, SetBacked, SetResult } from "./types.ts";

const SOURCE =
  "a pose is backed when the set still stands, moment ratio above 1, with any one hook or group lost";

/** One span of a support's loss with its step. */
interface Span extends Fall {
  step: number;
}

/** Findings of a set from its unbacked stretches: a stop where nobody accepted it by name, else a note. */
export function backedFindings(ctx: SetContext, set: SetResult, backed: SetBacked): Finding[] {
  const spans = backed.stretches.flatMap((s) => s.falls.map((f): Span => ({ ...f, step: s.step })));
  const out: Finding[] = [];
  for (const support of new Set(spans.map((s) => s.support))) {
    const own = spans.filter((s) => s.support === support);
    for (let i = 0; i < own.length; i++) {
      let j = i;
      while (j + 1 < own.length && follows(own[j], own[j + 1])) j++;
      out.push(unbacked(ctx, own[i], own[j]));
      i = j;
    }
  }
  const zone = withoutZone(ctx, set, backed);
  return [...out, ...rests(ctx, set, backed), ...(zone ? [zone] : [])];
}

/** Whether a span goes on in the next one: no gap between them, and accepted by the same person or by nobody. */
function follows(a: Span, b: Span): boolean {
  const touches = b.step === a.step + 1 && a.to === 1 && b.from === 0;
  return touches && (a.accepted?.by ?? "") === (b.accepted?.by ?? "");
}

function ofSet(ctx: SetContext, part: Omit<Found, "set"> & Partial<Finding>): Finding {
  const id = `${part.check}:${ctx.set.id}:${part.subject}:${part.from?.step}:${part.from?.progress}`;
  return finding({ id, set: ctx.set.id, source: SOURCE, chosenBy: "plan", ...part });
}

function unbacked(ctx: SetContext, first: Span, last: Span): Finding {
  const by = first.accepted;
  const yes = by === null ? "" : `; accepted by ${by.by}: ${by.reason}`;
  return ofSet(ctx, {
    level: by === null ? "stop" : "note",
    check: "unbacked",
    subject: first.support,
    from: { step: first.step, progress: first.from },
    to: { step: last.step, progress: last.to },
    worst: { step: first.step, progress: first.at },
    chosenBy: by?.by ?? "plan",
    words: `with ${first.support} lost, ${first.words}${yes}`,
    cure:
      by === null
        ? "keep a second support close below, make the unbacked part shorter, or have it accepted by name with the fall zone empty"
        : "keep the fall zone empty and make no stop in it",
  });
}

/** A rest may not stand in an unbacked pose, whoever accepted the pose. */
function rests(ctx: SetContext, set: SetResult, backed: SetBacked): Finding[] {
  return backed.stretches.flatMap((s) => {
    const step = set.steps[s.step].step;
    if (step.do !== "rest") return [];
    const lost = [...new Set(s.falls.map((f) => f.support))].join(", ");
    return [
      ofSet(ctx, {
        level: "stop",
        check: "unbacked rest",
        subject: step.id,
        from: { step: s.step, progress: s.from },
        to: { step: s.step, progress: s.to },
        worst: { step: s.step, progress: s.from },
        words: `the set rests while it hangs on ${lost} alone: with that lost, ${s.falls[0].words}`,
        cure: "rest on packing, stops or bearings; an acceptance does not cover a rest",
      }),
    ];
  });
}

/** Accepted or not, an unbacked step says which zone is kept empty. */
function withoutZone(ctx: SetContext, set: SetResult, backed: SetBacked): Finding | null {
  const open = backed.stretches.filter((s) => (set.steps[s.step].step.exclusion ?? "").trim() === "");
  if (open.length === 0) return null;
  const ids = [...new Set(open.map((s) => set.steps[s.step].step.id))];
  return ofSet(ctx, {
    level: "caution",
    check: "fall zone",
    subject: ids.join(", "),
    from: { step: open[0].step, progress: open[0].from },
    to: { step: open[open.length - 1].step, progress: open[open.length - 1].to },
    worst: { step: open[0].step, progress: open[0].from },
    source: "common practice, no source: nobody stays in the zone into which an unbacked set can fall",
    chosenBy: "default",
    words: `${ids.length === 1 ? "an unbacked step names" : "unbacked steps name"} no exclusion zone: ${ids.join(", ")}`,
    cure: "say in the step's exclusion which zone is kept empty and who watches it",
  });
}
