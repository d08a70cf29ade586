// The text of a CSV file after RFC 4180: quoting, line ends, and text that no spreadsheet takes for a formula.

/**
 * Text that a spreadsheet would take for a formula gets an apostrophe before it. It begins with = + - @, a tab or a
 * return, also in their full-width forms. Never used on numbers. Source: OWASP, 'CSV Injection'.
 */
export function harmless(text: string): string {
  return /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/.test(text) ? `'${text}` : text;
}

/** One field: in quotes where it holds a comma, a quote or a line end (RFC 4180, section 2). */
export function field(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A number with `digits` places behind the point, never in exponent form; blank when not known, and no minus zero. */
export function fixed(value: number, digits: number): string {
  if (!Number.isFinite(value)) return "";
  if (Math.abs(value) >= 1e21)
    throw new RangeError(`a table cannot hold ${value}: numbers below 1e21 are allowed`);
  const text = value.toFixed(digits);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** One row with its line end. */
export function row(fields: readonly string[]): string {
  return `${fields.map(field).join(",")}\r\n`;
}
