// Bending of a transporter's spine: a free beam in balance, cylinders up, bunks and own weight down.
//
// Sagging is positive. The own weight lies evenly on the spine's length: where it really lies is the maker's to say.

/** A force on the spine, up positive, N, with a couple about y that acts there too, N m (positive lowers the front). */
export interface SpineForce {
  x: number;
  up: number;
  couple: number;
}

/** A moment of the spine, N m (sagging positive), and where, m from the deck's centre. */
export interface SpineMoment {
  moment: number;
  x: number;
}

/**
 * The moment of greatest size in a spine from -length/2 to length/2 under its forces and an even weight per metre
 * (N/m) with an even couple per metre (N m/m). The forces must balance; what is left over shows at the front end.
 */
export function spineMoment(
  forces: readonly SpineForce[],
  length: number,
  weight: number,
  couple = 0,
): SpineMoment {
  const half = length / 2;
  let most: SpineMoment = { moment: 0, x: -half };
  const see = (x: number, moment: number) => {
    if (Math.abs(moment) > Math.abs(most.moment)) most = { moment, x };
  };
  // Just behind and just before every force, and where the shear between two of them is nought.
  for (let i = 0; i < forces.length; i++) {
    const { x } = forces[i];
    see(x, momentAt(forces, half, weight, couple, x, false));
    see(x, momentAt(forces, half, weight, couple, x, true));
    if (weight === 0) continue;
    let shear = 0;
    for (const f of forces) if (f.x <= x) shear += f.up;
    const zero = (shear - couple) / weight - half;
    if (zero > x && zero < half && forces.every((f) => f.x <= x || f.x > zero))
      see(zero, momentAt(forces, half, weight, couple, zero, true));
  }
  return most;
}

function momentAt(
  forces: readonly SpineForce[],
  half: number,
  weight: number,
  couple: number,
  x: number,
  after: boolean,
): number {
  const before = x + half;
  let moment = (-weight * before * before) / 2 + couple * before;
  for (const f of forces) {
    if (f.x < x || (after && f.x === x)) moment += f.up * (x - f.x) + f.couple;
  }
  return moment;
}
