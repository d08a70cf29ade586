// Handles over the scene: a thing is chosen first, by a click or Tab, and then dragged, nudged by arrow keys or typed.
import { useRef, useState, useSyncExternalStore } from "react";
import {
  type Handle,
  handlesOf,
  leaderEnd,
  movedTo,
  nearestTo,
  outlinesOf,
  placeLabels,
  type Sight,
  type Standing,
  standingWords,
} from "../../../scene/index.ts";
import { useIt } from "../../appContext.ts";
import { PlaceBox } from "./PlaceBox.tsx";
import { handleShapes } from "./shapes.tsx";
import type { Sights } from "./sights.ts";
import { useMove } from "./useMove.ts";
import "./moving.css";

/** Size of a handle, px, and how far from its middle a press still means it. */
const size = 24;
const reach = 18;
/** Farther than this (px) from where it was pressed, a thing is dragged. */
const still = 3;
/** Width of the box with the numbers, and what it keeps from its thing, px; its height is guessed for its side alone. */
const box = { width: 250, height: 220, away: 26 };

interface Seen extends Handle {
  x: number;
  y: number;
}

/** The handles that lie on the canvas. */
function seenFrom(sight: Sight, handles: readonly Handle[]): Seen[] {
  return handles.flatMap((handle): Seen[] => {
    const { x, y: level, behind } = sight.at(handle.at);
    // Seen from the side a deck is thinner than a handle: its own hangs below those of its bunks.
    const y = level + (handle.thing.is === "transporter" && sight.view !== "plan" ? size : 0);
    return behind || x < 0 || y < 0 || x > sight.width || y > sight.height ? [] : [{ ...handle, x, y }];
  });
}

/** Names beside the handles, where there is room for them. */
function namesOf(named: readonly Seen[], { width, height }: Sight, seen: readonly Seen[]) {
  const tags = named.map(({ thing, x, y }) => ({
    ...{ id: thing.key, x, y: y - size / 2, way: "up" as const },
    ...{ width: 6.3 * thing.name.length + 10, height: 17 },
  }));
  const blocked = seen.map(({ x, y }) => ({
    ...{ left: x - size / 2, top: y - size / 2 },
    ...{ width: size, height: size },
  }));
  return placeLabels(tags, { left: 4, top: 4, width: width - 8, height: height - 8 }, blocked);
}

/** Where the box stands: beside its thing, on the side with more room, wholly on the scene. */
function boxAt({ x, y }: Seen, { width, height }: Sight) {
  const right = x < width / 2;
  const left = right ? x + box.away : x - box.away - box.width;
  return {
    left: Math.max(4, Math.min(width - box.width - 4, left)),
    top: Math.max(44, Math.min(height - box.height - 4, y - box.height / 2)),
    width: box.width,
  };
}

const arrows: Readonly<Record<string, readonly ["along" | "across", 1 | -1]>> = {
  ArrowRight: ["along", 1],
  ArrowLeft: ["along", -1],
  ArrowUp: ["across", 1],
  ArrowDown: ["across", -1],
};

/** Dashed outlines of what the draft has elsewhere than it is drawn, and leaders from names to their handles. */
function Outlines(props: { sight: Sight; seen: readonly Seen[]; names: ReturnType<typeof namesOf> }) {
  const { sight, seen, names } = props;
  const lines = seen.flatMap((handle) => outlinesOf(handle, sight, sight.view));
  return (
    <svg className="draft-outlines" aria-hidden="true">
      {seen.map(({ thing, x, y }) => {
        const rect = names.get(thing.key);
        const end = rect === undefined ? null : leaderEnd(x, y - size / 2, rect);
        return end && <path key={thing.key} d={`M${x} ${y}L${end[0]} ${end[1]}`} />;
      })}
      {lines.map((line, i) => (
        <polyline
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no names, and their order stands for them
          key={i}
          points={line
            .map((p) => sight.at(p))
            .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
            .join(" ")}
        />
      ))}
    </svg>
  );
}

