// Outlines of things as a draft has them, drawn while no solved pose shows them there: lines in the world, no bodies.
import { byId } from "../../plan/index.ts";
import type { Vec3 } from "../../sequence/index.ts";
import type { View } from "../views.ts";
import type { DrawnPose, Handle } from "./handlePlaces.ts";

/** Corners of a circle as it is drawn. */
const corners = 36;

function circle([x, y, z]: Vec3, radius: number): Vec3[] {
  return Array.from({ length: corners + 1 }, (_, i): Vec3 => {
    const turn = (2 * Math.PI * i) / corners;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn), z];
  });
}

/** A rectangle level with the ground, turned by `turn` (rad, 0 along the path). */
function flat([x, y, z]: Vec3, length: number, width: number, turn = 0): Vec3[] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
      [-1, -1],
    ] as const
  ).map(([a, b]): Vec3 => {
    const [u, v] = [(a * length) / 2, (b * width) / 2];
    return [x + c * u - s * v, y + s * u + c * v, z];
  });
}

/** A rectangle that stands along the path. */
function upright(from: number, to: number, y: number, low: number, high: number): Vec3[] {
  return [
    [from, y, low],
    [to, y, low],
    [to, y, high],
    [from, y, high],
    [from, y, low],
  ];
}

/** Outlines (m, in the world) of a thing where the draft has it; none where it is drawn there. */
export function outlinesOf(
  { thing, at, shift }: Handle,
  { plan, set, world }: DrawnPose,
  view: View,
): Vec3[][] {
  if (shift[0] === 0 && shift[1] === 0) return [];
  const inPlan = view === "plan";
  const [x, y, z] = at;
  if (thing.is === "crane") {
    const crane = byId(plan.cranes, thing.of);
    const ground = crane.position.elevation_m;
    const turn = ((crane.facing_deg ?? 0) * Math.PI) / 180;
    if (inPlan)
      return [
        flat([x, y, ground], crane.trackLength_m, crane.trackGauge_m, turn),
        circle([x, y, ground], crane.tailRadius_m),
      ];
    const along =
      Math.abs(Math.cos(turn)) * crane.trackLength_m + Math.abs(Math.sin(turn)) * crane.trackGauge_m;
    const boxes = [upright(x - along / 2, x + along / 2, y, ground, ground + crane.boomFootHeight_m)];
    const place = world?.cranes[thing.of];
    return place === undefined
      ? boxes
      : [
          ...boxes,
          // From the foot of the moved crane to where the tip is drawn: the solver says what the boom becomes.
          [[place.foot[0] + shift[0], place.foot[1] + shift[1], place.foot[2]], place.tip],
        ];
  }
  if (thing.is === "transporter") {
    const { deckLength_m, deckWidth_m, bunkHeight_m } = byId(plan.transporters, thing.of);
    const deck = world?.decks[thing.of]?.centre;
    if (deck === undefined) return [];
    if (inPlan) return [flat([x, deck[1], deck[2]], deckLength_m, deckWidth_m)];
    return [upright(x - deckLength_m / 2, x + deckLength_m / 2, y, deck[2] - bunkHeight_m, deck[2])];
  }
  if (thing.is === "bunk") {
    const deck = world?.decks[thing.of]?.centre;
    if (deck === undefined) return [];
    const { deckWidth_m } = byId(plan.transporters, thing.of);
    return inPlan
      ? [flat([x, deck[1], deck[2]], 0.3, deckWidth_m)]
      : [upright(x - 0.15, x + 0.15, y, z - 0.35, z)];
  }
  if (world === null) return [];
  const ys = set.girders.map((girder) => girder.y_m);
  const [right, left] = [Math.min(...ys, 0), Math.max(...ys, 0)];
  if (thing.is === "pick") {
    const height = set.picks.find(({ crane }) => crane === thing.of)?.height_m ?? 0;
    return [
      inPlan
        ? [
            [x, y + right, z],
            [x, y + left, z],
          ]
        : [
            [x, y, z - height],
            [x, y, z],
          ],
    ];
  }
  const { tail, nose } = world;
  const high = Math.max(...set.girders.flatMap(({ pieces }) => pieces.map(({ web_mm }) => web_mm[0]))) / 1000;
  const end: Vec3 = [nose[0] + shift[0], nose[1], nose[2]];
  return [
    inPlan
      ? [
          [x, y + right, z],
          [end[0], end[1] + right, end[2]],
          [end[0], end[1] + left, end[2]],
          [x, y + left, z],
          [x, y + right, z],
        ]
      : [[x, y, tail[2]], end, [end[0], end[1], end[2] + high], [x, y, tail[2] + high], [x, y, tail[2]]],
  ];
}
