// A State moved along, mirrored about its length, or kept to what a law is about; and how far two answers lie apart.

import type { State, StateAnswer } from "../../src/mechanics/index.ts";

/** Everything moved by dx along the set. */
export function shifted(s: State, dx: number): State {
  return {
    ...s,
    girders: s.girders.map((g) => ({
      ...g,
      ...(g.camber ? { camber: g.camber.map(([x, z]): [number, number] => [x + dx, z]) } : {}),
      pieces: g.pieces.map((p) => ({ ...p, from: p.from + dx, to: p.to + dx })),
    })),
    crossFrames: s.crossFrames?.map((f) => ({ ...f, at: f.at + dx })),
    pointMasses: s.pointMasses?.map((m) => ({ ...m, at: m.at + dx })),
    trains: s.trains?.map((t) => ({ ...t, at: t.at + dx })),
    hoists: s.hoists?.map((h) => ({ ...h, at: h.at + dx })),
    bearings: s.bearings?.map((b) => ({ ...b, at: b.at + dx })),
    lashings: s.lashings?.map((l) => ({ ...l, at: l.at + dx })),
  };
}

const otherSide = (id: string) =>
  id.endsWith("L") ? `${id.slice(0, -1)}R` : id.endsWith("R") ? `${id.slice(0, -1)}L` : id;

/** Left and right exchanged. */
export function mirrored(s: State): State {
  const swap = <T>(record: Readonly<Record<string, T>> | undefined) =>
    record && Object.fromEntries(Object.entries(record).map(([id, value]) => [otherSide(id), value]));
  return {
    ...s,
    girders: s.girders.map((g) => ({ ...g, y: -g.y })),
    groups: Object.fromEntries(
      Object.entries(s.groups ?? {}).map(([name, ids]) => [name, ids.map(otherSide)]),
    ),
    ground: swap(s.ground),
    hoists: s.hoists?.map((h) => (h.offset ? { ...h, offset: [h.offset[0], -h.offset[1]] as const } : h)),
    crossfall: -(s.crossfall ?? 0),
    ...(s.wind ? { wind: { ...s.wind, toward: s.wind.toward === "+y" ? "-y" : "+y" } } : {}),
  };
}

/** Greatest difference of two answers' forces as a share of the weight, the second read as the mirror of the first. */
export function apart(a: StateAnswer, b: StateAnswer, mirror: boolean): number {
  let most = 0;
  for (const [name, F] of Object.entries(a.forces)) {
    const twin = mirror && name.startsWith("cylinder ") ? otherSide(name) : name;
    const other = b.forces[twin];
    if (!name.startsWith("lashing ")) most = Math.max(most, Math.abs(F - other) / a.weight);
    if (other === undefined && !name.startsWith("lashing ")) return Number.POSITIVE_INFINITY;
  }
  return most;
}