/** The layer over the scene. Where nothing stands it lets the pointer through to the scene. */
export function Moving({ sights }: { sights: Sights }) {
  const sight = useSyncExternalStore(sights.subscribe, sights.get);
  const draft = useIt((state) => state.document?.draft ?? null);
  const units = useIt((state) => state.view.units);
  const [chosen, setChosen] = useState("");
  const pressed = useRef<{ x: number; y: number; from: Standing; pulled: boolean } | null>(null);
  const layer = useRef<HTMLDivElement>(null);
  const moves = useMove(units);
  if (sight === null || draft === null) return null;

  const { move } = moves;
  const shown = move === null ? draft : movedTo(draft, move.thing, move.to);
  const handles = handlesOf(sight, shown);
  const seen = seenFrom(sight, handles);
  // The chosen thing has its name on its box.
  const names = namesOf(
    seen.filter(({ thing }) => thing.key !== chosen),
    sight,
    seen,
  );
  const at = seen.find(({ thing }) => thing.key === chosen);
  const elementOf = (key: string) =>
    layer.current?.querySelector<HTMLElement>(`[data-handle="${CSS.escape(key)}"]`);
  const field = () => layer.current?.querySelector<HTMLInputElement>(".place-box input");
  const choose = (key: string) => {
    if (key === chosen) return;
    if (move !== null) moves.end();
    setChosen(key);
  };

  const press = (event: React.PointerEvent) => {
    if (event.button !== 0) return;
    const corner = layer.current?.getBoundingClientRect();
    const meant =
      seen[nearestTo(seen, event.clientX - (corner?.left ?? 0), event.clientY - (corner?.top ?? 0), reach)];
    if (meant === undefined) return;
    event.preventDefault();
    const was = chosen;
    elementOf(meant.thing.key)?.focus();
    choose(meant.thing.key);
    if (was !== meant.thing.key || meant.fixed !== "") return;
    event.currentTarget.setPointerCapture(event.pointerId);
    pressed.current = { x: event.clientX, y: event.clientY, from: meant.standing, pulled: false };
  };
  const pull = (event: React.PointerEvent) => {
    const from = pressed.current;
    if (from === null || at === undefined) return;
    const by = { right: event.clientX - from.x, down: event.clientY - from.y };
    if (!from.pulled && Math.hypot(by.right, by.down) <= still) return;
    from.pulled = true;
    // The committed place counts, not the one that was tried out last.
    moves.pull(at, from.from, sight, by, event);
  };
  const letGo = (keep: boolean) => {
    const from = pressed.current;
    pressed.current = null;
    if (from?.pulled !== true) return;
    if (keep) moves.end();
    else moves.takeBack();
  };

  const key = (event: React.KeyboardEvent, handle: Seen) => {
    if (event.ctrlKey || event.metaKey) return;
    const arrow = arrows[event.key];
    if (arrow !== undefined) {
      event.preventDefault();
      const [which, by] = arrow;
      const can = handle.fixed === "" && (which === "along" || sight.view === "plan");
      if (can && pressed.current === null) moves.nudge(handle, which, by, event);
    } else if (event.key === "Escape") {
      event.preventDefault();
      if (move === null && pressed.current === null) setChosen("");
      else {
        pressed.current = null;
        moves.takeBack();
      }
    } else if (event.key === "Enter" || /^[\d.,+-]$/.test(event.key)) {
      // What is typed goes into the field, and takes the place of a drag under way.
      if (event.key === "Enter") event.preventDefault();
      if (move !== null) moves.takeBack();
      pressed.current = null;
      field()?.focus();
      field()?.select();
    }
  };

  return (
    <div ref={layer} className="moving" data-shifted={handles.some(({ shift }) => shift[0] || shift[1])}>
      <Outlines sight={sight} seen={seen} names={names} />
      {seen.map((handle) => {
        const { thing, x, y, standing, fixed } = handle;
        const isChosen = thing.key === chosen;
        return (
          <div
            key={thing.key}
            role="slider"
            tabIndex={0}
            data-handle={thing.key}
            className={`handle ${thing.is}${isChosen ? " chosen" : ""}${move?.thing.key === thing.key ? " dragged" : ""}`}
            style={{ left: x - size / 2, top: y - size / 2 }}
            aria-label={thing.name}
            aria-valuenow={standing.along}
            aria-valuetext={
              fixed === "" ? standingWords(thing, standing, units) : `cannot be moved here: ${fixed}`
            }
            aria-disabled={fixed !== ""}
            title={isChosen ? "Drag it, or press arrow keys, or type a number" : `Choose ${thing.name}`}
            onFocus={() => choose(thing.key)}
            onBlur={() => {
              if (pressed.current === null) moves.end();
            }}
            onPointerDown={press}
            onPointerMove={pull}
            onPointerUp={() => letGo(true)}
            onPointerCancel={() => letGo(false)}
            onKeyDown={(event) => key(event, handle)}
            onKeyUp={(event) => {
              if (arrows[event.key] !== undefined && pressed.current === null) moves.end();
            }}
          >
            <svg viewBox="0 0 24 24" aria-hidden="true">
              {handleShapes[thing.is]}
            </svg>
          </div>
        );
      })}
      {seen.map(({ thing }) => {
        const rect = names.get(thing.key);
        if (rect === undefined) return null;
        return (
          <span
            key={thing.key}
            className="handle-name"
            style={{ left: rect.left, top: rect.top, width: rect.width }}
            aria-hidden="true"
          >
            {thing.name}
          </span>
        );
      })}
      {at !== undefined && (
        <PlaceBox
          key={chosen}
          handle={at}
          move={move}
          units={units}
          style={boxAt(at, sight)}
          commit={(to) => moves.commit(at.thing, at.standing, to)}
          back={() => elementOf(chosen)?.focus()}
        />
      )}
      {at === undefined && (
        <p className="move-says" role="status">
          Choose a thing by a click or Tab; then drag it, press arrow keys, or type its place.
        </p>
      )}
    </div>
  );
}
