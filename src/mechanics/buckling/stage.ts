// A solved pose as a buckling problem: girders as thin-walled beams with warping, cross-frames as pinned chords (no
// bending in plan), supports with their own stiffness, and every load at its height.
//
// What is taken: contacts that carry go on carrying; all loads and reactions grow together; displacements before
// buckling, sideways bending and twist of the pose itself, friction limits and the flats of bunks are left out.

import type { Section } from "../../section/index.ts";
import type { DeviceKind } from "../devices.ts";
import { diagramsOf, momentAt, pointForcesOn, shearAt } from "../diagram.ts";
import type { Diagrams } from "../diagramData.ts";
import { verticalStiffness } from "../frame.ts";
import type { SetModel } from "../setModel.ts";
import type { Solution } from "../solution.ts";
import {
  type Assembly,
  addElement,
  addForm,
  assembly,
  combine,
  type Form,
  sidewaysAt,
  twistAt,
  twistInside,
  uprightAt,
} from "./assembly.ts";
import { PER_NODE } from "./element.ts";

/** One girder of the stage: its nodes along x and the section ahead of each. */
export interface StageGirder {
  name: string;
  y: number;
  /** Index of its first node. */
  first: number;
  x: number[];
  /** Section of every element, one fewer than nodes. */
  sections: Section[];
  masses: number[];
}

export interface Stage extends Assembly {
  girders: StageGirder[];
  /** Height above the soffit at which sideways displacements are measured, m. */
  reference: number;
}

/** Stations nearer than this share a node, m. */
const SAME_NODE = 0.05;
/** Longest element, m: a free length between frames has several. */
const LONGEST = 2;
/** Hold of contacts to which no side stiffness was given, N/m, and of the twist of a lone girder where it stands, N m. */
const RIGID_SIDE = 1e9;
const RIGID_TWIST = 1e10;
/** Part of the weight per metre that holds motions which nothing holds, so that the matrices can be factorised. */
const A_BREATH = 1e-5;

/** Puts a solved pose together. Throws RangeError when it has no numbers. */
export function stageOf(s: Solution): Stage {
  const { model, layout } = s;
  const d = diagramsOf(s);
  const girders = nodesOf(s, d);
  const nodes = girders.reduce((sum, g) => sum + g.x.length, 0);
  const decks = layout.trains.length;
  const stage: Stage = {
    ...assembly(PER_NODE * nodes + 3 * decks),
    girders,
    reference: model.axisHeight,
  };
  const places: Places = { stage, firstDeck: PER_NODE * nodes };
  addGirders(s, d, stage);
  addFrames(s, stage);
  addMasses(s, stage);
  addSupports(s, places);
  addHangers(s, stage);
  for (let i = 0; i < girders.length; i++)
    for (const { x, force, support } of pointForcesOn(d, i)) {
      const hoist = layout.hoists.find((h) => support === `hoist ${h.name}`);
      const node = nodeAt(girders[i], x);
      const above = (hoist?.pickHeight ?? 0) - shearCentreAt(girders[i], x);
      addForm(stage, "g", twistAt(node), force * above);
    }
  const weight = model.mass * s.state.gravity;
  const { first, x } = girders[0];
  for (const node of [first, first + x.length - 1])
    addForm(stage, "k", sidewaysAt(node, stage.reference, stage.reference), A_BREATH * weight);
  return stage;
}

interface Places {
  stage: Stage;
  firstDeck: number;
}

function nodesOf({ model, state }: Solution, d: Diagrams): StageGirder[] {
  let first = 0;
  return model.girders.map((line, i) => {
    const pieces = model.sections.get(line.name) as { from: number; to: number; section: Section }[];
    // Girder ends keep their places, then come frames and supports; piece ends move to a near neighbour.
    const wanted = [
      line.from,
      line.to,
      ...(state.crossFrames ?? []).map((f) => f.at),
      ...pointForcesOn(d, i).map((p) => p.x),
      ...pieces.map((p) => p.to),
    ].filter((x) => x >= line.from - 1e-9 && x <= line.to + 1e-9);
    const kept: number[] = [];
    for (const x of wanted) if (!kept.some((k) => Math.abs(k - x) < SAME_NODE)) kept.push(x);
    kept.sort((a, b) => a - b);
    const x = [kept[0]];
    for (let k = 1; k < kept.length; k++) {
      const parts = Math.ceil((kept[k] - kept[k - 1]) / LONGEST - 1e-9);
      for (let p = 1; p <= parts; p++) x.push(kept[k - 1] + ((kept[k] - kept[k - 1]) * p) / parts);
    }
    const at = (mid: number) => {
      const k = pieces.findIndex((p) => mid >= p.from && mid <= p.to);
      return k < 0 ? pieces.length - 1 : k;
    };
    const mids = x.slice(1).map((end, k) => at((x[k] + end) / 2));
    const girder = {
      name: line.name,
      y: line.y,
      first,
      x,
      sections: mids.map((k) => pieces[k].section),
      masses: mids.map((k) => state.girders[i].pieces[k].massPerMetre),
    };
    first += x.length;
    return girder;
  });
}

