// A load chart as curves: rows of each boom length by radius, drawn as the checks read them, and rows that need a look.
import type { Chart, ChartRow } from "../../../../plan/index.ts";
import type { Scale } from "./axes.ts";

/** The rows of one boom length by radius, each with its index in the plan. */
export interface Curve {
  readonly boom: number;
  readonly rows: readonly (ChartRow & { readonly index: number })[];
}

/** Curves by boom length, the shortest first. */
export function curvesOf({ rows }: Chart): Curve[] {
  const all = rows.map((row, index) => ({ ...row, index }));
  const booms = [...new Set(rows.map((row) => row.boom_m))].sort((a, b) => a - b);
  return booms.map((boom) => ({
    boom,
    rows: all.filter((row) => row.boom_m === boom).sort((a, b) => a.radius_m - b.radius_m),
  }));
}

/** Whether ratings between two rows are read along the line between them: only where the page that allows it is quoted. */
export const readsBetween = (chart: Chart): boolean => chart.interpolation && (chart.page ?? "") !== "";

/**
 * The curve as a path. Without leave to interpolate, a radius between two rows has the rating of the next larger one, so
 * that the curve goes down (or up) right behind each row and then level to the next.
 */
export function curvePath({ rows }: Curve, between: boolean, x: Scale, y: Scale): string {
  return rows
    .map((row, i) => {
      const [px, py] = [x(row.radius_m).toFixed(1), y(row.rated_t).toFixed(1)];
      if (i === 0) return `M${px} ${py}`;
      return between ? `L${px} ${py}` : `V${py}H${px}`;
    })
    .join("");
}

/** A row that needs a look, and why. */
export interface RowFlag {
  readonly index: number;
  readonly why: "out of order" | "doubled" | "rising";
  readonly words: string;
}

/**
 * Rows that are doubled, stand behind a larger radius of the same boom, or rate more than a smaller radius of the same
 * boom does. None of these is an error of the file: a chart is read by radius whatever its order, and of two rows of one
 * radius the first counts. `say` prints a length in m, `load` a rating in t.
 */
export function rowFlags(chart: Chart, say: (m: number) => string, load: (t: number) => string): RowFlag[] {
  const flags: RowFlag[] = [];
  const last = new Map<number, number>();
  const seen = new Map<string, number>();
  chart.rows.forEach(({ radius_m, boom_m, rated_t }, index) => {
    const key = `${boom_m} ${radius_m}`;
    const first = seen.get(key);
    const before = last.get(boom_m);
    const boom = `boom ${say(boom_m)}`;
    if (first !== undefined) {
      const same = chart.rows[first].rated_t === rated_t;
      flags.push({
        index,
        why: "doubled",
        words: `Row ${index + 1} repeats radius ${say(radius_m)}, ${boom}, of row ${first + 1}${
          same ? "" : ` with another rating, ${load(rated_t)} instead of ${load(chart.rows[first].rated_t)}`
        }. The first of them counts: take one out.`,
      });
    } else if (before !== undefined && radius_m < before) {
      flags.push({
        index,
        why: "out of order",
        words: `Row ${index + 1}, radius ${say(radius_m)}, ${boom}, stands behind radius ${say(before)}. It is read by its radius; see whether it was mistyped.`,
      });
    }
    if (first === undefined) seen.set(key, index);
    last.set(boom_m, Math.max(before ?? radius_m, radius_m));
  });
  for (const { boom, rows } of curvesOf(chart)) {
    for (let i = 1; i < rows.length; i++) {
      const [a, b] = [rows[i - 1], rows[i]];
      if (b.radius_m > a.radius_m && b.rated_t > a.rated_t)
        flags.push({
          index: b.index,
          why: "rising",
          words: `Row ${b.index + 1} rates ${load(b.rated_t)} at radius ${say(b.radius_m)}, boom ${say(boom)}: more than the ${load(a.rated_t)} at ${say(a.radius_m)}. A rating does not rise with the radius; see the chart's page.`,
        });
    }
  }
  return flags.sort((a, b) => a.index - b.index);
}
