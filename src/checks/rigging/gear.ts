// Rigging by its data alone: edge guards, proof test of custom gear, flat legs, parts against the mass of the whole.

import type { Plan, Rigging } from "../../plan/index.ts";
import { limitOf } from "../limits.ts";
import type { Finding } from "../types.ts";
import { by, told } from "./finding.ts";
import { slingEA, topAngle } from "./legs.ts";

const GUARDS =
  "slings are guarded from edges, and makeshift guards have failed: WorkSafeBC incident 2022178050011, NIOSH FACE 00CA001";

/** Everything that the data of the rigging say against lifting with it. */
export function gearFindings(plan: Plan): Finding[] {
  return plan.rigging.flatMap((rig) => [
    ...guards(plan, rig),
    ...proof(plan, rig),
    ...flatLegs(plan, rig),
    ...partsMass(plan, rig),
    ...tooStiff(plan, rig),
  ]);
}

/** No guard, no lift, unless every pick of it is a clamp or a lug. */
function guards(plan: Plan, rig: Rigging): Finding[] {
  const picks = plan.sets.flatMap((set) => set.picks.filter((pick) => pick.rigging === rig.id));
  const slung = picks.filter((pick) => (pick.attachment?.kind ?? "sling") === "sling");
  if (slung.length === 0) return [];
  const say = (words: string) => [
    told({
      level: "stop",
      check: "edge guard",
      subject: rig.id,
      words,
      cure: "issue the rigging with edge guards made for these flanges",
      source: GUARDS,
    }),
  ];
  if (!rig.softeners)
    return say(
      `rigging '${rig.id}' goes round the girders of ${slung.length} ${slung.length === 1 ? "pick" : "picks"} without edge guards: no guard, no issue`,
    );
  return rig.guards === "makeshift" ? say(`the edge guards of rigging '${rig.id}' are makeshift`) : [];
}

/** Custom gear is proof-tested and marked; what is blank is an open item, not a finding here. */
function proof(plan: Plan, rig: Rigging): Finding[] {
  const { custom, ratedLoad_kN } = rig;
  const limit = limitOf(plan, "proof test", true);
  if (custom === undefined || limit === null) return [];
  const out: Finding[] = [];
  const common = { level: "stop", check: "proof test", subject: rig.id } as const;
  const needed = (ratedLoad_kN * limit.value) / 100;
  if (custom.proofTest_kN !== undefined && custom.proofTest_kN < needed * (1 - 1e-9))
    out.push(
      told({
        ...common,
        ...by(limit),
        value: custom.proofTest_kN,
        limit: needed,
        unit: "kN",
        use: needed / custom.proofTest_kN,
        words: `rigging '${rig.id}' was tested with ${custom.proofTest_kN.toFixed(0)} kN; ${limit.value} % of its rated ${ratedLoad_kN} kN is ${needed.toFixed(1)} kN`,
        cure: "test it anew, or rate it lower",
      }),
    );
  if (custom.marked === false)
    out.push(
      told({
        ...common,
        ...by(limit),
        subject: `${rig.id} marking`,
        words: `rigging '${rig.id}' is custom gear without its safe working load on it`,
        cure: "mark it before use",
      }),
    );
  return out;
}

