// Reads what the finite-element program wrote: printed tables (.dat) and fields (.frd).

/** Displacements and reactions [x, y, z] by node, and buckling factors, as printed. */
export interface Printed {
  displacements: Map<number, [number, number, number]>;
  forces: Map<number, [number, number, number]>;
  /** Factors on the loads at which the structure buckles, lowest first. */
  bucklingFactors: number[];
}

/** A printed number. Those below 1e-99 come without their E: they are zero here. */
function number(text: string): number {
  const x = Number(text);
  if (Number.isFinite(x)) return x;
  if (/^[+-]?\d*\.\d+-\d{3}$/.test(text)) return 0;
  throw new Error(`the program printed "${text}" where a number was due`);
}

/** The tables of a .dat file. */
export function readPrinted(text: string): Printed {
  const out: Printed = { displacements: new Map(), forces: new Map(), bucklingFactors: [] };
  let into: "displacements" | "forces" | "factors" | null = null;
  for (const line of text.split("\n")) {
    if (/^\s*displacements \(vx,vy,vz\)/.test(line)) into = "displacements";
    else if (/^\s*forces \(fx,fy,fz\)/.test(line)) into = "forces";
    else if (/B U C K L I N G/.test(line)) into = "factors";
    else {
      const words = line.trim().split(/\s+/);
      if (into === null || !/^\d+$/.test(words[0])) continue;
      if (into === "factors") out.bucklingFactors.push(number(words[1]));
      else out[into].set(Number(words[0]), [number(words[1]), number(words[2]), number(words[3])]);
    }
  }
  return out;
}

/** The displacement fields of a .frd file (text form), one map for each: node to [x, y, z]. */
export function readFields(text: string): Map<number, [number, number, number]>[] {
  const fields: Map<number, [number, number, number]>[] = [];
  let field: Map<number, [number, number, number]> | null = null;
  for (const line of text.split("\n")) {
    if (/^ -4 {2}DISP /.test(line)) {
      field = new Map();
      fields.push(field);
    } else if (line.startsWith(" -3")) field = null;
    else if (field !== null && line.startsWith(" -1")) {
      const at = (from: number) => number(line.slice(from, from + 12).trim());
      field.set(Number(line.slice(3, 13)), [at(13), at(25), at(37)]);
    }
  }
  return fields;
}
