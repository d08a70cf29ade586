// The bands of who carries what: which supports are stacked in which order, and the outline of each as an SVG path.
// Drawn from the shares as they are, never scaled to fill: what nobody carries stays a hole below the weight line.
import type { SetResult, Support, SupportKind } from "../app/index.ts";

/** A hatch that tells bands of one kind apart. */
export type Pattern = "plain" | "left" | "right" | "cross";

/** One support as a band. */
export interface Band {
  name: string;
  kind: SupportKind;
  pattern: Pattern;
  /** Column of its share. */
  column: number;
}

/** Where the picture stands, in px: `y(load)` runs from `bottom` (no load) up. */
export interface Frame {
  left: number;
  width: number;
  /** y of a load in N. */
  y: (load: number) => number;
}

/** From the bottom up: what takes over from whom lies beside it, the rear end below and the front end above. */
const order: readonly SupportKind[] = [
  "rear train",
  "near crane",
  "near bearings",
  "far bearings",
  "far crane",
  "front train",
  "lashing",
];

/** For bands that are on neither side, in turn. */
const neither: readonly Pattern[] = ["plain", "cross"];

function patternOf(support: Support, place: number, among: number): Pattern {
  if (among === 1) return "plain";
  if (/\bleft\b|\bL\b/i.test(support.name)) return "left";
  if (/\bright\b|\bR\b/i.test(support.name)) return "right";
  return neither[place % neither.length];
}

/** The bands of a set, from the bottom of the stack to its top. */
export function bandsOf(supports: readonly Support[]): Band[] {
  const bands = supports.flatMap((support, column) => (support.band ? [{ support, column }] : []));
  return order.flatMap((kind) => {
    const own = bands.filter(({ support }) => support.kind === kind);
    return own.map(({ support, column }, place) => ({
      name: support.name,
      kind,
      pattern: patternOf(support, place, own.length),
      column,
    }));
  });
}

/** The stack at every stored pose: lower and upper edge (N) of each band, and where the poses stand on the axis (0..1). */
export interface Stack {
  bands: readonly Band[];
  weight: number;
  x: Float64Array;
  /** Per band, per pose. */
  lower: Float64Array[];
  upper: Float64Array[];
  /** Sum of all shares per pose, N; the weight when nothing is missing. */
  sum: Float64Array;
  /** Poses from..to (exclusive) that follow one another without a gap. */
  stretches: [number, number][];
  least: number;
  most: number;
}

/** What a stack needs of a solved set. */
export type Run = Pick<SetResult, "supports" | "shares" | "count" | "step" | "progress" | "steps" | "weight">;

/**
 * Stacks the shares: those that push up from 0 up, those that pull from 0 down. A share that is not a number
 * carries nothing here. `xOf` gives the place of a pose on the axis.
 */
export function stackOf(run: Run, xOf: (step: number, progress: number) => number): Stack {
  const bands = bandsOf(run.supports);
  const n = run.count;
  const lower = bands.map(() => new Float64Array(n));
  const upper = bands.map(() => new Float64Array(n));
  const x = new Float64Array(n);
  const sum = new Float64Array(n);
  let least = 0;
  let most = run.weight;
  for (let i = 0; i < n; i++) {
    x[i] = xOf(run.step[i], run.progress[i]);
    let up = 0;
    let down = 0;
    bands.forEach(({ column }, b) => {
      const given = run.shares[i * run.supports.length + column];
      const share = Number.isFinite(given) ? given : 0;
      const base = share >= 0 ? up : down;
      lower[b][i] = Math.min(base, base + share);
      upper[b][i] = Math.max(base, base + share);
      if (share >= 0) up += share;
      else down += share;
    });
    sum[i] = up + down;
    least = Math.min(least, down);
    most = Math.max(most, up);
  }
  return { bands, weight: run.weight, x, lower, upper, sum, stretches: stretchesOf(run), least, most };
}

/** Poses of steps, joined where one step follows another; a step that lost its equilibrium ends a stretch. */
function stretchesOf(run: Run): [number, number][] {
  const stretches: [number, number][] = [];
  for (const { first, count } of run.steps) {
    if (count === 0) continue;
    const last = stretches.at(-1);
    if (last !== undefined && last[1] === first) last[1] = first + count;
    else stretches.push([first, first + count]);
  }
  return stretches;
}

const px = (value: number): string => String(Math.round(value * 10) / 10);