/** Legs flatter than allowed: those above a spreader, those to one hook, those of parts with a stated angle. */
function flatLegs(plan: Plan, rig: Rigging): Finding[] {
  const limit = limitOf(plan, "sling angle", true);
  if (limit === null) return [];
  const legs: [string, number][] = (rig.parts ?? []).flatMap((part): [string, number][] =>
    part.angle_deg === undefined ? [] : [[`part '${part.name}'`, 90 - part.angle_deg]],
  );
  if (rig.topLegs !== undefined)
    legs.push(["the legs above its spreader", 90 - (topAngle(rig) * 180) / Math.PI]);
  const half = (rig.legs?.alongApart_m ?? 0) / 2;
  if (rig.kind === "point")
    for (const set of plan.sets)
      for (const pick of set.picks.filter((p) => p.rigging === rig.id)) {
        const held = set.girders.filter((g) => pick.girders?.includes(g.line) ?? true).map((g) => g.y_m);
        const across = (Math.max(...held) - Math.min(...held)) / 2;
        const angle = Math.atan2(rig.hookPinHeight_m, Math.hypot(across, half));
        legs.push([`the slings on ${set.id}`, (angle * 180) / Math.PI]);
      }
  return legs
    .filter(([, angle]) => angle < limit.value * (1 - 1e-9))
    .map(([what, angle]) =>
      told({
        level: "stop",
        check: "sling angle",
        subject: `${rig.id}: ${what}`,
        ...by(limit),
        value: angle,
        limit: limit.value,
        unit: "deg",
        use: limit.value / angle,
        words: `rigging '${rig.id}': ${what} stand at ${angle.toFixed(1)} degrees from the horizontal, allowed ${limit.value}`,
        cure: "longer legs, or a hook higher above the picks",
      }),
    );
}

/** The mass of the assembly against the sum of its parts, where every part has one; a heavier sum in any case. */
function partsMass(plan: Plan, rig: Rigging): Finding[] {
  const limit = limitOf(plan, "parts above rigging mass");
  const parts = rig.parts ?? [];
  if (limit === null || parts.length === 0) return [];
  const sum = parts.reduce((total, part) => total + part.count * (part.mass_t ?? 0), 0);
  const whole = parts.every((part) => part.mass_t !== undefined);
  const over = sum > rig.mass_t * (1 + limit.value / 100) + 1e-9;
  const under = whole && sum < rig.mass_t * (1 - limit.value / 100) - 1e-9;
  if (!over && !under) return [];
  return [
    told({
      level: "caution",
      check: "rigging mass",
      subject: rig.id,
      ...by(limit),
      value: sum,
      limit: rig.mass_t,
      unit: "t",
      words: `the parts of rigging '${rig.id}' weigh ${sum.toFixed(2)} t${whole ? "" : " as far as they are stated"}, the plan counts ${rig.mass_t} t on the hook`,
      cure: over ? "count all of it on the hook" : "name the parts that are missing, or correct the mass",
    }),
  ];
}

/** Slings stated stiffer than their own steel: hooks would then share too little by it. */
function tooStiff(plan: Plan, rig: Rigging): Finding[] {
  const EA = slingEA(rig);
  const each = rig.legs?.perPick;
  const length = rig.kind === "point" ? rig.hookPinHeight_m : rig.slingLength_m;
  if (EA === null || each === undefined || !(length > 0)) return [];
  return plan.sets.flatMap((set) =>
    set.picks
      .filter((pick) => pick.rigging === rig.id)
      .flatMap((pick) => {
        const girders = pick.girders?.length ?? set.girders.length;
        // Plumb legs: those that slope are longer and softer still.
        const most = (girders * each * EA) / length / 1e6;
        if (rig.slingStiffness_kN_per_mm <= most * (1 + 1e-9)) return [];
        return [
          told({
            level: "caution",
            check: "sling stiffness",
            set: set.id,
            subject: `${rig.id} of ${pick.crane}`,
            value: rig.slingStiffness_kN_per_mm,
            limit: most,
            unit: "kN/mm",
            use: rig.slingStiffness_kN_per_mm / most,
            words: `rigging '${rig.id}' is stated with ${rig.slingStiffness_kN_per_mm} kN/mm; its ${girders * each} slings of ${length} m alone give no more than ${most.toFixed(1)} kN/mm`,
            cure: "correct the stiffness, or the slings' diameter, EA or number",
            source:
              "stiffness EA/L of slings side by side; a wire rope by 0027/ND Rev 11.2 (2016), 5.6.13, where the plan gives its diameter",
          }),
        ];
      }),
  );
}