/** Node of a girder nearest to a station. */
function nodeAt(g: StageGirder, x: number): number {
  let best = 0;
  for (let i = 1; i < g.x.length; i++) if (Math.abs(g.x[i] - x) < Math.abs(g.x[best] - x)) best = i;
  return g.first + best;
}

/** Height of the shear centre at a station: the mean of what meets there. */
function shearCentreAt(g: StageGirder, x: number): number {
  const i = nodeAt(g, x) - g.first;
  const beside = [g.sections[i - 1], g.sections[i]].filter((section) => section !== undefined);
  return beside.reduce((sum, section) => sum + section.shearCentre, 0) / beside.length;
}

function addGirders({ model, state, layout }: Solution, d: Diagrams, stage: Stage): void {
  const { E, G } = state;
  const down = state.gravity * layout.up[2];
  stage.girders.forEach((g, i) => {
    const points = d.girders[i].points.filter((p) => p.force !== 0).map((p) => p.x);
    const { from, to } = model.girders[i];
    for (let k = 1; k < g.x.length; k++) {
      const start = g.x[k - 1];
      const length = g.x[k] - start;
      const section = g.sections[k - 1];
      addElement(
        stage,
        g.first + k - 1,
        g.first + k,
        {
          length,
          EIz: E * section.weakInertia,
          EIy: E * section.strongInertia,
          GA: state.shear === false || section.webArea === 0 ? Number.POSITIVE_INFINITY : G * section.webArea,
          GJ: G * section.torsion,
          EIw: E * section.warping,
          shearCentre: section.shearCentre,
          wagner: section.wagner,
          down: g.masses[k - 1] * down,
          downHeight: section.centroid,
          reference: stage.reference,
        },
        (inside) => {
          const x = Math.min(to, Math.max(from, start + inside));
          return { M: momentAt(d, i, x), V: shearAt(d, i, x, 1) };
        },
        points.map((x) => x - start),
      );
    }
  });
}

/** Frames tie neighbours sideways at their own height and bend in their own plane; in plan they are pinned. */
function addFrames({ model, state }: Solution, stage: Stage): void {
  for (const frame of state.crossFrames ?? [])
    for (const c of model.crossElements) {
      if (c.x !== frame.at) continue;
      const [a, b] = c.girders.map((i) => stage.girders[i]);
      const [na, nb] = [nodeAt(a, c.x), nodeAt(b, c.x)];
      const length = b.y - a.y;
      const side = combine([
        [sidewaysAt(nb, frame.height, stage.reference), 1],
        [sidewaysAt(na, frame.height, stage.reference), -1],
      ]);
      addForm(stage, "k", side, (state.E * frame.area) / length);
      const stiff = {
        EA: 0,
        EIy: state.E * frame.inPlaneInertia,
        EIz: 0,
        GJ: 0,
        GA: Number.POSITIVE_INFINITY,
      };
      const k = verticalStiffness(stiff, length);
      // A frame's own axis runs along y: a slope along it is the twist phi, and its thetaY' is -phi.
      const dofs = [PER_NODE * na + 4, PER_NODE * na + 2, PER_NODE * nb + 4, PER_NODE * nb + 2];
      const of = [0, 2, 3, 5];
      const sign = [1, -1, 1, -1];
      for (let i = 0; i < 4; i++)
        for (let j = 0; j < 4; j++)
          stage.k[stage.n * dofs[i] + dofs[j]] += sign[i] * sign[j] * k[6 * of[i] + of[j]];
    }
}

