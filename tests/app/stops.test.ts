// Stops of the cursor: starts of steps, events, the end; and going from one to the next.
import { expect, test } from "vitest";
import { eventWords, stepBeside, stopBeside, stopsOf } from "../../src/app/index.ts";
import { madeUpSet } from "./madeUp.ts";

const stops = stopsOf(madeUpSet());

test("starts, events and the end, in order; 'start' and 'end' are no events", () => {
  expect(stops.map(({ step, progress }) => [step, progress])).toEqual([
    [0, 0],
    [0, 0.25],
    [1, 0],
    [1, 0.5],
    [2, 0],
    [2, 1],
  ]);
  expect(stops[3].words).toBe("hook far crane begins to carry; limit passed");
  expect(eventWords("start; bunk comes free; end")).toBe("bunk comes free");
});

test("from any place to the stop beside it", () => {
  expect(stopBeside(stops, { step: 0, progress: 0 }, 1)).toEqual({ step: 0, progress: 0.25 });
  expect(stopBeside(stops, { step: 0, progress: 0.3 }, 1)).toEqual({ step: 1, progress: 0 });
  expect(stopBeside(stops, { step: 0, progress: 0.3 }, -1)).toEqual({ step: 0, progress: 0.25 });
  expect(stopBeside(stops, { step: 1, progress: 0.5 }, -1)).toEqual({ step: 1, progress: 0 });
});

test("stays at both ends", () => {
  expect(stopBeside(stops, { step: 0, progress: 0 }, -1)).toEqual({ step: 0, progress: 0 });
  expect(stopBeside(stops, { step: 2, progress: 1 }, 1)).toEqual({ step: 2, progress: 1 });
});

test("by step: back to the start of this one first, then to the one before; on beyond the last to its end", () => {
  expect(stepBeside(3, { step: 1, progress: 0.4 }, -1)).toEqual({ step: 1, progress: 0 });
  expect(stepBeside(3, { step: 1, progress: 0 }, -1)).toEqual({ step: 0, progress: 0 });
  expect(stepBeside(3, { step: 0, progress: 0 }, -1)).toEqual({ step: 0, progress: 0 });
  expect(stepBeside(3, { step: 1, progress: 0.4 }, 1)).toEqual({ step: 2, progress: 0 });
  expect(stepBeside(3, { step: 2, progress: 0.4 }, 1)).toEqual({ step: 2, progress: 1 });
});
