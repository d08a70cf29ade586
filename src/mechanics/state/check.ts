// What a state must keep that no single field shows: names that exist, pieces that join, supports that stand on the set.

import { listOf, printFound, printPath, type StateError, type StatePath, valueAt } from "./errors.ts";
import { type Look, lookAt, noRepeats, refer, unique } from "./look.ts";
import type {
  StateBearing,
  StateCrossFrame,
  StateGirder,
  StateHoist,
  StateLashing,
  StatePointMass,
  StateTrain,
} from "./types.ts";

/** Shortest piece, m: a shorter one is a slip of the pen, and would share its nodes with its neighbours. */
const shortest = 0.02;

/** Stretch of every sound girder by name, and the names of all girders (null when some cannot be told). */
interface Girders {
  names: string[] | null;
  stretch: Map<string, [number, number]>;
}

/** Every error that more than one field makes. `faulty` are the places where the reader found faults. */
export function crossCheck(data: unknown, faulty: readonly StatePath[]): StateError[] {
  const errors: StateError[] = [];
  const look = lookAt(data, faulty, errors);
  const girders = checkGirders(look);
  checkFrames(look, girders);
  for (const { item, path } of look.each<StatePointMass>("pointMasses")) {
    onGirder(look, girders, item.girder, item.at, path, "the mass");
  }
  if (faulty.length === 0) checkMass(look);
  checkTrains(look, girders);
  checkGroups(look);
  checkHoists(look, girders);
  for (const { item, path } of look.each<StateLashing>("lashings")) {
    refer(look, [...path, "train"], item.train, look.names("trains"), "transporter");
    onGirder(look, girders, item.girder, item.at, path, "the lashing");
  }
  unique(look, "bearings", "bearing");
  for (const { item, path } of look.each<StateBearing>("bearings")) {
    onGirder(look, girders, item.girder, item.at, path, "the bearing");
  }
  checkDroop(look, girders, valueAt(data, ["ask", "droopAt"]), faulty);
  refuseProto(look, data, []);
  if (errors.length === 0 && faulty.length === 0) checkAnswerNames(look);
  return errors;
}

function checkGirders(look: Look): Girders {
  unique(look, "girders", "girder");
  const stretch = new Map<string, [number, number]>();
  const all = look.each<StateGirder>("girders");
  all.forEach(({ item, path }, i) => {
    const twin = all.slice(0, i).find((other) => Math.abs(other.item.y - item.y) < 0.01);
    if (twin)
      look.say(
        [...path, "y"],
        `${item.y} m, where girder ${twin.item.name} stands`,
        "girders at least 0.01 m apart",
        "Move one of the two.",
      );
    const before = new Map<number, number>();
    item.pieces.forEach((piece, k) => {
      const at = [...path, "pieces", k];
      before.set(k + 1, piece.to);
      const joint = before.get(k);
      if (joint !== undefined && piece.from !== joint)
        look.say(
          [...at, "from"],
          `${piece.from} m`,
          `the end of the piece before, ${joint} m`,
          "Let the pieces join, with the very same number.",
        );
      if (!(piece.to - piece.from >= shortest))
        look.say(
          [...at, "to"],
          `${piece.to} m after ${piece.from} m`,
          `at least ${shortest} m more than the piece's from`,
          "Correct the two ends.",
        );
      const plates = [piece.topFlange, piece.web, piece.bottomFlange];
      if (!plates.some(([size, thickness]) => size * thickness > 0))
        look.say(
          at,
          "three plates without area",
          "at least one plate with both sizes",
          "Give the plates sizes.",
        );
    });
    checkRising(look, item, path);
    stretch.set(item.name, [item.pieces[0].from, item.pieces[item.pieces.length - 1].to]);
  });
  return { names: look.names("girders"), stretch };
}

function checkRising(look: Look, girder: StateGirder, path: StatePath): void {
  const points = girder.camber ?? [];
  for (let i = 1; i < points.length; i++)
    if (!(points[i][0] > points[i - 1][0]))
      look.say(
        [...path, "camber", i],
        `station ${points[i][0]} m after ${points[i - 1][0]} m`,
        `rising stations, here more than ${points[i - 1][0]} m`,
        "Put the points in order, and give each place once.",
      );
}

