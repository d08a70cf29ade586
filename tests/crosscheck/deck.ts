// The text of one run of the finite-element program: nodes, elements, linear forms on them, springs, prints.
//
// Every support is put on a scalar node of its own: an equation makes the third displacement of that node equal to a
// linear form on the model, and a spring ties it to a second node, which is held. The datum enters as a load on the first
// node, stiffness times datum: the program's springs do not feel a displacement that is given to their second node.
// Force of the support = that load + the reaction at the second node, which is printed to seven digits.

/** One term of a linear form: node, its displacement (1 to 3) and a factor. */
export type Term = readonly [node: number, dof: number, factor: number];

/** A spring on a linear form: force = stiffness (datum - value); `open` leaves the spring out and keeps the value. */
export interface Spring {
  name: string;
  row: readonly Term[];
  stiffness: number;
  datum: number;
  open: boolean;
}

/** The program reads numbers of at most 20 characters, and needs a point to see a real number. */
export function real(x: number): string {
  if (!Number.isFinite(x)) throw new RangeError(`${x} cannot be written into a deck`);
  return x.toExponential(12);
}

/** The third component printed for a node, less a number. */
export interface Reading {
  node: number;
  less: number;
}

/** Something must hang on a node, or the program leaves it out: a millionth of a newton per metre. */
const FAINT = 1e-6;

/** One deck under construction. Numbers of nodes and elements are handed out from 1. */
export class Deck {
  private nodes: string[] = [];
  private model: string[] = [];
  private loads: string[] = [];
  private nodeCount = 0;
  private elementCount = 0;
  private names = 0;
  /** What is printed of every linear form above its datum, and of the force of every spring that is not open. */
  readonly values = new Map<string, Reading>();
  readonly reactions = new Map<string, Reading>();

  /** A new node; gives its number. */
  node(x: number, y: number, z: number): number {
    this.nodeCount++;
    this.nodes.push(`${this.nodeCount},${real(x)},${real(y)},${real(z)}`);
    return this.nodeCount;
  }

  /** New elements of one type, as a set whose name is given back. */
  elements(type: string, list: readonly (readonly number[])[]): string {
    const name = this.name("E");
    this.model.push(`*ELEMENT,TYPE=${type},ELSET=${name}`);
    for (const nodes of list) this.model.push(`${++this.elementCount},${nodes.join(",")}`);
    return name;
  }

  /** A name that no other set or material has. */
  name(letter: string): string {
    return `${letter}${++this.names}`;
  }

  /** Lines of the model part (before the step), as they are. */
  add(...lines: string[]): void {
    this.model.push(...lines);
  }

  /** Lines of the step. */
  load(...lines: string[]): void {
    this.loads.push(...lines);
  }

  /** Holds a displacement of a node at zero. */
  hold(node: number, dof: number): void {
    this.model.push("*BOUNDARY", `${node},${dof},${dof}`);
  }

  /** A linear elastic material; density in kg/m3, 0 for none. */
  material(E: number, G: number, density: number): string {
    const name = this.name("M");
    this.model.push(`*MATERIAL,NAME=${name}`, "*ELASTIC", `${real(E)},${real(E / (2 * G) - 1)}`);
    if (density > 0) this.model.push("*DENSITY", real(density));
    return name;
  }

  /** A node whose third displacement is a linear form; terms of one displacement are summed. */
  private form(row: readonly Term[]): number {
    const v = this.scalar();
    const sum = new Map<string, Term>();
    for (const [node, dof, factor] of row) {
      const key = `${node}.${dof}`;
      sum.set(key, [node, dof, (sum.get(key)?.[2] ?? 0) + factor]);
    }
    const terms: Term[] = [[v, 3, 1]];
    for (const [node, dof, factor] of sum.values()) if (factor !== 0) terms.push([node, dof, -factor]);
    this.model.push("*EQUATION", `${terms.length}`);
    for (let i = 0; i < terms.length; i += 4)
      this.model.push(
        terms
          .slice(i, i + 4)
          .map(([node, dof, factor]) => `${node},${dof},${real(factor)}`)
          .join(","),
      );
    return v;
  }

  /** A node that stands for one number, its third displacement. */
  scalar(): number {
    const node = this.node(0, 0, 0);
    this.model.push("*BOUNDARY", `${node},1,2`);
    return node;
  }

  /** A spring on a linear form; its value and force are printed under its name. */
  spring({ name, row, stiffness, datum, open }: Spring): void {
    const v = this.form(row);
    this.values.set(name, { node: v, less: datum });
    const ground = this.tie(v, open ? FAINT : stiffness);
    if (open) return;
    if (datum !== 0) this.load("*CLOAD", `${v},3,${real(stiffness * datum)}`);
    this.reactions.set(name, { node: ground, less: -stiffness * datum });
  }

  /** Prints a linear form under a name. */
  watch(name: string, row: readonly Term[]): void {
    this.spring({ name, row, stiffness: FAINT, datum: 0, open: true });
  }

  private tie(v: number, stiffness: number): number {
    const ground = this.scalar();
    this.hold(ground, 3);
    const set = this.elements("SPRING2", [[v, ground]]);
    this.model.push(`*SPRING,ELSET=${set}`, "3,3", real(stiffness));
    return ground;
  }

  /** The whole deck as a static analysis, which prints every value and every reaction. */
  staticText(): string {
    const set = (name: string, readings: Iterable<Reading>) => [
      `*NSET,NSET=${name}`,
      ...[...readings].map(({ node }) => String(node)),
    ];
    const lines = [...set("VALUES", this.values.values())];
    const prints = ["*NODE PRINT,NSET=VALUES", "U"];
    if (this.reactions.size > 0) {
      lines.push(...set("GROUND", this.reactions.values()));
      prints.push("*NODE PRINT,NSET=GROUND", "RF");
    }
    return this.text([...lines, "*STEP", "*STATIC"], prints);
  }

  /** The whole deck as a search for factors on all its loads at which it buckles, with the buckled shapes of all nodes. */
  bucklingText(factors: number): string {
    return this.text(["*STEP", "*BUCKLE", `${factors},1.e-4`], ["*NODE FILE,NSET=NALL,OUTPUT=2D", "U"]);
  }

  private text(step: readonly string[], output: readonly string[]): string {
    const parts = ["*NODE,NSET=NALL", ...this.nodes, ...this.model, ...step, ...this.loads, ...output];
    return `${parts.join("\n")}\n*END STEP\n`;
  }
}
