// The published schema equals the reader. After a change of the format: UPDATE_SCHEMAS=1 npx vitest run tests/plan
import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { planJsonSchema } from "../../src/plan/index.ts";

const file = new URL("../../public/handspan-plan.schema.json", import.meta.url);

describe("public/handspan-plan.schema.json", () => {
  test("is what the reader says", () => {
    const text = `${JSON.stringify(planJsonSchema(), null, 1)}\n`;
    if (process.env.UPDATE_SCHEMAS === "1") writeFileSync(file, text);
    expect(readFileSync(file, "utf8")).toBe(text);
  });

  test("is strict, and carries units and ranges", () => {
    const schema = JSON.parse(readFileSync(file, "utf8"));
    expect(schema.additionalProperties).toBe(false);
    expect(Object.keys(schema.properties)[0]).toBe("shows");
    expect(schema.properties.cranes.items.properties.boomLength_m).toEqual({
      type: "number",
      minimum: 2,
      maximum: 250,
    });
    expect(schema.properties.sets.items.properties.steps.items.oneOf).toHaveLength(21);
  });
});
