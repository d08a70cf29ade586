// A transporter from above: deck, bunks and wheels with their groups; wheels are picked by click, by touch and by keyboard.
import { type KeyboardEvent, useId, useRef, useState } from "react";
import type { Transporter } from "../../../../plan/index.ts";
import { useSize } from "../../../../share/index.ts";
import { print, type System } from "../../../../units/index.ts";
import { scaleOf } from "./axes.ts";
import { centroidOf, groupsWith, standingAlone, type Wheel, wheelsOf } from "./groups.ts";
import { letterOf, Patterns, patternOf } from "./patterns.tsx";

const HEIGHT = 210;
const [LEFT, RIGHT] = [34, 70];

/** Where the arrows lead from a wheel: along to the next line, across to the other side; it stays at the ends. */
export function wheelBeside(wheels: readonly Wheel[], from: number, key: string): number {
  const { line, side } = wheels[from];
  const lines = wheels.length / 2;
  const to = (l: number, s: "L" | "R") => wheels.findIndex((one) => one.line === l && one.side === s);
  switch (key) {
    case "ArrowRight":
      return to(Math.min(lines, line + 1), side);
    case "ArrowLeft":
      return to(Math.max(1, line - 1), side);
    case "ArrowUp":
      return to(line, "L");
    case "ArrowDown":
      return to(line, "R");
    case "Home":
      return to(1, side);
    case "End":
      return to(lines, side);
    default:
      return from;
  }
}

/** The drawing. `assign` is asked for by the key G. */
export function WheelPlan(props: {
  transporter: Transporter;
  system: System;
  picked: ReadonlySet<string>;
  pick: (wheels: ReadonlySet<string>) => void;
  assign: () => void;
}) {
  const { transporter, system, picked, pick, assign } = props;
  const { groups, deckLength_m, deckWidth_m, bunks, pitch_m } = transporter;
  const id = useId();
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const [at, setAt] = useState(0);
  const wheels = wheelsOf(transporter);
  const here = Math.min(at, wheels.length - 1);
  const reach = Math.max(deckLength_m, transporter.lines * pitch_m) / 2;
  const x = scaleOf(-reach, reach, LEFT, width - RIGHT);
  const half = Math.max(deckWidth_m, transporter.gauge_m + 0.8) / 2;
  const y = scaleOf(-half, half, HEIGHT - 34, 20);
  const long = Math.min(40, Math.max(14, x(pitch_m) - x(0) - 6));
  const { corners } = standingAlone(transporter);
  const toggle = (name: string) => {
    const next = new Set(picked);
    if (!next.delete(name)) next.add(name);
    pick(next);
  };
  const focus = (index: number) => {
    setAt(index);
    place.current?.querySelector<SVGGElement>(`[data-wheel="${wheels[index].name}"]`)?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const { key } = event;
    if (key === " " || key === "Enter") toggle(wheels[here].name);
    else if (key === "g" || key === "G") assign();
    else if (key === "Escape" && picked.size > 0) pick(new Set());
    else if (/^(Arrow|Home|End)/.test(key)) {
      const next = wheelBeside(wheels, here, key);
      if (event.shiftKey) pick(new Set([...picked, wheels[here].name, wheels[next].name]));
      focus(next);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const middle = (y(half) + y(-half)) / 2;
  return (
    <div ref={place} className="drawn-place" style={{ minHeight: HEIGHT }}>
      {width > LEFT + RIGHT && (
        // biome-ignore lint/a11y/useSemanticElements: wheels stand where they are on the machine, which no list of boxes shows.
        <svg
          width={width}
          height={HEIGHT}
          role="group"
          aria-label={`Wheels of ${transporter.id} from above, forward to the right. Arrows move, Space picks, G assigns.`}
          className="drawn"
          onKeyDown={onKeyDown}
        >
          <Patterns id={id} />
          <rect
            className="deck"
            x={x(-deckLength_m / 2)}
            y={y(deckWidth_m / 2)}
            width={x(deckLength_m / 2) - x(-deckLength_m / 2)}
            height={y(-deckWidth_m / 2) - y(deckWidth_m / 2)}
          />
          {bunks.map((bunk, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a bunk is told by its place.
            <g key={i} className="bunk">
              <line
                x1={x(bunk.at_m)}
                x2={x(bunk.at_m)}
                y1={y(deckWidth_m / 2) - 6}
                y2={y(-deckWidth_m / 2) + 6}
              />
              <text x={x(bunk.at_m)} y={y(deckWidth_m / 2) - 9} textAnchor="middle" className="faint">
                {`${bunk.kind} bunk`}
              </text>
            </g>
          ))}
          <path className="travel" d={`M${width - RIGHT + 8} ${middle}h40m-9-6l9 6l-9 6`} />
          <text x={width - RIGHT + 8} y={middle - 12} className="faint">
            forward
          </text>
          {corners.length > 0 && (
            <path className="base" d={`M${corners.map((c) => `${x(c.x)} ${y(c.y)}`).join("L")}Z`} />
          )}
          {wheels.map((wheel, i) => {
            const own = groupsWith(groups, wheel.name);
            const is = picked.has(wheel.name);
            const words =
              own.length === 0 ? "in no group" : own.map((g) => `group ${groups[g].name}`).join(" and ");
            return (
              // biome-ignore lint/a11y/useSemanticElements: a wheel is drawn where it is on the machine.
              <g
                key={wheel.name}
                role="checkbox"
                aria-checked={is}
                aria-label={`wheel ${wheel.name}, ${words}`}
                tabIndex={i === here ? 0 : -1}
                data-wheel={wheel.name}
                className={`wheel${is ? " picked" : ""}${own.length === 1 ? "" : " wrong"}`}
                onFocus={() => setAt(i)}
                onClick={() => {
                  focus(i);
                  toggle(wheel.name);
                }}
              >
                <rect
                  x={x(wheel.x) - long / 2}
                  y={y(wheel.y) - 13}
                  width={long}
                  height="26"
                  rx="3"
                  fill={own.length === 0 ? "none" : patternOf(id, own[0])}
                />
                <text x={x(wheel.x)} y={y(wheel.y) + 5} textAnchor="middle" className="letter">
                  {own.length === 0 ? "–" : own.length === 1 ? letterOf(own[0]) : "?"}
                </text>
              </g>
            );
          })}
          {wheels
            .filter(({ side }) => side === "R")
            .map(({ line, x: wx }) => (
              <text key={line} x={x(wx)} y={HEIGHT - 12} textAnchor="middle" className="faint">
                {line}
              </text>
            ))}
          <text x="4" y={y(transporter.gauge_m / 2) + 4} className="faint">
            left
          </text>
          <text x="4" y={y(-transporter.gauge_m / 2) + 4} className="faint">
            right
          </text>
          <text x="4" y={HEIGHT - 12} className="faint">
            line
          </text>
          {groups.map((group, i) => {
            const c = centroidOf(group, wheels);
            if (c === null) return null;
            return (
              <g key={group.name} className="centroid" transform={`translate(${x(c.x)} ${y(c.y)})`}>
                <title>{`Centroid of ${group.name}: ${print(c.x, "length", system)} forward of the deck's centre, ${print(c.y, "length", system)} left`}</title>
                <circle r="8" />
                <path d="M-8 0H8M0-8V8" />
                <text x="11" y="-7">
                  {letterOf(i)}
                </text>
              </g>
            );
          })}
        </svg>
      )}
    </div>
  );
}
