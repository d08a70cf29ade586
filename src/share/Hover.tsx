// The numbers under the pointer: the pose there is solved anew, so that they are no reading off the drawing.
import type { ReactNode } from "react";
import {
  colourOf,
  cornerWords,
  nearestStored,
  type Place,
  type Plan,
  type Pose,
  type SetResult,
  type SpreadResult,
  type System,
  stepName,
} from "../app/index.ts";
import { missing, print, printed } from "../units/index.ts";
import { bandOfUse, type Strip } from "./governing.ts";
import { bandsOf } from "./stack.ts";
import { noReturnsOf, stretchLines, unbackedAt } from "./unbacked.ts";

/** What the pointer stands on: the bands, the row of unbacked parts or a step's mark, or the strip of a subject. */
export type Pointed = { on: "bands" } | { on: "lanes" } | { on: "strip"; strip: Strip };

interface Props {
  plan: Plan;
  set: SetResult;
  place: Place;
  /** Solved anew at the place; null where there are no numbers, and where none are shown. */
  pose: Pose | null;
  pointed: Pointed;
  spread: SpreadResult | null;
  units: System;
  x: number;
  toLeft: boolean;
  /** Whether the panel stands above the pointer's row: for rows at the foot of the page. */
  above: boolean;
}

const percent = (use: number): string => (Number.isFinite(use) ? `${Math.round(use * 100)} %` : missing);

function placeWords(set: SetResult, { step, progress }: Place): string {
  return `${step + 1} ${stepName(set.steps[step].step)}, ${Math.round(progress * 100)} %`;
}

/** Share and part of the weight of every band that carries, and low and high at the nearest stored place. */
function BandTable({ set, place, pose, spread, units }: Props) {
  if (pose === null) return <span>no equilibrium, no numbers</span>;
  const least = set.weight * 0.0005;
  const rows = bandsOf(set.supports)
    .map((band) => ({ ...band, share: pose.shares[band.column] }))
    .filter(({ share }) => Math.abs(share) > least)
    .reverse();
  const stored = spread === null ? -1 : nearestStored(set, place);
  const at = (of: Float64Array, column: number) =>
    printed(of[stored * set.supports.length + column], "load", units).number;
  return (
    <table>
      {spread !== null && stored >= 0 && (
        <thead>
          <tr>
            <td />
            <td />
            <td />
            <td className="number quiet">{`low to high at ${Math.round(set.progress[stored] * 100)} %`}</td>
          </tr>
        </thead>
      )}
      <tbody>
        {rows.map(({ name, kind, share, column }) => (
          <tr key={name}>
            <td>
              <span className="swatch" style={{ background: colourOf(kind) }} /> {name}
            </td>
            <td className="number">{print(share, "load", units)}</td>
            <td className="number">{`${printed(share / set.weight, "percent", units).number} %`}</td>
            {spread !== null && stored >= 0 && (
              <td className="number quiet">{`${at(spread.low, column)} to ${at(spread.high, column)}`}</td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What is unbacked at the place, and whether there is a way back from its step. */
function Lanes({ set, place, units, whole }: Pick<Props, "set" | "place" | "units"> & { whole: boolean }) {
  const { backed } = set;
  const stretch = unbackedAt(backed?.stretches ?? [], place);
  const lost = noReturnsOf(set).find(({ step }) => step === place.step);
  const none = backed === undefined ? "unbacked parts are still being worked out" : "backed here";
  const lines = stretch === null ? (whole ? [none] : []) : stretchLines(stretch, units);
  return (
    <>
      {(whole ? lines : lines.slice(0, 2)).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {lost !== undefined && <p>{lost.words}</p>}
    </>
  );
}

/** Use of a subject's limits at the nearest stored place, and the worst of all with its corner. */
function StripWords({ plan, set, place, spread, strip }: Props & { strip: Strip }) {
  const i = nearestStored(set, place);
  const governs = i < 0 ? undefined : strip.checks[strip.governs[i]];
  const band = spread === null ? null : bandOfUse(spread, strip.subject, set.count);
  const corner = (pose: number) =>
    spread === null || band === null ? "" : cornerWords(plan, set, spread, band.corner[pose], pose);
  const there = (pose: number) => placeWords(set, { step: set.step[pose], progress: set.progress[pose] });
  const best = i < 0 ? Number.NaN : strip.use[i];
  return (
    <>
      <p>
        {`at ${i < 0 ? missing : `${Math.round(set.progress[i] * 100)} %`}: ${percent(best)}`}
        {governs !== undefined && ` of ${governs.check}: ${governs.limitWords}`}
      </p>
      {band !== null && i >= 0 && Number.isFinite(band.high[i]) && (
        <p>{`low ${percent(band.low[i])}, high ${percent(band.high[i])}; corner of high: ${corner(i)}`}</p>
      )}
      {band !== null && band.worst >= 0 && (
        <p>{`highest of all: ${percent(band.high[band.worst])} of ${band.check} in ${there(band.worst)}; corner: ${corner(band.worst)}`}</p>
      )}
    </>
  );
}

/** A panel beside the pointer. */
export function Hover(props: Props) {
  const { set, place, pointed, x, toLeft, above } = props;
  const stand = toLeft ? { right: `calc(100% - ${x - 12}px)` } : { left: `${x + 12}px` };
  const inside = (): ReactNode => {
    if (pointed.on === "strip") return <StripWords {...props} strip={pointed.strip} />;
    if (pointed.on === "lanes") return <Lanes {...props} whole />;
    return (
      <>
        <BandTable {...props} />
        <Lanes {...props} whole={false} />
      </>
    );
  };
  const head = pointed.on === "strip" ? `${pointed.strip.subject}: ` : "";
  return (
    <div className={above ? "hover above" : "hover"} style={stand} aria-hidden="true">
      <strong>{`${head}${placeWords(set, place)}`}</strong>
      {inside()}
    </div>
  );
}
