// From a plan to the text of a file: fields in the order of the format, short lists and objects on one line.
import type { Plan } from "./schema.ts";

/** Longest line into which a list or an object is drawn together. */
const lineLength = 100;

/** The text of a plan file. Reading it back gives the same plan. */
export function writePlan(plan: Plan): string {
  return `${print(plan, "")}\n`;
}

function print(value: unknown, indent: string): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const isList = Array.isArray(value);
  const entries: [string, unknown][] = Object.entries(value).filter(([, v]) => v !== undefined);
  const head = (key: string) => (isList ? "" : `${JSON.stringify(key)}: `);
  const [open, close] = isList ? ["[", "]"] : ["{", "}"];
  if (entries.length === 0) return open + close;
  const deeper = `${indent}  `;
  const parts = entries.map(([key, v]) => head(key) + print(v, deeper));
  const pad = isList ? "" : " ";
  const short = `${open}${pad}${parts.join(", ")}${pad}${close}`;
  if (indent !== "" && short.length + indent.length <= lineLength && !short.includes("\n")) return short;
  return `${open}\n${parts.map((part) => deeper + part).join(",\n")}\n${indent}${close}`;
}