/** Cross-frames stand on every girder. */
function checkFrames(look: Look, girders: Girders): void {
  for (const { item, path } of look.each<StateCrossFrame>("crossFrames"))
    for (const [name, [from, to]] of girders.stretch)
      if (!(item.at >= from - 1e-9 && item.at <= to + 1e-9))
        look.say(
          [...path, "at"],
          `${item.at} m, off girder ${name}`,
          `a station on every girder; ${name} reaches from ${from} to ${to} m`,
          "Move the frame, or leave it out.",
        );
}

/** The set weighs something: without weight there is nothing to share out. */
function checkMass(look: Look): void {
  let mass = 0;
  for (const { item } of look.each<StateGirder>("girders"))
    for (const piece of item.pieces) mass += piece.massPerMetre;
  for (const { item } of look.each<StateCrossFrame>("crossFrames")) mass += item.mass;
  for (const { item } of look.each<StatePointMass>("pointMasses")) mass += item.mass;
  if (mass === 0)
    look.say(["girders"], "a set without mass", "a mass above 0 kg somewhere", "Fill in massPerMetre.");
}

function checkTrains(look: Look, girders: Girders): void {
  unique(look, "trains", "transporter");
  for (const { item, path } of look.each<StateTrain>("trains")) {
    noRepeats(look, [...path, "bunks"], item.bunks);
    noRepeats(look, [...path, "bunkGirders"], item.bunkGirders);
    item.bunkGirders.forEach((girder, i) => {
      refer(look, [...path, "bunkGirders", i], girder, girders.names, "girder");
      const stretch = girders.stretch.get(girder);
      if (stretch === undefined) return;
      item.bunks.forEach((along, b) => {
        const at = item.at + along;
        if (!(at >= stretch[0] - 1e-9 && at <= stretch[1] + 1e-9))
          look.say(
            [...path, "bunks", b],
            `a bunk at station ${at} m under girder ${girder}`,
            `a station on that girder, from ${stretch[0]} to ${stretch[1]} m`,
            "Move the transporter or the bunk, or take the girder off its bunkGirders.",
          );
      });
    });
    for (const [girder, , at] of look.entries<number>([...path, "packing"]))
      refer(look, at, girder, item.bunkGirders, "girder on this transporter");
  }
}

/** Groups name existing cylinders, each once; levels and lifts belong to what exists. */
function checkGroups(look: Look): void {
  const trains = look.each<StateTrain>("trains").map(({ item }) => item);
  // Faulty transporters could have cylinders that are not seen here: then only sound ones are spoken of.
  const whole = trains.length === (look.names("trains")?.length ?? -1);
  const cylinders = new Set<string>();
  for (const t of trains)
    for (let line = 1; line <= t.lines; line++)
      for (const side of ["L", "R"]) cylinders.add(`${t.name}:${line}${side}`);
  const exists = (path: StatePath, id: string) => {
    if (!whole || cylinders.has(id)) return;
    const lines = trains.map((t) => `${t.name}:1L to ${t.name}:${t.lines}R`);
    look.say(
      path,
      printFound(id),
      trains.length === 0 ? "a cylinder; there is no transporter" : `a cylinder: ${listOf(lines, "or")}`,
      "Write train:line side, line 1 rearmost.",
    );
  };
  const inGroup = new Map<string, string>();
  const groups = look.entries<string[]>(["groups"]);
  for (const [name, ids, path] of groups)
    ids.forEach((id, i) => {
      exists([...path, i], id);
      const other = inGroup.get(id);
      if (other !== undefined)
        look.say(
          [...path, i],
          `${printFound(id)}, which stands in group ${other}`,
          "every cylinder in one group, once",
          "Take it out of one of them.",
        );
      inGroup.set(id, name);
    });
  const names = look.keys(["groups"]);
  for (const [name, , path] of look.entries<number>(["groupLift"])) refer(look, path, name, names, "group");
  for (const [id, , path] of look.entries<number>(["ground"])) exists(path, id);
}

