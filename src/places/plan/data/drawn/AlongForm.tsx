// The set from the side with its picks and bunks: dragged along it, moved by arrows or typed.
import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import { colourOf } from "../../../../app/index.ts";
import { QuantityField } from "../../../../controls/index.ts";
import { fieldOf, type Plan } from "../../../../plan/index.ts";
import { lengthWords, marksOf, standingWords } from "../../../../scene/index.ts";
import { useSize } from "../../../../share/index.ts";
import { fromSI, signOf, unitFor } from "../../../../units/index.ts";
import type { OwnFormProps } from "../table.ts";
import { type Slider, slidersOf, stationOf } from "./along.ts";
import { scaleOf, tickStep, ticksOf, tickText } from "./axes.ts";
import { elevationOf } from "./steel.ts";
import { useSliding } from "./useSliding.ts";
import { weighed } from "./weights.ts";
import "./drawn.css";

const [LEFT, RIGHT, GIRDER, DEEP, BELOW] = [16, 16, 70, 40, 96];
const HEIGHT = GIRDER + DEEP + BELOW + 44;

/** Kind of the crane or transporter of a slider, for its hue. */
function hueOf(plan: Plan, { thing }: Slider): string {
  const crane = plan.cranes.find(({ id }) => id === thing.of);
  const train = plan.transporters.find(({ id }) => id === thing.of);
  if (thing.is === "pick") return colourOf(`${crane?.kind ?? "far"} crane`);
  return colourOf(`${train?.kind ?? "front"} train`);
}

/** Where a slider is drawn, px below the top: its middle and half its height. */
function laneOf({ thing }: Slider): { y: number; half: number } {
  if (thing.is === "pick") return { y: GIRDER - 16, half: 12 };
  return thing.is === "bunk" ? { y: GIRDER + DEEP + 14, half: 12 } : { y: GIRDER + DEEP + 62, half: 13 };
}

const shapes = {
  pick: "M0 14L-13 -10H13Z",
  bunk: "M-12 -12H12V12H-12Z",
};

