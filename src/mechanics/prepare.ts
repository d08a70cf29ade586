// The set as a frame, factorised once: held at three displacements, with every motion that nothing stiffens by name.

import { bandedFactor, bandedMultiply, bandedSolve } from "../numeric/index.ts";
import { type Mesh, meshOf } from "./mesh.ts";
import { addOwnWeight } from "./ownWeight.ts";
import { noPairs } from "./rows.ts";
import type { SetData, SetModel } from "./setModel.ts";

/**
 * Factorises the set. Cost is a few ms for a 60 m set; everything after it is small.
 * @param refine 2, 4 ... halves the elements once, twice ...; for tests of the mesh
 */
export function prepareSet(data: SetData, refine = 1): SetModel {
  const mesh = meshOf(data, refine);
  const { girders, nodeX, nodeY, matrix } = mesh;
  const factor = bandedFactor(matrix, holdsOf(mesh));
  const n = matrix.n;
  const single = girders.length === 1;
  const start = Math.min(...girders.map((g) => g.from));
  const end = Math.max(...girders.map((g) => g.to));
  const origin = (start + end) / 2;
  const modes: Float64Array[] = [];
  const modeNames: string[] = [];
  const rigid = (name: string, heave: number, lean: number, level: number) => {
    const m = new Float64Array(n);
    for (let i = 0; i < nodeX.length; i++) {
      m[3 * i] = heave + lean * nodeY[i] - level * (nodeX[i] - origin);
      m[3 * i + 1] = lean;
      m[3 * i + 2] = level;
    }
    modes.push(m);
    modeNames.push(name);
  };
  rigid("the set moves up or down", 1, 0, 0);
  if (!single) rigid("the set leans (turns about its length)", 0, 1, 0);
  rigid("the set tips end up (turns about a line across it)", 0, 0, 1);
  for (const dof of factor.singular) {
    const unit = new Float64Array(n);
    unit[dof] = 1;
    const column = bandedMultiply(matrix, unit);
    for (let i = 0; i < n; i++) column[i] = -column[i];
    bandedSolve(factor, column);
    column[dof] = 1;
    modes.push(column);
    const node = Math.floor(dof / 3);
    const girder = girders[mesh.nodeOf.findIndex((nodes) => nodes.includes(node))];
    const how = ["moves by itself", "leans by itself", "tips by itself"][dof % 3];
    modeNames.push(`girder ${girder.name} ${how} (no cross-frame holds it)`);
  }

  const model: SetModel = {
    data,
    girders,
    crossElements: mesh.crossElements,
    axisHeight: mesh.axisHeight,
    nodeX: Float64Array.from(nodeX),
    nodeY: Float64Array.from(nodeY),
    matrix,
    factor,
    modeNames,
    modes,
    lean: single ? -1 : 1,
    level: single ? 1 : 2,
    origin,
    sagFields: [],
    sagModes: [],
    mass: 0,
    cg: [0, 0, 0],
    runs: [],
    points: [],
    length: end - start,
    sections: mesh.sections,
    rows: Array.from({ length: 3 * girders.length }, () => ({ list: [], next: 0 })),
    pairs: noPairs(),
    columns: new Array(n).fill(null),
    plane: null,
    wind: new Map(),
    wiring: null,
  };
  addOwnWeight(model);
  return model;
}

/** Three far-apart displacements to hold; what the frame itself cannot stiffen shows as vanished pivots. */
function holdsOf({ girders, nodeOf, nodeX, order }: Mesh): number[] {
  const nearest = (girder: number, x: number) => {
    let best = -1;
    for (const node of nodeOf[girder])
      if (node >= 0 && (best < 0 || Math.abs(nodeX[node] - x) < Math.abs(nodeX[best] - x))) best = node;
    return best;
  };
  const a = girders[0];
  const span = a.to - a.from;
  const hold = [nearest(0, a.from + 0.2 * span) * 3, nearest(0, a.from + 0.8 * span) * 3];
  if (girders.length === 1) hold.push(nearest(0, a.from + 0.5 * span) * 3 + 1);
  else {
    const last = order[order.length - 1] === 0 ? order[0] : order[order.length - 1];
    hold.push(nearest(last, (girders[last].from + girders[last].to) / 2) * 3);
  }
  return hold;
}
