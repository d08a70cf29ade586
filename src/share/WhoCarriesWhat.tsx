// Who carries what: the picture with its strips, a cursor to drag, numbers under the pointer, and its keys.
import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from "react";
import {
  type App,
  type Axis,
  type Cursor,
  type Finding,
  fromX,
  type Place,
  type Plan,
  type Pose,
  type SetResult,
  type SpreadResult,
  type System,
  toX,
} from "../app/index.ts";
import { Bands } from "./Bands.tsx";
import { gutter, lanes, leastPicture, ownHeight, stripHeight, stripsThatFit } from "./frame.ts";
import { inOrderOfUse, stripsOf } from "./governing.ts";
import { Hover, type Pointed } from "./Hover.tsx";
import { OwnLane } from "./OwnLane.tsx";
import { Strips } from "./Strips.tsx";
import { cursorWords } from "./sentences.ts";
import { Told } from "./Told.tsx";
import { noReturnsOf } from "./unbacked.ts";
import { useSize } from "./useSize.ts";

interface Props {
  app: App;
  plan: Plan;
  set: SetResult;
  axis: Axis;
  findings: readonly Finding[];
  /** Low and high over what is uncertain; null until they are worked out. */
  spread: SpreadResult | null;
  cursor: Cursor;
  pose: Pose | null;
  /** Name of what is looked at; a support among the bands then stands alone below them too. */
  selected: string;
  /** Every strip, in all the room there is; else those most used. */
  allStrips: boolean;
  units: System;
}

/** The keys of the cursor, the same wherever it can be moved. */
const cursorKeys: ReadonlyMap<string, (app: App) => void> = new Map([
  ["ArrowRight", (app: App) => app.eventBy(1)],
  ["ArrowUp", (app: App) => app.eventBy(1)],
  ["ArrowLeft", (app: App) => app.eventBy(-1)],
  ["ArrowDown", (app: App) => app.eventBy(-1)],
  ["PageDown", (app: App) => app.stepBy(1)],
  ["PageUp", (app: App) => app.stepBy(-1)],
  ["Home", (app: App) => app.toStart()],
  ["End", (app: App) => app.toEnd()],
]);

/** Does what a key of the cursor stands for; false for a key that is none of them. */
export function cursorKey(app: App, key: string): boolean {
  const act = cursorKeys.get(key);
  act?.(app);
  return act !== undefined;
}

/** Heights of the lane of the chosen support and of one strip, and the strips that are drawn. */
function layoutOf(height: number, count: number, chosen: boolean, all: boolean) {
  const own = chosen ? ownHeight(height) : 0;
  const drawn = all ? count : stripsThatFit(height, count, chosen);
  const room = Math.floor((0.68 * height - own) / Math.max(1, drawn));
  const strip = all ? Math.min(stripHeight.most, Math.max(stripHeight.least, room)) : stripHeight.few;
  const below = own + Math.max(drawn, 1) * strip + 3;
  // In all the room there is, the bands keep what they need.
  return { own, drawn, strip, below: Math.min(below, Math.floor(height - (all ? leastPicture.chosen : 0))) };
}

