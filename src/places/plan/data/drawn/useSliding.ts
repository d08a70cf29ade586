// Moving something along a drawn set: tried out while it goes on, one entry of the history when it ends.
import { useEffect, useMemo, useRef, useState } from "react";
import type { PlanSet } from "../../../../plan/index.ts";
import {
  type Held,
  type Mark,
  marksFor,
  movedTo,
  movedWords,
  nudged,
  reachAt,
  snapped,
} from "../../../../scene/index.ts";
import type { System } from "../../../../units/index.ts";
import { useApp } from "../../../appContext.ts";
import { trialsOf } from "../../moving/trials.ts";
import { type Slider, within } from "./along.ts";

/** A move under way. `mark` took it in, where one did. */
export interface Sliding {
  readonly slider: Slider;
  readonly to: number;
  readonly mark: Mark | null;
}

/** The move under way, and what begins, goes on with and ends one. */
export function useSliding(set: PlanSet, system: System) {
  const app = useApp();
  const trials = useMemo(() => trialsOf(app), [app]);
  const [sliding, setSliding] = useState<Sliding | null>(null);
  const held = useRef<Sliding | null>(null);
  const go = (next: Sliding) => {
    held.current = next;
    setSliding(next);
    trials.want((draft) => movedTo(draft, next.slider.thing, { ...next.slider.standing, along: next.to }));
  };
  const over = () => {
    trials.drop();
    held.current = null;
    setSliding(null);
  };
  // Whoever leaves amid a move has not let go of the thing.
  useEffect(
    () => () => {
      if (held.current === null) return;
      trials.drop();
      app.tryOut(null);
    },
    [app, trials],
  );
  const commit = (slider: Slider, along: number) => {
    over();
    const to = { ...slider.standing, along };
    // Led back to where it began, it is no edit: the draft becomes again what it was.
    app.edit(movedWords(slider.thing, slider.standing, to, system), (draft) =>
      movedTo(draft, slider.thing, to),
    );
  };
  return {
    sliding,
    /** Leads it to a number that a pointer asks for; marks take it in, else the grid. */
    lead: (slider: Slider, value: number, pixelsPerMetre: number, keys: Held) => {
      const got = snapped(value, system, keys, marksFor(set, slider.thing), reachAt(pixelsPerMetre));
      const to = within(slider, got.value);
      go({ slider, to, mark: to === got.value ? got.mark : null });
    },
    /** One step of the grid forward or back. */
    nudge: (slider: Slider, by: 1 | -1, keys: Held) => {
      const now =
        held.current?.slider.thing.key === slider.thing.key
          ? held.current
          : { slider, to: slider.standing.along };
      const to = within(now.slider, nudged(now.to, by, system, keys));
      const mark = marksFor(set, slider.thing).find(({ at }) => Math.abs(at - to) < 1e-6) ?? null;
      go({ slider: now.slider, to, mark });
    },
    end: () => {
      const now = held.current;
      if (now !== null) commit(now.slider, now.to);
    },
    takeBack: () => {
      if (held.current === null) return false;
      over();
      app.tryOut(null);
      return true;
    },
    commit,
  };
}
