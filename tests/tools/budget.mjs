// The sizes of what a visitor loads, gzipped, against their limits. Reads the build's manifest: names of chunks are not guessed.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";

/**
 * @typedef {{ file: string, name?: string, src?: string, isEntry?: boolean, isDynamicEntry?: boolean, imports?: string[], dynamicImports?: string[], css?: string[], assets?: string[] }} Chunk
 * @typedef {{ name: string, size_kB: number, limit_kB: number, over: boolean, note: string }} Line
 */

/**
 * Above its aim by this factor a part that has only an aim fails: the worker holds the whole solver with every check of
 * girders, machines, ground, wind, landing and clearances, each with the words and formulas of its traces, in one file that
 * is loaded behind the first picture and kept for use without a network.
 */
const tolerance = 6;

/** Limits in kB (1000 bytes) gzipped. */
const limits = { shell: 185, scene: 220, worker: 40, lazy: 30, css: 15, fonts: 80 };

/**
 * Weighs a built site.
 * @param {string} site folder of the build, with its .vite/manifest.json
 * @returns {Line[]} one line per part
 * @throws {Error} when there is no build, or it has no entry
 */
export function weigh(site) {
  const place = join(site, ".vite/manifest.json");
  if (!existsSync(place)) throw new Error(`${place} is missing: build the page first.`);
  /** @type {Record<string, Chunk>} */
  const manifest = JSON.parse(readFileSync(place, "utf8"));
  const entry = Object.keys(manifest).find((key) => manifest[key].isEntry);
  if (entry === undefined) throw new Error(`${place} names no entry.`);

  /** @param {Iterable<string>} files */
  const weight = (files) => {
    let sum = 0;
    for (const file of new Set(files)) sum += gzipSync(readFileSync(join(site, file)), { level: 9 }).length;
    return sum / 1000;
  };
  /**
   * A chunk and all that is loaded with it at once.
   * @param {string} key
   * @param {Set<string>} [seen]
   */
  const withImports = (key, seen = new Set()) => {
    if (seen.has(key)) return seen;
    seen.add(key);
    for (const next of manifest[key].imports ?? []) withImports(next, seen);
    return seen;
  };
  /** @param {Iterable<string>} keys */
  const filesOf = (keys) => [...keys].map((key) => manifest[key].file);

  /** @type {Line[]} */
  const lines = [];
  /**
   * @param {string} name
   * @param {number} size_kB
   * @param {number} limit_kB
   * @param {boolean} firm a firm limit fails at once; an aim fails only far above
   */
  const judge = (name, size_kB, limit_kB, firm) => {
    const over = size_kB > limit_kB * (firm ? 1 : tolerance);
    const note = over
      ? "TOO HEAVY"
      : size_kB > limit_kB
        ? `above the aim, fails at ${limit_kB * tolerance} kB`
        : "";
    lines.push({ name, size_kB, limit_kB, over, note });
  };

  const shell = withImports(entry);
  judge("shell (page, tables, forms)", weight(filesOf(shell)), limits.shell, true);

  /** A chunk that another one shares is no entry of its own in the manifest, though it is loaded on demand too. @param {string} key */
  const isScene = (key) => /(^|\/)src\/scene\//.test(key) || manifest[key].name === "scene";
  const asked = Object.values(manifest).flatMap((chunk) => chunk.dynamicImports ?? []);
  const lazy = [
    ...new Set([...Object.keys(manifest).filter((key) => manifest[key].isDynamicEntry), ...asked]),
  ];
  if (!lazy.some(isScene)) throw new Error(`${place} names no chunk of the 3D scene.`);
  const counted = new Set(shell);
  for (const key of lazy.sort((a, b) => Number(isScene(b)) - Number(isScene(a)))) {
    const own = [...withImports(key)].filter((part) => !counted.has(part));
    for (const part of own) counted.add(part);
    const name = manifest[key].src ?? key;
    if (isScene(key)) judge(`3D scene (${name})`, weight(filesOf(own)), limits.scene, true);
    else judge(`loaded on demand: ${name}`, weight(filesOf(own)), limits.lazy, false);
  }

  const assets = readdirSync(join(site, "assets")).map((file) => `assets/${file}`);
  const inManifest = new Set(Object.values(manifest).map((chunk) => chunk.file));
  const workers = assets.filter((file) => file.endsWith(".js") && !inManifest.has(file));
  for (const file of workers) judge(`worker (${file})`, weight([file]), limits.worker, false);

  const css = assets.filter((file) => file.endsWith(".css"));
  if (css.length > 0) judge("style sheets", weight(css), limits.css, false);
  const fonts = assets.filter((file) => file.endsWith(".woff2"));
  if (fonts.length > 0) judge("fonts (woff2)", weight(fonts), limits.fonts, false);
  return lines;
}

/** @param {Line} line */
export function show(line) {
  const numbers = `${line.size_kB.toFixed(1).padStart(7)} kB of ${String(line.limit_kB).padStart(3)}`;
  return `  ${numbers}  ${line.name}${line.note ? `  (${line.note})` : ""}`;
}
