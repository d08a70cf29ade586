// The hash by which a plan is known on every sheet: SHA-256 of its canonical JSON (RFC 8785), the record left out.
import type { Plan } from "./schema.ts";
import { sha256, utf8 } from "./sha256.ts";

/**
 * JSON in the one form that RFC 8785 allows: no blanks, names sorted by UTF-16 units, numbers as ECMAScript prints
 * them. Fields that are undefined are left out. Throws on numbers that JSON does not know (NaN, infinity).
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((v) => canonicalJson(v ?? null)).join(",")}]`;
  if (typeof value === "object" && value !== null) {
    const fields = Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, v]) => `${JSON.stringify(key)}:${canonicalJson(v)}`);
    return `{${fields.join(",")}}`;
  }
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new RangeError(`canonicalJson: found ${value}; allowed are finite numbers. Read the plan first.`);
  }
  return JSON.stringify(value);
}

/** Hash of a plan: 64 hexadecimal digits. As-done records do not change it. */
export function planHash(plan: Plan): string {
  const { record: _, ...planned } = plan;
  return sha256(utf8(canonicalJson(planned)));
}
