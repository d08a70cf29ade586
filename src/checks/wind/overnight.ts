// A set that is left: in its `rest` steps, and where its plan ends. Nobody is there to stop work, so that it meets the gust
// for which the finished bridge is designed, less for the short time it stands so.

import { AIR, answerOf, constructionReduction } from "../../mechanics/index.ts";
import type { Plan } from "../../plan/index.ts";
import type { Pose, SetContext } from "../../sequence/index.ts";
import { finding } from "../finding.ts";
import {
  type Measure,
  type MeasureMaker,
  marginOf,
  measure,
  NOT_HERE,
  useOf as partOfLimit,
  type Reading,
  type RunCheck,
} from "../measure.ts";
import type { CheckName } from "../names.ts";
import { constant, solved } from "../trace.ts";
import { traced } from "../traced.ts";
import type { Finding } from "../types.ts";
import { factorAt, WAYS, wayWords } from "./air.ts";
import { blowerOf } from "./blow.ts";
import { measuresIn } from "./worseWay.ts";

/** Days after which the deck or another set is taken to hold this one, where the plan does not say. */
const DAYS = 42;
const GUIDE =
  "AASHTO Guide Specifications for Wind Loads on Bridges During Construction, 2017 (from memory): a part of the design speed";

/** The wind in which a set is left. */
export interface LeftWind {
  /** 3-s gust of the design at 10 m in open country, m/s, the part of it that counts, and the pressure at the set, Pa. */
  design: number;
  part: number;
  pressure: number;
  /** Where the part is from. */
  source: string;
}

/** Wind in which a set is left; null where the plan states no design gust. */
export function leftWind(plan: Plan): LeftWind | null {
  const { design, setHeight_m, hills = 1 } = plan.site.wind ?? {};
  if (design === undefined) return null;
  const days = design.days ?? DAYS;
  const part = design.factor ?? constructionReduction(days);
  const source =
    design.factor === undefined
      ? `${GUIDE}, ${days} days${design.days === undefined ? " (assumed)" : ""}`
      : (design.factorSource ?? "plan");
  const speed = part * design.gust_m_per_s;
  const pressure = AIR * (factorAt(plan, setHeight_m) ?? 1) * hills * speed * speed;
  return { design: design.gust_m_per_s, part, pressure, source };
}

/** Why nobody is there at a pose: at both ends of a rest, and where the plan ends; null elsewhere. */
function whyLeft({ set }: SetContext, { step, progress }: Pose): string | null {
  const { do: what, id } = set.steps[step];
  if (what === "rest") return progress === 0 || progress === 1 ? `rest ${id}` : null;
  return step === set.steps.length - 1 && progress === 1 ? "the end of the plan" : null;
}

/** Name of a check where a set is left. */
const overnight = (check: CheckName): CheckName => `overnight: ${check}`;

const SLIDING = "overnight: contacts at their limit";
const HOLD = "lashings, stops or guides that hold it across before it is left";

const cureOf = (m: Measure): string => `lashings, guys or bracing before it is left; or ${m.cure}`;

const sourceOf = (m: Measure, r: Reading, wind: LeftWind): string =>
  `${r.source ?? m.source}; ${wind.source}`;

/** Makes of the checks of a pose those of a set that is left, for one pose and its trace. */
export function overnightMeasures(makers: readonly MeasureMaker[]): MeasureMaker {
  return (ctx) => {
    const wind = leftWind(ctx.plan);
    if (wind === null) return [];
    return measuresIn(ctx, makers, {
      words: "the gust in which the set is left,",
      form: (m) => ({ check: overnight(m.check), cure: cureOf(m) }),
      pressure: (pose) => (whyLeft(ctx, pose) === null ? null : wind.pressure),
      // From the contacts of the calm, as the check itself: not from those of another pose.
      blower: () => blowerOf(ctx),
      say: ({ reading }, m) => ({ ...reading, source: sourceOf(m, reading, wind) }),
    });
  };
}

/** Makes the check of the states in which a set is left, out of the checks of a pose. */
export function overnightCheck(makers: readonly MeasureMaker[]): RunCheck {
  const windOvernight: RunCheck = (ctx, _, stored) => {
    const places = stored.flatMap((pose) => {
      const why = whyLeft(ctx, pose);
      return why === null ? [] : [{ pose, why }];
    });
    if (places.length === 0) return [];
    const wind = leftWind(ctx.plan);
    if (wind === null)
      return [
        finding({
          level: "note",
          check: "missing data",
          set: ctx.set.id,
          subject: "site.wind.design",
          words: `no design gust: the set is left at ${[...new Set(places.map((p) => p.why))].join(", ")}, and how it stands in a storm is not checked`,
          cure: "give site.wind.design: the 3-s gust of the bridge's design, with its source, and how many days the set stands so",
        }),
      ];
    const measures = makers.flatMap((make) => make(ctx));
    const found = new Map<string, Finding>();
    for (const { pose, why } of places)
      for (const one of leftFindings(ctx, pose, why, wind, measures)) {
        const known = found.get(one.id);
        if (known === undefined || (one.use ?? 0) > (known.use ?? 0)) found.set(one.id, one);
      }
    return [...found.values()];
  };
  return windOvernight;
}

