// From the three plates of a welded I-girder to its section properties.

/** A plate as [width or height across the girder axis, thickness], in m. */
export type Plate = readonly [number, number];

export interface Plates {
  topFlange: Plate;
  web: Plate;
  bottomFlange: Plate;
}

/** Section properties in m; heights are above the soffit (underside of the bottom flange). */
export interface Section {
  depth: number;
  area: number;
  /** Height of the centroid above the soffit. */
  centroid: number;
  /** Second moment about the horizontal axis through the centroid, m4. */
  strongInertia: number;
  /** Second moment about the vertical axis, m4. */
  weakInertia: number;
  /** St Venant torsion constant, sum of b t^3 / 3 over the plates, m4. */
  torsion: number;
  /** Warping constant h0^2 I1 I2 / (I1 + I2), I1 and I2 the flanges' own second moments about the web, m6. */
  warping: number;
  /** Height of the shear centre above the soffit, the web's own part left out; the centroid for a lone plate. */
  shearCentre: number;
  /**
   * Wagner's coefficient, m: integral of z (y^2 + z^2) dA over the strong second moment, less twice the height of the
   * shear centre above the centroid; > 0 when the bottom flange is the stronger, so that sagging buckles it sooner.
   */
  wagner: number;
  /** Web area, taken as the shear area, m2. */
  webArea: number;
}

/**
 * Section properties of three rectangles, fillets and welds left out: within 0.5 % for a welded girder.
 * A plate may be empty ([0, 0]): a lone web is a rectangle. Throws a RangeError on negative or non-finite sizes
 * and on a section without area.
 */
export function sectionOf({ topFlange, web, bottomFlange }: Plates): Section {
  const [bt, tt] = topFlange;
  const [hw, tw] = web;
  const [bb, tb] = bottomFlange;
  for (const size of [bt, tt, hw, tw, bb, tb])
    if (!(size >= 0 && Number.isFinite(size)))
      throw new RangeError(`a plate size is ${size}; a length of 0 m or more is allowed: mend the plates`);
  const areas = [bb * tb, hw * tw, bt * tt];
  const heights = [tb / 2, tb + hw / 2, tb + hw + tt / 2];
  const area = areas[0] + areas[1] + areas[2];
  if (!(area > 0)) throw new RangeError("the three plates have no area: give at least one plate a size");
  const centroid = (areas[0] * heights[0] + areas[1] * heights[1] + areas[2] * heights[2]) / area;
  const own = [(bb * tb ** 3) / 12, (tw * hw ** 3) / 12, (bt * tt ** 3) / 12];
  let strongInertia = 0;
  for (let i = 0; i < 3; i++) strongInertia += own[i] + areas[i] * (heights[i] - centroid) ** 2;
  const bottom = (tb * bb ** 3) / 12;
  const top = (tt * bt ** 3) / 12;
  const flanges = bottom + top;
  const between = heights[2] - heights[0];
  const shearCentre = flanges > 0 ? heights[0] + (between * top) / flanges : centroid;
  const sides = [bottom, (hw * tw ** 3) / 12, top];
  let skew = 0;
  for (let i = 0; i < 3; i++) {
    const z = heights[i] - centroid;
    skew += areas[i] * z ** 3 + 3 * z * own[i] + z * sides[i];
  }
  return {
    depth: tb + hw + tt,
    area,
    centroid,
    strongInertia,
    weakInertia: bottom + top + (hw * tw ** 3) / 12,
    torsion: (bt * tt ** 3 + hw * tw ** 3 + bb * tb ** 3) / 3,
    warping: flanges > 0 ? (between ** 2 * top * bottom) / flanges : 0,
    shearCentre,
    wagner: skew / strongInertia - 2 * (shearCentre - centroid),
    webArea: hw * tw,
  };
}
