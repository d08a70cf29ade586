// All witnesses, area by area.

import { sequenceWitnesses } from "./sequence.ts";
import { setWitnesses } from "./set.ts";
import type { Witness } from "./witness.ts";

export const witnesses: Witness[] = [...setWitnesses, ...sequenceWitnesses];
