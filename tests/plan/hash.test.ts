// SHA-256 against FIPS 180-4, canonical JSON against RFC 8785, and what the hash of a plan depends on.
import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { canonicalJson, planHash, readPlan, sha256, utf8, writePlan } from "../../src/plan/index.ts";
import { samplePlan } from "./sample.ts";

describe("SHA-256", () => {
  // NIST's examples for FIPS 180-4 (one block, two blocks) and the empty message.
  test.each([
    ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
    ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
    [
      "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
      "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
    ],
  ])("of %s", (text, hash) => {
    expect(sha256(utf8(text))).toBe(hash);
  });

  test("of a million times a, the long example of FIPS 180-4's first edition", () => {
    const long = new Uint8Array(1e6).fill(0x61);
    expect(sha256(long)).toBe("cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
  });

  test("of any text equals Node's own (seed 1)", () => {
    const same = (text: string) =>
      sha256(utf8(text)) === createHash("sha256").update(text, "utf8").digest("hex");
    fc.assert(fc.property(fc.string({ unit: "binary", maxLength: 300 }), same), { seed: 1 });
  });
});

describe("canonical JSON", () => {
  test("RFC 8785 3.2.2 and 3.2.4: numbers, literals, text", () => {
    const sample = String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`;
    expect(canonicalJson(JSON.parse(sample))).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"\u20ac$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  test("RFC 8785 3.2.3: names sorted by UTF-16 units", () => {
    const sample =
      '{"\\u20ac":"Euro Sign","\\r":"Carriage Return","\\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One","\\ud83d\\ude00":"Emoji: Grinning Face","\\u0080":"Control","\\u00f6":"Latin Small Letter O With Diaeresis"}';
    const order = [...canonicalJson(JSON.parse(sample)).matchAll(/:"([^"]*)"/g)].map((hit) => hit[1]);
    expect(order).toEqual([
      "Carriage Return",
      "One",
      "Control",
      "Latin Small Letter O With Diaeresis",
      "Euro Sign",
      "Emoji: Grinning Face",
      "Hebrew Letter Dalet With Dagesh",
    ]);
  });

  test("RFC 8785 appendix B: numbers as ECMAScript prints them", () => {
    expect(canonicalJson([-0, 5e-324, 1.7976931348623157e308, 9007199254740992, 1e21, 1e-7])).toBe(
      "[0,5e-324,1.7976931348623157e+308,9007199254740992,1e+21,1e-7]",
    );
  });

  test("refuses numbers that JSON does not know", () => {
    expect(() => canonicalJson({ a: Number.NaN })).toThrow(/found NaN; allowed are finite numbers/);
  });
});

describe("hash of a plan", () => {
  test("does not depend on the order of fields, on blanks, or on the record", () => {
    const hash = planHash(samplePlan());
    expect(hash).toMatch(/^[0-9a-f]{64}$/);
    const read = readPlan(writePlan(samplePlan()));
    expect(read.ok && planHash(read.plan)).toBe(hash);
    expect(planHash({ ...samplePlan(), record: [] })).toBe(hash);
    expect(planHash({ ...samplePlan(), people: undefined })).not.toBe(hash);
  });

  test("changes with the last bit of one number", () => {
    const other = samplePlan();
    other.sets[0].girders[0].y_m += Number.EPSILON;
    expect(planHash(other)).not.toBe(planHash(samplePlan()));
  });
});
