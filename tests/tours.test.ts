// Every layer's index.ts opens with a tour: an example in its leading comment. Here the examples run.
//
// The form: lines between ` * ```ts` and ` * ``` `, importing from "./index.ts". A line `expression; // => value`
// is a claim, compared in depth; every tour makes at least one.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { layers } from "./tools/layers.ts";

const top = fileURLToPath(new URL("..", import.meta.url));

/** The example in the leading comment of a file's text, or undefined. */
function exampleIn(text: string): string | undefined {
  const comment = /^\/\*\*?[\s\S]*?\*\//.exec(text)?.[0] ?? "";
  const plain = comment.split("\n").map((line) => line.replace(/^ \* ?/, ""));
  const start = plain.indexOf("```ts");
  const end = plain.indexOf("```", start + 1);
  return start < 0 || end < 0 ? undefined : plain.slice(start + 1, end).join("\n");
}

/** The module that runs an example: its claims become calls of `check(found, claimed, line)`. */
function moduleOf(example: string, index: string): { code: string; claims: number } {
  const importLine = /^import\s[^;]*?from\s*"[^"]*";[^\n]*$/gm;
  const imports = (example.match(importLine) ?? []).map((one) =>
    one.replace('"./index.ts"', JSON.stringify(index)),
  );
  let claims = 0;
  const body = example
    .replace(importLine, "")
    .replace(/^(.+?);\s*\/\/ => (.+)$/gm, (line, found, claimed) => {
      claims += 1;
      return `check((${found}), (${claimed}), ${JSON.stringify(line)});`;
    });
  const head =
    "export async function tour(check: (found: unknown, claimed: unknown, line: string) => void) {";
  return { code: [...imports, head, body, "}", ""].join("\n"), claims };
}

/** Runs an example, comparing every claim; gives the number of claims made. */
async function runTour(name: string, example: string, index: string): Promise<number> {
  const { code, claims } = moduleOf(example, index);
  const folder = `${top}.cache/tours`;
  mkdirSync(folder, { recursive: true });
  const file = `${folder}/${name}-${process.pid}.ts`;
  writeFileSync(file, code);
  const { tour } = (await import(/* @vite-ignore */ file)) as {
    tour: (check: (found: unknown, claimed: unknown, line: string) => void) => Promise<void>;
  };
  let checked = 0;
  await tour((found, claimed, line) => {
    checked += 1;
    expect(found, line).toEqual(claimed);
  });
  expect(checked, "claims that were reached").toBe(claims);
  return claims;
}

const existing = layers.filter((layer) => existsSync(`${top}src/${layer}/index.ts`));

describe("tours", () => {
  test("there are some", () => {
    expect(existing.length).toBeGreaterThanOrEqual(4);
  });

  test.each(existing)("%s", async (layer) => {
    const index = `${top}src/${layer}/index.ts`;
    const example = exampleIn(readFileSync(index, "utf8"));
    expect(example, `src/${layer}/index.ts must open with a comment that holds an example`).toBeDefined();
    const claims = await runTour(layer, example ?? "", index);
    expect(claims, "lines of the form `expression; // => value`").toBeGreaterThan(0);
  });

  test("a false claim fails", async () => {
    const example = 'import { toSI } from "./index.ts";\ntoSI(1, "kN"); // => 999';
    await expect(runTour("false-claim", example, `${top}src/units/index.ts`)).rejects.toThrow(/999/);
  });
});
