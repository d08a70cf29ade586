// Moving one thing at a time by pointer or arrow keys: tried out while it goes on, one entry of the history when it ends.
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import {
  axisMarks,
  type Handle,
  type Held,
  type Mark,
  type Movable,
  marksFor,
  movedTo,
  movedWords,
  nudged,
  pulled,
  reachAt,
  type Sight,
  type Standing,
  snapped,
} from "../../../scene/index.ts";
import type { System } from "../../../units/index.ts";
import { useApp } from "../../appContext.ts";
import { trialsOf } from "./trials.ts";

/** A move under way. */
export interface Move {
  thing: Movable;
  from: Standing;
  to: Standing;
  /** What took it in; "" for the grid. */
  at: string;
}

/** The nearer of two things that take a dragged thing in, in words. */
const takenBy = (marks: readonly (Mark | null)[]): string =>
  marks.flatMap((mark) => (mark === null ? [] : [mark.words])).join(", ");

/** Where a pull leads a thing, snapped as the held keys say. */
function led(
  { thing }: Handle,
  from: Standing,
  sight: Sight,
  pull: { right: number; down: number },
  units: System,
  held: Held,
): { to: Standing; at: string } {
  const free = pulled(from, sight.view, sight.scale, pull.right, pull.down);
  const reach = reachAt(sight.scale);
  const along = snapped(free.along, units, held, marksFor(sight.set, thing), reach);
  // What the pull did not move keeps its number to the last digit.
  const across =
    free.across === null || free.across === from.across
      ? { value: free.across, mark: null }
      : snapped(free.across, units, held, axisMarks, reach);
  const sameAlong = pull.right === 0;
  return {
    to: { along: sameAlong ? from.along : along.value, across: across.value },
    at: takenBy([sameAlong ? null : along.mark, across.mark]),
  };
}

/** The move under way, and what begins, goes on with and ends one. */
export function useMove(units: System) {
  const app = useApp();
  const trials = useMemo(() => trialsOf(app), [app]);
  const [move, setMove] = useState<Move | null>(null);
  const held = useRef<Move | null>(null);

  const go = useCallback(
    (next: Move) => {
      held.current = next;
      setMove(next);
      trials.want((draft) => movedTo(draft, next.thing, next.to));
    },
    [trials],
  );
  const over = useCallback(() => {
    trials.drop();
    held.current = null;
    setMove(null);
  }, [trials]);
  const takeBack = useCallback(() => {
    over();
    app.tryOut(null);
  }, [app, over]);
  const commit = useCallback(
    (thing: Movable, from: Standing, to: Standing) => {
      over();
      app.edit(movedWords(thing, from, to, units), (draft) => movedTo(draft, thing, to));
    },
    [app, over, units],
  );
  const end = useCallback(() => {
    const now = held.current;
    if (now !== null) commit(now.thing, now.from, now.to);
  }, [commit]);

  // Whoever leaves this way of working amid a move has not let go of the thing.
  useEffect(
    () => () => {
      if (held.current === null) return;
      trials.drop();
      app.tryOut(null);
    },
    [app, trials],
  );

  return {
    move,
    /** Goes on with a pull of so many px from where it began, at the place `from`. */
    pull: (handle: Handle, from: Standing, sight: Sight, by: { right: number; down: number }, keys: Held) =>
      go({ thing: handle.thing, from, ...led(handle, from, sight, by, units, keys) }),
    /** One step of the grid along or across. */
    nudge: ({ thing, standing }: Handle, which: "along" | "across", by: 1 | -1, keys: Held) => {
      const from = held.current?.from ?? standing;
      const now = held.current?.to ?? standing;
      const old = now[which];
      if (old === null) return;
      go({ thing, from, to: { ...now, [which]: nudged(old, by, units, keys) }, at: "" });
    },
    end,
    takeBack,
    commit,
  };
}
