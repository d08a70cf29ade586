// The cross-section of a piece to scale, with its sizes as text and its centroid.
import { type Piece, pieceSection } from "../../../../plan/index.ts";
import { print, printFull, type System, signOf, unitFor } from "../../../../units/index.ts";
import { platesOf } from "./steel.ts";

const [WIDTH, HEIGHT] = [270, 270];

/** A length of a plate as it is typed: in the user's small unit, all its digits. */
const size = (mm: number, system: System) =>
  `${Number(Number(printFull(mm, "mm", unitFor("smallLength", system))).toPrecision(6))}`;

export function SectionDrawing({ piece, system }: { piece: Piece; system: System }) {
  const plates = platesOf(piece);
  const depth = plates[2].z + plates[2].height;
  const broad = Math.max(plates[0].width, plates[2].width);
  const scale = Math.min((HEIGHT - 50) / depth, (WIDTH - 130) / broad);
  const middle = 90;
  const foot = HEIGHT - 24;
  const { centroid } = pieceSection(piece);
  const zc = foot - centroid * 1000 * scale;
  const unit = signOf("smallLength", system);
  const words = plates
    .map((box) =>
      box.plate === "web"
        ? `web ${size(box.height, system)} by ${size(box.width, system)}`
        : `${box.plate} ${size(box.width, system)} by ${size(box.height, system)}`,
    )
    .join(", ");
  const labels = [
    {
      y: foot - plates[2].z * scale - 6,
      text: `${size(plates[2].width, system)} × ${size(plates[2].height, system)}`,
    },
    {
      y: foot - (depth * scale) / 2 + 4,
      text: `${size(plates[1].height, system)} × ${size(plates[1].width, system)}`,
    },
    { y: foot + 4, text: `${size(plates[0].width, system)} × ${size(plates[0].height, system)}` },
  ];
  return (
    <svg
      width={WIDTH}
      height={HEIGHT}
      role="img"
      aria-label={`Cross-section to scale, ${unit}: ${words}, depth ${size(depth, system)}, centroid ${print(centroid, "smallLength", system)} above the soffit.`}
      className="drawn"
    >
      {plates.map((box) => (
        <rect
          key={box.plate}
          className="steel"
          x={middle + box.x * scale}
          y={foot - (box.z + box.height) * scale}
          width={Math.max(1, box.width * scale)}
          height={Math.max(1, box.height * scale)}
        />
      ))}
      <g className="centroid" transform={`translate(${middle} ${zc})`}>
        <circle r="5" />
        <path d="M-5 0H5M0-5V5" />
      </g>
      {labels.map(({ y, text }) => (
        <text key={y} x={middle + (broad / 2) * scale + 14} y={y}>
          {text}
        </text>
      ))}
      <path
        className="dimension"
        d={`M${middle - (broad / 2) * scale - 12} ${foot}V${foot - depth * scale}m-4 0h8m-8 ${depth * scale}h8`}
      />
      <text
        transform={`translate(${middle - (broad / 2) * scale - 18} ${foot - (depth * scale) / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {size(depth, system)}
      </text>
      <text x={WIDTH - 6} y="14" textAnchor="end" className="faint">
        {`${unit}, to scale`}
      </text>
    </svg>
  );
}
