// How the angle of a leg came about, written down: as stated, or from the lengths in the plan.

import { constant, DEGREE, field, METRE, type Recorder, solved, trace } from "../trace.ts";
import type { RiggedHook } from "./legs.ts";

/** An angle from the vertical that the plan states, with its cosine. */
export function statedAngle(rec: Recorder, path: string, degrees: number, angle: number): void {
  field(rec, "alpha", angle, "leg from the vertical", path, degrees, DEGREE);
  trace(rec, "c", Math.cos(angle), "cos(alpha)", "1", "cosine of it");
}

/** Cosine of the legs above a spreader, from the plan's geometry. */
export function topGeometry(rec: Recorder, { rig, path, top }: RiggedHook): void {
  const legs = rig.topLegs;
  if (legs === undefined) {
    constant(rec, "c", 1, "1", "cosine of the legs' angle", "no legs above the spreader are stated: plumb");
    return;
  }
  if (legs.angle_deg !== undefined) {
    statedAngle(rec, `${path}.topLegs.angle_deg`, legs.angle_deg, top);
    return;
  }
  const { apart_m, length_m } = legs;
  field(rec, "a", apart_m, "between the legs' lower ends", `${path}.topLegs.apart_m`, apart_m, METRE);
  if (length_m !== undefined) {
    field(rec, "l", length_m, "length of a leg", `${path}.topLegs.length_m`, length_m, METRE);
    trace(rec, "c", Math.cos(top), "sqrt(1 - (a/2/l)^2)", "1", "cosine of the legs' angle");
    return;
  }
  const h = rig.hookPinHeight_m;
  field(rec, "h", h, "hook above the spreader's lower pins", `${path}.hookPinHeight_m`, h, METRE);
  trace(rec, "c", Math.cos(top), "h/sqrt(h^2 + (a/2)^2)", "1", "cosine of the legs' angle");
}

/** Cosine of the legs to a girder, from the plan's geometry. */
export function lineGeometry(rec: Recorder, { rig, path }: RiggedHook, y: number, cos: number): void {
  if (rig.kind === "point") {
    field(
      rec,
      "h",
      rig.hookPinHeight_m,
      "hook above the picks",
      `${path}.hookPinHeight_m`,
      rig.hookPinHeight_m,
      METRE,
    );
    solved(rec, "b", y, "m", "pick from the plumb line of the hook, across");
  } else {
    field(
      rec,
      "h",
      rig.slingLength_m,
      "length of the slings",
      `${path}.slingLength_m`,
      rig.slingLength_m,
      METRE,
    );
    constant(
      rec,
      "b",
      0,
      "m",
      "pick from the plumb line, across",
      "lines of a spreader and separate lines hang plumb",
    );
  }
  const apart = rig.legs?.alongApart_m;
  if (apart === undefined) constant(rec, "a", 0, "m", "distance along the girder", "the plan states none");
  else
    field(
      rec,
      "a",
      apart,
      "between the slings of a girder, along it",
      `${path}.legs.alongApart_m`,
      apart,
      METRE,
    );
  trace(
    rec,
    "c",
    cos,
    "h > 0 ? h/sqrt(h^2 + b^2 + (a/2)^2) : 1",
    "1",
    "cosine of the legs' angle from the vertical",
  );
}
