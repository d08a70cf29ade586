// One axle line lost: the oil of its group presses the same, so what it carried goes to the lines left in the group.

/** The wheels of a transporter: per axle line, rearmost first, the group (by index) of its left and of its right side. */
export type LineGroups = readonly (readonly [number, number])[];

/** The worst loss of an axle line: which is lost, which then carries most, and how much, N. */
export interface LineLost {
  lost: number;
  line: number;
  load: number;
}

/**
 * The greatest axle-line load after any one axle line is lost, with `force[g]` on each of the `count[g]` cylinders of
 * every group (N). Group forces are kept: how they change when a centroid moves by a part of a pitch is left out. Null when
 * every loss leaves a group without a wheel.
 */
export function worstLineLost(
  lines: LineGroups,
  force: ArrayLike<number>,
  count: ArrayLike<number>,
): LineLost | null {
  let worst: LineLost | null = null;
  for (let lost = 0; lost < lines.length; lost++) {
    const [left, right] = lines[lost];
    const gone = (g: number) => (g === left ? 1 : 0) + (g === right ? 1 : 0);
    if (count[left] <= gone(left) || count[right] <= gone(right)) continue;
    for (let line = 0; line < lines.length; line++) {
      if (line === lost) continue;
      let load = 0;
      for (const g of lines[line]) load += (force[g] * count[g]) / (count[g] - gone(g));
      if (worst === null || load > worst.load) worst = { lost, line, load };
    }
  }
  return worst;
}
