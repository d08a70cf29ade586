// The measures of the picture, in px: gutters that the timeline above it shares, and the lanes below the bands.

/** Room at the left for names and loads, at the right for percentages. */
export const gutter = { left: 112, right: 64 };

/** Heights of what stands around the bands. */
export const lanes = { above: 10, marks: 20, steps: 32 };

/** Height of one strip. */
export const stripHeight = 22;

/** Width of a short text at the size of the picture's labels; a guess that errs on the wide side. */
export const textWidth = (text: string): number => text.length * 6.4 + 4;

/** A text cut to a width in px, with its end marked; '' when not even a few letters fit. */
export function cut(text: string, width: number): string {
  if (textWidth(text) <= width) return text;
  const letters = Math.floor((width - 10) / 6.4);
  return letters < 4 ? "" : `${text.slice(0, letters).trimEnd()}…`;
}
