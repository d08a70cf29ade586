// The grammar of JSON (RFC 8259), walked to say what `JSON.parse` does not, or not alike in every engine: line and
// column of the first fault, and names that stand twice in one object, of which one would be lost without a word.

/** A fault: nothing after it can be read. Line and column count from 1. */
export interface JsonFault {
  line: number;
  column: number;
  found: string;
  allowed: string;
}

/** A name that stands a second time in one object. */
export interface JsonRepeat {
  path: (string | number)[];
  line: number;
  column: number;
}

// A text holds no bare control sign, no bare quotation mark and no bare backslash.
const token =
  /[{}[\],:]|"[ !#-[\]-\u{10ffff}]*(?:\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{4})[ !#-[\]-\u{10ffff}]*)*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/uy;
const blank = /[ \t\r\n]*/y;
const deepest = 100;

class Fault extends Error {
  readonly at: number;
  constructor(at: number, allowed: string) {
    super(allowed);
    this.at = at;
  }
}

/** The first fault of grammar, or every repeated name; an empty list for sound JSON. */
export function walkJson(text: string): JsonFault | JsonRepeat[] {
  const repeats: JsonRepeat[] = [];
  const path: (string | number)[] = [];
  let at = 0;
  let start = 0;
  const place = (offset: number) => {
    const before = text.slice(0, offset);
    const lastBreak = before.lastIndexOf("\n");
    return { line: before.split("\n").length, column: offset - lastBreak };
  };
  const next = (allowed: string): string => {
    blank.lastIndex = at;
    blank.exec(text);
    start = blank.lastIndex;
    token.lastIndex = start;
    const hit = token.exec(text);
    if (hit === null)
      throw new Fault(start, text[start] === '"' ? 'a text on one line with a " at its end' : allowed);
    at = token.lastIndex;
    return hit[0];
  };
  const readValue = (first: string): void => {
    if (path.length > deepest) throw new Fault(start, `at most ${deepest} brackets inside one another`);
    if (first === "{") readObject();
    else if (first === "[") readArray();
    else if (first.length === 1 && "}],:".includes(first)) throw new Fault(start, "a value");
  };
  const readObject = (): void => {
    const seen = new Set<string>();
    let sign = next('a field name in " signs, or }');
    if (sign === "}") return;
    for (;;) {
      if (sign[0] !== '"') throw new Fault(start, 'a field name in " signs');
      const name: string = JSON.parse(sign);
      if (seen.has(name)) repeats.push({ path: [...path, name], ...place(start) });
      seen.add(name);
      if (next("a colon") !== ":") throw new Fault(start, "a colon");
      path.push(name);
      readValue(next("a value"));
      path.pop();
      sign = next("a comma or }");
      if (sign === "}") return;
      if (sign !== ",") throw new Fault(start, "a comma or }");
      sign = next('a field name in " signs');
    }
  };
  const readArray = (): void => {
    let sign = next("a value or ]");
    if (sign === "]") return;
    for (let i = 0; ; i++) {
      path.push(i);
      readValue(sign);
      path.pop();
      sign = next("a comma or ]");
      if (sign === "]") return;
      if (sign !== ",") throw new Fault(start, "a comma or ]");
      sign = next("a value");
    }
  };
  try {
    readValue(next("a value"));
    blank.lastIndex = at;
    blank.exec(text);
    if (blank.lastIndex < text.length) throw new Fault(blank.lastIndex, "the end of the file");
    return repeats;
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    const sign = text.slice(fault.at, fault.at + 1);
    return {
      ...place(fault.at),
      found: sign === "" ? "the end of the file" : JSON.stringify(sign),
      allowed: fault.message,
    };
  }
}
