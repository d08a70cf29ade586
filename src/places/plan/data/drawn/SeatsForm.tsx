// Seats drawn by girder: as built against design in small units, with shims on top; what was not surveyed is said.
import { useRef } from "react";
import { useSize } from "../../../../share/index.ts";
import { fromSI, print, printed, type System, signOf, unitFor } from "../../../../units/index.ts";
import type { OwnFormProps } from "../table.ts";
import { scaleOf, tickStep, ticksOf, tickText } from "./axes.ts";
import { type SeatLevel, type SeatRow, seatRows } from "./seatLevels.ts";
import "./drawn.css";

const [HEIGHT, LEFT, TOP, BOTTOM] = [190, 54, 30, 40];

/** "+3 mm", "−2 mm", "as designed". */
function offWords(off: number | null, system: System): string {
  if (off === null) return "not surveyed";
  const { number, unit } = printed(Math.abs(off), "smallLength", system);
  return Number(number) === 0 ? "as designed" : `${off > 0 ? "+" : "−"}${number} ${unit}`;
}

function seatWords(seat: SeatLevel, system: System): string {
  const shims = seat.shims > 0 ? ` with ${print(seat.shims, "smallLength", system)} of shims` : "";
  return `${seat.girder} ${offWords(seat.off, system)}${shims}`;
}

function Drawing({ rows, system }: { rows: readonly SeatRow[]; system: System }) {
  const place = useRef<HTMLDivElement>(null);
  const { width } = useSize(place);
  const small = (m: number) => fromSI(m, unitFor("smallLength", system));
  const ends = rows.flatMap(({ seats }) =>
    seats.flatMap(({ off, shims }) => (off === null ? [] : [small(off), small(off + shims)])),
  );
  const least = small(0.005);
  const [low, high] = [Math.min(-least, ...ends), Math.max(least, ...ends)];
  const y = scaleOf(low, high, HEIGHT - BOTTOM, TOP);
  const count = rows.reduce((sum, { seats }) => sum + seats.length, 0);
  const slot = Math.min(120, (width - LEFT - 20) / (count + rows.length));
  const says = rows
    .map(({ line, seats }) => `${line} line: ${seats.map((seat) => seatWords(seat, system)).join(", ")}.`)
    .join(" ");
  let at = LEFT + slot / 2;
  return (
    <div ref={place} className="drawn-place" style={{ minHeight: HEIGHT }}>
      {width > 120 && (
        <svg width={width} height={HEIGHT} role="img" aria-label={says} className="drawn">
          {ticksOf(low, high, 5).map((tick) => (
            <g key={tick}>
              <line
                className={tick === 0 ? "straight" : "grid"}
                x1={LEFT}
                x2={width - 10}
                y1={y(tick)}
                y2={y(tick)}
              />
              <text x={LEFT - 5} y={y(tick) + 4} textAnchor="end">
                {tickText(tick, tickStep(high - low, 5))}
              </text>
            </g>
          ))}
          {rows.map(({ line, seats }) => {
            const from = at;
            const drawn = seats.map((seat) => {
              const middle = at + slot / 2;
              at += slot;
              return (
                <g key={seat.girder} className="seat">
                  {seat.off !== null && (
                    <>
                      <rect
                        x={middle - slot * 0.28}
                        width={slot * 0.56}
                        y={Math.min(y(0), y(small(seat.off)))}
                        height={Math.max(1, Math.abs(y(0) - y(small(seat.off))))}
                      />
                      {seat.shims > 0 && (
                        <rect
                          className="shims"
                          x={middle - slot * 0.18}
                          width={slot * 0.36}
                          y={y(small(seat.off + seat.shims))}
                          height={y(small(seat.off)) - y(small(seat.off + seat.shims))}
                        />
                      )}
                      <line
                        x1={middle - slot * 0.28}
                        x2={middle + slot * 0.28}
                        y1={y(small(seat.off))}
                        y2={y(small(seat.off))}
                      />
                    </>
                  )}
                  <text
                    x={middle}
                    y={seat.off === null ? y(0) - 6 : y(Math.max(0, small(seat.off + seat.shims))) - 6}
                    textAnchor="middle"
                  >
                    {offWords(seat.off, system)}
                  </text>
                  <text x={middle} y={HEIGHT - BOTTOM + 16} textAnchor="middle">
                    {seat.girder}
                  </text>
                </g>
              );
            });
            const middle = (from + at) / 2;
            at += slot;
            return (
              <g key={line}>
                {drawn}
                <text x={middle} y={HEIGHT - 6} textAnchor="middle" className="faint">
                  {`${line} line`}
                </text>
              </g>
            );
          })}
          <text x="4" y="14" className="faint">
            {`as built less design, ${signOf("smallLength", system)}`}
          </text>
        </svg>
      )}
    </div>
  );
}

export function SeatsForm({ ground, set }: OwnFormProps) {
  const { plan, system } = ground;
  const rows = seatRows(plan, plan.sets[set]);
  const none = rows.flatMap(({ line, seats }) =>
    seats.filter(({ off }) => off === null).map(({ girder }) => `${line} ${girder}`),
  );
  return (
    <section className="drawn-form" aria-label="Seats, design and as built">
      {rows.length === 0 ? (
        <p className="quiet">{`No seat belongs to a girder of ${plan.sets[set].id}. Add or paste them below.`}</p>
      ) : (
        <Drawing rows={rows} system={system} />
      )}
      {rows.map(({ line, apart }) => (
        <p key={line} className="quiet">
          {apart === null
            ? `${line} line: not all seats are surveyed; until then the design level stands in for them.`
            : `${line} line: seats with their shims are out of the designed plane by ${print(apart, "smallLength", system)} between girders.`}
        </p>
      ))}
      {none.length > 0 && <p className="flags">{`◆ Not surveyed: ${none.join(", ")}.`}</p>}
    </section>
  );
}
