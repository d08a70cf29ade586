// Runs the finite-element program on a deck, in a folder of its own that is gone afterwards.

import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findOrInstallCalculix } from "../tools/calculix.mjs";
import type { Deck, Reading } from "./deck.ts";
import { type Printed, readFields, readPrinted } from "./results.ts";

let path: string | undefined;

/** One run: what was printed, and what the whole process took, s. */
export interface Run {
  printed: Printed;
  /** Displacement fields, when the deck asked for them: node to [x, y, z]. */
  fields: Map<number, [number, number, number]>[];
  time_s: number;
}

/**
 * Runs a deck text to its end, on one processor.
 * @throws {Error} with the program's own words when it fails
 */
export function runText(text: string): Run {
  path ??= findOrInstallCalculix();
  const folder = mkdtempSync(join(tmpdir(), "handspan-ccx-"));
  try {
    writeFileSync(join(folder, "job.inp"), text);
    const start = performance.now();
    const end = spawnSync(path, ["-i", "job"], {
      cwd: folder,
      encoding: "utf8",
      timeout: 120_000,
      maxBuffer: 1 << 26,
      env: { ...process.env, OMP_NUM_THREADS: "1" },
    });
    const time_s = (performance.now() - start) / 1000;
    const said = `${end.stdout ?? ""}${end.stderr ?? ""}`;
    if (end.status !== 0 || /\*ERROR/.test(said) || !/Job finished/.test(said))
      throw new Error(
        `the finite-element program failed (${end.error?.message ?? end.status}):\n${tail(said)}`,
      );
    const read = (ending: string) => {
      const file = join(folder, `job.${ending}`);
      return existsSync(file) ? readFileSync(file, "utf8") : "";
    };
    return { printed: readPrinted(read("dat")), fields: readFields(read("frd")), time_s };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The lines of an output from its first error on, or its last ones. */
function tail(text: string): string {
  const lines = text.split("\n").filter((line) => line.trim() !== "");
  const first = lines.findIndex((line) => line.includes("*ERROR"));
  return lines.slice(first < 0 ? -20 : first, first < 0 ? undefined : first + 20).join("\n");
}

/** The answer of one static run: force of every closed support, and what every linear form is above its datum. */
export interface StaticRun {
  forces: Map<string, number>;
  values: Map<string, number>;
  time_s: number;
}

/** Runs a static deck. */
export function runStatics(deck: Deck): StaticRun {
  const { printed, time_s } = runText(deck.staticText());
  const pick = (readings: Map<string, Reading>, from: Map<number, [number, number, number]>) =>
    new Map(
      [...readings].map(([name, { node, less }]) => {
        const found = from.get(node);
        if (!found) throw new Error(`nothing was printed for ${name}`);
        return [name, found[2] - less];
      }),
    );
  const values = pick(deck.values, printed.displacements);
  return { forces: pick(deck.reactions, printed.forces), values, time_s };
}

/** The least buckling factor of a deck. */
export interface BucklingRun {
  factor: number;
  /** Greatest sideways displacement of the given nodes, as a share of the greatest displacement of any node. */
  sideways: number;
  time_s: number;
}

/**
 * Runs a deck for the least factor on its loads at which it buckles.
 * @param middle nodes at mid-height of the webs: they stay still where only a plate buckles
 */
export function runBuckling(deck: Deck, middle: readonly number[]): BucklingRun {
  const { printed, fields, time_s } = runText(deck.bucklingText(2));
  const factor = Math.min(...printed.bucklingFactors.filter((x) => x > 0));
  // The first field is that of the loads themselves; then come the shapes, one for each factor.
  const shape = fields[1 + printed.bucklingFactors.indexOf(factor)];
  if (!Number.isFinite(factor) || !shape)
    throw new Error("no buckling factor, or no shape of it, was printed");
  let most = 0;
  for (const [x, y, z] of shape.values()) most = Math.max(most, Math.hypot(x, y, z));
  const sideways = Math.max(...middle.map((node) => Math.abs(shape.get(node)?.[1] ?? 0)));
  return { factor, sideways: sideways / most, time_s };
}
