// All witnesses, area by area.

import { clearanceWitnesses } from "./clearance.ts";
import { craneWitnesses } from "./cranes.ts";
import { groundWitnesses } from "./ground.ts";
import { happeningWitnesses } from "./happenings.ts";
import { landingWitnesses } from "./landing.ts";
import { loadWitnesses } from "./loads.ts";
import { riggingWitnesses } from "./rigging.ts";
import { sequenceWitnesses } from "./sequence.ts";
import { setWitnesses } from "./set.ts";
import { standingWitnesses } from "./standing.ts";
import { steelWitnesses } from "./steel.ts";
import { transporterWitnesses } from "./transporters.ts";
import { windWitnesses } from "./wind.ts";
import type { Witness } from "./witness.ts";

export const witnesses: Witness[] = [
  ...setWitnesses,
  ...standingWitnesses,
  ...steelWitnesses,
  ...craneWitnesses,
  ...riggingWitnesses,
  ...groundWitnesses,
  ...loadWitnesses,
  ...sequenceWitnesses,
  ...happeningWitnesses,
  ...transporterWitnesses,
  ...windWitnesses,
  ...clearanceWitnesses,
  ...landingWitnesses,
];
