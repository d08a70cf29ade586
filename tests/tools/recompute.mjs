// Equilibrium summed anew from a file of reactions: reads the CSV and the plan's geometry, shares no code with src/.
//
// Use: node tests/tools/recompute.mjs FILE.csv PLAN.json. In every pose, the forces on the set must carry its weight and
// have their resultant in the centre of gravity that the plan's own plates and masses have; the same for every deck.
// Exit code 0: they do, within what rounding in the file allows; 1: they do not; 2: a file cannot be read.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

/**
 * Rows of an RFC 4180 text as objects by the header's names.
 * @param {string} text
 * @returns {Record<string, string>[]}
 */
export function parseCsv(text) {
  /** @type {string[][]} */
  const rows = [];
  let cells = [];
  let cell = "";
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (quoted) {
      if (sign !== '"') cell += sign;
      else if (text[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === ",") {
      cells.push(cell);
      cell = "";
    } else if (sign === "\r" && text[i + 1] === "\n") {
      cells.push(cell);
      rows.push(cells);
      cells = [];
      cell = "";
      i++;
    } else cell += sign;
  }
  if (quoted || cell !== "" || cells.length > 0) throw new Error("the CSV does not end with a whole row");
  const [head, ...body] = rows;
  body.forEach((row, i) => {
    if (row.length !== head.length)
      throw new Error(`row ${i + 2} of the CSV has ${row.length} cells, the header ${head.length}`);
  });
  return body.map((row) => Object.fromEntries(head.map((name, c) => [name, row[c]])));
}

/**
 * Mass (t) and centre of gravity (m) of a set from its plates, splices, frames and attachments.
 * @param {any} set a set of the plan file
 */
export function massesOf(set) {
  const density = (set.steelDensity_kg_per_m3 ?? 7850) / 1000;
  const factor = 1 + (set.fabricationFactor_pct ?? 0) / 100;
  /** @type {{ m: number, x: number, y: number, z: number }[]} */
  const parts = [];
  const plates = (/** @type {any} */ piece) => {
    const [bt, tt] = piece.topFlange_mm.map((/** @type {number} */ v) => v / 1000);
    const [h, t] = piece.web_mm.map((/** @type {number} */ v) => v / 1000);
    const [bb, tb] = piece.bottomFlange_mm.map((/** @type {number} */ v) => v / 1000);
    const areas = [bb * tb, h * t, bt * tt];
    const area = areas[0] + areas[1] + areas[2];
    const first = areas[0] * (tb / 2) + areas[1] * (tb + h / 2) + areas[2] * (tb + h + tt / 2);
    return { area, centroid: first / area };
  };
  const girderOf = (/** @type {string} */ line) =>
    set.girders.find((/** @type {any} */ g) => g.line === line);
  for (const girder of set.girders)
    for (const piece of girder.pieces) {
      const { area, centroid } = plates(piece);
      const m = area * (piece.to_m - piece.from_m) * density * factor;
      parts.push({ m, x: (piece.from_m + piece.to_m) / 2, y: girder.y_m, z: centroid });
    }
  for (const splice of set.splices) {
    const girder = girderOf(splice.girder);
    const at = girder.pieces.find((/** @type {any} */ p) => splice.at_m <= p.to_m) ?? girder.pieces.at(-1);
    parts.push({ m: splice.mass_t, x: splice.at_m, y: girder.y_m, z: plates(at).centroid });
  }
  const lines = set.girders
    .map((/** @type {any} */ g) => g.y_m)
    .sort((/** @type {number} */ a, /** @type {number} */ b) => a - b);
  for (const frame of set.crossFrames) {
    const bays = lines.length - 1;
    if (bays === 0) parts.push({ m: frame.mass_t, x: frame.at_m, y: lines[0], z: frame.height_m });
    for (let i = 0; i < bays; i++) {
      const y = (lines[i] + lines[i + 1]) / 2;
      parts.push({ m: frame.mass_t / bays, x: frame.at_m, y, z: frame.height_m });
    }
  }
  for (const a of set.attachments) {
    const y = girderOf(a.girder).y_m + (a.y_m ?? 0);
    parts.push({ m: a.mass_t, x: a.at_m, y, z: a.height_m });
  }
  const mass = parts.reduce((sum, p) => sum + p.m, 0);
  const mean = (/** @type {"x" | "y" | "z"} */ axis) =>
    parts.reduce((sum, p) => sum + p.m * p[axis], 0) / mass;
  const length = Math.max(...set.girders.map((/** @type {any} */ g) => g.pieces.at(-1).to_m));
  return { mass, cg: [mean("x"), mean("y"), mean("z")], length, girders: lines.length };
}

/** Sum of forces and of moments about the origin of the set, with what rounding of each term may add. */
class Sum {
  force = [0, 0, 0];
  moment = [0, 0, 0];
  forceSlack = 0;
  momentSlack = 0;

  /**
   * Adds a force at a place, kN and m, and a moment.
   * @param {number[]} f @param {number[]} at @param {number[]} m
   */
  add(f, at, m = [0, 0, 0]) {
    const half = 0.5e-6; // kN and kN m: the file has six places
    const place = 0.5e-9; // m: nine places
    const cross = [at[1] * f[2] - at[2] * f[1], at[2] * f[0] - at[0] * f[2], at[0] * f[1] - at[1] * f[0]];
    for (let i = 0; i < 3; i++) {
      this.force[i] += f[i];
      this.moment[i] += cross[i] + m[i];
    }
    const lever = Math.abs(at[0]) + Math.abs(at[1]) + Math.abs(at[2]);
    this.forceSlack += half;
    this.momentSlack += half * (lever + 1) + 2 * place * Math.hypot(f[0], f[1], f[2]);
  }
}

/**
 * Components of true up along the path, across it (left) and normal to it; slopes as tangents.
 * @param {number} grade @param {number} crossfall
 */
function upOf(grade, crossfall) {
  const along = Math.hypot(1, grade);
  const normal = Math.hypot(1, grade, crossfall);
  return [grade / along, -crossfall / (along * normal), 1 / normal];
}

/**
 * Checks every pose of a file of reactions.
 * @param {string} csvText @param {any} plan the plan file as data
 * @returns {{ poses: number, faults: string[], worst: Record<string, { error: number, bound: number, where: string }> }}
 */
export function recompute(csvText, plan) {
  const rows = parseCsv(csvText);
  const gravity = plan.site.gravity_m_per_s2 ?? 9.80665;
  /** @type {Map<string, Record<string, string>[]>} */
  const poses = new Map();
  for (const row of rows) {
    const key = JSON.stringify([row.set, row.pose]);
    const list = poses.get(key);
    if (list) list.push(row);
    else poses.set(key, [row]);
  }
  /** @type {Record<string, { error: number, bound: number, where: string }>} */
  const worst = {};
  /** @type {string[]} */
  const faults = [];
  const note = (
    /** @type {string} */ what,
    /** @type {number} */ error,
    /** @type {number} */ bound,
    /** @type {string} */ where,
  ) => {
    const size = Math.abs(error);
    if (!(size <= bound)) faults.push(`${where}: ${what} is off by ${error}, allowed ${bound}`);
    const known = worst[what];
    if (known === undefined || !(size / bound <= known.error / known.bound))
      worst[what] = { error: size, bound, where };
  };
  const masses = new Map(plan.sets.map((/** @type {any} */ set) => [set.id, massesOf(set)]));
  for (const list of poses.values()) {
    const [first] = list;
    const where = `set ${first.set} step ${first.step_number} progress ${first.progress}`;
    const set = masses.get(first.set);
    const W = set.mass * gravity;
    const up = upOf(Number(first.grade_pct) / 100, Number(first.crossfall_pct) / 100);
    const solver = 2e-9; // the residual that the solver allows itself, of W and W L
    const placed = (/** @type {Record<string, string>} */ r) => [
      Number(r.station_m),
      Number(r.y_m),
      Number(r.height_m),
    ];
    const sum = new Sum();
    sum.add([-W * up[0], -W * up[1], -W * up[2]], set.cg);
    let shares = 0;
    let bands = 0;
    for (const r of list) {
      const side = [Number(r.side_x_kN), Number(r.side_y_kN)];
      const turn = [Number(r.moment_x_kNm), Number(r.moment_y_kNm), 0];
      // What hangs askew turns by forces along true up, whose moment has no part about true up.
      if (r.what === "hoist") turn[2] = -(up[0] * turn[0] + up[1] * turn[1]) / up[2];
      if (r.what === "bunk" || r.what === "bearing")
        sum.add([side[0], side[1], Number(r.load_kN)], placed(r), turn);
      else if (r.what === "lashing") sum.add([0, 0, -Number(r.load_kN)], placed(r));
      else if (r.what === "wind") sum.add([side[0], side[1], 0], placed(r));
      else if (r.what === "hoist")
        sum.add([side[0], side[1], Number(r.net_hook_kN) * up[2]], placed(r), turn);
      if (r.band === "yes") {
        shares += Number(r.share_kN);
        bands++;
      }
    }
    const forceBound = sum.forceSlack + solver * W;
    const momentBound = sum.momentSlack + solver * W * set.length;
    note("weight (kN)", sum.force[2], forceBound, where);
    note("force along (kN)", sum.force[0], forceBound, where);
    note("force across (kN)", sum.force[1], forceBound, where);
    // What is left of the moments, over the weight, is how far the reactions' centre of gravity lies off the plan's.
    note("CG along (m)", sum.moment[1] / (W * up[2]), momentBound / W, where);
    if (set.girders > 1) note("CG across (m)", sum.moment[0] / (W * up[2]), momentBound / W, where);
    note("turning in plan (m)", sum.moment[2] / W, momentBound / W, where);
    note("shares (kN)", shares - W * up[2], bands * 0.5e-6 + solver * W, where);
    decks(list, plan, gravity, up, W, set.length, where, note);
    lines(list, where, note);
  }
  if (poses.size === 0) faults.push("the file holds no pose");
  return { poses: poses.size, faults, worst };
}

/**
 * Every deck: what the ground pushes up against bunks, lashings and its own weight, and the groups' sums.
 * @param {Record<string, string>[]} list @param {any} plan @param {number} gravity @param {number[]} up
 * @param {number} W @param {number} L @param {string} where
 * @param {(what: string, error: number, bound: number, where: string) => void} note
 */
function decks(list, plan, gravity, up, W, L, where, note) {
  for (const t of plan.transporters) {
    const own = list.filter((r) => r.part_of === t.id);
    const wheels = own.filter((r) => r.what === "cylinder");
    if (wheels.length === 0) continue;
    const centre = wheels.reduce((sum, r) => sum + Number(r.station_m), 0) / wheels.length;
    const deck = new Sum();
    const weight = t.mass_t * gravity;
    deck.add(
      up.map((u) => -weight * u),
      [0, 0, t.cgHeight_m],
    );
    const load = new Map(wheels.map((r) => [r.support, Number(r.load_kN)]));
    for (const r of wheels)
      deck.add([0, 0, Number(r.load_kN)], [Number(r.station_m) - centre, Number(r.y_m), 0]);
    for (const r of list) {
      const tie =
        r.what === "lashing" &&
        plan.lashings.some((/** @type {any} */ l) => l.id === r.part_of && l.transporter === t.id);
      if (!tie && !(r.what === "bunk" && r.part_of === t.id)) continue;
      const sign = tie ? 1 : -1;
      const side = tie ? [0, 0] : [-Number(r.side_x_kN), -Number(r.side_y_kN)];
      const at = [Number(r.station_m) - centre, Number(r.y_m), t.bunkHeight_m];
      deck.add([side[0], side[1], sign * Number(r.load_kN)], at);
    }
    const at = `${where}, ${t.id}`;
    note("deck (kN)", deck.force[2], deck.forceSlack + 2e-9 * W, at);
    note("deck lean (kN m)", deck.moment[0], deck.momentSlack + 2e-9 * W * L, at);
    note("deck level (kN m)", deck.moment[1], deck.momentSlack + 2e-9 * W * L, at);
    let tare = 0;
    for (const group of t.groups) {
      const r = own.find((one) => one.what === "group" && one.support === group.name);
      if (r === undefined) throw new Error(`${at}: the CSV has no row for the group ${group.name}`);
      let sum = 0;
      for (const wheel of group.wheels) sum += load.get(`${t.id}:${wheel}`) ?? Number.NaN;
      note("group (kN)", sum - Number(r.load_kN), (group.wheels.length + 1) * 0.5e-6, at);
      tare += Number(r.load_kN) - Number(r.share_kN);
    }
    note("deck's tare (kN)", tare - weight * up[2], t.groups.length * 1e-6 + 2e-9 * W, at);
  }
}

/**
 * Every hook: its lines add up to its net load.
 * @param {Record<string, string>[]} list @param {string} where
 * @param {(what: string, error: number, bound: number, where: string) => void} note
 */
function lines(list, where, note) {
  for (const hook of list.filter((r) => r.what === "hoist")) {
    const own = list.filter((r) => r.what === "line" && r.part_of === hook.part_of);
    const sum = own.reduce((total, r) => total + Number(r.load_kN), 0);
    note("lines (kN)", sum - Number(hook.net_hook_kN), (own.length + 1) * 0.5e-6, where);
  }
}

/** @param {readonly string[]} words */
function main([csv, plan]) {
  if (plan === undefined) {
    console.error("Use: node tests/tools/recompute.mjs FILE.csv PLAN.json");
    return 2;
  }
  let found;
  try {
    found = recompute(readFileSync(csv, "utf8"), JSON.parse(readFileSync(plan, "utf8")));
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return 2;
  }
  console.log(`${found.poses} poses; worst errors with what rounding allows:`);
  for (const [what, { error, bound, where }] of Object.entries(found.worst))
    console.log(`  ${what.padEnd(20)} ${error.toExponential(2)} of ${bound.toExponential(2)}  (${where})`);
  for (const fault of found.faults.slice(0, 20)) console.error(fault);
  if (found.faults.length > 20) console.error(`and ${found.faults.length - 20} more`);
  return found.faults.length === 0 ? 0 : 1;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  process.exitCode = main(process.argv.slice(2));
