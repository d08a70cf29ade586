// The numbers under the pointer: the pose there is solved anew, so that they are no reading off the drawing.
import { colourOf, type Place, type Pose, type SetResult, type System, stepName } from "../app/index.ts";
import { print, printed } from "../units/index.ts";
import { bandsOf } from "./stack.ts";

/** A small table beside the pointer: share and part of the weight of every band that carries. */
export function Hover(props: {
  set: SetResult;
  place: Place;
  pose: Pose | null;
  units: System;
  x: number;
  toLeft: boolean;
}) {
  const { set, place, pose, units, x, toLeft } = props;
  const step = set.steps[place.step];
  const least = set.weight * 0.0005;
  const rows =
    pose === null
      ? []
      : bandsOf(set.supports)
          .map((band) => ({ ...band, share: pose.shares[band.column] }))
          .filter(({ share }) => Math.abs(share) > least)
          .reverse();
  const stand = toLeft ? { right: `calc(100% - ${x - 12}px)` } : { left: `${x + 12}px` };
  return (
    <div className="hover" style={stand} aria-hidden="true">
      <strong>{`${place.step + 1} ${stepName(step.step)}, ${Math.round(place.progress * 100)} %`}</strong>
      <table>
        <tbody>
          {rows.map(({ name, kind, share }) => (
            <tr key={name}>
              <td>
                <span className="swatch" style={{ background: colourOf(kind) }} /> {name}
              </td>
              <td className="number">{print(share, "load", units)}</td>
              <td className="number">{`${printed(share / set.weight, "percent", units).number} %`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {pose === null && <span>no equilibrium, no numbers</span>}
    </div>
  );
}
