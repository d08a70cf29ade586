// What a plan leaves open of its ground: values and sources, mats' stresses, who accepted it.

import { hookName, type Plan } from "../../plan/index.ts";
import { finding } from "../finding.ts";
import type { CheckName } from "../names.ts";
import type { Finding, Level } from "../types.ts";
import { allowableAt } from "./allowable.ts";
import { lackingOf, matLacks } from "./tracks.ts";

const open = (level: Level, check: CheckName, subject: string, words: string, cure: string): Finding =>
  finding({ level, check, set: "", subject, words: `${subject}: ${words}`, cure });

/** What the record of the ground lacks: who accepted it, and where its values are from. */
const unrecorded = (level: Level, subject: string, words: string) =>
  open(
    level,
    "ground record",
    subject,
    words,
    "name the source, and who accepted the ground on what evidence",
  );

const missing = (subject: string, words: string) =>
  open("note", "missing data", subject, words, "give the value with its source");

/** Open items of the ground below cranes. */
export function craneGroundItems(plan: Plan): Finding[] {
  return plan.cranes.flatMap((crane, i) => {
    const path = `cranes[${i}]`;
    const name = hookName(crane);
    const out = lackingOf(crane).map((field) =>
      missing(`${path}.${field}`, `blank: pressure below the tracks of ${name} is not judged`),
    );
    const allowable = allowableAt(path, crane);
    if (allowable === null)
      out.push(
        open(
          "note",
          "limit not set",
          `${name} ground`,
          `no allowable pressure and no soil class below ${name}; it is not judged`,
          "give the value with its source",
        ),
      );
    else if (allowable.path !== null && (crane.pressureSource ?? "").trim() === "")
      out.push(
        unrecorded("caution", `${path}.pressureSource`, "blank: an allowable pressure without a source"),
      );
    if (crane.mat)
      for (const field of matLacks(crane.mat))
        out.push(missing(`${path}.mat.${field}`, "blank: the mats do not count as spreading the load"));
    if (crane.groundAccepted === undefined)
      out.push(
        missing(
          `${path}.groundAccepted`,
          `blank: nobody has accepted the ground of ${name}, its voids and utilities`,
        ),
      );
    return out;
  });
}

/** Open items of the ground along the ways of cranes. */
export function wayGroundItems(plan: Plan): Finding[] {
  return (plan.site.craneGround ?? []).flatMap((one, i) => {
    const path = `site.craneGround[${i}]`;
    const allowable = allowableAt(path, one);
    if (allowable === null)
      return open(
        "note",
        "limit not set",
        path,
        `no allowable pressure and no soil class on '${one.name}'; what the ground of a crane's own place allows stands in`,
        "give the value with its source",
      );
    if (allowable.path === null || (one.pressureSource ?? "").trim() !== "") return [];
    return unrecorded("caution", `${path}.pressureSource`, "blank: an allowable pressure without a source");
  });
}

/** Open items of the path and of the ground below transporters. */
export function pathGroundItems(plan: Plan): Finding[] {
  const out: Finding[] = [];
  const { points, groundAccepted } = plan.site.path;
  const bare = points.filter((p, i) => allowableAt(`site.path.points[${i}]`, p) === null);
  if (plan.transporters.length > 0 && bare.length > 0)
    out.push(
      open(
        "note",
        "limit not set",
        "path ground",
        `no allowable pressure and no soil class at chainage ${bare.map((p) => p.chainage_m).join(", ")} m; the stretches there are not judged`,
        "give the value with its source",
      ),
    );
  points.forEach((p, i) => {
    const path = `site.path.points[${i}]`;
    const allowable = allowableAt(path, p);
    if (allowable?.path && (p.pressureSource ?? "").trim() === "")
      out.push(
        unrecorded("caution", `${path}.pressureSource`, "blank: an allowable pressure without a source"),
      );
  });
  if (plan.transporters.length > 0 && groundAccepted === undefined)
    out.push(
      missing("site.path.groundAccepted", "blank: nobody has accepted the path, its voids and utilities"),
    );
  plan.transporters.forEach((t, i) => {
    for (const field of ["tyrePrint", "allowedGroundPressure_kPa"] as const)
      if (t[field] === undefined)
        out.push(
          missing(`transporters[${i}].${field}`, `blank: pressure under the tyres of ${t.id} is not judged`),
        );
  });
  return out;
}
