// Work done in turns: it rests after each piece, so that its caller can do other things between, or give it up.

/** How much of a piece of work is done. */
export interface Done {
  done: number;
  of: number;
}

/** Work that rests with how far it is, and returns what it worked out. */
export type InTurn<T> = Generator<Done, T>;

/** Does the work to its end; null when `told`, asked after each piece, returned false. */
export function toTheEnd<T>(work: InTurn<T>, told: (done: number, of: number) => boolean): T | null {
  for (let next = work.next(); ; next = work.next()) {
    if (next.done) return next.value;
    if (!told(next.value.done, next.value.of)) return null;
  }
}
