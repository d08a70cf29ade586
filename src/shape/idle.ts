// A crane that was not told where to hold its boom: the sequence leaves its tip over its own centre, which no boom can do.
import { type Crane, type Plan, type PlanSet, pickOf, setLength } from "../plan/index.ts";
import { boomOf, type Vec3, type World } from "../sequence/index.ts";

/** Where a crane will hold its pick when the set lies on its bearings; without soles or pick, over the middle of its side. */
function placeInTheEnd(plan: Plan, set: PlanSet, c: Crane): [number, number] {
  const { site } = plan;
  const soles = set.soleStations_m;
  const rearEnd = soles === undefined ? site.farBearing_m - setLength(set) : site.nearBearing_m - soles.near;
  const pick = pickOf(set, c.id);
  if (pick !== null) return [rearEnd + pick.at_m, 0];
  return [c.kind === "far" ? site.farFace_m : site.nearFace_m, 0];
}

/** Tip of an idle boom: toward its last pick, over it when that is within reach, else half-way out. */
function idleTip(plan: Plan, set: PlanSet, c: Crane, centre: Vec3): [number, number] {
  const [x, y] = placeInTheEnd(plan, set, c);
  const [chainage_m, y_m] = centre;
  const d = Math.hypot(x - chainage_m, y - y_m);
  const [least, most] = [
    c.boomFootForward_m + 0.1 * c.boomLength_m,
    c.boomFootForward_m + 0.9 * c.boomLength_m,
  ];
  if (d < 1e-6) return [chainage_m + (c.kind === "far" ? -least : least), y_m];
  const r = d >= least && d <= most ? d : (least + most) / 2;
  return [chainage_m + ((x - chainage_m) * r) / d, y_m + ((y - y_m) * r) / d];
}

/**
 * The world as it is drawn: the same, but for cranes that hold nothing and have their tip within a metre of their own
 * centre. Their boom has no planned place yet; it is drawn toward their last pick.
 */
export function drawnWorld(plan: Plan, set: PlanSet, world: World): World {
  const cranes = Object.entries(world.cranes).map(([id, place]): [string, World["cranes"][string]] => {
    const c = plan.cranes.find((one) => one.id === id);
    if (c === undefined || place.hook !== null) return [id, place];
    const { centre } = place;
    if (Math.hypot(place.tip[0] - centre[0], place.tip[1] - centre[1]) > 1) return [id, place];
    const moved = [centre[0] - c.position.chainage_m, centre[1] - c.position.y_m] as const;
    const { foot, tip } = boomOf(c, idleTip(plan, set, c, centre), moved);
    return [id, { ...place, foot, tip }];
  });
  return { ...world, cranes: Object.fromEntries(cranes) };
}
