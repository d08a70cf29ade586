// The house holds: every import obeys the table of layers, there is no circle, and the table is the same wherever it is written.
import { readdirSync, readFileSync } from "node:fs";
import { posix, sep } from "node:path";
import { describe, expect, test } from "vitest";
import { circlesIn, importsOf } from "./tools/imports.ts";
import { core, faultOf, type Layer, layerOf, layers, mayImport } from "./tools/layers.ts";

const top = new URL("..", import.meta.url);
const text = (file: string) => readFileSync(new URL(file, top), "utf8");

/** Paths of every TypeScript file below a folder, from the project's top, with forward slashes. */
function filesBelow(folder: string): string[] {
  return readdirSync(new URL(`${folder}/`, top), { recursive: true, encoding: "utf8" })
    .map((name) => `${folder}/${name.split(sep).join("/")}`)
    .filter((name) => /\.tsx?$/.test(name))
    .sort();
}

const files = filesBelow("src");
const existing = layers.filter((layer) => files.some((file) => layerOf(file) === layer));

describe("the walk", () => {
  /** Fewer files than these mean that the walk has missed some. */
  const atLeast: Partial<Record<Layer, number>> = { numeric: 3, units: 4, section: 2, mechanics: 5, plan: 5 };

  test("found a plausible number of files in every layer", () => {
    expect(existing.length).toBeGreaterThanOrEqual(5);
    for (const layer of existing) {
      const count = files.filter((file) => layerOf(file) === layer).length;
      expect(count, `files in src/${layer}`).toBeGreaterThanOrEqual(atLeast[layer] ?? 2);
    }
    for (const root of ["src/main.tsx", "src/worker.ts", "src/proposer.ts", "src/cli.ts"])
      expect(files).toContain(root);
  });

  test("found no folder and no root beside the known ones", () => {
    const known: readonly string[] = [...layers, "main.tsx", "worker.ts", "proposer.ts", "cli.ts"];
    expect(files.filter((file) => !known.includes(layerOf(file)))).toEqual([]);
  });

  test("found imports: most files have some", () => {
    const withImports = files.filter((file) => importsOf(text(file)).length > 0);
    expect(withImports.length).toBeGreaterThan(files.length / 2);
  });
});

describe("imports", () => {
  test("obey the table of layers, and enter another layer by its index.ts", () => {
    const faults = files.flatMap((file) => importsOf(text(file)).map((one) => faultOf(file, one)));
    expect(faults.filter((fault) => fault !== undefined)).toEqual([]);
  });

  test("form no circle between files", () => {
    const graph = new Map(
      files.map((file) => [
        file,
        importsOf(text(file))
          .filter((one) => one.from.startsWith("."))
          .map((one) => posix.normalize(posix.join(posix.dirname(file), one.from))),
      ]),
    );
    expect(circlesIn(graph).map((circle) => circle.join(" -> "))).toEqual([]);
  });

  test("every layer has an index.ts", () => {
    for (const layer of existing) expect(files).toContain(`src/${layer}/index.ts`);
  });
});

describe("the reader of imports", () => {
  test("sees every form, and none in comments, strings and templates", () => {
    const sample = [
      'import a, { b } from "./1.ts";',
      'import type { C } from "./2.ts";',
      "import {\n  d,\n  type E,\n} from './3.ts';",
      'export * from "./4.ts";',
      'export type { F } from "./5.ts";',
      'import "./6.css";',
      'const g = () => import("./7.ts");',
      'type H = import("./8.ts").H;',
      '// import { no } from "./no.ts";',
      '/* export * from "./no.ts"; */',
      'const text = "import x from \\"./no.ts\\"";',
      `const long = \`import y from "./no.ts" \${f(\`}\`)}\`;`,
      'const quote = /"/; export { z } from "./9.ts";',
      "const i = (path: string) => import(path);",
    ].join("\n");
    const found = importsOf(sample);
    const names = [
      "./1.ts",
      "./2.ts",
      "./3.ts",
      "./4.ts",
      "./5.ts",
      "./6.css",
      "./7.ts",
      "./8.ts",
      "./9.ts",
      "",
    ];
    expect(found.map((one) => one.from)).toEqual(names);
    expect(found.filter((one) => one.typeOnly).map((one) => one.from)).toEqual(["./2.ts", "./5.ts"]);
    expect(found.filter((one) => one.dynamic).map((one) => one.from)).toEqual(["./7.ts", "./8.ts", ""]);
    expect(found.map((one) => one.line)).toEqual([1, 2, 3, 7, 8, 9, 10, 11, 16, 17]);
  });

  test("finds a circle of three and none in a diamond", () => {
    const circle = new Map(Object.entries({ a: ["b"], b: ["c"], c: ["a"] }));
    expect(circlesIn(circle)).toEqual([["a", "b", "c", "a"]]);
    const diamond = new Map(Object.entries({ a: ["b", "c"], b: ["d"], c: ["d"], d: [] }));
    expect(circlesIn(diamond)).toEqual([]);
  });

  test.each([
    ["src/mechanics/frame/a.ts", "../../plan/index.ts", /mechanics may import numeric, section; not plan/],
    ["src/mechanics/a.ts", "../section/plates.ts", /through its index\.ts only/],
    ["src/numeric/a.ts", "zod", /numeric may use none/],
    ["src/plan/a.ts", "node:fs", /plan may use zod/],
    ["src/cli.ts", "./app/index.ts", /knows no screen/],
    ["src/app/a.ts", "../worker.ts", /is a root/],
    ["src/plan/a.ts", "./b", /needs its ending/],
    ["src/plan/a.ts", "../../scenarios/demo.json", /not by the core/],
    ["src/scene/a.tsx", "../mechanics/index.ts", /not mechanics/],
  ])("%s may not import %s", (file, from, words) => {
    expect(faultOf(file, { from, typeOnly: false, dynamic: false, line: 1 })).toMatch(words);
  });

  test.each([
    ["src/mechanics/frame/a.ts", "../../section/index.ts"],
    ["src/mechanics/frame/a.ts", "../state/b.ts"],
    ["src/places/plan/a.tsx", "../../plan/index.ts"],
    ["src/places/plan/a.tsx", "../brief/b.tsx"],
    ["src/scene/a.tsx", "three/addons/controls/OrbitControls.js"],
    ["src/app/a.ts", "../../scenarios/demo.json"],
    ["src/main.tsx", "./places/index.ts"],
    ["src/cli.ts", "node:fs"],
  ])("%s may import %s", (file, from) => {
    expect(faultOf(file, { from, typeOnly: false, dynamic: false, line: 1 })).toBeUndefined();
  });
});

