// Where everything stands in the world at a pose, elastic shape and strokes included.

import { camberAt, recoverField } from "../mechanics/index.ts";
import { byId } from "../plan/index.ts";
import { boomOf, datumPoint, hookAbovePicks, pathLevel, wheelsOf } from "./place.ts";
import { soffitLevel } from "./steps/kind.ts";
import type { Pose, SetContext, Vec3, World } from "./types.ts";

/** World positions of a solved pose (m): chainage, y left, elevation. */
export function worldOf(ctx: SetContext, pose: Pose): World {
  const { situation, solution } = pose;
  const { plan } = ctx;
  const girders: World["girders"] = {};
  const ends = { tail: [0, 0, 0] as Vec3, nose: [0, 0, 0] as Vec3 };
  ctx.model.girders.forEach((g, i) => {
    const tail = datumPoint(situation, g.from, g.y, soffitLevel(pose, i, g.from));
    const nose = datumPoint(situation, g.to, g.y, soffitLevel(pose, i, g.to));
    girders[g.name] = { tail, nose };
    for (let k = 0; k < 3; k++) {
      ends.tail[k] += tail[k] / ctx.model.girders.length;
      ends.nose[k] += nose[k] / ctx.model.girders.length;
    }
  });
  const cranes: World["cranes"] = {};
  for (const c of situation.cranes) {
    const crane = byId(plan.cranes, c.id);
    const boom = boomOf(crane, c.tip, c.moved);
    const pick = ctx.set.picks.find((p) => p.crane === c.id);
    const index = solution.layout.hoists.findIndex((h) => h.name === c.id);
    if (!pick || index < 0) {
      cranes[c.id] = { hook: null, tip: boom.tip, foot: boom.foot, centre: boom.centre, picks: [] };
      continue;
    }
    const rig = byId(plan.rigging, pick.rigging);
    const picks = solution.layout.hoistGirders[index].map((g) =>
      datumPoint(
        situation,
        pick.at_m,
        ctx.model.girders[g].y,
        soffitLevel(pose, g, pick.at_m) + pick.height_m,
      ),
    );
    const middle: Vec3 = [0, 0, 0];
    for (const p of picks) for (let k = 0; k < 3; k++) middle[k] += p[k] / picks.length;
    // The hook lies on the line from the picks to the tip, above slings and rigging.
    const above = hookAbovePicks(rig);
    const up: Vec3 = [boom.tip[0] - middle[0], boom.tip[1] - middle[1], boom.tip[2] - middle[2]];
    const size = Math.hypot(up[0], up[1], up[2]) || 1;
    const hook: Vec3 = [
      middle[0] + (up[0] / size) * above,
      middle[1] + (up[1] / size) * above,
      middle[2] + (up[2] / size) * above,
    ];
    cranes[c.id] = { hook, tip: boom.tip, foot: boom.foot, centre: boom.centre, picks };
  }
  const wheels: World["wheels"] = {};
  const strokes: World["strokes"] = {};
  const decks: World["decks"] = {};
  const own = solution.problem.N - 3 * solution.layout.trains.length;
  for (const t of situation.trains) {
    const machine = byId(plan.transporters, t.id);
    const deck = solution.layout.trains.findIndex((x) => x.name === t.id);
    const [w, lean, level] =
      deck < 0 ? [0, 0, 0] : [0, 1, 2].map((k) => solution.contact.a[own + 3 * deck + k] ?? 0);
    const chainage = situation.rearEnd + t.deckAt + t.gone[0];
    const across = situation.across + t.gone[1];
    for (const wheel of wheelsOf(plan, t.id)) {
      const path = pathLevel(plan, chainage + wheel.x);
      const id = `${t.id}:${wheel.id}`;
      wheels[id] = [
        chainage + wheel.x,
        across + wheel.y,
        path.elevation - path.crossfall * (across + wheel.y),
      ];
      const c = solution.layout.cylinders.findIndex((x) => x.id === id);
      if (c >= 0) strokes[id] = solution.stroke[c];
    }
    const top = (x: number, y: number): Vec3 => {
      if (deck >= 0) return datumPoint(situation, t.deckAt + x, y, w + lean * y - level * x);
      const path = pathLevel(plan, chainage + x);
      return [
        chainage + x,
        across + y,
        path.elevation - path.crossfall * (across + y) + machine.bunkHeight_m,
      ];
    };
    decks[t.id] = {
      centre: top(0, 0),
      lean,
      level,
      bunks: machine.bunks.flatMap((b) => ctx.set.girders.map((g) => top(b.at_m, g.y_m))),
    };
  }
  return { girders, tail: ends.tail, nose: ends.nose, cranes, wheels, strokes, decks };
}

/** Elastic shape of every girder at its mesh stations: height of the soffit above the datum plane and twist. */
export function girderShape(
  _ctx: SetContext,
  pose: Pose,
): { name: string; y: number; stations: Float64Array; droop: Float64Array; twist: Float64Array }[] {
  const { model } = pose.solution;
  const q = recoverField(pose.solution);
  return model.girders.map((g, i) => {
    const nodes = [g.elements[0].node1, ...g.elements.map((e) => e.node2)];
    return {
      name: g.name,
      y: g.y,
      stations: Float64Array.from(nodes, (n) => model.nodeX[n]),
      droop: Float64Array.from(nodes, (n) => q[3 * n] + camberAt(model, i, model.nodeX[n])),
      twist: Float64Array.from(nodes, (n) => q[3 * n + 1]),
    };
  });
}
