// How a number was worked out, as data: a tree of symbols with their formulas, down to the plan, a source or the statics.
//
// One call works a number out and, where a recorder is handed in, writes down how; without one it costs nothing:
//   const L_p = trace(rec, "L_p", 1.76 * r_y * Math.sqrt(E / F_y), "1.76*r_y*sqrt(E/F_y)", "m", "limit of yielding");
// Formulas are ordinary infix: + - * / ^, parentheses, comparisons, a ? b : c, and sqrt, min, max, abs, atan, sin, cos, tan, acos. All values in SI.

/** Where a solved number was taken: a pose of the operation. */
export interface Place {
  set: string;
  /** Step id; '' where no step is run. */
  step: string;
  progress: number;
}

/** Where a number comes from that is not worked out here. */
export type Leaf =
  /** A field of the plan, as `sets[0].girders[1].y_m`; the value is the one that stands there, in its own unit. */
  | { path: string }
  /** A constant of nature, of a rule or of practice, with its source. */
  | { constant: string }
  /** Something that the statics of a pose gave. */
  | { solved: string; at: Place };

/** One number with how it was worked out. */
export interface Trace {
  symbol: string;
  words: string;
  /** SI, as 'N m'; '1' for a ratio. A leaf of the plan has the unit of its field. */
  unit: string;
  value: number;
  /** Over the symbols of `from`. */
  formula?: string;
  source?: string;
  clause?: string;
  from: Trace[];
  leaf?: Leaf;
}

const functions: ReadonlySet<string> = new Set([
  "sqrt",
  "min",
  "max",
  "abs",
  "atan",
  "sin",
  "cos",
  "tan",
  "acos",
]);
const PI: Trace = {
  symbol: "pi",
  words: "circumference of a circle over its diameter",
  unit: "1",
  value: Math.PI,
  from: [],
  leaf: { constant: "mathematics" },
};

/** Symbols of a formula in the order of their first use; names of functions and exponents of numbers are none. */
export function symbolsIn(formula: string): string[] {
  const words = formula.match(/\d+(?:\.\d+)?(?:[eE][+-]?\d+)?|[A-Za-z_]\w*/g) ?? [];
  return [...new Set(words.filter((word) => /^[A-Za-z_]/.test(word) && !functions.has(word)))];
}

/** Writes traces down by their symbols. A part with symbols of its own has a recorder of its own, which sees its parent's. */
export class Recorder {
  readonly place: Place;
  private readonly parent: Recorder | null;
  private readonly known = new Map<string, Trace>();
  private told: [string, string | null] | null = null;

  constructor(place: Place, parent: Recorder | null = null) {
    this.place = place;
    this.parent = parent;
  }

  /** A recorder for a part, whose symbols do not show here unless they are taken over. */
  part(): Recorder {
    return new Recorder(this.place, this);
  }

  /** Takes over a trace of a part. */
  take(part: Recorder, symbol: string): void {
    this.put(part.of(symbol));
  }

  put(trace: Trace): void {
    this.known.set(trace.symbol, trace);
  }

  /** The trace of a symbol; throws an Error when none was written. */
  of(symbol: string): Trace {
    if (symbol === "pi") return PI;
    const found = this.known.get(symbol) ?? this.parent?.of(symbol);
    if (found === undefined)
      throw new Error(`the trace has no '${symbol}': write it down before a formula that names it`);
    return found;
  }

  /** Tells which symbols are the value and the limit of a reading; null where it has no limit. */
  ends(value: string, limit: string | null): void {
    this.told = [value, limit];
  }

  /** Value and limit of the reading that was recorded; null where the check did not apply. */
  reading(): { value: Trace; limit: Trace | null } | null {
    if (this.told === null) return null;
    const [value, limit] = this.told;
    return { value: this.of(value), limit: limit === null ? null : this.of(limit) };
  }
}

/**
 * A number that was worked out, with the formula that worked it out: gives the number back.
 * Throws an Error, with a recorder only, where the formula names a symbol that was not written down before.
 */
export function trace(
  rec: Recorder | null,
  symbol: string,
  value: number,
  formula: string,
  unit: string,
  words: string,
  source = "",
  clause = "",
): number {
  if (rec !== null) {
    const one: Trace = {
      symbol,
      words,
      unit,
      value,
      formula,
      from: symbolsIn(formula).map((s) => rec.of(s)),
    };
    if (source !== "") one.source = source;
    if (clause !== "") one.clause = clause;
    rec.put(one);
  }
  return value;
}

/** A constant with its source. */
export function constant(
  rec: Recorder | null,
  symbol: string,
  value: number,
  unit: string,
  words: string,
  source: string,
): number {
  if (rec !== null) rec.put({ symbol, words, unit, value, from: [], leaf: { constant: source } });
  return value;
}

/** A number that the statics of the pose gave; `what` says which. */
export function solved(
  rec: Recorder | null,
  symbol: string,
  value: number,
  unit: string,
  what: string,
): number {
  if (rec !== null)
    rec.put({ symbol, words: what, unit, value, from: [], leaf: { solved: what, at: rec.place } });
  return value;
}

/** What a plan's field is in, and how it is brought to SI: the value is `stated` with this behind it. */
export interface FieldUnit {
  unit: string;
  /** Unit in SI. */
  si: string;
  /** '' where the field is in SI already. */
  change: "" | "/1000" | "*1000" | "*1e6" | "*1e9" | "/100" | "*pi/180";
}

/** A number of the plan: the field as it stands there, and the value in SI that it gives. */
export function field(
  rec: Recorder | null,
  symbol: string,
  value: number,
  words: string,
  path: string,
  stated: number,
  { unit, si, change }: FieldUnit,
): number {
  if (rec === null) return value;
  const named = change === "" ? symbol : `${symbol}_${unit.replaceAll(/\W/g, "")}`;
  const leaf: Trace = { symbol: named, words, unit, value: stated, from: [], leaf: { path } };
  if (change === "") rec.put(leaf);
  else
    rec.put({
      symbol,
      words,
      unit: si,
      value,
      formula: `${named}${change}`,
      from: change.includes("pi") ? [leaf, PI] : [leaf],
    });
  return value;
}

export const MM: FieldUnit = { unit: "mm", si: "m", change: "/1000" };
export const METRE: FieldUnit = { unit: "m", si: "m", change: "" };
export const KN: FieldUnit = { unit: "kN", si: "N", change: "*1000" };
export const KNM: FieldUnit = { unit: "kNm", si: "N m", change: "*1000" };
export const MPA: FieldUnit = { unit: "MPa", si: "Pa", change: "*1e6" };
export const GPA: FieldUnit = { unit: "GPa", si: "Pa", change: "*1e9" };
export const TONNE: FieldUnit = { unit: "t", si: "kg", change: "*1000" };
export const DEGREE: FieldUnit = { unit: "deg", si: "rad", change: "*pi/180" };
export const NUMBER: FieldUnit = { unit: "1", si: "1", change: "" };

/** Every trace of a tree once, leaves before what is worked out of them. */
export function tracesIn(root: Trace): Trace[] {
  const seen = new Set<Trace>();
  const out: Trace[] = [];
  const walk = (one: Trace) => {
    if (seen.has(one)) return;
    seen.add(one);
    one.from.forEach(walk);
    out.push(one);
  };
  walk(root);
  return out;
}