function checkHoists(look: Look, girders: Girders): void {
  unique(look, "hoists", "hoist");
  for (const { item, path } of look.each<StateHoist>("hoists")) {
    noRepeats(look, [...path, "girders"], item.girders);
    item.girders.forEach((girder, i) => {
      onGirder(look, girders, girder, item.at, path, "the pick", ["girders", i]);
    });
    for (const [girder, , at] of look.entries<number>([...path, "longer"]))
      refer(look, at, girder, item.girders, "girder of this hoist");
    if (item[item.mode] === undefined || item[item.mode] === null)
      look.say(
        [...path, item.mode],
        printFound(item[item.mode]),
        `a number, since the mode is ${printFound(item.mode)}`,
        item.mode === "load" ? "Give the load in N." : "Give the take-up in m.",
      );
  }
}

function checkDroop(look: Look, girders: Girders, stations: unknown, faulty: readonly StatePath[]): void {
  if (!Array.isArray(stations) || faulty.some((path) => path[0] === "ask" || path[0] === "girders")) return;
  const ends = [...girders.stretch.values()];
  const from = Math.min(...ends.map(([a]) => a));
  const to = Math.max(...ends.map(([, b]) => b));
  stations.forEach((at: number, i) => {
    if (!(at >= from && at <= to))
      look.say(
        ["ask", "droopAt", i],
        `${at} m`,
        `a station on the set, from ${from} to ${to} m`,
        "Move it on to the set.",
      );
  });
}

/** JavaScript keeps no value under this name. */
function refuseProto(look: Look, value: unknown, path: StatePath): void {
  const bad = "__proto__";
  if (value === bad) look.say(path, printFound(value), "any other name", "Choose another name.");
  if (typeof value !== "object" || value === null) return;
  for (const [part, inner] of Array.isArray(value) ? value.entries() : Object.entries(value)) {
    if (part === bad) look.say([...path, part], printFound(part), "any other name", "Choose another name.");
    else refuseProto(look, inner, [...path, part]);
  }
}

/** The answer lists its forces by name; two supports of one name would be one number. */
function checkAnswerNames(look: Look): void {
  const seen = new Map<string, StatePath>();
  const claim = (name: string, path: StatePath, mend: string) => {
    const first = seen.get(name);
    if (first)
      look.say(
        path,
        `${printFound(name)}, the answer's name for this and for ${printPath(first)}`,
        "a name of its own for every force",
        mend,
      );
    else seen.set(name, path);
  };
  const rename = "Give one of the two another name.";
  for (const { item: t, path } of look.each<StateTrain>("trains"))
    t.bunks.forEach((_, b) => {
      for (const g of t.bunkGirders) claim(`bunk ${t.name} ${g} ${b + 1}`, [...path, "bunks", b], rename);
    });
  for (const { item: h, path } of look.each<StateHoist>("hoists"))
    h.girders.forEach((g, i) => {
      claim(`line ${h.name} ${g}`, [...path, "girders", i], rename);
    });
  for (const { item: l, path } of look.each<StateLashing>("lashings"))
    claim(
      `lashing ${l.girder} ${l.at}`,
      path,
      "Give the two as one lashing with the sum of their stiffnesses, or move one by 1 mm.",
    );
}

/** The girder exists and reaches to the station. */
function onGirder(
  look: Look,
  girders: Girders,
  name: string,
  at: number,
  path: StatePath,
  what: string,
  named: StatePath = ["girder"],
): void {
  refer(look, [...path, ...named], name, girders.names, "girder");
  const stretch = girders.stretch.get(name);
  if (stretch === undefined || (at >= stretch[0] - 1e-9 && at <= stretch[1] + 1e-9)) return;
  look.say(
    [...path, "at"],
    `${what} at ${at} m`,
    `a station on girder ${name}, from ${stretch[0]} to ${stretch[1]} m`,
    "Move it on to the girder.",
  );
}