/** The picture of one solved set. */
export function WhoCarriesWhat(props: Props) {
  const { app, plan, set, axis, findings, spread, cursor, pose, selected, allStrips, units } = props;
  const whole = useRef<HTMLElement>(null);
  const box = useRef<HTMLDivElement>(null);
  const total = useSize(whole);
  const { width, height } = useSize(box);
  const [hover, setHover] = useState<{ x: number; place: Place; pose: Pose | null; pointed: Pointed } | null>(
    null,
  );
  const dragging = useRef(false);
  const inner = Math.max(10, width - gutter.left - gutter.right);
  const cursorX = Math.round((gutter.left + toX(axis, cursor) * inner) * 10) / 10;

  const chosen = set.supports.some(({ band, name }) => band && name === selected) ? selected : "";
  const ordered = useMemo(() => inOrderOfUse(stripsOf(set), selected), [set, selected]);
  const layout = layoutOf(total.height, ordered.length, chosen !== "", allStrips);
  const strips = useMemo(() => ordered.slice(0, layout.drawn), [ordered, layout.drawn]);

  const xAt = (event: PointerEvent<HTMLElement>) =>
    event.clientX - event.currentTarget.getBoundingClientRect().left;
  const partAt = (x: number) => Math.min(1, Math.max(0, (x - gutter.left) / inner));
  const bandsEnd = height - lanes.unbacked - lanes.marks - lanes.steps;

  /** What lies under the pointer; null where nothing tells anything. */
  const pointedAt = (event: PointerEvent<HTMLElement>): Pointed | null => {
    if (event.currentTarget === box.current) {
      const y = event.clientY - event.currentTarget.getBoundingClientRect().top;
      return y > bandsEnd && (y < bandsEnd + lanes.unbacked || y > height - lanes.steps)
        ? { on: "lanes" }
        : { on: "bands" };
    }
    const subject = (event.target as Element).closest("[data-strip]")?.getAttribute("data-strip");
    const strip = strips.find((one) => one.subject === subject);
    return strip === undefined ? null : { on: "strip", strip };
  };

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    const mark = (event.target as Element).closest("[data-finding]");
    const finding = findings.find((one) => one.id === mark?.getAttribute("data-finding"));
    if (finding !== undefined) {
      app.chooseFinding(finding);
      return;
    }
    app.pause();
    const x = xAt(event);
    const place = fromX(axis, partAt(x));
    const pointed = pointedAt(event);
    if (pointed?.on === "strip" && x < gutter.left) {
      app.select(pointed.strip.subject === selected ? "" : pointed.strip.subject);
      return;
    }
    if (pointed?.on === "lanes") {
      const y = event.clientY - event.currentTarget.getBoundingClientRect().top;
      const inRow = y < bandsEnd + lanes.unbacked;
      app.setCursor(inRow ? place : { step: place.step, progress: 0 });
      if (inRow || noReturnsOf(set).some(({ step }) => step === place.step)) app.setView({ panel: "step" });
      return;
    }
    app.setCursor(place);
    dragging.current = true;
    event.currentTarget.setPointerCapture(event.pointerId);
    setHover(null);
  };
  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const x = xAt(event);
    if (dragging.current) {
      app.setX(partAt(x));
      return;
    }
    const pointed = pointedAt(event);
    const inside = x >= gutter.left && x <= gutter.left + inner;
    if (pointed === null || !(inside || pointed.on === "strip")) {
      setHover(null);
      return;
    }
    const place = inside ? fromX(axis, partAt(x)) : cursor;
    setHover({ x, place, pointed, pose: pointed.on === "bands" ? app.poseOf(place) : null });
  };
  const endDrag = () => {
    dragging.current = false;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey || !cursorKey(app, event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  const pointer = {
    onPointerDown,
    onPointerMove,
    onPointerUp: endDrag,
    onPointerCancel: endDrag,
    onPointerLeave: () => setHover(null),
  };
  const panel = (above: boolean) =>
    hover !== null &&
    (hover.pointed.on === "strip") === above && (
      <Hover
        {...hover}
        plan={plan}
        set={set}
        spread={spread}
        units={units}
        toLeft={hover.x > width * 0.55}
        above={above}
      />
    );
  const rest = useRef<HTMLElement>(null);
  const scrolls = allStrips && layout.own + strips.length * layout.strip + 3 > layout.below;

  // What does not fit is gone through by keys at once.
  useEffect(() => {
    if (scrolls) rest.current?.focus();
  }, [scrolls]);

  return (
    <section
      ref={whole}
      className="share"
      aria-label="Who carries what"
      style={{ gridTemplateRows: `minmax(0, 1fr) ${layout.below}px` }}
    >
      <div
        ref={box}
        className="share-picture"
        role="slider"
        tabIndex={0}
        aria-label="Place in the operation"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(toX(axis, cursor) * 100)}
        aria-valuetext={cursorWords(set, cursor, pose, units)}
        onKeyDown={onKeyDown}
        {...pointer}
      >
        {width > 0 && height > 0 && (
          <>
            <Bands
              set={set}
              axis={axis}
              findings={findings}
              chosen={chosen}
              highKnown={spread !== null}
              units={units}
              width={width}
              height={height}
            />
            <svg className="cursor" width={width} height={height} aria-hidden="true">
              <g transform={`translate(${cursorX} 0)`}>
                <line y1="0" y2={height} />
                <path d="M-6 0H6V6L0 12L-6 6Z" />
              </g>
              {hover !== null && <line className="hover-line" x1={hover.x} x2={hover.x} y1="0" y2={height} />}
            </svg>
            {panel(false)}
          </>
        )}
      </div>
      <button
        type="button"
        className="strips-choice"
        style={{ bottom: layout.below + 1 }}
        aria-pressed={allStrips}
        aria-keyshortcuts="u"
        onClick={() => app.setView({ allStrips: !allStrips })}
      >
        {allStrips ? "fewer strips" : `use %: ${strips.length} of ${ordered.length}`} <kbd>U</kbd>
      </button>
      <section
        ref={rest}
        className={scrolls ? "share-strips scrolls" : "share-strips"}
        tabIndex={scrolls ? 0 : undefined}
        aria-label="Use of limits"
        {...pointer}
      >
        {width > 0 && (
          <>
            {chosen !== "" && (
              <OwnLane
                set={set}
                axis={axis}
                spread={spread}
                name={chosen}
                units={units}
                width={width}
                inner={inner}
                height={layout.own}
              />
            )}
            <Strips
              set={set}
              axis={axis}
              strips={strips}
              findings={findings}
              spread={spread}
              chosen={selected}
              width={width}
              inner={inner}
              height={layout.strip}
            />
            <svg className="cursor" width={width} height="100%" aria-hidden="true">
              <line x1={cursorX} x2={cursorX} y1="0" y2="100%" />
            </svg>
            {panel(true)}
          </>
        )}
      </section>
      <Told plan={plan} set={set} spread={spread} units={units} chosen={chosen} strips={ordered} />
    </section>
  );
}