function leftFindings(
  ctx: SetContext,
  pose: Pose,
  why: string,
  wind: LeftWind,
  measures: readonly Measure[],
): Finding[] {
  if (pose.solution.status !== "solved") return [];
  const at = { step: pose.step, progress: pose.progress };
  const blower = blowerOf(ctx);
  const out: Finding[] = [];
  const speed = wind.part * wind.design;
  let sliding: string[] = [];
  let slides = "";
  const say = (part: Pick<Finding, "level" | "check" | "subject" | "words" | "cure"> & Partial<Finding>) => {
    const id = `${part.check}:${ctx.set.id}:${part.subject}:${why}`;
    out.push(finding({ id, set: ctx.set.id, from: at, to: at, worst: at, source: wind.source, ...part }));
  };
  for (const toward of WAYS) {
    const blows = `${speed.toFixed(1)} m/s (${wind.part} of ${wind.design}) blowing ${wayWords(toward)}, left at ${why}`;
    const gust = blower.at(pose, wind.pressure, toward);
    if (gust.solution.status !== "solved") {
      say({
        level: "stop",
        check: overnight("no equilibrium"),
        subject: "set",
        words: `overnight: the set does not stand in ${blows}: ${gust.solution.motion || "side forces do not settle"}`,
        cure: HOLD,
      });
      continue;
    }
    const names = slidingIn(pose, gust);
    if (names.length > sliding.length) {
      sliding = names;
      slides = blows;
    }
    for (const m of measures) {
      const r = m.read(gust);
      if (!(marginOf(m, r) < 0) || marginOf(m, m.read(pose)) < 0) continue;
      const value = r.value * m.factor;
      const limit = r.limit * m.factor;
      say({
        level: m.level,
        check: overnight(m.check),
        subject: m.subject,
        value,
        limit,
        unit: m.unit,
        use: partOfLimit(m, r),
        source: sourceOf(m, r, wind),
        chosenBy: r.chosenBy ?? m.chosenBy,
        words: `overnight: ${m.check} of ${m.subject}: ${value.toFixed(m.digits)} is ${m.sense === "greatest" ? "above" : "below"} ${limit.toFixed(m.digits)} ${m.unit} (${r.where ? `${r.where}, ` : ""}${blows})`,
        cure: cureOf(m),
      });
    }
  }
  if (sliding.length > 0)
    say({
      level: "caution",
      check: SLIDING,
      subject: "set",
      value: sliding.length,
      limit: 0,
      unit: "contacts",
      words: `overnight: ${sliding.join(", ")} at the limit of what holds across, in ${slides}`,
      cure: HOLD,
    });
  return out;
}

/** Supports at the limit of what holds them sideways in a gust that are not at it in the calm. */
function slidingIn(calm: Pose, gust: Pose): string[] {
  const before = answerOf(calm.solution).horizontal?.slipping ?? [];
  return (answerOf(gust.solution).horizontal?.slipping ?? []).filter((name) => !before.includes(name));
}

/** How many supports slide where a set is left, the more of both ways, for one pose and its trace. */
export function overnightSliding(ctx: SetContext): Measure[] {
  const wind = leftWind(ctx.plan);
  if (wind === null) return [];
  return [
    measure(
      {
        check: SLIDING,
        subject: "set",
        kind: "",
        level: "caution",
        unit: "contacts",
        factor: 1,
        digits: 0,
        watched: false,
        cure: HOLD,
        ...traced(ctx, (pose, rec): Reading => {
          if (whyLeft(ctx, pose) === null) return NOT_HERE;
          const blower = blowerOf(ctx);
          let most: string[] | null = null;
          for (const toward of WAYS) {
            const gust = blower.at(pose, wind.pressure, toward);
            if (gust.solution.status !== "solved") continue;
            const names = slidingIn(pose, gust);
            if (most === null || names.length > most.length) most = names;
          }
          if (most === null) return NOT_HERE;
          const which = most.length === 0 ? "" : `: ${most.join(", ")}`;
          solved(
            rec,
            "n",
            most.length,
            "1",
            `supports that the gust brings to the limit of what holds them across${which}`,
          );
          constant(rec, "n_a", 0, "1", "none", "a set that is left holds by more than friction at its limit");
          rec?.ends("n", "n_a");
          return { value: most.length, limit: 0, where: most.join(", ") };
        }),
      },
      { source: wind.source, chosenBy: "" },
    ),
  ];
}
