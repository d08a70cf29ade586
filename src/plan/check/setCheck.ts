// A set taken as a whole: pieces that join without gap, girders of equal ends, everything on the set, names that exist.
import type { PlanPath } from "../reading/planError.ts";
import type {
  Attachment,
  Crane,
  CrossFrame,
  Girder,
  Lashing,
  OnTransporter,
  Pick,
  Piece,
  Splice,
} from "../schema.ts";
import { bunksOnSet } from "./bunks.ts";
import { type Draft, noRepeats, onSet, refer, rising, unique } from "./draft.ts";
import { checkInfill } from "./infillCheck.ts";
import type { Names } from "./names.ts";
import { checkPickSlings } from "./riggingCheck.ts";
import { checkSteps } from "./stepCheck.ts";

/** Stations nearer to one another than this (m) are the same. */
const same_m = 1e-6;

/** Checks every set and its steps. */
export function checkSets(draft: Draft, names: Names): void {
  unique(draft, ["sets"], "id", "set");
  for (let i = 0; i < draft.count(["sets"]); i++) {
    const at = ["sets", i];
    const id = draft.sound<string>([...at, "id"]) ?? "";
    const length = checkGirders(draft, at);
    checkParts(draft, names, at, id, length);
    checkSupports(draft, names, at, id, length);
    checkInfill(draft, names, at, i, id, length);
    checkSteps(draft, names, at, id, length);
  }
}

/** Pieces, camber, ends; returns the length of the set (m), or null when the girders do not agree on one. */
function checkGirders(draft: Draft, at: PlanPath): number | null {
  unique(draft, [...at, "girders"], "line", "girder");
  const girders = draft.each<Girder>([...at, "girders"]);
  let length: number | null = null;
  let agreed = true;
  for (const { item, path } of girders) {
    checkPieces(draft, item.pieces, path);
    const end = item.pieces[item.pieces.length - 1].to_m;
    if (length !== null && Math.abs(end - length) > same_m) {
      agreed = false;
      draft.say(
        [...path, "pieces", item.pieces.length - 1, "to_m"],
        `girder ${item.line} ending at ${end} m`,
        `the end of the set's first girder, ${length} m`,
        "Make the girders of a set end at the same station.",
      );
    }
    length ??= end;
    const twin = girders.find((g) => g.path !== path && Math.abs(g.item.y_m - item.y_m) < 0.05);
    if (twin !== undefined && girders.indexOf(twin) < girders.findIndex((g) => g.path === path)) {
      draft.say(
        [...path, "y_m"],
        `${item.y_m} m, where girder ${twin.item.line} stands`,
        "girders at least 0.05 m apart",
        "Correct one of the two places.",
      );
    }
    rising(
      draft,
      item.camber_mm.map(([s], i) => ({ value: s, path: [...path, "camber_mm", i, 0] })),
      "a camber point at",
      "m",
    );
    item.camber_mm.forEach(([s], i) => {
      onSet(draft, [...path, "camber_mm", i, 0], s, end, "a camber point");
    });
  }
  const stated = draft.sound<number>([...at, "length_m"]);
  if (stated !== null && length !== null && agreed && Math.abs(stated - length) > 0.0005) {
    draft.say(
      [...at, "length_m"],
      `${stated} m`,
      `the length of the girders, ${length} m`,
      "Correct the length or the pieces.",
    );
  }
  const known = draft.sound<Girder[]>([...at, "girders"]) !== null;
  return known && agreed ? length : null;
}

/** Pieces in order from station 0, each beginning where the one before ends. */
function checkPieces(draft: Draft, pieces: readonly Piece[], path: PlanPath): void {
  pieces.forEach((piece, i) => {
    const at = [...path, "pieces", i];
    const before = i === 0 ? 0 : pieces[i - 1].to_m;
    const off = piece.from_m - before;
    if (Math.abs(off) > same_m) {
      const word =
        i === 0 ? "a first piece" : off > 0 ? `a gap of ${round(off)} m before a piece` : "a piece";
      const where =
        i === 0 ? "0: stations run from the rear end of the set" : `${before}, the end of the piece before`;
      draft.say(
        [...at, "from_m"],
        `${word} from ${piece.from_m} m${i > 0 && off < 0 ? `, crossing the one before by ${round(-off)} m` : ""}`,
        where,
        "Let every piece begin where the one before ends.",
      );
    }
    if (piece.to_m - piece.from_m <= same_m) {
      draft.say(
        [...at, "to_m"],
        `a piece ending at ${piece.to_m} m`,
        `more than its start, ${piece.from_m} m`,
        "Exchange start and end, or take the piece out.",
      );
    }
  });
}

