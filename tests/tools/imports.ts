// Reads the import statements of a TypeScript file: value, type-only, re-export, side effect, dynamic.

/** One mention of another module in a file. */
export interface Import {
  /** What stands between the quotes. */
  readonly from: string;
  /** Erased before anything runs: `import type`, `export type`. */
  readonly typeOnly: boolean;
  /** `import("...")`, as a value or as a type. */
  readonly dynamic: boolean;
  /** Line in the file, from 1. */
  readonly line: number;
}

/** Before these a slash opens a regular expression, after anything else it divides. */
const beforeRegex = /(?:^|[(,=:[!&|?{};+\-*%<>~^]|\breturn|\btypeof|\bcase|\bawait)\s*$/;

/**
 * The text with comments, template texts and regular expressions blanked, and every string replaced by a numbered mark,
 * so that an import written inside one of them is not taken for a real one.
 */
function blanked(text: string): { code: string; strings: string[] } {
  const strings: string[] = [];
  let code = "";
  let i = 0;
  const keepLines = (part: string) => part.replace(/[^\n]/g, " ");
  while (i < text.length) {
    const rest = text.slice(i, i + 2);
    const char = text[i];
    if (rest === "//") {
      const end = text.indexOf("\n", i);
      i = end < 0 ? text.length : end;
    } else if (rest === "/*") {
      const end = text.indexOf("*/", i + 2);
      const stop = end < 0 ? text.length : end + 2;
      code += keepLines(text.slice(i, stop));
      i = stop;
    } else if (char === '"' || char === "'") {
      const match = /^(["'])((?:\\.|(?!\1)[^\\\n])*)\1/.exec(text.slice(i, i + 2000));
      if (match === null) {
        code += " "; // an apostrophe in the text of an element
        i += 1;
      } else {
        code += `§${strings.length}§`;
        strings.push(match[2]);
        i += match[0].length;
      }
    } else if (char === "`") {
      const end = endOfTemplate(text, i);
      code += keepLines(text.slice(i, end));
      i = end;
    } else if (char === "/" && beforeRegex.test(code.slice(-40))) {
      const match = /^\/(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\[\n])+\/[a-z]*/.exec(text.slice(i, i + 2000));
      i += match === null ? 1 : match[0].length;
      code += " ";
    } else {
      code += char;
      i += 1;
    }
  }
  return { code, strings };
}

/** Where the template text that opens at `start` ends, templates inside its `${...}` included. */
function endOfTemplate(text: string, start: number): number {
  let i = start + 1;
  while (i < text.length) {
    if (text[i] === "\\") i += 2;
    else if (text[i] === "`") return i + 1;
    else if (text[i] === "$" && text[i + 1] === "{") {
      let depth = 1;
      i += 2;
      while (i < text.length && depth > 0) {
        if (text[i] === "`") {
          i = endOfTemplate(text, i);
          continue;
        }
        if (text[i] === "{") depth += 1;
        if (text[i] === "}") depth -= 1;
        i += 1;
      }
    } else i += 1;
  }
  return text.length;
}

/** Every import of a file's text, in order. A computed dynamic import has `from` "". */
export function importsOf(text: string): Import[] {
  const { code, strings } = blanked(text);
  const found: (Import & { at: number })[] = [];
  const lineAt = (at: number) => code.slice(0, at).split("\n").length;
  const add = (at: number, mark: string, typeOnly: boolean, dynamic: boolean) => {
    found.push({ from: mark === "" ? "" : strings[Number(mark)], typeOnly, dynamic, line: lineAt(at), at });
  };
  for (const m of code.matchAll(
    /\b(?:import|export)\b(\s+type\b(?!\s*from\b))?[\w$\s{},*§]*?\bfrom\s*§(\d+)§/g,
  )) {
    add(m.index, m[2], m[1] !== undefined, false);
  }
  for (const m of code.matchAll(/\bimport\s*§(\d+)§/g)) add(m.index, m[1], false, false);
  for (const m of code.matchAll(/(?<![.\w$])import\s*\(\s*(?:§(\d+)§)?/g))
    add(m.index, m[1] ?? "", false, true);
  return found.sort((a, b) => a.at - b.at).map(({ at: _, ...one }) => one);
}

/** Circles in a graph of imports: each as the list of files around it, the first repeated at the end. */
export function circlesIn(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const circles: string[][] = [];
  const state = new Map<string, "open" | "done">();
  const path: string[] = [];
  const visit = (file: string) => {
    state.set(file, "open");
    path.push(file);
    for (const next of graph.get(file) ?? []) {
      if (state.get(next) === "open") circles.push([...path.slice(path.indexOf(next)), next]);
      else if (!state.has(next) && graph.has(next)) visit(next);
    }
    path.pop();
    state.set(file, "done");
  };
  for (const file of graph.keys()) if (!state.has(file)) visit(file);
  return circles;
}
