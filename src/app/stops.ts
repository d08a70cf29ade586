// Where the cursor stops when it goes by step or by event: starts of steps, events within them, the end.
import type { Place } from "./axis.ts";
import type { SetResult } from "./types.ts";

/** A place where the cursor stops, and the words of what happens there ('' at the start of a step). */
export interface Stop extends Place {
  words: string;
}

type Run = Pick<SetResult, "steps" | "progress" | "events">;

const near = 1e-9;

/** What happens at a stored pose besides that its step starts or ends there; '' for nothing. */
export function eventWords(events: string): string {
  const words = events.split("; ").filter((word) => word !== "start" && word !== "end");
  return words.join("; ");
}

/** All stops of a set in order: the start of each step, every event, and the end of the last step. */
export function stopsOf(run: Run): Stop[] {
  const stops: Stop[] = [];
  const add = (stop: Stop) => {
    const last = stops.at(-1);
    if (last !== undefined && last.step === stop.step && stop.progress - last.progress <= near) {
      if (stop.words !== "" && !last.words.includes(stop.words))
        last.words = last.words === "" ? stop.words : `${last.words}; ${stop.words}`;
      return;
    }
    stops.push(stop);
  };
  for (const { index, first, count } of run.steps) {
    add({ step: index, progress: 0, words: "" });
    for (let i = first; i < first + count; i++) {
      const words = eventWords(run.events[i]);
      if (words !== "") add({ step: index, progress: run.progress[i], words });
    }
  }
  if (run.steps.length > 0) add({ step: run.steps.length - 1, progress: 1, words: "" });
  return stops;
}

const compare = (a: Place, b: Place): number => a.step - b.step || a.progress - b.progress;
const same = (a: Place, b: Place): boolean => a.step === b.step && Math.abs(a.progress - b.progress) <= near;

/** The stop after (`by` 1) or before (`by` -1) a place; the last or first one when there is no further. */
export function stopBeside(stops: readonly Stop[], from: Place, by: 1 | -1): Place {
  const beyond = stops.filter((stop) => !same(stop, from) && compare(stop, from) * by > 0);
  const stop = (by > 0 ? beyond[0] : beyond.at(-1)) ?? (by > 0 ? stops.at(-1) : stops[0]) ?? from;
  return { step: stop.step, progress: stop.progress };
}

/** The start of the next step (`by` 1; the end, in the last one), or of this step, or of the one before (`by` -1). */
export function stepBeside(count: number, from: Place, by: 1 | -1): Place {
  if (by > 0) {
    return from.step + 1 < count ? { step: from.step + 1, progress: 0 } : { step: from.step, progress: 1 };
  }
  return { step: from.progress > near ? from.step : Math.max(0, from.step - 1), progress: 0 };
}