/** Masses of frames and of what hangs on the girders, at their heights: above the shear centre they pull over. */
function addMasses({ state, layout }: Solution, stage: Stage): void {
  const down = state.gravity * layout.up[2];
  const put = (g: StageGirder, x: number, mass: number, height: number) => {
    let k = 1;
    while (k < g.x.length - 1 && g.x[k] < x) k++;
    const length = g.x[k] - g.x[k - 1];
    const inside = Math.min(length, Math.max(0, x - g.x[k - 1]));
    const form = twistInside(g.first + k - 1, g.first + k, inside, length);
    addForm(stage, "g", form, -mass * down * (height - g.sections[k - 1].shearCentre));
  };
  const across = [...stage.girders].sort((a, b) => a.y - b.y);
  for (const f of state.crossFrames ?? [])
    for (let i = 1; i < across.length; i++)
      for (const g of [across[i - 1], across[i]]) put(g, f.at, f.mass / (2 * (across.length - 1)), f.height);
  for (const p of state.pointMasses ?? []) {
    const g = stage.girders.find((one) => one.name === p.girder);
    if (g !== undefined) put(g, p.at, p.mass, p.height);
  }
}

const STIFF: readonly DeviceKind[] = ["group", "stop", "bunk", "hoist", "bearing", "lashing"];

/** Supports that carry: upright with their own stiffness, sideways where they hold; decks lean under what they carry. */
function addSupports(s: Solution, { stage, firstDeck }: Places): void {
  const { devices, contact, layout, state } = s;
  const { trains } = layout;
  const given =
    trains.some((t) => (t.bunkSideStiffness ?? 0) > 0) ||
    (state.bearings ?? []).some((b) => (b.sideStiffness ?? 0) > 0);
  const deckLean = (deck: number): Form => ({ dofs: [firstDeck + 3 * deck + 1], factors: [1] });
  const down = state.gravity * layout.up[2];
  trains.forEach((t, i) => {
    addForm(stage, "g", deckLean(i), -t.mass * down * t.cgHeight);
  });
  devices.forEach((device, j) => {
    if (!contact.active[j] || !STIFF.includes(device.kind)) return;
    const parts: [Form, number][] = device.rows.map((row, i) => {
      const g = stage.girders[girderOfRow(s.model, row.dofs[0])];
      return [uprightAt(nodeAt(g, row.station)), device.factors[i]];
    });
    device.decks.forEach((deck, i) => {
      const dofs = [0, 1, 2].map((q) => firstDeck + 3 * deck + q);
      parts.push([{ dofs, factors: device.deckFactors.slice(3 * i, 3 * i + 3) }, 1]);
    });
    addForm(stage, "k", combine(parts), device.stiffness);
    if (device.kind !== "bunk" && device.kind !== "bearing") return;
    const g = stage.girders[girderOfRow(s.model, device.rows[0].dofs[0])];
    const node = nodeAt(g, device.x);
    if (stage.girders.length === 1) addForm(stage, "k", twistAt(node), RIGID_TWIST);
    const foot = sidewaysAt(node, 0, stage.reference);
    if (device.kind === "bearing") {
      const b = (state.bearings ?? [])[device.of];
      if ((b.holds ?? "free") !== "free")
        addForm(stage, "k", foot, given ? (b.sideStiffness ?? 0) : RIGID_SIDE);
      return;
    }
    const t = trains[device.of];
    const lean = deckLean(device.of);
    addForm(
      stage,
      "k",
      combine([
        [foot, 1],
        [lean, t.bunkHeight],
      ]),
      given ? (t.bunkSideStiffness ?? 0) : RIGID_SIDE,
    );
    addForm(stage, "g", lean, -contact.F[j] * t.bunkHeight);
  });
}

function girderOfRow(model: SetModel, dof: number): number {
  const node = Math.floor(dof / 3);
  return model.girders.findIndex(({ elements }) =>
    elements.some((e) => e.node1 === node || e.node2 === node),
  );
}

/** Lines are pendulums, and a spreader that leans under its pin turns back. */
function addHangers({ layout, hoistForce }: Solution, stage: Stage): void {
  layout.hoists.forEach((h, i) => {
    const T = hoistForce[i];
    if (!(T > 0)) return;
    const on = layout.hoistGirders[i].map((g) => stage.girders[g]);
    const sideways = on.map((g): [Form, number] => [
      sidewaysAt(nodeAt(g, h.at), h.pickHeight, stage.reference),
      1 / on.length,
    ]);
    if (h.ropeLength) addForm(stage, "g", combine(sideways), T / h.ropeLength);
    if (on.length < 2 || h.rigging === "separate" || !h.pinHeight) return;
    const [left, right] = [on[0], on[on.length - 1]];
    const between = left.y - right.y;
    const lean = combine([
      [uprightAt(nodeAt(left, h.at)), 1 / between],
      [uprightAt(nodeAt(right, h.at)), -1 / between],
    ]);
    addForm(stage, "g", lean, T * h.pinHeight);
  });
}
