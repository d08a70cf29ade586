// Presumptive bearing values by soil class: stand-ins of building codes for small footings, not for these machines.

import type { Soil } from "../../plan/index.ts";

/** Pounds per square foot and US tons per square foot in Pa. */
const PSF = 4.4482216152605 / 0.3048 ** 2;
const TSF = 2000 * PSF;

const IBC = "presumptive value of IBC 2012 Table 1806.2";
/** The table is that of New York City's building code, 1804.1 (attribution from memory). */
const CITY = "presumptive value of a dense city's code, Table 1804.1 (New York City: from memory)";

/** Allowable pressure by soil class, Pa; 0 where the table allows none. */
export const presumptive: Record<Soil, { value: number; source: string }> = {
  "ibc crystalline bedrock": { value: 12000 * PSF, source: IBC },
  "ibc foliated rock": { value: 4000 * PSF, source: IBC },
  "ibc sandy gravel": { value: 3000 * PSF, source: IBC },
  "ibc sand": { value: 2000 * PSF, source: IBC },
  "ibc clay": { value: 1500 * PSF, source: IBC },
  "ibc mud, peat or loose fill": { value: 0, source: `${IBC}: none without an investigation` },
  "city dense gravel": { value: 10 * TSF, source: CITY },
  "city medium gravel": { value: 6 * TSF, source: CITY },
  "city medium clay": { value: 2 * TSF, source: CITY },
  "city medium silt": { value: 1.5 * TSF, source: CITY },
};
