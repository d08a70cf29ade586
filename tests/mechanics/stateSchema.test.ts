// The published schema equals the reader. After a change of the format: UPDATE_SCHEMAS=1 npx vitest run tests/mechanics

import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { stateJsonSchema } from "../../src/mechanics/index.ts";

const file = new URL("../../public/handspan-state.schema.json", import.meta.url);

describe("public/handspan-state.schema.json", () => {
  test("is what the reader says", () => {
    const text = `${JSON.stringify(stateJsonSchema(), null, 1)}\n`;
    if (process.env.UPDATE_SCHEMAS === "1") writeFileSync(file, text);
    expect(readFileSync(file, "utf8")).toBe(text);
  });
  test("is strict, and carries units and ranges", () => {
    const schema = JSON.parse(readFileSync(file, "utf8"));
    expect(schema.additionalProperties).toBe(false);
    expect(schema.required).toEqual(["format", "version", "gravity", "E", "G", "girders"]);
    const { train } = { train: schema.properties.trains.items.properties };
    expect(train.cylinderStiffness).toEqual({
      type: "number",
      minimum: 1,
      maximum: 1e12,
      description: "N/m",
    });
    expect(train.lines).toEqual({ type: "integer", minimum: 1, maximum: 200 });
    expect(schema.properties.hoists.items.properties.rigging.enum).toEqual(["spreader", "point", "separate"]);
  });
});
