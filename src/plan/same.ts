// Whether two pieces of plain data are the same to the last bit, names in the same order.

/**
 * True when two values of plain data (numbers, texts, flags, lists, records) are equal throughout. Records must name their
 * fields in the same order too: sums over them are then equal to the last bit. Fields left out and undefined are one.
 */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b))
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((value, i) => same(value, b[i]))
    );
  const [p, q] = [fieldsOf(a), fieldsOf(b)];
  return p.length === q.length && p.every(([name, value], i) => name === q[i][0] && same(value, q[i][1]));
}

const fieldsOf = (record: object): [string, unknown][] =>
  Object.entries(record).filter(([, value]) => value !== undefined);