describe("the table of layers is one", () => {
  interface Override {
    includes: string[];
    linter: { rules: { style: { noRestrictedImports: { options: { patterns: { group: string[] }[] } } } } };
  }
  const { overrides } = JSON.parse(text("biome.json")) as { overrides: Override[] };

  /** The layers named in a pattern such as "../{plan,app}/**". */
  const named = (pattern: string) => (/^\.\.\/\{?([\w,]+)\}?\/\*\*$/.exec(pattern)?.[1] ?? "").split(",");

  test.each(layers)("in biome.json for %s", (layer) => {
    const override = overrides.find((one) => one.includes.includes(`src/${layer}/**`));
    expect(override, `an override for src/${layer}/**`).toBeDefined();
    const groups =
      override?.linter.rules.style.noRestrictedImports.options.patterns.map((p) => p.group) ?? [];
    const banned = groups.filter((group) => !group.includes("*") && !group.includes("!**/index.ts"));
    const allowed: readonly string[] = mayImport[layer];
    const others = layers.filter((other) => other !== layer && !allowed.includes(other));
    expect(banned.flatMap((group) => named(group[0]))).toEqual(others);
  });

  test.each(layers)("in DEVELOPERS.md for %s", (layer) => {
    const row = text("DEVELOPERS.md")
      .split("\n")
      .find((line) => line.startsWith(`| \`${layer}/\` |`));
    expect(row, `a row for ${layer}/`).toBeDefined();
    const cell = row?.split("|").at(-2)?.trim() ?? "";
    const allowed: readonly string[] = mayImport[layer];
    const above = layers.slice(0, layers.indexOf(layer));
    const written = cell === "all above it" ? above : cell === "nothing" ? [] : cell.split(", ");
    expect([...written].sort()).toEqual([...allowed].sort());
  });

  test("in tsconfig.core.json: the core, and nothing of a browser or of Node", () => {
    const { compilerOptions, include } = JSON.parse(text("tsconfig.core.json")) as {
      compilerOptions: { lib: string[]; types: string[] };
      include: string[];
    };
    expect(include).toEqual(core.map((layer) => `src/${layer}`));
    expect(compilerOptions.lib).toEqual(["ES2023"]);
    expect(compilerOptions.types).toEqual([]);
  });
});

describe("habits", () => {
  const own = [...files, ...filesBelow("tests")].filter((file) => file !== "tests/architecture.test.ts");

  test("every file opens with a comment that says its one idea", () => {
    expect(own.filter((file) => !/^(#!.*\n)?\/[/*]/.test(text(file)))).toEqual([]);
  });

  test("no file is longer than 400 lines", () => {
    expect(own.filter((file) => text(file).split("\n").length > 401)).toEqual([]);
  });

  test("nothing is left undone, switched off or waved through", () => {
    const signs =
      /\b(TODO|FIXME|XXX)\b|@ts-(ignore|nocheck|expect-error)|\b(test|it|describe)\.(skip|only|todo)\b/;
    const found = own.flatMap((file) =>
      text(file)
        .split("\n")
        .flatMap((line, n) => (signs.test(line) ? [`${file}:${n + 1}: ${line.trim()}`] : [])),
    );
    expect(found).toEqual([]);
  });

  test("a lint rule is switched off only with its reason beside it", () => {
    const found = own.flatMap((file) =>
      text(file)
        .split("\n")
        .flatMap((line, n) => (/biome-ignore(?!.*: \S.{10,})/.test(line) ? [`${file}:${n + 1}`] : [])),
    );
    expect(found).toEqual([]);
  });
});