export function AlongForm({ ground, set: index }: OwnFormProps) {
  const { plan, system } = ground;
  const set = plan.sets[index];
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const moves = useSliding(set, system);
  const pressed = useRef<{ x: number; slider: Slider } | null>(null);
  const sliders = slidersOf(plan, index);
  const it = elevationOf(set, set.girders[0]);
  const all = weighed(set);
  const reach = [
    0,
    it.length,
    ...sliders.flatMap((s) => [-1, 1].map((e) => stationOf(s, s.standing.along) + e * s.half)),
  ];
  const [first, last] = [Math.min(...reach) - 1, Math.max(...reach) + 1];
  const x = scaleOf(first, last, LEFT, width - RIGHT);
  const perMetre = x(1) - x(0);
  const length = (m: number) => fromSI(m, unitFor("length", system));
  const metre = 1 / length(1);
  const { sliding } = moves;
  const numberOf = (slider: Slider) =>
    sliding !== null && sliding.slider.thing.key === slider.thing.key ? sliding.to : slider.standing.along;
  // While something is moved the draft holds it where it is tried; what the move began with counts.
  const begun = (slider: Slider) =>
    sliding !== null && sliding.slider.thing.key === slider.thing.key ? sliding.slider : slider;

  const onDown = (event: PointerEvent<SVGGElement>, slider: Slider) => {
    if (event.button !== 0) return;
    event.preventDefault();
    event.currentTarget.focus();
    event.currentTarget.setPointerCapture(event.pointerId);
    pressed.current = { x: event.clientX, slider: begun(slider) };
  };
  const onMove = (event: PointerEvent) => {
    const from = pressed.current;
    if (from === null) return;
    const by = event.clientX - from.x;
    if (sliding === null && Math.abs(by) <= 3) return;
    moves.lead(from.slider, from.slider.standing.along + by / perMetre, perMetre, event);
  };
  const onUp = () => {
    pressed.current = null;
    moves.end();
  };
  const onKey = (event: KeyboardEvent, slider: Slider) => {
    if (event.ctrlKey || event.metaKey) return;
    const by = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    if (by !== 0) moves.nudge(begun(slider), by, event);
    else if (event.key === "Enter") moves.end();
    else if (event.key !== "Escape" || !moves.takeBack()) return;
    pressed.current = null;
    event.preventDefault();
    event.stopPropagation();
  };
  const ticks = ticksOf(length(Math.max(0, first)), length(last), 10);
  return (
    <section className="drawn-form" aria-label="Along the set">
      <p className="quiet">
        Drag a pick, a bunk or a deck, or move it by the left and right arrows; Shift: coarse steps, Alt: fine
        ones, Escape: back. Splices, cross-frames and stiffeners take it in.
      </p>
      <div ref={place} className="drawn-place" style={{ minHeight: HEIGHT }}>
        {width > 120 && (
          // biome-ignore lint/a11y/useSemanticElements: things stand where they are along the set.
          <svg
            width={width}
            height={HEIGHT}
            role="group"
            aria-label={`${set.id} from its left side, rear end at the left`}
            className="drawn"
          >
            {it.pieces.map(({ from, to, mark }) => (
              <g key={from} className="piece-plain">
                <rect className="steel" x={x(from)} width={x(to) - x(from)} y={GIRDER} height={DEEP} />
                <text x={x((from + to) / 2)} y={GIRDER + DEEP / 2 + 4} textAnchor="middle" className="faint">
                  {mark}
                </text>
              </g>
            ))}
            {marksOf(set).map(({ at, words }) => (
              <line
                key={at}
                className={`station ${words}`}
                x1={x(at)}
                x2={x(at)}
                y1={words === "splice" ? GIRDER - 4 : GIRDER}
                y2={words === "splice" ? GIRDER + DEEP + 4 : GIRDER + DEEP}
              />
            ))}
            {all.ok && (
              <g className="cg" transform={`translate(${x(all.takeOff.cg[0])} ${GIRDER + DEEP / 2})`}>
                <circle r="7" />
                <path d="M0 0V-7A7 7 0 0 1 7 0ZM0 0V7A7 7 0 0 1 -7 0Z" />
                <text x="11" y="-8">
                  CG
                </text>
              </g>
            )}
            {ticks.map((at) => (
              <text key={at} x={x(at * metre)} y={HEIGHT - 22} textAnchor="middle">
                {tickText(at, tickStep(length(last) - length(Math.max(0, first)), 10))}
              </text>
            ))}
            <text x={width - RIGHT} y={HEIGHT - 5} textAnchor="end" className="faint">
              {`station from the rear end, ${signOf("length", system)}`}
            </text>
            {sliders.toReversed().map((slider) => {
              const { thing } = slider;
              const now = numberOf(slider);
              const { y, half } = laneOf(slider);
              const at = x(stationOf(slider, now));
              const moving = sliding?.slider.thing.key === thing.key;
              const words = standingWords(thing, { along: now, across: null }, system);
              return (
                <g
                  key={thing.key}
                  role="slider"
                  tabIndex={0}
                  aria-label={thing.name}
                  aria-valuenow={now}
                  aria-valuemin={slider.least}
                  aria-valuemax={slider.most}
                  aria-valuetext={`${words}${moving && sliding.mark !== null ? `, at a ${sliding.mark.words}` : ""}`}
                  data-slider={thing.key}
                  className={moving ? "slider moving" : "slider"}
                  transform={`translate(${at} ${y})`}
                  onPointerDown={(event) => onDown(event, slider)}
                  onPointerMove={onMove}
                  onPointerUp={onUp}
                  onPointerCancel={() => {
                    pressed.current = null;
                    moves.takeBack();
                  }}
                  onKeyDown={(event) => onKey(event, slider)}
                  onKeyUp={(event) => {
                    if (event.key === "ArrowRight" || event.key === "ArrowLeft") moves.end();
                  }}
                  onBlur={moves.end}
                >
                  {thing.is === "transporter" ? (
                    <rect
                      x={-slider.half * perMetre}
                      width={2 * slider.half * perMetre}
                      y={-half}
                      height={2 * half}
                      fill={hueOf(plan, slider)}
                    />
                  ) : (
                    <path d={shapes[thing.is === "pick" ? "pick" : "bunk"]} fill={hueOf(plan, slider)} />
                  )}
                  <text y={thing.is === "pick" ? -26 : thing.is === "bunk" ? 26 : 28} textAnchor="middle">
                    {`${thing.name} ${lengthWords(stationOf(slider, now), system)}`}
                  </text>
                  {moving && (
                    <text y={thing.is === "pick" ? -12 : 41} textAnchor="middle" className="taken-in">
                      {sliding.mark === null ? "" : `at a ${sliding.mark.words}`}
                    </text>
                  )}
                </g>
              );
            })}
          </svg>
        )}
      </div>
      <div className="drawn-fields">
        {sliders.map((slider) => {
          const field = fieldOf(slider.thing.along, plan);
          return (
            <QuantityField
              key={slider.thing.key}
              label={`${slider.thing.name}: ${slider.thing.alongWords.toLowerCase()}`}
              value={numberOf(slider)}
              keptIn="m"
              shown="length"
              system={system}
              least={field?.least ?? null}
              most={field?.most ?? null}
              commit={(value) => moves.commit(begun(slider), value)}
            />
          );
        })}
      </div>
    </section>
  );
}
