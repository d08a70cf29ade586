// Who carries what: the picture with its strips, a cursor to drag, numbers under the pointer, and its keys.
import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import {
  type App,
  type Axis,
  type Cursor,
  type Finding,
  fromX,
  type Place,
  type Pose,
  type SetResult,
  type SpreadResult,
  type System,
  stepName,
  toX,
} from "../app/index.ts";
import { print } from "../units/index.ts";
import { Bands } from "./Bands.tsx";
import { gutter, lanes } from "./frame.ts";
import { Hover } from "./Hover.tsx";
import { Strips } from "./Strips.tsx";
import { bandsOf } from "./stack.ts";
import { useSize } from "./useSize.ts";

interface Props {
  app: App;
  set: SetResult;
  axis: Axis;
  findings: readonly Finding[];
  /** Low and high over what is uncertain; null until they are worked out. */
  spread: SpreadResult | null;
  cursor: Cursor;
  pose: Pose | null;
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

/** What the cursor's place says to somebody who cannot see the picture. */
function inWords({ set, cursor, pose, units }: Props): string {
  const step = set.steps[cursor.step];
  const where = `step ${cursor.step + 1} of ${set.steps.length}, ${stepName(step.step)}, ${Math.round(cursor.progress * 100)} %`;
  if (pose === null) return `${where}: no numbers`;
  const carried = bandsOf(set.supports)
    .filter(({ column }) => Math.abs(pose.shares[column]) > set.weight * 0.0005)
    .map(({ name, column }) => `${name} ${print(pose.shares[column], "load", units)}`);
  return `${where}: ${carried.join(", ")}`;
}

/** The picture of one solved set. */
export function WhoCarriesWhat(props: Props) {
  const { app, set, axis, findings, spread, cursor, units } = props;
  const box = useRef<HTMLDivElement>(null);
  const strips = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(box);
  const stripWidth = useSize(strips).width;
  const [hover, setHover] = useState<{ x: number; place: Place; pose: Pose | null } | null>(null);
  const dragging = useRef(false);
  const inner = Math.max(10, width - gutter.left - gutter.right);
  const cursorX = Math.round((gutter.left + toX(axis, cursor) * inner) * 10) / 10;

  const xAt = (event: PointerEvent<HTMLElement>) =>
    event.clientX - event.currentTarget.getBoundingClientRect().left;
  const partAt = (x: number) => Math.min(1, Math.max(0, (x - gutter.left) / inner));

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return;
    const mark = (event.target as Element).closest("[data-finding]");
    const finding = findings.find((one) => one.id === mark?.getAttribute("data-finding"));
    if (finding !== undefined) {
      app.chooseFinding(finding);
      return;
    }
    app.pause();
    const y = event.clientY - event.currentTarget.getBoundingClientRect().top;
    const place = fromX(axis, partAt(xAt(event)));
    if (event.currentTarget === box.current && y > height - lanes.steps) {
      app.setCursor({ step: place.step, progress: 0 });
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
    if (event.currentTarget !== box.current || x < gutter.left || x > gutter.left + inner) {
      setHover(null);
      return;
    }
    const place = fromX(axis, partAt(x));
    setHover({ x, place, pose: app.poseOf(place) });
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

  return (
    <section className="share" aria-label="Who carries what">
      <div
        ref={box}
        className="share-picture"
        role="slider"
        tabIndex={0}
        aria-label="Place in the operation"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(toX(axis, cursor) * 100)}
        aria-valuetext={inWords(props)}
        onKeyDown={onKeyDown}
        {...pointer}
      >
        {width > 0 && height > 0 && (
          <>
            <Bands set={set} axis={axis} findings={findings} units={units} width={width} height={height} />
            <svg className="cursor" width={width} height={height} aria-hidden="true">
              <g transform={`translate(${cursorX} 0)`}>
                <line y1="0" y2={height} />
                <path d="M-6 0H6V6L0 12L-6 6Z" />
              </g>
              {hover !== null && <line className="hover-line" x1={hover.x} x2={hover.x} y1="0" y2={height} />}
            </svg>
            {hover !== null && <Hover {...hover} set={set} units={units} toLeft={hover.x > width * 0.6} />}
          </>
        )}
      </div>
      <section
        ref={strips}
        className="share-strips"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard.
        tabIndex={0}
        aria-label="Use of limits"
        {...pointer}
      >
        {stripWidth > 0 && (
          <>
            <Strips
              set={set}
              axis={axis}
              findings={findings}
              spread={spread}
              width={stripWidth}
              inner={inner}
            />
            <svg className="cursor" width={stripWidth} height="100%" aria-hidden="true">
              <line x1={cursorX} x2={cursorX} y1="0" y2="100%" />
            </svg>
          </>
        )}
      </section>
    </section>
  );
}
