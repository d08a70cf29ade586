// Numbers of the rigging by its data alone: proof test, angle of its legs, parts against the mass of the whole, stiffness of
// its slings against their steel.

import { wireArea, wireModulus } from "../../mechanics/index.ts";
import type { Plan, PlanSet, Rigging } from "../../plan/index.ts";
import { dataMeasure } from "../dataMeasure.ts";
import { limitOf } from "../limits.ts";
import type { DataMeasure, Reading } from "../measure.ts";
import { constant, type FieldUnit, field, KN, METRE, MM, type Recorder, TONNE, trace } from "../trace.ts";
import { slingEA, topAngle } from "./legs.ts";

const DEGREES: FieldUnit = { unit: "deg", si: "deg", change: "" };
const COUNT: FieldUnit = { unit: "1", si: "1", change: "" };
const STIFFNESS: FieldUnit = { unit: "kN/mm", si: "N/m", change: "*1e6" };

/** All rigging of a plan. */
export const allGear = (plan: Plan): DataMeasure[] => plan.rigging.flatMap((rig) => gearMeasures(plan, rig));

/** One assembly. */
export function gearMeasures(plan: Plan, rig: Rigging): DataMeasure[] {
  return [...proof(plan, rig), ...legAngles(plan, rig), ...partsMass(plan, rig), ...stiffness(plan, rig)];
}

const pathOf = (plan: Plan, rig: Rigging): string => `rigging[${plan.rigging.indexOf(rig)}]`;

/** Custom gear is proof-tested; what is blank is an open item, not a finding here. */
function proof(plan: Plan, rig: Rigging): DataMeasure[] {
  const { custom, ratedLoad_kN: rated } = rig;
  const tested = custom?.proofTest_kN;
  const limit = limitOf(plan, "proof test", true);
  if (tested === undefined || limit === null) return [];
  const path = pathOf(plan, rig);
  return [
    dataMeasure(
      {
        level: "stop",
        check: "proof test",
        set: "",
        subject: rig.id,
        sense: "least",
        unit: "kN",
        factor: 1e-3,
        words: ({ limit: needed }) =>
          `rigging '${rig.id}' was tested with ${tested.toFixed(0)} kN; ${limit.value} % of its rated ${rated} kN is ${(needed / 1000).toFixed(1)} kN`,
        cure: "test it anew, or rate it lower",
      },
      (rec): Reading => {
        const words = "load of its proof test";
        const value = field(rec, "F", tested * 1000, words, `${path}.custom.proofTest_kN`, tested, KN);
        field(rec, "F_r", rated * 1000, "rated load", `${path}.ratedLoad_kN`, rated, KN);
        constant(rec, "p", limit.value, "%", "of the rated load", `${limit.source} (${limit.chosenBy})`);
        const asked = (rated * 1000 * limit.value) / 100;
        trace(rec, "F_a", asked, "F_r*p/100", "N", "load that the test must have had");
        rec?.ends("F", "F_a");
        return { value, limit: asked };
      },
      limit,
    ),
  ];
}

/** Legs above a spreader, those to one hook, and those of parts with a stated angle: from the horizontal, degrees. */
function legAngles(plan: Plan, rig: Rigging): DataMeasure[] {
  const limit = limitOf(plan, "sling angle", true);
  if (limit === null) return [];
  const path = pathOf(plan, rig);
  const of = (what: string, angle: (rec: Recorder | null) => number): DataMeasure =>
    dataMeasure(
      {
        level: "stop",
        check: "sling angle",
        set: "",
        subject: `${rig.id}: ${what}`,
        sense: "least",
        unit: "deg",
        factor: 1,
        words: ({ value }) =>
          `rigging '${rig.id}': ${what} stand at ${value.toFixed(1)} degrees from the horizontal, allowed ${limit.value}`,
        cure: "longer legs, or a hook higher above the picks",
      },
      (rec) => {
        const value = angle(rec);
        constant(rec, "least", limit.value, "deg", "least angle", `${limit.source} (${limit.chosenBy})`);
        rec?.ends("angle", "least");
        return { value, limit: limit.value };
      },
      limit,
    );
  const parts = (rig.parts ?? []).flatMap(({ name, angle_deg }, i) =>
    angle_deg === undefined
      ? []
      : [of(`part '${name}'`, (rec) => fromVertical(rec, `${path}.parts[${i}].angle_deg`, angle_deg))],
  );
  const top =
    rig.topLegs === undefined ? [] : [of("the legs above its spreader", (rec) => topLegs(rec, path, rig))];
  if (rig.kind !== "point") return [...parts, ...top];
  const picked = plan.sets.flatMap((set) =>
    set.picks
      .filter((p) => p.rigging === rig.id)
      .map((p) => of(`the slings of ${p.crane} on ${set.id}`, (rec) => toPoint(rec, plan, rig, set, p))),
  );
  return [...parts, ...top, ...picked];
}

