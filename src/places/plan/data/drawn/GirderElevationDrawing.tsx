// A girder from the side: field pieces to choose from, splices, cross-frames, stiffeners, and its camber exaggerated.
import { type KeyboardEvent, useRef } from "react";
import { useSize } from "../../../../share/index.ts";
import { fromSI, print, type System, signOf, unitFor } from "../../../../units/index.ts";
import { roundFactor, scaleOf, tickStep, ticksOf, tickText } from "./axes.ts";
import type { GirderElevation } from "./steel.ts";

const HEIGHT = 176;
const [LEFT, RIGHT, FOOT, DEPTH, RISE] = [14, 14, 44, 64, 42];

export function GirderElevationDrawing(props: {
  line: string;
  elevation: GirderElevation;
  chosen: number;
  choose: (piece: number) => void;
  system: System;
}) {
  const { line, elevation: it, chosen, choose, system } = props;
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const x = scaleOf(0, it.length, LEFT, width - RIGHT);
  const perMetre = x(1) - x(0);
  // Depth and camber each by a round factor over the scale along the girder.
  const deep = roundFactor(DEPTH / (it.depth * perMetre));
  const raised = it.mostCamber === 0 ? 1 : roundFactor(RISE / ((it.mostCamber / 1000) * perMetre));
  const rise = (at: number) => {
    const i = Math.max(
      1,
      it.camber.findIndex((point) => point.at >= at),
    );
    const [a, b] = [it.camber[i - 1], it.camber[i]];
    const mm = a.rise + ((at - a.at) / (b.at - a.at || 1)) * (b.rise - a.rise);
    return (mm / 1000) * perMetre * raised;
  };
  const foot = HEIGHT - FOOT;
  const soffit = (at: number) => foot - rise(at);
  const along = (from: number, to: number) => [
    from,
    ...it.camber.map(({ at }) => at).filter((at) => at > from && at < to),
    to,
  ];
  const length = (m: number) => fromSI(m, unitFor("length", system));
  const outline = (from: number, to: number, depth: number) => {
    const stations = along(from, to);
    const below = stations.map((at) => `${x(at).toFixed(1)} ${soffit(at).toFixed(1)}`);
    const above = stations
      .toReversed()
      .map((at) => `${x(at).toFixed(1)} ${(soffit(at) - depth * perMetre * deep).toFixed(1)}`);
    return `M${[...below, ...above].join("L")}Z`;
  };
  const depthAt = (at: number) =>
    (it.pieces.find((piece) => at <= piece.to) ?? it.pieces[0]).depth * perMetre * deep;
  const mark = (at: number, from: number, to: number) =>
    `M${x(at)} ${soffit(at) - depthAt(at) * from}V${soffit(at) - depthAt(at) * to}`;
  const onKeyDown = (event: KeyboardEvent<SVGGElement>, i: number) => {
    const to =
      event.key === "ArrowRight"
        ? Math.min(it.pieces.length - 1, i + 1)
        : event.key === "ArrowLeft"
          ? Math.max(0, i - 1)
          : event.key === " " || event.key === "Enter"
            ? i
            : -1;
    if (to < 0 || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    choose(to);
    place.current?.querySelector<SVGGElement>(`[data-piece="${to}"]`)?.focus();
  };
  const ticks = ticksOf(0, length(it.length), 10);
  return (
    <div ref={place} className="drawn-place" style={{ minHeight: HEIGHT }}>
      {width > 60 && (
        // biome-ignore lint/a11y/useSemanticElements: pieces are drawn where they lie along the girder.
        <svg
          width={width}
          height={HEIGHT}
          role="group"
          aria-label={`Girder ${line} from its left side, rear end at the left: ${it.pieces.length} pieces, ${it.splices.length} splices, ${it.frames.length} stations of cross-frames, ${it.stiffeners.length} pairs of stiffeners, camber up to ${print(it.mostCamber / 1000, "smallLength", system)}.`}
          className="drawn"
        >
          {it.pieces.map((piece, i) => (
            // biome-ignore lint/a11y/useSemanticElements: a piece is drawn where it lies along the girder.
            <g
              key={piece.from}
              role="radio"
              aria-checked={i === chosen}
              aria-label={`${piece.mark}, ${print(piece.from, "length", system)} to ${print(piece.to, "length", system)}, depth ${print(piece.depth, "smallLength", system)}`}
              tabIndex={i === chosen ? 0 : -1}
              data-piece={i}
              className={i === chosen ? "piece chosen-piece" : "piece"}
              onClick={() => choose(i)}
              onKeyDown={(event) => onKeyDown(event, i)}
            >
              <path d={outline(piece.from, piece.to, piece.depth)} />
              <text
                x={x((piece.from + piece.to) / 2)}
                y={soffit((piece.from + piece.to) / 2) - depthAt((piece.from + piece.to) / 2) / 2 + 4}
                textAnchor="middle"
                className="letter"
              >
                {piece.mark}
              </text>
            </g>
          ))}
          <g className="marks">
            {it.stiffeners.map(({ at }) => (
              <path key={`s${at}`} className="stiffener" d={mark(at, 0, 1)} />
            ))}
            {it.frames.map(({ at }) => (
              <path key={`f${at}`} className="frame" d={`${mark(at, 1, 1.12)}m-4-7h8l-4 7z`} />
            ))}
            {it.splices.map(({ at }) => (
              <rect
                key={`j${at}`}
                className="splice"
                x={x(at) - 3}
                y={soffit(at) - depthAt(at)}
                width="6"
                height={depthAt(at)}
              />
            ))}
          </g>
          <line className="straight" x1={x(0)} x2={x(it.length)} y1={foot} y2={foot} />
          {ticks.map((at) => (
            <g key={at}>
              <line
                className="grid"
                x1={LEFT + (at / length(it.length)) * (width - LEFT - RIGHT)}
                x2={LEFT + (at / length(it.length)) * (width - LEFT - RIGHT)}
                y1={foot + 6}
                y2={foot + 11}
              />
              <text
                x={LEFT + (at / length(it.length)) * (width - LEFT - RIGHT)}
                y={foot + 24}
                textAnchor="middle"
              >
                {tickText(at, tickStep(length(it.length), 10))}
              </text>
            </g>
          ))}
          <text x={width - RIGHT} y={HEIGHT - 5} textAnchor="end" className="faint">
            {`station from the rear end, ${signOf("length", system)}`}
          </text>
        </svg>
      )}
      <p className="drawn-legend">
        {`Camber is drawn ${raised} times as large as along the girder, depth ${deep === 1 ? "to the same scale" : `${deep} times`}. Triangles on top: cross-frames; double strokes: splices; thin strokes: stiffeners.`}
      </p>
    </div>
  );
}
