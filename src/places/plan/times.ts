// A time of day as it is said beside work: "12:03", with the day where it was not today.

const two = (value: number): string => String(value).padStart(2, "0");

/** A moment (ms since 1970) in the local time of this device, as seen from another moment. */
export function timeWords(at: number, now: number): string {
  const [then, today] = [new Date(at), new Date(now)];
  const clock = `${two(then.getHours())}:${two(then.getMinutes())}`;
  if (then.toDateString() === today.toDateString()) return clock;
  return `${then.getFullYear()}-${two(then.getMonth() + 1)}-${two(then.getDate())} ${clock}`;
}

/** "1 change", "12 changes". */
export const changesWords = (count: number): string => `${count} ${count === 1 ? "change" : "changes"}`;
