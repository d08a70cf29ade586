// Slings: leg loads by statics, four legs by stretch.

export { type FourLegs, fourLegsOf, fourLegTensions, skewFactor } from "./fourLegs.ts";
export {
  apexAside,
  apexOf,
  type BridleLeg,
  basketCapacity,
  bridle,
  spreaderCompression,
  stretch,
  tensionFactor,
  wireArea,
  wireModulus,
  wireStiffness,
} from "./legs.ts";