const round = (value: number): number => Math.round(value * 1e6) / 1e6;

/** Splices, cross-frames, stiffeners, bracing, attachments, tag lines, sole plates. */
function checkParts(draft: Draft, names: Names, at: PlanPath, id: string, length: number | null): void {
  const girders = names.girdersOf(id);
  const onGirder: [string, string][] = [
    ["splices", "a splice"],
    ["attachments", "an attachment"],
    ["stiffeners", "a stiffener"],
  ];
  for (const [field, what] of onGirder) {
    for (const { item, path } of draft.each<Splice | Attachment>([...at, field])) {
      refer(draft, [...path, "girder"], item.girder, girders, "girder of this set");
      onSet(draft, [...path, "at_m"], item.at_m, length, what);
    }
  }
  const frames = draft.each<CrossFrame>([...at, "crossFrames"]);
  for (const { item, path } of frames) onSet(draft, [...path, "at_m"], item.at_m, length, "a cross-frame");
  const ordered = frames.map(({ item, path }) => ({ value: item.at_m, path: [...path, "at_m"] }));
  rising(draft, ordered, "a cross-frame at", "m");
  for (const { item, path } of draft.each<{ at_m: number }>([...at, "tagLines"])) {
    onSet(draft, [...path, "at_m"], item.at_m, length, "a tag line");
  }
  for (const { item, path } of draft.each<{ from_m: number; to_m: number }>([...at, "lateralBracing"])) {
    onSet(draft, [...path, "from_m"], item.from_m, length, "bracing");
    onSet(draft, [...path, "to_m"], item.to_m, length, "bracing");
    rising(
      draft,
      [
        { value: item.from_m, path },
        { value: item.to_m, path: [...path, "to_m"] },
      ],
      "an end at",
      "m",
    );
  }
  const soles = draft.sound<{ near: number; far: number }>([...at, "soleStations_m"]);
  if (soles !== null) {
    const path = [...at, "soleStations_m"];
    onSet(draft, [...path, "near"], soles.near, length, "a sole plate");
    onSet(draft, [...path, "far"], soles.far, length, "a sole plate");
    rising(
      draft,
      [
        { value: soles.near, path },
        { value: soles.far, path: [...path, "far"] },
      ],
      "a far sole plate at",
      "m",
    );
  }
}

/** Transporters under the set, picks, lashings. */
function checkSupports(draft: Draft, names: Names, at: PlanPath, id: string, length: number | null): void {
  const girders = names.girdersOf(id);
  unique(draft, [...at, "onTransporters"], "transporter", "entry");
  for (const { item, path } of draft.each<OnTransporter>([...at, "onTransporters"])) {
    refer(draft, [...path, "transporter"], item.transporter, names.transporters, "transporter");
    bunksOnSet(draft, names, item.transporter, item.deckAt_m, [...path, "deckAt_m"], length);
    for (const girder of Object.keys(item.packing_mm)) {
      refer(draft, [...path, "packing_mm", girder], girder, girders, "girder of this set");
    }
  }
  unique(draft, [...at, "picks"], "crane", "pick");
  const kinds = new Map<string, string>();
  const cranes = draft.each<Crane>(["cranes"]);
  for (const { item, path } of draft.each<Pick>([...at, "picks"])) {
    refer(draft, [...path, "crane"], item.crane, names.cranes, "crane");
    refer(draft, [...path, "rigging"], item.rigging, names.rigging, "rigging assembly");
    onSet(draft, [...path, "at_m"], item.at_m, length, "a pick");
    for (const [i, girder] of (item.girders ?? []).entries()) {
      refer(draft, [...path, "girders", i], girder, girders, "girder of this set");
    }
    noRepeats(draft, [...path, "girders"], item.girders ?? []);
    checkPickSlings(draft, item, path, girders);
    const kind = cranes.find((crane) => crane.item.id === item.crane)?.item.kind;
    const other = kind === undefined ? undefined : kinds.get(kind);
    if (other !== undefined && other !== item.crane) {
      draft.say(
        [...path, "crane"],
        `a second ${kind} crane, ${item.crane} beside ${other}`,
        `one ${kind} crane for a set`,
        "Make one of the two the crane of the other end.",
      );
    }
    if (kind !== undefined) kinds.set(kind, item.crane);
  }
  for (const { item, path } of draft.each<Lashing>(["lashings"])) {
    const mine = item.set === undefined ? girders?.includes(item.girder) : item.set === id;
    if (mine === true) onSet(draft, [...path, "at_m"], item.at_m, length, `a lashing on set ${id}`);
  }
}
