// Chainage, dimension lines, the lines of the seats and notes: what makes a parallel view a drawing.
import type { Vec3 } from "../sequence/index.ts";
import { fromSI, print, signOf, toSI, unitFor } from "../units/index.ts";
import { placeLabels, type Rect, type Tag } from "./labels.ts";
import type { Sheet } from "./sheet.ts";
import { svg, textWidth } from "./svg.ts";
import { isElevation } from "./types.ts";

/** Round steps of an axis, in its own unit. */
const roundSteps = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/** A line with strokes at both ends and its length above it; a narrow one has its length beside it. */
function dimension(into: SVGElement, sheet: Sheet, x1: number, x2: number, y: number, words: string): void {
  const [a, b] = [Math.min(x1, x2), Math.max(x1, x2)];
  if (b < 0 || a > sheet.width || b - a < 2) return;
  const t = 0.3 * sheet.letter;
  into.append(svg("line", { class: "dimension", x1: a - t, y1: y, x2: b + t, y2: y }));
  for (const x of [a, b]) {
    into.append(svg("line", { class: "stroke", x1: x - t, y1: y + t, x2: x + t, y2: y - t }));
  }
  const width = textWidth(words, sheet.font);
  const from = Math.max(a, 0);
  const to = Math.min(b, sheet.width);
  const fits = to - from > width + 8;
  const x = fits ? (from + to) / 2 : Math.min(b + t + 4, sheet.width - width - 4);
  const place = { x, y: fits ? y - 3 : y + 0.35 * sheet.letter, "text-anchor": fits ? "middle" : "start" };
  into.append(svg("text", { ...place, class: "halo" }, words));
}

/** Axis along the bottom: chainage in elevation and plan, distance from the axis in an end view. */
function drawAxis(into: SVGElement, sheet: Sheet): void {
  const { model, units, letter, width, height, scale, view } = sheet;
  const y = height - 1.75 * letter;
  const unit = unitFor("length", units);
  const long = toSI(1, unit);
  const step = roundSteps.find((one) => one * long * scale >= 5.5 * letter) ?? 1000;
  const end = view === "end";
  const at = (value: number): number => sheet.at(end ? [model.origin[0], value, 0] : [value, 0, 0]).x;
  const zero = at(0);
  const perMetre = at(1) - zero;
  const ends = [-zero / perMetre, (width - zero) / perMetre].map((v) => fromSI(v, unit));
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  into.append(svg("line", { class: "axis", x1: 0, y1: y, x2: width, y2: y }));
  const title = end ? `left of the axis, ${signOf("length", units)}` : `chainage, ${signOf("length", units)}`;
  const titleWidth = textWidth(title, sheet.font) + letter;
  for (let n = Math.ceil(least / step); n * step <= most; n++) {
    const x = at(toSI(n * step, unit));
    into.append(svg("line", { class: "axis", x1: x, y1: y, x2: x, y2: y + 0.35 * letter }));
    const words = (n * step).toString();
    const wide = textWidth(words, sheet.font) / 2;
    if (x - wide < titleWidth || x + wide > width - 2) continue;
    into.append(svg("text", { x, y: y + 1.4 * letter, "text-anchor": "middle", class: "quiet" }, words));
  }
  into.append(svg("text", { x: 0.4 * letter, y: y + 1.4 * letter, class: "quiet" }, title));
}

/** Upright line at a chainage over the whole height with its words at its foot, above axis and dimensions. */
function seatLine(into: SVGElement, sheet: Sheet, chainage: number, words: string, side: -1 | 1): void {
  const { letter, margins, height } = sheet;
  const { x } = sheet.at([chainage, 0, 0]);
  if (x < 0 || x > sheet.width) return;
  into.append(svg("line", { class: "seat-line", x1: x, y1: 0, x2: x, y2: height - 1.75 * letter }));
  const wide = textWidth(words, sheet.font) + letter;
  const fits = side < 0 ? x > wide : sheet.width - x > wide;
  const way = fits ? side : -side;
  const anchor = way < 0 ? "end" : "start";
  into.append(
    svg(
      "text",
      {
        x: x + way * 0.5 * letter,
        y: height - margins.bottom + 1.3 * letter,
        "text-anchor": anchor,
        class: "halo quiet",
      },
      words,
    ),
  );
}

