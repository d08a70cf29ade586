// The site from the answers: abutments, the path behind the near one, seats level across, bearings for the set's own weight.

import {
  type Bearing,
  type Plan,
  type PlanSet,
  setLength,
  type Transporter,
  takeOff,
} from "../../plan/index.ts";
import { type Answers, linesOf, round } from "./answers.ts";
import { STARTER } from "./machines.ts";

/** Air between the set's ends and the backwalls, m. Common practice, no source. */
const END_AIR = 0.3;
/** From the last point of the path and from the stop line to the backwall, m. Common practice, no source. */
const PATH_BACK = 0.4;
const STOP_BACK = 1.4;

/** The site without seats and bearings. `rear` and `front` say how long and wide the path must be. */
export function siteOf(answers: Answers, set: PlanSet, rear: Transporter, front: Transporter): Plan["site"] {
  const { nearFace, farFace, nearBearing, farBearing } = linesOf(answers);
  const length = setLength(set);
  const beyond = (length - (farBearing - nearBearing)) / 2 + END_AIR;
  const nearBackwall = round(nearBearing - beyond);
  const end = round(nearBackwall - PATH_BACK);
  const start = round(Math.floor(nearBackwall - length - rear.deckLength_m - 12), 0);
  const { elevation_m, grade_pct, crossfall_pct } = answers;
  // Out of the way of both cranes: on the side away from the near one.
  const clear = Math.ceil(
    answers.sets.count * answers.sets.girders * answers.sets.spacing_m + 2 * front.deckWidth_m + 8,
  );
  const side = answers.cranes.near.y_m >= 0 ? { clearRight_m: clear } : { clearLeft_m: clear };
  return {
    nearBearing_m: nearBearing,
    farBearing_m: farBearing,
    nearFace_m: nearFace,
    farFace_m: farFace,
    nearBackwall_m: nearBackwall,
    farBackwall_m: round(farBearing + beyond),
    skew_deg: 0,
    path: {
      ...side,
      points: [start, end].map((chainage_m) => ({
        chainage_m,
        elevation_m: round(elevation_m + (grade_pct / 100) * (chainage_m - end)),
        crossfall_pct,
      })),
    },
    seats: [],
    bearings: [],
    stopLines: [{ name: "front axle", chainage_m: round(nearBackwall - STOP_BACK) }],
    underfoot: [],
    below: { kind: "ground" },
    obstacles: [],
  };
}

/** Rating of a bearing over its part of the set; its give under that part, mm. Common practice, no source. */
const RATED = 2;
const GIVES = 1 / 3;

/** A seat and a bearing for each girder at both lines; near ones at the end of the path, far ones up the grade from there. */
export function placesOf(
  answers: Answers,
  set: PlanSet,
  aside: number,
): Pick<Plan["site"], "seats" | "bearings"> {
  const { nearBearing, farBearing } = linesOf(answers);
  const rise = (answers.grade_pct / 100) * (farBearing - nearBearing);
  const part = (takeOff(set).mass * 9.80665) / 1000 / (2 * set.girders.length);
  const lines = (["near", "far"] as const).flatMap((line) =>
    set.girders.map((girder, i) => ({ line, girder, i })),
  );
  return {
    seats: lines.map(({ line, girder }) => ({
      line,
      girder: girder.line,
      design_m: round(answers.elevation_m + (line === "far" ? rise : 0)),
      asBuilt_m: null,
      source: STARTER,
      date: "",
    })),
    bearings: lines.map(
      ({ line, girder, i }): Bearing => ({
        line,
        girder: girder.line,
        holds: i === 0 ? (line === "near" ? "fixed" : "guided") : line === "near" ? "guided" : "free",
        stiffness_kN_per_mm: Math.max(1, round(part / GIVES, 0)),
        y_m: round(girder.y_m + aside),
        ratedLoad_kN: Math.max(10, Math.ceil((RATED * part) / 10) * 10),
      }),
    ),
  };
}
