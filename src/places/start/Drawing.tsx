// A small elevation of what was answered so far: gap, path, set on its transporters, set landed, cranes. To scale, both ways alike.
import { type Answers, linesOf } from "../../checks/index.ts";

const width = 760;
const height = 220;

const known = (...values: number[]) => values.every((value) => Number.isFinite(value));

/** What has to be answered before anything can be drawn. */
const nothing = "The drawing begins with the gap: give it first.";

/** Draws the answers; what is still open is left out. */
export function Drawing({ answers }: { answers: Answers }) {
  const { nearFace, farFace, nearBearing, farBearing } = linesOf(answers);
  const { sets, transporters, cranes } = answers;
  if (!known(nearFace, farFace) || farFace <= nearFace || farFace - nearFace > 1000)
    return <p className="set-up-drawing quiet">{nothing}</p>;
  const length = known(sets.length_m) ? Math.min(sets.length_m, 500) : 0;
  const depth = known(sets.depth_m) ? Math.min(sets.depth_m, 20) : 0;
  const farCrane = farFace + (known(cranes.far.chainage_m) ? cranes.far.chainage_m : 0);
  const nearCrane = nearFace - (known(cranes.near.chainage_m) ? cranes.near.chainage_m : 0);
  const left = Math.min(nearFace - length - 14, nearCrane - 10);
  const right = Math.max(farFace + 14, farCrane + 10);
  const scale = width / (right - left);
  const ground = 150;
  const x = (chainage: number) => (chainage - left) * scale;
  const grade = known(answers.grade_pct) ? Math.max(-20, Math.min(20, answers.grade_pct)) / 100 : 0;
  const y = (above: number, chainage = nearFace) => ground - (above + grade * (chainage - nearFace)) * scale;
  const start = nearFace - length - 6;
  const rear = start + 0.14 * length;
  const front = start + 0.66 * length;
  const train = (kind: "rear" | "front", at: number) => {
    const { lines, pitch_m } = transporters[kind];
    if (!known(lines, pitch_m) || lines < 1 || lines > 60 || length === 0) return null;
    const half = (lines * pitch_m) / 2;
    return (
      <g className="train">
        <line x1={x(at - half)} y1={y(1.4, at)} x2={x(at + half)} y2={y(1.4, at)} />
        {Array.from({ length: lines }, (_, i) => {
          const c = at - half + (i + 0.5) * pitch_m;
          return <circle key={c} cx={x(c)} cy={y(0.45, c)} r={Math.max(1, 0.45 * scale)} />;
        })}
      </g>
    );
  };
  const crane = (kind: "far" | "near", at: number) => {
    const { boom_m, chainage_m } = cranes[kind];
    if (!known(boom_m, chainage_m)) return null;
    const reach = Math.min(
      Math.abs(at - (kind === "far" ? farFace - 0.15 * length : nearFace)),
      0.9 * boom_m,
    );
    const rise = Math.sqrt(Math.max(0, boom_m ** 2 - reach ** 2));
    const tip = kind === "far" ? at - reach : at + Math.min(reach, 6);
    const high = kind === "far" ? rise : Math.sqrt(Math.max(0, boom_m ** 2 - 36));
    return (
      <g className="crane">
        <rect x={x(at - 4)} y={y(3, at)} width={8 * scale} height={3 * scale} />
        <line x1={x(at)} y1={y(3, at)} x2={x(tip)} y2={y(3 + high, at)} />
      </g>
    );
  };
  const box = (from: number, above: number, name: string) =>
    length > 0 && depth > 0 ? (
      <polygon
        className={name}
        points={[
          [from, above],
          [from + length, above],
          [from + length, above + depth],
          [from, above + depth],
        ]
          .map(([c, h]) => `${x(c)},${y(h, c)}`)
          .join(" ")}
      />
    ) : null;
  const sole = (length - (farBearing - nearBearing)) / 2;
  const words = `Elevation: gap of ${Number((farFace - nearFace).toFixed(2))} m${length > 0 ? `, set of ${length} m behind it` : ""}`;
  return (
    <svg className="set-up-drawing" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words}>
      <polyline
        className="ground"
        points={`0,${y(0, left)} ${x(nearFace)},${y(0, nearFace)} ${x(nearFace)},${height - 8} ${x(farFace)},${height - 8} ${x(farFace)},${y(0, farFace)} ${width},${y(0, farFace)}`}
      />
      {known(nearBearing, farBearing) && box(nearBearing - sole, 0, "landed")}
      {train("rear", rear)}
      {train("front", front)}
      {box(start, 1.6, "set")}
      {crane("near", nearCrane)}
      {crane("far", farCrane)}
    </svg>
  );
}