function drawSeatLines(into: SVGElement, sheet: Sheet): void {
  const { plan, site } = sheet.model;
  const level = (seat: number | null) =>
    seat === null ? "" : `, seat ${print(seat, "length", sheet.units)}`;
  seatLine(into, sheet, plan.site.nearBearing_m, `near bearings${level(site.lines.nearSeat)}`, -1);
  seatLine(into, sheet, plan.site.farBearing_m, `far bearings${level(site.lines.farSeat)}`, 1);
}

/** Span below, the set and its way to go above it. */
function drawRows(into: SVGElement, sheet: Sheet): void {
  const { model, units, letter, height } = sheet;
  const { nearBearing_m: near, farBearing_m: far } = model.plan.site;
  const x = (chainage: number) => sheet.at([chainage, 0, 0]).x;
  const low = height - 2.35 * letter;
  dimension(into, sheet, x(near), x(far), low, `span ${print(far - near, "length", units)}`);
  if (model.world === null) return;
  const [tail, nose] = [model.world.tail[0], model.world.nose[0]];
  const high = low - 1.6 * letter;
  dimension(into, sheet, x(tail), x(nose), high, `set ${print(nose - tail, "length", units)}`);
  if (far - nose > 0.5) {
    dimension(into, sheet, x(nose), x(far), high, `${print(far - nose, "length", units)} to far bearings`);
  }
}

/** Radius of a crane: from its centre of rotation to its boom tip, along the ground, m. */
function radiusOf(
  sheet: Sheet,
  id: string,
): { centre: Vec3; tip: Vec3; radius: number; tail: number; hooked: boolean } | null {
  const crane = sheet.model.plan.cranes.find((one) => one.id === id);
  const place = sheet.model.world?.cranes[id];
  if (crane === undefined || place === undefined) return null;
  const [fx, fy] = [place.tip[0] - place.foot[0], place.tip[1] - place.foot[1]];
  const reach = Math.hypot(fx, fy);
  const back = reach > 0 ? crane.boomFootForward_m / reach : 0;
  const centre: Vec3 = [place.foot[0] - back * fx, place.foot[1] - back * fy, place.foot[2]];
  return {
    centre,
    tip: place.tip,
    radius: reach + crane.boomFootForward_m,
    tail: crane.tailRadius_m,
    hooked: place.hook !== null,
  };
}

/** In a plan: the radius as a line and a ring, and the ring that the tail sweeps. */
function drawRadii(into: SVGElement, sheet: Sheet): void {
  for (const { id } of sheet.model.plan.cranes) {
    const r = radiusOf(sheet, id);
    if (r === null || !r.hooked) continue;
    const [c, t] = [sheet.at(r.centre), sheet.at(r.tip)];
    for (const [ring, of] of [
      [r.radius, "ring"],
      [r.tail, "ring tail"],
    ] as const) {
      into.append(svg("circle", { class: of, cx: c.x, cy: c.y, r: ring * sheet.scale }));
    }
    into.append(svg("line", { class: "dimension", x1: c.x, y1: c.y, x2: t.x, y2: t.y }));
  }
}

interface Note {
  words: string;
  at: Vec3;
  way: "up" | "down";
}

