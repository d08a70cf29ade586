// A hatch that bands and rows are filled with, so that they are told apart without colour.

/** A pattern of lines `size` apart, turned by `turn` degrees; `crossed` adds lines across, `ground` fills behind them. */
export function Hatch(props: {
  id: string;
  size: number;
  turn?: number;
  /** Class of the lines. */
  line: string;
  crossed?: boolean;
  /** Class of what is behind the lines; nothing when left out. */
  ground?: string;
}) {
  const { id, size, turn = 45, line, crossed = false, ground } = props;
  return (
    <pattern
      id={id}
      width={size}
      height={size}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      {ground !== undefined && <rect className={ground} width={size} height={size} />}
      <path className={line} d={`M0 0V${size}${crossed ? `M0 0H${size}` : ""}`} />
    </pattern>
  );
}
