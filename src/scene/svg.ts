// Drawing into the overlay: elements of SVG with their attributes, and the width of a text.
const space = "http://www.w3.org/2000/svg";

type Attributes = Readonly<Record<string, string | number>>;

/** An element with its attributes and, for a text, its words. */
export function svg(name: string, attributes: Attributes = {}, words = ""): SVGElement {
  const made = document.createElementNS(space, name);
  for (const [key, value] of Object.entries(attributes)) {
    made.setAttribute(key, typeof value === "number" ? rounded(value) : value);
  }
  if (words !== "") made.textContent = words;
  return made;
}

/** A tenth of a pixel is as fine as it can be seen. */
export function rounded(px: number): string {
  return (Math.round(px * 10) / 10).toString();
}

let pen: CanvasRenderingContext2D | null | undefined;
const widths = new Map<string, number>();

/** Width of a text in a font (as in CSS), px; remembered. Before the page's fonts are in, call `forgetWidths` once they are. */
export function textWidth(words: string, font: string): number {
  const key = `${font}|${words.replace(/\d/g, "0")}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  if (pen === undefined) pen = document.createElement("canvas").getContext("2d");
  let width = 0.56 * words.length * (Number.parseFloat(/(\d+(\.\d+)?)px/.exec(font)?.[1] ?? "13") || 13);
  if (pen !== null) {
    pen.font = font;
    width = pen.measureText(words.replace(/\d/g, "0")).width;
  }
  if (widths.size > 2000) widths.clear();
  widths.set(key, width);
  return width;
}

/** Drops remembered widths, for when another font has come in. */
export function forgetWidths(): void {
  widths.clear();
}
