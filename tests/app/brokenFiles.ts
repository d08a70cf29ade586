// Thirty files that are no plans, as people come by them: cut, of another kind, edited by hand; made from the text of a good one.

/** Each with what is wrong with it; what stands in the file as text or as bytes. `good` is the text of a plan with cranes. */
export function brokenFiles(plan: object): [string, string | Uint8Array<ArrayBuffer>][] {
  const good = JSON.stringify(plan);
  const with_ = (change: (it: Record<string, unknown>) => void): string => {
    const copy = JSON.parse(good) as Record<string, unknown>;
    change(copy);
    return JSON.stringify(copy);
  };
  const half = good.slice(0, good.length / 2);
  const binary = Uint8Array.from({ length: 4000 }, (_, i) => (i * 7919) % 256);
  const site = (it: Record<string, unknown>) => it.site as Record<string, unknown>;
  return [
    ["empty", ""],
    ["blanks", " \n\t "],
    ["cut in half", half],
    ["cut before its last bracket", good.slice(0, -1)],
    ["cut within a text", good.slice(0, good.indexOf("demo") + 2)],
    ["binary", binary],
    ["a picture's first bytes", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)],
    ["zeros", new Uint8Array(2048)],
    // Half of a plan: browsers that heed the mark of UTF-16 would open a whole one, and rightly.
    ["UTF-16", Uint8Array.from([0xff, 0xfe, ...[...half].flatMap((sign) => [sign.charCodeAt(0) & 255, 0])])],
    ["a word", "plan"],
    ["a number", "42"],
    ["null", "null"],
    ["a list", "[]"],
    ["a list of plans", `[${good}]`],
    ["an empty object", "{}"],
    ["a table", "support,load\nfar crane,120\n"],
    ["markup", "<html><body>404 Not Found</body></html>"],
    ["commas at the ends", good.replaceAll("}", ",}")],
    ["single quotes", good.replaceAll('"', "'")],
    ["comments", `// my plan\n${good}`],
    ["two plans in one", good + good],
    ["brackets without end", "[".repeat(100_000)],
    ["a newer version", with_((it) => Object.assign(it, { version: 99 }))],
    ["another kind of file", with_((it) => Object.assign(it, { format: "handspan-state" }))],
    ["a text for a number", with_((it) => Object.assign(site(it), { nearBearing_m: "12,5 m" }))],
    ["an object for a list", with_((it) => Object.assign(it, { sets: {} }))],
    ["no site", with_((it) => delete it.site)],
    ["an unknown field", with_((it) => Object.assign(it, { weather: "fine" }))],
    ["a name that nothing bears", good.replaceAll('"crane":"far-crane"', '"crane":"nobody"')],
    ["a number beyond all numbers", good.replace(/"mass_t":[\d.]+/, '"mass_t":1e999')],
  ];
}
