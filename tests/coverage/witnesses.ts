// All witnesses, area by area.

import { setWitnesses } from "./set.ts";
import type { Witness } from "./witness.ts";

export const witnesses: Witness[] = [...setWitnesses];
