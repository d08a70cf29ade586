// The file format as JSON Schema (2020-12), for editors and for other programs. It says the shape and the ranges; what
// looks at several places at once (names that exist, pieces that join) only `readPlan` checks.
import * as z from "zod/mini";
import { planFormat, planSchema, planVersion } from "./schema.ts";

/** The schema as an object that prints as JSON. */
export function planJsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(planSchema);
  return {
    $schema,
    $id: `${planFormat}-${planVersion}.schema.json`,
    title: `Erection plan, file format ${planFormat}, version ${planVersion}`,
    ...rest,
  };
}