/** Outline of the band between two edges over the poses where it is not empty; '' for a band that never carries. */
export function outline(
  stack: Pick<Stack, "x" | "stretches">,
  lower: Float64Array,
  upper: Float64Array,
  frame: Frame,
  thin: number,
): string {
  const point = (i: number, edge: Float64Array) =>
    `${px(frame.left + stack.x[i] * frame.width)} ${px(frame.y(edge[i]))}`;
  const carries = (i: number) => upper[i] - lower[i] > thin;
  let path = "";
  const piece = (from: number, to: number) => {
    const poses = Array.from({ length: to - from + 1 }, (_, k) => from + k);
    const along = poses.map((i) => point(i, upper));
    const back = poses.reverse().map((i) => point(i, lower));
    path += `M${[...along, ...back].join("L")}Z`;
  };
  for (const [first, end] of stack.stretches) {
    let from = -1;
    for (let i = first; i < end - 1; i++) {
      const open = carries(i) || carries(i + 1);
      if (open && from < 0) from = i;
      if (!open && from >= 0) {
        piece(from, i);
        from = -1;
      }
    }
    if (from >= 0) piece(from, end - 1);
  }
  return path;
}

/** A load below this part of the weight is not drawn. */
const unseen = 1e-6;

/** The outline of every band of a stack. */
export function bandPaths(stack: Stack, frame: Frame): string[] {
  return stack.bands.map((_, b) =>
    outline(stack, stack.lower[b], stack.upper[b], frame, stack.weight * unseen),
  );
}

/** Less than this part of the weight is no hole: lashings pull a little, and slopes turn a little sideways. */
const noHole = 0.002;

/** The hole: what is missing between the sum of the shares and the weight; '' when nothing is. */
export function holePath(stack: Stack, frame: Frame): string {
  const weight = new Float64Array(stack.sum.length).fill(stack.weight);
  const low = stack.sum.map((sum) => Math.min(sum, stack.weight));
  return outline(stack, low, weight, frame, stack.weight * noHole);
}

/** Where a label fits into a band: middle of a box that lies wholly inside it, px. */
export interface LabelPlace {
  x: number;
  y: number;
  /** How much higher than asked the band is there, px. */
  room: number;
}

const grid = 6;

/** The roomiest place for a label of the given size (px) inside a band, or null when there is none. */
export function labelPlace(
  stack: Stack,
  band: number,
  frame: Frame,
  size: { width: number; height: number },
): LabelPlace | null {
  const columns = Math.floor(frame.width / grid);
  const low = new Float64Array(columns).fill(Number.NEGATIVE_INFINITY);
  const high = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
  // The tightest edges within every column of the grid; a column that no solved stretch crosses holds no label.
  const seen = new Uint8Array(columns);
  for (const [first, end] of stack.stretches) {
    for (let i = first; i < end - 1; i++) {
      const from = Math.floor((stack.x[i] * frame.width) / grid);
      const to = Math.min(columns - 1, Math.floor((stack.x[i + 1] * frame.width) / grid));
      for (let c = Math.max(0, from); c <= to; c++) {
        seen[c] = 1;
        for (const i2 of edgesWithin(stack.x, i, (c * grid) / frame.width, ((c + 1) * grid) / frame.width)) {
          low[c] = Math.max(low[c], at(stack.lower[band], i, i2));
          high[c] = Math.min(high[c], at(stack.upper[band], i, i2));
        }
      }
    }
  }
  const span = Math.ceil(size.width / grid);
  let best: LabelPlace | null = null;
  for (let c = 0; c + span <= columns; c++) {
    let [floor, ceiling] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let k = c; k < c + span; k++) {
      floor = Math.max(floor, seen[k] === 1 ? low[k] : Number.POSITIVE_INFINITY);
      ceiling = Math.min(ceiling, high[k]);
    }
    if (!Number.isFinite(floor) || !Number.isFinite(ceiling)) continue;
    const room = frame.y(floor) - frame.y(ceiling) - size.height;
    if (room >= 0 && (best === null || room > best.room + 0.5)) {
      const x = frame.left + (c + span / 2) * grid;
      best = { x, y: (frame.y(floor) + frame.y(ceiling)) / 2, room };
    }
  }
  return best;
}

/** Parts 0..1 of the way from pose i to the next at which the piece enters and leaves a column of the grid. */
function edgesWithin(x: Float64Array, i: number, from: number, to: number): [number, number] {
  const way = x[i + 1] - x[i];
  if (way <= 0) return [0, 1];
  const part = (at: number) => Math.min(1, Math.max(0, (at - x[i]) / way));
  return [part(from), part(to)];
}

const at = (edge: Float64Array, i: number, part: number): number => edge[i] + (edge[i + 1] - edge[i]) * part;