/** A leg stated from the vertical. */
function fromVertical(rec: Recorder | null, path: string, degrees: number): number {
  field(rec, "alpha", degrees, "leg from the vertical", path, degrees, DEGREES);
  return trace(rec, "angle", 90 - degrees, "90 - alpha", "deg", "leg from the horizontal");
}

function topLegs(rec: Recorder | null, path: string, rig: Rigging): number {
  const { apart_m = 0, length_m, angle_deg } = rig.topLegs ?? {};
  if (angle_deg !== undefined) return fromVertical(rec, `${path}.topLegs.angle_deg`, angle_deg);
  field(rec, "a", apart_m, "between the legs' lower ends", `${path}.topLegs.apart_m`, apart_m, METRE);
  const value = 90 - (topAngle(rig) * 180) / Math.PI;
  const words = "leg from the horizontal";
  if (length_m !== undefined) {
    field(rec, "l", length_m, "length of a leg", `${path}.topLegs.length_m`, length_m, METRE);
    return trace(rec, "angle", value, "acos(a/2/l)*180/pi", "deg", words);
  }
  const h = rig.hookPinHeight_m;
  field(rec, "h", h, "hook above the spreader's lower pins", `${path}.hookPinHeight_m`, h, METRE);
  return trace(rec, "angle", value, "90 - atan(a/2/h)*180/pi", "deg", words);
}

/** Slings from the girders of a pick to one hook. */
function toPoint(
  rec: Recorder | null,
  plan: Plan,
  rig: Rigging,
  set: PlanSet,
  pick: PlanSet["picks"][number],
): number {
  const path = pathOf(plan, rig);
  const held = set.girders.flatMap((g, i) =>
    (pick.girders?.includes(g.line) ?? true) ? [{ y: g.y_m, i }] : [],
  );
  const outer = (one: "max" | "min") => held.find((h) => h.y === Math[one](...held.map((g) => g.y)));
  const [left, right] = [outer("max"), outer("min")];
  for (const [symbol, one] of [
    ["y_1", left],
    ["y_2", right],
  ] as const) {
    const girder = `sets[${plan.sets.indexOf(set)}].girders[${one?.i}].y_m`;
    field(rec, symbol, one?.y ?? 0, "outer girder of the pick, to the left", girder, one?.y ?? 0, METRE);
  }
  const across = ((left?.y ?? 0) - (right?.y ?? 0)) / 2;
  const along = rig.legs?.alongApart_m;
  const words = "between the slings of a girder, along it";
  if (along === undefined) constant(rec, "a", 0, "m", words, "the plan states none");
  else field(rec, "a", along, words, `${path}.legs.alongApart_m`, along, METRE);
  const h = rig.hookPinHeight_m;
  field(rec, "h", h, "hook above the picks", `${path}.hookPinHeight_m`, h, METRE);
  const b = Math.hypot(across, (along ?? 0) / 2);
  trace(rec, "b", b, "sqrt(((y_1 - y_2)/2)^2 + (a/2)^2)", "m", "pick from below the hook, in plan");
  const value = (Math.atan2(h, b) * 180) / Math.PI;
  return trace(rec, "angle", value, "b > 0 ? atan(h/b)*180/pi : 90", "deg", "leg from the horizontal");
}

