// What is typed in a cell of plan data, read by its field; and what a value reads like, in short and in full.
import { type CellRead, readQuantity } from "../../../controls/index.ts";
import { type Field, fieldOf, type Plan, printPath, valueAt } from "../../../plan/index.ts";
import { printFull, read, type System, signOf, unitFor } from "../../../units/index.ts";

/** What parts the entries of a list that is typed as one text. */
const between = "; ";

/** A value in full, as it is typed over and copied. Numbers are in the user's unit, without it. */
export function fullText(field: Field, value: unknown, system: System): string {
  if (value === undefined || value === null) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") {
    return field.unit === null || field.shown === null
      ? String(value)
      : printFull(value, field.unit, unitFor(field.shown, system));
  }
  if (Array.isArray(value)) return value.map((one) => fullText(field, one, system)).join(between);
  return String(value);
}

/** Significant digits that a table shows of a number which was converted; all of them are there when it is edited. */
const shownDigits = 7;

/** A value in short, as it is shown. */
export function shortText(field: Field, value: unknown, system: System): string {
  const full = fullText(field, value, system);
  if (typeof value !== "number" || full.length <= shownDigits + 1) return full;
  return String(Number(Number(full).toPrecision(shownDigits)));
}

/** The sign of the unit in which a field is shown; "" for none. */
export function unitOf(field: Field, system: System): string {
  return field.shown === null ? "" : signOf(field.shown, system);
}

function plainNumber(field: Field, text: string): CellRead {
  const got = read(text, "ratio");
  if (!got.ok) return got;
  const { value } = got;
  if (field.is === "whole" && !Number.isInteger(value)) {
    return {
      ok: false,
      problem: `"${text.trim()}" is no whole number; allowed: a count. Type a whole number.`,
    };
  }
  const low = field.least !== null && value < field.least;
  if (low || (field.most !== null && value > field.most)) {
    const allowed = `${field.least} to ${field.most}`;
    return {
      ok: false,
      problem: `"${text.trim()}" is too ${low ? "small" : "large"}; allowed: ${allowed}. Correct the number.`,
    };
  }
  return { ok: true, value };
}

function oneOf(field: Field, text: string): CellRead {
  const typed = text.trim().toLowerCase();
  const found = field.choices.find((one) => one.toLowerCase() === typed);
  if (found !== undefined) return { ok: true, value: found };
  return {
    ok: false,
    problem: `"${text.trim()}" is none of ${field.choices.join(", ")}. Choose one of these.`,
  };
}

const yes = ["yes", "true", "y", "1"];
const no = ["no", "false", "n", "0"];

/** Reads what was typed for a field. A blank takes an optional value away, and says "not known yet" where the file may. */
export function readField(field: Field, plan: Plan, text: string, system: System): CellRead {
  if (text.trim() === "") {
    if (field.optional) return { ok: true, value: undefined };
    if (field.nullable) return { ok: true, value: null };
    if (field.is !== "text" && field.is !== "list") {
      return { ok: false, problem: `Nothing was typed, but the plan must say the ${field.words}.` };
    }
  }
  switch (field.is) {
    case "number":
    case "whole":
      if (field.unit === null || field.shown === null) return plainNumber(field, text);
      return readQuantity(text, {
        keptIn: field.unit,
        shownIn: unitFor(field.shown, system),
        least: field.least,
        most: field.most,
      });
    case "flag": {
      const typed = text.trim().toLowerCase();
      if (yes.includes(typed)) return { ok: true, value: true };
      if (no.includes(typed)) return { ok: true, value: false };
      return { ok: false, problem: `"${text.trim()}" is neither yes nor no. Type one of the two.` };
    }
    case "choice":
      return oneOf(field, text);
    case "list":
      return listOfWords(field, plan, text, system);
    default: {
      const most = field.most ?? Number.POSITIVE_INFINITY;
      if (text.length <= most) return { ok: true, value: text };
      return { ok: false, problem: `The text has ${text.length} signs; allowed: up to ${most}. Shorten it.` };
    }
  }
}

function listOfWords(field: Field, plan: Plan, text: string, system: System): CellRead {
  const entry = fieldOf([...field.path, 0], plan);
  if (entry === null) return { ok: false, problem: `${printPath(field.path)} is no list.` };
  const words = text.split(/[;\n]/).map((one) => one.trim());
  const value: unknown[] = [];
  for (const word of words.filter((one) => one !== "")) {
    const got = readField({ ...entry, optional: false }, plan, word, system);
    if (!got.ok) return got;
    value.push(got.value);
  }
  return { ok: true, value };
}

/** What stands in a cell whose value is not set, and in one that opens a sheet. */
export function emptyText(field: Field, value: unknown): string {
  if (value === undefined) return "not set";
  if (value === null) return field.nullable ? "not known yet" : "to be typed";
  return "";
}

/** What a cell that opens a sheet shows of it: how many entries, or that it is not set. */
export function openText(field: Field, plan: Plan): string {
  const value = valueAt(plan, field.path);
  if (value === undefined || value === null) return "not set";
  if (Array.isArray(value)) return value.length === 1 ? "1 entry" : `${value.length} entries`;
  if (field.is === "record") {
    const count = Object.keys(value).length;
    return count === 1 ? "1 entry" : `${count} entries`;
  }
  return "open";
}
