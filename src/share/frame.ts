// The measures of the picture, in px: gutters that the timeline above it shares, and the lanes below the bands.

/** Room at the left for names and loads, at the right for percentages. */
export const gutter = { left: 112, right: 64 };

/** Heights of what stands around the bands: the row of unbacked parts lies directly under them. */
export const lanes = { above: 10, unbacked: 16, marks: 20, steps: 30 };

/** Height of one strip where only the most used ones stand, and the least and greatest where all of them do. */
export const stripHeight = { few: 17, least: 17, most: 44 };

/** Height of the lane in which a chosen support stands alone with its low and high, in a picture this high. */
export const ownHeight = (height: number): number => Math.round(Math.min(120, Math.max(44, 0.17 * height)));

/** The bands with their lanes are never lower than this; with a chosen support that stands alone below them too. */
export const leastPicture = { alone: 172, chosen: 150 };

/** How many strips stand below the bands of a picture this high, among so many; `chosen` when one stands alone too. */
export function stripsThatFit(height: number, among: number, chosen: boolean): number {
  const [own, least] = chosen ? [ownHeight(height), leastPicture.chosen] : [0, leastPicture.alone];
  const most = Math.floor((height - least - own) / stripHeight.few);
  const fair = Math.floor((0.36 * height) / stripHeight.few) - (chosen ? 1 : 0);
  return Math.max(1, Math.min(most, fair, among));
}

/** Width of a short text at the size of the picture's labels; a guess that errs on the wide side. */
export const textWidth = (text: string): number => text.length * 6.4 + 4;

/** A text cut to a width in px, with its end marked; '' when not even a few letters fit. */
export function cut(text: string, width: number): string {
  if (textWidth(text) <= width) return text;
  const letters = Math.floor((width - 10) / 6.4);
  return letters < 4 ? "" : `${text.slice(0, letters).trimEnd()}…`;
}