/** The mass of the assembly against the sum of its parts, where every part has one; a heavier sum in any case. */
function partsMass(plan: Plan, rig: Rigging): DataMeasure[] {
  const limit = limitOf(plan, "parts above rigging mass");
  const parts = rig.parts ?? [];
  if (limit === null || parts.length === 0) return [];
  const sum = parts.reduce((total, part) => total + part.count * ((part.mass_t ?? 0) * 1000), 0);
  const whole = parts.every((part) => part.mass_t !== undefined);
  const light = whole && sum < rig.mass_t * 1000;
  const path = pathOf(plan, rig);
  return [
    dataMeasure(
      {
        check: "rigging mass",
        set: "",
        subject: rig.id,
        sense: light ? "least" : "greatest",
        unit: "t",
        factor: 1e-3,
        digits: 2,
        words: () =>
          `the parts of rigging '${rig.id}' weigh ${(sum / 1000).toFixed(2)} t${whole ? "" : " as far as they are stated"}, the plan counts ${rig.mass_t} t on the hook`,
        cure: light ? "name the parts that are missing, or correct the mass" : "count all of it on the hook",
      },
      (rec): Reading => {
        const terms = parts.flatMap(({ name, count, mass_t }, i) => {
          if (mass_t === undefined) return [];
          field(rec, `n_${i}`, count, `how many '${name}'`, `${path}.parts[${i}].count`, count, COUNT);
          field(
            rec,
            `m_${i}`,
            mass_t * 1000,
            `mass of '${name}'`,
            `${path}.parts[${i}].mass_t`,
            mass_t,
            TONNE,
          );
          return [`n_${i}*m_${i}`];
        });
        trace(rec, "m", sum, terms.length === 0 ? "0" : terms.join(" + "), "kg", "mass of the parts");
        field(rec, "m_r", rig.mass_t * 1000, "mass of the assembly", `${path}.mass_t`, rig.mass_t, TONNE);
        constant(rec, "p", limit.value, "%", "allowed off it", `${limit.source} (${limit.chosenBy})`);
        const allowed = rig.mass_t * 1000 * (light ? 1 - limit.value / 100 : 1 + limit.value / 100);
        const words = `${light ? "least" : "greatest"} mass of the parts`;
        trace(rec, "m_a", allowed, `m_r*(1 ${light ? "-" : "+"} p/100)`, "kg", words);
        rec?.ends("m", "m_a");
        return { value: sum, limit: allowed };
      },
      limit,
    ),
  ];
}

/** Slings stated stiffer than their own steel: hooks would then share too little by it. */
function stiffness(plan: Plan, rig: Rigging): DataMeasure[] {
  const EA = slingEA(rig);
  const each = rig.legs?.perPick;
  const length = rig.kind === "point" ? rig.hookPinHeight_m : rig.slingLength_m;
  if (EA === null || each === undefined || !(length > 0)) return [];
  const path = pathOf(plan, rig);
  return plan.sets.flatMap((set) =>
    set.picks
      .filter((pick) => pick.rigging === rig.id)
      .map((pick) => {
        const n = (pick.girders?.length ?? set.girders.length) * each;
        const stated = rig.slingStiffness_kN_per_mm;
        return dataMeasure(
          {
            check: "sling stiffness",
            set: set.id,
            subject: `${rig.id} of ${pick.crane}`,
            unit: "kN/mm",
            factor: 1e-6,
            words: ({ limit: most }) =>
              `rigging '${rig.id}' is stated with ${stated} kN/mm; its ${n} slings of ${length} m alone give no more than ${(most / 1e6).toFixed(1)} kN/mm`,
            cure: "correct the stiffness, or the slings' diameter, EA or number",
          },
          (rec): Reading => {
            const own = `${path}.slingStiffness_kN_per_mm`;
            const value = field(rec, "k", stated * 1e6, "stiffness of the slings", own, stated, STIFFNESS);
            recordEA(rec, rig, path, EA);
            constant(rec, "n", n, "1", "slings side by side", "legs.perPick times the girders of the pick");
            const from = `${path}.${rig.kind === "point" ? "hookPinHeight_m" : "slingLength_m"}`;
            field(
              rec,
              "l",
              length,
              "length of a sling, plumb: those that slope are softer still",
              from,
              length,
              METRE,
            );
            const most = trace(rec, "k_a", (n * EA) / length, "n*EA/l", "N/m", "what their steel gives");
            rec?.ends("k", "k_a");
            return { value, limit: most };
          },
          {
            source:
              "stiffness EA/L of slings side by side; a wire rope by 0027/ND Rev 11.2 (2016), 5.6.13, where the plan gives its diameter",
            chosenBy: "plan",
          },
        );
      }),
  );
}

function recordEA(rec: Recorder | null, { legs }: Rigging, path: string, EA: number): void {
  const words = "axial stiffness of one sling";
  if (legs?.EA_kN !== undefined) field(rec, "EA", EA, words, `${path}.legs.EA_kN`, legs.EA_kN, KN);
  else {
    const rope = "0027/ND Rev 11.2 (2016), 5.6.13";
    constant(rec, "E", wireModulus, "Pa", "modulus of a wire rope", rope);
    constant(rec, "c", wireArea, "1", "steel of a wire rope over the square of its diameter", rope);
    const d = legs?.diameter_mm ?? 0;
    field(rec, "d", d / 1000, "diameter of a sling", `${path}.legs.diameter_mm`, d, MM);
    trace(rec, "EA", EA, "E*c*d^2", "N", words);
  }
}