function notesOf(sheet: Sheet): Note[] {
  const { model, units } = sheet;
  const { plan, site } = model;
  const notes: Note[] = [];
  for (const crane of plan.cranes) {
    const r = radiusOf(sheet, crane.id);
    if (r === null) continue;
    const at: Vec3 = sheet.view === "plan" ? r.centre : [r.centre[0], r.centre[1], r.centre[2] + 3.2];
    const stands = r.hooked ? `radius ${print(r.radius, "length", units)}` : "not hooked up";
    notes.push({ words: `${crane.kind} crane, ${stands}`, at, way: "up" });
  }
  if (sheet.view === "free" || sheet.view === "end") return notes;
  for (const line of plan.site.stopLines) {
    const z = site.lines.nearSeat ?? site.lines.below;
    const y = sheet.view === "plan" ? -site.lines.pathHalf : 0;
    notes.push({ words: `stop line ${line.name}`, at: [line.chainage_m, y, z - 0.6], way: "down" });
  }
  const middle = (plan.site.nearFace_m + plan.site.farFace_m) / 2;
  const level = site.lines.belowGiven ? print(site.lines.below, "length", units) : "level not given";
  const y = sheet.view === "plan" ? -site.lines.right / 2 : 0;
  notes.push({
    words: `${plan.site.below.kind} below, ${level}`,
    at: [middle, y, site.lines.below],
    way: "down",
  });
  return notes;
}

/** Notes stand clear of everything that was placed before them. */
function drawNotes(into: SVGElement, sheet: Sheet, room: Rect, taken: readonly Rect[]): void {
  const notes = notesOf(sheet).flatMap((note) => {
    const p = sheet.at(note.at);
    const inside = p.x > 0 && p.x < sheet.width && p.y > 0 && p.y < sheet.height && !p.behind;
    return inside ? [{ ...note, p }] : [];
  });
  const tags = notes.map(
    ({ words, p, way }): Tag => ({
      ...{ id: words, x: p.x, y: p.y, way },
      width: textWidth(words, sheet.font) + 4,
      height: 1.3 * sheet.letter,
    }),
  );
  const placed = placeLabels(tags, room, taken);
  for (const { words, p } of notes) {
    const rect = placed.get(words);
    if (rect === undefined) continue;
    const base = rect.top + 1.05 * sheet.letter;
    if (Math.abs(rect.top + rect.height / 2 - p.y) > 2.5 * sheet.letter) {
      const edge = rect.top > p.y ? rect.top : rect.top + rect.height;
      into.append(
        svg("line", { class: "leader", x1: p.x, y1: p.y, x2: rect.left + rect.width / 2, y2: edge }),
      );
    }
    into.append(
      svg(
        "text",
        { x: rect.left + rect.width / 2, y: base, "text-anchor": "middle", class: "halo quiet" },
        words,
      ),
    );
  }
}

/** Words at the top right: that the shape is no true one, or that there is no pose. */
function stateWords({ model, buckles, exaggeration }: Sheet): string {
  if (model.world === null) return "no solved pose: only the site is drawn";
  if (buckles !== null)
    return `buckled shape at ${buckles.toFixed(2)} times the loads, its size means nothing`;
  return exaggeration === 1 ? "" : `bending drawn × ${exaggeration}`;
}

function drawState(into: SVGElement, sheet: Sheet): void {
  const words = stateWords(sheet);
  if (words === "") return;
  into.append(
    svg(
      "text",
      {
        x: sheet.width - 0.6 * sheet.letter,
        y: 1.5 * sheet.letter,
        "text-anchor": "end",
        class: "halo value",
      },
      words,
    ),
  );
}

/** Ground of paper under axis and dimensions, so that they stay readable when the model is zoomed. */
function drawBand(into: SVGElement, sheet: Sheet): void {
  const rows = isElevation(sheet.view) ? 5.2 : 1.75;
  const y = sheet.height - rows * sheet.letter;
  into.append(svg("rect", { class: "band", x: 0, y, width: sheet.width, height: sheet.height - y }));
}

/** Lines that lie below arrows and labels. */
export function drawGrid(into: SVGElement, sheet: Sheet): void {
  if (sheet.view !== "free") drawBand(into, sheet);
  if (isElevation(sheet.view) || sheet.view === "plan") drawSeatLines(into, sheet);
  if (sheet.view === "plan") drawRadii(into, sheet);
  if (isElevation(sheet.view)) drawRows(into, sheet);
  if (sheet.view !== "free") drawAxis(into, sheet);
}

/** What is placed after the labels of the reactions. */
export function drawRest(into: SVGElement, sheet: Sheet, room: Rect, taken: readonly Rect[]): void {
  drawNotes(into, sheet, room, taken);
  drawState(into, sheet);
}
