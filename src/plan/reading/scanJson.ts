// Walks JSON text by its grammar (RFC 8259) to find what `JSON.parse` does not tell: the exact place of the first
// fault, the same in every engine, and names given twice in one object, of which one would be lost without a word.
import type { PlanPath } from "./planError.ts";

/** A fault of grammar: nothing after it can be read. `line` and `column` count from 1. */
export interface JsonFault {
  kind: "fault";
  line: number;
  column: number;
  found: string;
  expected: string;
}

/** A name that stands twice in one object. */
export interface JsonTwice {
  kind: "twice";
  path: PlanPath;
  line: number;
  column: number;
}

/** Deeper nesting than any plan needs; it would only exhaust the stack. */
const deepest = 200;

// Every sign from the blank on, but for " and the backslash: control signs must not stand bare in a text.
const stringSigns = /[ !#-[\]-\u{10ffff}]*/uy;
const escaped = /\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{4})/y;
const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const word = /true|false|null/y;
const blank = /[ \t\r\n]*/y;

class Stop extends Error {
  readonly expected: string;
  constructor(expected: string) {
    super(expected);
    this.expected = expected;
  }
}

/** All duplicate names, or the first fault of grammar. An empty list: the text is sound JSON. */
export function scanJson(text: string): JsonFault | JsonTwice[] {
  let at = 0;
  const twice: JsonTwice[] = [];
  const path: (string | number)[] = [];

  const place = (offset: number) => {
    const before = text.slice(0, offset);
    const lines = before.split("\n");
    return { line: lines.length, column: lines[lines.length - 1].length + 1 };
  };
  const take = (pattern: RegExp): string => {
    pattern.lastIndex = at;
    const hit = pattern.exec(text);
    if (hit === null) return "";
    at = pattern.lastIndex;
    return hit[0];
  };
  const want = (sign: string, expected: string) => {
    take(blank);
    if (text[at] !== sign) throw new Stop(expected);
    at++;
  };
  const readString = (expected: string): string => {
    want('"', expected);
    const start = at - 1;
    for (;;) {
      take(stringSigns);
      if (text[at] === '"') break;
      if (text[at] !== "\\" || take(escaped) === "") throw new Stop('the closing " of a text');
    }
    at++;
    const known: unknown = JSON.parse(text.slice(start, at));
    return String(known);
  };
  const readObject = () => {
    at++;
    const seen = new Set<string>();
    take(blank);
    if (text[at] === "}") {
      at++;
      return;
    }
    for (;;) {
      take(blank);
      const start = at;
      const key = readString('a field name in " signs');
      path.push(key);
      if (seen.has(key)) twice.push({ kind: "twice", path: [...path], ...place(start) });
      seen.add(key);
      want(":", "a colon after the field name");
      readValue();
      path.pop();
      take(blank);
      if (text[at] === "}") break;
      want(",", "a comma or }");
    }
    at++;
  };
  const readArray = () => {
    at++;
    take(blank);
    if (text[at] === "]") {
      at++;
      return;
    }
    for (let i = 0; ; i++) {
      path.push(i);
      readValue();
      path.pop();
      take(blank);
      if (text[at] === "]") break;
      want(",", "a comma or ]");
    }
    at++;
  };
  function readValue(): void {
    if (path.length > deepest) throw new Stop(`no more than ${deepest} brackets inside one another`);
    take(blank);
    const sign = text[at];
    if (sign === "{") readObject();
    else if (sign === "[") readArray();
    else if (sign === '"') readString("a text");
    else if (take(number) === "" && take(word) === "") throw new Stop("a value");
  }

  try {
    readValue();
    take(blank);
    if (at < text.length) throw new Stop("the end of the file");
    return twice;
  } catch (stop) {
    if (!(stop instanceof Stop)) throw stop;
    const sign = text.slice(at, at + 1);
    return {
      kind: "fault",
      ...place(at),
      found: sign === "" ? "the end of the file" : JSON.stringify(sign),
      expected: stop.expected,
    };
  }
}

/** Bytes of a text in UTF-8. */
export function bytesOf(text: string): number {
  let bytes = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c < 0x80) bytes += 1;
    else if (c < 0x800) bytes += 2;
    else if (c >= 0xd800 && c < 0xdc00) {
      bytes += 4;
      i++;
    } else bytes += 3;
  }
  return bytes;
}
