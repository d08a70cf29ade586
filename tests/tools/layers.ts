// The layers of src/: who may import whom, and the judging of a file's imports by it.
import { posix } from "node:path";
import type { Import } from "./imports.ts";

/** The layers from the bottom up; each with those that it may import. */
export const mayImport = {
  numeric: [],
  units: [],
  section: ["numeric"],
  mechanics: ["numeric", "section"],
  plan: ["units", "section"],
  sequence: ["plan", "mechanics", "units", "section", "numeric"],
  shape: ["plan", "sequence", "numeric"],
  checks: ["numeric", "units", "section", "mechanics", "plan", "sequence", "shape"],
  report: ["numeric", "units", "section", "mechanics", "plan", "sequence", "shape", "checks"],
  app: ["numeric", "units", "section", "mechanics", "plan", "sequence", "shape", "checks", "report"],
  controls: ["units"],
  scene: ["app", "shape", "plan", "sequence", "units"],
  share: ["app", "report", "units"],
  places: [
    ...["numeric", "units", "section", "mechanics", "plan", "sequence", "shape", "checks", "report"],
    ...["app", "controls", "scene", "share"],
  ],
} as const satisfies Record<string, readonly string[]>;

export type Layer = keyof typeof mayImport;
export const layers = Object.keys(mayImport) as readonly Layer[];

/** Layers that know no browser; they run in the page, in the worker and in Node alike. */
export const core: readonly Layer[] = layers.slice(0, layers.indexOf("report") + 1);

/** Packages that a layer may use. Whatever is not named here may use none. */
export const packages: Readonly<
  Partial<Record<Layer | "main.tsx" | "worker.ts" | "proposer.ts" | "cli.ts", readonly string[]>>
> = {
  mechanics: ["zod"],
  plan: ["zod"],
  report: ["d3-dsv"],
  app: ["comlink", "zustand", "d3-dsv"],
  controls: ["react", "react-dom"],
  scene: ["react", "three", "@react-three/fiber", "zustand"],
  share: ["react", "react-dom", "zustand"],
  places: ["react", "react-dom", "zustand", "d3-dsv"],
  "main.tsx": ["react", "react-dom", "@fontsource/ibm-plex-sans"],
  "worker.ts": ["comlink"],
  "proposer.ts": ["comlink"],
  "cli.ts": ["node:*"],
};

const roots = ["main.tsx", "worker.ts", "proposer.ts", "cli.ts"] as const;
const threads: readonly string[] = ["worker.ts", "proposer.ts"];
const screen: readonly string[] = ["app", "controls", "scene", "share", "places"];

/** A file's layer, or its own name for a root: `src/plan/read.ts` gives "plan", `src/cli.ts` gives "cli.ts". */
export function layerOf(file: string): string {
  const [, first] = file.split("/");
  return first;
}

function packageAllowed(name: string, allowed: readonly string[]): boolean {
  return allowed.some((entry) =>
    entry.endsWith("*")
      ? name.startsWith(entry.slice(0, -1))
      : name === entry || name.startsWith(`${entry}/`),
  );
}

/**
 * What is wrong with one import of one file, as a sentence; undefined when nothing is.
 * @param file path from the project's top, with forward slashes: "src/plan/read.ts"
 */
export function faultOf(file: string, one: Import): string | undefined {
  const say = (text: string) => `${file}:${one.line}: ${text}`;
  if (one.from === "") return say("a dynamic import must name its file in quotes.");
  const layer = layerOf(file);
  if (!one.from.startsWith(".")) {
    const allowed = packages[layer as Layer] ?? [];
    if (packageAllowed(one.from, allowed)) return undefined;
    return say(`'${one.from}' is a package; ${layer} may use ${allowed.join(", ") || "none"}.`);
  }
  const path = one.from.replace(/\?.*$/, "");
  const target = posix.normalize(posix.join(posix.dirname(file), path));
  if (!/\.(ts|tsx|css|json)$/.test(path)) return say(`'${one.from}' needs its ending (.ts, .tsx).`);
  if (!target.startsWith("src/")) {
    const data = target === "package.json" || /^scenarios\/.+\.json$/.test(target);
    if (data && !(core as readonly string[]).includes(layer)) return undefined;
    return say(
      `'${one.from}' lies outside of src; only package.json and scenarios may be read, and not by the core.`,
    );
  }
  const to = layerOf(target);
  if (to === layer) return undefined;
  if ((roots as readonly string[]).includes(to)) {
    if (layer === "app" && threads.includes(to) && (one.typeOnly || /[?&]worker\b/.test(one.from)))
      return undefined;
    return say(`'${one.from}' is a root; nothing imports a root, but app the type of the worker.`);
  }
  if (layer === "cli.ts" || threads.includes(layer)) {
    if (screen.includes(to)) return say(`${layer} knows no screen and may not import ${to}.`);
  } else if (layer !== "main.tsx") {
    const allowed: readonly string[] = mayImport[layer as Layer] ?? [];
    if (!allowed.includes(to))
      return say(`${layer} may import ${allowed.join(", ") || "nothing"}; not ${to}.`);
  }
  if (target !== `src/${to}/index.ts` && !target.endsWith(".css")) {
    return say(`'${one.from}': another layer is reached through its index.ts only.`);
  }
  return undefined;
}
